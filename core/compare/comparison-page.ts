import { message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';
import type {
  Change,
  ChangeGroup,
  Comparison,
  DefinitionComparison,
  Fate,
  FormulaComparison,
  PlaceInFile,
  Subject,
} from './comparison.ts';

/** A comparison in words, for a terminal, a review or an editor to lay out. */
export interface ComparisonPage {
  readonly title: string;
  /** What it comes to, in a sentence. */
  readonly verdict: string;
  readonly heads: {
    readonly what: string;
    readonly before: string;
    readonly after: string;
    readonly by: string;
  };
  /** What stands for a value that is new, or is removed. */
  readonly absent: { readonly before: string; readonly after: string };
  readonly definitions: readonly ComparedBlock[];
  /** Those last of which nothing is written differently. */
  readonly formulas: readonly ComparedBlock[];
  /** Where several formulas changed without being written differently: what changed in which of them. */
  readonly following?: Following;
}

/** A formula or a definition that differs. */
export interface ComparedBlock {
  /** By its name; a definition behind the word of its section. */
  readonly name: string;
  readonly remarks: readonly Remark[];
  /** Where it stands, or stood where it is removed. */
  readonly place: PlaceInFile;
  /** `harbour-tin.dough, line 3`. */
  readonly placeWords: string;
  /** Its line now, counted from zero; absent where it is removed. */
  readonly line?: number;
  readonly groups: readonly ChangeGroup[];
}

/** What is to be said of a block beside its name; `fate` where it says that the block is new or removed. */
export interface Remark {
  readonly text: string;
  readonly fate?: Fate;
}

export interface Following {
  readonly title: string;
  readonly rows: readonly { readonly what: string; readonly formulas: string }[];
}

/** So many formulas that changed without being written differently are summed up before they are shown one by one. */
const worthASummary = 2;

/** More formulas than these are counted and not named in a summary; each has its own lines below it. */
const mostNamed = 12;

/** The words around a comparison. Its changes are in words already, by whoever compared. */
export function comparisonPage(comparison: Comparison, speaker: Speaker): ComparisonPage {
  const { formulas, definitions } = comparison;
  const { say } = speaker;
  const following = formulas.filter(({ follows }) => follows);
  return {
    title: say(message('comparison-page.title')),
    verdict: say(verdictOf(comparison)),
    heads: {
      what: say(message('comparison-page.what')),
      before: say(message('comparison-page.before')),
      after: say(message('comparison-page.after')),
      by: say(message('comparison-page.by')),
    },
    absent: {
      before: say(message('comparison-page.not-there')),
      after: say(message('comparison-page.removed')),
    },
    definitions: definitions.map((one) => {
      const title = say(message('comparison-page.line'));
      const groups: ChangeGroup[] =
        one.changes.length === 0 ? [] : [{ subject: 'wording', title, changes: one.changes }];
      return blockOf(`${one.kind} ${one.name}`, one, groups, speaker);
    }),
    formulas: [...formulas.filter(({ follows }) => !follows), ...following].map((one) =>
      blockOf(one.formula, one, one.groups, speaker),
    ),
    ...(following.length < worthASummary
      ? {}
      : { following: followingOf(following, definitions.length, speaker) }),
  };
}

/** How a finding differs, the words beside it: it is new, it stands at another level, or it is found no longer. */
export function findingChange(
  { before, after }: Change,
  speaker: Speaker,
): { readonly word: string; readonly text: string; readonly isWorse: boolean } {
  const { say } = speaker;
  if (after === undefined)
    return {
      word: say(message('comparison-page.finding-no-longer')),
      text: before!.text,
      isWorse: false,
    };
  if (before === undefined)
    return { word: say(message('comparison-page.finding-new')), text: after.text, isWorse: true };
  if (after.accepted) return { word: after.text, text: before.text, isWorse: false };
  const facts = { sentence: after.text, title: levelOf(before.level) };
  return {
    word: say(message('comparison-page.finding-now')),
    text: say(message('comparison-page.finding-was', facts)),
    isWorse: true,
  };
}

function levelOf(level: string | undefined) {
  switch (level) {
    case 'error':
    case 'warning':
    case 'hint':
      return message(`command-check.${level}`);
    default:
      return message('command-check.information');
  }
}

function verdictOf({ verdict, formulas, definitions }: Comparison) {
  if (verdict !== 'same' && formulas.length === 0 && definitions.length === 0)
    return message('comparison-page.outside');
  return message(`comparison-page.${verdict}`);
}

function blockOf(
  name: string,
  one: FormulaComparison | DefinitionComparison,
  groups: readonly ChangeGroup[],
  { say }: Speaker,
): ComparedBlock {
  const { fate, verdict, movedFrom, renamedFrom, before, after } = one;
  const remarks: Remark[] = [];
  if (fate === 'added') remarks.push({ text: say(message('comparison-page.new')), fate });
  if (fate === 'removed') remarks.push({ text: say(message('comparison-page.removed')), fate });
  if (renamedFrom !== undefined)
    remarks.push({ text: say(message('comparison-page.renamed', { name: renamedFrom })) });
  if ('namedIn' in one && one.namedIn !== undefined) {
    const { formulas, ingredientLists } = one.namedIn;
    if (formulas > 0) remarks.push({ text: say(message('comparison-page.named-in', { count: formulas })) });
    if (ingredientLists > 0)
      remarks.push({ text: say(message('comparison-page.named-on', { count: ingredientLists })) });
  }
  if (movedFrom !== undefined)
    remarks.push({ text: say(message('comparison-page.moved', { file: movedFrom })) });
  if (verdict === 'layout') remarks.push({ text: say(message('comparison-page.only-layout')) });
  if (verdict === 'wording')
    remarks.push({
      text: say(message(groups.length > 0 ? 'comparison-page.same-figures' : 'comparison-page.other-order')),
    });
  const place = (after ?? before)!;
  return {
    name,
    remarks,
    place,
    placeWords: say(message('comparison-page.place', { file: place.file, number: place.line + 1 })),
    ...(after === undefined ? {} : { line: after.line }),
    groups,
  };
}

/** What a cause did to formulas that nobody touched: first whose label changed, for that is told to eaters. */
function followingOf(following: readonly FormulaComparison[], causes: number, speaker: Speaker): Following {
  const count = following.length;
  const bySubject = new Map<Subject, string[]>();
  for (const { formula, groups } of following)
    for (const subject of new Set(groups.map((one) => one.subject)))
      bySubject.set(subject, [...(bySubject.get(subject) ?? []), formula]);
  const subjects = [...bySubject.keys()];
  const ordered = [
    ...subjects.filter((one) => one === 'label'),
    ...subjects.filter((one) => one !== 'label'),
  ];
  const formulasOf = (names: readonly string[]): string =>
    names.length === count
      ? speaker.say(message('comparison-page.all', { count }))
      : speaker.list(
          names.length <= mostNamed + 1
            ? names
            : [
                ...names.slice(0, mostNamed),
                speaker.say(message('comparison-page.more', { count: names.length - mostNamed })),
              ],
        );
  const cause =
    causes === 0
      ? message('comparison-page.follow', { count })
      : message(causes === 1 ? 'comparison-page.follow-change' : 'comparison-page.follow-changes', { count });
  return {
    title: speaker.say(cause),
    rows: [
      ...[...allergensOf(following, speaker)].map(([what, names]) => ({ what, formulas: formulasOf(names) })),
      ...ordered.map((subject) => ({
        what: speaker.say(
          subject === 'part' ? message('comparison-page.parts') : message(`comparison-title.${subject}`),
        ),
        formulas: formulasOf(bySubject.get(subject)!),
      })),
    ],
  };
}

/** The allergens come and gone, `allergen + barley`, each with the formulas of whose labels that is so. */
function allergensOf(following: readonly FormulaComparison[], speaker: Speaker): Map<string, string[]> {
  const name = speaker.say(message('comparison-name.allergen'));
  const found = new Map<string, string[]>();
  for (const { formula, groups } of following)
    for (const { subject, changes } of groups)
      for (const change of subject === 'label' ? changes : []) {
        const { before, after } = change;
        if (change.name !== name || (before !== undefined && after !== undefined)) continue;
        const what = after === undefined ? `${name} − ${before?.text ?? ''}` : `${name} + ${after.text}`;
        found.set(what, [...(found.get(what) ?? []), formula]);
      }
  return found;
}
