import type { findings as english } from '../en/findings.ts';
import type { Translation } from '../message.ts';

/** Was von Befunden selbst gezeigt wird. */
export const findings: Translation<typeof english> = {
  'more-findings.more': ({ count }, say) =>
    `${say.count(count, { one: '# weiterer Befund wird', other: '# weitere Befunde werden' })} nicht gezeigt. Zuerst einige der obigen beheben.`,
};
