import { folderOf } from '../text/folder.ts';
import type { Definition, DefinitionKind, Scope } from './scope.ts';

type Levels = ReturnType<Scope['find']>;

/** One look-up and what it found: a name in its levels, or the nearest of a kind. */
interface Note {
  /** Undefined for the scope that the notes began with. */
  readonly from: string | undefined;
  readonly kind: DefinitionKind;
  readonly folded: string | undefined;
  readonly found: Levels;
}

/** What was looked up to make an answer, each once, so that it can be seen whether the answer still stands. */
export type Notes = Map<string, Note>;

/** A scope that notes what is looked up in it, and from where. All names of a kind are not noted. */
export function noting(scope: Scope, notes: Notes, from?: string): Scope {
  const note = (kind: DefinitionKind, folded: string | undefined, found: Levels): void => {
    const key = `${from ?? ''}\n${kind}\n${folded ?? ''}`;
    if (!notes.has(key)) notes.set(key, { from, kind, folded, found });
  };
  return {
    ...scope,
    find: (kind, folded) => {
      const found = scope.find(kind, folded);
      note(kind, folded, found);
      return found;
    },
    nearest: (kind) => {
      const found = scope.nearest(kind);
      note(kind, undefined, levelOf(found));
      return found;
    },
    from: (uri) => noting(scope.from(uri), notes, folderOf(uri)),
  };
}

/** Whether all that was noted would be found again. */
export function stillFound(
  notes: Notes,
  scope: Scope,
  isSame: (one: Definition, other: Definition) => boolean,
): boolean {
  const scopes = new Map<string | undefined, Scope>([[undefined, scope]]);
  for (const { from, kind, folded, found } of notes.values()) {
    const seen = scopes.get(from) ?? scope.from(from ?? '');
    scopes.set(from, seen);
    const now = folded === undefined ? levelOf(seen.nearest(kind)) : seen.find(kind, folded);
    if (!isSameLevels(now, found, isSame)) return false;
  }
  return true;
}

/** The same object: it did not even move. */
export const isSelf = (one: Definition, other: Definition): boolean => one === other;

/** The same text, wherever it stands now. */
export const isSameText = (one: Definition, other: Definition): boolean =>
  one === other || one.block === other.block;

function levelOf(definition: Definition | undefined): Levels {
  return definition === undefined ? [] : [[definition]];
}

function isSameLevels(
  some: Levels,
  others: Levels,
  isSame: (one: Definition, other: Definition) => boolean,
): boolean {
  if (some === others) return true;
  return (
    some.length === others.length &&
    some.every((level, at) => {
      const other = others[at] ?? [];
      return level.length === other.length && level.every((one, index) => isSame(one, other[index]!));
    })
  );
}
