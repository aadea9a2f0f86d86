import { FileChangeType, type FileEvent } from 'vscode-languageserver';
import { guardedWork, type Log } from '../host/guard.ts';
import type { Host } from '../host/host.ts';
import { canonicalUri, isBelow } from '../host/uris.ts';
import type { Schedule } from './schedule.ts';
import type { Workspace } from './workspace.ts';

export interface FilesParts {
  readonly host: Host;
  readonly workspace: Workspace;
  readonly schedule: Schedule;
  readonly log: Log;
  /** Told of each file that was read or is gone, once the core knows it. */
  readonly changed: (uris: readonly string[]) => void;
  /** Told when the folders that names are looked up in are others. */
  readonly rootsChanged: () => void;
  /** Told how many files of those found so far are known, whenever that is another number, and when all are. */
  readonly progress: (known: number, found: number) => void;
}

/** Reads the files around the open documents and keeps up with what happens to them on the disk. */
export class WorkspaceFiles {
  readonly #parts: FilesParts;
  /** Files read from the disk, open or not. */
  readonly #onDisk = new Set<string>();
  /** Of each file that is being read, the reading that began last. */
  readonly #newest = new Map<string, symbol>();
  #reading = 0;
  #takingIn = false;
  #waiting: (() => void)[] = [];
  /** Files found since nothing was left to do. */
  #found = 0;

  constructor(parts: FilesParts) {
    this.#parts = parts;
  }

  /** Reads all files below the folders, in the background. */
  readFolders(folders: readonly string[]): void {
    for (const folder of folders) this.#work(`Reading ${folder}`, () => this.#readFolder(folder));
  }

  /** Forgets the files that lie in no folder any more, nor around an open file. */
  forgetOutside(): void {
    if (this.#parts.workspace.reviewStrayRoots()) this.#parts.rootsChanged();
    const gone = [...this.#onDisk].filter((uri) => !this.#parts.workspace.reads(uri));
    for (const uri of gone) this.#forget(uri);
    this.#parts.changed(gone);
  }

  /** What lies around an open file of no workspace folder: it is read once, so that names are found. */
  readAround(uri: string): void {
    const { host, workspace } = this.#parts;
    const { files } = host;
    if (!files || !uri.startsWith('file:') || workspace.hasRoot(uri)) return;
    this.#work(`Reading around ${uri}`, async () => {
      const root = await files.rootOf(uri);
      if (!workspace.noteStrayRoot(uri, root)) return;
      this.#parts.rootsChanged();
      await this.#readFolder(root);
    });
  }

  /** Takes a file whose document was closed as it is on the disk now: what was typed is given up. */
  closed(uri: string): void {
    this.forgetOutside();
    this.#work(`Reading ${uri}`, () => this.#readFindable([uri]));
  }

  /** Takes over what a watcher saw. Of a folder that comes or goes as a whole it may have told the folder alone. */
  watched(events: readonly FileEvent[]): void {
    const files = new Set<string>();
    const goneFolders = new Set<string>();
    const made: string[] = [];
    let ignoresOthers = false;
    for (const event of events) {
      const uri = canonicalUri(event.uri);
      if (uri.endsWith('.dough')) files.add(uri);
      else if (uri.endsWith('/.gitignore')) ignoresOthers = true;
      else if (event.type === FileChangeType.Deleted) goneFolders.add(uri);
      else if (event.type === FileChangeType.Created) made.push(uri);
    }
    if (ignoresOthers) this.rereadAll();
    if (made.length > 0) this.#work('Reading new folders', () => this.#readNewFolders(made));
    // What is being read may be answered with what was there before its folder went.
    for (const uri of [...this.#onDisk, ...this.#newest.keys()])
      if (liesInOne(uri, goneFolders)) files.add(uri);
    // A watcher may tell of a deletion after the file has been made anew; the disk knows best.
    if (files.size > 0) this.#work('Reading what has changed', () => this.#readFindable([...files]));
  }

  /** Looks again at every file, for clients that cannot watch, and where git ignores others than before. */
  rereadAll(): void {
    this.readFolders(this.#parts.workspace.roots);
    this.#work('Reading what has changed', () => this.#readFindable([...this.#onDisk]));
  }

  /** Resolves when nothing is being read and the core knows all that was, or after some milliseconds at the latest. */
  settled(atMostMilliseconds: number): Promise<void> {
    if (this.#reading === 0) return Promise.resolve();
    return new Promise((resolve) => {
      const timer = setTimeout(resolve, atMostMilliseconds);
      this.#waiting.push(() => {
        clearTimeout(timer);
        resolve();
      });
    });
  }

  /** What was made may be folders with files in them, as one that was moved here. */
  async #readNewFolders(uris: readonly string[]): Promise<void> {
    const { files } = this.#parts.host;
    // Whatever else is made in a folder is told as well, and most of it in folders that nobody looks into.
    const within = await this.#findable(uris.map((uri) => `${uri}/any.dough`));
    for (const uri of uris) {
      if (!files || !within.has(`${uri}/any.dough`)) continue;
      for await (const found of files.find(uri)) await this.#readFindable(found.map(canonicalUri));
    }
  }

  async #findable(uris: readonly string[]): Promise<ReadonlySet<string>> {
    const { host, workspace } = this.#parts;
    const findable = new Set<string>();
    for (const root of workspace.roots) {
      const below = uris.filter((uri) => root.startsWith('file:') && isBelow(uri, root));
      if (below.length === 0 || !host.files) continue;
      for (const uri of await host.files.findable(root, below)) findable.add(uri);
    }
    return findable;
  }

