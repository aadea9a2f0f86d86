import { elementAt, lastOf } from '../../text/element.ts';
import { type Message, message } from '../../words/message.ts';
import { scaledPortion } from '../formula/scaled-portion.ts';
import { type Known, known, unknown } from '../known.ts';
import { isGentle, shapeFor, wetting } from './conversion-shape.ts';
import type { MixerData } from './mixer.ts';
import { type MixingOutcome, prepareMixing, runMixing, simulateMixing } from './mixing.ts';
import { countedRate, type MixingInput, type MixingPhase, takeApart } from './mixing-programme.ts';
import { type TemperedWater, type TemperInput, temperWater, withPureWater } from './mixing-water.ts';

/** A programme that is to be run on another mixer. Temperatures in °C. */
export interface ConversionInput extends TemperInput {
  readonly to: MixerData;
  /** The batch on the other mixer beside that of the programme; the same where absent. */
  readonly batch?: number;
  /** The hottest water that anybody is told to draw. */
  readonly hottestCelsius?: number;
}

/** What becomes of one line of work: no line where the line before takes it over, one, or two. */
export interface ConvertedWork {
  /** Index of the line in the programme as it was. */
  readonly phase: number;
  readonly by: readonly TimedWork[];
}

/** A programme on another mixer that develops the dough as far. */
export interface Conversion {
  readonly mixing: MixingInput;
  readonly converted: readonly ConvertedWork[];
  /** Slow minutes of the programme before and after; they differ by what half minutes cannot say. */
  readonly slowMinutesBefore: number;
  readonly slowMinutesAfter: number;
  /** As it was, and on the other mixer with the same water. */
  readonly before: MixingOutcome;
  readonly after: MixingOutcome;
  /** Minutes of work on the other mixer: between these, by what is not known of the two mixers. */
  readonly workedMinutes: { readonly low: number; readonly high: number };
  /** The water that brings the dough to the temperature wanted on the other mixer, and the dough with it. */
  readonly water: Known<ConvertedWater, Message>;
}

/** Water for the other mixer; never hotter than may be drawn, and then the dough ends cooler. */
export interface ConvertedWater {
  readonly tempered: TemperedWater;
  /** Absent where no water makes a difference. */
  readonly waterCelsius?: number;
  readonly endCelsius: Known<number, Message>;
  /** Warmer water than may be drawn would be needed. */
  readonly isTooCool: boolean;
}

/**
 * The same development D on another mixer or by hand, in the shape that it is usually run in: a machine’s first speed to wet
 * the flour, then its second; for stiff and rye doughs the first alone; hands knead. Rests, additions and folds stay in
 * their order, and each stretch of work lasts so many whole half minutes that the slow minutes done by its end are as
 * near as can be to those of before; what rounding leaves over is made good by the next stretch. Unknown, with the reason,
 * where a speed has no rate. Whether the other mixer also works hard enough (Kilborn & Tipples 1972) is not in D.
 */
export function convertProgramme(input: ConversionInput): Known<Conversion, Message> {
  const source = withChosenWater(input);
  const before = simulateMixing(source);
  if (!before.slowMinutes.known) return before.slowMinutes;
  const worked = workOn(input.to, source, slowMinutesByPhase(before, source.phases.length));
  if (!worked.known) return worked;
  const { phases, converted } = worked.value;
  const mixing = inBatch({ ...source, mixer: input.to, phases }, input.batch ?? 1);
  const after = simulateMixing(mixing);
  if (!after.slowMinutes.known) return after.slowMinutes;
  return known(
    {
      mixing,
      converted,
      slowMinutesBefore: before.slowMinutes.value,
      slowMinutesAfter: after.slowMinutes.value,
      before,
      after,
      workedMinutes: rangeOf(after.workedMinutes, source, mixing),
      water: waterFor(input, mixing),
    },
    'common practice',
  );
}

type Work = { readonly kind: 'speed'; readonly number: number } | { readonly kind: 'knead' };
/** A line of work: at a speed, or by hand. */
export type TimedWork = Work & { readonly seconds: number };

/** The lines of a programme as they are being written for the other mixer. */
interface Written {
  readonly phases: MixingPhase[];
  readonly converted: { readonly phase: number; readonly by: TimedWork[] }[];
}

