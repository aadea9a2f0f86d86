import { allergenOf } from '../calc/allergens.ts';
import type { LabelEntry } from '../calc/label.ts';
import type { TotalsLabel } from '../features/totals-product.ts';
import type { Change, Told } from './comparison.ts';

/**
 * What of the draft of a label changed: each allergen come or gone, whatever else changed; ingredients of which nobody says
 * whether they have any; the order of the ingredient list; and what the law calls the product.
 */
export function labelChanges(before: TotalsLabel | undefined, after: TotalsLabel | undefined): Change[] {
  if (before === undefined && after === undefined) return [];
  const known = before !== undefined && after !== undefined;
  const lists = comeAndGone(
    'allergen',
    before?.allergens.words ?? [],
    after?.allergens.words ?? [],
    tellAllergen,
  );
  return [
    // A label that is not known any more says nothing of what is still in the dough.
    ...(before !== undefined && after === undefined
      ? [{ name: 'allergens', before: tellWords(before.allergens.words), after: { text: 'not known' } }]
      : lists),
    ...comeAndGone(
      'nobody says the allergens of',
      before?.allergens.notSaid ?? [],
      after?.allergens.notSaid ?? [],
      (text) => ({ text }),
    ),
    ...(known ? changeOfWords('ingredient list', listOf(before), listOf(after)) : []),
    ...(known ? changeOfWords('sold as', before.kind, after.kind) : []),
    ...(known && after.regime === 'US'
      ? changeOfWords('enough solids for 21 CFR 136.110', solids(before), solids(after))
      : []),
    ...(known ? changeOfWords('manner of the label', before.regime, after.regime) : []),
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
function tellAllergen(word: string): Told {
  const allergen = allergenOf(word);
  const entries = [
    ...(allergen?.eu === undefined ? [] : [`EU: ${allergen.eu}`]),
    ...(allergen?.us === undefined ? [] : [`US: ${allergen.us}`]),
  ];
  return { text: word, beside: entries.length === 0 ? 'on neither list' : entries.join('; ') };
}

function tellWords(words: readonly string[]): Told {
  return { text: words.length === 0 ? 'none' : words.join(', ') };
}

/** The names in their order; their weights are told elsewhere. */
function listOf({ ingredients }: TotalsLabel): string {
  const names = (entries: readonly LabelEntry[]): string =>
    entries
      .map(({ text, parts }) => {
        const name = text.map((one) => (one.allergen ? one.text.toUpperCase() : one.text)).join('');
        return parts === undefined ? name : `${name} (${names(parts)})`;
      })
      .join(', ');
  return names(ingredients);
}

function solids({ meetsSolids }: TotalsLabel): string | undefined {
  return meetsSolids === undefined ? undefined : meetsSolids ? 'yes' : 'no';
}

function changeOfWords(name: string, before: string | undefined, after: string | undefined): Change[] {
  if (before === after) return [];
  return [{ name, before: { text: before ?? 'not known' }, after: { text: after ?? 'not known' } }];
}
