import type { Analysis } from '../../analysis/analysis.ts';
import type { ExperimentAnalysis, ExperimentDough } from '../../analysis/experiment-analysis.ts';
import { runWords } from '../../facts/experiment-words.ts';
import type { TrialModel } from '../../model/formula-model.ts';
import { byHand } from '../../model/found-mixer.ts';
import { propertiesOf, type SaidProperties, saidValue } from '../../model/properties.ts';
import { mixedIn, presentProgramme } from '../../rules/trials/kept-programme.ts';
import type { TextEdit } from '../../text/edits.ts';
import { message } from '../../words/message.ts';
import type { Refusal } from '../../words/refusal.ts';
import { logReading, type ReadingToLog } from './log-reading.ts';

/** A reading of a dough of an experiment, as it is logged at the bench: its minute is that of the dough. */
export type TestedReading = Pick<
  ReadingToLog,
  'date' | 'minutes' | 'celsius' | 'stage' | 'feel' | 'waterCelsius'
>;

/**
 * The edits that write a reading of an experiment's dough into its formula: into the trial of that day that names the experiment, begun
 * with the day and the programme as the experiment has them. Lines are counted in the formula's block.
 *
 * @param written the formula as its file has it
 * @returns a refusal where the reading cannot be a reading, or has no minute
 */
export function logTestedReading(
  experiment: ExperimentAnalysis,
  dough: ExperimentDough,
  written: Analysis,
  reading: TestedReading,
): readonly TextEdit[] | Refusal {
  const { block, name, conditions } = experiment;
  const { definition, mixer } = dough;
  if (definition === undefined || mixer === undefined)
    return { refused: dough.programme.known ? message('panel.formula-removed') : dough.programme.reason };
  if (reading.minutes === undefined) return { refused: message('log-reading.no-minute') };
  const said: SaidProperties = block.top === undefined ? new Map() : propertiesOf(block, block.top);
  const room = saidValue(said, 'room', 'temperature')?.celsius;
  const flour = saidValue(said, 'flour', 'temperature')?.celsius;
  const water =
    reading.waterCelsius ?? (conditions.waterAssumed ? undefined : waterOfTheDay(dough, conditions));
  return logReading(
    { ...written.resolved.model, block: definition.block },
    {
      ...reading,
      experiment: name,
      mixer: mixer.data.kind === 'hand' ? byHand.name : mixer.name,
      ...(room === undefined ? {} : { roomCelsius: room }),
      ...(flour === undefined ? {} : { flourCelsius: flour }),
      ...(water === undefined ? {} : { waterCelsius: water }),
    },
    programmeOf(dough, written),
    mayTake(experiment, dough),
  );
}

/** Of a formula that the experiment has more than once, the trials that were worked like this line: another of the same day is another dough. */
function mayTake({ doughs }: ExperimentAnalysis, dough: ExperimentDough): (trial: TrialModel) => boolean {
  const isShared =
    doughs.filter(({ definition }) => definition?.block === dough.definition?.block).length > 1;
  const own = new Set(dough.measured.map(({ trial }) => trial.model.headerLine));
  return ({ headerLine }) => !isShared || own.has(headerLine);
}

/** The water that the experiment sets, where the formula leaves it open. */
function waterOfTheDay(
  { programme }: ExperimentDough,
  { waterCelsius }: ExperimentAnalysis['conditions'],
): number | undefined {
  if (!programme.known) return undefined;
  const isOpen = programme.value.input.phases.some(
    (phase) =>
      'portions' in phase &&
      phase.portions.some(({ kind, celsius }) => kind === 'water' && celsius === waterCelsius),
  );
  return isOpen ? waterCelsius : undefined;
}

/** The programme as the experiment runs it, in the lines of a trial. */
function programmeOf({ run, mixer }: ExperimentDough, written: Analysis): readonly string[] {
  const name = mixer?.data.kind === 'hand' ? byHand.name : mixer?.name;
  if (run.length === 0) return presentProgramme(written, name);
  const where = name === undefined || name === byHand.name ? '  mixed by hand' : mixedIn(name);
  return [where, '  load all', ...run.map((part) => `  ${runWords(part)}`)];
}
