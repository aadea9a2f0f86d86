import type { FileEdit } from '../../text/edits.ts';
import type { Place } from '../../text/span.ts';

/** How serious a finding is. */
export type Level = 'error' | 'warning' | 'info' | 'hint';

/** What an editor does to mend a finding, worded for one reader. */
export interface Fix {
  readonly title: string;
  readonly edits: readonly FileEdit[];
  readonly preferred?: true;
}

export interface Related {
  readonly uri: string;
  readonly place: Place;
  readonly message: string;
}

/** A finding in its file, worded for one reader: zero-based lines, UTF-16 columns. */
export interface Finding {
  readonly code: string;
  readonly level: Level;
  readonly message: string;
  readonly place: Place;
  readonly related: readonly Related[];
  readonly fixes: readonly Fix[];
  readonly unused?: true;
}
