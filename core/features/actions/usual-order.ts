import type { Role } from '../../calc/formula/role.ts';
import { message } from '../../words/message.ts';
import type { Action } from './action.ts';
import { orderOffer } from './line-order.ts';

/** Common practice, no source: how the lines of a formula card follow each other. */
const order: readonly Role[] = [
  'flour',
  'water',
  'dairy',
  'egg',
  'salt',
  'yeast',
  'sugar',
  'fat',
  'seeds',
  'other',
];

export const usualOrder: Action = {
  id: 'usual-order',
  kind: 'sort',
  name: 'Put in the usual order',
  explanation:
    'Puts the ingredient lines of the section at the cursor, or those selected, as formula cards have them: flours, water, milk and ' +
    'eggs, salt, yeast, sugar, fat, seeds, the rest, and preferments last. Lines of one kind keep their order. Groups and ' +
    'comments are kept as when sorting by weight.',
  example:
    'formula Quay Tin:\n  ‸salt               2%\n  water              65%\n  bread flour        100%\n  fresh yeast        1%\n',
  *offers(context) {
    yield* orderOffer(context, message('usual-order.sort'), ({ solved }) =>
      solved === undefined || solved.part ? order.length : order.indexOf(solved.role),
    );
  },
};
