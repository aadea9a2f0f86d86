import type { Connection } from 'vscode-languageserver';
import { guardedWork, type Log } from './guard.ts';

/** Work that is done sooner needs no word, in milliseconds. */
const patience = 1000;
/** Between two words, in milliseconds. */
const pause = 200;

type Shown = Awaited<ReturnType<Connection['window']['createWorkDoneProgress']>>;

/** Shows in the editor how far the reading of the workspace has come, where it takes long. */
export class Progress {
  readonly #connection: Connection;
  readonly #log: Log;
  #began: number | undefined;
  #told = 0;
  #shown: Promise<Shown> | undefined;

  constructor(connection: Connection, log: Log) {
    this.#connection = connection;
    this.#log = log;
  }

  /** So many files of those found so far are known; all of them when there is nothing left to do. */
  tell(known: number, found: number): void {
    const now = performance.now();
    this.#began ??= now;
    if (known >= found) {
      const shown = this.#shown;
      this.#began = undefined;
      this.#shown = undefined;
      this.#say(shown, (one) => one.done());
      return;
    }
    if (now - this.#began < patience || now - this.#told < pause) return;
    this.#told = now;
    const percent = Math.floor((100 * known) / found);
    const words = `${known} of ${found} files`;
    if (this.#shown === undefined) {
      this.#shown = this.#connection.window.createWorkDoneProgress();
      this.#say(this.#shown, (one) => one.begin('Reading formulas', percent, words));
    } else this.#say(this.#shown, (one) => one.report(percent, words));
  }

  #say(shown: Promise<Shown> | undefined, words: (shown: Shown) => void): void {
    if (shown !== undefined) guardedWork(this.#log, 'Progress', async () => words(await shown));
  }
}
