import { FileChangeType, type FileEvent } from 'vscode-languageserver';
import { guardedWork, type Log } from './guard.ts';
import type { Host } from './host.ts';
import type { Schedule } from './schedule.ts';
import { canonicalUri, isBelow } from './uris.ts';
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
    this.#work(`Reading ${uri}`, () => this.#readFiles([uri]));
  }

  /** Takes over what a watcher saw. */
  watched(events: readonly FileEvent[]): void {
    const read: string[] = [];
    const gone: string[] = [];
    for (const event of events) {
      const uri = canonicalUri(event.uri);
      if (event.type === FileChangeType.Deleted) gone.push(...this.#below(uri));
      else if (uri.endsWith('.dough')) read.push(uri);
    }
    // A watcher may tell of a deletion after the file has been made anew; the disk knows best.
    this.#work('Reading what has changed', () => this.#readFiles([...new Set([...read, ...gone])]));
  }

  /** Looks again at every file, for clients that cannot watch. */
  rereadAll(): void {
    this.readFolders(this.#parts.workspace.roots);
    this.#work('Reading what has changed', () => this.#readFiles([...this.#onDisk]));
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

  #below(uri: string): string[] {
    return uri.endsWith('.dough') ? [uri] : [...this.#onDisk].filter((file) => isBelow(file, uri));
  }

  async #readFolder(folder: string): Promise<void> {
    const { files } = this.#parts.host;
    if (!files) return;
    for await (const uris of files.find(folder)) await this.#readFiles(uris.map(canonicalUri));
  }

  async #readFiles(uris: readonly string[]): Promise<void> {
    const { host, workspace, changed } = this.#parts;
    const { files } = host;
    this.#found += uris.length;
    await Promise.all(
      uris.map(async (uri) => {
        const isOurs = uri.startsWith('file:') && workspace.reads(uri);
        const text = files && isOurs ? await files.read(uri) : undefined;
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
