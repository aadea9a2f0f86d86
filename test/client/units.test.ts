import { describe, expect, it } from 'vitest';
import { plainDisplay, unitsOf } from '../../client/preview/units.ts';

const plain = unitsOf(plainDisplay);
const comma = unitsOf({ ...plainDisplay, decimalSign: 'comma' });
const american = unitsOf({ mass: 'ounces', temperature: 'fahrenheit', decimalSign: 'point' });

describe('a figure that is typed', () => {
  it.each([
    ['12.5', 12.5],
    ['12,5', 12.5],
    [' 24 ', 24],
    ['−3,5', -3.5],
    ['24.', 24],
    [',5', 0.5],
    ['0,125', 0.125],
  ])('"%s" is read with a point or a comma', (typed, figure) => {
    expect(plain.figureOf(typed)).toBe(figure);
    expect(comma.figureOf(typed)).toBe(figure);
  });

  it.each(['abc', '1.2.3', '1.250,5', '12 5', '1e3', '-', '5 kg'])('"%s" is no number', (typed) => {
    expect(plain.figureOf(typed)).toBeNaN();
  });

  it('may hold three digits behind the sign that is set, and not behind the other, which may part thousands', () => {
    expect(plain.figureOf('14.826')).toBe(14.826);
    expect(plain.figureOf('14,826')).toBeNaN();
    expect(comma.figureOf('14,826')).toBe(14.826);
    expect(comma.figureOf('14.826')).toBeNaN();
  });

  it('is nothing where nothing is typed', () => {
    expect(plain.figureOf(' ')).toBeUndefined();
  });
});

describe('a figure that is shown', () => {
  it('has the decimal sign that is set and no zeros behind', () => {
    expect(plain.text(21.4)).toBe('21.4');
    expect(comma.text(21.4)).toBe('21,4');
    expect(comma.text(-0.0001)).toBe('0');
    expect(plain.text(69.998, 1)).toBe('70');
    expect(plain.text(100)).toBe('100');
  });

  // NIST Special Publication 811, appendix B.8: 1 lb = 0.45359237 kg and 1 oz = 1/16 lb, exactly; °C = (°F − 32)/1.8.
  it('stands for the same in pounds, ounces and degrees Fahrenheit', () => {
    expect(american.gramsOfHeavy(10)).toBeCloseTo(4535.9237, 6);
    expect(american.lightOf(28.349523125)).toBeCloseTo(1, 12);
    expect(american.celsiusOf(75.2)).toBeCloseTo(24, 12);
    expect(american.degreesOf(american.celsiusOf(70))).toBeCloseTo(70, 12);
    expect([american.heavy, american.light, american.degrees]).toEqual(['lb', 'oz', '°F']);
  });
});
