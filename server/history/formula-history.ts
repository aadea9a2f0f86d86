import {
  type FormulaMoment,
  foldName,
  type HistoryRevision,
  type Message,
  message,
} from '../../core/index.ts';
import type { RevisionFiles, Standing } from './revision-files.ts';
import type { Commit, FileChange } from './revisions.ts';

/** A formula that is looked for: by its name, and where several have it by the file or folder that it stands in. */
export interface Sought {
  readonly name: string;
  /** From the root of the repository. */
  readonly path?: string;
}

export interface FollowOptions {
  /** Hears how many revisions of how many were worked out. */
  readonly progress?: (count: number, all: number) => void;
  /** Lets others have their turn, and ends the work by throwing. */
  readonly pause?: () => Promise<void>;
  /** How a path of the repository is shown. */
  readonly shown?: (path: string) => string;
}

/** The revisions that a formula has, or why there are none. */
export type Revisions = readonly HistoryRevision[] | { readonly message: Message };

/**
 * The revisions of a formula, each worked out among all files of that revision. The formula is followed back from the last
 * commit: by its name in its file, by its name in another file, and where neither is there by the lines that it has.
 */
export async function formulaRevisions(
  files: RevisionFiles,
  commits: readonly Commit[],
  sought: Sought,
  options: FollowOptions = {},
): Promise<Revisions> {
  const { progress = () => {}, pause = async () => {}, shown = (path) => path } = options;
  const standings = await follow(files, commits, sought, pause);
  if ('message' in standings) return standings;
  const revisions: HistoryRevision[] = [];
  const moments: Moments = new Map();
  for (const [index, { changes: _, ...about }] of commits.entries()) {
    const standing = standings.get(about.commit);
    const moment = standing === undefined ? undefined : files.moment(about.commit, standing, shown);
    if (standing !== undefined && moment !== undefined) moments.set(about.commit, { standing, moment });
    revisions.push({
      ...about,
      ...(moment === undefined ? {} : { moment }),
      ...formerlyOf(files, about, moments),
    });
    if (index % 50 === 49) {
      progress(index + 1, commits.length);
      await pause();
    }
  }
  return revisions;
}

/** Where the formula stands at commits, and as what. */
type Moments = Map<string, { readonly standing: Standing; readonly moment: FormulaMoment }>;

/** How the parents of a commit have the formula under the names that the commit gave to ingredients, where it gave some. */
function formerlyOf(
  files: RevisionFiles,
  { commit, parents }: Pick<Commit, 'commit' | 'parents'>,
  moments: Moments,
): Pick<HistoryRevision, 'formerly'> {
  const now = moments.get(commit);
  const formerly = parents.flatMap((parent) => {
    const was = moments.get(parent);
    if (now === undefined || was === undefined || was.moment.figures === now.moment.figures) return [];
    if (now.moment.unfinishedMerge || was.moment.unfinishedMerge) return [];
    // Without one that went and one that came nothing got another name, and nobody need look for it.
    const [old, names] = [was, now].map(
      ({ moment }) => new Set(moment.figures.ingredients.map(({ name }) => foldName(name))),
    ) as [Set<string>, Set<string>];
    if ([...old].every((name) => names.has(name)) || [...names].every((name) => old.has(name))) return [];
    const found = files.underNewNames({ commit: parent, at: was.standing }, { commit, at: now.standing });
    const namedAnew = (found?.namedAnew ?? []).filter(
      ({ from, to }) => old.has(foldName(from)) && names.has(foldName(to)),
    );
    return found === undefined || namedAnew.length === 0
      ? []
      : [{ parent, figures: found.figures, namedAnew }];
  });
  return formerly.length === 0 ? {} : { formerly };
}

/** What stands in the place of a commit's name for the text as it is now. */
const uncommitted = '';

/**
 * The revisions of a formula with the text as it stands now behind them, where it is other than in the last commit. `ofCommits` has
 * those up to that commit for a formula as it is called and where it stands there.
 */
