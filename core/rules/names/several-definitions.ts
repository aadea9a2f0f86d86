import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';

export const severalDefinitions: Rule = {
  code: 'several-definitions',
  level: 'error',
  title: 'A name is defined more than once where it is looked for',
  explanation:
    'A name is looked for in the folder of the file, then in each folder above, then everywhere else. At the nearest place ' +
    'with a hit there is more than one definition, and which is meant is not clear. Take one out, or give it a name of its own.',
  bad:
    'flour mill white:\n  protein 12%\n\nflour mill white:\n  protein 11%\n\n' +
    'formula Quay Tin:\n  mill white  100%\n  water  62%\n',
  good: 'flour mill white:\n  protein 12%\n\nformula Quay Tin:\n  mill white  100%\n  water  62%\n',
  *check({ analysis }) {
    for (const problem of analysis?.resolved.problems ?? []) {
      if (problem.kind !== 'several') continue;
      const { name, line, definitions } = problem;
      yield {
        line,
        span: { start: name.start, end: name.end },
        message: message('several-definitions.several', { name: name.text, count: definitions.length }),
        related: definitions.map((definition) => ({
          definition,
          message: message('several-definitions.one'),
        })),
      };
    }
  },
};
