import type { WaterComparison } from '../features/heat-of.ts';
import * as heat from '../features/heat-words.ts';
import * as plans from '../sheet/plan-page.ts';
import { plainDisplay, worded } from '../text/display.ts';
import { plainSpeaker } from '../words/speak.ts';

/** The words for what a service has computed, with their figures in grams, °C and with a decimal point. */
export const billLines = (bill: Parameters<typeof heat.billLines>[0]) => heat.billLines(bill, plainSpeaker);
export const differenceWords = (comparison: WaterComparison): string =>
  plainSpeaker.say(heat.differenceOf(comparison));
export const heatSentences = (facts: Parameters<typeof heat.heatOutlook>[0]): string[] =>
  heat.heatOutlook(facts).map(plainSpeaker.say);
export const planPage = plain(plans.planPage);

function plain<A extends unknown[], R>(words: (...args: A) => R): (...args: A) => R {
  return (...args) => worded(words(...args), plainDisplay);
}
