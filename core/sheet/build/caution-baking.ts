import type { Analysis } from '../../analysis/analysis.ts';
import { type Message, message } from '../../words/message.ts';

/**
 * What counts as a dark bake is our own choice (common practice, no source): so hot at any time, or so long at a usual
 * heat, or said so.
 */
const darkCelsius = 240;
const usualCelsius = 200;
const longMinutes = 45;

/** Benchmark levels of acrylamide in soft bread, µg/kg: Commission Regulation (EU) 2017/2158, Annex IV. */
const benchmarkWheatBread = 50;
const benchmarkOtherBread = 100;

/** A rich dough is done at less heat inside. Our own choice of where rich begins. */
const richFraction = 0.1;

/** Cautions of the oven; none where the process does not bake. */
export function bakingCautions(analysis: Analysis): Message[] {
  const bakes = analysis.resolved.model.processes
    .flatMap((process) => process.steps.map(({ step }) => step))
    .filter(({ known }) => known === 'bake');
  if (bakes.length === 0) return [];
  const said = [coreMessage(analysis)];
  const hottest = Math.max(0, ...bakes.map(({ celsius }) => celsius ?? 0));
  const minutes = bakes.reduce(
    (sum, { celsius, seconds }) => sum + ((celsius ?? 0) >= usualCelsius ? (seconds ?? 0) / 60 : 0),
    0,
  );
  const isSaid = bakes.some(({ words, remarks }) => /\bdark\b/i.test([words.text, ...remarks].join(' ')));
  if (hottest >= darkCelsius || minutes >= longMinutes || isSaid)
    said.push(acrylamideMessage(analysis, hottest));
  return said;
}

function acrylamideMessage(analysis: Analysis, hottest: number): Message {
  const isWheat = isWheatBread(analysis);
  const microgramsPerKilogram = isWheat ? benchmarkWheatBread : benchmarkOtherBread;
  if (hottest > 0)
    return message(isWheat ? 'caution.dark-wheat-at' : 'caution.dark-other-at', {
      celsius: hottest,
      microgramsPerKilogram,
    });
  return message(isWheat ? 'caution.dark-wheat' : 'caution.dark-other', { microgramsPerKilogram });
}

/** Most of its flour is wheat; spelt and durum are wheats too. */
function isWheatBread({ solved, resolved }: Analysis): boolean {
  let [wheat, all] = [0, 0];
  for (const { key, isFlour, grams = 0 } of solved?.overall ?? []) {
    if (!isFlour) continue;
    all += grams;
    const grain = resolved.ingredients.get(key)?.flour?.grain ?? 'wheat';
    if (['wheat', 'spelt', 'durum', 'khorasan', 'emmer', 'einkorn'].includes(grain)) wheat += grams;
  }
  return wheat >= all / 2;
}

/** Core temperatures at which bread is done; common practice, no source. */
function coreMessage({ solved }: Analysis): Message {
  const { fat = 0, sugar = 0, egg = 0 } = solved?.fractionByRole ?? {};
  const isRich = fat + sugar + egg >= richFraction;
  return message(
    'caution.core',
    isRich ? { celsius: 85, limitCelsius: 91 } : { celsius: 93, limitCelsius: 98 },
  );
}
