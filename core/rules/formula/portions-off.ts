import { type Analysis, solutionOf } from '../../analysis/analysis.ts';
import type { ResolvedLoad } from '../../model/resolve-mix.ts';
import type { LoadItem } from '../../syntax/tree.ts';
import { elementAt } from '../../text/element.ts';
import type { Span } from '../../text/span.ts';
import { type Message, message } from '../../words/message.ts';
import { writeFix } from '../engine/fixes.ts';
import type { Rule } from '../engine/rule.ts';
import { wordsOf } from '../engine/rule-words.ts';
import { runMixes } from '../mixing/mixes.ts';

export const portionsOff: Rule = {
  code: 'portions-off',
  level: 'warning',
  title: 'The portions that are loaded do not make up the line',
  explanation:
    'An ingredient that goes in bit by bit (`load water 66%`, `add water 8%`) must be loaded whole in the end. Write `add remaining water` on ' +
    'the last portion: it then takes the rest, whatever the formula says. A portion is a percent of the flour (`water 66%`), a share (`90% of the water`, `half the water`) or a ' +
    'weight (`water 1300 g`); “most of the water” weighs nothing.',
  bad: 'formula Quay Hearth:\n  bread flour  100%\n  water  78%\n\nmix in spiral:\n  load flour, water 66%\n  speed 1 for 8 min\n  add water 8%\n  speed 2 for 4 min\n',
  good: 'formula Quay Hearth:\n  bread flour  100%\n  water  78%\n\nmix in spiral:\n  load flour, water 66%\n  speed 1 for 8 min\n  add remaining water\n  speed 2 for 4 min\n',
  *check(context) {
    const { analysis, block } = context;
    const assumed = analysis?.solved?.assumedScale === true;
    for (const { line, item } of analysis?.resolved.mixes.flatMap(({ loads }) => loads) ?? []) {
      const { portion, name } = item;
      if (portion?.kind !== 'unsaid') continue;
      yield {
        line,
        span: { start: portion.start, end: portion.end },
        message: message('portions-off.unsaid', { name: name.text }),
        fixes: [],
      };
    }
    for (const { loads } of analysis?.resolved.mixes ?? [])
      for (const [at, { line, item, keys }] of loads.entries()) {
        if (!item.remaining || keys.length === 0 || !isRestOfNothing(keys, loads.slice(0, at))) continue;
        const { text } = item.name;
        const said = message('portions-off.rest-of-nothing', { name: text, meant: `90% of the ${text}` });
        yield { line, span: { start: item.start, end: item.end }, message: said, fixes: [] };
      }
    for (const { mix, analysis: formula } of runMixes(analysis)) {
      const { loads } = elementAt(formula.resolved.mixes, mix.index);
      for (const { line, name, askedGrams, hasGrams } of mix.portionsOff) {
        const load = loads.findLast((one) => one.line === line && isOf(formula, one, name));
        const item = load?.item;
        const portion = item?.portion;
        const span = placeOf(item) ?? wordsOf(block, line);
        yield {
          line,
          span,
          message: assumed
            ? unsized(name, askedGrams > hasGrams)
            : message(askedGrams > hasGrams ? 'portions-off.more-grams' : 'portions-off.less-grams', {
                name,
                meant: `remaining ${name}`,
                grams: askedGrams,
                otherGrams: hasGrams,
              }),
          fixes:
            item === undefined || portion === undefined
              ? []
              : [writeFix(line, span, `remaining ${item.name.text}`, true)],
        };
      }
    }
  },
};

/**
 * Whether a rest is one of nothing: all of it went in before, or `load all` left the whole of it for here, and no line says how much is kept
 * back.
 */
function isRestOfNothing(keys: readonly string[], before: readonly ResolvedLoad[]): boolean {
  const earlier = before.filter((load) => load.keys.some((key) => keys.includes(key)));
  if (earlier.some(({ item }) => item.portion !== undefined)) return false;
  const whole = new Set(earlier.flatMap((load) => load.keys));
  if (keys.every((key) => whole.has(key))) return true;
  return earlier.length === 0 && before.some(({ item }) => item.allBut?.length === 0);
}

/** Where a load names something and how much of it, without how warm it is. */
function placeOf(item: LoadItem | undefined): Span | undefined {
  if (item === undefined) return undefined;
  return { start: item.start, end: Math.max(item.name.end, item.portion?.end ?? 0) };
}

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
