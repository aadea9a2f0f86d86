import type { Composition } from '../calc/composition.ts';
import type { FlourData, Milling } from '../calc/flour.ts';
import { findCatalogue } from '../catalogue/catalogue.ts';
import type { CatalogueIngredient } from '../catalogue/ingredient.ts';
import type { Role } from '../catalogue/role.ts';
import type { Name, Per } from '../syntax/tree.ts';
import { roleWords } from '../syntax/vocabulary.ts';
import { fractionOf, propertiesOf, type SaidProperties, saidValue } from './properties.ts';
import type { Definition, Scope } from './scope.ts';

/** An ingredient with all that is known of it, as plain data. */
export interface Ingredient {
  /** The folded name under which every line of it adds up. */
  readonly key: string;
  readonly name: string;
  readonly role: Role;
  readonly isFlour: boolean;
  readonly composition: Composition;
  readonly flour?: FlourData;
  readonly pieceGrams?: number;
  readonly densityGramsPerMillilitre?: number;
  /** Water it soaks up, times its own mass. */
  readonly holdsWater?: number;
  readonly allergens: readonly string[];
  /** Nobody said whether there are allergens in it: no `contains` line, no grain, no published row. */
  readonly allergensUnsaid?: true;
  readonly price?: { readonly amount: number; readonly currency: string; readonly per: Per };
  /** Where its figures come from, in words for the baker. */
  readonly source: string;
  readonly definition?: Definition;
}

/** What a name of an ingredient comes to in a scope. */
export type IngredientFound =
  | { readonly kind: 'found'; readonly ingredient: Ingredient }
  | { readonly kind: 'several'; readonly definitions: readonly Definition[] }
  | { readonly kind: 'unknown' };

const deepest = 12;

/**
 * Looks an ingredient up: the nearest definition in the files, over what a visible one of the same name or its `like`
 * says; then the built-in catalogue; then a role standing for itself.
 */
export function findIngredient(name: Name, scope: Scope): IngredientFound {
  return lookUp(name, scope, 0, 0);
}

function lookUp(name: Name, scope: Scope, fromLevel: number, depth: number): IngredientFound {
  const level = scope.find('ingredient', name.folded)[fromLevel];
  if (level === undefined) {
    const builtIn = fromCatalogue(name);
    return builtIn === undefined ? { kind: 'unknown' } : { kind: 'found', ingredient: builtIn };
  }
  const [definition, second] = level;
  if (second !== undefined) return { kind: 'several', definitions: level };
  const said = propertiesOf(definition!.block, definition!.block.top!);
  const like = saidValue(said, 'like', 'name')?.name;
  let base: Ingredient | undefined;
  if (depth < deepest) {
    const found =
      like === undefined || like.folded === name.folded
        ? lookUp(name, scope, fromLevel + 1, depth + 1)
        : lookUp(like, scope, 0, depth + 1);
    if (found.kind === 'found') base = found.ingredient;
  }
  return { kind: 'found', ingredient: builtOnce(definition!, said, base) };
}

const built = new WeakMap<Definition, { readonly base: Ingredient | undefined; readonly made: Ingredient }>();

function builtOnce(definition: Definition, said: SaidProperties, base: Ingredient | undefined): Ingredient {
  const before = built.get(definition);
  if (before !== undefined && before.base === base) return before.made;
  const made = build(definition, said, base);
  built.set(definition, { base, made });
  return made;
}

/** The catalogue's ingredient of a name, a trailing plural s forgiven, or a role standing for itself. */
function fromCatalogue(name: Name): Ingredient | undefined {
  const { folded } = name;
  const entry =
    findCatalogue(folded) ?? (folded.endsWith('s') ? findCatalogue(folded.slice(0, -1)) : undefined);
  if (entry !== undefined) return ofEntry(entry);
  const role = roleWords.find((word) => word === folded);
  if (role === undefined) return undefined;
  const before = stoodIn.get(role);
  if (before !== undefined) return before;
  const made = ofRole(role);
  if (made !== undefined) stoodIn.set(role, made);
  return made;
}

const stoodIn = new Map<string, Ingredient>();

const cached = new Map<CatalogueIngredient, Ingredient>();

