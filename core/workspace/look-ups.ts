import type { Definition, DefinitionKind, Scope } from '../model/scope.ts';
import { folderOf } from '../text/folder.ts';
import type { DefinitionIndex } from './definition-index.ts';
import { type Dependents, sameBlocks, sameLevels } from './dependents.ts';

/** What was looked up of one kind from one folder to make an answer, so that it can be seen whether the answer still stands. */
interface KindLookUps {
  readonly kind: DefinitionKind;
  /** The file, or the folder of another one, that it was looked up from. */
  readonly from: string;
  /** The stamp of the kind up to which they are known to stand. */
  stamp: number;
  /** By name; there once a name was looked up. */
  found: Map<string, readonly (readonly Definition[])[]> | undefined;
  nearest: { readonly found: Definition | undefined } | undefined;
  names: readonly Definition[] | undefined;
}

/** A snapshot's names as whoever looks them up sees them. */
export interface NamesNow {
  readonly index: DefinitionIndex;
  scopeOf(uri: string): Scope;
}

/** The look-ups of one answer. */
export class LookUps {
  readonly #uri: string;
  readonly #dependents: Dependents | undefined;
  readonly #made: KindLookUps[] = [];

  /** `dependents` are told of each look-up; undefined where nobody asks what hangs on a name. */
  constructor(uri: string, dependents: Dependents | undefined) {
    this.#uri = uri;
    this.#dependents = dependents;
  }

  /** The scope of the file, `now` being the names at each look-up; what it answers is remembered, and the same question costs a look into a map. */
  scope(now: () => NamesNow, from: string = this.#uri): Scope {
    const of = (kind: DefinitionKind): KindLookUps => this.#of(kind, from, now().index);
    const { usual } = now().scopeOf(from);
    return {
      ...(usual === undefined ? {} : { usual }),
      find: (kind, folded) => {
        const lookUps = of(kind);
        let levels = lookUps.found?.get(folded);
        if (levels === undefined) {
          levels = now().scopeOf(from).find(kind, folded);
          lookUps.found ??= new Map();
          lookUps.found.set(folded, levels);
          this.#dependents?.note(kind, folded, { uri: this.#uri, from });
        }
        return levels;
      },
      nearest: (kind) => {
        const lookUps = of(kind);
        if (lookUps.nearest === undefined) {
          lookUps.nearest = { found: now().scopeOf(from).nearest(kind) };
          this.#dependents?.noteKind(kind, 'nearest', { uri: this.#uri, from });
        }
        return lookUps.nearest.found;
      },
      names: (kind) => {
        const lookUps = of(kind);
        if (lookUps.names === undefined) {
          lookUps.names = now().scopeOf(from).names(kind);
          this.#dependents?.noteKind(kind, 'names', { uri: this.#uri, from });
        }
        return lookUps.names;
      },
      from: (uri) => {
        const folder = folderOf(uri);
        return this.scope(now, folder === folderOf(this.#uri) ? this.#uri : folder);
      },
    };
  }

  /** Whether each look-up would find the same now; all are looked at again where the `roots` are others. */
  stand(now: NamesNow, roots: boolean): boolean {
    for (const lookUps of this.#made) {
      const stamp = now.index.kinds.get(lookUps.kind)?.stamp ?? 0;
      if (lookUps.stamp === stamp && !roots) continue;
      if (!isStill(now.scopeOf(lookUps.from), lookUps)) return false;
      lookUps.stamp = stamp;
    }
    return true;
  }

  /** Notes all look-ups again, where what was noted has been cleared. */
  note(): void {
    for (const { kind, from, found, nearest, names } of this.#made) {
      const dependent = { uri: this.#uri, from };
      if (nearest !== undefined) this.#dependents?.noteKind(kind, 'nearest', dependent);
      if (names !== undefined) this.#dependents?.noteKind(kind, 'names', dependent);
      for (const folded of found?.keys() ?? []) this.#dependents?.note(kind, folded, dependent);
    }
  }

  #of(kind: DefinitionKind, from: string, index: DefinitionIndex): KindLookUps {
    let made = this.#made.find((one) => one.kind === kind && one.from === from);
    if (made === undefined) {
      const stamp = index.kinds.get(kind)?.stamp ?? 0;
      made = { kind, from, stamp, found: undefined, nearest: undefined, names: undefined };
      this.#made.push(made);
    }
    return made;
  }
}

function isStill(scope: Scope, { kind, found, nearest, names }: KindLookUps): boolean {
  for (const [folded, levels] of found ?? []) if (!sameLevels(scope.find(kind, folded), levels)) return false;
  if (nearest !== undefined && scope.nearest(kind)?.block !== nearest.found?.block) return false;
  return names === undefined || sameBlocks(scope.names(kind), names);
}
