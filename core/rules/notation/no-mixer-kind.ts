import { byHand } from '../../model/found-mixer.ts';
import { message } from '../../words/message.ts';
import { lineBelowFix } from '../engine/fixes.ts';
import type { Rule } from '../engine/rule.ts';
import { headerPlace } from '../engine/rule-places.ts';

export const noMixerKind: Rule = {
  code: 'no-mixer-kind',
  level: 'info',
  title: 'The mixer does not say of what kind it is',
  explanation: 'How a mixer warms and develops dough depends on its kind. Without one a spiral is assumed.',
  bad: 'mixer old mixer:\n  bowl 5 kg to 20 kg\n',
  good: 'mixer old mixer:\n  kind fork\n  bowl 5 kg to 20 kg\n',
  *check({ block }) {
    if (block.top?.kind !== 'mixer' || block.top.header.name === undefined) return;
    // The section of the bakery’s hands says it with its name.
    if (block.top.header.name.folded === byHand.name) return;
    if (block.lines.some(({ statement }) => statement.kind === 'property' && statement.property === 'kind'))
      return;
    yield {
      ...headerPlace(block, 0),
      message: message('no-mixer-kind.assumed', { meant: 'spiral', example: 'kind planetary' }),
      fixes: [lineBelowFix(message('fix.write', { meant: 'kind spiral' }), block, 0, '  kind spiral')],
    };
  },
};
