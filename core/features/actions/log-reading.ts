import type { FormulaModel, TrialModel } from '../../model/formula-model.ts';
import { byHand } from '../../model/found-mixer.ts';
import { type Said, saidValue } from '../../model/properties.ts';
import { isCondition } from '../../rules/trials/kept-programme.ts';
import { parseLine } from '../../syntax/line.ts';
import { isReadingValue } from '../../syntax/reading-value.ts';
import { feelWords, stageWords } from '../../syntax/vocabulary.ts';
import type { TextEdit } from '../../text/edits.ts';
import { elementAt } from '../../text/element.ts';
import { trimmed } from '../../text/figures.ts';
import { foldName } from '../../text/names.ts';
import { type Message, message } from '../../words/message.ts';
import type { Refusal } from '../../words/refusal.ts';

/** A temperature taken at the mixer, as a baker logs it with wet hands: few taps, no spelling. */
export interface ReadingToLog {
  /** The day it was taken, `2026-03-14`: the trial it belongs to. */
  readonly date: string;
  /** Minutes from the start of mixing, rests included. Absent at the end of mixing, which has a line of its own. */
  readonly minutes?: number;
  /** -20 to 60 °C. Absent where nobody took it: then it has a stage or a word of how the dough felt. */
  readonly celsius?: number;
  /** One of the stages that the notation knows. */
  readonly stage?: string;
  /** How the dough felt, in words that the notation knows. */
  readonly feel?: readonly string[];
  /** What the day was like, written where the reading begins a trial. */
  readonly roomCelsius?: number;
  readonly flourCelsius?: number;
  /** The water as it was drawn, 0 to 100 °C: a trial without it compares with nothing. Written where the trial states none. */
  readonly waterCelsius?: number;
  /** The mixer that was tried on the sheet in place of the formula’s, or `by hand`: the trial was run in it. */
  readonly mixer?: string;
  /** The experiment that it belongs to: its trial names it. */
  readonly experiment?: string;
}

/**
 * The edits that write a reading into the formula's trial of that day, at its place in time, in canonical form. Where
 * the day has several trials the last one takes it; where it has none, one is begun at the end of the formula. A
 * reading of the same minute is written over. A reading of an experiment goes into the trial that names it and was run in the
 * same mixer. Lines are counted in the formula's block.
 *
 * @param programme the lines of the programme that is run, which a trial that is begun keeps
 * @param mayTake whether a trial may be of the dough that was read, where its formula is worked in more ways than one
 * @returns a refusal where the reading cannot be a reading
 */
export function logReading(
  model: FormulaModel,
  reading: ReadingToLog,
  programme: readonly string[],
  mayTake: (trial: TrialModel) => boolean = () => true,
): readonly TextEdit[] | Refusal {
  const refused = problemOf(reading);
  if (refused !== undefined) return { refused };
  const trial = model.trials.findLast(
    (one) => one.header.date === reading.date && takes(one, reading) && mayTake(one),
  );
  if (trial === undefined) return [beginTrial(model, reading, [...programme, lineOf(reading)])];
  return withWater(model, trial, reading, intoTrial(model, trial, reading));
}

/** Whether a trial of the day is the one that a reading belongs to. */
function takes({ said }: TrialModel, { experiment, mixer }: ReadingToLog): boolean {
  if (experiment === undefined) return true;
  if (saidValue(said, 'experiment', 'name')?.name.folded !== foldName(experiment)) return false;
  const ranIn = saidValue(said, 'mixed', 'mixedIn');
  if (mixer === undefined || ranIn === undefined) return true;
  return ranIn.byHand === true ? mixer === byHand.name : ranIn.name?.folded === foldName(mixer);
}

/** A dough at the mixer is neither colder nor warmer, °C. */
const [coldest, warmest] = [-20, 60];

/** Water boils, °C. */
const hottestWater = 100;

/** Nobody mixes for longer than a day, minutes. */
const longest = 24 * 60;

function problemOf(reading: ReadingToLog): Message | undefined {
  const { date, minutes, celsius, stage, waterCelsius, feel = [] } = reading;
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date)) return message('log-reading.no-day', { example: '2026-03-14' });
  if (celsius === undefined && stage === undefined && feel.length === 0)
    return message('log-reading.nothing');
  if (celsius !== undefined && !(celsius >= coldest && celsius <= warmest))
    return message('log-reading.temperature', { fromCelsius: coldest, toCelsius: warmest });
  if (minutes !== undefined && !(minutes >= 0 && minutes <= longest))
    return message('log-reading.minute', { minutes: longest });
  if (waterCelsius !== undefined && !(waterCelsius >= 0 && waterCelsius <= hottestWater))
    return message('log-reading.temperature', { fromCelsius: 0, toCelsius: hottestWater });
  if (stage !== undefined && !stageWords.some((one) => foldName(one) === foldName(stage)))
    return message('log-reading.stage', { words: stageWords });
  if (feel.some((word) => !feelWords.some((one) => foldName(one) === foldName(word))))
    return message('log-reading.feel', { words: feelWords });
  return undefined;
}

function lineOf({ minutes, celsius, stage, feel = [] }: ReadingToLog): string {
  const when = minutes === undefined ? 'end' : `at ${minuteText(minutes)}`;
  const seen = [...(stage === undefined ? [] : [stage]), ...feel];
  if (celsius === undefined) return `  ${when}${minutes === undefined ? '' : ','} ${seen.join(', ')}`;
  return `  ${when.padEnd(10)} ${[`${trimmed(celsius, 1)} °C`, ...seen].join(', ')}`;
}

