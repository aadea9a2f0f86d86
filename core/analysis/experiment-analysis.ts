import { type Known, known, unknown } from '../calc/known.ts';
import type { MixingOutcome } from '../calc/mixing/mixing.ts';
import { simulateMixing } from '../calc/mixing/mixing.ts';
import type { MixingInput, MixingPhase } from '../calc/mixing/mixing-programme.ts';
import { minutesOfPhases } from '../calc/mixing/phase-times.ts';
import { type Bakery, bakeryOf } from '../model/bakery.ts';
import { findHands, findMixer, type Mixer } from '../model/found-mixer.ts';
import { propertiesOf, type Said, type SaidProperties, saidValue } from '../model/properties.ts';
import type { ResolvedMix } from '../model/resolve-mix.ts';
import type { Definition, Scope } from '../model/scope.ts';
import {
  type Block,
  linesOf,
  type Name,
  type PropertyStatement,
  type RunPart,
  type Value,
} from '../syntax/tree.ts';
import { elementAt } from '../text/element.ts';
import { type Message, message } from '../words/message.ts';
import { analyseBlock, analyseResolved } from './analyse.ts';
import type { Analysis } from './analysis.ts';
import { type ExpectedDough, expectedAt } from './expected-dough.ts';
import { type MeasuredDough, measuredDoughs } from './experiment-readings.ts';
import { scaledBy } from './scale-analysis.ts';
import { doughMixOf, withUsualFriction } from './trial-programme.ts';

/** The tap where nobody says how cold it is; common practice, no source. */
const usualTapCelsius = 15;

/** An experiment worked out: what each of its doughs is expected to be like at each minute it is read. */
export interface ExperimentAnalysis {
  readonly name: string;
  /** ISO 8601, where the header says the day. */
  readonly date?: string;
  readonly block: Block;
  readonly doughs: readonly ExperimentDough[];
  /** From the start of mixing, rests included, in rising order, each once. */
  readonly readMinutes: readonly number[];
  readonly conditions: ExperimentConditions;
  /** What all doughs of known weights take together, of each ingredient. */
  readonly takes: readonly TakenIngredient[];
  /** As they are written. */
  readonly notes: readonly string[];
  /** Dough lines that could not be read, as they are written: they have a finding, and are in none of the figures. */
  readonly unread: readonly string[];
  readonly onHand: readonly { readonly line: number; readonly name: Name; readonly grams: number }[];
}

export interface TakenIngredient {
  /** The folded name under which all its lines add up. */
  readonly key: string;
  readonly name: string;
  readonly isFlour: boolean;
  readonly isWater: boolean;
  readonly grams: number;
}

/** The day of an experiment, °C: as its section says, else as the bakery has it. */
export interface ExperimentConditions {
  readonly roomCelsius: number;
  readonly flourCelsius: number;
  /** Of all water whose temperature no line of a formula says. */
  readonly waterCelsius: number;
  /** Nobody said how cold the tap is. */
  readonly waterAssumed: boolean;
}

export interface ExperimentDough {
  /** Counted in the block. */
  readonly line: number;
  readonly name: Name;
  readonly formula: string;
  /** Absent where the name is not defined, or defined more than once. */
  readonly definition?: Definition;
  readonly mixer?: Mixer;
  readonly run: readonly RunPart[];
  /** The formula at its size and on its day. */
  readonly analysis?: Analysis;
  readonly doughGrams?: number;
  /** The programme as it is to be run, with the water of the day; unknown with its reason. */
  readonly programme: Known<RunProgramme, Message>;
  readonly readings: readonly PlannedReading[];
  /** What trials that name the experiment measured of this dough. */
  readonly measured: readonly MeasuredDough[];
}

export interface RunProgramme {
  readonly input: MixingInput;
  readonly outcome: MixingOutcome;
  readonly programmeMinutes: number;
}

/** The first of the minutes at which a dough is worked, and read, that nobody can predict, and why; absent where all are predicted. */
export function firstUnknown({
  programme,
  readings,
}: ExperimentDough): { readonly minutes: number; readonly reason: Message } | undefined {
  if (!programme.known) return undefined;
  for (const { minutes, expected } of readings)
    if (!expected.known && minutes <= programme.value.programmeMinutes + 1e-6)
      return { minutes, reason: expected.reason };
  return undefined;
}

/** What a dough is expected to be like at a minute. */
export interface PlannedReading {
  readonly minutes: number;
  readonly expected: Known<ExpectedDough, Message>;
}

