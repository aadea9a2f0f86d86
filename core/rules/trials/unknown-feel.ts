import { isReadingValue } from '../../syntax/reading-value.ts';
import type { Name } from '../../syntax/tree.ts';
import { feelWords, stageWords } from '../../syntax/vocabulary.ts';
import { nearestWord } from '../../text/nearest.ts';
import { message } from '../../words/message.ts';
import { writeFix } from '../engine/fixes.ts';
import type { Rule, RuleFinding } from '../engine/rule.ts';

export const unknownFeel: Rule = {
  code: 'unknown-feel',
  level: 'warning',
  mendsSlips: true,
  title: 'A reading has a word that is neither a stage nor one of feel',
  explanation:
    'What was seen and felt of a dough teaches how fast mixer and flour develop it, so it stands in the words that have a meaning: a stage, such as `developed`, ' +
    'or how the dough feels, such as `smooth`, `shiny`, `clears the bowl`, each behind a comma. Another word is kept as it is written and counts for nothing; what is to be ' +
    'remembered besides goes into a `note`.',
  bad:
    'formula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n\nmix in spiral:\n  load flour, water, salt\n' +
    '  speed 1 for 6 min\n\ntrial 2026-03-03:\n  water 18 °C\n  mixed in spiral\n  load flour, water, salt\n  speed 1 for 6 min\n  at 3 min  22 °C, stretchy\n',
  good:
    'formula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n\nmix in spiral:\n  load flour, water, salt\n' +
    '  speed 1 for 6 min\n\ntrial 2026-03-03:\n  water 18 °C\n  mixed in spiral\n  load flour, water, salt\n  speed 1 for 6 min\n  at 3 min  22 °C, stretches\n',
  *check({ block }) {
    if (block.top?.kind !== 'formula') return;
    for (const [line, { statement }] of block.lines.entries()) {
      const value = statement.kind === 'property' ? statement.value : undefined;
      if (!isReadingValue(value)) continue;
      for (const name of value.unread ?? [])
        if (name.folded !== '') yield unread(line, name, value.stage?.text);
    }
  },
};

const known: readonly string[] = [...feelWords, ...stageWords];

function unread(line: number, name: Name, stage: string | undefined): RuleFinding {
  const span = { start: name.start, end: name.end };
  if (stage !== undefined && known.includes(name.folded))
    return { line, span, message: message('unknown-feel.second', { name: stage, otherName: name.text }) };
  const meant = meantBy(name.folded);
  return meant === undefined
    ? {
        line,
        span,
        level: 'info',
        message: message('unknown-feel.none', { name: name.text, words: feelWords }),
      }
    : {
        line,
        span,
        message: message('unknown-feel.meant', { name: name.text, meant }),
        fixes: [writeFix(line, span, meant, true)],
      };
}

/** `smooth and shiny` as two words behind commas, each as it is known, is said otherwise, or is nearest to. */
function meantBy(folded: string): string | undefined {
  const words = folded.split(/\s+and\s+|\s*[&+/]\s*/u).map(wordMeant);
  return words.every((word) => word !== undefined) ? [...new Set(words)].join(', ') : undefined;
}

function wordMeant(folded: string): string | undefined {
  const word = folded.replace(/^(?:very|quite|a bit|rather|still|nicely)\s+/, '');
  const other = Object.hasOwn(otherWords, word) ? otherWords[word] : undefined;
  return other ?? nearestWord(word, known);
}

/** How bakers say it otherwise. Common practice, no source. */
const otherWords: Readonly<Record<string, string>> = {
  shaggy: 'rough',
  lumpy: 'rough',
  ragged: 'rough',
  torn: 'tears',
  tearing: 'tears',
  rips: 'tears',
  tacky: 'sticky',
  soupy: 'wet',
  soggy: 'wet',
  'clings to the bowl': 'sticks to the bowl',
  'cleans the bowl': 'clears the bowl',
  'leaves the bowl': 'clears the bowl',
  'comes off the bowl': 'clears the bowl',
  silky: 'smooth',
  satiny: 'smooth',
  elastic: 'stretches',
  extensible: 'stretches',
  stretchy: 'stretches',
  stretching: 'stretches',
  glossy: 'shiny',
  glossed: 'shiny',
  windowpane: 'window',
  'window pane': 'window',
  'pulls a window': 'window',
  runny: 'slack',
  ropy: 'stringy',
  'fully developed': 'developed',
  'not developed': 'developing',
  underdeveloped: 'developing',
  'broken down': 'breakdown',
  broken: 'breakdown',
};
