import { entryOf } from '../text/element.ts';
import { type Message, message } from '../words/message.ts';
import type { CatalogueIngredient } from './catalogue-ingredient.ts';
import { flours } from './flours.ts';

export type TypeCountry = 'Germany' | 'Austria' | 'France' | 'Italy';

/** A flour type as a country defines it: by the ash of the dry matter, as fractions. */
export interface FlourType {
  readonly country: TypeCountry;
  readonly name: string;
  readonly aliases: readonly string[];
  readonly grain: 'wheat' | 'rye' | 'spelt';
  /** Least ash of the dry matter; absent where only a limit above is set. */
  readonly leastAsh?: number;
  /** Most ash of the dry matter; absent where only a limit below is set. */
  readonly mostAsh?: number;
  /** Least protein of the dry matter, where the country asks for one. */
  readonly leastProtein?: number;
  readonly source: Message;
  /** The limits were recalled and not read: they are to be checked before anything hangs on them. */
  readonly fromMemory?: true;
}

type Row = readonly [
  name: string,
  aliases: readonly string[],
  least: number | undefined,
  most: number | undefined,
];

const din = message('flour-type.din');
const codex = message('flour-type.codex');
const france = message('flour-type.france');
const italy = message('flour-type.italy');

function types(
  country: TypeCountry,
  grain: FlourType['grain'],
  source: Message,
  rows: readonly Row[],
  fromMemory = false,
): FlourType[] {
  return rows.map(([name, aliases, least, most]) => ({
    country,
    name,
    aliases,
    grain,
    source: fromMemory ? message('flour-type.from-memory', { source }) : source,
    ...(least === undefined ? {} : { leastAsh: least / 100 }),
    ...(most === undefined ? {} : { mostAsh: most / 100 }),
    ...(fromMemory ? { fromMemory: true as const } : {}),
  }));
}

const leastProteinOfItaly: ReadonlyMap<string, number> = new Map([
  ['type 00', 0.09],
  ['type 0', 0.11],
  ['type 1', 0.12],
  ['type 2', 0.12],
  ['integrale', 0.12],
]);

/** The flour types of Germany, Austria, France and Italy with their ash limits, from the whitest to the darkest. */
export const flourTypes: readonly FlourType[] = [
  ...types('Germany', 'wheat', din, [
    ['type 405', ['wheat 405', 'T405'], undefined, 0.5],
    ['type 550', ['wheat 550', 'T550'], 0.51, 0.63],
    ['type 812', ['wheat 812', 'T812'], 0.64, 0.9],
    ['type 1050', ['wheat 1050', 'T1050'], 0.91, 1.2],
    ['type 1600', ['wheat 1600', 'T1600'], 1.21, 1.8],
    ['type 1700', ['wheat 1700', 'T1700', 'wheat meal 1700'], undefined, 2.1],
  ]),
  ...types(
    'Germany',
    'rye',
    din,
    [
      ['rye 815', ['rye type 815'], undefined, 0.9],
      ['rye 997', ['rye type 997'], 0.91, 1.1],
      ['rye 1150', ['rye type 1150'], 1.11, 1.3],
      ['rye 1370', ['rye type 1370'], 1.31, 1.6],
      ['rye 1740', ['rye type 1740'], 1.61, 1.8],
    ],
    true,
  ),
  ...types(
    'Germany',
    'spelt',
    din,
    [
      ['spelt 630', ['spelt type 630', 'white spelt', 'light spelt'], undefined, 0.7],
      ['spelt 812', ['spelt type 812'], 0.71, 0.9],
      ['spelt 1050', ['spelt type 1050'], 0.91, 1.2],
    ],
    true,
  ),
  ...types('Austria', 'wheat', codex, [
    ['W480', ['type 480'], 0.33, 0.58],
    ['W700', ['type 700'], 0.63, 0.79],
    ['W1600', [], 1.5, 1.75],
  ]),
  ...types('Austria', 'rye', codex, [
    ['R500', [], 0.43, 0.57],
    ['R960', [], 0.88, 1.12],
    ['R2500', [], 2.0, 3.0],
  ]),
  ...types('France', 'wheat', france, [
    ['T45', ['type 45'], undefined, 0.5],
    ['T55', ['type 55'], 0.5, 0.6],
    ['T65', ['type 65'], 0.62, 0.75],
    ['T80', ['type 80'], 0.75, 0.9],
    ['T110', ['type 110'], 1.0, 1.2],
    ['T150', ['type 150'], 1.4, undefined],
  ]),
  ...types(
    'France',
    'rye',
    france,
    [
      ['rye T70', ['T70'], 0.6, 1.0],
      ['rye T85', ['T85'], 0.75, 1.25],
      ['rye T130', ['T130'], 1.2, 1.5],
      ['rye T170', ['T170'], 1.5, undefined],
    ],
    true,
  ),
  ...types('Italy', 'wheat', italy, [
    ['type 00', ['tipo 00', '00 flour', 'farina 00'], undefined, 0.55],
    ['type 0', ['tipo 0', '0 flour', 'farina 0'], undefined, 0.65],
    ['type 1', ['tipo 1', 'farina 1'], undefined, 0.8],
    ['type 2', ['tipo 2', 'farina 2'], undefined, 0.95],
    ['integrale', ['tipo integrale', 'farina integrale'], 1.3, 1.7],
  ]).map((one) => ({ ...one, leastProtein: entryOf(leastProteinOfItaly, one.name) })),
];

