import type { Connection } from 'vscode-languageserver';
import type { Said } from '../../core/index.ts';
import { guardedWork, type Log } from '../host/guard.ts';
import { said } from './said.ts';

/** Work that is done sooner needs no word, in milliseconds. */
const quietMilliseconds = 1000;
/** Between two words, in milliseconds. */
const pause = 200;

type Shown = Awaited<ReturnType<Connection['window']['createWorkDoneProgress']>>;

/** Shows in the editor how far the reading of the workspace has come, where it takes long. */
export class Progress {
  readonly #connection: Connection;
  readonly #log: Log;
  readonly #words: (said: Said) => Promise<string>;
  #began: number | undefined;
  #told = 0;
  #shown: Promise<Shown> | undefined;

  constructor(connection: Connection, log: Log, words: (said: Said) => Promise<string>) {
    this.#connection = connection;
    this.#log = log;
    this.#words = words;
  }

  /** So many files of those found so far are known; all of them when there is nothing left to do. */
  tell(known: number, found: number): void {
    const now = performance.now();
    this.#began ??= now;
    if (known >= found) {
      const shown = this.#shown;
      this.#began = undefined;
      this.#shown = undefined;
      if (shown !== undefined) this.#work(async () => (await shown).done());
      return;
    }
    if (now - this.#began < quietMilliseconds || now - this.#told < pause) return;
    this.#told = now;
    const percent = Math.floor((100 * known) / found);
    const far = said('session.read-so-far', { count: known, otherCount: found });
    const shown = this.#shown;
    if (shown === undefined) {
      const begun = this.#begin(percent, far);
      this.#shown = begun;
      this.#work(() => begun);
      return;
    }
    this.#work(async () => {
      const [one, words] = [await shown, await this.#words(far)];
      // Meanwhile all may be known.
      if (this.#shown === shown) one.report(percent, words);
    });
  }

  async #begin(percent: number, far: Said): Promise<Shown> {
    const shown = await this.#connection.window.createWorkDoneProgress();
    shown.begin(await this.#words(said('session.reading')), percent, await this.#words(far));
    return shown;
  }

  #work(work: () => Promise<unknown>): void {
    guardedWork(this.#log, 'Progress', work);
  }
}
