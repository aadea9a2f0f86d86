import { type Composition, mixCompositions } from '../calc/composition.ts';
import { moistureOf } from '../calc/flour.ts';
import type { SolvedFormula, SolvedSection } from '../calc/formula-result.ts';
import type { MixPortion } from '../calc/mixing-programme.ts';
import type { Ingredient } from '../model/ingredient.ts';
import { saidValue } from '../model/properties.ts';
import type { ResolvedFormula } from '../model/resolve.ts';

/** What can be put into the bowl under one key: an ingredient of the final mix, or a whole part. */
export interface Batch {
  readonly key: string;
  readonly name: string;
  readonly grams: number;
  /** The portion for a share of it, 0 to 1. */
  portion(share: number, celsius: number | undefined): MixPortion;
}

/** The contents of a section's mix, by key; lines whose weight is not known are left out. */
export function batchesOf(
  resolved: ResolvedFormula,
  solved: SolvedFormula,
  sectionId: string,
): Map<string, Batch> {
  const batches = new Map<string, Batch>();
  const add = (key: string, make: () => Batch): void => {
    const batch = make();
    const before = batches.get(key);
    batches.set(key, before === undefined ? batch : joined(before, batch));
  };
  if (sectionId === resolved.input.sections[0]!.id) {
    for (const line of solved.finalMix.lines) {
      if (line.grams === undefined || line.grams <= 0) continue;
      const grams = line.grams;
      if (line.kind === 'part')
        add(line.sectionId ?? line.key, () => partBatch(resolved, solved, line.sectionId ?? line.key, grams));
      else
        add(line.key, () =>
          ingredientBatch(resolved, line.key, line.name, grams, givenCelsius(resolved, line.lineId)),
        );
    }
    return batches;
  }
  const section = solved.sections.find((one) => one.id === sectionId);
  for (const line of section?.lines ?? []) {
    if (line.grams === undefined || line.grams <= 0) continue;
    const grams = line.grams;
    if (line.part) add(line.key, () => partBatch(resolved, solved, line.key, grams));
    else
      add(line.key, () =>
        ingredientBatch(resolved, line.key, line.name, grams, givenCelsius(resolved, line.id)),
      );
  }
  return batches;
}

function joined(first: Batch, second: Batch): Batch {
  const grams = first.grams + second.grams;
  return {
    key: first.key,
    name: first.name,
    grams,
    portion: (share, celsius) => {
      const one = first.portion(share, celsius);
      const two = second.portion(share, celsius);
      return {
        ...one,
        grams: one.grams + two.grams,
        flourGrams: one.flourGrams + two.flourGrams,
        freeWaterGrams: one.freeWaterGrams + two.freeWaterGrams,
        fatGrams: one.fatGrams + two.fatGrams,
        sugarGrams: one.sugarGrams + two.sugarGrams,
        saltGrams: one.saltGrams + two.saltGrams,
      };
    },
  };
}

function givenCelsius(resolved: ResolvedFormula, lineId: string | undefined): number | undefined {
  return lineId === undefined ? undefined : resolved.statements.get(lineId)?.celsius;
}

function ingredientBatch(
  resolved: ResolvedFormula,
  key: string,
  name: string,
  grams: number,
  lineCelsius: number | undefined,
): Batch {
  const ingredient = resolved.ingredients.get(key);
  return {
    key,
    name,
    grams,
    portion: (share, celsius) => {
      const chosen = celsius ?? lineCelsius;
      const contents = contentsOf(ingredient, grams * share);
      const isWater = ingredient?.role === 'water';
      const isFlour = ingredient?.isFlour === true;
      const { roomCelsius, flourCelsius } = resolved.bakery;
      return {
        label: name,
        celsius: chosen ?? (isFlour ? flourCelsius : roomCelsius),
        composition: contents.composition,
        kind: isWater ? 'water' : isFlour ? 'flour' : ingredient?.role === 'salt' ? 'salt' : 'other',
        ...contents.sums,
        ...(isFlour && ingredient.flour !== undefined
          ? { dryFlourMoisture: moistureOf(ingredient.flour) }
          : {}),
        ...(isWater && chosen === undefined ? { tempered: true } : {}),
      };
    },
  };
}

