import { allergenOf } from '../calc/product/allergens.ts';
import type { LabelEntry } from '../calc/product/label.ts';
import { allergenName, entryMessage } from '../facts/allergen-words.ts';
import type { TotalsLabel } from '../facts/totals-product.ts';
import { type Message, message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';
import type { Change, Told } from './comparison.ts';
import { changeOfWords, notKnown } from './tell.ts';

/**
 * What of the draft of a label changed: each allergen come or gone, whatever else changed; ingredients of which it is not
 * stated whether they have any; the order of the ingredient list; and what the law calls the product.
 */
export function labelChanges(
  before: TotalsLabel<Message> | undefined,
  after: TotalsLabel<Message> | undefined,
  say: Speaker,
): Change[] {
  if (before === undefined && after === undefined) return [];
  const known = before !== undefined && after !== undefined;
  const words = (name: Message, one: string | undefined, other: string | undefined): Change[] =>
    changeOfWords(name, one, other, say);
  const lists = comeAndGone(
    say.say(message('comparison-name.allergen')),
    before?.allergens.words ?? [],
    after?.allergens.words ?? [],
    (word) => tellAllergen(word, say),
  );
  return [
    // A label that is not known any more says nothing of what is still in the dough.
    ...(before !== undefined && after === undefined
      ? [
          {
            name: say.say(message('comparison-name.allergens')),
            before: tellWords(before.allergens.words, say),
            after: notKnown(say),
          },
        ]
      : lists),
    ...comeAndGone(
      say.say(message('comparison-name.allergens-not-stated')),
      before?.allergens.notSaid ?? [],
      after?.allergens.notSaid ?? [],
      (text) => ({ text }),
    ),
    ...(known ? words(message('comparison-name.ingredient-list'), listOf(before), listOf(after)) : []),
    ...(known ? words(message('comparison-name.sold-as'), soldAs(before, say), soldAs(after, say)) : []),
    ...(known && after.regime === 'US'
      ? words(message('comparison-name.solids'), solids(before, say), solids(after, say))
      : []),
    ...(known ? words(message('comparison-name.regime'), before.regime, after.regime) : []),
  ];
}

function comeAndGone(
  name: string,
  before: readonly string[],
  after: readonly string[],
  tell: (word: string) => Told,
): Change[] {
  return [
    ...after.filter((word) => !before.includes(word)).map((word): Change => ({ name, after: tell(word) })),
    ...before.filter((word) => !after.includes(word)).map((word): Change => ({ name, before: tell(word) })),
  ];
}

/** An allergen with the entries of the lists that it falls under. */
function tellAllergen(word: string, say: Speaker): Told {
  const allergen = allergenOf(word);
  const { eu } = allergen ?? {};
  const entry = eu === undefined ? undefined : say.say(entryMessage(eu));
  return { text: allergenName(word, say), beside: say.say(listsOf(entry, allergen?.us)) };
}

function listsOf(eu: string | undefined, us: string | undefined): Message {
  if (eu !== undefined && us !== undefined)
    return message('comparison.on-both-lists', { name: eu, otherName: us });
  if (eu !== undefined) return message('comparison.on-list-eu', { name: eu });
  return us === undefined
    ? message('comparison.on-neither-list')
    : message('comparison.on-list-us', { name: us });
}

function tellWords(words: readonly string[], say: Speaker): Told {
  const names = words.map((word) => allergenName(word, say));
  return { text: names.length === 0 ? say.say(message('comparison.none')) : names.join(', ') };
}

/** The names in their order; their weights are told elsewhere. */
export function listOf({ ingredients }: TotalsLabel<Message>): string {
  const names = (entries: readonly LabelEntry[]): string =>
    entries
      .map(({ text, parts }) => {
        const name = text.map((one) => (one.allergen ? one.text.toUpperCase() : one.text)).join('');
        return parts === undefined ? name : `${name} (${names(parts)})`;
      })
      .join(', ');
  return names(ingredients);
}

function solids({ meetsSolids }: TotalsLabel<Message>, say: Speaker): string | undefined {
  if (meetsSolids === undefined) return undefined;
  return say.say(message(meetsSolids ? 'comparison.yes' : 'comparison.no'));
}

function soldAs({ kind }: TotalsLabel<Message>, say: Speaker): string | undefined {
  if (kind === undefined) return undefined;
  return say.say(message(kind === 'bread' ? 'label-us.kind-bread' : 'label-us.kind-roll'));
}
