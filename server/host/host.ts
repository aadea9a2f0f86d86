import type { HistoryRevision, Message, TextsByUri, UsualConditions } from '../../core/index.ts';
import type { RulePageFolders } from '../convert/rule-pages.ts';

/** The largest file that is read, in bytes; a formula collection of a lifetime is smaller. */
export const largestFileBytes = 4 * 1024 * 1024;

/** What the server may ask of the machine it runs on. */
export interface Host {
  /** Absent where there is no file system: then the open documents are all there is. */
  readonly files?: HostFiles;
  /** The revisions of git; absent where no program can be started. */
  readonly revisions?: HostRevisions;
  /** Where the pages of the rules lie, unless the client says otherwise. */
  readonly rulePages?: RulePageFolders;
  /** Called once, when the first document has been answered for and nobody waits. */
  readonly atRest?: () => void;
}

export interface HostFiles {
  /**
   * The URIs of all `.dough` files below a folder, nearest the folder first, in batches. Hidden folders,
   * `node_modules` and what git ignores are left out; a folder that cannot be read is empty.
   */
  find(folder: string): AsyncIterable<readonly string[]>;
  /** Those of some files below a folder that `find` finds, now or once they are there. */
  findable(folder: string, uris: readonly string[]): Promise<ReadonlySet<string>>;
  /** The text of a file; `undefined` when it is missing, unreadable, not a text, or too large. */
  read(uri: string): Promise<string | undefined>;
  /** The folder whose files belong with a file that lies in no workspace folder. */
  rootOf(uri: string): Promise<string>;
}

export interface HostRevisions {
  /**
   * The revisions of a formula of a file up to the present commit, each worked out among its own files; a message where
   * there are none to be had. Git is started for it, so that only what somebody asks for in a trusted folder may ask it.
   */
  ofFormula(
    asked: {
      readonly uri: string;
      readonly formula: string;
      readonly usual: UsualConditions;
      /** The texts of all files as they stand now, by their URIs; with them what is not committed yet is the last revision. */
      readonly texts?: TextsByUri;
    },
    pause: () => Promise<void>,
  ): Promise<readonly HistoryRevision[] | { readonly message: Message }>;
  /** The texts of all files of the present commit of the repository of a file; `undefined` where there is none. */
  ofLastCommit(uri: string): Promise<TextsByUri | undefined>;
}
