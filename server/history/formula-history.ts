import { pathToFileURL } from 'node:url';
import {
  createService,
  foldName,
  formerSelf,
  formulaNames,
  type HistoryRevision,
  type Message,
  message,
  type Service,
  type Snapshot,
  type UsualConditions,
} from '../../core/index.ts';
import { uriIn } from '../host/git-files.ts';
import { canonicalUri } from '../host/uris.ts';
import type { Commit, FileChange } from './revisions.ts';

/** A formula that is looked for: by its name, and where several have it by the file or folder that it stands in. */
export interface Sought {
  readonly name: string;
  /** From the root of the repository. */
  readonly path?: string;
}

/** Where a formula stands at a revision. */
interface Standing {
  readonly path: string;
  readonly name: string;
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
  for (const [index, { changes: _, ...about }] of commits.entries()) {
    const standing = standings.get(about.commit);
    const moment = standing === undefined ? undefined : files.moment(about.commit, standing, shown);
    revisions.push({ ...about, ...(moment === undefined ? {} : { moment }) });
    if (index % 50 === 49) {
      progress(index + 1, commits.length);
      await pause();
    }
  }
  return revisions;
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
  return [...before, moment === undefined ? row : { ...row, moment }];
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

/** All formula files of all revisions: those of one laid over those of the one before, so that each costs what it changes. */
export class RevisionFiles {
  readonly #root: string;
  readonly #service: Service = createService();
  readonly #states = new Map<string, Snapshot>();
  readonly #paths = new Map<string, string>();
  readonly #none: Snapshot;
  readonly #names = new Map<string, readonly string[]>();

  /** `usual` has temperatures where no bakery says them. */
  constructor(root: string, commits: readonly Commit[], usual: UsualConditions = {}) {
    this.#root = root;
    this.#service.setSettings({ usual });
    this.#service.setRoots([canonicalUri(pathToFileURL(root).href)]);
    this.#none = this.#service.snapshot;
    for (const { commit, parents, changes } of commits) this.lay(commit, parents[0], changes);
  }

  /** Makes the state of a commit of that of its parent, or of none, and what it changes. */
  lay(commit: string, parent: string | undefined, changes: readonly FileChange[]): void {
    this.#service.turnTo((parent === undefined ? undefined : this.#states.get(parent)) ?? this.#none);
    for (const { path, text } of changes) {
      const uri = this.#uri(path);
      if (text === undefined) this.#service.remove(uri);
      else this.#service.setText(uri, text);
    }
    this.#states.set(commit, this.#service.snapshot);
  }

  /** The texts of a commit, by the paths of their files in the repository. */
  textsOf(commit: string): Map<string, string> {
    const texts = new Map<string, string>();
    for (const [uri, { text }] of this.of(commit)?.texts.entries() ?? []) {
      const path = this.#paths.get(uri);
      if (path !== undefined) texts.set(path, text);
    }
    return texts;
  }

  /** The state of the files at a commit; the same object where no formula file changed. */
  of(commit: string): Snapshot | undefined {
    return this.#states.get(commit);
  }

  /** Every formula of a name at a commit, in the order of the files. */
  named(commit: string, name: string): Standing[] {
    const folded = foldName(name);
    const found: Standing[] = [];
    for (const [uri, { text }] of this.of(commit)?.texts.entries() ?? []) {
      const path = this.#paths.get(uri);
      const written = path === undefined ? undefined : this.#written(text, folded);
      if (path !== undefined && written !== undefined) found.push({ path, name: written });
    }
    return found;
  }

  /** How a file writes the name of its formula, where it has one of that name. */
  namedIn(commit: string, path: string, name: string): string | undefined {
    const text = this.of(commit)?.texts.get(this.#uri(path))?.text;
    return text === undefined ? undefined : this.#written(text, foldName(name));
  }

  /** What a formula of a later commit was at an earlier one, by its lines; only files that differ are looked into. */
  formerSelf(earlier: string, later: string, at: Standing): Standing | undefined {
    const [old, now] = [this.of(earlier), this.of(later)];
    if (old === undefined || now === undefined) return undefined;
    const uris = [...now.texts.differing(old.texts)];
    const summaries = (state: Snapshot) => {
      this.#service.turnTo(state);
      return uris.flatMap((uri) => this.#service.summary(uri, this.#paths.get(uri))?.formulas ?? []);
    };
    const former = formerSelf(summaries(old), summaries(now), at.path, at.name);
    return former === undefined ? undefined : { path: former.file, name: former.name };
  }

  /** The formula as it is worked out at a commit. */
  moment(commit: string, { path, name }: Standing, shown: (path: string) => string) {
    const state = this.of(commit);
    if (state === undefined) return undefined;
    this.#service.turnTo(state);
    return this.#service.moment(this.#uri(path), name, shown(path));
  }

  #written(text: string, folded: string): string | undefined {
    let names = this.#names.get(text);
    if (names === undefined) {
      names = formulaNames(text);
      this.#names.set(text, names);
    }
    return names.find((one) => foldName(one) === folded);
  }

  #uri(path: string): string {
    const uri = uriIn(this.#root, path);
    this.#paths.set(uri, path);
    return uri;
  }
}
