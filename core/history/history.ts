import { daysOf } from '../text/dates.ts';
import { firstOf } from '../text/element.ts';
import { foldName } from '../text/names.ts';
import { plainSpeaker } from '../words/speak.ts';
import { figureTable, type HistoryFigure, ingredientFigure, underAllNames } from './figure-table.ts';
import type { FormulaFigures, FormulaMoment, TrialPoint } from './formula-figures.ts';

/** What is said of a revision wherever it is listed. */
export interface RevisionWords {
  /** Empty of what is not committed yet. */
  readonly commit: string;
  /** The text as it stands now, where it is other than in the last commit; at most the last of a list. */
  readonly uncommitted?: true;
  /** The day where it was written: `2026-03-14`. */
  readonly date: string;
  readonly author: string;
  /** The first line of what was said of it. */
  readonly words: string;
}

/** A revision of the files, with the formula as it has it. */
export interface HistoryRevision extends RevisionWords {
  /** Of earlier revisions of the list; those that are not in it are not known. */
  readonly parents: readonly string[];
  /** When it was written, since 1970. */
  readonly seconds: number;
  /** The formula; absent where the revision has none. */
  readonly moment?: FormulaMoment;
  /** How parents have it under the names that this revision gave to ingredients of it, where it gave some. */
  readonly formerly?: readonly FormerNames[];
}

/** The figures of a parent as they would be if ingredients had been called as they are since. */
export interface FormerNames {
  readonly parent: string;
  readonly figures: FormulaFigures;
  readonly namedAnew: readonly NewName[];
}

/** An ingredient that only got another name. */
export interface NewName {
  readonly from: string;
  readonly to: string;
}

/** A figure that a revision changed. `before` and `after` are absent where there was or is none. */
export interface FigureChange {
  /** `hydration`, `salt` …, or `ingredient: NAME`. */
  readonly figure: string;
  readonly before?: FormulaFigures;
  readonly after?: FormulaFigures;
}

/** A revision at which something of the formula became other than in every revision before it. */
export interface HistoryRow extends HistoryRowWords {
  /** When it was written, since 1970. */
  readonly seconds: number;
  /** Of a formula that is new or removed none: all of it is. */
  readonly changes: readonly FigureChange[];
}

/** What is said of such a revision wherever it stands. */
export interface HistoryRowWords extends RevisionWords {
  readonly fate: 'new' | 'kept' | 'removed';
  readonly formula: string;
  readonly file: string;
  readonly renamedFrom?: string;
  readonly movedFrom?: string;
  /** Ingredients that only got another name, which is no change of their shares. */
  readonly namedAnew?: readonly NewName[];
  /** Absent where it was removed. */
  readonly figures?: FormulaFigures;
}

/** A trial in the history, at its own day, or at that of the revision that brought it. */
export interface HistoryTrial extends TrialPoint {
  readonly seconds: number;
  /** The revision whose figures `predictedCelsius` was worked out from; empty where that is the text as it stands now. */
  readonly commit: string;
}

/** The formula at a moment of the main line; `figures` is absent where there was none. */
export interface CoursePoint {
  readonly seconds: number;
  readonly figures?: FormulaFigures;
}

/** What became of the figures of a formula, the oldest first. */
export interface History {
  readonly formula: string;
  readonly file: string;
  readonly rows: readonly HistoryRow[];
  readonly trials: readonly HistoryTrial[];
  /** What held on the main line from when on: each merge at its own time. */
  readonly course: readonly CoursePoint[];
  /** The names that one ingredient had in turn, the last of them last; of those that had several. */
  readonly names: readonly (readonly string[])[];
}

const secondsOfDay = 86_400;

/**
 * The history of a formula out of its revisions, parents before children; the last of them is where it is looked at from. A
 * merge makes a row only where a figure is other than on all of its sides. `wanted` restricts the figures to some.
 */
