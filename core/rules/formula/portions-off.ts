import { type Analysis, solutionOf } from '../../analysis/analysis.ts';
import type { ResolvedLoad } from '../../model/resolve-mix.ts';
import { elementAt } from '../../text/element.ts';
import { type Message, message } from '../../words/message.ts';
import { writeFix } from '../engine/fixes.ts';
import type { Rule } from '../engine/rule.ts';
import { quantityPlace } from '../engine/rule-places.ts';
import { wordsOf } from '../engine/rule-words.ts';
import { runMixes } from '../mixing/mixes.ts';

export const portionsOff: Rule = {
  code: 'portions-off',
  level: 'warning',
  title: 'The portions that are loaded do not make up the line',
  explanation:
    'An ingredient that goes in bit by bit (`load water 66%`, `add water 8%`) must be loaded whole in the end. Write `add remaining water` on ' +
    'the last portion: it then takes the rest, whatever the formula says.',
  bad: 'formula Quay Hearth:\n  bread flour  100%\n  water  78%\n\nmix in spiral:\n  load flour, water 66%\n  speed 1 for 8 min\n  add water 8%\n  speed 2 for 4 min\n',
  good: 'formula Quay Hearth:\n  bread flour  100%\n  water  78%\n\nmix in spiral:\n  load flour, water 66%\n  speed 1 for 8 min\n  add remaining water\n  speed 2 for 4 min\n',
  *check(context) {
    const { analysis, block } = context;
    const assumed = analysis?.solved?.assumedScale === true;
    for (const { mix, analysis: formula } of runMixes(analysis)) {
      const { loads } = elementAt(formula.resolved.mixes, mix.index);
      for (const { line, name, askedGrams, hasGrams } of mix.portionsOff) {
        const load = loads.findLast((one) => one.line === line && isOf(formula, one, name));
        const span =
          load === undefined ? wordsOf(block, line) : { start: load.item.start, end: load.item.end };
        const amount =
          load === undefined ? undefined : quantityPlace(block, line, 'fraction', load.item.start);
        const isPortion = load?.item.fraction !== undefined && amount !== undefined;
        yield {
          line,
          span: isPortion ? { start: span.start, end: amount.end } : span,
          message: assumed
            ? unsized(name, askedGrams > hasGrams)
            : message(askedGrams > hasGrams ? 'portions-off.more-grams' : 'portions-off.less-grams', {
                name,
                meant: `remaining ${name}`,
                grams: askedGrams,
                otherGrams: hasGrams,
              }),
          fixes: isPortion
            ? [
                writeFix(
                  line,
                  { start: span.start, end: amount.end },
                  `remaining ${load.item.name.text}`,
                  true,
                ),
              ]
            : [],
        };
      }
    }
  },
};

function unsized(name: string, isMore: boolean): Message {
  return message(isMore ? 'portions-off.more' : 'portions-off.less', { name, meant: `remaining ${name}` });
}

function isOf(formula: Analysis, load: ResolvedLoad, name: string): boolean {
  const { sections } = solutionOf(formula);
  const named = new Set(
    sections.flatMap((one) => one.lines.filter((line) => line.name === name).map((line) => line.key)),
  );
  for (const section of sections) if (section.name === name) named.add(section.id);
  return load.keys.some((key) => named.has(key));
}
