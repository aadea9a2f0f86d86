import {
  gassingRate,
  type Leavening,
  referenceBulkMinutes,
  referenceMinutes,
} from '../calc/fermentation/fermentation.ts';
import { asFreshYeast } from '../calc/fermentation/yeast.ts';
import { contentsOf } from '../calc/formula/contents.ts';
import type { SolvedFormula, SolvedSection } from '../calc/formula/formula-result.ts';
import { restingMinutes } from '../calc/heat/dough-cooling.ts';
import { temperatureAfter, type WarmingPhase } from '../calc/heat/warming.ts';
import { type Known, known, unknown } from '../calc/known.ts';
import { saidValue } from '../model/properties.ts';
import type { ResolvedFormula } from '../model/resolve.ts';
import { type Message, message } from '../words/message.ts';
import type { Analysis } from './analysis.ts';
import { usualDoughCelsius } from './mix-analysis.ts';

/** A stretch in which dough stands and rises. Minutes and °C. */
export interface Fermenting {
  readonly line: number;
  /** The words of the step or of the part: `bulk`, `proof`, `night poolish`. */
  readonly words: string;
  /** From the end of mixing; of a part, from its own start. */
  readonly startMinutes: number;
  readonly minutes: number;
  readonly startCelsius: number;
  readonly endCelsius: number;
  readonly aroundCelsius: number;
  /** What this stretch alone is worth in minutes at 27 °C of dough with 2 % fresh yeast and 2 % salt. */
  readonly referenceMinutes: number;
  /** Growth since the dough was last divided or shaped, 1 being doubled, at the start and at the end. */
  readonly riseBefore: number;
  readonly rise: number;
  /** The temperature of the dough so many minutes into the stretch. */
  readonly celsiusAt: (minutes: number) => number;
  readonly leavening: Leavening;
}

/** How a formula’s dough ferments. */
export interface Fermentation {
  readonly leavening: Leavening;
  /** A trial of the formula says how its dough rose, and the rate is by that. */
  readonly isObserved: boolean;
  /** A rise or a time may be so many times as much or as little. */
  readonly band: number;
  readonly steps: readonly Fermenting[];
  /** All that its dough ferments up to the oven, as many times what fills a bulk. */
  readonly bulks: number;
  /** The same where dough that is not divided yet is laid flat in the cold instead of standing as one lump. */
  readonly bulksLaidFlat: number;
  /** The process goes on to the oven, so that no step is lacking yet. */
  readonly isWhole: boolean;
}

/** Bands of a rise, common practice, our own choice: by figures alone, and by a rise that was seen. */
const bandByFigures = 1.5;
const bandObserved = 1.25;

/** How the dough of a formula ferments from the end of mixing to the oven; unknown where nothing raises it. */
export function fermentationOf(analysis: Analysis): Known<Fermentation, Message> {
  const { resolved, solved } = analysis;
  if (solved?.flourGrams === undefined || !(solved.flourGrams > 0))
    return unknown(message('mixing.no-weights'));
  const plain = leaveningOf(resolved, solved);
  if (!(plain.freshYeastFraction > 0) && !(plain.levainFraction > 0))
    return unknown(message('fermentation.nothing-raises'));
  const observed = observedFactor(analysis, plain);
  const leavening = { ...plain, observedFactor: observed ?? 1 };
  const steps = stepsOf(analysis, leavening, Number.POSITIVE_INFINITY);
  return known(
    {
      leavening,
      isObserved: observed !== undefined,
      band: observed === undefined ? bandByFigures : bandObserved,
      steps,
      bulks: bulksOf(steps),
      // Told on asking only: few ask, and most doughs never see the cold before they are divided.
      get bulksLaidFlat() {
        return bulksOf(stepsOf(analysis, leavening, flatGrams));
      },
      isWhole: doughSteps(resolved).some(({ step }) => step.known === 'bake'),
    },
    observed === undefined ? 'common practice' : 'measured',
  );
}

/** How the part of a header ferments by its `ferment` line; undefined where it has none or nothing raises it. */
export function partFermentation(analysis: Analysis, sectionId: string): Fermenting | undefined {
  const { resolved, solved } = analysis;
  const section = resolved.model.sections.find((one) => one.id === sectionId);
  const part = solved?.sections.find((one) => one.id === sectionId);
  const said = section?.said.get('ferment')?.[0];
  const ferment = section && saidValue(section.said, 'ferment', 'duration');
  if (part === undefined || section === undefined || said === undefined || ferment === undefined)
    return undefined;
  const leavening = partLeavening(resolved, solved!, part);
  if (!(leavening.freshYeastFraction > 0) && !(leavening.levainFraction > 0)) return undefined;
  const around = ferment.celsius ?? resolved.bakery.roomCelsius;
  const start = saidValue(section.said, 'dough temperature', 'temperature')?.celsius ?? around;
  return standing({
    line: said.line,
    words: section.name?.text ?? 'ferment',
    startMinutes: 0,
    minutes: ferment.seconds / 60,
    startCelsius: start,
    aroundCelsius: around,
    grams: part.totalGrams ?? 1000,
    riseBefore: 0,
    leavening,
  });
}

