import { moistureOf } from '../calc/flour/flour.ts';
import { type Composition, mixCompositions } from '../calc/formula/composition.ts';
import { contentsOf } from '../calc/formula/contents.ts';
import { doughOf } from '../calc/formula/formula-input.ts';
import type { SolvedFormula } from '../calc/formula/formula-result.ts';
import { restingMinutes } from '../calc/heat/dough-cooling.ts';
import { temperatureAfter } from '../calc/heat/warming.ts';
import { eggBeyond } from '../calc/mixing/bowl-load.ts';
import type { MixPortion } from '../calc/mixing/mixing-programme.ts';
import { type Ingredient, isKeptCold } from '../model/found-ingredient.ts';
import { saidValue } from '../model/properties.ts';
import type { ResolvedFormula } from '../model/resolve.ts';
import { elementAt } from '../text/element.ts';

/** What can be put into the bowl under one key: an ingredient of the final mix, or a whole part. */
export interface Batch {
  readonly key: string;
  readonly name: string;
  readonly grams: number;
  /** The temperature of its water where the line of the ingredient gives it, °C. */
  readonly waterCelsius?: number;
  /**
   * So many grams of it once `from` grams have gone in, at `celsius` where the programme says so. Lines of one ingredient go in
   * one after the other, in one portion unless they differ in temperature.
   */
  portions(from: number, grams: number, celsius: number | undefined): readonly MixPortion[];
}

/** The contents of a section's mix, by key; lines whose weight is not known are left out. */
export function batchesOf(
  resolved: ResolvedFormula,
  solved: SolvedFormula,
  sectionId: string,
): Map<string, Batch> {
  const batches = new Map<string, Batch>();
  const add = (key: string, batch: Batch): void => {
    const before = batches.get(key);
    batches.set(key, before === undefined ? batch : joined(before, batch));
  };
  if (sectionId === doughOf(resolved.input).id) {
    for (const line of solved.finalMix.lines) {
      if (line.grams === undefined || line.grams <= 0) continue;
      const grams = line.grams;
      if (line.kind === 'part')
        add(line.sectionId ?? line.key, partBatch(resolved, solved, line.sectionId ?? line.key, grams));
      else
        add(
          line.key,
          ingredientBatch(resolved, line.key, line.name, grams, givenCelsius(resolved, line.lineId)),
        );
    }
    return batches;
  }
  const section = solved.sections.find((one) => one.id === sectionId);
  for (const line of section?.lines ?? []) {
    if (line.grams === undefined || line.grams <= 0) continue;
    const grams = line.grams;
    if (line.part) add(line.key, partBatch(resolved, solved, line.key, grams));
    else
      add(line.key, ingredientBatch(resolved, line.key, line.name, grams, givenCelsius(resolved, line.id)));
  }
  return batches;
}

function joined(first: Batch, second: Batch): Batch {
  return {
    key: first.key,
    name: first.name,
    grams: first.grams + second.grams,
    ...(first.waterCelsius === undefined ? {} : { waterCelsius: first.waterCelsius }),
    portions: (from, grams, celsius) => {
      const early = Math.min(grams, Math.max(0, first.grams - from));
      const late = grams - early;
      const portions = [...(early > hair ? first.portions(from, early, celsius) : [])];
      const others = late > hair ? second.portions(Math.max(0, from - first.grams), late, celsius) : [];
      for (const other of others) {
        const at = portions.findIndex((one) => isAlike(one, other));
        if (at < 0) portions.push(other);
        else portions[at] = together(elementAt(portions, at), other);
      }
      return portions;
    },
  };
}

/** Grams that only the rounding of sums leaves. */
const hair = 1e-9;

function isAlike(one: MixPortion, other: MixPortion): boolean {
  return one.celsius === other.celsius && one.tempered === other.tempered && one.frozen === other.frozen;
}

