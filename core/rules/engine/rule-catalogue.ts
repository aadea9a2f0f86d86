import { cannotBePlanned } from '../day/cannot-be-planned.ts';
import { cannotBeTested } from '../day/cannot-be-tested.ts';
import { experimentLacks } from '../day/experiment-lacks.ts';
import { fermentationTime } from '../day/fermentation-time.ts';
import { notReadyInTime } from '../day/not-ready-in-time.ts';
import { readPastGone } from '../day/read-past-gone.ts';
import { addedByPart } from '../formula/added-by-part.ts';
import { amountDoesNotFit } from '../formula/amount-does-not-fit.ts';
import { bakeLossUnknown } from '../formula/bake-loss-unknown.ts';
import { drawnAndAdded } from '../formula/drawn-and-added.ts';
import { drawnTooMuch } from '../formula/drawn-too-much.ts';
import { drawsContradict } from '../formula/draws-contradict.ts';
import { farTooMuch } from '../formula/far-too-much.ts';
import { flourNotHundred } from '../formula/flour-not-hundred.ts';
import { gramsExceedTotal } from '../formula/grams-exceed-total.ts';
import { hydrationRange } from '../formula/hydration-range.ts';
import { impossibleAmount } from '../formula/impossible-amount.ts';
import { keepsBackTooMuch } from '../formula/keeps-back-too-much.ts';
import { moistFlour } from '../formula/moist-flour.ts';
import { noFlour } from '../formula/no-flour.ts';
import { noPieces } from '../formula/no-pieces.ts';
import { noSalt } from '../formula/no-salt.ts';
import { noScale } from '../formula/no-scale.ts';
import { notInDough } from '../formula/not-in-dough.ts';
import { nothingLeft } from '../formula/nothing-left.ts';
import { partAmountsDiffer } from '../formula/part-amounts-differ.ts';
import { partsAboveWhole } from '../formula/parts-above-whole.ts';
import { portionsOff } from '../formula/portions-off.ts';
import { saltRange } from '../formula/salt-range.ts';
import { twoScales } from '../formula/two-scales.ts';
import { weighsNothing } from '../formula/weighs-nothing.ts';
import { wetAlready } from '../formula/wet-already.ts';
import { workedOutTwice } from '../formula/worked-out-twice.ts';
import { yeastRange } from '../formula/yeast-range.ts';
import { bowlOverfull } from '../mixing/bowl-overfull.ts';
import { bowlTooLittle } from '../mixing/bowl-too-little.ts';
import { brokenDown } from '../mixing/broken-down.ts';
import { fastForStiff } from '../mixing/fast-for-stiff.ts';
import { hotWater } from '../mixing/hot-water.ts';
import { iceAboveHalf } from '../mixing/ice-above-half.ts';
import { iceNeeded } from '../mixing/ice-needed.ts';
import { idleRest } from '../mixing/idle-rest.ts';
import { letDown } from '../mixing/let-down.ts';
import { mixedPastNeed } from '../mixing/mixed-past-need.ts';
import { noSuchSpeed } from '../mixing/no-such-speed.ts';
import { notLoaded } from '../mixing/not-loaded.ts';
import { nothingToDraw } from '../mixing/nothing-to-draw.ts';
import { tooWarm } from '../mixing/too-warm.ts';
import { underDeveloped } from '../mixing/under-developed.ts';
import { yeastInTheHot } from '../mixing/yeast-in-the-hot.ts';
import { loop } from '../names/loop.ts';
import { noDensity } from '../names/no-density.ts';
import { noPieceWeight } from '../names/no-piece-weight.ts';
import { notInBase } from '../names/not-in-base.ts';
import { notInExperiment } from '../names/not-in-experiment.ts';
import { sameNameTwice } from '../names/same-name-twice.ts';
import { severalDefinitions } from '../names/several-definitions.ts';
import { unknownFormula } from '../names/unknown-formula.ts';
import { unknownIngredient } from '../names/unknown-ingredient.ts';
import { unknownMixer } from '../names/unknown-mixer.ts';
import { unknownPart } from '../names/unknown-part.ts';
import { unusedPart } from '../names/unused-part.ts';
import { whichKind } from '../names/which-kind.ts';
import { noMixerKind } from '../notation/no-mixer-kind.ts';
import { saidTwice } from '../notation/said-twice.ts';
import { sameIngredientTwice } from '../notation/same-ingredient-twice.ts';
import { syntaxRows } from '../notation/syntax-rows.ts';
import { flourCanBeCalibrated } from '../trials/flour-can-be-calibrated.ts';
import { mixerCanBeCalibrated } from '../trials/mixer-can-be-calibrated.ts';
import { trialContradicts } from '../trials/trial-contradicts.ts';
import { trialOfOther } from '../trials/trial-of-other.ts';
import { trialWithoutProgramme } from '../trials/trial-without-programme.ts';
import { unknownFeel } from '../trials/unknown-feel.ts';
import { acceptRows } from './accept-rows.ts';
import type { Rule } from './rule.ts';

/** Every rule, in the order in which findings of one place are told. */
export const rules: readonly Rule[] = [
  ...syntaxRows,
  unknownIngredient,
  severalDefinitions,
  unknownMixer,
  unknownPart,
  unknownFormula,
  notInBase,
  notInExperiment,
  cannotBePlanned,
  notReadyInTime,
  experimentLacks,
  cannotBeTested,
  readPastGone,
  notInDough,
  noDensity,
  noPieceWeight,
  loop,
  noFlour,
  flourNotHundred,
  workedOutTwice,
  amountDoesNotFit,
  nothingLeft,
  wetAlready,
  drawnTooMuch,
  drawnAndAdded,
  nothingToDraw,
  drawsContradict,
  addedByPart,
  partAmountsDiffer,
  twoScales,
  gramsExceedTotal,
  noScale,
  keepsBackTooMuch,
  noPieces,
  bakeLossUnknown,
  impossibleAmount,
  unusedPart,
  tooWarm,
  underDeveloped,
  mixedPastNeed,
  letDown,
  brokenDown,
  idleRest,
  fastForStiff,
  hydrationRange,
  saltRange,
  noSalt,
  yeastRange,
  farTooMuch,
  weighsNothing,
  fermentationTime,
  hotWater,
  yeastInTheHot,
  iceAboveHalf,
  iceNeeded,
  bowlOverfull,
  bowlTooLittle,
  portionsOff,
  notLoaded,
  noSuchSpeed,
  mixerCanBeCalibrated,
  flourCanBeCalibrated,
  trialContradicts,
  unknownFeel,
  trialOfOther,
  trialWithoutProgramme,
  saidTwice,
  sameIngredientTwice,
  sameNameTwice,
  noMixerKind,
  partsAboveWhole,
  moistFlour,
  whichKind,
  ...acceptRows,
];

export const rulesByCode: ReadonlyMap<string, Rule> = new Map(rules.map((rule) => [rule.code, rule]));
