import { writtenDuration } from '../../text/figures.ts';
import { formulaOf, type RuleContext, type RuleEdit } from '../engine/rule.ts';
import { wordsOf } from '../engine/rule-words.ts';

/** A bulk shorter than this, in seconds, leaves no time for two folds. */
const shortestFolded = 3600;

/** Two folds in the first bulk that is long enough for them; none where it is folded already, or there is no such bulk. */
export function foldEdits(context: RuleContext): RuleEdit[] {
  const { model } = formulaOf(context).resolved;
  for (const process of model.processes) {
    if (process.header.part !== undefined && process.header.part.folded !== model.name.folded) continue;
    const bulk = process.steps.find(
      ({ step }) => step.known === 'bulk' && (step.seconds ?? 0) >= shortestFolded,
    );
    if (bulk?.step.seconds === undefined) continue;
    const { foldSeconds, seconds: bulkSeconds } = bulk.step;
    if (foldSeconds.length > 0) return [];
    const times = [bulkSeconds / 3, (2 * bulkSeconds) / 3];
    const insert = times
      .map((seconds) => `, fold at ${writtenDuration(Math.round(seconds / 300) * 300)}`)
      .join('');
    const { end } = wordsOf(context.block, bulk.line);
    return [{ line: bulk.line, start: end, end, insert }];
  }
  return [];
}