export function historyOf(
  asTheyStand: readonly HistoryRevision[],
  wanted?: readonly HistoryFigure[],
): History | undefined {
  const revisions = mergesPassedOver(asTheyStand);
  const byCommit = new Map(revisions.map((one) => [one.commit, one]));
  const known = [...revisions].reverse().find(({ moment }) => moment !== undefined)?.moment;
  if (known === undefined) return undefined;
  const names = namesInTurn(revisions);
  const figures = wanted?.map((one) => underAllNames(one, names));
  const rows = revisions.flatMap((revision): HistoryRow[] => {
    const parents = revision.parents.flatMap((commit) => byCommit.get(commit) ?? []);
    const row = rowOf(revision, parents, figures);
    return row === undefined ? [] : [row];
  });
  return {
    formula: known.formula,
    file: known.file,
    rows,
    trials: trialsOf(revisions),
    course: courseOf(revisions, byCommit),
    names,
  };
}

/** The names of ingredients that got others, those of one ingredient together. */
function namesInTurn(revisions: readonly HistoryRevision[]): string[][] {
  const all: string[][] = [];
  const withName = (name: string): string[] | undefined =>
    all.find((names) => names.some((one) => foldName(one) === foldName(name)));
  for (const { formerly = [] } of revisions)
    for (const { from, to } of formerly.flatMap(({ namedAnew }) => namedAnew)) {
      const [old, now] = [withName(from), withName(to)];
      if (old === undefined && now === undefined) all.push([from, to]);
      else if (now === undefined) old?.push(to);
      else if (old === undefined) now.unshift(from);
      else if (old !== now) old.push(...all.splice(all.indexOf(now), 1).flat());
    }
  return all;
}

/** With the figures before it for a state in which a merge was not finished: they hold until somebody decides. */
function mergesPassedOver(revisions: readonly HistoryRevision[]): readonly HistoryRevision[] {
  if (revisions.every(({ moment }) => moment?.unfinishedMerge !== true)) return revisions;
  const byCommit = new Map<string, HistoryRevision>();
  for (const revision of revisions) {
    const { moment, parents, commit } = revision;
    const before = parents.flatMap((parent) => byCommit.get(parent)?.moment ?? [])[0];
    const isPassed = moment?.unfinishedMerge === true && before !== undefined;
    byCommit.set(
      commit,
      isPassed ? { ...revision, moment: { ...moment, figures: before.figures } } : revision,
    );
  }
  return [...byCommit.values()];
}

function rowOf(
  { parents: _, moment, formerly = [], ...about }: HistoryRevision,
  parents: readonly HistoryRevision[],
  wanted: readonly HistoryFigure[] | undefined,
): HistoryRow | undefined {
  const before = parents.flatMap(({ commit, moment: was }) => {
    const figures = formerly.find(({ parent }) => parent === commit)?.figures ?? was?.figures;
    return was === undefined || figures === undefined ? [] : [{ ...was, figures }];
  });
  const first = before[0];
  if (moment === undefined) {
    if (first === undefined || before.length < parents.length) return undefined;
    return { ...about, fate: 'removed', formula: first.formula, file: first.file, changes: [] };
  }
  const { formula, file, figures } = moment;
  if (first === undefined) return { ...about, fate: 'new', formula, file, figures, changes: [] };
  const changes = changesBetween(before, figures, wanted);
  const isRenamed = before.every((one) => foldName(one.formula) !== foldName(formula));
  const isMoved = before.every((one) => one.file !== file);
  const namedAnew = namedAnewBy(formerly, parents).filter(
    ({ to }) =>
      wanted === undefined || wanted.some(({ text }) => text(named(to), plainSpeaker) !== undefined),
  );
  if (changes.length === 0 && !isRenamed && !isMoved && namedAnew.length === 0) return undefined;
  return {
    ...about,
    fate: 'kept',
    ...{ formula, file, figures, changes },
    ...(isRenamed ? { renamedFrom: first.formula } : {}),
    ...(isMoved ? { movedFrom: first.file } : {}),
    ...(namedAnew.length > 0 ? { namedAnew } : {}),
  };
}

/** Figures that know nothing but that there is an ingredient of a name. */
const named = (name: string): FormulaFigures => ({ ingredients: [{ name, fraction: 1 }] });

/** The names that are new to every parent. */
function namedAnewBy(
  formerly: readonly FormerNames[],
  parents: readonly HistoryRevision[],
): readonly NewName[] {
  const [first, ...others] = formerly;
  if (first === undefined || formerly.length < parents.length) return [];
  const isSame = (one: NewName, other: NewName): boolean => one.from === other.from && one.to === other.to;
  return first.namedAnew.filter((one) =>
    others.every(({ namedAnew }) => namedAnew.some((other) => isSame(one, other))),
  );
}

