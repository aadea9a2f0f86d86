import type { Trouble } from './report/report.ts';

/** A file the caller asked for, with its path as it is shown. */
export interface AskedFile {
  readonly uri: string;
  readonly shown: string;
}

/** Files as they were read, before anybody looks into them. */
export interface Texts {
  /** All that could be read, those asked for and those around them. */
  readonly texts: readonly (readonly [uri: string, text: string])[];
  readonly roots: readonly string[];
  /** In the order asked for, folders in the order of their names, none twice. */
  readonly asked: readonly AskedFile[];
  /** The path to show for any file the core names. */
  shown(uri: string): string;
  /** What could not be read, each told on standard error already. */
  readonly troubles: readonly Trouble[];
  /** Whether something asked for could not be read. */
  readonly failed: boolean;
}
