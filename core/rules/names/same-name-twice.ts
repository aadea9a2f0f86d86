import { type Definition, definitionOf } from '../../model/scope.ts';
import { holdsIngredients } from '../../syntax/vocabulary.ts';
import { folderOf } from '../../text/folder.ts';
import { message } from '../../words/message.ts';
import type { Rule, RuleContext, RuleFinding } from '../engine/rule.ts';
import { headerPlace } from '../engine/rule-places.ts';

/** A copied folder must not make each finding as long as the folder. */
const mostPlaces = 10;

export const sameNameTwice: Rule = {
  code: 'same-name-twice',
  level: 'warning',
  title: 'A name is given twice',
  explanation:
    'Two formulas, flours, ingredients, mixers or plans in one folder have the same name, or two parts of one formula. Whoever names it cannot ' +
    'tell which is meant; of two parts the first counts. Give each a name of its own.',
  bad: 'mixer big spiral:\n  kind spiral\n\nmixer big spiral:\n  kind fork\n',
  good: 'mixer big spiral:\n  kind spiral\n\nmixer fork:\n  kind fork\n',
  *check(context) {
    yield* definedTwice(context);
    const { block } = context;
    const first = new Map<string, number>();
    for (const { kind, header, headerLine } of block.subs) {
      if (header.name === undefined || !holdsIngredients(kind)) continue;
      const before = first.get(header.name.folded);
      if (before === undefined) {
        first.set(header.name.folded, headerLine);
        continue;
      }
      yield {
        ...headerPlace(block, headerLine),
        message: message('same-name-twice.part', { name: header.name.text }),
        related: [{ ...headerPlace(block, before), message: message('same-name-twice.first') }],
      };
    }
  },
};

// Each of a thousand formulas of one name asks the same.
const kept = new WeakMap<readonly Definition[], Map<string, readonly Definition[]>>();

function inFolder(level: readonly Definition[], folder: string): readonly Definition[] {
  let known = kept.get(level);
  if (known === undefined) {
    known = new Map();
    kept.set(level, known);
  }
  let same = known.get(folder);
  if (same === undefined) {
    same = level.filter((one) => folderOf(one.uri) === folder);
    known.set(folder, same);
  }
  return same;
}

function* definedTwice({ block, scope, uri }: RuleContext): Iterable<RuleFinding> {
  const own = definitionOf(uri, 0, block);
  if (own === undefined) return;
  const same = inFolder(scope.find(own.kind, own.name.folded)[0] ?? [], folderOf(uri));
  if (same.length < 2) return;
  const others: Definition[] = [];
  for (const one of same) {
    if (others.length === mostPlaces) break;
    if (one.block !== block) others.push(one);
  }
  yield {
    ...headerPlace(block, 0),
    message: message('same-name-twice.folder', { name: own.name.text, count: same.length }),
    related: (others.length > 0 ? others : same).slice(0, mostPlaces).map((definition) => ({
      definition,
      message: message('same-name-twice.other'),
    })),
  };
}
