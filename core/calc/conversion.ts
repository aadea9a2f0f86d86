import { type Known, known, unknown } from './known.ts';
import { findSpeed, type MixerData } from './mixer.ts';
import { type MixingOutcome, simulateMixing } from './mixing.ts';
import type { MixingInput, MixingPhase } from './mixing-programme.ts';
import { type TemperedWater, temperWater } from './mixing-water.ts';

/** A programme that is to be run on another mixer. Temperatures in °C. */
export interface ConversionInput {
  readonly mixing: MixingInput;
  readonly to: MixerData;
  readonly targetCelsius: number;
  readonly tapCelsius?: number;
  readonly iceCelsius?: number;
}

/** A programme on another mixer that develops the dough as far. */
export interface Conversion {
  readonly mixing: MixingInput;
  /** Indexes of the phases whose work is now done otherwise. */
  readonly converted: readonly number[];
  /** Slow minutes of the programme before and after; they differ by what half minutes cannot say. */
  readonly slowMinutesBefore: number;
  readonly slowMinutesAfter: number;
  /** As it was, and on the other mixer with the same water. */
  readonly before: MixingOutcome;
  readonly after: MixingOutcome;
  /** The water that brings the dough to the temperature wanted on the other mixer. */
  readonly water: Known<TemperedWater>;
}

/**
 * The same development D on another mixer or by hand: rests and additions stay where they are, and each stretch of work
 * lasts so many whole half minutes that the slow minutes done by its end are as near as can be to those of before; what
 * rounding leaves over is made good by the next stretch. Speeds keep their number where the other mixer has it, else its
 * highest below; hands knead, and stirring and kneading by hand become the slowest speed. Folds stay folds. Unknown, with
 * the reason, where a speed has no rate. Whether the other mixer also works hard enough (Kilborn & Tipples 1972) is not
 * in D.
 */
export function convertProgramme(input: ConversionInput): Known<Conversion> {
  const source = withChosenWater(input);
  const before = simulateMixing(source);
  if (!before.slowMinutes.known) return before.slowMinutes;
  const wanted = slowMinutesByPhase(before, source.phases.length);
  const phases: MixingPhase[] = [...source.phases];
  const converted: number[] = [];
  for (const [index, phase] of source.phases.entries()) {
    const kind = otherWork(phase, source.mixer, input.to);
    if (kind === undefined) continue;
    if (kind === 'no speed') return unknown('the other mixer states no speeds');
    converted.push(index);
    phases[index] = { ...kind, seconds: 0 };
    const seconds = (minutes: number): MixingPhase => ({ ...kind, seconds: minutes * 60 });
    const done = (minutes: number): Known<number> => {
      phases[index] = seconds(minutes);
      const upToHere = phases.slice(0, index + 1);
      return simulateMixing({ ...source, mixer: input.to, phases: upToHere }).slowMinutes;
    };
    const minutes = nearestHalfMinutes(done, wanted[index]!);
    if (!minutes.known) return minutes;
    // A stretch that was worked is still worked, be it for half a minute.
    phases[index] = seconds(workedSeconds(phase) > 0 ? Math.max(0.5, minutes.value) : 0);
  }
  const mixing: MixingInput = { ...source, mixer: input.to, phases };
  const after = simulateMixing(mixing);
  if (!after.slowMinutes.known) return after.slowMinutes;
  const { targetCelsius, tapCelsius, iceCelsius } = input;
  return known(
    {
      mixing,
      converted,
      slowMinutesBefore: before.slowMinutes.value,
      slowMinutesAfter: after.slowMinutes.value,
      before,
      after,
      water: temperWater({
        mixing: withFreeWater(mixing),
        targetCelsius,
        ...(tapCelsius === undefined ? {} : { tapCelsius }),
        ...(iceCelsius === undefined ? {} : { iceCelsius }),
      }),
    },
    'common practice',
  );
}

type Work = { readonly kind: 'speed'; readonly number: number } | { readonly kind: 'knead' };

/** How the other mixer does the work of a phase; undefined for what stays as it is. */
function otherWork(phase: MixingPhase, from: MixerData, to: MixerData): Work | 'no speed' | undefined {
  if (phase.kind === 'speed') {
    if (to.kind === 'hand') return { kind: 'knead' };
    const number = from.kind === 'hand' ? slowest(to) : sameOrBelow(to, phase.number);
    return number === undefined ? 'no speed' : { kind: 'speed', number };
  }
  if (phase.kind !== 'knead' && phase.kind !== 'stir') return undefined;
  // By hand beside a machine stays by hand.
  if (from.kind !== 'hand' || to.kind === 'hand') return undefined;
  const number = slowest(to);
  return number === undefined ? 'no speed' : { kind: 'speed', number };
}

function slowest(mixer: MixerData): number | undefined {
  return sorted(mixer)[0];
}

function sameOrBelow(mixer: MixerData, number: number): number | undefined {
  if (findSpeed(mixer, number).known) return number;
  return sorted(mixer).findLast((one) => one <= number) ?? slowest(mixer);
}

function sorted(mixer: MixerData): number[] {
  return mixer.speeds.map((speed) => speed.number).sort((one, other) => one - other);
}

function workedSeconds(phase: MixingPhase): number {
  return 'seconds' in phase ? phase.seconds : 0;
}

/** The longest stretch that is looked for, minutes; a programme that needs more is a slip of the pen. */
const longestMinutes = 600;

function nearestHalfMinutes(done: (minutes: number) => Known<number>, wanted: number): Known<number> {
  let [low, high] = [0, 2 * longestMinutes];
  const most = done(longestMinutes);
  if (!most.known) return most;
  if (most.value < wanted) return unknown('the other mixer would need more than ten hours');
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
function withChosenWater({ mixing, targetCelsius, tapCelsius, iceCelsius }: ConversionInput): MixingInput {
  const water = temperWater({
    mixing,
    targetCelsius,
    ...(tapCelsius === undefined ? {} : { tapCelsius }),
    ...(iceCelsius === undefined ? {} : { iceCelsius }),
  });
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
