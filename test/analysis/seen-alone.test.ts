import { describe, expect, it } from 'vitest';
import { createService } from '../../core/index.ts';
import { withEdits } from '../../core/text/edits.ts';
import { partsOf } from '../sheet/parts.ts';

// A baker without a thermometer looks and feels; invented formula, the stages that a word tells are common practice, no source.
const uri = 'file:///quay-lane/tin.dough';
const text = (readings: string, day = '  room 21 °C\n  flour 20 °C\n  water 15 °C\n'): string =>
  `formula Harbour Tin:
  yield 10 kg
  bread flour  100%
  water  65%
  salt  2%

mix in spiral:
  load flour, water, salt
  speed 1 for 12 min

trial 2026-03-14:
${day}  mixed in spiral
  load flour, water, salt
  speed 1 for 12 min
${readings}`;

const opened = (written: string) => {
  const service = createService();
  service.setText(uri, written);
  return service;
};
const hoverAt = (written: string, line: string): string =>
  opened(written).hover(uri, written.split('\n').indexOf(line), 4)?.markdown ?? '';
const codesOf = (written: string): string[] =>
  opened(written)
    .findings(uri)
    .map(({ code }) => code);

describe('a reading without a temperature', () => {
  it('is read: words behind the minutes, and at the end of mixing', () => {
    expect(codesOf(text('  at 4 min, rough\n  at 8 min, developing, smooth\n  end smooth, shiny\n'))).toEqual(
      [],
    );
    expect(codesOf(text('  at 4 min, stretchy\n  end glossy\n'))).toEqual(['unknown-feel', 'unknown-feel']);
  });

  it('asks for a comma where there is none, and for something seen where there is nothing', () => {
    for (const [written, meant] of [
      ['at 8 min smooth', 'at 8 min, smooth'],
      ['at 8 min: smooth, shiny', 'at 8 min, smooth, shiny'],
      ['at 8 min feels smooth', 'at 8 min, smooth'],
    ] as const) {
      const service = opened(text(`  ${written}\n`));
      const [finding, ...others] = service.findings(uri);
      expect([written, finding?.code, others]).toEqual([written, 'wrong-value', []]);
      expect(finding!.message).toContain(meant);
    }
    expect(codesOf(text('  at 8 min\n'))).toEqual(['missing-value']);
    expect(codesOf(text('  at 8 min,\n'))).toHaveLength(1);
  });

  it('of a word of one’s own shows it as it is written, and sets it beside nothing', () => {
    const line = '  at 8 min, fluffed';
    expect(hoverAt(text(`${line}\n`), line)).toMatch(
      /\*\*Seen: “fluffed”\*\* — computed 2\d(\.\d)? °C, [a-z -]+\.(\n|$)/,
    );
  });

  it('stands in canonical form', () => {
    const written = text('  at 8 min ,smooth ,  shiny\n  end   smooth\n');
    const service = opened(written);
    const done = withEdits(written, service.format(uri));
    expect(done).toContain('  at 8 min, smooth, shiny\n  end smooth\n');
    expect(opened(done).format(uri)).toEqual([]);
  });

  it('is set beside the stage that is computed, also where nobody knows how warm the water was', () => {
    const late = '  at 12 min, rough';
    expect(hoverAt(text(`${late}\n`), late)).toMatch(
      /\*\*Seen: rough\*\* — computed 2\d(\.\d)? °C, .+: another stage\./,
    );
    const unknown = hoverAt(text('  end smooth\n', '  room 21 °C\n'), '  end smooth');
    expect(unknown).toMatch(/\*\*Seen: smooth\*\* — computed [a-z -]+: (the stage agrees|another stage)\./);
    const nobodys = text('  at 8 min, smooth\n').replaceAll('spiral', 'tub');
    expect(hoverAt(nobodys, '  at 8 min, smooth')).toContain('nothing to set beside it');
  });

  it('stands on the sheet beside the stage, with no temperature of its own and none that it is off by', () => {
    const [trial] = partsOf(
      opened(text('  at 8 min, smooth\n  end        25.4 °C\n')).sheet(uri, 0, {})!,
    ).trials;
    const [first, second] = trial!.rows;
    expect(first!.cells.measured?.text).toBe('smooth');
    expect(first!.cells.off?.text).toBe('');
    expect(first!.cells.computed?.text).toMatch(/°C/);
    expect(second!.cells.off?.text).toMatch(/°C|as computed/);
    expect(trial!.notes?.join()).toContain('The readings miss what is computed by');
  });

  it('teaches how fast a dough develops, and nothing of how it warms', () => {
    const felt = (readings: string): string => {
      const written = text(readings);
      return hoverAt(written, 'mix in spiral:').replace(/trial.*/su, '');
    };
    expect(felt('  at 2 min, smooth\n')).toBe(felt('  at 2 min 20 °C, smooth\n'));
    expect(felt('  at 2 min, smooth\n')).not.toBe(felt('  at 2 min, rough\n'));
  });
});

describe('a mixer of trials that were looked at alone', () => {
  const mixer = 'mixer big spiral:\n  kind spiral\n  speed 1 100 rpm\n\n';
  const on = (readings: string): string => mixer + text(readings).replaceAll('in spiral', 'in big spiral');

  it('is not fitted, says that a temperature is lacking, and crashes nowhere', () => {
    const service = opened(on('  at 4 min, rough\n  at 8 min, smooth\n  end shiny\n'));
    const { markdown = '' } = service.hover(uri, 0, 8) ?? {};
    expect(markdown).toContain('no trial of this mixer has a temperature');
    expect(service.findings(uri).filter(({ code }) => code === 'mixer-can-be-calibrated')).toEqual([]);
  });

  it('is fitted to the temperatures that others have, as if the words stood beside none', () => {
    const warm = '  at 3 min   19 °C\n  at 6 min   21.5 °C\n  at 12 min  26.5 °C\n';
    const told = (readings: string): string => opened(on(readings)).hover(uri, 0, 8)?.markdown ?? '';
    const warming = (markdown: string): string[] => markdown.match(/[\d.]+ °C\/min/g) ?? [];
    expect(warming(told(warm)).length).toBeGreaterThan(0);
    expect(warming(told(`${warm}  at 4 min, rough\n  end shiny\n`))).toEqual(warming(told(warm)));
  });
});
