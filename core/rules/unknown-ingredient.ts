import { catalogueNames } from '../catalogue/catalogue.ts';
import { nearestWord } from '../text/nearest.ts';
import type { Rule, RuleFix } from './rule.ts';

export const unknownIngredient: Rule = {
  code: 'unknown-ingredient',
  level: 'warning',
  title: 'Nobody has said what this ingredient is',
  explanation:
    'The ingredient is weighed, but counts neither as flour nor as water: what it brings to the dough is not known. ' +
    'Write the name as its section does, choose one of the catalogue, or define it.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  nonesuch  3%\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  linseed  3%\n',
  *check({ analysis, scope, block }) {
    for (const problem of analysis?.resolved.problems ?? []) {
      if (problem.kind !== 'unknown-ingredient') continue;
      const { name, line } = problem;
      if (name.folded === '') continue;
      const seen = scope.names('ingredient').map((one) => one.name.text);
      const meant = nearestWord(name.text.toLowerCase(), [...seen.map((one) => one.toLowerCase()), ...catalogueNames()]);
      const written = meant === undefined ? undefined : (seen.find((one) => one.toLowerCase() === meant) ?? meant);
      const last = block.lines.length - 1;
      const end = block.lines[last]!.text.length;
      const fixes: RuleFix[] = [
        {
          title: `Define “${name.text}” as an ingredient`,
          edits: [{ line: last, start: end, end, insert: `\n\ningredient ${name.text}:\n  water 0%\n` }],
        },
      ];
      if (written !== undefined) {
        fixes.unshift({ title: `Write ${written}`, edits: [{ line, start: name.start, end: name.end, insert: written }], preferred: true });
      }
      yield {
        line,
        span: { start: name.start, end: name.end },
        message:
          `“${name.text}” is not known: it is weighed, but counts as neither flour nor water.` +
          (written === undefined ? ' Define it, or write a name that is known.' : ` Is it “${written}”?`),
        fixes,
      };
    }
  },
};
