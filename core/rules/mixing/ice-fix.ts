import { limitOf } from '../../analysis/mix-analysis.ts';
import { lineOfId } from '../../model/formula-model.ts';
import { elementAt } from '../../text/element.ts';
import { trimmed } from '../../text/figures.ts';
import { indentOf } from '../../text/indent.ts';
import { message } from '../../words/message.ts';
import type { RuleContext, RuleEdit, RuleFix } from '../engine/rule.ts';
import { amountPlace } from '../engine/rule-places.ts';
import { wordsOf } from '../engine/rule-words.ts';
import type { RunMix } from './mixes.ts';

/**
 * Takes a part of the water as ice, on a line of its own, and loads it with the water: the hydration stays what it is. No fix
 * where that is not cold enough, and where the water goes in by portions or stands on several lines, for then whoever wrote it
 * has to say which.
 */
export function iceFix(context: RuleContext, { mix, analysis }: RunMix): RuleFix[] {
  const { block } = context;
  const { solved, resolved } = analysis;
  const cure = mix.water.known ? mix.water.value.iceCure : undefined;
  const section = solved?.sections[0];
  const base = section?.baseGrams ?? section?.flourGrams;
  if (cure === undefined || section === undefined || !(base !== undefined && base > 0)) return [];
  if (cure.doughCelsius > limitOf(mix)) return [];
  const waters = section.lines.filter((line) => line.role === 'water' && !line.id.startsWith('F'));
  const [water] = waters;
  if (water === undefined || waters.length > 1) return [];
  const line = lineOfId(water.id);
  const statement = resolved.statements.get(water.id);
  const loads = elementAt(resolved.mixes, mix.index).loads.filter(({ keys }) => keys.includes(water.key));
  if (statement === undefined || loads.length > 1 || loads.some(({ item }) => item.portion !== undefined))
    return [];
  const { amount, span } = amountPlace(context, water.id);
  const share = Math.round((1000 * cure.iceGrams) / base) / 10;
  if (!(share > 0)) return [];
  const edits: RuleEdit[] = [];
  let ice = `${trimmed(share, 1)}%`;
  if (amount?.kind === 'fraction') {
    const left = 100 * amount.fraction - share;
    if (!(left > 0)) return [];
    edits.push({ line, ...span, insert: `${trimmed(left, 2)}%` });
  } else if (amount?.kind === 'mass') {
    const grams = cure.iceGrams >= 100 ? Math.round(cure.iceGrams) : Math.round(10 * cure.iceGrams) / 10;
    if (!(grams > 0 && grams < amount.grams)) return [];
    ice = `${trimmed(grams, 1)} g`;
    edits.push({ line, ...span, insert: `${trimmed(amount.grams - grams, 1)} g` });
  } else if (amount?.kind !== 'hydration') return [];
  const { text } = elementAt(block.lines, line);
  const indent = indentOf(text);
  const name = 'ice'.padEnd(Math.max(4, span.start - indent.length - 1));
  edits.push({ line, start: text.length, end: text.length, insert: `\n${indent}${name} ${ice}` });
  const load = loads[0];
  if (load !== undefined) {
    // The words of an item may name more than the water; the ice goes to the end of its line.
    const { end } = wordsOf(block, load.line);
    edits.push({ line: load.line, start: end, end, insert: ', ice' });
  }
  return [{ title: message('ice.fix-take', { meant: ice, doughCelsius: cure.doughCelsius }), edits }];
}
