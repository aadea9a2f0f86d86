import { elementAt } from '../../text/element.ts';
import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';
import { wordsOf } from '../engine/rule-words.ts';
import { doughMixes } from './mixes.ts';

/** Growth of bakers’ yeast stops at 45.4 °C (Salvadó and others 2011); from 40 °C on it suffers (common practice). */
const harmsCelsius = 40;
const killsCelsius = 45.4;

export const yeastInTheHot: Rule = {
  code: 'yeast-in-the-hot',
  level: 'warning',
  title: 'The yeast meets something that is too hot for it',
  explanation:
    'Yeast that is loaded together with hot milk, melted butter or a fresh scald meets their heat before the flour can take it. Above ' +
    'about 40 °C it suffers, at 45 °C its growth ends (published: Salvadó and others, 2011), and more kills it. Mix flour and water first ' +
    'and add the yeast to the cooler dough, or let the hot part cool. Hot water has a finding of its own.',
  bad:
    'formula Quay Bun:\n  yield 10 kg\n  bread flour  100%\n  whole milk  60%, at 70 °C\n  salt  2%\n  fresh yeast  3%\n\n' +
    'mix in spiral:\n  load flour, whole milk, salt, fresh yeast\n  speed 1 for 4 min\n  speed 2 for 3 min\n',
  good:
    'formula Quay Bun:\n  yield 10 kg\n  bread flour  100%\n  whole milk  60%, at 20 °C\n  salt  2%\n  fresh yeast  3%\n\n' +
    'mix in spiral:\n  load flour, whole milk, salt, fresh yeast\n  speed 1 for 4 min\n  speed 2 for 3 min\n',
  *check({ analysis: formula, block }) {
    for (const { mix, analysis } of doughMixes(formula)) {
      const { phases } = mix.input;
      const { ingredients, mixes } = analysis.resolved;
      for (const [index, phase] of phases.entries()) {
        if (!('portions' in phase)) continue;
        const line = elementAt(mix.phaseLines, index);
        const keys = elementAt(mixes, mix.index)
          .loads.filter((load) => load.line === line)
          .flatMap((load) => load.keys);
        if (!keys.some((key) => ingredients.get(key)?.role === 'yeast')) continue;
        const inBowl = mix.outcome.phaseEnds.findLast((end) => end.phase < index)?.celsius;
        const hottest = phase.portions
          .filter((portion) => portion.kind !== 'water' && portion.kind !== 'flour' && portion.grams > 0)
          .reduce<{ celsius: number; label?: string }>(
            (most, portion) => (portion.celsius > most.celsius ? portion : most),
            { celsius: inBowl ?? Number.NEGATIVE_INFINITY },
          );
        if (!(hottest.celsius > harmsCelsius)) continue;
        const { celsius, label } = hottest;
        const isSure = celsius >= killsCelsius;
        yield {
          line,
          span: wordsOf(block, line),
          message:
            label === undefined
              ? message(isSure ? 'yeast-in-the-hot.dies-in-bowl' : 'yeast-in-the-hot.may-suffer-in-bowl', {
                  celsius,
                })
              : message(isSure ? 'yeast-in-the-hot.dies' : 'yeast-in-the-hot.may-suffer', {
                  name: label,
                  celsius,
                }),
          ...(isSure ? {} : { level: 'info' as const }),
        };
      }
    }
  },
};
