import { message } from '../../words/message.ts';
import type { Action } from './action.ts';
import { orderOffer } from './line-order.ts';

export const sortByWeight: Action = {
  id: 'sort-by-weight',
  kind: 'sort',
  name: 'Sort by weight',
  explanation:
    'Puts the ingredient lines of the section at the cursor, or those selected, in falling order of their weight. A line takes its ' +
    'comments along, those right above it too; lines parted by a blank line or a property stay in their own group, and lines ' +
    'whose weight is not known stay where they are among themselves, at the end of their group.',
  example:
    'formula Quay Tin:\n  salt               2%\n  ‸water              65%\n  bread flour        100%\n  fresh yeast        1%\n',
  *offers(context) {
    yield* orderOffer(
      context,
      message('sort-by-weight.sort'),
      ({ solved }) => -(solved?.grams ?? Number.NEGATIVE_INFINITY),
    );
  },
};