function doughSteps({ model }: ResolvedFormula) {
  return model.processes
    .filter(({ header }) => header.part === undefined || header.part.folded === model.name.folded)
    .flatMap((process) => process.steps);
}

/**
 * Dough laid flat on trays, some four centimetres deep, follows the cold about as fast as a lump of this weight, grams: textbook
 * conduction for a slab. Common practice for rich and laminated dough, which nobody puts into the cold as one lump.
 */
const flatGrams = 700;
/** Up to this a place is cold, °C. */
const coldCelsius = 10;

function bulksOf(steps: readonly Fermenting[]): number {
  return steps.reduce((sum, step) => sum + step.referenceMinutes, 0) / referenceBulkMinutes;
}

/** The stretches of the dough; in the cold no more than `coldGrams` of it lie in one lump. */
function stepsOf(analysis: Analysis, leavening: Leavening, coldGrams: number): Fermenting[] {
  const { resolved, solved } = analysis;
  const made: Fermenting[] = [];
  let celsius = doughCelsius(analysis);
  let grams = solved!.doughGrams ?? 1000;
  let [clock, rise] = [0, 0];
  for (const { line, step } of doughSteps(resolved)) {
    if (step.known === 'bake' || step.known === 'boil') break;
    if (step.known === 'divide' && solved!.pieceGrams !== undefined) grams = solved!.pieceGrams;
    if (step.known === 'divide' || step.known === 'shape') rise = 0;
    if (step.seconds === undefined || !(step.seconds > 0)) continue;
    const around = step.celsius ?? resolved.bakery.roomCelsius;
    const one = standing({
      line,
      words: step.words.text,
      startMinutes: clock,
      minutes: Math.min(longestMinutes, step.seconds / 60),
      startCelsius: celsius,
      aroundCelsius: around,
      grams: around <= coldCelsius ? Math.min(grams, coldGrams) : grams,
      riseBefore: rise,
      leavening,
    });
    made.push(one);
    clock += one.minutes;
    celsius = one.endCelsius;
    rise = one.rise;
  }
  return made;
}

/** A month: longer is a slip of the pen. */
const longestMinutes = 43_200;

type Standing = Omit<Fermenting, 'endCelsius' | 'referenceMinutes' | 'rise' | 'celsiusAt'> & {
  readonly grams: number;
};

function standing({ grams, ...told }: Standing): Fermenting {
  const cooling: WarmingPhase = {
    celsiusPerMinute: 0,
    aroundCelsius: told.aroundCelsius,
    settlesMinutes: restingMinutes(grams),
  };
  const celsiusAt = (minutes: number): number => temperatureAfter(cooling, told.startCelsius, minutes);
  const worth = referenceMinutes(told.leavening, told.minutes, celsiusAt);
  return {
    ...told,
    endCelsius: celsiusAt(told.minutes),
    referenceMinutes: worth,
    rise: told.riseBefore + worth / referenceBulkMinutes,
    celsiusAt,
  };
}

/** The dough as it leaves the mixer: as worked out, else as wanted. */
function doughCelsius({ resolved, doughMix }: Analysis): number {
  const end = doughMix.known ? doughMix.value.outcome.endCelsius : doughMix;
  return end.known ? end.value : (resolved.doughCelsius ?? usualDoughCelsius);
}

function leaveningOf(resolved: ResolvedFormula, solved: SolvedFormula): Leavening {
  let fresh = 0;
  for (const line of solved.overall) fresh += (line.grams ?? 0) * freshYeast(resolved, line.key);
  let levain = 0;
  for (const section of ripeSections(solved)) {
    for (const one of contentsOf(solved, section) ?? [])
      if (resolved.ingredients.get(one.key)?.isFlour === true) levain += one.grams;
  }
  return {
    freshYeastFraction: fresh / solved.flourGrams!,
    levainFraction: levain / solved.flourGrams!,
    saltFraction: solved.saltFraction ?? 0,
    sugarFraction: solved.fractionByRole.sugar ?? 0,
    observedFactor: 1,
  };
}

/**
 * The sections that are ripe levain as a whole, each counted once with all that is in it: those with culture of their own, and
 * preferments that a ripe one was fed into, as the last stage of a sour or the first dough of a festive bread.
 */
function ripeSections(solved: SolvedFormula): SolvedSection[] {
  const ripe = solved.sections.filter((section) => isRipe(solved, section));
  const inner = new Set(ripe.flatMap((section) => innerOf(solved, section)));
  return ripe.filter((section) => !inner.has(section));
}

const keptRipe = new WeakMap<SolvedFormula, ReadonlySet<SolvedSection>>();

