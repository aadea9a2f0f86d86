/** Made-up kitchens: whole files of notation from a seed. Invented data, for what must hold whatever a baker writes. */

/** A generator of numbers between 0 and 1 from a seed (mulberry32, public domain). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

interface Ranges {
  readonly room: readonly [number, number];
  readonly minutes: readonly [number, number];
  readonly water: readonly [number, number];
  readonly kilograms: readonly [number, number];
  readonly target: readonly [number, number];
}

/** Kitchens that there are, and kitchens at the edge of what can be written. */
const plausible: Ranges = {
  room: [14, 32],
  minutes: [3, 14],
  water: [55, 85],
  kilograms: [0.5, 80],
  target: [22, 28],
};
const absurd: Ranges = {
  room: [0, 45],
  minutes: [0, 90],
  water: [40, 110],
  kilograms: [0.2, 200],
  target: [5, 40],
};

const mixers: Readonly<Record<string, number>> = {
  spiral: 2,
  planetary: 6,
  fork: 2,
  'twin arm': 2,
  horizontal: 3,
};
const flours = [
  'bread flour',
  'wholemeal wheat',
  'spelt 630',
  'T65',
  'type 550',
  'very strong flour',
  'medium rye',
  'plain flour',
];

/** One formula with its bakery and its programme, by kind of kitchen and seed. */
export function kitchen(seed: number, kind: 'plausible' | 'absurd'): string {
  const random = seeded(seed);
  const ranges = kind === 'plausible' ? plausible : absurd;
  const between = ([least, most]: readonly [number, number], places = 0): string =>
    (least + random() * (most - least)).toFixed(places);
  const some = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const chance = (part: number): boolean => random() < part;

  const bakery = ['bakery Quay Lane:'];
  if (chance(0.8)) bakery.push(`  room ${between(ranges.room, 1)} °C`);
  if (chance(0.6)) bakery.push(`  flour ${between(ranges.room, 1)} °C`);
  if (chance(0.6)) bakery.push(`  tap water ${between([4, 26], 1)} °C`);
  if (chance(0.2)) bakery.push('  ice to hand');
  if (chance(0.2)) bakery.push(`  cold store ${between([2, 9])} °C`);
  bakery.push('  scale step 1 g');

  const flour = some(flours);
  const second = chance(0.3) ? some(flours.filter((one) => one !== flour)) : undefined;
  const share = second === undefined ? 100 : Number(between([50, 95]));
  const lines = [`  ${flour}  ${share}%`];
  if (second !== undefined) lines.push(`  ${second}  balance`);
  const first = [flour, ...(second === undefined ? [] : [second])];
  const late: string[] = [];
  const put = (name: string, amount: string, to: string[] = first): void => {
    lines.push(`  ${name}  ${amount}`);
    to.push(name);
  };
  const given = chance(0.15) ? `, at ${between([4, 35])} °C` : '';
  put('water', `${between(ranges.water, 1)}%${given}`);
  put('salt', '2%', chance(0.3) ? late : first);
  put('fresh yeast', `${between([0.2, 3], 1)}%`, chance(0.2) ? late : first);
  if (chance(0.25)) put('butter', `${between([2, 40])}%`, chance(0.5) ? late : first);
  if (chance(0.2)) put('sugar', `${between([2, 18])}%`);
  if (chance(0.15)) put('egg', `${between([5, 40])}%`);
  if (chance(0.15)) put('whole milk', `${between([5, 40])}%`);
  let poolish = '';
  if (chance(0.25)) {
    poolish = `\npreferment poolish:\n  draws ${between([10, 40])}% of flour\n  ${flour}  100%\n  water  100%\n  instant yeast  0.1%\n  ferment 12 h at ${between([14, 24])} °C\n`;
    first.push('poolish');
  }

  const byHand = chance(0.2);
  const name = byHand ? 'by hand' : some(Object.keys(mixers));
  const work = (): string => {
    const minutes = between(ranges.minutes, 1);
    return byHand
      ? `  knead ${minutes} min`
      : `  speed ${1 + Math.floor(random() * mixers[name]!)} for ${minutes} min`;
  };
  const programme = [`  load ${first.join(', ')}`, byHand ? work() : `  speed 1 for ${between([1, 6])} min`];
  if (chance(0.3)) programme.push(`  rest ${between([5, 60])} min`);
  if (late.length > 0) programme.push(`  add ${late.join(', ')}`);
  if (late.length > 0 || chance(0.7)) programme.push(work());
  const target = chance(0.7) ? `  dough temperature ${between(ranges.target)} °C\n` : '';
  const folds = some(['', ', fold at 45 min', ', fold at 30 min, fold at 1 h']);
  return (
    `${bakery.join('\n')}\n\nformula Quay Test:\n  yield ${between(ranges.kilograms, 1)} kg\n${target}${lines.join('\n')}\n${poolish}\n` +
    `mix ${byHand ? name : `in ${name}`}:\n${programme.join('\n')}\n\n` +
    `process:\n  bulk ${between([45, 180])} min at 25 °C${folds}\n  divide\n  proof 60 min at 27 °C\n  bake 35 min at 230 °C\n`
  );
}