function workOn(to: MixerData, source: MixingInput, wanted: readonly number[]): Known<Written, Message> {
  const shape = shapeFor(source, to);
  const written: Written = { phases: [], converted: [] };
  let wetted = 0;
  const slowAfter = (work: Work, minutes: number): Known<number, Message> =>
    slowMinutesOf({ ...source, mixer: to, phases: [...written.phases, { ...work, seconds: minutes * 60 }] });
  for (const [index, phase] of source.phases.entries()) {
    if (!isOtherWork(phase, source.mixer, to)) {
      written.phases.push(phase);
      continue;
    }
    written.converted.push({ phase: index, by: [] });
    const until = (work: Work): Known<number, Message> =>
      nearestHalfMinutes((minutes) => slowAfter(work, minutes), elementAt(wanted, index));
    if (to.kind === 'hand') {
      const minutes = until({ kind: 'knead' });
      if (!minutes.known) return minutes;
      write(written, { kind: 'knead' }, atLeastHalf(minutes.value, phase, written));
      continue;
    }
    if (shape === undefined) return unknown(message('conversion.no-speeds'));
    const first: Work = { kind: 'speed', number: shape.first };
    const work: Work = { kind: 'speed', number: shape.work };
    const alone = until(first);
    let atFirst = alone.known ? alone.value : Number.POSITIVE_INFINITY;
    if (shape.work !== shape.first) {
      const toWet = Math.max(0, wettingFor(phase, source.mixer) - wetted);
      // Nobody changes the speed for what half a minute more at first speed does as well.
      if (atFirst > toWet + 0.5) atFirst = toWet;
      wetted += atFirst;
      write(written, first, atFirst);
      const rest = until(work);
      if (!rest.known) return rest;
      const isWorked = atFirst > 0;
      write(written, work, isWorked ? rest.value : atLeastHalf(rest.value, phase, written));
      continue;
    }
    if (!alone.known) return alone;
    write(written, first, atLeastHalf(atFirst, phase, written));
  }
  return known(written, 'common practice');
}

/** How many minutes at first speed a line of work leaves for wetting the flour, those before it counted in. */
function wettingFor(phase: MixingPhase, from: MixerData): number {
  if (from.kind === 'hand') return wetting.byHand;
  return isGentle(phase, from) ? wetting.most : wetting.least;
}

/** A stretch that was worked is still worked, be it for half a minute. */
function atLeastHalf(minutes: number, phase: MixingPhase, { phases }: Written): number {
  const goesOn = phases.at(-1);
  const isWorked = goesOn !== undefined && (goesOn.kind === 'speed' || goesOn.kind === 'knead');
  return 'seconds' in phase && phase.seconds > 0 && !isWorked ? Math.max(0.5, minutes) : minutes;
}

/** Puts minutes of work behind what is written; what goes on as before lengthens the line before. */
function write({ phases, converted }: Written, work: Work, minutes: number): void {
  if (!(minutes > 0)) return;
  const before = phases.at(-1);
  const last = converted.findLast(({ by }) => by.length > 0)?.by;
  const lastWork = last?.at(-1);
  const isSame =
    lastWork !== undefined &&
    before === lastWork &&
    lastWork.kind === work.kind &&
    (lastWork.kind !== 'speed' || work.kind !== 'speed' || lastWork.number === work.number);
  const seconds = minutes * 60 + (isSame ? lastWork.seconds : 0);
  if (isSame) {
    last?.pop();
    phases.pop();
  }
  const made: TimedWork =
    work.kind === 'speed' ? { kind: 'speed', number: work.number, seconds } : { kind: 'knead', seconds };
  phases.push(made);
  (isSame && last !== undefined ? last : lastOf(converted).by).push(made);
}

/** Whether a line is work that the other mixer does; by hand beside a machine stays by hand. */
function isOtherWork(phase: MixingPhase, from: MixerData, to: MixerData): boolean {
  if (phase.kind === 'speed') return true;
  return (phase.kind === 'knead' || phase.kind === 'stir') && from.kind === 'hand' && to.kind !== 'hand';
}

function slowMinutesOf(mixing: MixingInput): Known<number, Message> {
  let sum = 0;
  for (const step of takeApart(mixing).steps) {
    if (step.kind !== 'time') continue;
    if (!step.rate.known) return step.rate;
    sum += countedRate(step) * step.minutes;
  }
  return known(sum, 'common practice');
}

/** How far off the development of a mixer may be by its kind alone: half of the variance of a fifth. Common practice, our own choice. */
const unsureByKind = 0.2 * Math.SQRT1_2;

