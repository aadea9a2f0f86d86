import type { Analysis } from '../analysis/analysis.ts';
import { atMoisture } from '../calc/flour/flour.ts';
import type { Composition } from '../calc/formula/composition.ts';
import { contentsOf } from '../calc/formula/contents.ts';
import type { SolvedSection } from '../calc/formula/formula-result.ts';
import { type Known, known, unknown } from '../calc/known.ts';
import type { Ingredient } from '../model/found-ingredient.ts';
import { type Message, message } from '../words/message.ts';

/** An ingredient with its weight, whether it is known what it is or not. */
export interface ProductItem {
  readonly name: string;
  readonly isWater: boolean;
  readonly grams?: number;
  readonly composition: Composition;
  readonly ingredient?: Ingredient;
}

/** A filling, topping or bath, with all that is in it. */
export interface Beside {
  readonly section: SolvedSection;
  /** `undefined` where a weight in it is not known. */
  readonly items: readonly ProductItem[] | undefined;
}

/** Everything weighed for a batch: what goes into the bowl, all parts dissolved, and what never sees it. */
export interface Weighed {
  readonly bowl: readonly ProductItem[];
  /** Parts folded into the mixed dough before it is divided, as the butter of a laminated dough. */
  readonly enclosed: readonly Beside[];
  readonly beside: readonly Beside[];
}

/** What is sold of a batch. */
export interface Product {
  /** Divided dough, fillings and toppings, before baking. */
  readonly items: readonly ProductItem[];
  readonly bakedGrams: number;
  readonly evaporatedGrams: number;
}

/** Everything weighed; `undefined` where the formula has no lines yet. */
export function weighedOf(analysis: Analysis): Weighed | undefined {
  const { solved } = analysis;
  if (solved === undefined) return undefined;
  const outside = solved.sections
    .filter(({ inBowl }) => !inBowl)
    .map((section): Beside => {
      const contents = contentsOf(solved, section);
      return {
        section,
        items: contents?.map(({ key, name, grams }) => itemOf(analysis, key, name, grams)),
      };
    });
  return {
    bowl: solved.overall.map((line) => itemOf(analysis, line.key, line.name, line.grams)),
    enclosed: outside.filter(({ section }) => section.enclosed),
    beside: outside.filter(({ section }) => !section.enclosed),
  };
}

/** What a part of the formula is made of, with its weights. */
export function itemsOfPart(analysis: Analysis, section: SolvedSection): readonly ProductItem[] | undefined {
  const contents = analysis.solved === undefined ? undefined : contentsOf(analysis.solved, section);
  return contents?.map(({ key, name, grams }) => itemOf(analysis, key, name, grams));
}

/**
 * What comes out of the oven. Dough that stays in the bowl is left out, a bath is not eaten, and fillings and toppings
 * keep their weight: bake loss is told for the dough, and is water.
 */
export function productOf(analysis: Analysis): Known<Product, Message> {
  const { solved } = analysis;
  const weighed = weighedOf(analysis);
  if (solved === undefined || weighed === undefined) return unknown(message('product.no-lines'));
  const { doughGrams, yieldDoughGrams, bakedGrams } = solved;
  if (doughGrams === undefined || yieldDoughGrams === undefined || !(doughGrams > 0))
    return unknown(message('product.no-dough-weight'));
  if (bakedGrams === undefined) return unknown(message('product.no-bake-loss', { example: 'bake loss 12%' }));
  const unweighed = weighed.bowl.find((item) => item.grams === undefined);
  if (unweighed !== undefined) return unknown(message('product.no-weight', { name: unweighed.name }));
  const kept = yieldDoughGrams / (doughGrams + (solved.enclosedGrams ?? 0));
  const items = weighed.bowl.map((item) => ({ ...item, grams: item.grams! * kept }));
  for (const { section, items: inside } of weighed.enclosed) {
    if (inside === undefined) return unknown(message('product.enclosed-not-known', { part: section.name }));
    for (const item of inside) items.push({ ...item, grams: item.grams! * kept });
  }
  let product = bakedGrams;
  for (const { section, items: inside } of weighed.beside) {
    if (section.kind === 'bath') continue;
    if (inside === undefined) return unknown(message('product.beside-not-known', { part: section.name }));
    for (const item of inside) {
      items.push({ ...item, grams: item.grams! });
      product += item.grams!;
    }
  }
  return known({ items, bakedGrams: product, evaporatedGrams: yieldDoughGrams - bakedGrams }, 'given');
}

function itemOf(analysis: Analysis, key: string, name: string, grams: number | undefined): ProductItem {
  const ingredient = analysis.resolved.ingredients.get(key);
  return {
    name,
    isWater: ingredient?.role === 'water',
    composition: ingredient === undefined ? {} : asEaten(ingredient),
    ...(grams === undefined ? {} : { grams }),
    ...(ingredient === undefined ? {} : { ingredient }),
  };
}

/** A miller’s protein at 14 % moisture is another share of the flour as it is; its carbohydrate makes up for it. */
function asEaten({ composition, flour }: Ingredient): Composition {
  const { water, carbohydrate } = composition;
  const basis = flour?.proteinMoistureBasis;
  if (flour?.protein === undefined || basis === undefined || !(basis < 1) || water === undefined)
    return composition;
  const protein = atMoisture(flour.protein, basis, water);
  const more = protein - (composition.protein ?? protein);
  return {
    ...composition,
    protein,
    ...(carbohydrate === undefined ? {} : { carbohydrate: Math.max(0, carbohydrate - more) }),
  };
}