/** Works an experiment out; `undefined` for a block of another kind. Never throws. */
export function experimentOf(block: Block, scope: Scope): ExperimentAnalysis | undefined {
  const { top } = block;
  if (top?.kind !== 'experiment' || top.header.name === undefined) return undefined;
  const said = propertiesOf(block, top);
  const conditions = conditionsOf(said, bakeryOf(scope));
  const readMinutes = minutesOf(said);
  const batchGrams = saidValue(said, 'batch', 'mass')?.grams;
  const doughs = (said.get('dough') ?? []).flatMap((one): ExperimentDough[] => {
    const { value } = one.statement;
    if (value?.form !== 'testedDough') return [];
    const dough = doughOf(one, value, {
      scope,
      conditions,
      ...(batchGrams === undefined ? {} : { batchGrams }),
    });
    const readings = readMinutes.map(
      (minutes): PlannedReading => ({
        minutes,
        expected: dough.programme.known ? expectedAt(dough.programme.value.input, minutes) : dough.programme,
      }),
    );
    return [{ ...dough, readings, measured: [] }];
  });
  const { name, date } = top.header;
  const read = doughs.map((dough) => ({ ...dough, measured: measuredDoughs(dough, doughs, name, scope) }));
  return {
    name: name.text,
    ...(date === undefined ? {} : { date }),
    block,
    doughs: read,
    readMinutes,
    conditions,
    takes: takenBy(doughs),
    notes: linesOf(top).flatMap((line) => {
      const { statement } = elementAt(block.lines, line);
      return statement.kind === 'note' && statement.text !== '' ? [statement.text] : [];
    }),
    unread: (said.get('dough') ?? []).flatMap(({ line, statement: { value, valueSpan } }) =>
      value === undefined && valueSpan.end > valueSpan.start
        ? [elementAt(block.lines, line).text.trim()]
        : [],
    ),
    onHand: (said.get('on hand') ?? []).flatMap(({ line, statement: { value } }) =>
      value?.form === 'stock' ? [{ line, name: value.name, grams: value.grams }] : [],
    ),
  };
}

function conditionsOf(said: SaidProperties, bakery: Bakery): ExperimentConditions {
  const room = saidValue(said, 'room', 'temperature')?.celsius;
  const flour = saidValue(said, 'flour', 'temperature')?.celsius;
  const water = saidValue(said, 'water', 'temperature')?.celsius ?? bakery.tapCelsius;
  return {
    roomCelsius: room ?? bakery.roomCelsius,
    // Flour that nobody measured is as warm as the room.
    flourCelsius:
      flour ?? (bakery.assumed.includes('flour') && room !== undefined ? room : bakery.flourCelsius),
    waterCelsius: water ?? usualTapCelsius,
    waterAssumed: water === undefined,
  };
}

function minutesOf(said: SaidProperties): number[] {
  const times = saidValue(said, 'read at', 'minutes')?.times ?? [];
  return [...new Set(times.map(({ seconds }) => seconds / 60))]
    .filter((minutes) => minutes > 0)
    .sort((one, other) => one - other);
}

interface Day {
  readonly scope: Scope;
  readonly conditions: ExperimentConditions;
  readonly batchGrams?: number;
}

type TestedDough = Extract<Value, { form: 'testedDough' }>;
type BareDough = Omit<ExperimentDough, 'readings' | 'measured'>;

function doughOf({ line }: Said, tested: TestedDough, day: Day): BareDough {
  const { name, run } = tested;
  const base = { line, name, formula: name.text, run };
  const [definition, ...others] = day.scope.find('formula', name.folded)[0] ?? [];
  if (definition === undefined || others.length > 0)
    return { ...base, programme: unknown(message('experiment.no-formula')) };
  const seen = day.scope.from(definition.uri);
  const written = analyseBlock(definition.block, seen);
  if (written === undefined) return { ...base, programme: unknown(message('experiment.no-formula')) };
  const found = { ...base, formula: written.resolved.model.name.text, definition };
  const doughGrams = written.solved?.doughGrams;
  if (doughGrams === undefined || !(doughGrams > 0))
    return { ...found, programme: unknown(message('mixing.no-weights')) };
  const mixer = mixerOf(tested, written, day.scope);
  const sized = day.batchGrams === undefined ? written : scaledBy(written, day.batchGrams / doughGrams);
  const analysis = onTheDay(sized, day.conditions, line, tested, mixer);
  const sizedGrams = analysis.solved?.doughGrams;
  return {
    ...found,
    ...(mixer === undefined ? {} : { mixer }),
    analysis,
    ...(sizedGrams === undefined ? {} : { doughGrams: sizedGrams }),
    programme: programmeOf(analysis, written, tested, mixer, {
      waterCelsius: day.conditions.waterCelsius,
      usual: () => onTheDay(sized, day.conditions, line, { ...tested, run: [] }, mixer).doughMix,
    }),
  };
}

