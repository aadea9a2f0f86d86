import { blendCurve, type FlourData } from '../calc/flour/flour.ts';
import { doughOf } from '../calc/formula/formula-input.ts';
import type { SolvedFormula } from '../calc/formula/formula-result.ts';
import { capacityShares } from '../calc/heat/heat.ts';
import { type Known, known, unknown } from '../calc/known.ts';
import { type DegreeOfMixing, degreesOfMixing, mixingStages } from '../calc/mixing/development.ts';
import { type MixingOutcome, simulateMixing } from '../calc/mixing/mixing.ts';
import type { MixingInput, MixingPhase, MixPortion } from '../calc/mixing/mixing-programme.ts';
import { type TemperedWater, type TemperInput, temperWater } from '../calc/mixing/mixing-water.ts';
import type { Mixer } from '../model/found-mixer.ts';
import { saidValue } from '../model/properties.ts';
import type { ResolvedFormula } from '../model/resolve.ts';
import type { ResolvedMix, ResolvedProgramme } from '../model/resolve-mix.ts';
import { type Message, message } from '../words/message.ts';
import { batchesOf } from './portions.ts';
import { pourAll, unsaidOf } from './pour-loads.ts';

/** The dough temperature wanted where the file says none; common practice for wheat doughs, no source. */
export const usualDoughCelsius = 25;

/** Degrees above the dough temperature that are tolerated; where none is written, the usual one is only a guess. */
const tolerated = 2;
const toleratedWhenAssumed = 3;

function toleratedOver(targetAssumed: boolean): number {
  return targetAssumed ? toleratedWhenAssumed : tolerated;
}

/** The temperature, °C, above which the dough of a programme is too warm. Common practice, no source. */
export function limitOf({ targetCelsius, targetAssumed }: MixAnalysis): number {
  return targetCelsius + toleratedOver(targetAssumed);
}

/** How warm a dough is that is so much above its temperature, °C. Common practice, no source. */
export function warmthOf(overCelsius: number): Message {
  if (overCelsius >= 4) return message('warmth.much-too');
  return message(overCelsius >= 2 ? 'warmth.too' : 'warmth.slightly');
}

/** The stage of a dough as a message; what a file calls a stage and is none, by its name. */
export function stageMessage(stage: string): Message {
  const known = mixingStages.find((one) => one === stage);
  return known === undefined ? message('stage.other', { name: stage }) : message(`stage.${known}`);
}

/** What the temperature of the water is chosen by. */
export type Tempering = Omit<TemperInput, 'mixing'>;

/** One mixing programme, run. */
export interface MixAnalysis {
  readonly index: number;
  readonly sectionId: string;
  readonly mixer: Mixer;
  readonly input: MixingInput;
  /** Run with the water as the file gives it, else with the water that reaches the dough temperature. */
  readonly outcome: MixingOutcome;
  /** Lines of the phases of `input`, counted in the block. */
  readonly phaseLines: readonly number[];
  readonly targetCelsius: number;
  readonly targetAssumed: boolean;
  /** The degree of mixing that the programme wishes; an improved mix where it says none. */
  readonly wish?: DegreeOfMixing;
  /** The water to use; unknown when the file fixes its temperature, with the reason. */
  readonly water: Known<TemperedWater, Message>;
  /** The temperature of the water where the file gives it. */
  readonly givenWaterCelsius?: number;
  /** What the water is chosen by: the temperature wanted, the tap, and whether there is ice. */
  readonly tempering: Tempering;
  readonly doughGrams: number;
  /** Keys in the dough that no line of the programme loads; they are taken to go in first. */
  readonly unloaded: readonly { readonly key: string; readonly name: string }[];
  /** Portions that do not make up their line: grams asked for against grams there are. */
  readonly portionsOff: readonly {
    readonly line: number;
    readonly name: string;
    readonly askedGrams: number;
    readonly hasGrams: number;
  }[];
}

