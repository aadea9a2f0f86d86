import { definitionOf } from '../model/scope.ts';
import { holdsIngredients } from '../syntax/vocabulary.ts';
import { message } from '../words/message.ts';
import { headerPlace } from './places.ts';
import type { Rule, RuleContext, RuleFinding } from './rule.ts';

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

function* definedTwice({ block, scope, uri }: RuleContext): Iterable<RuleFinding> {
  const own = definitionOf(uri, 0, block);
  if (own === undefined) return;
  const folder = uri.slice(0, uri.lastIndexOf('/') + 1);
  const same = (scope.find(own.kind, own.name.folded)[0] ?? []).filter(
    (one) => one.uri.slice(0, one.uri.lastIndexOf('/') + 1) === folder,
  );
  if (same.length < 2) return;
  const others = same.filter((one) => one.block !== block);
  yield {
    ...headerPlace(block, 0),
    message: message('same-name-twice.folder', { name: own.name.text, count: same.length }),
    related: (others.length > 0 ? others : same).slice(0, mostPlaces).map((definition) => ({
      definition,
      message: message('same-name-twice.other'),
    })),
  };
}
