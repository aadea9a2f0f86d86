import * as cost from '../features/cost-words.ts';
import * as label from '../features/label-words.ts';
import { plainDisplay, worded } from '../text/display.ts';

/** The words for what a service has computed, with their figures in grams, °C and with a decimal point. */
export const costSentence = plain(cost.costSentence);
export const money = plain(cost.money);
export const allergenWords = plain(label.allergenWords);
export const ingredientStretches = plain(label.ingredientStretches);
export const nutritionWords = plain(label.nutritionWords);
export const standardWords = plain(label.standardWords);

function plain<A extends unknown[], R>(words: (...args: A) => R): (...args: A) => R {
  return (...args) => worded(words(...args), plainDisplay);
}
