import { pathToFileURL } from 'node:url';
import {
  createService,
  type FormerNames,
  figuresOf,
  foldName,
  formerSelf,
  formulaNames,
  heldAgainst,
  type NamingSide,
  type Service,
  type Snapshot,
  type UsualConditions,
  underNewNamesOf,
} from '../../core/index.ts';
import { uriIn } from '../host/git-files.ts';
import { canonicalUri } from '../host/uris.ts';
import type { Commit, FileChange } from './revisions.ts';

/** Where a formula stands at a revision. */
export interface Standing {
  readonly path: string;
  readonly name: string;
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

  /**
   * The figures of a formula at an earlier commit under the names that ingredients have at a later one; undefined where none got
   * another name.
   */
  underNewNames(
    earlier: { readonly commit: string; readonly at: Standing },
    later: { readonly commit: string; readonly at: Standing },
  ): Omit<FormerNames, 'parent'> | undefined {
    const [old, now] = [this.of(earlier.commit), this.of(later.commit)];
    if (old === undefined || now === undefined) return undefined;
    const own = [earlier, later].map(({ at }) => this.#uri(at.path));
    const uris = [...new Set([...now.texts.differing(old.texts), ...own])];
    const sideOf = (state: Snapshot): NamingSide => {
      this.#service.turnTo(state);
      const texts = uris.flatMap((uri) => {
        const text = state.texts.get(uri)?.text;
        return text === undefined ? [] : [[uri, text] as const];
      });
      const summary = (uri: string) => {
        this.#service.turnTo(state);
        return this.#service.summary(uri);
      };
      return { files: texts.map(([uri]) => uri), texts: new Map(texts), summary };
    };
    const after = sideOf(now);
    const known = { service: this.#service, uris: new Map(uris.map((uri) => [uri, uri] as const)) };
    const before = underNewNamesOf({ ...sideOf(old), known }, after, () => createService({ lean: true }));
    const formulaOf = (side: NamingSide, { path, name }: Standing) =>
      side.summary(this.#uri(path))?.formulas.find(({ folded }) => folded === foldName(name));
    const held = heldAgainst(formulaOf(before, earlier.at), formulaOf(after, later.at));
    if (held?.formerly === undefined) return undefined;
    const namedAnew = held.formerly.renamings.map(({ from, to }) => ({ from, to }));
    return { figures: figuresOf(held.totals), namedAnew };
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