  /** Reads the files that a walk through the folders would find, and forgets the others. */
  async #readFindable(uris: readonly string[]): Promise<void> {
    const findable = await this.#findable(uris);
    await this.#readFiles(uris, (uri) => findable.has(uri));
  }

  async #readFolder(folder: string): Promise<void> {
    const { files } = this.#parts.host;
    if (!files) return;
    for await (const uris of files.find(folder)) await this.#readFiles(uris.map(canonicalUri));
  }

  async #readFiles(uris: readonly string[], isWanted: (uri: string) => boolean = () => true): Promise<void> {
    const { host, workspace, changed } = this.#parts;
    const { files } = host;
    this.#found += uris.length;
    await Promise.all(
      uris.map(async (uri) => {
        const isOurs = uri.startsWith('file:') && isWanted(uri) && workspace.reads(uri);
        const own = Symbol();
        this.#newest.set(uri, own);
        const text = files && isOurs ? await files.read(uri) : undefined;
        // A disk may answer an earlier question later, with what the file was then.
        if (this.#newest.get(uri) !== own) return;
        this.#newest.delete(uri);
        // Meanwhile its folder may have gone.
        if (text === undefined || !workspace.reads(uri)) this.#forget(uri);
        else {
          this.#onDisk.add(uri);
          workspace.noteDiskText(uri, text);
        }
      }),
    );
    if (workspace.left > 0) this.#takeIn();
    // The others are told of when the core knows them.
    changed(uris.filter((uri) => !workspace.awaits(uri)));
  }

  /** Makes what was read known to the core, giving way to whatever the client asks. */
  #takeIn(): void {
    if (this.#takingIn) return;
    this.#takingIn = true;
    const { workspace, schedule, changed, progress } = this.#parts;
    this.#work('Taking files in', async () => {
      let known: string[] = [];
      const tell = () => {
        changed(known);
        known = [];
        // There may be more to find.
        progress(Math.min(this.#found - workspace.left, this.#found - 1), this.#found);
      };
      await workspace.service();
      await schedule
        .inBackground(() => {
          const uri = workspace.takeIn(workspace.now());
          if (uri === undefined) return false;
          known.push(uri);
          if (known.length >= mostUntold) tell();
          return true;
        })
        .finally(() => {
          this.#takingIn = false;
          tell();
          if (workspace.left > 0) this.#takeIn();
        });
    });
  }

  #forget(uri: string): void {
    this.#onDisk.delete(uri);
    this.#parts.workspace.noteDiskText(uri, undefined);
  }

  #work(name: string, work: () => Promise<void>): void {
    this.#reading++;
    guardedWork(this.#parts.log, name, () =>
      work().finally(() => {
        if (--this.#reading > 0) return;
        const waiting = this.#waiting;
        this.#waiting = [];
        for (const resolve of waiting) resolve();
        this.#parts.progress(this.#found, this.#found);
        this.#found = 0;
      }),
    );
  }
}

/** After so many files whoever hangs on them is told, though more are to come. */
const mostUntold = 200;

/** Whether a file lies in one of some folders, at any depth. */
function liesInOne(uri: string, folders: ReadonlySet<string>): boolean {
  if (folders.size === 0) return false;
  for (let end = uri.lastIndexOf('/'); end > 0; end = uri.lastIndexOf('/', end - 1))
    if (folders.has(uri.slice(0, end))) return true;
  return false;
}
