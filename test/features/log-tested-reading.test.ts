import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { createService, type Service } from '../../core/index.ts';
import type { ReadingOfExperiment } from '../../core/workspace/tested-edits.ts';

const folder = join(import.meta.dirname, '..', '..', 'examples');
const uri = 'file:///bench.dough';

function demo(change: (text: string) => string = (text) => text): Service {
  const service = createService();
  for (const name of ['bakery.dough', 'flours.dough', 'bench.dough']) {
    const text = readFileSync(join(folder, name), 'utf8');
    service.setText(`file:///${name}`, name === 'bench.dough' ? change(text) : text);
  }
  return service;
}

/** Logs a reading and answers with the whole text, which stands in the file from then on. */
function logged(service: Service, dough: string, reading: Partial<ReadingOfExperiment['reading']>): string {
  const edits = service.logTested(uri, {
    ...{ experiment: 'How long is too long', dough },
    reading: { date: '2026-05-02', minutes: 8, celsius: 24.1, ...reading },
  });
  if ('refused' in edits) return edits.refused;
  const lines = [...service.lines(uri)];
  for (const { edits: inFile } of edits)
    for (const edit of inFile.toReversed()) {
      const text = lines[edit.line]!;
      lines[edit.line] = text.slice(0, edit.start) + edit.insert + text.slice(edit.end);
    }
  const text = lines.join('\n');
  service.setText(uri, text);
  return text;
}

describe('a reading of an experiment', () => {
  it('begins a trial that names the experiment and carries the day and the programme as it is run', () => {
    const text = logged(demo(), 'Bench Wet', { feel: ['sticky', 'wet'] });
    expect(text).toContain(
      [
        'formula Bench Wet like Bench White:',
        '  water              75%, at 9 °C',
        '',
        'trial 2026-05-02:',
        '  experiment How long is too long',
        '  room 23 °C',
        '  flour 21 °C',
        '  mixed in bench planetary',
        '  load all',
        '  speed 1 for 60 min',
        '  at 8 min   24.1 °C, sticky, wet',
      ].join('\n'),
    );
  });

  it('comes back as measured, beside what its own programme let expect', () => {
    const service = demo();
    logged(service, 'Bench Wet', {});
    logged(service, 'Bench Wet', { minutes: 16, celsius: 26.5, stage: 'developing' });
    const [view] = service.experiments(uri);
    const wet = view?.doughs.find(({ name }) => name === 'Bench Wet');
    expect(wet?.measured).toMatchObject([
      { minutes: 8, date: '2026-05-02', measuredCelsius: 24.1, within: true },
      { minutes: 16, measuredStage: 'developing' },
    ]);
  });

  it('goes into the same trial, in the order of its minutes, and over one of the same minute', () => {
    const service = demo();
    logged(service, 'Bench White by Hand', { minutes: 16 });
    logged(service, 'Bench White by Hand', { minutes: 8 });
    const text = logged(service, 'Bench White by Hand', { minutes: 8, feel: ['smooth'] });
    expect(text.split('trial 2026-05-02:')).toHaveLength(2);
    expect(text).toContain(
      '  mixed by hand\n  load all\n  knead 60 min\n  at 8 min   24.1 °C, smooth\n  at 16 min  24.1 °C\n',
    );
  });

  it('of a formula that is worked in two ways on one mixer goes to its own dough, and over none of the other', () => {
    const service = demo((text) =>
      text.replace(
        '  dough Bench Wet, speed 1 for 60 min\n',
        '  dough Bench Wet, speed 1 for 60 min\n  dough Bench Wet, speed 2 for 60 min\n',
      ),
    );
    const [slow, fast] = [1, 2].map((speed) => `Bench Wet, in bench planetary, speed ${speed} for 60 min`);
    logged(service, slow!, { minutes: 8, celsius: 23.5 });
    logged(service, fast!, { minutes: 8, celsius: 26 });
    logged(service, slow!, { minutes: 16, celsius: 26.1 });
    logged(service, fast!, { minutes: 16, celsius: 29 });
    const measured = service
      .experiments(uri)[0]!
      .doughs.filter(({ formula }) => formula === 'Bench Wet')
      .map(({ name, measured: all }) => [name, all.map(({ measuredCelsius }) => measuredCelsius)]);
    expect(measured).toEqual([
      [slow, [23.5, 26.1]],
      [fast, [26, 29]],
    ]);
  });

  it('leaves a trial of the same day alone that is of no experiment or of another mixer', () => {
    const twice = (text: string) =>
      text.replace('  dough Bench Wet', '  dough Bench White, by hand, knead 20 min\n  dough Bench Wet');
    const service = demo(twice);
    logged(service, 'Bench White, by hand', {});
    const text = logged(service, 'Bench White, in bench planetary', {});
    expect(text.split('trial 2026-05-02:')).toHaveLength(3);
    expect(text.indexOf('knead 20 min\n  at 8 min')).toBeLessThan(
      text.indexOf('formula Bench White by Hand'),
    );
  });

  it('writes the water of the experiment where the formula leaves it open, or as it was drawn', () => {
    const open = (text: string) =>
      text
        .replace('65%, at 9 °C', '65%')
        .replace('75%, at 9 °C', '75%')
        .replace('  flour 21 °C\n  dough', '  flour 21 °C\n  water 12 °C\n  dough');
    expect(logged(demo(open), 'Bench Wet', {})).toContain('  flour 21 °C\n  water 12 °C\n  mixed in');
    expect(logged(demo(open), 'Bench Wet', { waterCelsius: 11 })).toContain('  water 11 °C\n  mixed in');
    expect(logged(demo(), 'Bench Wet', {})).not.toContain('  flour 21 °C\n  water');
  });

  it('goes where its formula stands now, however often lines above it were typed', () => {
    const service = demo();
    logged(service, 'Bench Wet', {});
    service.experiments(uri);
    service.setText(uri, `# the bench of May\n\n${service.lines(uri).join('\n')}`);
    const text = logged(service, 'Bench Wet', { minutes: 16 });
    expect(text).toContain('  at 8 min   24.1 °C\n  at 16 min  24.1 °C\n\nformula Bench Wholemeal');
  });

  it('says in one sentence why not', () => {
    expect(logged(demo(), 'Nowhere', {})).toBe('The formula is not in the file any more.');
    expect(logged(demo(), 'Bench Wet', { celsius: 95 })).toMatch(/^A dough temperature lies between/);
    const { minutes: _, ...withoutMinute } = { minutes: 8, date: '2026-05-02', celsius: 24 };
    const refused = demo().logTested(uri, {
      ...{ experiment: 'How long is too long', dough: 'Bench Wet', reading: withoutMinute },
    });
    expect(refused).toEqual({
      refused: 'A reading of an experiment needs its minute from the start of mixing.',
    });
    const other = demo().logTested(uri, {
      ...{ experiment: 'Another', dough: 'Bench Wet', reading: { ...withoutMinute, minutes: 8 } },
    });
    expect(other).toEqual({ refused: 'The experiment is not in the file any more.' });
  });
});