export async function revisionsToNow(
  files: RevisionFiles,
  commits: readonly Commit[],
  changes: readonly FileChange[],
  sought: Sought,
  ofCommits: (sought: Sought) => Promise<Revisions>,
  shown: (path: string) => string = (path) => path,
): Promise<Revisions> {
  const head = commits.at(-1)?.commit;
  if (head === undefined || changes.length === 0) return ofCommits(sought);
  files.lay(uncommitted, head, changes);
  const now = standingOf(files, uncommitted, { name: sought.name }, sought);
  if ('several' in now)
    return { message: message('history.several', { name: sought.name, files: now.several }) };
  const { standing } = now;
  const about = { commit: uncommitted, parents: [head], author: '', words: '', ...today() };
  const row: HistoryRevision = { ...about, uncommitted: true };
  if (standing === undefined) {
    const before = await ofCommits(sought);
    return 'message' in before ? before : [...before, row];
  }
  const child = { commit: uncommitted, at: standing };
  const last = standingOf(files, head, { child, name: standing.name }, sought);
  const before = 'standing' in last && last.standing !== undefined ? await ofCommits(last.standing) : [];
  if ('message' in before) return before;
  const moment = files.moment(uncommitted, standing, shown);
  if (moment === undefined) return [...before, row];
  const moments: Moments = new Map([[uncommitted, { standing, moment }]]);
  const former = before.at(-1)?.moment;
  if ('standing' in last && last.standing !== undefined && former !== undefined)
    moments.set(head, { standing: last.standing, moment: former });
  return [...before, { ...row, moment, ...formerlyOf(files, about, moments) }];
}

/** The present moment, and the day that it has here. */
function today(): { readonly seconds: number; readonly date: string } {
  const now = new Date();
  const [month, day] = [now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, '0'));
  return { seconds: Math.floor(now.getTime() / 1000), date: `${now.getFullYear()}-${month}-${day}` };
}

/** From the last commit back: where the formula stands in each that has it. */
async function follow(
  files: RevisionFiles,
  commits: readonly Commit[],
  sought: Sought,
  pause: () => Promise<void>,
): Promise<Map<string, Standing> | { readonly message: Message }> {
  const standings = new Map<string, Standing>();
  /** What to look for in a commit, as its children have it; where it has been met in one of them, it stands there. */
  const looked = new Map<
    string,
    { readonly child?: { commit: string; at: Standing }; readonly name: string }
  >();
  const last = commits.at(-1);
  if (last === undefined) return standings;
  looked.set(last.commit, { name: sought.name });
  for (const [index, { commit, parents, changes }] of [...commits].reverse().entries()) {
    const want = looked.get(commit);
    if (want === undefined) continue;
    const found = standingOf(files, commit, want, sought);
    if ('several' in found)
      return { message: message('history.several', { name: sought.name, files: found.several }) };
    const { standing } = found;
    if (standing !== undefined) standings.set(commit, standing);
    for (const parent of parents) {
      const known = looked.get(parent);
      if (known?.child !== undefined || (known !== undefined && standing === undefined)) continue;
      looked.set(
        parent,
        standing === undefined
          ? { name: want.name }
          : { child: { commit, at: standing }, name: standing.name },
      );
    }
    if (changes.length > 0 && index % 50 === 49) await pause();
  }
  return standings;
}

function standingOf(
  files: RevisionFiles,
  commit: string,
  { child, name }: { readonly child?: { commit: string; at: Standing }; readonly name: string },
  { path }: Sought,
): { readonly standing?: Standing } | { readonly several: readonly string[] } {
  if (child === undefined) {
    const all = files.named(commit, name);
    const meant = path === undefined ? all : all.filter((one) => isIn(one.path, path));
    if (meant.length > 1) return { several: meant.map((one) => one.path) };
    return meant[0] === undefined ? {} : { standing: meant[0] };
  }
  if (files.of(commit) === files.of(child.commit)) return { standing: child.at };
  const there = files.namedIn(commit, child.at.path, name);
  if (there !== undefined) return { standing: { path: child.at.path, name: there } };
  // In another file: one that the later state has not got it in, where there are several.
  const elsewhere = files.named(commit, name);
  const later = new Set(files.named(child.commit, name).map((one) => one.path));
  const gone = elsewhere.filter((one) => !later.has(one.path));
  if (gone[0] !== undefined) return { standing: gone[0] };
  const former = files.formerSelf(commit, child.commit, child.at);
  return former === undefined ? {} : { standing: former };
}

/** Whether a path is another one or lies below it. */
function isIn(path: string, other: string): boolean {
  return other === '' || path === other || path.startsWith(`${other}/`);
}