function together(one: MixPortion, other: MixPortion): MixPortion {
  return {
    ...one,
    grams: one.grams + other.grams,
    flourGrams: one.flourGrams + other.flourGrams,
    freeWaterGrams: one.freeWaterGrams + other.freeWaterGrams,
    fatGrams: one.fatGrams + other.fatGrams,
    sugarGrams: one.sugarGrams + other.sugarGrams,
    saltGrams: one.saltGrams + other.saltGrams,
    eggBeyondGrams: (one.eggBeyondGrams ?? 0) + (other.eggBeyondGrams ?? 0),
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
  // Ice is weighed as ice: nobody chooses how warm it is.
  const isIce = ingredient?.frozen === true;
  const isWater = ingredient?.role === 'water' && !isIce;
  const isFlour = ingredient?.isFlour === true;
  const { roomCelsius, flourCelsius, coldStoreCelsius } = resolved.bakery;
  const isCold = ingredient !== undefined && isKeptCold(ingredient);
  const base = {
    label: name,
    composition: ingredient?.composition ?? unknownComposition,
    kind: isWater ? 'water' : isFlour ? 'flour' : ingredient?.role === 'salt' ? 'salt' : 'other',
    ...(isFlour && ingredient.flour !== undefined ? { dryFlourMoisture: moistureOf(ingredient.flour) } : {}),
  } as const;
  return {
    key,
    name,
    grams,
    ...(isWater && lineCelsius !== undefined ? { waterCelsius: lineCelsius } : {}),
    portions: (_from, taken, celsius) => {
      const chosen = celsius ?? lineCelsius;
      const portion: MixPortion = {
        ...base,
        celsius: chosen ?? (isIce ? 0 : isFlour ? flourCelsius : isCold ? coldStoreCelsius : roomCelsius),
        ...(isIce && (chosen ?? 0) <= 0 ? { frozen: true } : {}),
        ...sumsOf(ingredient, taken),
        ...(isWater && chosen === undefined ? { tempered: true } : {}),
      };
      return [portion];
    },
  };
}

type Sums = Pick<
  MixPortion,
  'grams' | 'flourGrams' | 'freeWaterGrams' | 'fatGrams' | 'sugarGrams' | 'saltGrams' | 'eggBeyondGrams'
>;

// One object for all, so that what is remembered of a composition is remembered of it too.
const unknownComposition: Composition = {};

function sumsOf(ingredient: Ingredient | undefined, grams: number): Sums {
  const composition = ingredient?.composition ?? unknownComposition;
  if (ingredient?.isFlour === true) {
    const saltGrams = ingredient.role === 'salt' ? grams : 0;
    return { grams, flourGrams: grams, freeWaterGrams: 0, fatGrams: 0, sugarGrams: 0, saltGrams };
  }
  const sugars = composition.sugars ?? (ingredient?.role === 'sugar' ? (composition.carbohydrate ?? 0) : 0);
  return {
    grams,
    flourGrams: 0,
    freeWaterGrams: grams * (composition.water ?? 0) - (ingredient?.holdsWater ?? 0) * grams,
    fatGrams: grams * (composition.fat ?? 0),
    sugarGrams: grams * sugars,
    saltGrams: ingredient?.role === 'salt' ? grams : 0,
    ...(ingredient?.role === 'egg' ? { eggBeyondGrams: eggBeyond(grams, { ...composition, sugars }) } : {}),
  };
}

/**
 * The temperature, °C, at which a part of this weight stands ready: begun at its own dough temperature, else at that of its first
 * rest, else in the room, it follows the air of each rest as slowly as dough in bulk. Rests that tell no temperature change nothing.
 */
export function partCelsius(resolved: ResolvedFormula, sectionId: string, grams: number): number {
  const section = resolved.model.sections.find((one) => one.id === sectionId);
  if (section === undefined) return resolved.bakery.roomCelsius;
  let celsius = saidValue(section.said, 'dough temperature', 'temperature')?.celsius;
  for (const word of ['soak', 'ferment', 'hold']) {
    const rest = saidValue(section.said, word, 'duration');
    if (rest?.celsius === undefined) continue;
    const air = { celsiusPerMinute: 0, aroundCelsius: rest.celsius, settlesMinutes: restingMinutes(grams) };
    celsius = temperatureAfter(air, celsius ?? rest.celsius, rest.seconds / 60);
  }
  return celsius ?? resolved.bakery.roomCelsius;
}

function partBatch(
  resolved: ResolvedFormula,
  solved: SolvedFormula,
  sectionId: string,
  grams: number,
): Batch {
  const section = solved.sections.find((one) => one.id === sectionId);
  const contents = section === undefined ? undefined : contentsOf(solved, section, grams);
  const foods: { grams: number; composition: Composition }[] = [];
  const whole = {
    flourGrams: 0,
    freeWaterGrams: 0,
    fatGrams: 0,
    sugarGrams: 0,
    saltGrams: 0,
    eggBeyondGrams: 0,
  };
  for (const one of contents ?? []) {
    const ingredient = resolved.ingredients.get(one.key);
    const sums = sumsOf(ingredient, one.grams);
    foods.push({ grams: sums.grams, composition: ingredient?.composition ?? unknownComposition });
    whole.flourGrams += sums.flourGrams;
    whole.freeWaterGrams += sums.freeWaterGrams;
    whole.fatGrams += sums.fatGrams;
    whole.sugarGrams += sums.sugarGrams;
    whole.saltGrams += sums.saltGrams;
    whole.eggBeyondGrams += sums.eggBeyondGrams ?? 0;
  }
  // The starch of a scald has swollen and binds its water; what mixing wets the flour with is not in it.
  if (section?.kind === 'scald') whole.freeWaterGrams = 0;
  const composition = mixCompositions(foods);
  const celsius = partCelsius(resolved, sectionId, section?.totalGrams ?? grams);
  return {
    key: sectionId,
    name: section?.name ?? '',
    grams,
    portions: (_from, taken, given) => {
      const share = taken / grams;
      const portion: MixPortion = {
        label: section?.name ?? '',
        composition,
        kind: section?.kind === 'preferment' ? 'preferment' : 'other',
        celsius: given ?? celsius,
        grams: taken,
        flourGrams: whole.flourGrams * share,
        freeWaterGrams: whole.freeWaterGrams * share,
        fatGrams: whole.fatGrams * share,
        sugarGrams: whole.sugarGrams * share,
        saltGrams: whole.saltGrams * share,
        eggBeyondGrams: whole.eggBeyondGrams * share,
      };
      return [portion];
    },
  };
}
