import { type ExpectedDough, expectedAt } from '../../analysis/expected-dough.ts';
import type { ExperimentAnalysis, ExperimentDough } from '../../analysis/experiment-analysis.ts';
import type { MeasuredDough } from '../../analysis/experiment-readings.ts';
import type { StageSpan } from '../../analysis/feel.ts';
import type { Known } from '../../calc/known.ts';
import { type MixingStage, mixingStages } from '../../calc/mixing/development.ts';
import { doughCurve } from '../../facts/dough-curve.ts';
import { nameOf } from '../../facts/experiment-words.ts';
import type { Scope } from '../../model/scope.ts';
import { bowlMessages, stockMessages } from '../../rules/day/cannot-be-tested.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { lessonsOf, nextReadings } from './experiment-lessons.ts';
import type {
  DoughTurn,
  ExperimentDoughView,
  ExperimentView,
  MeasuredReadingView,
  PlannedReadingView,
} from './experiment-view.ts';

export type { ExperimentView } from './experiment-view.ts';

/** An experiment ready to be shown; `firstLine` is where its block begins in the file. */
export function experimentView(
  uri: string,
  firstLine: number,
  experiment: ExperimentAnalysis,
  scope: Scope,
  speaker: Speaker,
): ExperimentView {
  const { conditions, doughs, date } = experiment;
  return {
    experiment: experiment.name,
    uri,
    line: firstLine + (experiment.block.top?.headerLine ?? 0),
    ...(date === undefined ? {} : { date }),
    ...conditions,
    readMinutes: experiment.readMinutes,
    flours: experiment.takes.flatMap(({ name, grams, isFlour }) => (isFlour ? [{ name, grams }] : [])),
    waterGrams: experiment.takes.reduce((sum, { grams, isWater }) => sum + (isWater ? grams : 0), 0),
    notes: experiment.notes,
    cautions: [
      ...experiment.unread.map((written) => message('experiment.unread', { written })),
      ...[...doughs.flatMap(bowlMessages), ...stockMessages(experiment, scope)].map(
        ({ message: said }) => said,
      ),
    ].map(speaker.say),
    doughs: doughs.map((dough) => doughView(dough, doughs, firstLine, speaker)),
    order: turnsOf(doughs, speaker),
    lessons: lessonsOf(experiment, scope).map(speaker.say),
    next: nextReadings(experiment, scope, speaker).map(speaker.say),
    complete:
      experiment.unread.length === 0 &&
      doughs.every(
        ({ programme, readings }) =>
          programme.known &&
          readings.every(
            ({ minutes, expected }) => expected.known || minutes > programme.value.programmeMinutes + 1e-6,
          ),
      ),
  };
}

function doughView(
  dough: ExperimentDough,
  all: readonly ExperimentDough[],
  firstLine: number,
  speaker: Speaker,
): ExperimentDoughView {
  const { mixer, doughGrams, programme, analysis } = dough;
  return {
    name: nameOf(dough, all, speaker),
    formula: dough.formula,
    line: firstLine + dough.line,
    ...(mixer === undefined ? {} : { mixer: mixer.name }),
    byHand: mixer?.data.kind === 'hand',
    ...(doughGrams === undefined ? {} : { doughGrams }),
    ...waterOf(dough),
    ...(programme.known
      ? { programmeMinutes: programme.value.programmeMinutes }
      : { reason: speaker.say(programme.reason) }),
    curve: programme.known ? doughCurve(programme.value.input, programme.value.programmeMinutes) : [],
    weights: (analysis?.solved?.overall ?? []).flatMap(({ name, grams }) =>
      grams === undefined ? [] : [{ name, grams }],
    ),
    readings: dough.readings.map(({ minutes, expected }) => ({
      minutes,
      ...expectedView(expected, speaker),
    })),
    measured: dough.measured.flatMap((one) => measuredViews(one, speaker)),
  };
}

/** How warm the water of a dough is, where all of it is alike. */
function waterOf({ programme }: ExperimentDough): Pick<ExperimentDoughView, 'waterCelsius'> {
  if (!programme.known) return {};
  const water = programme.value.input.phases.flatMap((phase) =>
    'portions' in phase ? phase.portions.filter(({ kind }) => kind === 'water') : [],
  );
  const [first, ...others] = new Set(water.map(({ celsius }) => celsius));
  return first === undefined || others.length > 0 ? {} : { waterCelsius: first };
}

