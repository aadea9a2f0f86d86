import type { Analysis } from '../../analysis/analysis.ts';
import { parseLine } from '../../syntax/line.ts';
import { nameBetween } from '../../syntax/name-reading.ts';
import { elementAt } from '../../text/element.ts';
import { shortName } from '../../text/short-name.ts';
import { message } from '../../words/message.ts';
import { lineBelowFix, replaceFix } from '../engine/fixes.ts';
import type { Rule } from '../engine/rule.ts';
import { headerPlace } from '../engine/rule-places.ts';
import { wordsOf } from '../engine/rule-words.ts';
import { runMixes } from './mixes.ts';

/** So many names have room in a title. */
const mostNamed = 2;

export const notLoaded: Rule = {
  code: 'not-loaded',
  level: 'hint',
  mendsSlips: true,
  title: 'The mix never loads something of the dough',
  explanation:
    'What no `load` or `add` line names is taken to go into the bowl first. Name it, so that the sheet shows it when it really goes in.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  salt  2%\n\nmix in spiral:\n  load flour, water\n  speed 1 for 4 min\n  speed 2 for 4 min\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  salt  2%\n\nmix in spiral:\n  load flour, water, salt\n  speed 1 for 4 min\n  speed 2 for 4 min\n',
  *check({ analysis, block }) {
    for (const { mix, model, analysis: formula } of runMixes(analysis)) {
      if (mix.unloaded.length === 0) continue;
      const names = mix.unloaded.map((one) => one.name);
      const items = names.map(asLoaded).join(', ');
      const first = model.phases.find(({ statement }) => statement.value?.form === 'load');
      const more = names.length - mostNamed;
      const title =
        more > 1
          ? message('not-loaded.fix-more', {
              names: names.slice(0, mostNamed).map((name) => shortName(name)),
              count: more,
            })
          : message('not-loaded.fix', { names: names.map((name) => shortName(name)) });
      const fix =
        first === undefined
          ? lineBelowFix(title, block, model.headerLine, `  load ${items}`, true)
          : replaceFix(
              title,
              first.line,
              { start: wordsOf(block, first.line).end, end: wordsOf(block, first.line).end },
              `, ${items}`,
              true,
            );
      yield {
        ...headerPlace(block, model.headerLine),
        message: message('not-loaded.none', { names }),
        // Where a line names what is not in the dough, or leaves out by name, it may be what is not loaded: that is settled first.
        fixes: isUnclear(formula, mix.index) ? [] : [fix],
      };
    }
  },
};

function isUnclear({ resolved }: Analysis, index: number): boolean {
  const { loads, phases } = elementAt(resolved.mixes, index);
  const lines = new Set(phases.map(({ line }) => line));
  return (
    resolved.problems.some(({ kind, line }) => kind === 'not-in-dough' && lines.has(line)) ||
    loads.some(({ item }) => (item.allBut ?? []).length > 0)
  );
}

/** A name as a `load` takes it: in quotes where it would be read as something else, such as `all purpose` or `rye, dark`. */
function asLoaded(name: string): string {
  const { statement } = parseLine(`load ${name}`, { context: 'mix', afterBlank: false });
  const value = statement.kind === 'property' ? statement.value : undefined;
  const [item, ...others] = value?.form === 'load' ? value.items : [];
  const { folded } = nameBetween(`"${name}"`, 0, name.length + 2);
  const isPlain =
    item !== undefined && others.length === 0 && !item.all && !item.remaining && item.name.folded === folded;
  const isWhole = isPlain && item.portion === undefined && item.celsius === undefined;
  return isWhole || name.includes('"') ? name : `"${name}"`;
}