type Sums = Pick<
  MixPortion,
  'grams' | 'flourGrams' | 'freeWaterGrams' | 'fatGrams' | 'sugarGrams' | 'saltGrams'
>;

function contentsOf(
  ingredient: Ingredient | undefined,
  grams: number,
): { composition: Composition; sums: Sums } {
  const composition = ingredient?.composition ?? {};
  const isFlour = ingredient?.isFlour === true;
  const held = (ingredient?.holdsWater ?? 0) * grams;
  return {
    composition,
    sums: {
      grams,
      flourGrams: isFlour ? grams : 0,
      freeWaterGrams: isFlour ? 0 : grams * (composition.water ?? 0) - held,
      fatGrams: isFlour ? 0 : grams * (composition.fat ?? 0),
      sugarGrams: isFlour
        ? 0
        : grams *
          (composition.sugars ?? (ingredient?.role === 'sugar' ? (composition.carbohydrate ?? 0) : 0)),
      saltGrams: ingredient?.role === 'salt' ? grams : 0,
    },
  };
}

/** The temperature at which a part stands ready: that of its last rest, else its own dough temperature, else the room. */
export function partCelsius(resolved: ResolvedFormula, sectionId: string): number {
  const section = resolved.model.sections.find((one) => one.id === sectionId);
  if (section === undefined) return resolved.bakery.roomCelsius;
  for (const word of ['hold', 'ferment', 'soak']) {
    const celsius = saidValue(section.said, word, 'duration')?.celsius;
    if (celsius !== undefined) return celsius;
  }
  return saidValue(section.said, 'dough temperature', 'temperature')?.celsius ?? resolved.bakery.roomCelsius;
}

function partBatch(
  resolved: ResolvedFormula,
  solved: SolvedFormula,
  sectionId: string,
  grams: number,
): Batch {
  const section = solved.sections.find((one) => one.id === sectionId);
  const flat = section === undefined ? [] : flattened(solved, section, new Set());
  const total = flat.reduce((sum, one) => sum + one.grams, 0);
  const scale = total > 0 ? grams / total : 0;
  const parts = flat.map((one) => contentsOf(resolved.ingredients.get(one.key), one.grams * scale));
  const composition = mixCompositions(
    parts.map((part) => ({ grams: part.sums.grams, composition: part.composition })),
  );
  const sum = (of: (sums: Sums) => number): number => parts.reduce((all, part) => all + of(part.sums), 0);
  const celsius = partCelsius(resolved, sectionId);
  return {
    key: sectionId,
    name: section?.name ?? '',
    grams,
    portion: (share, given) => ({
      label: section?.name ?? '',
      celsius: given ?? celsius,
      composition,
      kind: section?.kind === 'preferment' ? 'preferment' : 'other',
      grams: grams * share,
      flourGrams: sum((one) => one.flourGrams) * share,
      freeWaterGrams: sum((one) => one.freeWaterGrams) * share,
      fatGrams: sum((one) => one.fatGrams) * share,
      sugarGrams: sum((one) => one.sugarGrams) * share,
      saltGrams: sum((one) => one.saltGrams) * share,
    }),
  };
}

/** The ingredients inside a section, nested parts dissolved, in grams as the section is made. */
function flattened(
  solved: SolvedFormula,
  section: SolvedSection,
  seen: Set<string>,
): { key: string; grams: number }[] {
  if (seen.has(section.id)) return [];
  const inside = new Set(seen).add(section.id);
  return section.lines.flatMap((line) => {
    if (line.grams === undefined) return [];
    if (!line.part) return [{ key: line.key, grams: line.grams }];
    const part = solved.sections.find((one) => one.id === line.key);
    const made = part === undefined ? [] : flattened(solved, part, inside);
    const total = made.reduce((sum, one) => sum + one.grams, 0);
    return total > 0 ? made.map((one) => ({ key: one.key, grams: (one.grams * line.grams!) / total })) : [];
  });
}
