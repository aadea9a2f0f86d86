import { type Blend, type BlendFlour, type BlendTarget, blendFlours } from '../calc/flour/blend.ts';
import { type Known, unknown } from '../calc/known.ts';
import { costOfPortion, currencyOf } from '../calc/product/cost.ts';
import { findIngredient, type Ingredient } from '../model/found-ingredient.ts';
import type { Scope } from '../model/scope.ts';
import { elementAt } from '../text/element.ts';
import { foldName } from '../text/names.ts';
import { type Message, message } from '../words/message.ts';

/** A blend with the names of its flours and the currency of its price. */
export interface NamedBlend {
  readonly flours: readonly string[];
  readonly blend: Blend;
  readonly currency?: string;
}

/** A flour of a blend with its share now. */
export interface FlourShare {
  readonly name: string;
  readonly ingredient: Ingredient;
  readonly share?: number;
}

/** Blends flours by their names, as a file of this scope sees them. */
export function blendOfNames(
  names: readonly string[],
  scope: Scope,
  target: BlendTarget,
): Known<NamedBlend, Message> {
  const flours: FlourShare[] = [];
  for (const text of names) {
    const found = findIngredient({ text, folded: foldName(text), start: 0, end: 0 }, scope);
    if (found.kind === 'several') return unknown(message('blend.several-definitions', { name: text }));
    if (found.kind === 'unknown') return unknown(message('blend.not-defined', { name: text }));
    if (found.ingredient.flour === undefined) return unknown(message('blend.not-a-flour', { name: text }));
    flours.push({ name: text, ingredient: found.ingredient, share: 1 / names.length });
  }
  return blendOf(flours, target);
}

/** Blends flours with their shares; prices in several currencies cannot be compared. */
export function blendOf(flours: readonly FlourShare[], target: BlendTarget): Known<NamedBlend, Message> {
  const portions = flours.map(({ name, ingredient }) => ({
    name,
    grams: 1000,
    isWater: false,
    ...(ingredient.price === undefined ? {} : { price: ingredient.price }),
    ...(ingredient.densityGramsPerMillilitre === undefined
      ? {}
      : { densityGramsPerMillilitre: ingredient.densityGramsPerMillilitre }),
  }));
  const currency = currencyOf(portions);
  if (target.goal === 'cheapest' && !currency.known) return currency;
  const inputs = flours.map(({ name, ingredient, share }, index): BlendFlour => {
    const cost = currency.known ? costOfPortion(elementAt(portions, index)) : undefined;
    return {
      name,
      flour: ingredient.flour ?? { grain: '' },
      ...(cost?.known ? { pricePerKilogram: cost.value } : {}),
      ...(share === undefined ? {} : { share }),
    };
  });
  const blend = blendFlours(inputs, target);
  if (!blend.known) return blend;
  return {
    ...blend,
    value: {
      flours: flours.map(({ name }) => name),
      blend: blend.value,
      ...(currency.known && blend.value.pricePerKilogram !== undefined ? { currency: currency.value } : {}),
    },
  };
}
