import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createService, plainDisplay } from '../../core/index.ts';
import type { Display } from '../../core/text/display.ts';
import { english } from '../../core/words/language.ts';
import { plainSpeaker, speakerOf } from '../../core/words/speak.ts';
import { exampleFiles } from '../syntax/texts.ts';

const abroad: Display = { mass: 'ounces', temperature: 'fahrenheit', decimalSign: 'comma' };

describe('figures as they are shown', () => {
  const plain = plainSpeaker;

  it('stand in grams, °C and with a decimal point unless it is set otherwise', () => {
    expect([
      ...[plain.mass(880), plain.mass(1234.5), plain.celsius(24.55), plain.celsiusApart(0.5)],
      ...[plain.celsiusPerMinute(0.65, 2), plain.percent(0.0125)],
    ]).toEqual(['880 g', '1.23 kg', '24.6 °C', '0.5 °C', '0.65 °C/min', '1.25%']);
    expect([
      ...[plain.minutes(3.4), plain.minutes(12.4), plain.minutesBand(3.4, 12)],
      ...[plain.minutesBand(12.1, 12.4), plain.duration(5400)],
    ]).toEqual(['3.5 min', '12 min', '3.5–12 min', '12 min', '1 h 30 min']);
  });

  it('has no more digits than its band allows: whole degrees where that is more than 2 °C', () => {
    expect(plain.celsiusBand(27.3, 3.1)).toBe('27 °C ± 3 °C');
    expect(plain.celsiusBand(27.3, 2.01)).toBe('27 °C ± 2 °C');
    expect(plain.celsiusBand(27.3, 2)).toBe('27.3 °C ± 2 °C');
    expect(plain.celsiusBand(27.34, 0.76)).toBe('27.3 °C ± 0.8 °C');
    expect(plain.celsiusBand(-0.3, 4)).toBe('0 °C ± 4 °C');
    for (const none of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(plain.celsiusBand(27.34, none)).toBe('27.3 °C');
    const us = speakerOf(english, { ...plainDisplay, temperature: 'fahrenheit' });
    expect(us.celsiusBand(27, 3)).toBe('81 °F ± 5 °F');
    expect(us.celsiusBand(27, 1)).toBe('80.6 °F ± 1.8 °F');
  });

  it('never calls a weight nothing that is something', () => {
    const us = speakerOf(english, { ...plainDisplay, mass: 'ounces' });
    expect([0, 0.001, 0.0499, 0.05, 0.06].map(plain.mass)).toEqual([
      '0 g',
      'less than 0.05 g',
      'less than 0.05 g',
      '0.1 g',
      '0.1 g',
    ]);
    expect(us.mass(0.05)).toBe('less than 0.01 oz');
    expect(us.mass(0)).toBe('0 oz');
  });

  // NIST Handbook 44, appendix C: 1 oz = 28.349523125 g, 1 lb = 453.59237 g, both exact. °F = °C × 1.8 + 32, SP 811 B.9.
  it('stand in ounces and pounds, and °F, where that is set; a difference is not shifted', () => {
    const us = speakerOf(english, { ...plainDisplay, mass: 'ounces', temperature: 'fahrenheit' });
    expect(us.mass(28.349523125)).toBe('1 oz');
    expect(us.mass(453.59237 * 2.5)).toBe('2.5 lb');
    expect(us.mass(3)).toBe('0.11 oz');
    expect(us.celsius(100)).toBe('212 °F');
    expect(us.celsius(-40)).toBe('−40 °F');
    expect(us.celsiusApart(10)).toBe('18 °F');
    expect(us.celsiusPerMinute(0.5, 2)).toBe('0.9 °F/min');
    expect(us.weighed(453.59237, 1)).toEqual({ figure: '1.000', unit: 'lb' });
  });

  it('have a decimal comma where that is set', () => {
    const comma = speakerOf(english, { ...plainDisplay, decimalSign: 'comma' });
    expect([comma.percent(0.0125), comma.mass(1234.5), comma.celsius(-2.5)]).toEqual([
      '1,25%',
      '1,23 kg',
      '−2,5 °C',
    ]);
  });

  it('are figures, whatever the number', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), (grams) => {
        expect(plain.mass(grams)).toMatch(/^(−?[\d.]+ k?g|less than 0\.05 g)$/);
        expect(speakerOf(english, abroad).mass(grams)).toMatch(/^(−?[\d,]+ (oz|lb)|less than 0[.,]01 oz)$/);
      }),
    );
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
      expect(JSON.stringify(everything(display))).not.toMatch(/[\uE000-\uF8FF]/);
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
