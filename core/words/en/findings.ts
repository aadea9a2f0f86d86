import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** What is shown of findings themselves. */
export const findings = {
  'more-findings.more': ({ count }: Args<'count'>, say: Speaker) =>
    `${say.count(count, { one: '# more finding is', other: '# more findings are' })} not shown. Fix some of those above first.`,
};
