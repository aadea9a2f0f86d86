import { isVariant } from '../../model/variant.ts';
import type { FileEdit } from '../../text/edits.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { Action, ActionContext, ActionKind, OfferedAction } from './action.ts';
import { actions, actionsById } from './action-catalogue.ts';
import { areSound } from './sound-edits.ts';
import { madeWhole } from './variant-border.ts';

/** All that can be done at a place, of the kinds asked for. An action that fails is left out, and the context hears of it. */
export function offersAt(
  context: ActionContext,
  speaker: Speaker,
  only?: readonly ActionKind[],
): OfferedAction[] {
  return actions
    .filter(({ kind }) => only === undefined || only.includes(kind))
    .flatMap((action) =>
      offersOf(action, context).map(({ title, argument, preferred, findings }) => ({
        id: action.id,
        kind: action.kind,
        title: speaker.say(title),
        findings: findings ?? [],
        ...(argument === undefined ? {} : { argument }),
        ...(preferred === undefined ? {} : { preferred }),
      })),
    );
}

/** What an offered action writes; `undefined` when it is not offered here, or cannot be done after all. */
export function editsAt(
  context: ActionContext,
  id: string,
  argument: string | undefined,
): readonly FileEdit[] | undefined {
  const action = actionsById.get(id);
  if (action === undefined) return undefined;
  const offer = offersOf(action, context).find((one) => one.argument === argument);
  const edits = offer?.edits();
  if (offer === undefined || edits === undefined) return undefined;
  return offer.isSound || areSound(context.uri, edits, offer.findings ?? [], context.examine)
    ? edits
    : undefined;
}

/** The context as an action is to see it; `undefined` where it is not for variants, and this is one. */
function seenBy({ variants }: Action, context: ActionContext): ActionContext | undefined {
  if (variants === true || !isVariant(context.block)) return context;
  return variants === 'whole' ? madeWhole(context) : undefined;
}

// A half-typed file may hold what an action did not think of; the others must be offered all the same.
function offersOf(action: Action, context: ActionContext) {
  try {
    const seen = seenBy(action, context);
    return seen === undefined ? [] : [...action.offers(seen)];
  } catch (error) {
    context.failed(`${action.id}: ${error instanceof Error ? error.message : String(error)}`);
    return [];
  }
}
