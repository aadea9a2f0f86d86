import { PersistentMap } from './persistent-map.ts';
import { defaultSettings, type Settings } from './settings.ts';

/** A text of a file. The same text of the same file is the same object, so whatever is read from it is kept by it. */
export interface FileText {
  readonly uri: string;
  readonly text: string;
}

/**
 * All that an answer may hang on, at one moment. A change makes the next one and leaves this as it is, so an answer is a
 * function of its snapshot and of what was asked.
 */
export interface Snapshot {
  /** Grows from one to the next. */
  readonly revision: number;
  readonly texts: PersistentMap<FileText>;
  /** The roots of the workspace, each ending in a slash. */
  readonly roots: readonly string[];
  readonly settings: Settings;
}

/** Before anything is known. */
export const emptySnapshot: Snapshot = {
  revision: 0,
  texts: PersistentMap.none,
  roots: [],
  settings: defaultSettings,
};

/** With a file as this text, or without it. */
export function withText(snapshot: Snapshot, uri: string, text: string | undefined): Snapshot {
  const before = snapshot.texts.get(uri);
  if (before?.text === text) return snapshot;
  const texts = snapshot.texts.with([[uri, text === undefined ? undefined : { uri, text }]]);
  return next(snapshot, { texts });
}

export function withRoots(snapshot: Snapshot, uris: readonly string[]): Snapshot {
  return next(snapshot, { roots: uris.map((uri) => (uri.endsWith('/') ? uri : `${uri}/`)) });
}

export function withSettings(snapshot: Snapshot, changed: Partial<Settings>): Snapshot {
  return next(snapshot, { settings: { ...snapshot.settings, ...changed } });
}

function next(snapshot: Snapshot, changed: Partial<Snapshot>): Snapshot {
  return { ...snapshot, ...changed, revision: snapshot.revision + 1 };
}