/** A minute of mixing as it was told, halves included: two readings half a minute apart are two. As the notation has it. */
function minuteText(minutes: number): string {
  const text = trimmed(minutes, 1);
  if (text === '0') return '0 s';
  const [hours, rest] = [Math.floor(Number(text) / 60), Number(text) % 60];
  if (hours === 0 || text.includes('.')) return `${text} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

function beginTrial(model: FormulaModel, reading: ReadingToLog, written: readonly string[]): TextEdit {
  const { lines } = model.block;
  let last = lines.length - 1;
  while (last > 0 && elementAt(lines, last).empty && elementAt(lines, last).text.trim() === '') last--;
  const end = elementAt(lines, last).text.length;
  const day = [
    `trial ${reading.date}:`,
    ...(reading.experiment === undefined ? [] : [experimentLine(reading.experiment)]),
    ...(reading.roomCelsius === undefined ? [] : [`  room ${trimmed(reading.roomCelsius, 1)} °C`]),
    ...(reading.flourCelsius === undefined ? [] : [`  flour ${trimmed(reading.flourCelsius, 1)} °C`]),
    ...(reading.waterCelsius === undefined ? [] : [waterLine(reading.waterCelsius)]),
    ...written,
  ];
  return { line: last, start: end, end, insert: `\n\n${day.join('\n')}` };
}

/** Its name in quotes where it would else be read as something other than a name. */
function experimentLine(name: string): string {
  const plain = `  experiment ${name}`;
  const { statement, problems } = parseLine(plain, { context: 'trial', afterBlank: false });
  const value = statement.kind === 'property' ? statement.value : undefined;
  const isRead = problems.length === 0 && value?.form === 'name' && value.name.folded === foldName(name);
  return isRead ? plain : `  experiment "${name.replaceAll('"', '')}"`;
}

function waterLine(celsius: number): string {
  return `  water ${trimmed(celsius, 1)} °C`;
}

/** The same with the temperature of the water, among the conditions of the day, where the trial states none. */
function withWater(
  { block }: FormulaModel,
  { said, headerLine }: TrialModel,
  { waterCelsius }: ReadingToLog,
  edit: TextEdit,
): readonly TextEdit[] {
  if (waterCelsius === undefined || said.has('water')) return [edit];
  const line = Math.max(
    headerLine,
    ...[...said.values()]
      .flat()
      .filter(isDay)
      .map((one) => one.line),
  );
  const end = block.lines[line]!.text.length;
  const insert = `\n${waterLine(waterCelsius)}`;
  if (line === edit.line && edit.start === end) return [{ ...edit, insert: insert + edit.insert }];
  const water = { line, start: end, end, insert };
  return [water, edit].sort((one, other) => one.line - other.line);
}

/** What the day was like and what it was for, without the programme that was run. */
function isDay({ statement }: Said): boolean {
  return ['room', 'flour', 'experiment'].includes(statement.property);
}

function intoTrial(model: FormulaModel, trial: TrialModel, reading: ReadingToLog): TextEdit {
  const all = [...trial.said.values()].flat().sort((one, other) => one.line - other.line);
  const same = all.find((one) => isSameMoment(one, reading));
  const line = lineOf(same === undefined ? reading : beside(same, reading));
  const { lines } = model.block;
  if (same !== undefined) {
    const { text, tokens } = elementAt(lines, same.line);
    const comment = tokens.find((token) => token.kind === 'comment');
    const end = comment === undefined ? text.length : text.slice(0, comment.start).trimEnd().length;
    return { line: same.line, start: 0, end, insert: line };
  }
  const after = all.findLast((one) => comesBefore(one, reading))?.line ?? trial.headerLine;
  const end = elementAt(lines, after).text.length;
  return { line: after, start: end, end, insert: `\n${line}` };
}

/** A reading of a minute that has one: what was seen alone takes nothing from its temperature, nor a temperature from what was seen alone. */
function beside({ statement: { value } }: Said, reading: ReadingToLog): ReadingToLog {
  if (!isReadingValue(value)) return reading;
  const celsius = 'celsius' in value ? value.celsius : undefined;
  if (reading.celsius === undefined) return celsius === undefined ? reading : { ...reading, celsius };
  const isBare = reading.stage === undefined && (reading.feel ?? []).length === 0;
  if (!isBare || celsius !== undefined) return reading;
  return {
    ...reading,
    ...(value.stage === undefined ? {} : { stage: value.stage.folded }),
    ...(value.feel === undefined ? {} : { feel: value.feel.map(({ folded }) => folded) }),
  };
}

function isSameMoment({ statement }: Said, { minutes }: ReadingToLog): boolean {
  if (minutes === undefined) return statement.property === 'end';
  const { value } = statement;
  return value?.form === 'reading' && Math.abs(value.seconds - minutes * 60) < 3;
}

function comesBefore(said: Said, { minutes }: ReadingToLog): boolean {
  if (isCondition(said) || isDay(said)) return true;
  const { value } = said.statement;
  if (value?.form !== 'reading') return false;
  return minutes === undefined || value.seconds < minutes * 60;
}
