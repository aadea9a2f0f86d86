import * as plans from '../sheet/plan-page.ts';
import { plainDisplay, worded } from '../text/display.ts';

/** The words for what a service has computed, with their figures in grams, °C and with a decimal point. */
export const planPage = plain(plans.planPage);

function plain<A extends unknown[], R>(words: (...args: A) => R): (...args: A) => R {
  return (...args) => worded(words(...args), plainDisplay);
}
