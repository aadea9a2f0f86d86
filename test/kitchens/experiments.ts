import { seeded } from './kitchens.ts';

/** Made-up classes: a file with an experiment from a seed, and the same with mixers that truly run otherwise. Invented data. */
export interface Class {
  readonly believed: string;
  readonly real: string;
}

const flours = [
  'bread flour',
  'wholemeal wheat',
  'spelt 630',
  'T65',
  'very strong flour',
  'quay soft',
  'quay strong',
];
const kinds: Readonly<Record<string, readonly number[]>> = {
  spiral: [100, 200],
  planetary: [60, 110, 190],
  fork: [30, 60],
};
const soft =
  'flour quay soft:\n  grain wheat\n  milling white\n  protein 9%\n\nflour quay strong:\n  grain wheat\n  milling white\n  protein 13.4%\n\n';

/** Two to five doughs, variants of variants, by hand and in a mixer, each read at the same minutes. */
export function madeUpClass(seed: number): Class {
  const random = seeded(seed);
  const between = (least: number, most: number, places = 0): string =>
    (least + random() * (most - least)).toFixed(places);
  const some = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const chance = (part: number): boolean => random() < part;

  const room = 16 + random() * 14;
  const bakery = `bakery Quay Lane:\n  room ${room.toFixed(1)} °C\n  flour ${(room - 2).toFixed(1)} °C\n  tap water ${between(6, 22)} °C\n\n`;
  const kind = some(Object.keys(kinds));
  const speeds = kinds[kind]!;
  const friction = chance(0.2) ? `  friction ${between(8, 24)} °C\n` : '';
  const times = 0.7 + random() * 0.8;
  const mixer = (isReal: boolean): string =>
    `mixer quay one:\n  kind ${kind}\n  bowl 300 g to 40 kg\n${speeds
      .map((rpm, index) => {
        const warms = times * (kind === 'fork' ? 0.2 : 0.35) * (index + 1);
        return `  speed ${index + 1} ${rpm} rpm${isReal ? `, warms ${warms.toFixed(3)} °C/min` : ''}\n`;
      })
      .join('')}${isReal ? '' : friction}\n`;

  const flourOf = new Map<string, string>();
  let formulas = '';
  const count = 2 + Math.floor(random() * 4);
  for (const name of ['A', 'B', 'C', 'D', 'E'].slice(0, count).map((letter) => `Quay ${letter}`)) {
    const base = some([...flourOf.keys()]);
    if (base === undefined) {
      const flour = some(flours);
      const start = chance(0.3)
        ? `  load flour, water\n  speed 1 for 2 min\n  rest ${between(10, 40)} min\n  add the rest\n`
        : '  load all\n';
      formulas += `formula ${name}:\n  yield ${some(['900 g', '2 kg', '6 pieces of 350 g'])}\n  ${flour}  100%\n  water  ${between(56, 74)}%, at ${between(4, 26)} °C\n  salt  2%\n  fresh yeast  1.5%\n\nmix in quay one:\n${start}  speed 1 for ${between(2, 6)} min\n  speed 2 for ${between(2, 8)} min\n\n`;
      flourOf.set(name, flour);
      continue;
    }
    const former = flourOf.get(base)!;
    const flour = chance(0.5) ? some(flours.filter((one) => one !== former)) : former;
    formulas += `formula ${name} like ${base}:\n  water  ${between(56, 84)}%, at ${between(4, 26)} °C\n`;
    formulas += flour === former ? '\n' : `  ${flour}  100%\n  without ${former}\n\n`;
    flourOf.set(name, flour);
  }
  const work = (): string => {
    const minutes = some([12, 20, 30, 45, 60]);
    const kneaded = some([`knead ${minutes} min`, `knead 5 min, rest 20 min, knead ${minutes} min`]);
    return some([
      '',
      `, by hand, ${kneaded}`,
      `, in quay one, speed 1 for 3 min, speed 2 for ${minutes} min`,
      `, speed 1 for ${minutes} min`,
    ]);
  };
  const doughs = [...flourOf.keys()].flatMap((name) =>
    Array.from({ length: chance(0.2) ? 2 : 1 }, () => `  dough ${name}${work()}\n`),
  );
  const batch = chance(0.5) ? `  batch ${some(['700 g', '1.2 kg', '5 kg'])}\n` : '';
  const reads = some(['3, 8, 16, 30, 60 min', '5, 10, 20, 45 min', '8 min, 1/4 h, 1 h']);
  const plan = `experiment Quay lesson, 2026-09-03:\n${batch}${[...new Set(doughs)].join('')}  read at ${reads}\n`;
  const text = (isReal: boolean): string => bakery + soft + mixer(isReal) + formulas + plan;
  return { believed: text(false), real: text(true) };
}
