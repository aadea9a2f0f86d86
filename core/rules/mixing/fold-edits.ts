import { writtenDuration } from '../../text/figures.ts';
import type { RuleContext, RuleEdit } from '../engine/rule.ts';
import { wordsOf } from '../engine/rule-words.ts';

/** A bulk shorter than this, in seconds, leaves no time for two folds. */
const shortestFolded = 3600;

/** Two folds in the first bulk that is long enough for them; none where it is folded already, or there is no such bulk. */
export function foldEdits({ analysis, block }: RuleContext): RuleEdit[] {
  const { model } = analysis!.resolved;
  for (const process of model.processes) {
    if (process.header.part !== undefined && process.header.part.folded !== model.name.folded) continue;
    const bulk = process.steps.find(
      ({ step }) => step.known === 'bulk' && (step.seconds ?? 0) >= shortestFolded,
    );
    if (bulk === undefined) continue;
    if (bulk.step.foldSeconds.length > 0) return [];
    const times = [bulk.step.seconds! / 3, (2 * bulk.step.seconds!) / 3];
    const insert = times
      .map((seconds) => `, fold at ${writtenDuration(Math.round(seconds / 300) * 300)}`)
      .join('');
    const { end } = wordsOf(block, bulk.line);
    return [{ line: bulk.line, start: end, end, insert }];
  }
  return [];
}