function ofEntry(entry: CatalogueIngredient): Ingredient {
  const before = cached.get(entry);
  if (before !== undefined) return before;
  const made: Ingredient = {
    key: entry.name,
    name: entry.name,
    role: entry.role,
    isFlour: entry.role === 'flour',
    composition: entry.composition,
    allergens: entry.allergens,
    source:
      entry.source.identifier === '' ? entry.source.text : `${entry.source.text}, ${entry.source.identifier}`,
    ...(entry.flour === undefined ? {} : { flour: entry.flour }),
    ...(entry.pieceGrams === undefined ? {} : { pieceGrams: entry.pieceGrams }),
    ...(entry.densityGramsPerMl === undefined ? {} : { densityGramsPerMillilitre: entry.densityGramsPerMl }),
    ...(entry.holdsWater === undefined ? {} : { holdsWater: entry.holdsWater }),
  };
  cached.set(entry, made);
  return made;
}

const standIns: Readonly<Record<(typeof roleWords)[number], string>> = {
  flour: 'bread flour',
  water: 'water',
  salt: 'salt',
  yeast: 'fresh yeast',
  fat: 'butter',
  sugar: 'sugar',
  egg: 'egg',
  dairy: 'whole milk',
  seeds: 'sunflower seeds',
};

/** A role as an ingredient: counted for what it is, with the composition of the usual one of its kind. */
function ofRole(role: (typeof roleWords)[number]): Ingredient | undefined {
  const usual = findCatalogue(standIns[role]);
  if (usual === undefined) return undefined;
  const { flour: _flour, ...rest } = ofEntry(usual);
  const generic = {
    ...rest,
    key: role,
    name: role,
    role,
    isFlour: role === 'flour',
    allergensUnsaid: true as const,
    source: `as ${usual.name}; say which it is for better figures`,
  };
  return role === 'flour' ? { ...generic, flour: { grain: 'wheat', milling: 'white' } } : generic;
}

const millings = new Set<string>(['white', 'medium', 'wholemeal']);

function build(definition: Definition, said: SaidProperties, base: Ingredient | undefined): Ingredient {
  const isFlourSection = definition.block.top!.kind === 'flour';
  const countsAs = saidValue(said, 'counts as', 'word')?.word as Role | undefined;
  const flour = isFlourSection ? flourOf(said, base) : base?.flour;
  const start = base?.composition ?? (flour === undefined ? {} : usualOfGrain(flour));
  const price = saidValue(said, 'price', 'price');
  const pieceGrams = saidValue(said, 'piece weight', 'mass')?.grams ?? base?.pieceGrams;
  const density =
    saidValue(said, 'density', 'density')?.gramsPerMillilitre ?? base?.densityGramsPerMillilitre;
  const holdsWater = saidValue(said, 'holds water', 'times')?.factor ?? base?.holdsWater;
  const role: Role = countsAs ?? (isFlourSection ? 'flour' : (base?.role ?? 'other'));
  const contains = (said.get('contains') ?? []).flatMap((one) =>
    one.statement.value?.form === 'names' ? one.statement.value.names.map((name) => name.text) : [],
  );
  return {
    key: definition.name.folded,
    name: definition.name.text,
    role,
    isFlour: role === 'flour',
    composition: overlaid(start, said, flour),
    allergens: contains.length > 0 ? contains : (base?.allergens ?? grainAllergens(flour)),
    ...(contains.length === 0 && flour === undefined && (base?.allergensUnsaid ?? base === undefined)
      ? { allergensUnsaid: true as const }
      : {}),
    source:
      base === undefined
        ? 'as its section says'
        : `as its section says, the rest from ${base.name} (${base.source})`,
    definition,
    ...(flour === undefined ? {} : { flour }),
    ...(pieceGrams === undefined ? {} : { pieceGrams }),
    ...(density === undefined ? {} : { densityGramsPerMillilitre: density }),
    ...(holdsWater === undefined ? {} : { holdsWater }),
    ...(price === undefined
      ? {}
      : { price: { amount: price.amount, currency: price.currency, per: price.per } }),
  };
}

function grainAllergens(flour: FlourData | undefined): readonly string[] {
  return flour === undefined ? [] : [flour.grain];
}

