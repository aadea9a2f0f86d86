import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createService, plainDisplay } from '../../core/index.ts';
import { type Display, worded, wordedText } from '../../core/text/display.ts';
import * as figures from '../../core/text/figures.ts';
import { holdsMarked } from '../../core/text/marked.ts';
import { exampleFiles } from '../syntax/texts.ts';

const abroad: Display = { mass: 'ounces', temperature: 'fahrenheit', decimalSign: 'comma' };
const shown = (text: string, display: Display = plainDisplay) => wordedText(text, display);

describe('figures as they are shown', () => {
  it('stand in grams, °C and with a decimal point unless it is set otherwise', () => {
    const { mass, degrees, degreesApart, degreesPerMinute, percent, minutes, minutesBand, duration } =
      figures;
    expect(
      [
        mass(880),
        mass(1234.5),
        degrees(24.55),
        degreesApart(0.5),
        degreesPerMinute(0.65, 2),
        percent(0.0125),
      ].map((text) => shown(text)),
    ).toEqual(['880 g', '1.23 kg', '24.6 °C', '0.5 °C', '0.65 °C/min', '1.25%']);
    expect(
      [minutes(3.4), minutes(12.4), minutesBand(3.4, 12), minutesBand(12.1, 12.4), duration(5400)].map(
        (text) => shown(text),
      ),
    ).toEqual(['3.5 min', '12 min', '3.5–12 min', '12 min', '1 h 30 min']);
  });

  it('has no more digits than its band allows: whole degrees where that is more than 2 °C', () => {
    const { degreesWithBand } = figures;
    expect(shown(degreesWithBand(27.3, 3.1))).toBe('27 °C ± 3 °C');
    expect(shown(degreesWithBand(27.3, 2.01))).toBe('27 °C ± 2 °C');
    expect(shown(degreesWithBand(27.3, 2))).toBe('27.3 °C ± 2 °C');
    expect(shown(degreesWithBand(27.34, 0.76))).toBe('27.3 °C ± 0.8 °C');
    expect(shown(degreesWithBand(-0.3, 4))).toBe('0 °C ± 4 °C');
    for (const none of [0, -1, Number.NaN, Number.POSITIVE_INFINITY, undefined])
      expect(shown(degreesWithBand(27.34, none))).toBe('27.3 °C');
    const us: Display = { ...plainDisplay, temperature: 'fahrenheit' };
    expect(shown(degreesWithBand(27, 3), us)).toBe('81 °F ± 5 °F');
    expect(shown(degreesWithBand(27, 1), us)).toBe('80.6 °F ± 1.8 °F');
  });

  it('never calls a weight nothing that is something', () => {
    const us: Display = { ...plainDisplay, mass: 'ounces' };
    expect([0, 0.001, 0.0499, 0.05, 0.06].map((grams) => shown(figures.mass(grams)))).toEqual([
      '0 g',
      'less than 0.05 g',
      'less than 0.05 g',
      '0.1 g',
      '0.1 g',
    ]);
    expect(shown(figures.mass(0.05), us)).toBe('less than 0.01 oz');
    expect(shown(figures.mass(0), us)).toBe('0 oz');
  });

  // NIST Handbook 44, appendix C: 1 oz = 28.349523125 g, 1 lb = 453.59237 g, both exact. °F = °C × 1.8 + 32, SP 811 B.9.
  it('stand in ounces and pounds, and °F, where that is set; a difference is not shifted', () => {
    const us: Display = { ...plainDisplay, mass: 'ounces', temperature: 'fahrenheit' };
    expect(shown(figures.mass(28.349523125), us)).toBe('1 oz');
    expect(shown(figures.mass(453.59237 * 2.5), us)).toBe('2.5 lb');
    expect(shown(figures.mass(3), us)).toBe('0.11 oz');
    expect(shown(figures.degrees(100), us)).toBe('212 °F');
    expect(shown(figures.degrees(-40), us)).toBe('-40 °F');
    expect(shown(figures.degreesApart(10), us)).toBe('18 °F');
    expect(shown(figures.degreesPerMinute(0.5, 2), us)).toBe('0.9 °F/min');
    const { figure, unit } = figures.weighedFigure(453.59237, 1);
    expect([shown(figure, us), shown(unit, us)]).toEqual(['1.000', 'lb']);
  });

  it('have a decimal comma where that is set, and in nothing else', () => {
    const comma: Display = { ...plainDisplay, decimalSign: 'comma' };
    expect(shown(`Type 1.5 flour: ${figures.percent(0.0125)} of ${figures.mass(1234.5)}.`, comma)).toBe(
      'Type 1.5 flour: 1,25% of 1,23 kg.',
    );
  });

  it('keep a true minus, and any number there is', () => {
    expect(shown(figures.degrees(-2.5).replace('-', '−'))).toBe('−2.5 °C');
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), (grams) => {
        expect(holdsMarked(shown(figures.mass(grams), abroad))).toBe(false);
        expect(shown(figures.mass(grams))).toMatch(/^(-?[\d.]+ k?g|less than 0\.05 g)$/);
      }),
    );
  });

  it('are written as the notation has them in what goes into a file', () => {
    const edit = {
      title: `Write ${figures.degrees(20)}`,
      edits: [{ insert: `at ${figures.degrees(20.5)}` }],
    };
    expect(worded(edit, abroad)).toEqual({ title: 'Write 68 °F', edits: [{ insert: 'at 20.5 °C' }] });
  });

  it('leave data without figures the very object it was, and give the same object again', () => {
    const plain = { text: 'no figure', list: [1, 'two'] };
    expect(worded(plain, abroad)).toBe(plain);
    const marked = { text: figures.mass(5) };
    expect(worded(marked, abroad)).toBe(worded(marked, abroad));
  });
});

