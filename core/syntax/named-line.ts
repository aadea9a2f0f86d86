import { message } from '../words/message.ts';
import { problem } from './problem.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import type { Amount, IngredientStatement, LineRead, Name, PlannedStatement, Unread } from './tree.ts';

/** A line that names something and says how much of it: of a formula, or of a plan. */
export type NamedKind = 'ingredient' | 'planned';

export interface Options {
  readonly celsius?: number;
  readonly readyMinutes?: number;
  readonly problems: readonly SyntaxProblem[];
}

/** The statement of a line that names something and says how much of it. */
export function statementOf(
  kind: NamedKind,
  name: Name,
  amount: Amount,
  options: Options = { problems: [] },
): IngredientStatement | PlannedStatement {
  if (kind === 'planned') {
    return {
      kind,
      name,
      amount,
      ...(options.readyMinutes === undefined ? {} : { readyMinutes: options.readyMinutes }),
    };
  }
  return { kind, name, amount, ...(options.celsius === undefined ? {} : { celsius: options.celsius }) };
}

/** What a line reads as that says an amount and no name. */
export function nameless(start: number, end: number, kind: NamedKind): LineRead {
  return {
    statement: { kind: 'unreadable' },
    problems: [problem('missing-name', message(`missing-name.${kind}`), { start, end })],
  };
}

/** An amount that is not known, with its reason, at the column where it would stand. */
export function unknownAmount(reason: Unread, at: number): Amount {
  return { kind: 'unknown', reason, start: at, end: at };
}