/** Whether a section has culture of its own, or is a preferment that a ripe one was fed into. Remembered by formula. */
function isRipe(solved: SolvedFormula, section: SolvedSection): boolean {
  let ripe = keptRipe.get(solved);
  if (ripe === undefined) {
    ripe = allRipe(solved);
    keptRipe.set(solved, ripe);
  }
  return ripe.has(section);
}

/** From the sections with culture to those they stand in: each is looked at once, however parts are nested. */
function allRipe(solved: SolvedFormula): ReadonlySet<SolvedSection> {
  const takers = new Map<SolvedSection, SolvedSection[]>();
  for (const section of solved.sections) {
    if (section.kind !== 'preferment') continue;
    for (const one of innerOf(solved, section)) {
      const others = takers.get(one);
      if (others === undefined) takers.set(one, [section]);
      else others.push(section);
    }
  }
  const ripe = new Set(solved.sections.filter(({ cultureGrams }) => (cultureGrams ?? 0) > 0));
  for (const one of ripe) for (const taker of takers.get(one) ?? []) ripe.add(taker);
  return ripe;
}

/** The parts that stand as lines in a section. */
function innerOf({ sections }: SolvedFormula, section: SolvedSection): SolvedSection[] {
  return section.lines.flatMap((line) =>
    line.part ? sections.filter((one) => one.id === line.key && one !== section) : [],
  );
}

/** What raises a part by itself: its yeast, its ripe culture, and a ripe part that was fed into it. Of all flour in it. */
function partLeavening(resolved: ResolvedFormula, solved: SolvedFormula, part: SolvedSection): Leavening {
  let [flour, fresh, salt, sugar] = [0, 0, 0, 0];
  const contents = contentsOf(solved, part, part.totalGrams) ?? [];
  for (const { key, grams } of contents) {
    const ingredient = resolved.ingredients.get(key);
    if (ingredient?.isFlour === true) flour += grams;
    fresh += grams * freshYeast(resolved, key);
    if (ingredient?.role === 'salt') salt += grams;
    if (ingredient?.role === 'sugar') sugar += grams;
  }
  // Ripe culture has the composition of what it is fed into.
  const share = (part.cultureGrams ?? 0) / (part.totalGrams ?? Number.POSITIVE_INFINITY);
  let fed = 0;
  for (const line of part.lines) {
    const ripe = innerOf(solved, part).find((one) => one.id === line.key && isRipe(solved, one));
    if (ripe === undefined || line.grams === undefined) continue;
    for (const one of contentsOf(solved, ripe, line.grams) ?? [])
      if (resolved.ingredients.get(one.key)?.isFlour === true) fed += one.grams;
  }
  const of = (grams: number): number => (flour > 0 ? grams / flour : 0);
  return {
    freshYeastFraction: of(fresh),
    levainFraction: share + of(fed),
    saltFraction: of(salt),
    sugarFraction: of(sugar),
    observedFactor: 1,
  };
}

function freshYeast(resolved: ResolvedFormula, key: string): number {
  const ingredient = resolved.ingredients.get(key);
  return ingredient?.role === 'yeast' ? asFreshYeast(ingredient.name, ingredient.composition.water) : 0;
}

/**
 * How many times as fast as worked out the dough was seen to rise: the geometric mean of all rises that the trials of the
 * formula write down. Undefined where none does.
 */
function observedFactor(analysis: Analysis, leavening: Leavening): number | undefined {
  const { resolved, solved } = analysis;
  const bulk = doughSteps(resolved).find(({ step }) => step.known === 'bulk' || step.known === 'retard');
  let [sum, count] = [0, 0];
  for (const trial of resolved.model.trials) {
    const room = saidValue(trial.said, 'room', 'temperature')?.celsius ?? resolved.bakery.roomCelsius;
    const start = saidValue(trial.said, 'end', 'temperature')?.celsius ?? doughCelsius(analysis);
    for (const { statement } of trial.said.get('rise') ?? []) {
      if (statement.value?.form !== 'rise' || !(statement.value.fraction > 0)) continue;
      const worked = standing({
        line: 0,
        words: '',
        startMinutes: 0,
        minutes: Math.min(longestMinutes, statement.value.seconds / 60),
        startCelsius: start,
        aroundCelsius: bulk?.step.celsius ?? room,
        grams: saidValue(trial.said, 'dough', 'mass')?.grams ?? solved!.doughGrams ?? 1000,
        riseBefore: 0,
        leavening,
      }).rise;
      if (!(worked > 0)) continue;
      sum += Math.log(statement.value.fraction / worked);
      count++;
    }
  }
  return count === 0 ? undefined : Math.min(20, Math.max(0.05, Math.exp(sum / count)));
}

/** The time that does as much at 27 °C in this same dough as a stretch did, minutes; undefined where nothing moves there. */
export function asLongAt(step: Fermenting, celsius: number): number | undefined {
  const rate = gassingRate(step.leavening, celsius);
  return rate > 0 ? step.referenceMinutes / rate : undefined;
}
