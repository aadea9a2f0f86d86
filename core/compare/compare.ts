import type { PlanTimes } from '../facts/plan-times.ts';
import { timeMessage } from '../facts/time-words.ts';
import type { FormulaTotals } from '../facts/totals.ts';
import { type Message, message } from '../words/message.ts';
import { plainSpeaker } from '../words/speak.ts';
import type { Speaker } from '../words/speaker.ts';
import { changesInAnyOrder, changesInOrder } from './compared-lines.ts';
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
import {
  type DefinitionSummary,
  type FileSummary,
  type FormulaSummary,
  isUnfinishedMerge,
} from './file-summary.ts';
import { worthTelling } from './finding-changes.ts';
import { groupsOf } from './formula-changes.ts';
import { type Paired, pair } from './pairs.ts';
import { heldAgainst, namedAnew } from './renames.ts';
import { changeOfWords } from './tell.ts';

/**
 * What changed between two states of some files, as a baker sees it. Formulas are matched by name, across files too, and
 * a renamed one by its lines. Pure: summaries in, plain data out, its words as `say` says them. `isPart` where more files are
 * compared than these, so that one formula on either side need not be the same one.
 */
export function compareSummaries(
  before: readonly FileSummary[],
  after: readonly FileSummary[],
  say: Speaker = plainSpeaker,
  isPart = false,
): Comparison {
  const pairs = pair(all(before, 'formulas'), all(after, 'formulas'), isPart ? 'alike' : 'one').map(
    ([was, is]): Paired<FormulaSummary> => [heldAgainst(was, is), is],
  );
  const named = pairs.flatMap(([was, is]) =>
    was === undefined || is === undefined
      ? []
      : namedAnew(was).filter(({ inFormula, onLabel }) => inFormula || onLabel),
  );
  const formulas = pairs.map((one) => compareFormula(one, say)).filter((one) => one !== undefined);
  const definitions = pair(all(before, 'definitions'), all(after, 'definitions'), 'same')
    .map(([was, is]) => compareDefinition([heldAgainst(was, is), is], say))
    .filter((one) => one !== undefined);
  const loose = changesInOrder(
    before.flatMap((file) => file.loose),
    after.flatMap((file) => file.loose),
    say,
  );
  return {
    verdict: heaviest([
      ...formulas,
      ...definitions,
      ...(loose.length > 0 ? [{ verdict: 'wording' as const }] : []),
    ]),
    formulas,
    definitions,
    ...(named.length === 0 ? {} : { named }),
  };
}

/** A comparison in which each new name is told with how many formulas and lists of ingredients it stands in. */
export function withNamesCounted({ named = [], ...comparison }: Comparison): Comparison {
  const counted = (one: DefinitionComparison): DefinitionComparison => {
    const uses = named.filter(
      ({ renaming: { kind, from } }) => kind === one.kind && from === one.renamedFrom,
    );
    if (uses.length === 0) return one;
    const formulas = uses.filter(({ inFormula }) => inFormula).length;
    const ingredientLists = uses.filter(({ onLabel }) => onLabel).length;
    return { ...one, namedIn: { formulas, ingredientLists } };
  };
  return { ...comparison, definitions: comparison.definitions.map(counted) };
}

/** From light to heavy. */
const weights: readonly Verdict[] = ['same', 'layout', 'wording', 'changed'];

/** The heaviest verdict of several; what is the same and stands in another file is laid out anew. */
export function heaviest(
  some: readonly { readonly verdict: Verdict; readonly movedFrom?: string }[],
): Verdict {
  const all = some.map(({ verdict, movedFrom }) =>
    weights.indexOf(verdict === 'same' && movedFrom !== undefined ? 'layout' : verdict),
  );
  return weights[Math.max(0, ...all)]!;
}

function all<K extends 'formulas' | 'definitions'>(
  files: readonly FileSummary[],
  what: K,
): FileSummary[K][number][] {
  return files.flatMap((file): readonly FileSummary[K][number][] => file[what]);
}

function compareFormula(
  [before, after]: Paired<FormulaSummary>,
  say: Speaker,
): FormulaComparison | undefined {
  if (before === undefined || after === undefined) {
    const one = (after ?? before)!;
    return {
      formula: one.totals.formula,
      fate: after === undefined ? 'removed' : 'added',
      verdict: 'changed',
      ...places(before, after),
      groups: wholeOf(one.totals, after === undefined ? 'before' : 'after', say),
    };
  }
  const groups = unfinishedGroups(before, after, say) ?? groupsOf(before, after, say);
  const renamed = before.folded !== after.folded;
  const moved = before.file !== after.file;
  const said = groups.some(({ subject }) => subject !== 'wording');
  const verdict: Verdict = said || renamed ? 'changed' : groups.length > 0 ? 'wording' : looks(before, after);
  if (verdict === 'same' && !moved) return undefined;
  return {
    formula: after.totals.formula,
    fate: 'kept',
    verdict,
    ...(renamed ? { renamedFrom: before.totals.formula } : {}),
    ...(moved ? { movedFrom: before.file } : {}),
    ...(said && before.keys.join('\n') === after.keys.join('\n') ? { follows: true } : {}),
    ...places(before, after),
    groups,
  };
}

