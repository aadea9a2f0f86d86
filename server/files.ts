import { FileChangeType, type FileEvent } from 'vscode-languageserver';
import { guardedWork, type Log } from './guard.ts';
import type { Host } from './host.ts';
import { canonicalUri, isBelow } from './uris.ts';
import type { Workspace } from './workspace.ts';

/**
 * Reads the files around the open documents and keeps up with what happens to them on the disk. `changed` is told of
 * each file that was read or is gone.
 */
export class WorkspaceFiles {
  readonly #host: Host;
  readonly #workspace: Workspace;
  readonly #log: Log;
  readonly #changed: (uris: readonly string[]) => void;
  /** Files read from the disk, open or not. */
  readonly #onDisk = new Set<string>();
  #reading = 0;
  #waiting: (() => void)[] = [];

  constructor(host: Host, workspace: Workspace, log: Log, changed: (uris: readonly string[]) => void) {
    this.#host = host;
    this.#workspace = workspace;
    this.#log = log;
    this.#changed = changed;
  }

  /** Reads all files below the folders, in the background. */
  readFolders(folders: readonly string[]): void {
    for (const folder of folders) this.#work(`Reading ${folder}`, () => this.#readFolder(folder));
  }

  /** Forgets the files that lie in no folder any more. */
  forgetOutside(): void {
    const gone = [...this.#onDisk].filter((uri) => !this.#workspace.reads(uri));
    for (const uri of gone) this.#forget(uri);
    this.#changed(gone);
  }

  /** What lies around an open file of no workspace folder: it is read once, so that names are found. */
  readAround(uri: string): void {
    const files = this.#host.files;
    if (!files || !uri.startsWith('file:') || this.#workspace.reads(uri)) return;
    this.#work(`Reading around ${uri}`, async () => {
      const root = await files.rootOf(uri);
      if (this.#workspace.noteStrayRoot(root)) await this.#readFolder(root);
    });
  }

  /** Takes a file as it is on the disk now; used when its document is closed and what was typed is given up. */
  reread(uri: string): void {
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
    this.readFolders(this.#workspace.folders);
    this.#work('Reading what has changed', () => this.#readFiles([...this.#onDisk]));
  }

  /** Resolves when nothing is being read, or after some milliseconds at the latest. */
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
    if (!this.#host.files) return;
    for await (const uris of this.#host.files.find(folder)) await this.#readFiles(uris.map(canonicalUri));
  }

  async #readFiles(uris: readonly string[]): Promise<void> {
    const files = this.#host.files;
    await Promise.all(
      uris.map(async (uri) => {
        const text = files && uri.startsWith('file:') ? await files.read(uri) : undefined;
        if (text === undefined) this.#forget(uri);
        else {
          this.#onDisk.add(uri);
          this.#workspace.noteDiskText(uri, text);
        }
      }),
    );
    this.#changed(uris);
  }

  #forget(uri: string): void {
    this.#onDisk.delete(uri);
    this.#workspace.noteDiskText(uri, undefined);
  }

  #work(name: string, work: () => Promise<void>): void {
    this.#reading++;
    guardedWork(this.#log, name, () =>
      work().finally(() => {
        if (--this.#reading > 0) return;
        const waiting = this.#waiting;
        this.#waiting = [];
        for (const resolve of waiting) resolve();
      }),
    );
  }
}