/** The figures that are shown otherwise than by every former state, each beside the first of these. */
function changesBetween(
  before: readonly FormulaMoment[],
  after: FormulaFigures,
  wanted: readonly HistoryFigure[] | undefined,
): FigureChange[] {
  // What did not change is the very same object.
  if (before.some(({ figures }) => figures === after)) return [];
  const first = firstOf(before).figures;
  return (wanted ?? allFigures([...before.map(({ figures }) => figures), after]))
    .filter((figure) => before.every(({ figures }) => isOther(figure, figures, after)))
    .map(({ key, text }) => ({
      figure: key,
      ...(text(first, plainSpeaker) === undefined ? {} : { before: first }),
      ...(text(after, plainSpeaker) === undefined ? {} : { after }),
    }));
}

/**
 * Whether a figure is shown otherwise. A last place that only the arithmetic moved, at the very edge where it rounds, is no
 * change.
 */
function isOther({ text, number }: HistoryFigure, before: FormulaFigures, after: FormulaFigures): boolean {
  if (text(before, plainSpeaker) === text(after, plainSpeaker)) return false;
  const [was, is] = [number?.(before), number?.(after)];
  if (was === undefined || is === undefined) return true;
  return Math.abs(is - was) > 1e-6 * Math.max(Math.abs(is), Math.abs(was));
}

/** The figures of every formula, and the ingredients of some states; salt is a figure of its own. */
export function allFigures(states: readonly FormulaFigures[]): HistoryFigure[] {
  const names = new Map<string, string>();
  for (const { ingredients } of states)
    for (const { name } of ingredients) if (!names.has(foldName(name))) names.set(foldName(name), name);
  return [...figureTable, ...[...names.values()].map((name) => ingredientFigure(name))];
}

/** Each trial once: with what was worked out at the revision that first had its reading. */
function trialsOf(revisions: readonly HistoryRevision[]): HistoryTrial[] {
  const found = new Map<string, HistoryTrial>();
  for (const { moment, seconds, commit } of revisions)
    for (const [key, trial] of byReading(moment?.trials ?? []))
      if (!found.has(key)) found.set(key, { ...trial, seconds: noonOf(trial.date) ?? seconds, commit });
  const last = [...revisions].reverse().find(({ moment }) => moment !== undefined)?.moment;
  return [...byReading(last?.trials ?? []).keys()]
    .flatMap((key) => found.get(key) ?? [])
    .sort((one, other) => one.seconds - other.seconds);
}

/** Trials by their title and what was measured: there may be several of one day. */
function byReading<T extends Pick<HistoryTrial, 'title' | 'measuredCelsius'>>(
  trials: readonly T[],
): Map<string, T> {
  const found = new Map<string, T>();
  for (const trial of trials) {
    let count = 1;
    const key = () => JSON.stringify([trial.title, trial.measuredCelsius, count]);
    while (found.has(key())) count++;
    found.set(key(), trial);
  }
  return found;
}

function noonOf(date: string | undefined): number | undefined {
  const days = date === undefined ? undefined : daysOf(date);
  return days === undefined ? undefined : (days + 0.5) * secondsOfDay;
}

/** The line of first parents from the last revision back. */
function courseOf(
  revisions: readonly HistoryRevision[],
  byCommit: ReadonlyMap<string, HistoryRevision>,
): CoursePoint[] {
  const line: HistoryRevision[] = [];
  for (let at = revisions.at(-1); at !== undefined; ) {
    line.push(at);
    const [parent] = at.parents;
    at = parent === undefined ? undefined : byCommit.get(parent);
  }
  const course: CoursePoint[] = [];
  let before: FormulaFigures | undefined;
  for (const { seconds, moment } of line.reverse()) {
    if (moment?.figures === before) continue;
    before = moment?.figures;
    // A clock may have stood wrong: no time goes back.
    const at = Math.max(seconds, course.at(-1)?.seconds ?? seconds);
    course.push({ seconds: at, ...(before === undefined ? {} : { figures: before }) });
  }
  return course;
}