/** Of a merge that is not finished nothing is added up: the lines of both sides stand in it. */
function unfinishedGroups(
  before: FormulaSummary,
  after: FormulaSummary,
  say: Speaker,
): ChangeGroup[] | undefined {
  const [one, other] = [before, after].map(({ source }) => isUnfinishedMerge(source));
  if (!one && !other) return undefined;
  if (before.source === after.source) return [];
  const told = (isOpen: boolean | undefined) => ({
    text: say.say(message(isOpen ? 'comparison.unfinished' : 'comparison.finished')),
  });
  return [
    {
      subject: 'merge',
      title: say.say(message('comparison-title.merge')),
      changes: [{ name: say.say(message('comparison-name.merge')), before: told(one), after: told(other) }],
    },
  ];
}

function compareDefinition(
  [before, after]: Paired<DefinitionSummary>,
  say: Speaker,
): DefinitionComparison | undefined {
  const one = (after ?? before)!;
  const linesOf = (side: DefinitionSummary | undefined) => side?.sections.flatMap(({ lines }) => lines) ?? [];
  const changes = [
    ...changesInAnyOrder(linesOf(before), linesOf(after), say),
    ...(before === undefined || after === undefined ? [] : timeChanges(before.times, after.times, say)),
  ];
  const isKept = before !== undefined && after !== undefined;
  const moved = isKept && before.file !== after.file;
  const renamed = isKept && before.folded !== after.folded;
  const fate = before === undefined ? 'added' : after === undefined ? 'removed' : 'kept';
  const verdict: Verdict =
    fate !== 'kept' || changes.length > 0 || renamed ? 'changed' : looks(before!, after!);
  if (verdict === 'same' && !moved) return undefined;
  return {
    kind: one.kind,
    name: one.name,
    fate,
    verdict,
    ...(renamed ? { renamedFrom: before.name } : {}),
    ...(moved ? { movedFrom: before.file } : {}),
    ...places(before, after),
    changes,
  };
}

/** What a plan comes to otherwise, be it that the plan changed or a formula of it. */
function timeChanges(before: PlanTimes | undefined, after: PlanTimes | undefined, say: Speaker): Change[] {
  if (before === undefined || after === undefined) return [];
  const time = (key: 'ready' | 'firstWork' | 'firstMix', { dated, ...times }: PlanTimes) => {
    const minutes = times[`${key}Minutes`];
    return minutes === undefined ? undefined : say.say(timeMessage(minutes, dated));
  };
  const late = ({ lateMinutes }: PlanTimes): string =>
    lateMinutes === undefined ? say.say(message('comparison.no')) : say.duration(lateMinutes * 60);
  return [
    ...changeOfWords(message('comparison-name.ready'), time('ready', before), time('ready', after), say),
    ...changeOfWords(
      message('comparison-name.first-work'),
      time('firstWork', before),
      time('firstWork', after),
      say,
    ),
    ...changeOfWords(
      message('comparison-name.first-mixing'),
      time('firstMix', before),
      time('firstMix', after),
      say,
    ),
    ...changeOfWords(message('comparison-name.late'), late(before), late(after), say),
  ];
}

/** How two look that say the same: alike, laid out anew, or with other words or another order. */
function looks(
  before: FormulaSummary | DefinitionSummary,
  after: FormulaSummary | DefinitionSummary,
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
function wholeOf(totals: FormulaTotals<Message>, side: 'before' | 'after', say: Speaker): ChangeGroup[] {
  const nothing: FormulaTotals<Message> = {
    file: '',
    formula: '',
    overall: [],
    parts: [],
    findings: [],
    resolved: false,
  };
  const { label, makes, dough, ingredients } = computedChanges(nothing, totals, say);
  const found = side === 'before' ? [] : worthTelling(totals, say);
  const only = (changes: readonly Change[]): Change[] =>
    changes.flatMap(({ name, after }) =>
      after === undefined || after.fraction === 0 ? [] : [{ name, [side]: after }],
    );
  const groups: ChangeGroup[] = [
    { subject: 'label', title: say.say(message('comparison-title.label')), changes: only(label) },
    { subject: 'makes', title: say.say(message('comparison-title.makes')), changes: only(makes) },
    { subject: 'dough', title: say.say(message('comparison-title.dough')), changes: only(dough) },
    {
      subject: 'ingredients',
      title: say.say(message('comparison-title.ingredients')),
      changes: only(ingredients),
    },
    { subject: 'findings', title: say.say(message('comparison-title.findings')), changes: found },
  ];
  return groups.filter(({ changes }) => changes.length > 0);
}