/** The names of types by their folded form, in the capitals that their countries write. */
export const writtenTypes: ReadonlyMap<string, string> = new Map(
  flourTypes.flatMap(({ name, aliases }) =>
    [name, ...aliases].map((one) => [one.toLowerCase(), one] as const),
  ),
);

/** The most moisture that flour may have: Codex CXS 152-1985 and DPR 187/2001. */
export const mostMoisture: Readonly<Record<'Codex' | 'Italy', number>> = { Codex: 0.155, Italy: 0.145 };

/**
 * The whitest type of a country whose limits an ash (fraction of the dry matter) keeps, and its protein too where the
 * country asks for one. Between two types the law leaves gaps: there it is the one above.
 */
export function flourTypeOf(
  country: TypeCountry,
  grain: FlourType['grain'],
  ashOfDry: number,
  proteinOfDry?: number,
): FlourType | undefined {
  return flourTypes.find(
    (type) =>
      type.country === country &&
      type.grain === grain &&
      ashOfDry <= (type.mostAsh ?? 1) + 1e-12 &&
      (proteinOfDry === undefined || proteinOfDry >= (type.leastProtein ?? 0) - 1e-12),
  );
}

const floursByName = new Map(flours.map((one) => [one.name, one]));

/** The types as flours to write in a formula: the ash is the type's, the rest that of the nearest flour with a table. */
export const typedFlours: readonly CatalogueIngredient[] = flourTypes.map((type) => {
  const base = entryOf(floursByName, standIn(type));
  const { water: moisture, protein: ownProtein, fat } = base.composition;
  if (moisture === undefined || ownProtein === undefined || fat === undefined)
    throw new RangeError(`The table of ${base.name} is not whole.`);
  const ashOfDry = middleAsh(type);
  const ash = ashOfDry * (1 - moisture);
  const protein = Math.max(ownProtein, (type.leastProtein ?? 0) * (1 - moisture));
  return {
    // The catalogue's names are folded, as every name that is looked up.
    name: type.name.toLowerCase(),
    aliases: type.aliases.map((alias) => alias.toLowerCase()),
    role: 'flour',
    composition: { ...base.composition, ash, protein, carbohydrate: 1 - moisture - ash - protein - fat },
    source: {
      publication: message('food-source.flour-type', {
        source: type.source,
        figures: limitsOf(type),
        name: base.name,
        otherSource: base.source.publication,
      }),
      identifier: '',
      ...(type.fromMemory ? { fromMemory: ['ash'] as const } : {}),
    },
    flour: {
      grain: type.grain,
      milling: ashOfDry > 0.013 ? 'wholemeal' : ashOfDry > 0.0085 ? 'medium' : 'white',
      protein,
      moisture,
      ash: ashOfDry,
      ashMoistureBasis: 0,
      isTypeAlone: true,
      provenance: 'common practice',
    },
    allergens: base.allergens,
    ...(base.densityGramsPerMl === undefined ? {} : { densityGramsPerMl: base.densityGramsPerMl }),
  };
});

function standIn(type: FlourType): string {
  const { grain } = type;
  if (grain === 'spelt') return 'wholemeal spelt';
  const ash = middleAsh(type);
  if (grain === 'rye') return ash > 0.016 ? 'dark rye' : ash > 0.0095 ? 'medium rye' : 'light rye';
  // The whitest types are for cakes and the kitchen; the others are milled for bread. Common practice, no source.
  if (ash > 0.013) return 'wholemeal wheat';
  return ash > 0.0052 ? 'bread flour' : 'plain flour';
}

function middleAsh({ leastAsh, mostAsh }: FlourType): number {
  // A type with only a limit above is milled close to it.
  if (leastAsh !== undefined) return mostAsh === undefined ? leastAsh * 1.1 : (leastAsh + mostAsh) / 2;
  if (mostAsh === undefined) throw new RangeError('A type of flour has a limit of its ash.');
  return mostAsh * 0.9;
}

function limitsOf({ leastAsh, mostAsh, leastProtein }: FlourType): Message {
  const ash =
    leastAsh === undefined
      ? message('flour-type.ash-up-to', { highFraction: mostAsh! })
      : mostAsh === undefined
        ? message('flour-type.ash-from', { lowFraction: leastAsh })
        : message('flour-type.ash', { lowFraction: leastAsh, highFraction: mostAsh });
  return leastProtein === undefined
    ? ash
    : message('flour-type.with-protein', { figures: ash, lowFraction: leastProtein });
}