/** The two mixers may each be off in how fast they develop; the flour is the same on both, and is no part of it. */
function rangeOf(minutes: number, from: MixingInput, to: MixingInput): { low: number; high: number } {
  const share = Math.hypot(unsureOf(from), unsureOf(to));
  return { low: minutes * (1 - share), high: minutes * (1 + share) };
}

function unsureOf(mixing: MixingInput): number {
  const working = takeApart(mixing).steps.filter((step) => step.kind === 'time' && step.working);
  const shares = working.map((step) =>
    step.kind === 'time' && step.rate.known && step.rate.provenance !== 'common practice'
      ? (step.rateWithin ?? 0)
      : unsureByKind,
  );
  return Math.max(0, ...shares);
}

function inBatch(mixing: MixingInput, factor: number): MixingInput {
  const phases = mixing.phases.map(
    (phase): MixingPhase =>
      'portions' in phase
        ? { ...phase, portions: phase.portions.map((portion) => scaledPortion(portion, factor)) }
        : phase,
  );
  return { ...mixing, phases };
}

function waterFor(
  { to: _, batch: __, hottestCelsius, ...temper }: ConversionInput,
  own: MixingInput,
): Known<ConvertedWater, Message> {
  const mixing = withFreeWater(own);
  const tempered = temperWater({ ...temper, mixing });
  if (!tempered.known) return tempered;
  const { waterCelsius, outcome, reach } = tempered.value;
  const isHot = waterCelsius !== undefined && hottestCelsius !== undefined && waterCelsius > hottestCelsius;
  const drawn = isHot ? hottestCelsius : waterCelsius;
  return known(
    {
      tempered: tempered.value,
      ...(drawn === undefined ? {} : { waterCelsius: drawn }),
      endCelsius: isHot
        ? runMixing(prepareMixing(withPureWater(mixing)), hottestCelsius).endCelsius
        : outcome.endCelsius,
      isTooCool: isHot || reach === 'not warm enough',
    },
    'common practice',
  );
}

/** The longest stretch that is looked for, minutes; a programme that needs more is a slip of the pen. */
const longestMinutes = 600;

function nearestHalfMinutes(
  done: (minutes: number) => Known<number, Message>,
  wanted: number,
): Known<number, Message> {
  let [low, high] = [0, 2 * longestMinutes];
  const most = done(longestMinutes);
  if (!most.known) return most;
  if (most.value < wanted) return unknown(message('conversion.too-long', { hours: longestMinutes / 60 }));
  // Slow minutes grow with time, so halving finds the last half minute that is not beyond what is wanted.
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    const here = done(middle / 2);
    if (!here.known) return here;
    if (here.value <= wanted + 1e-9) low = middle;
    else high = middle;
  }
  const [below, above] = [done(low / 2), done(high / 2)];
  if (!below.known) return below;
  if (!above.known) return above;
  const halves = wanted - below.value <= above.value - wanted ? low : high;
  return known(halves / 2, 'common practice');
}

/** The slow minutes done at the end of each phase. */
function slowMinutesByPhase(outcome: MixingOutcome, phases: number): number[] {
  let done = 0;
  return Array.from({ length: phases }, (_, index) => {
    done = outcome.phaseEnds.find((one) => one.phase === index)?.slowMinutes ?? done;
    return done;
  });
}

/** The programme with the water that its own mixer wants, where the file leaves it open. */
function withChosenWater({ mixing, ...input }: ConversionInput): MixingInput {
  const water = temperWater({ ...input, mixing });
  if (!water.known) return mixing;
  const { effectiveCelsius } = water.value;
  return eachWater(mixing, (portion) =>
    portion.tempered === true ? { ...portion, celsius: effectiveCelsius } : portion,
  );
}

function withFreeWater(mixing: MixingInput): MixingInput {
  return eachWater(mixing, (portion) => ({ ...portion, tempered: true }));
}

type Portion = Extract<MixingPhase, { readonly kind: 'load' | 'add' }>['portions'][number];

function eachWater(mixing: MixingInput, change: (portion: Portion) => Portion): MixingInput {
  const phases = mixing.phases.map((phase): MixingPhase => {
    if (!('portions' in phase)) return phase;
    const portions = phase.portions.map((one) =>
      one.kind === 'water' || one.tempered === true ? change(one) : one,
    );
    return { ...phase, portions };
  });
  return { ...mixing, phases };
}