function mixerOf(tested: TestedDough, { resolved }: Analysis, scope: Scope): Mixer | undefined {
  if (tested.byHand === true) return findHands(scope);
  if (tested.mixer === undefined) return doughMixOf(resolved)?.mixer;
  const found = findMixer(tested.mixer, scope);
  return found.kind === 'found' ? found.mixer : undefined;
}

/** The formula in the room and with the flour of the day, worked as its dough line says. */
function onTheDay(
  sized: Analysis,
  { roomCelsius, flourCelsius }: ExperimentConditions,
  line: number,
  { run }: TestedDough,
  mixer: Mixer | undefined,
): Analysis {
  const { resolved } = sized;
  const dough = elementAt(resolved.input.sections, 0).id;
  const own = doughMixOf(resolved);
  const phases = run.map((part) => saidOf(part, line));
  const changed: ResolvedMix = {
    ...(own ?? { index: 0, sectionId: dough, headerLine: 0, phases: [], loads: [] }),
    mixer,
    // A run of its own takes everything at its start.
    ...(run.length === 0 ? {} : { phases, loads: [] }),
  };
  const mixes = own === undefined ? [changed] : resolved.mixes.map((mix) => (mix === own ? changed : mix));
  return analyseResolved({
    ...resolved,
    mixes,
    bakery: { ...resolved.bakery, roomCelsius, flourCelsius },
  });
}

/** A stretch of work of a dough line as the line of a programme that it stands for. */
function saidOf(part: RunPart, line: number): Said {
  const { start, end, seconds } = part;
  const value: Value =
    part.kind === 'speed'
      ? { form: 'mixSpeed', number: part.number, seconds }
      : { form: 'duration', seconds };
  const statement: PropertyStatement = {
    kind: 'property',
    property: part.kind,
    keyword: { start, end },
    valueSpan: { start, end },
    value,
  };
  return { line, statement };
}

function programmeOf(
  { doughMix }: Analysis,
  written: Analysis,
  { run }: TestedDough,
  mixer: Mixer | undefined,
  day: { readonly waterCelsius: number; readonly usual: () => Analysis['doughMix'] },
): Known<RunProgramme, Message> {
  if (mixer === undefined) return unknown(message('experiment.no-mixer'));
  const own = doughMixOf(written.resolved);
  const isHand = mixer.data.kind === 'hand';
  if (run.length === 0) {
    if (own === undefined)
      return unknown(message(isHand ? 'experiment.no-run-by-hand' : 'experiment.no-run'));
    // Minutes of a machine are no minutes of hands, nor the other way about.
    const isWorkedByHand = own.mixer?.data.kind === 'hand';
    if (isHand && !isWorkedByHand) return unknown(message('experiment.no-run-by-hand'));
    if (!isHand && isWorkedByHand) return unknown(message('experiment.no-run-in-mixer'));
  }
  if (!doughMix.known) return doughMix;
  const ran = withWater(doughMix.value.input, day.waterCelsius);
  const hasFriction = mixer.data.frictionCelsius !== undefined && run.length > 0;
  const input = hasFriction ? withUsualFriction(ran, day.usual()) : ran;
  const outcome = simulateMixing(input);
  return known({ input, outcome, programmeMinutes: minutesOfPhases(input.phases) }, 'common practice');
}

/** The programme with all water whose temperature was to be chosen at one temperature: doughs are compared under like conditions. */
function withWater(input: MixingInput, celsius: number): MixingInput {
  const phases = input.phases.map(
    (phase): MixingPhase =>
      'portions' in phase
        ? {
            ...phase,
            portions: phase.portions.map((portion) => {
              const { tempered, ...rest } = portion;
              return tempered === true ? { ...rest, celsius } : portion;
            }),
          }
        : phase,
  );
  return { ...input, phases };
}

function takenBy(doughs: readonly Pick<ExperimentDough, 'analysis'>[]): TakenIngredient[] {
  const taken = new Map<string, TakenIngredient>();
  for (const { analysis } of doughs)
    for (const { key, name, isFlour, role, grams = 0 } of analysis?.solved?.overall ?? []) {
      const before = taken.get(key)?.grams ?? 0;
      taken.set(key, { key, name, isFlour, isWater: role === 'water', grams: before + grams });
    }
  return [...taken.values()];
}