/** Runs a programme of a solved formula, or says why it cannot be run. */
export function analyseMix(
  resolved: ResolvedFormula,
  solved: SolvedFormula,
  mix: ResolvedMix,
): Known<MixAnalysis, Message> {
  if (mix.mixer === undefined) return unknown(message('mixing.no-mixer'));
  const batches = batchesOf(resolved, solved, mix.sectionId);
  if (batches.size === 0 || lacksWeights(resolved, solved, mix.sectionId))
    return unknown(message('mixing.no-weights'));
  if (
    mix.phases.some((phase) => phase.statement.value === undefined) ||
    resolved.model.mixes[mix.index]?.hasUnread
  )
    return unknown(message('mixing.line-unfinished'));
  const unsaid = unsaidOf(mix);
  if (unsaid !== undefined) return unknown(unsaid);
  const poured = pourAll(solved, mix, batches);
  let doughGrams = 0;
  let givenWaterCelsius: number | undefined;
  for (const batch of batches.values()) {
    doughGrams += batch.grams;
    givenWaterCelsius ??= batch.waterCelsius;
  }
  const wanted = wantedCelsius(resolved, mix);
  const targetCelsius = wanted ?? usualDoughCelsius;
  const input = programmeOf(resolved, solved, mix, poured.phases, targetCelsius, wanted === undefined);
  const tempers = poured.phases.some(
    (phase) => 'portions' in phase && phase.portions.some((portion) => portion.tempered),
  );
  const { tapCelsius, hasIce } = resolved.bakery;
  const tempering: Tempering = {
    targetCelsius,
    ...(tapCelsius === undefined ? {} : { tapCelsius }),
    ...(hasIce === true ? { hasIce } : {}),
  };
  const water: Known<TemperedWater, Message> =
    !tempers && givenWaterCelsius !== undefined
      ? unknown(message('mixing.water-stated', { waterCelsius: givenWaterCelsius }))
      : temperWater({ mixing: input, ...tempering });
  return known(
    {
      index: mix.index,
      sectionId: mix.sectionId,
      mixer: mix.mixer,
      input,
      outcome: water.known ? water.value.outcome : simulateMixing(input),
      phaseLines: poured.lines,
      targetCelsius,
      targetAssumed: wanted === undefined,
      ...(mix.wish === undefined ? {} : { wish: mix.wish }),
      water,
      doughGrams,
      unloaded: poured.unloaded,
      portionsOff: poured.portionsOff,
      ...(givenWaterCelsius === undefined ? {} : { givenWaterCelsius }),
      tempering,
    },
    'common practice',
  );
}

/** A programme ready to be run, and the lines of its phases, counted in the block. */
export interface ReadyProgramme {
  readonly input: MixingInput;
  readonly phaseLines: readonly number[];
}

/** Makes a programme ready with its water as the formula has it, running nothing; or says why it cannot be run. */
export function readyProgramme(
  resolved: ResolvedFormula,
  solved: SolvedFormula,
  programme: ResolvedProgramme,
): Known<ReadyProgramme, Message> {
  if (programme.mixer === undefined) return unknown(message('mixing.no-mixer'));
  const batches = batchesOf(resolved, solved, programme.sectionId);
  if (batches.size === 0 || lacksWeights(resolved, solved, programme.sectionId))
    return unknown(message('mixing.no-weights'));
  if (programme.phases.some((phase) => phase.statement.value === undefined))
    return unknown(message('mixing.line-unfinished'));
  const unsaid = unsaidOf(programme);
  if (unsaid !== undefined) return unknown(unsaid);
  const { phases, lines } = pourAll(solved, programme, batches);
  const wanted = wantedCelsius(resolved, programme);
  const targetCelsius = wanted ?? usualDoughCelsius;
  const input = programmeOf(resolved, solved, programme, phases, targetCelsius, wanted === undefined);
  return known({ input, phaseLines: lines }, 'given');
}

/**
 * Whether something that makes the dough softer or stiffer goes in of which it is not known how much: what is left would be no dough to
 * judge. Salt, yeast, sugar and seeds change too little, and of a name that nobody knows it is told that it counts as nothing.
 */
