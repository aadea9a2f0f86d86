import { describe, expect, it } from 'vitest';
import { createService } from '../../core/index.ts';
import { partsOf } from './parts.ts';

const bread = '  yield 10 kg\n  bread flour 100%\n  water 62%\n  salt 2%\n  fresh yeast 2%\n';
const milk = '  yield 10 kg\n  bread flour 100%\n  whole milk 55%\n  egg 10%\n  salt 2%\n  fresh yeast 3%\n';

describe('what every sheet advises', () => {
  it('once each: raw flour, machine, dust, oven, loads, allergens and the law', () => {
    const said = cautions(
      `${bread}mix in spiral:\n  load flour, water, salt, fresh yeast\n  speed 1 for 5 min\n`,
    );
    for (const about of [
      'Raw flour',
      'running bowl',
      'Stop the mixer',
      'dust',
      'burn',
      'heavy',
      'Allergens',
      'local food law',
    ])
      expect(said.filter((one) => one.includes(about))).toHaveLength(1);
    expect(said).toHaveLength(4);
  });

  it('of raw egg where there is egg, and of no machine where hands mix', () => {
    const said = cautions(milk).join(' ');
    expect(said).toContain('Raw flour, raw dough and raw egg are not to be tasted');
    expect(cautions(bread).join(' ')).toContain('Raw flour and raw dough are not to be tasted');
    expect(said).toContain('asthma');
    expect(said).toContain('explode');
    expect(said).not.toContain('running bowl');
    expect(said).toContain('dust');
  });
});

describe('water that scalds', () => {
  const mixed = (water: string) =>
    cautions(
      `  yield 10 kg\n  dough temperature 24 °C\n  bread flour 100%\n  water 62%${water}\n  salt 2%\nmix in spiral:\n  load flour, water, salt\n  speed 1 for 5 min\n`,
    );

  // 45 °C: common practice, no source.
  it('is spoken of above 45 °C, with its temperature', () => {
    expect(mixed(', at 50 °C')[0]).toBe(
      'Water at 50 °C can scald, and kills yeast that meets it: pour it away from hands, and keep the yeast off it.',
    );
  });

  it.each(['', ', at 45 °C', ', at 20 °C'])('and not at “%s”', (water) => {
    expect(mixed(water).join(' ')).not.toContain('scald');
  });

  it('also where the dough would need it so hot', () => {
    const said = cautions(
      '  yield 10 kg\n  dough temperature 38 °C\n  bread flour 100%\n  water 50%\n  salt 2%\nmix in spiral:\n  load flour, water, salt\n  speed 1 for 2 min\n',
    );
    expect(said[0]).toMatch(/^Water at \d\d(\.\d)? °C can scald/);
  });
});

describe('water that is poured hot outside of the bowl', () => {
  it('is spoken of with its temperature', () => {
    const scald = (celsius: string) =>
      cautions(`${bread}soaker scald:\n  dark rye 500 g\n  water 1 kg, at ${celsius}\n`)[0];
    expect(scald('95 °C')).toMatch(/^Water at 95 °C can scald/);
    expect(scald('40 °C')).not.toContain('scald');
  });
});

describe('what the text names', () => {
  const dangers = {
    lye: 'Lye burns skin',
    boiling: 'Boiling liquid',
    fat: 'Hot fat burns',
    sheeter: 'heeter draws fingers in',
    divider: 'ivider crushes',
    slicer: 'licer cuts',
  };
  const named = (lines: string) => {
    const said = cautions(lines).join(' ');
    return Object.entries(dangers).flatMap(([danger, words]) => (said.includes(words) ? [danger] : []));
  };
  const does = (step: string) => named(`${bread}process:\n  ${step}\n`);
  const weighs = (line: string) => named(`${bread}  ${line}\n`);

  // Common practice, no source: what hurts in a bakery beside mixer and oven.
  it.each<[string, string[]]>([
    ['dip 20 s, lye of 4%', ['lye']],
    ['brush with caustic soda', ['lye']],
    ['boil 30 s, malt bath', ['boiling']],
    ['poach 1 min', ['boiling']],
    ['bring milk to the boil', ['boiling']],
    ['deep-fry 3 min at 180 °C', ['fat']],
    ['fry 90 s a side, hot oil', ['fat']],
    ['sheet to 4 mm', ['sheeter']],
    ['roll out, on the sheeter to 4 mm', ['sheeter']],
    ['divide, with the divider', ['divider']],
    ['divide, divider-rounder', ['divider']],
    ['cut, bread slicer at 12 mm', ['slicer']],
    ['sheet and slice, sheeter and slicer', ['sheeter', 'slicer']],
  ])('“%s” is spoken of', (step, expected) => {
    expect(does(step)).toEqual(expected);
  });

  it.each([
    'brush, olive oil',
    'brush with live oil',
    'roll in barley flakes',
    'add boiled potatoes',
    'add fried onions',
    'divide',
    'divide 24 pieces by hand',
    'slice by hand',
    'place on a sheet',
    'sheet pan, oiled',
    'sheet by hand to 6 mm',
    'proof 1 h, on baking sheets',
    'bake 30 min at 230 °C, no lye',
    'dip, without lye',
    'finish in the air fryer',
    'score, so that it bursts boldly',
  ])('“%s” raises no alarm', (step) => {
    expect(does(step)).toEqual([]);
  });

  it('speaks of an ingredient and of a bath by its name', () => {
    expect(weighs('boiling water 20%')).toEqual(['boiling']);
    expect(weighs('frying fat 10%')).toEqual(['fat']);
    expect(weighs('olive oil 5%')).toEqual([]);
    expect(weighs('barley flour 5%')).toEqual([]);
    expect(named(`${bread}bath lye dip:\n  water 1 kg\n  sodium hydroxide 40 g\n`)).toEqual(['lye']);
    expect(named(`${bread}bath boiling malt:\n  water 1 kg\n  malt 40 g\n`)).toEqual(['boiling']);
    expect(named(`${bread}bath egg wash:\n  egg 100 g\n`)).toEqual([]);
    expect(named(`${bread}bath lye-free dip:\n  water 1 kg\n`)).toEqual([]);
  });

  it('names the machines of a process together', () => {
    const said = cautions(
      `${bread}process:\n  divide, with the divider\n  sheet to 4 mm\n  cool\n  cut, slicer\n`,
    );
    expect(said).toContain(
      'Guards shut, no hand near while it runs, off and unplugged before clearing and cleaning: the sheeter draws fingers in, the divider crushes and shears and the slicer cuts to the bone.',
    );
  });
});

