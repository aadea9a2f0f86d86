import { looseNamesAbroad } from '../../catalogue/names-abroad.ts';
import { foldName } from '../../text/names.ts';
import { message } from '../../words/message.ts';
import { writeFix } from '../engine/fixes.ts';
import type { Rule } from '../engine/rule.ts';

type Kind = 'yeast' | 'spelt' | 'oil' | 'malt';

interface TwoThings {
  readonly kind: Kind;
  readonly things: readonly [string, string];
}

/** A name that the trade gives to two things, of which it is taken for the first. Common practice, no source. */
const inEnglish: Readonly<Record<string, TwoThings>> = {
  yeast: { kind: 'yeast', things: ['fresh yeast', 'instant yeast'] },
  'spelt flour': { kind: 'spelt', things: ['wholemeal spelt', 'white spelt'] },
  spelt: { kind: 'spelt', things: ['wholemeal spelt', 'white spelt'] },
  oil: { kind: 'oil', things: ['olive oil', 'sunflower oil'] },
  malt: { kind: 'malt', things: ['malt flour', 'malt extract'] },
};

/** By the catalogue’s own name: whose name leaves it open in other languages as well. */
const likewise = {
  'fresh yeast': 'yeast',
  'wholemeal spelt': 'spelt',
  'olive oil': 'oil',
  'barley malt flour': 'malt',
};

const names: ReadonlyMap<string, TwoThings> = new Map([
  ...Object.entries(inEnglish),
  ...Object.entries(likewise).flatMap(([name, same]) =>
    Object.values(looseNamesAbroad[name]!).flatMap((words) =>
      words.map((word) => [foldName(word), inEnglish[same]!] as const),
    ),
  ),
]);

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
        const found = names.get(name.folded);
        // What a file defines under this name is one thing.
        if (found === undefined || scope.find('ingredient', name.folded).length > 0) continue;
        const [meant, otherMeant] = found.things;
        yield {
          line,
          span: { start: name.start, end: name.end },
          message: message(`which-kind.${found.kind}`, { name: name.text, meant, otherMeant }),
          fixes: found.things.map((thing) => writeFix(line, name, thing)),
        };
      }
    }
  },
};
