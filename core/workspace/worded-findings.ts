import type { Finding, Fix, Related } from '../rules/engine/finding.ts';
import type { Message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';

/** A finding in its file that is not in words yet. */
export interface PlacedFinding extends Omit<Finding, 'message' | 'related' | 'fixes'> {
  readonly message: Message;
  readonly related: readonly PlacedRelated[];
  readonly fixes: readonly (Omit<Fix, 'title'> & { readonly title: Message })[];
}

export type PlacedRelated = Omit<Related, 'message'> & { readonly message: Message };

// The same finding is the same object again as long as the same speaker words it, so that a keystroke in one formula
// costs nothing for the findings of the others.
const kept = new WeakMap<Speaker, WeakMap<PlacedFinding, Finding>>();

/** Findings in the words of a speaker. */
export function wordedFindings(placed: readonly PlacedFinding[], speaker: Speaker): Finding[] {
  const known = kept.get(speaker) ?? new WeakMap<PlacedFinding, Finding>();
  kept.set(speaker, known);
  return placed.map((one) => {
    const made = known.get(one) ?? inWords(one, speaker);
    known.set(one, made);
    return made;
  });
}

function inWords(one: PlacedFinding, speaker: Speaker): Finding {
  const say = (said: Message): string => (typeof said === 'string' ? said : speaker.say(said));
  return {
    ...one,
    message: say(one.message),
    related: one.related.map((related) => ({ ...related, message: say(related.message) })),
    fixes: one.fixes.map((fix) => ({ ...fix, title: say(fix.title) })),
  };
}
