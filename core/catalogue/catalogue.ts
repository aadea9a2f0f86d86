import { foldName } from '../text/names.ts';
import { additions } from './additions.ts';
import type { CatalogueIngredient } from './catalogue-ingredient.ts';
import { flourTypes, typedFlours } from './flour-types.ts';
import { flours } from './flours.ts';
import { fruitAndGrains } from './fruit-and-grains.ts';
import { larder } from './larder.ts';
import { looseNamesAbroad, namesAbroad } from './names-abroad.ts';
import { pantry } from './pantry.ts';
import { type NamesAbroad, type Tongue, tongues } from './tongue.ts';
import { typedNamesAbroad } from './typed-names-abroad.ts';

/** Every ingredient that is known without being defined in a file: flours, the types of four countries, larder, additions. */
export const catalogueIngredients: readonly CatalogueIngredient[] = [
  ...flours,
  ...typedFlours,
  ...larder,
  ...additions,
  ...pantry,
  ...fruitAndGrains,
];

const byName: ReadonlyMap<string, CatalogueIngredient> = new Map(
  catalogueIngredients.flatMap((one) =>
    [one.name, ...one.aliases].map((name) => [name.toLowerCase(), one] as const),
  ),
);

/** What bakers of another language call an ingredient. */
export interface NameAbroad {
  /** As they write it. */
  readonly written: string;
  readonly folded: string;
  readonly tongue: Tongue;
  /** A name that the catalogue has for it. */
  readonly name: string;
  /** It leaves something open, and is taken for the usual one. */
  readonly isLoose?: true;
}

let all: readonly NameAbroad[] | undefined;

/** The names that other languages have; a name may stand for one ingredient only, and be of several languages. */
export function catalogueNamesAbroad(): readonly NameAbroad[] {
  all ??= [
    ...namesIn(namesAbroad),
    ...namesIn(looseNamesAbroad).map((one) => ({ ...one, isLoose: true as const })),
    ...flourTypes.flatMap((type) =>
      tongues.flatMap((tongue) =>
        typedNamesAbroad(type, tongue).map((word) => abroad(word, tongue, type.name.toLowerCase())),
      ),
    ),
  ];
  return all;
}

function namesIn(table: NamesAbroad): NameAbroad[] {
  return Object.entries(table).flatMap(([name, byTongue]) =>
    tongues.flatMap((tongue) => (byTongue[tongue] ?? []).map((word) => abroad(word, tongue, name))),
  );
}

function abroad(written: string, tongue: Tongue, name: string): NameAbroad {
  return { written, folded: foldName(written), tongue, name };
}

let namesAbroadByFolded: ReadonlyMap<string, NameAbroad> | undefined;

function byNameAbroad(foldedName: string): NameAbroad | undefined {
  namesAbroadByFolded ??= new Map(catalogueNamesAbroad().map((one) => [one.folded, one]));
  return namesAbroadByFolded.get(foldedName);
}

/** The name that another language has for an ingredient, by its folded form; none for what English calls so as well. */
export function nameAbroad(foldedName: string): NameAbroad | undefined {
  return byName.has(foldedName) ? undefined : byNameAbroad(foldedName);
}

let tonguesByName: ReadonlyMap<string, readonly Tongue[]> | undefined;

/** The languages that a folded name of an ingredient is in; none where English calls it so as well. */
export function tonguesOfName(foldedName: string): readonly Tongue[] {
  if (byName.has(foldedName)) return [];
  if (tonguesByName === undefined) {
    const found = new Map<string, Tongue[]>();
    for (const { folded, tongue } of catalogueNamesAbroad())
      found.set(folded, [...(found.get(folded) ?? []), tongue]);
    tonguesByName = found;
  }
  return tonguesByName.get(foldedName) ?? [];
}

/** The ingredient of this name or alias in any of the languages, folded by the caller; undefined when there is none. */
export function findCatalogue(foldedName: string): CatalogueIngredient | undefined {
  return (
    byName.get(foldedName) ?? byName.get(byNameAbroad(foldedName)?.name ?? '') ?? byTradeName(foldedName)
  );
}

/** Words that only say that something is flour, or that a number is its type. */
const flourWords: ReadonlySet<string> = new Set([
  'flour',
  'flours',
  'type',
  'typ',
  'tipo',
  'farina',
  'farine',
  'mehl',
  'no',
  'grade',
]);

/** The strength on a sack, `W300`, of which the catalogue knows nothing. */
const strengthWord = /^w\d{2,3}$/;

/** Whether a name, folded, says a strength that the catalogue's ingredient of that name does not: `flour 00 W300`. */
export function isStrengthApart(foldedName: string, { name, aliases }: CatalogueIngredient): boolean {
  const strength = foldedName.split(' ').find((word) => strengthWord.test(word));
  return strength !== undefined && [name, ...aliases].every((one) => !one.split(' ').includes(strength));
}

/** The words of a flour’s name that tell it apart, in one order; undefined where none says that it is flour. */
function tradeKey(foldedName: string): string[] | undefined {
  const words = foldedName.split(' ');
  const told = words.filter((word) => !flourWords.has(word));
  return told.length === 0 || told.length === words.length ? undefined : told.toSorted();
}

let tradeNames: ReadonlyMap<string, CatalogueIngredient | undefined> | undefined;

/** Flours by the words that tell them apart; what two flours share stands for neither. */
function flourByWords(): ReadonlyMap<string, CatalogueIngredient | undefined> {
  if (tradeNames !== undefined) return tradeNames;
  const found = new Map<string, CatalogueIngredient | undefined>();
  for (const flour of catalogueIngredients) {
    if (flour.role !== 'flour') continue;
    for (const name of [flour.name, ...flour.aliases]) {
      const key = (tradeKey(name) ?? name.split(' ').toSorted()).join(' ');
      found.set(key, found.has(key) && found.get(key) !== flour ? undefined : flour);
    }
  }
  tradeNames = found;
  return found;
}

/** A flour as the trade calls it, in any order: `T65 flour`, `flour 00 W300`, `rye flour 1150`, `wheat flour type 550`. */
function byTradeName(foldedName: string): CatalogueIngredient | undefined {
  const key = tradeKey(foldedName);
  if (key === undefined) return undefined;
  const whole = flourByWords().get(key.join(' '));
  if (whole !== undefined) return whole;
  const plain = key.filter((word) => !strengthWord.test(word));
  if (plain.length === key.length) return undefined;
  // A strength alone stands on sacks of white wheat.
  return flourByWords().get(plain.length === 0 ? '00' : plain.join(' '));
}

/** The names of all ingredients, without their aliases, in the order of the catalogue. */
export function catalogueNames(): readonly string[] {
  return catalogueIngredients.map((one) => one.name);
}
