import type { findings as english } from '../en/findings.ts';
import type { Translation } from '../message.ts';

/** Ce qui est dit des constats eux-mêmes. */
export const findings: Translation<typeof english> = {
  'more-findings.more': ({ count }, say) =>
    `${say.count(count, { one: '# autre constat n’est pas affiché', other: '# autres constats ne sont pas affichés' })}. Corriger d’abord quelques-uns de ceux qui précèdent.`,
};