function expectedView(
  expected: Known<ExpectedDough, Message>,
  speaker: Speaker,
): Omit<PlannedReadingView, 'minutes'> {
  if (!expected.known) return { reason: speaker.say(expected.reason) };
  const { celsius, bandCelsius, stage, stages } = expected.value;
  return {
    celsius,
    bandCelsius,
    ...(stage.known ? { stage: stage.value } : {}),
    ...(stages === undefined ? {} : { earliestStage: stages.earliest, latestStage: stages.latest }),
  };
}

function measuredViews({ trial, readings, input }: MeasuredDough, speaker: Speaker): MeasuredReadingView[] {
  const { header } = trial.model;
  const title = [header.date, header.words].filter((one) => one !== undefined).join(', ');
  return readings.map(({ minutes, celsius, stage, feel, stages }) => {
    const expected = input.known ? expectedAt(input.value, minutes) : input;
    const apart = expected.known && celsius !== undefined ? celsius - expected.value.celsius : undefined;
    const stageBeside =
      expected.known && stages !== undefined ? besideExpected(stages, expected.value) : undefined;
    return {
      minutes,
      ...expectedView(expected, speaker),
      trial: title,
      ...(header.date === undefined ? {} : { date: header.date }),
      ...(celsius === undefined ? {} : { measuredCelsius: celsius }),
      ...(stage === undefined ? {} : { measuredStage: stage }),
      ...(feel === undefined ? {} : { measuredFeel: feel }),
      ...(apart === undefined || !expected.known
        ? {}
        : {
            apartCelsius: apart,
            within: Math.abs(apart) <= expected.value.bandCelsius + thermometerCelsius,
          }),
      ...(stageBeside === undefined ? {} : { stageBeside }),
    };
  });
}

/** What was seen beside the stages that a dough may be in by then; they agree where they have one in common. */
function besideExpected(
  seen: StageSpan,
  { stages }: ExpectedDough,
): MeasuredReadingView['stageBeside'] | undefined {
  if (stages === undefined) return undefined;
  const place = (stage: MixingStage): number => mixingStages.indexOf(stage);
  if (place(seen.earliest) > place(stages.latest)) return 'sooner';
  return place(seen.latest) < place(stages.earliest) ? 'later' : 'as-expected';
}

/** What a kitchen thermometer may be off by, °C. Common practice, no source. */
const thermometerCelsius = 0.5;

/** Between two doughs: to empty the bowl and weigh in the next. Common practice, no source. */
const betweenMinutes = 5;

/** The doughs one after another: machines first, white before wholemeal and stiff before wet; hands last. */
function turnsOf(doughs: readonly ExperimentDough[], speaker: Speaker): DoughTurn[] {
  const sorted = doughs
    .filter(({ programme }) => programme.known)
    .toSorted((one, other) => rankOf(one) - rankOf(other) || one.line - other.line);
  let clock = 0;
  return sorted.flatMap((dough): DoughTurn[] => {
    const { programme, mixer, readings } = dough;
    if (!programme.known || mixer === undefined) return [];
    const reads = readings.filter(({ expected }) => expected.known).map(({ minutes }) => minutes);
    const { programmeMinutes } = programme.value;
    const begins = clock;
    clock += programmeMinutes + betweenMinutes;
    return [
      {
        dough: nameOf(dough, doughs, speaker),
        mixer: mixer.name,
        beginsMinutes: begins,
        readsMinutes: reads.map((minutes) => begins + minutes),
        endsMinutes: begins + programmeMinutes,
      },
    ];
  });
}

function rankOf({ mixer, analysis }: ExperimentDough): number {
  const isHand = mixer?.data.kind === 'hand' ? 1000 : 0;
  const flours = (analysis?.solved?.overall ?? []).filter(({ isFlour }) => isFlour);
  const all = flours.reduce((sum, { grams = 0 }) => sum + grams, 0);
  const dark = flours
    .filter(({ key }) => {
      const milling = analysis?.resolved.ingredients.get(key)?.flour?.milling;
      return milling !== undefined && milling !== 'white';
    })
    .reduce((sum, { grams = 0 }) => sum + grams, 0);
  return isHand + (all > 0 ? (100 * dark) / all : 0) + (analysis?.solved?.hydration ?? 0);
}