function flourOf(said: SaidProperties, base: Ingredient | undefined): FlourData {
  const before = base?.flour;
  const word = saidValue(said, 'milling', 'word')?.word;
  const milling = word !== undefined && millings.has(word) ? (word as Milling) : before?.milling;
  const protein = saidValue(said, 'protein', 'fraction');
  const minutes = (property: string): number | undefined => {
    const seconds = saidValue(said, property, 'duration')?.seconds;
    return seconds === undefined ? undefined : seconds / 60;
  };
  const pick = <K extends keyof FlourData>(key: K, value: FlourData[K] | undefined): Partial<FlourData> => {
    const chosen = value ?? before?.[key];
    return chosen === undefined ? {} : { [key]: chosen };
  };
  const proteinParts: Partial<FlourData> =
    protein === undefined
      ? { ...pick('protein', undefined), ...pick('proteinMoistureBasis', undefined) }
      : {
          protein: protein.fraction,
          ...(protein.atMoisture === undefined ? {} : { proteinMoistureBasis: protein.atMoisture }),
        };
  const stated = [...said.keys()].some((one) => one !== 'note' && one !== 'price');
  return {
    grain: saidValue(said, 'grain', 'word')?.word ?? before?.grain ?? 'wheat',
    ...(milling === undefined ? {} : { milling }),
    ...proteinParts,
    ...pick('moisture', fractionOf(said, 'moisture') ?? fractionOf(said, 'water')),
    ...pick('ash', fractionOf(said, 'ash')),
    ...pick('absorption', fractionOf(said, 'absorption')),
    ...pick('starchDamage', fractionOf(said, 'starch damage')),
    ...pick('peakMinutes', minutes('peak')),
    ...pick('stabilityMinutes', minutes('stability')),
    ...(stated || before?.provenance === undefined
      ? { provenance: 'given' as const }
      : { provenance: before.provenance }),
  };
}

/** Where a flour states no composition, the usual flour of its grain and milling lends its own. */
function usualOfGrain(flour: FlourData): Composition {
  const wholemeal = flour.milling === 'wholemeal';
  const name =
    flour.grain === 'rye'
      ? wholemeal
        ? 'dark rye'
        : 'medium rye'
      : flour.grain === 'spelt'
        ? 'wholemeal spelt'
        : wholemeal
          ? 'wholemeal wheat'
          : 'bread flour';
  return findCatalogue(name)?.composition ?? {};
}

const saidShares: readonly (readonly [string, keyof Composition])[] = [
  ['water', 'water'],
  ['protein', 'protein'],
  ['fat', 'fat'],
  ['carbohydrate', 'carbohydrate'],
  ['fibre', 'fibre'],
  ['ash', 'ash'],
  ['saturates', 'saturates'],
  ['sugars', 'sugars'],
  ['starch', 'starch'],
  ['alcohol', 'alcohol'],
  ['salt', 'saltFraction'],
];

/**
 * What is said over what was there. Where some main part changes and carbohydrate is not said, it takes up the
 * difference, so that the parts still make the whole.
 */
function overlaid(start: Composition, said: SaidProperties, flour: FlourData | undefined): Composition {
  const mixed: { -readonly [K in keyof Composition]: number } = { ...start };
  let changed = false;
  for (const [word, key] of saidShares) {
    const value = fractionOf(said, word);
    if (value === undefined) continue;
    mixed[key] = value;
    if (key !== 'saltFraction') changed = true;
  }
  if (flour?.moisture !== undefined) {
    mixed.water = flour.moisture;
    changed = true;
  }
  const { water, protein, fat, ash } = mixed;
  if (!changed || fractionOf(said, 'carbohydrate') !== undefined) return mixed;
  if (water === undefined || protein === undefined || fat === undefined || ash === undefined) return mixed;
  return { ...mixed, carbohydrate: Math.max(0, 1 - water - protein - fat - ash) };
}

/** The role that an ingredient of this name plays in a formula; `undefined` where the name comes to nothing. */
export function roleOf(name: Name, scope: Scope): Role | undefined {
  const found = findIngredient(name, scope);
  return found.kind === 'found' ? found.ingredient.role : undefined;
}
