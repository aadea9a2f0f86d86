import Qty from 'js-quantities';
import { describe, expect, it } from 'vitest';
import { scanQuantity } from '../../core/syntax/quantity.ts';
import { type Measure, metricCupMillilitres, unitNames, units } from '../../core/syntax/units.ts';

/** How much of its base unit one of a unit is, from what was published; the places in the sources are cited from memory. */
const published: readonly (readonly [string, Measure, number, string])[] = [
  ['mg', 'mass', 1e-3, 'SI Brochure, 9th edition (BIPM 2019), table 7: milli is 10^-3'],
  ['g', 'mass', 1, 'the base unit here'],
  ['kg', 'mass', 1e3, 'SI Brochure, table 7: kilo is 10^3'],
  ['tonne', 'mass', 1e6, 'SI Brochure, table 8: 1 t = 10^3 kg'],
  ['lb', 'mass', 453.59237, 'NIST Handbook 44, appendix C: 1 pound avoirdupois = 453.592 37 g, exactly'],
  ['oz', 'mass', 453.59237 / 16, 'NIST Handbook 44, appendix C: 1 pound avoirdupois = 16 ounces'],
  ['ml', 'volume', 1, 'the base unit here'],
  ['cl', 'volume', 10, 'SI Brochure, table 7: centi is 10^-2; table 8: the litre'],
  ['dl', 'volume', 100, 'SI Brochure, table 7: deci is 10^-1; table 8: the litre'],
  ['l', 'volume', 1000, 'SI Brochure, table 8: 1 l = 1 dm^3'],
  ['tsp', 'volume', 5, 'US 21 CFR 101.9(b)(5)(viii): a teaspoon means 5 mL'],
  ['tbsp', 'volume', 15, 'US 21 CFR 101.9(b)(5)(viii): a tablespoon means 15 mL'],
  ['cup', 'volume', 250, 'common practice, no source: the metric cup; a bakery may state its own'],
  ['s', 'duration', 1, 'SI Brochure, table 2'],
  ['min', 'duration', 60, 'SI Brochure, table 8: 1 min = 60 s'],
  ['h', 'duration', 3600, 'SI Brochure, table 8: 1 h = 60 min'],
  ['day', 'duration', 86_400, 'SI Brochure, table 8: 1 d = 24 h'],
  ['°C', 'temperature', 1, 'SI Brochure, table 4'],
  ['°F', 'temperature', 5 / 9, 'NIST SP 811 (2008), B.8: a degree Fahrenheit is 5/9 of a degree Celsius'],
  ['rpm', 'turns', 1, 'the base unit here'],
  ['%', 'fraction', 1e-2, 'SI Brochure, 5.4.7: 1 % = 0.01'],
  ['pieces', 'count', 1, 'the base unit here'],
  ['times', 'times', 1, 'the base unit here'],
  ['kJ', 'energy', 1, 'the base unit here'],
  ['kcal', 'energy', 4.184, 'NIST SP 811 (2008), B.8: the thermochemical calorie is 4.184 J'],
  ['°C/min', 'warming', 1, 'the base unit here'],
  ['°F/min', 'warming', 5 / 9, 'NIST SP 811, B.8'],
  ['g/ml', 'density', 1, 'the base unit here'],
];

describe('units against what was published', () => {
  it.each(published)('%s', (spelling, measure, factor) => {
    const unit = units.get(spelling)!;
    expect(unit.measure).toBe(measure);
    expect(unit.factor).toBeCloseTo(factor, 12);
    expect(unit.canonical).toBe(spelling);
  });

  it('leaves no unit out', () => {
    expect(published.map(([spelling]) => spelling).sort()).toEqual([...unitNames].sort());
    expect(metricCupMillilitres).toBe(250);
  });

  it.each([
    ['32 °F', 0],
    ['212 °F', 100],
    ['-40 °F', -40],
    ['98.6 °F', 37],
  ])('%s is %d °C (NIST SP 811, B.8: t/°C = (t/°F − 32)/1.8)', (text, celsius) => {
    const quantity = scanQuantity(text, 0);
    expect(quantity?.kind === 'temperature' ? quantity.celsius : undefined).toBeCloseTo(celsius, 10);
  });

  it('an Imperial or US volume is read only in the spellings that say how large it is', () => {
    for (const spelling of ['pint', 'pt', 'gal', 'gallon', 'fl oz', 'stick'])
      expect(units.has(spelling)).toBe(false);
  });

  // js-quantities, a library of other people. Its spoons and cups are those of the United States, ours metric.
  it.each([
    ['mg', 'mg', 'g'],
    ['kg', 'kg', 'g'],
    ['tonne', 'metric-ton', 'g'],
    ['oz', 'oz', 'g'],
    ['lb', 'lb', 'g'],
    ['cl', 'cl', 'ml'],
    ['dl', 'dl', 'ml'],
    ['l', 'l', 'ml'],
    ['min', 'min', 's'],
    ['h', 'h', 's'],
    ['day', 'day', 's'],
    ['kcal', 'kcal', 'kJ'],
    ['g/ml', 'g/ml', 'kg/l'],
  ])('%s as js-quantities has it', (spelling, theirs, base) => {
    // It has the ounce to nine figures.
    expect(units.get(spelling)!.factor / Qty(1, theirs).to(base).scalar).toBeCloseTo(1, 8);
  });

  it.each(['0 °F', '75 °F', '451 °F'])('%s as js-quantities has it', (text) => {
    const quantity = scanQuantity(text, 0);
    const theirs = Qty(Number.parseFloat(text), 'tempF').to('tempC').scalar;
    expect(quantity?.kind === 'temperature' ? quantity.celsius : undefined).toBeCloseTo(theirs, 9);
  });
});
