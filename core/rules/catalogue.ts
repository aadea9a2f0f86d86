import { acceptRows } from './accept-rows.ts';
import { addedByPart } from './added-by-part.ts';
import { amountDoesNotFit } from './amount-does-not-fit.ts';
import { bakeLossUnknown } from './bake-loss-unknown.ts';
import { bowlOverfull } from './bowl-overfull.ts';
import { bowlTooLittle } from './bowl-too-little.ts';
import { brokenDown } from './broken-down.ts';
import { cannotBePlanned } from './cannot-be-planned.ts';
import { drawnAndAdded } from './drawn-and-added.ts';
import { drawnTooMuch } from './drawn-too-much.ts';
import { drawsContradict } from './draws-contradict.ts';
import { farTooMuch } from './far-too-much.ts';
import { fastForStiff } from './fast-for-stiff.ts';
import { fermentationTime } from './fermentation-time.ts';
import { flourNotHundred } from './flour-not-hundred.ts';
import { gramsExceedTotal } from './grams-exceed-total.ts';
import { hotWater } from './hot-water.ts';
import { hydrationRange } from './hydration-range.ts';
import { iceAboveHalf } from './ice-above-half.ts';
import { iceNeeded } from './ice-needed.ts';
import { idleRest } from './idle-rest.ts';
import { impossibleAmount } from './impossible-amount.ts';
import { keepsBackTooMuch } from './keeps-back-too-much.ts';
import { letDown } from './let-down.ts';
import { loop } from './loop.ts';
import { mixedPastNeed } from './mixed-past-need.ts';
import { mixerCanBeCalibrated } from './mixer-can-be-calibrated.ts';
import { moistFlour } from './moist-flour.ts';
import { noDensity } from './no-density.ts';
import { noFlour } from './no-flour.ts';
import { noMixerKind } from './no-mixer-kind.ts';
import { noPieceWeight } from './no-piece-weight.ts';
import { noPieces } from './no-pieces.ts';
import { noSalt } from './no-salt.ts';
import { noScale } from './no-scale.ts';
import { noSuchSpeed } from './no-such-speed.ts';
import { notInDough } from './not-in-dough.ts';
import { notLoaded } from './not-loaded.ts';
import { notReadyInTime } from './not-ready-in-time.ts';
import { nothingLeft } from './nothing-left.ts';
import { nothingToDraw } from './nothing-to-draw.ts';
import { partAmountsDiffer } from './part-amounts-differ.ts';
import { partsAboveWhole } from './parts-above-whole.ts';
import { portionsOff } from './portions-off.ts';
import type { Rule } from './rule.ts';
import { saidTwice } from './said-twice.ts';
import { saltRange } from './salt-range.ts';
import { sameIngredientTwice } from './same-ingredient-twice.ts';
import { sameNameTwice } from './same-name-twice.ts';
import { severalDefinitions } from './several-definitions.ts';
import { syntaxRows } from './syntax-rows.ts';
import { tooWarm } from './too-warm.ts';
import { trialContradicts } from './trial-contradicts.ts';
import { trialWithoutProgramme } from './trial-without-programme.ts';
import { twoScales } from './two-scales.ts';
import { underDeveloped } from './under-developed.ts';
import { unknownFormula } from './unknown-formula.ts';
import { unknownIngredient } from './unknown-ingredient.ts';
import { unknownMixer } from './unknown-mixer.ts';
import { unknownPart } from './unknown-part.ts';
import { unusedPart } from './unused-part.ts';
import { weighsNothing } from './weighs-nothing.ts';
import { wetAlready } from './wet-already.ts';
import { workedOutTwice } from './worked-out-twice.ts';
import { yeastInTheHot } from './yeast-in-the-hot.ts';
import { yeastRange } from './yeast-range.ts';

/** Every rule, in the order in which findings of one place are told. */
export const rules: readonly Rule[] = [
  ...syntaxRows,
  unknownIngredient,
  severalDefinitions,
  unknownMixer,
  unknownPart,
  unknownFormula,
  cannotBePlanned,
  notReadyInTime,
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
  trialContradicts,
  trialWithoutProgramme,
  saidTwice,
  sameIngredientTwice,
  sameNameTwice,
  noMixerKind,
  partsAboveWhole,
  moistFlour,
  ...acceptRows,
];

export const rulesByCode: ReadonlyMap<string, Rule> = new Map(rules.map((rule) => [rule.code, rule]));