function lacksWeights(resolved: ResolvedFormula, solved: SolvedFormula, sectionId: string): boolean {
  const isDough = sectionId === doughOf(resolved.input).id;
  const lines = isDough
    ? solved.finalMix.lines.map(({ key, grams, kind }) => ({ key, grams, part: kind === 'part' }))
    : (solved.sections.find(({ id }) => id === sectionId)?.lines ?? []);
  return lines.some(({ key, grams, part }) => {
    const ingredient = resolved.ingredients.get(key);
    if (grams !== undefined) return false;
    if (part) return true;
    if (ingredient === undefined) return false;
    const { role, composition, isFlour } = ingredient;
    if (isFlour) return true;
    return role === 'fat' || (role !== 'yeast' && (composition.water ?? 0) >= wetFraction);
  });
}

/** From so much water on an ingredient softens a dough, as milk, egg and butter do. */
const wetFraction = 0.15;

/** The temperature wanted of what a programme mixes: a part's own, the formula's for its dough. */
function wantedCelsius(resolved: ResolvedFormula, mix: ResolvedProgramme): number | undefined {
  const part = resolved.model.sections.slice(1).find((section) => section.id === mix.sectionId);
  if (part === undefined) return resolved.doughCelsius;
  return saidValue(part.said, 'dough temperature', 'temperature')?.celsius;
}

function programmeOf(
  resolved: ResolvedFormula,
  solved: SolvedFormula,
  mix: ResolvedProgramme,
  phases: readonly MixingPhase[],
  targetCelsius: number,
  targetAssumed: boolean,
): MixingInput {
  const { bakery } = resolved;
  const { wish } = mix;
  const isDough = mix.sectionId === doughOf(resolved.input).id;
  const seen = isDough ? resolved.seenDevelopment : undefined;
  const flours: MixPortion[] = [];
  const ripe: MixPortion[] = [];
  let waterGrams = 0;
  let saltGrams = 0;
  for (const phase of phases) {
    if (!('portions' in phase)) continue;
    for (const portion of phase.portions) {
      if (portion.kind === 'flour') flours.push(portion);
      // A friction factor belongs to a straight dough: the flour and water of a preferment count as if it were none.
      else if (portion.kind === 'preferment') {
        ripe.push(portion);
        waterGrams += portion.freeWaterGrams;
      } else if (portion.kind === 'water' || portion.frozen === true) waterGrams += portion.grams;
      else if (portion.kind === 'salt') saltGrams += portion.grams;
    }
  }
  const composition = flours[0]?.composition;
  if (composition !== undefined)
    for (const portion of ripe) flours.push({ ...portion, composition, grams: portion.flourGrams });
  return {
    phases,
    mixer: mix.mixer!.data,
    curve: blendCurve(floursOf(resolved, solved, mix.sectionId)),
    roomCelsius: bakery.roomCelsius,
    limitCelsius: targetCelsius + toleratedOver(targetAssumed),
    ...(seen === undefined ? {} : { seenDevelopment: seen }),
    ...(wish === undefined ? {} : { wishedDevelopment: degreesOfMixing[wish] }),
    friction: {
      doughCelsius: targetCelsius,
      roomCelsius: bakery.roomCelsius,
      flourCelsius: bakery.flourCelsius,
      shares: capacityShares(flours, waterGrams, saltGrams),
    },
  };
}

/** All flour that is in the bowl, for what mixing does to it. */
export function floursOf(
  resolved: ResolvedFormula,
  solved: SolvedFormula,
  sectionId: string,
): { grams: number; flour: FlourData }[] {
  const dough = sectionId === doughOf(resolved.input).id;
  const lines = dough
    ? solved.overall
    : (solved.sections.find((section) => section.id === sectionId)?.lines ?? []);
  return lines.flatMap((line) => {
    const flour = resolved.ingredients.get(line.key)?.flour;
    return flour !== undefined && line.isFlour && line.grams !== undefined
      ? [{ grams: line.grams, flour }]
      : [];
  });
}
