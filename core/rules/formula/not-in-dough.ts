import { findIngredient } from '../../model/found-ingredient.ts';
import { mannerApart } from '../../syntax/mix-words.ts';
import { roleWords } from '../../syntax/vocabulary.ts';
import { elementAt } from '../../text/element.ts';
import { foldName } from '../../text/names.ts';
import { nearestWord } from '../../text/nearest.ts';
import { message } from '../../words/message.ts';
import { writeFix } from '../engine/fixes.ts';
import type { Rule, RuleFix } from '../engine/rule.ts';

export const notInDough: Rule = {
  code: 'not-in-dough',
  level: 'warning',
  mendsSlips: true,
  title: 'The mix loads something that the dough does not have',
  explanation:
    'A `load` or `add` line names an ingredient, part or role that no line of the formula has. Nothing goes into the bowl ' +
    'for it. Write the name as the formula does, or add the line to the formula. In the programme that a trial keeps it is shown as information only: the dough of that ' +
    'day may have had what the formula no longer has.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n\nmix in spiral:\n  load flour, water, honey\n  speed 1 for 4 min\n  speed 2 for 3 min\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  honey  2%\n\nmix in spiral:\n  load flour, water, honey\n  speed 1 for 4 min\n  speed 2 for 3 min\n',
  *check({ analysis, block, scope }) {
    if (analysis === undefined) return;
    const { problems, model, statements } = analysis.resolved;
    const keys = new Set(
      analysis.resolved.input.sections.flatMap(({ lines }) => lines.map(({ key }) => key)),
    );
    // `oil` is the olive oil of the formula.
    const isWeighed = (folded: string): boolean => {
      const found = findIngredient({ text: folded, folded, start: 0, end: 0 }, scope);
      return found.kind === 'found' && keys.has(found.ingredient.key);
    };
    for (const problem of problems) {
      if (problem.kind !== 'not-in-dough' || problem.name.folded === '') continue;
      const { name, line } = problem;
      const parts = model.sections.slice(1).flatMap((section) => section.name ?? []);
      const names = [...statements.values()].map((statement) => statement.name);
      const seen = new Map([...parts, ...names].map((one) => [one.folded, one.text]));
      const meant = nearestWord(name.folded, seen.keys());
      const written = meant === undefined || meant === name.folded ? undefined : seen.get(meant);
      const isLast = elementAt(block.lines, line).text.slice(name.end).trim() === '';
      const apart = namesMeant(name.text, isLast, (one) => seen.has(one) || roles.has(one) || isWeighed(one));
      const wanted = apart ?? written;
      const fixes = (preferred: boolean): RuleFix[] =>
        wanted === undefined ? [] : [writeFix(line, name, wanted, preferred)];
      if (problem.tried === true) {
        // What went into the dough of that day may have left the formula since: the record stands, and nothing mends it unasked.
        yield {
          line,
          span: { start: name.start, end: name.end },
          level: 'info',
          message:
            written === undefined
              ? message('not-in-dough.trial', { name: name.text })
              : message('not-in-dough.trial-meant', { name: name.text, otherName: written }),
          fixes: fixes(false),
        };
        continue;
      }
      yield {
        line,
        span: { start: name.start, end: name.end },
        message:
          wanted === undefined
            ? message('not-in-dough.none', { name: name.text })
            : message('not-in-dough.meant', { name: name.text, otherName: wanted }),
        fixes: fixes(true),
      };
    }
  },
};

const roles: ReadonlySet<string> = new Set(roleWords);

/** How what goes in is said to be. */
const states = /^(?:(?:the|cold|cool|soft|softened|warm|melted|cubed|diced|chopped|soaked|drained)\s+)+/i;

/**
 * `starter & salt`, `cold butter`, `walnuts and cranberries`, `butter bit by bit`: names of the dough that lack their commas, or words behind them
 * that say how, which at the end of a line become a remark.
 */
function namesMeant(text: string, isLast: boolean, isKnown: (folded: string) => boolean): string | undefined {
  const { name, manner } = mannerApart(text);
  const names = name.split(/\s+(?:&|\+|and)\s+/i);
  const plain = names.map((one) => (isKnown(foldName(one)) ? one : one.replace(states, '')));
  const isOther = names.length > 1 || manner !== undefined || plain[0] !== names[0];
  const isMeant = isOther && plain.every((one) => isKnown(foldName(one)));
  if (!isMeant || (manner !== undefined && !isLast)) return undefined;
  return plain.join(', ') + (manner === undefined ? '' : `  # ${manner}`);
}
