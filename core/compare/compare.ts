import type { FormulaTotals } from '../features/totals.ts';
import type {
  Change,
  ChangeGroup,
  Comparison,
  DefinitionComparison,
  FormulaComparison,
  PlaceInFile,
  Verdict,
} from './comparison.ts';
import { computedChanges } from './computed.ts';
import { groupsOf } from './formula.ts';
import { changesInAnyOrder, changesInOrder } from './lines.ts';
import { type Paired, pair } from './pairs.ts';
import {
  type DefinitionPortrait,
  type FilePortrait,
  type FormulaPortrait,
  isUnfinishedMerge,
} from './portrait.ts';

/**
 * What changed between two states of some files, as a baker sees it. Formulas are matched by name, across files too, and
 * a renamed one by its lines. Pure: portraits in, plain data out.
 */
export function comparePortraits(
  before: readonly FilePortrait[],
  after: readonly FilePortrait[],
): Comparison {
  const formulas = pair(all(before, 'formulas'), all(after, 'formulas'), true)
    .map(compareFormula)
    .filter((one) => one !== undefined);
  const definitions = pair(all(before, 'definitions'), all(after, 'definitions'), false)
    .map(compareDefinition)
    .filter((one) => one !== undefined);
  const loose = changesInOrder(
    before.flatMap((file) => file.loose),
    after.flatMap((file) => file.loose),
  );
  const verdicts = [...formulas, ...definitions].map(({ verdict }) => verdict);
  if (loose.length > 0) verdicts.push('wording');
  return { verdict: heaviest(verdicts), formulas, definitions };
}

/** From light to heavy. */
const weights: readonly Verdict[] = ['same', 'layout', 'wording', 'changed'];

export function heaviest(verdicts: readonly Verdict[]): Verdict {
  return weights[Math.max(0, ...verdicts.map((verdict) => weights.indexOf(verdict)))]!;
}

function all<K extends 'formulas' | 'definitions'>(
  files: readonly FilePortrait[],
  what: K,
): FilePortrait[K][number][] {
  return files.flatMap((file): readonly FilePortrait[K][number][] => file[what]);
}

function compareFormula([before, after]: Paired<FormulaPortrait>): FormulaComparison | undefined {
  if (before === undefined || after === undefined) {
    const one = (after ?? before)!;
    return {
      formula: one.totals.formula,
      fate: after === undefined ? 'removed' : 'added',
      verdict: 'changed',
      ...places(before, after),
      groups: wholeOf(one.totals, after === undefined ? 'before' : 'after'),
    };
  }
  const groups = unfinishedGroups(before, after) ?? groupsOf(before, after);
  const renamed = before.folded !== after.folded;
  const moved = before.file !== after.file;
  const said = groups.some(({ subject, title }) => subject !== 'wording' || title === 'merge');
  const verdict: Verdict = said || renamed ? 'changed' : groups.length > 0 ? 'wording' : looks(before, after);
  if (verdict === 'same' && !moved) return undefined;
  return {
    formula: after.totals.formula,
    fate: 'kept',
    verdict: verdict === 'same' ? 'layout' : verdict,
    ...(renamed ? { renamedFrom: before.totals.formula } : {}),
    ...(moved ? { movedFrom: before.file } : {}),
    ...(said && before.keys.join('\n') === after.keys.join('\n') ? { follows: true } : {}),
    ...places(before, after),
    groups,
  };
}

/** Of a merge that is not finished nothing is added up: the lines of both sides stand in it. */
function unfinishedGroups(before: FormulaPortrait, after: FormulaPortrait): ChangeGroup[] | undefined {
  const [one, other] = [before, after].map(({ source }) => isUnfinishedMerge(source));
  if (!one && !other) return undefined;
  if (before.source === after.source) return [];
  const told = (isOpen: boolean | undefined) => ({
    text: isOpen ? 'not finished; mend its marked lines, nothing is added up until then' : 'finished',
  });
  return [
    {
      subject: 'wording',
      title: 'merge',
      changes: [{ name: 'merge', before: told(one), after: told(other) }],
    },
  ];
}

function compareDefinition([before, after]: Paired<DefinitionPortrait>): DefinitionComparison | undefined {
  const one = (after ?? before)!;
  const linesOf = (side: DefinitionPortrait | undefined) =>
    side?.sections.flatMap(({ lines }) => lines) ?? [];
  const changes = [
    ...changesInAnyOrder(linesOf(before), linesOf(after)),
    ...(before === undefined || after === undefined ? [] : timeChanges(before.times, after.times)),
  ];
  const moved = before !== undefined && after !== undefined && before.file !== after.file;
  const fate = before === undefined ? 'added' : after === undefined ? 'removed' : 'kept';
  const verdict: Verdict =
    fate !== 'kept' || changes.length > 0 ? 'changed' : moved ? 'layout' : looks(before!, after!);
  if (verdict === 'same') return undefined;
  return {
    kind: one.kind,
    name: one.name,
    fate,
    verdict,
    ...(moved ? { movedFrom: before.file } : {}),
    ...places(before, after),
    changes,
  };
}

/** What a plan comes to otherwise, be it that the plan changed or a formula of it. */
function timeChanges(
  before: DefinitionPortrait['times'] = [],
  after: DefinitionPortrait['times'] = [],
): Change[] {
  const old = new Map(before);
  return after.flatMap(([name, words]) => {
    const was = old.get(name);
    return was === undefined || was === words
      ? []
      : [{ name, before: { text: was }, after: { text: words } }];
  });
}

/** How two look that say the same: alike, laid out anew, or with other words or another order. */
function looks(
  before: FormulaPortrait | DefinitionPortrait,
  after: FormulaPortrait | DefinitionPortrait,
): Verdict {
  if (before.source === after.source) return 'same';
  return before.keys.join('\n') === after.keys.join('\n') ? 'layout' : 'wording';
}

function places(
  before: { file: string; line: number } | undefined,
  after: { file: string; line: number } | undefined,
): { before?: PlaceInFile; after?: PlaceInFile } {
  const place = ({ file, line }: PlaceInFile): PlaceInFile => ({ file, line });
  return {
    ...(before === undefined ? {} : { before: place(before) }),
    ...(after === undefined ? {} : { after: place(after) }),
  };
}

/** A formula that has no other side: what it makes and what is in it. */
function wholeOf(totals: FormulaTotals, side: 'before' | 'after'): ChangeGroup[] {
  const nothing: FormulaTotals = {
    file: '',
    formula: '',
    overall: [],
    parts: [],
    findings: [],
    resolved: false,
  };
  const { label, makes, dough, ingredients } = computedChanges(nothing, totals);
  const only = (changes: readonly Change[]): Change[] =>
    changes.flatMap(({ name, after }) =>
      after === undefined || after.fraction === 0 ? [] : [{ name, [side]: after }],
    );
  const groups: ChangeGroup[] = [
    { subject: 'label', title: 'label', changes: only(label) },
    { subject: 'makes', title: 'makes', changes: only(makes) },
    { subject: 'dough', title: 'dough', changes: only(dough) },
    { subject: 'ingredients', title: 'ingredients', changes: only(ingredients) },
  ];
  return groups.filter(({ changes }) => changes.length > 0);
}