describe('the core', () => {
  const bakery = (display: Display) => {
    const service = createService();
    service.setSettings({ display });
    service.setRoots(['file:///quay-lane/']);
    for (const { path, text } of exampleFiles()) service.setText(`file:///quay-lane/${path}`, text);
    return service;
  };
  const everything = (display: Display) => {
    const service = bakery(display);
    return service.uris().map((uri) => {
      const lines = exampleFiles()
        .find(({ path }) => uri.endsWith(path))!
        .text.split('\n');
      return [
        service.findings(uri),
        service.hints(uri, 0, 1e6),
        service.symbols(uri),
        service.totals(uri),
        service.overview(),
        lines.map((line, at) => [
          service.hover(uri, at, 3),
          service.hover(uri, at, line.length - 1),
          service.status(uri, at),
          service.completions(uri, at, line.length),
        ]),
        service.sheet(uri, 5, {}),
      ];
    });
  };

  it('lets no figure out that is not written out', () => {
    for (const display of [plainDisplay, abroad])
      expect(holdsMarked(JSON.stringify(everything(display)))).toBe(false);
  });

  it('shows no gram and no °C of its own where ounces and °F are set', () => {
    const service = bakery(abroad);
    const uri = 'file:///quay-lane/formulas/slack-water-brown.dough';
    const text = JSON.stringify([
      service.findings(uri).map(({ message }) => message),
      service.hints(uri, 0, 1e6),
      service.status(uri, 3),
    ]);
    expect(text).toMatch(/\d,\d+ (?:oz|lb)/);
    expect(text).toMatch(/ °F/);
    expect(text).not.toMatch(/\d (?:k?g|°C)\b/);
  });

  it('obeys a change at once, with the findings it had', () => {
    const service = bakery(plainDisplay);
    const uri = 'file:///quay-lane/formulas/slack-water-brown.dough';
    const before = service.findings(uri);
    service.setSettings({ display: abroad });
    const after = service.findings(uri);
    expect(after.map(({ code }) => code)).toEqual(before.map(({ code }) => code));
    expect(after).not.toEqual(before);
    service.setSettings({ display: plainDisplay });
    expect(service.findings(uri)).toEqual(before);
  });
});

describe('the conditions that are set', () => {
  const uri = 'file:///alone/a.dough';
  const text =
    'formula A:\n  dough temperature 25 °C\n  bread flour        100%\n  water              65%\n  salt               2%\n\n' +
    'mix in spiral:\n  load flour, water, salt\n  speed 1 for 6 min\n';
  const waterOf = (usual: object) => {
    const service = createService();
    service.setText(uri, text);
    service.totals(uri);
    service.setSettings({ usual });
    return service.totals(uri)[0]!;
  };

  it('hold where no bakery says otherwise', () => {
    const [mild, hot] = [waterOf({}), waterOf({ roomCelsius: 26, flourCelsius: 26, tapCelsius: 4 })];
    expect(hot.water!.celsius!).toBeLessThan(mild.water!.celsius! - 3);
    expect(waterOf({ label: 'US' }).label?.regime).toBe('US');
    expect(mild.label?.regime).toBe('EU');
  });

  it('give way to what a bakery says', () => {
    const service = createService();
    service.setSettings({ usual: { roomCelsius: 30, flourCelsius: 30 } });
    service.setText(uri, `bakery Quay:\n  room 21 °C\n  flour 21 °C\n\n${text}`);
    expect(service.totals(uri)[0]!.water!.celsius).toBeCloseTo(waterOf({}).water!.celsius!, 6);
  });
});
