import type { FlourData } from '../calc/flour/flour.ts';
import type { Composition } from '../calc/formula/composition.ts';
import type { Role } from '../calc/formula/role.ts';
import { findCatalogue, isStrengthApart } from '../catalogue/catalogue.ts';
import type { CatalogueIngredient } from '../catalogue/catalogue-ingredient.ts';
import type { Name, Per } from '../syntax/tree.ts';
import { roleWords } from '../syntax/vocabulary.ts';
import { type Message, message } from '../words/message.ts';
import { propertiesOf, type SaidProperties, saidValue } from './properties.ts';
import { allergensOf, saidAllergens } from './said-allergens.ts';
import { lends, overlaid, saysComposition, usualOfGrain } from './said-composition.ts';
import { flourOf } from './said-flour.ts';
import type { Definition, Scope } from './scope.ts';

/** An ingredient with all that is known of it, as plain data. */
export interface Ingredient {
  /** The folded name under which every line of it adds up. */
  readonly key: string;
  readonly name: string;
  readonly role: Role;
  readonly isFlour: boolean;
  readonly composition: Composition;
  /** Energy as its section states it, instead of what its composition makes. */
  readonly kilojoulesPer100Grams?: number;
  /** The usual food of its kind that lends what neither its section nor a `like` tells. */
  readonly lentBy?: string;
  readonly flour?: FlourData;
  readonly pieceGrams?: number;
  readonly densityGramsPerMillilitre?: number;
  /** Water it soaks up, times its own mass. */
  readonly holdsWater?: number;
  /** Its water is ice, at 0 °C unless it is said colder. */
  readonly frozen?: true;
  readonly allergens: readonly string[];
  /** Nobody said whether there are allergens in it: no `contains` line, no grain, no published row. */
  readonly allergensUnsaid?: true;
  readonly price?: { readonly amount: number; readonly currency: string; readonly per: Per };
  /** Where its figures come from, in words for the baker. */
  readonly source: Message;
  readonly definition?: Definition;
}

/**
 * Whether an ingredient comes out of a cold store: egg, milk and cream, fresh yeast, butter and its like, by the water in them. What is
 * dry or fat through and through keeps in the room. Common practice, no source.
 */
export function isKeptCold({ role, composition, frozen }: Ingredient): boolean {
  if (frozen === true) return false;
  const water = composition.water ?? 0;
  if (role === 'egg' || role === 'dairy' || role === 'yeast') return water >= 0.3;
  return role === 'fat' && water >= 0.1;
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
  // Two flours of other strengths are two, of which a part may draw one.
  if (entry !== undefined)
    return isStrengthApart(folded, entry)
      ? { ...ofEntry(entry), key: folded, name: name.text }
      : ofEntry(entry);
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
    source: sourceOf(entry),
    ...(entry.flour === undefined ? {} : { flour: entry.flour }),
    ...(entry.pieceGrams === undefined ? {} : { pieceGrams: entry.pieceGrams }),
    ...(entry.densityGramsPerMl === undefined ? {} : { densityGramsPerMillilitre: entry.densityGramsPerMl }),
    ...(entry.holdsWater === undefined ? {} : { holdsWater: entry.holdsWater }),
    ...(entry.frozen === undefined ? {} : { frozen: entry.frozen }),
    ...(entry.allergensVary === undefined ? {} : { allergensUnsaid: entry.allergensVary }),
  };
  cached.set(entry, made);
  return made;
}

function sourceOf({ source: { publication, fromMemory, remark } }: CatalogueIngredient): Message {
  const source =
    fromMemory === undefined
      ? publication
      : message('food-source.partly-recalled', { source: publication, words: fromMemory });
  return remark === undefined ? source : message('food-source.remarked', { source, remark });
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
    source: message('food-source.usual', { name: usual.name }),
  };
  return role === 'flour' ? { ...generic, flour: { grain: 'wheat', milling: 'white' } } : generic;
}

function build(definition: Definition, said: SaidProperties, base: Ingredient | undefined): Ingredient {
  const isFlourSection = definition.block.top!.kind === 'flour';
  const countsAs = saidValue(said, 'counts as', 'word')?.word as Role | undefined;
  const flour = isFlourSection ? flourOf(said, base?.flour) : base?.flour;
  const lender = base === undefined && flour !== undefined ? usualOfGrain(flour) : undefined;
  const start = base?.composition ?? lender?.composition ?? {};
  const ownPrice = saidValue(said, 'price', 'price');
  // What is overridden keeps its price; what is only like another costs what it costs.
  const keptPrice = base?.key === definition.name.folded ? base.price : undefined;
  const pieceGrams = saidValue(said, 'piece weight', 'mass')?.grams ?? base?.pieceGrams;
  const density =
    saidValue(said, 'density', 'density')?.gramsPerMillilitre ??
    base?.densityGramsPerMillilitre ??
    lender?.densityGramsPerMl;
  const holdsWater = saidValue(said, 'holds water', 'times')?.factor ?? base?.holdsWater;
  const role: Role = countsAs ?? (isFlourSection ? 'flour' : (base?.role ?? 'other'));
  const allergens = allergensOf(said, base?.allergens ?? grainAllergens(flour));
  const saysAllergens = saidAllergens(said).length > 0;
  const composition = overlaid(start, said, flour);
  const kilojoules =
    saidValue(said, 'energy', 'energy')?.kilojoules ??
    // The energy of what it is like holds only while it is made of the same.
    (saysComposition(said) ? undefined : base?.kilojoulesPer100Grams);
  return {
    key: definition.name.folded,
    name: definition.name.text,
    role,
    isFlour: role === 'flour',
    composition,
    allergens,
    ...(!saysAllergens && flour === undefined && (base?.allergensUnsaid ?? base === undefined)
      ? { allergensUnsaid: true as const }
      : {}),
    source: sourceOfBuilt(base, lender),
    definition,
    ...(kilojoules === undefined ? {} : { kilojoulesPer100Grams: kilojoules }),
    ...lentBy(base, lender, said),
    ...(flour === undefined ? {} : { flour }),
    ...(pieceGrams === undefined ? {} : { pieceGrams }),
    ...(density === undefined ? {} : { densityGramsPerMillilitre: density }),
    ...(holdsWater === undefined ? {} : { holdsWater }),
    ...(base?.frozen === undefined ? {} : { frozen: base.frozen }),
    ...(ownPrice !== undefined
      ? { price: { amount: ownPrice.amount, currency: ownPrice.currency, per: ownPrice.per } }
      : keptPrice === undefined
        ? {}
        : { price: keptPrice }),
  };
}

function lentBy(
  base: Ingredient | undefined,
  lender: CatalogueIngredient | undefined,
  said: SaidProperties,
): Pick<Ingredient, 'lentBy'> {
  const name = lender !== undefined && lends(lender, said) ? lender.name : base?.lentBy;
  return name === undefined ? {} : { lentBy: name };
}

function sourceOfBuilt(base: Ingredient | undefined, lender: CatalogueIngredient | undefined): Message {
  if (base !== undefined) return message('food-source.section-and', { name: base.name, source: base.source });
  if (lender === undefined) return message('food-source.section');
  return message('food-source.section-and-usual', { name: lender.name, source: sourceOf(lender) });
}

function grainAllergens(flour: FlourData | undefined): readonly string[] {
  return flour === undefined ? [] : [flour.grain];
}

/** The role that an ingredient of this name plays in a formula; `undefined` where the name comes to nothing. */
export function roleOf(name: Name, scope: Scope): Role | undefined {
  const found = findIngredient(name, scope);
  return found.kind === 'found' ? found.ingredient.role : undefined;
}
