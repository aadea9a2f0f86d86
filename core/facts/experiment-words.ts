import {
  type ExperimentAnalysis,
  type ExperimentDough,
  firstUnknown,
} from '../analysis/experiment-analysis.ts';
import { stageMessage } from '../analysis/mix-analysis.ts';
import type { RunPart } from '../syntax/tree.ts';
import { trimmed } from '../text/figures.ts';
import { type Message, message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';
import { escapeMarkdown } from './formula-words.ts';
import { inMixer } from './mixing-words.ts';

/** What a dough is expected to be like at a minute, as far as it is known. */
export interface ExpectedFigures {
  readonly celsius?: number;
  readonly bandCelsius?: number;
  readonly stage?: string;
  readonly earliestStage?: string;
  readonly latestStage?: string;
}

/** A stretch of the work of a dough, as the notation says it. */
export function runWords(part: RunPart): string {
  const time = `${trimmed(part.seconds / 60, 2)} min`;
  return part.kind === 'speed' ? `speed ${part.number} for ${time}` : `${part.kind} ${time}`;
}

/** What a dough is called: a formula that an experiment has twice is told apart by its mixer, and on one mixer by how it is worked. */
export function nameOf(dough: ExperimentDough, all: readonly ExperimentDough[], speaker: Speaker): string {
  const { formula, mixer, run } = dough;
  const alike = all.filter((one) => one.formula === formula);
  if (alike.length < 2) return formula;
  const isOnSame = alike.filter((one) => one.mixer?.name === mixer?.name).length > 1;
  const name =
    mixer === undefined
      ? formula
      : speaker.say(message('experiment.dough-twice-named', { name: formula, place: inMixer(mixer.name) }));
  return isOnSame && run.length > 0 ? [name, ...run.map(runWords)].join(', ') : name;
}

/** The temperature with its band and the stages it may be in; undefined where nothing is known. */
export function expectedMessage(expected: ExpectedFigures): Message | undefined {
  const { celsius, bandCelsius } = expected;
  if (celsius === undefined || bandCelsius === undefined) return undefined;
  const stage = expectedStages(expected);
  return stage === undefined
    ? message('experiment.cell-plain', { celsius, bandCelsius })
    : message('experiment.cell', { celsius, bandCelsius, stage });
}

/** The stages that a dough may be in by then; undefined where nobody knows. */
export function expectedStages({ stage, earliestStage, latestStage }: ExpectedFigures): Message | undefined {
  if (stage === undefined) return undefined;
  return earliestStage === undefined || latestStage === undefined || earliestStage === latestStage
    ? stageMessage(stage)
    : message('experiment.stage-span', {
        stage: stageMessage(earliestStage),
        otherStage: stageMessage(latestStage),
      });
}

/** All doughs against all minutes, as a table in Markdown; of the dough of a line alone where one is given. */
export function experimentMarkdown(
  experiment: ExperimentAnalysis,
  speaker: Speaker,
  line?: number,
): string[] {
  const doughs = experiment.doughs.filter((dough) => line === undefined || dough.line === line);
  const { readMinutes } = experiment;
  if (doughs.length === 0 || readMinutes.length === 0) return [];
  const heads = ['', ...readMinutes.map((minutes) => speaker.minutes(minutes))];
  const nameIn = (dough: ExperimentDough): string => nameOf(dough, experiment.doughs, speaker);
  const rows = doughs.map((dough) => [escapeMarkdown(nameIn(dough)), ...cellsOf(dough, speaker)]);
  const table = [heads, heads.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`);
  const reasons = doughs.flatMap((dough) => {
    const { programme } = dough;
    const name = nameIn(dough);
    const unknownFrom = firstUnknown(dough);
    if (unknownFrom !== undefined)
      return [speaker.say(message('cannot-be-tested.at', { name, ...unknownFrom }))];
    return programme.known
      ? []
      : [speaker.say(message('cannot-be-tested.because', { name, reason: programme.reason }))];
  });
  return [table.join('\n'), ...reasons];
}

function cellsOf({ readings }: ExperimentDough, speaker: Speaker): string[] {
  return readings.map(({ expected }) => {
    if (!expected.known) return '–';
    const { celsius, bandCelsius, stage, stages } = expected.value;
    const said = expectedMessage({
      celsius,
      bandCelsius,
      ...(stage.known ? { stage: stage.value } : {}),
      ...(stages === undefined ? {} : { earliestStage: stages.earliest, latestStage: stages.latest }),
    });
    return said === undefined ? '–' : speaker.say(said);
  });
}
