import { acceptFinding } from './accept-finding.ts';
import type { Action } from './action.ts';
import { fixAllOfRule, fixAllPreferred } from './fix-all.ts';
import { sortByWeight } from './sort-by-weight.ts';
import { usualOrder } from './usual-order.ts';

/** Every action, in the order in which an editor lists those of one kind. */
export const actions: readonly Action[] = [
  sortByWeight,
  usualOrder,
  acceptFinding,
  fixAllOfRule,
  fixAllPreferred,
];

export const actionsById: ReadonlyMap<string, Action> = new Map(actions.map((one) => [one.id, one]));