// Two hours and 5 to 60 °C: common practice; food law of many countries draws it more narrowly.
describe('dough that stands warm with egg or milk', () => {
  const standing = (process: string, lines = milk) =>
    cautions(`${lines}process:\n${process}`).find((one) => one.includes('stands'));

  it('from two hours on, told with what is in it and which steps they are', () => {
    expect(
      standing('  bulk 80 min at 26 °C\n  divide\n  proof 40 min at 28 °C\n  bake 30 min at 190 °C\n'),
    ).toBe(
      'The dough stands 2 h between 5 °C and 60 °C (“bulk” and “proof”) with whole milk and egg in it: keep such times short and the bench clean, and follow local food law.',
    );
  });

  it.each([
    ['shorter', '  bulk 70 min at 26 °C\n  proof 40 min at 28 °C\n  bake 30 min at 190 °C\n', milk],
    ['without egg and milk', '  bulk 4 h at 26 °C\n', bread],
    ['after the oven', '  bulk 1 h\n  bake 30 min at 190 °C\n  cool 4 h\n', milk],
  ])('not when it is %s', (_, process, lines) => {
    expect(standing(process, lines)).toBeUndefined();
  });

  it('counts dough in the cold only until it is cold itself', () => {
    const pieces = milk.replace('10 kg', '20 pieces of 500 g');
    const told = standing(
      '  bulk 100 min at 24 °C\n  divide\n  retard 14 h at 3 °C\n  bake 30 min at 190 °C\n',
      pieces,
    )!;
    expect(told).toContain('(“bulk” and “retard”)');
    const hours = Number(/stands (\d+) h/.exec(told)![1]);
    expect(hours).toBeGreaterThanOrEqual(2);
    expect(hours).toBeLessThan(10);
  });

  it('speaks of a part by its name, and not of one in the cold', () => {
    const soaker = (held: string) =>
      cautions(`${bread}soaker milk soak:\n  whole milk 300 g\n  rolled oats 100 g\n  soak ${held}\n`).find(
        (one) => one.includes('stands'),
      );
    expect(soaker('10 h at 20 °C')).toMatch(/^milk soak stands 10 h .* with whole milk in it/);
    expect(soaker('10 h at 4 °C')).toBeUndefined();
  });
});

describe('the oven', () => {
  const baked = (steps: string, flour = 'bread flour') =>
    cautions(`${bread.replace('bread flour', flour)}process:\n${steps}`);
  const acrylamide = (steps: string, flour?: string) =>
    baked(steps, flour).find((one) => one.includes('acrylamide'));

  // Commission Regulation (EU) 2017/2158, Annex IV: wheat based bread 50 µg/kg, other soft bread 100 µg/kg; benchmarks and
  // no limits by its Article 1.
  it('names the benchmark of dark bakes: 50 µg/kg for wheat bread', () => {
    expect(acrylamide('  bake 30 min at 250 °C\n')).toBe(
      'Baked at up to 250 °C, a dark crust holds more acrylamide: bake golden rather than brown. The benchmark of Regulation (EU) 2017/2158 for soft wheat bread is 50 µg/kg; it is no limit, and only a laboratory tells the figure of a loaf.',
    );
  });

  it('and 100 µg/kg where most of the flour is of another grain', () => {
    expect(acrylamide('  bake 30 min at 250 °C\n', 'dark rye')).toContain('is 100 µg/kg');
  });

  it.each([
    ['so hot', '  bake 30 min at 240 °C\n', true],
    ['so long', '  bake 15 min at 220 °C\n  bake 30 min at 200 °C\n', true],
    ['said to be dark', '  bake dark 30 min at 220 °C\n', true],
    ['a light bake', '  bake 30 min at 220 °C\n', false],
    ['a long cool one', '  bake 2 h at 120 °C\n', false],
  ])('a bake is dark when it is %s', (_, steps, isDark) => {
    expect(acrylamide(steps) !== undefined).toBe(isDark);
  });

  // Common practice: lean bread 200–208 °F, rich bread 185–195 °F inside.
  it('advises a core temperature, a lower one for a rich dough, and none where nothing is baked', () => {
    const core = (lines: string) => cautions(lines).find((one) => one.startsWith('Done inside'));
    const bake = 'process:\n  bake 30 min at 210 °C\n';
    expect(core(bread + bake)).toContain('93 °C to 98 °C');
    expect(core(`${bread}  butter 12%\n${bake}`)).toContain('85 °C to 91 °C');
    expect(core(bread)).toBeUndefined();
    expect(((200 - 32) * 5) / 9).toBeCloseTo(93.3, 1);
    expect(((195 - 32) * 5) / 9).toBeCloseTo(90.6, 1);
  });
});

function cautions(lines: string): readonly string[] {
  const service = createService();
  service.setText('file:///quay-lane/one.dough', `formula Tide Mill:\n${lines}`);
  return partsOf(service.sheet('file:///quay-lane/one.dough', 0, {})!).cautions;
}
