import { replaceFix } from './fixes.ts';
import type { Rule } from './rule.ts';

/** A name that the trade gives to two things, what it is taken for, and why it matters. Common practice, no source. */
const names: Readonly<Record<string, { readonly kinds: readonly [string, string]; readonly why: string }>> = {
  yeast: {
    kinds: ['fresh yeast', 'instant yeast'],
    why: 'A third as much instant yeast raises alike.',
  },
  'spelt flour': { kinds: ['wholemeal spelt', 'white spelt'], why: 'White spelt takes up less water.' },
  spelt: { kinds: ['wholemeal spelt', 'white spelt'], why: 'White spelt takes up less water.' },
  oil: { kinds: ['olive oil', 'sunflower oil'], why: 'The label names the plant.' },
  malt: {
    kinds: ['malt flour', 'malt extract'],
    why: 'Extract is a syrup: it brings sugar and water, and no enzymes.',
  },
};

export const whichKind: Rule = {
  code: 'which-kind',
  level: 'hint',
  title: 'A name for two things',
  explanation:
    '`yeast`, `spelt flour`, `oil` and `malt` may each be one of two things, which weigh, ferment, or are declared differently. The ' +
    'line is read as the first of them, and says so, until it names one.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  salt  2%\n  yeast  1%\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  salt  2%\n  instant yeast  0.4%\n',
  *check({ analysis, scope }) {
    if (analysis === undefined) return;
    for (const { lines } of analysis.resolved.model.sections) {
      for (const { line, statement } of lines) {
        const { name } = statement;
        const found = Object.hasOwn(names, name.folded) ? names[name.folded] : undefined;
        // What a file defines under this name is one thing.
        if (found === undefined || scope.find('ingredient', name.folded).length > 0) continue;
        const [taken, other] = found.kinds;
        yield {
          line,
          span: { start: name.start, end: name.end },
          message: `“${name.text}” is taken as ${taken}; it may be ${other}. ${found.why}`,
          fixes: [taken, other].map((kind) => replaceFix(`Write ${kind}`, line, name, kind)),
        };
      }
    }
  },
};
