import { describe, expect, it } from 'vitest';
import { createService, type FileEdit, type ReadingToLog } from '../../core/index.ts';
import { partsOf } from '../sheet/parts.ts';

// Invented formula; where a reading belongs is the notation's own rule.
const uri = 'file:///quay-lane/tin.dough';
const text = `formula Harbour Tin:
  yield 10 pieces of 880 g
  strong white   100%
  water          65%
  salt           2%

mix in spiral:
  load flour, water, salt
  speed 1 for 10 min
`;
const trial = `
trial 2026-03-14:
  room 22 °C
  at 3 min   20.6 °C, pick-up
  at 30 min  24.8 °C
  end        25.4 °C
  rise 80% at 70 min
  note warm bowl
`;
/** The programme that is run, as a trial that is begun keeps it. */
const ran = '  mixed in spiral\n  load flour, water, salt\n  speed 1 for 10 min\n';
const after = '\nformula Pilot Boat:\n  strong white 100%\n';
const reading: ReadingToLog = { date: '2026-03-14', minutes: 10, celsius: 22.5, stage: 'clean-up' };

describe('a reading becomes a line of the file', () => {
  it('between the readings before and after it', () => {
    expect(logged(text + trial, reading)).toBe(
      text + trial.replace('pick-up\n', 'pick-up\n  at 10 min  22.5 °C, clean-up\n'),
    );
  });

  it('of a new trial of the day, at the end of its own formula, where the day has none', () => {
    expect(logged(text + after, { ...reading, roomCelsius: 23, flourCelsius: 20 })).toBe(
      `${text}
trial 2026-03-14:
  room 23 °C
  flour 20 °C
  mixed in spiral
  load flour, water, salt
  speed 1 for 10 min
  at 10 min  22.5 °C, clean-up
${after}`,
    );
    expect(logged(text + trial, { ...reading, date: '2026-03-15' })).toBe(
      `${text}${trial}\ntrial 2026-03-15:\n${ran}  at 10 min  22.5 °C, clean-up\n`,
    );
  });

  it('with the water as it was drawn, once a trial: what a reading is compared by', () => {
    const begun = logged(text, { ...reading, roomCelsius: 23, waterCelsius: 17.5 });
    expect(begun).toContain('  room 23 °C\n  water 17.5 °C\n  mixed in spiral\n');
    expect(
      logged(begun, { ...reading, minutes: 12, waterCelsius: 19 }).match(/ {2}water [\d.]+ °C/g),
    ).toEqual(['  water 17.5 °C']);
    expect(logged(text + trial, { ...reading, waterCelsius: 17.5 })).toBe(
      text +
        trial
          .replace('22 °C\n', '22 °C\n  water 17.5 °C\n')
          .replace('pick-up\n', 'pick-up\n  at 10 min  22.5 °C, clean-up\n'),
    );
    expect(
      logged('formula A:\n  bread flour 100%\ntrial 2026-03-14:\n', { ...reading, waterCelsius: 18 }),
    ).toContain('trial 2026-03-14:\n  water 18 °C\n  at 10 min  22.5 °C, clean-up\n');
  });

  it('at the half minute it was taken at, beside that of the whole minute', () => {
    const half = logged(text + trial, { ...reading, minutes: 27.5 });
    expect(half).toContain('  at 27.5 min 22.5 °C, clean-up\n');
    expect(logged(half, { ...reading, minutes: 28 })).toContain(
      '  at 27.5 min 22.5 °C, clean-up\n  at 28 min  22.5 °C, clean-up\n  at 30 min',
    );
  });

  it('as the end of mixing', () => {
    const withoutEnd = trial.replace('  end        25.4 °C\n', '');
    const { minutes: _, stage: __, ...end } = reading;
    expect(logged(text + withoutEnd, { ...end, celsius: 25.4 })).toBe(text + trial);
  });

  it('as the end of mixing with its stage, which is read back', () => {
    const { minutes: _, ...end } = { ...reading, celsius: 26.5, stage: 'developing' };
    const done = logged(logged(text, reading), end);
    expect(done).toBe(
      `${text}\ntrial 2026-03-14:\n${ran}  at 10 min  22.5 °C, clean-up\n  end        26.5 °C, developing\n`,
    );
    const service = createService();
    service.setText(uri, done.replace('  mixed', '  water 18 °C\n  mixed'));
    expect(service.findings(uri).filter(({ place }) => place.line > 9)).toEqual([]);
    expect(partsOf(service.sheet(uri, 1, {})!).trials[0]!.rows.at(-1)).toMatchObject({
      name: 'end',
      cells: { measured: { text: '26.5 °C developing' } },
    });
  });

  it('behind the programme that its trial keeps, whatever stands between the lines of it', () => {
    const kept = `\ntrial 2026-03-14:\n  mixed in spiral\n  speed 1 for 8 min\n  at 8 min   22 °C\n  rest 10 min\n  speed 1 for 2 min\n`;
    expect(logged(text + kept, reading)).toContain('  speed 1 for 2 min\n  at 10 min  22.5 °C, clean-up\n');
    expect(logged(text + kept.replace(/ {2}at 8.*\n/, ''), { ...reading, minutes: 3 })).toContain(
      '  speed 1 for 2 min\n  at 3 min   22.5 °C, clean-up\n',
    );
  });

  it('in the mixer that was tried, where it begins a trial', () => {
    expect(logged(text, { ...reading, mixer: 'by hand' })).toContain('  mixed by hand\n  load');
    expect(logged(text, { ...reading, mixer: 'fork' })).toContain('  mixed in fork\n  load');
  });

  it('in the place of a reading of the same minute, whose comment stays', () => {
    const noted = trial.replace('20.6 °C, pick-up', '20.6 °C, pick-up  # by the probe');
    expect(logged(text + noted, { ...reading, minutes: 3 })).toBe(
      text + trial.replace('20.6 °C, pick-up', '22.5 °C, clean-up  # by the probe'),
    );
  });

  it('in the last of several trials of one day', () => {
    const second = trial.replace('2026-03-14', '2026-03-14, second batch');
    const done = logged(text + trial + second, reading);
    expect(done.startsWith(text + trial)).toBe(true);
    expect(done).toContain('at 10 min');
  });

  it('after the conditions where no reading stands yet', () => {
    const bare = '\ntrial 2026-03-14:\n  room 22 °C\n  water 11 °C\n  note warm bowl\n';
    expect(logged(text + bare, reading)).toBe(
      text + bare.replace('11 °C\n', '11 °C\n  at 10 min  22.5 °C, clean-up\n'),
    );
  });

  it('with the line ends of the file', () => {
    const crlf = (text + trial).replaceAll('\n', '\r\n');
    expect(logged(crlf, reading)).toBe(
      (text + trial.replace('pick-up\n', 'pick-up\n  at 10 min  22.5 °C, clean-up\n')).replaceAll(
        '\n',
        '\r\n',
      ),
    );
  });

  it('that is read back as what was logged, with no finding of its own', () => {
    const service = createService();
    for (const begun of [text, text + trial]) {
      service.setText(uri, begun);
      const before = service.findings(uri).map(({ code }) => code);
      service.setText(uri, logged(begun, { ...reading, minutes: 7.5 }));
      expect(service.findings(uri).map(({ code }) => code)).toEqual(before);
    }
  });

  it.each([
    ['a temperature no dough has', { celsius: 250 }, /between −20 °C and 60 °C/],
    ['a stage nobody knows', { stage: 'fluffy' }, /pick-up, clean-up/],
    ['a day that is none', { date: 'today' }, /2026-03-14/],
    ['a minute before the start', { minutes: -1 }, /start of mixing/],
  ])('but not %s: the sentence says what is wanted', (_, change, says) => {
    const service = createService();
    service.setText(uri, text);
    const edits = service.panelEdits(uri, 0, { kind: 'reading', reading: { ...reading, ...change } });
    expect(edits).toEqual({ refused: expect.stringMatching(says) });
  });
});

