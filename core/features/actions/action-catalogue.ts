import { acceptFinding } from './accept-finding.ts';
import type { Action } from './action.ts';
import { addPart } from './add-part.ts';
import { blendTheFlours } from './blend-flours.ts';
import { changeFlour } from './change-flour.ts';
import { changeYeast } from './change-yeast.ts';
import { convertMix } from './convert-mix.ts';
import { defineName } from './define-name.ts';
import { drawPart } from './draw-part.ts';
import { extractPart } from './extract-part.ts';
import { fixAllOfRule, fixAllSlips } from './fix-all.ts';
import { inlinePart } from './inline-part.ts';
import { makeVariant } from './make-variant.ts';
import { sameFeel } from './same-feel.ts';
import { inGrams, inPercent } from './section-units.ts';
import { sortByWeight } from './sort-by-weight.ts';
import { teachMixer } from './teach-mixer.ts';
import { usualOrder } from './usual-order.ts';
import { weighMeasures } from './weigh-measures.ts';
import { giveBalance, stateHydration, writeOut } from './worked-out.ts';
import { writeVariantOut } from './write-variant-out.ts';

/** Every action, in the order in which an editor lists those of one kind. */
export const actions: readonly Action[] = [
  addPart,
  drawPart,
  inGrams,
  inPercent,
  giveBalance,
  stateHydration,
  writeOut,
  weighMeasures,
  changeFlour,
  sameFeel,
  blendTheFlours,
  changeYeast,
  convertMix,
  teachMixer,
  extractPart,
  inlinePart,
  writeVariantOut,
  makeVariant,
  sortByWeight,
  usualOrder,
  defineName,
  acceptFinding,
  fixAllOfRule,
  fixAllSlips,
];

export const actionsById: ReadonlyMap<string, Action> = new Map(actions.map((one) => [one.id, one]));
