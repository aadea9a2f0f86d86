import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { createService } from '../../core/index.ts';
import { overlayPage } from '../../core/sheet/overlay/overlay.ts';
import { plainSpeaker } from '../../core/words/speak.ts';

const file = 'file:///quay-lane/one.dough';

const loaf =
  'formula Quay Tin:\n  dough temperature 24 °C\n  bread flour  10 kg\n  water  6.5 kg\n  salt  200 g\n  fresh yeast  200 g\n\n' +
  'mix in spiral:\n  load all\n  speed 1 for 4 min\n  speed 2 for 8 min\n\n';

const days: readonly (readonly [string, string])[] = [
  ['water that is drawn', 'room 21 °C\n  flour 20 °C\n  tap water 8 °C'],
  ['ice', 'room 33 °C\n  flour 32 °C\n  tap water 20 °C\n  ice to hand'],
  ['a tap that is too warm', 'room 33 °C\n  flour 32 °C\n  tap water 24 °C'],
  ['a tap that nobody stated', 'room 21 °C\n  flour 20 °C'],
];

describe('a formula laid over others', () => {
  it.each(days)('is drawn as warm as its sheet and its table say, with %s', (_, day) => {
    const service = createService();
    service.setText(file, `${loaf}bakery Quay Lane:\n  ${day}\n`);
    const laid = service.overlaid(file, 'Quay Tin')!;
    const written = laid.figures.map(({ text }) => text).find((text) => /^[\d.]+ °C ± /.test(text))!;
    const [said, band] = /([\d.]+) °C ± ([\d.]+)/.exec(written)!.slice(1).map(Number);
    const end = laid.curve.at(-1)!;
    // The figures are said to a tenth of a degree.
    expect(Math.abs(end.celsius - said!)).toBeLessThanOrEqual(0.051);
    expect(Math.abs(end.bandCelsius - band!)).toBeLessThanOrEqual(0.051);
    const [leaves] = service
      .sheet(file, 0, {})!
      .sections.flatMap((one) => (one.kind === 'facts' && one.name === 'glance' ? one.facts : []));
    expect(leaves!.value).toBe(written);
  });

  it('shows what its trials measured, off its curve by as much as they were off their own day', () => {
    const service = createService();
    const examples = join(import.meta.dirname, '..', '..', 'examples');
    for (const name of ['bakery.dough', 'flours.dough', 'mixers.dough', 'formulas/ferry-loaf.dough'])
      service.setText(`file:///${name}`, readFileSync(join(examples, name), 'utf8'));
    const uri = 'file:///formulas/ferry-loaf.dough';
    const laid = service.overlaid(uri, 'Ferry Loaf')!;
    expect(laid.measured).toHaveLength(6);
    const trials = service
      .sheet(uri, 1, {})!
      .sections.flatMap((one) => (one.kind === 'table' && one.name === 'trial' ? one.rows : []));
    for (const [index, { cells }] of trials.entries()) {
      const { minutes, measuredCelsius } = laid.measured[index]!;
      const course = laid.curve.findLast((point) => point.minutes <= minutes + 1e-6)!;
      const words = cells.off!.text;
      const off =
        words === 'as computed' ? 0 : Number.parseFloat(words) * (words.includes('colder') ? -1 : 1);
      // Said to a tenth of a degree; between two points of the curve it warms by less than another three.
      expect(Math.abs(measuredCelsius - course.celsius - off), words).toBeLessThan(0.36);
    }
    const page = overlayPage([laid, { ...laid, name: 'other', measured: [] }], plainSpeaker);
    expect(page.tables[0]!.notes!.join(' ')).toContain('off what is computed for its own day');
    // A sign for each reading, and one beside the name.
    expect(page.drawing!.wide.match(/<circle/g)).toHaveLength(7);
    expect(overlayPage([{ ...laid, measured: [] }], plainSpeaker).tables[0]!.notes).toEqual([]);
  });
});