describe('a reading without a temperature', () => {
  const seen: ReadingToLog = { date: '2026-03-14', minutes: 10, feel: ['smooth'] };

  it('becomes its line, and reads back without a finding', () => {
    const done = logged(logged(text, { ...seen, waterCelsius: 18 }), {
      ...{ date: '2026-03-14', stage: 'developed', feel: ['shiny'] },
    });
    expect(done).toContain('  at 10 min, smooth\n  end developed, shiny\n');
    const service = createService();
    service.setText(uri, done);
    expect(service.findings(uri).filter(({ place }) => place.line > 9)).toEqual([]);
  });

  it('takes no temperature away from its minute, nor a temperature what was seen', () => {
    const warm: ReadingToLog = { date: '2026-03-14', minutes: 10, celsius: 22 };
    expect(logged(logged(text, warm), seen)).toContain('  at 10 min  22 °C, smooth\n');
    expect(logged(logged(text, seen), warm)).toContain('  at 10 min  22 °C, smooth\n');
    const corrected = { ...warm, celsius: 23, stage: 'developing' };
    expect(logged(logged(logged(text, warm), seen), corrected)).toContain('  at 10 min  23 °C, developing\n');
  });

  it('is refused where nothing was seen either', () => {
    const service = createService();
    service.setText(uri, text);
    const edits = service.panelEdits(uri, 0, {
      kind: 'reading',
      reading: { date: '2026-03-14', minutes: 8 },
    });
    expect(edits).toEqual({ refused: expect.stringContaining('a word of how the dough feels') });
  });
});

function logged(begun: string, wanted: ReadingToLog): string {
  const service = createService();
  service.setText(uri, begun);
  const edits = service.panelEdits(uri, 1, { kind: 'reading', reading: wanted });
  if ('refused' in edits) throw new Error(edits.refused);
  return applied(begun, edits);
}

function applied(begun: string, [file]: readonly FileEdit[]): string {
  const starts = [0, ...[...begun.matchAll(/\r\n|\n/g)].map((match) => match.index + match[0].length)];
  // From the last to the first, so that no edit moves another.
  return file!.edits.toReversed().reduce((made, { line, start, end, insert }) => {
    const at = starts[line]!;
    return made.slice(0, at + start) + insert + made.slice(at + end);
  }, begun);
}
