const nextTurn: (run: () => void) => void =
  typeof setImmediate === 'function' ? (run) => void setImmediate(run) : (run) => void setTimeout(run, 0);

/** A client that never stops sending is still answered after this many milliseconds. */
const longestWait = 200;

/** How long background work may hold the event loop at a time, in milliseconds: somebody may be typing. */
const slice = 2;

/**
 * Knows when the input queue is empty. Edits are applied as they come; whatever is computed from them waits for this
 * moment, so that a burst of edits is answered once. There is no timer on the way: an edit that comes alone is
 * answered within two turns of the event loop.
 */
export class Schedule {
  #taken = 0;
  #waiting: (() => void)[] = [];
  #behind: (() => void)[] = [];
  #isListening = false;

  /** To be told of each message as it leaves the input queue. */
  messageTaken(): void {
    this.#taken++;
  }

  /** Resolves when the input queue is empty. */
  quiet(): Promise<void> {
    return new Promise((resolve) => {
      this.#waiting.push(resolve);
      this.#listen();
    });
  }

  /** Resolves when the input queue is empty and nobody waits for an answer. */
  idle(): Promise<void> {
    return new Promise((resolve) => {
      this.#behind.push(resolve);
      this.#listen();
    });
  }

  /**
   * Does a long job a step at a time, giving way to whatever the client asks. The job ends when a step answers false.
   */
  async inBackground(step: () => boolean): Promise<void> {
    for (;;) {
      await this.idle();
      const until = performance.now() + slice;
      do {
        if (!step()) return;
      } while (performance.now() < until);
    }
  }

  #listen(): void {
    if (this.#isListening) return;
    this.#isListening = true;
    this.#lookOut(performance.now() + longestWait);
  }

  // Messages are taken one a turn. The first turn may begin before the next message is taken; only a second one with
  // none taken in between shows that there is none.
  #lookOut(deadline: number): void {
    const before = this.#taken;
    nextTurn(() =>
      nextTurn(() => {
        if (this.#taken !== before && performance.now() < deadline) return this.#lookOut(deadline);
        this.#isListening = false;
        const resolved = this.#waiting.length > 0 ? this.#waiting : this.#behind;
        if (resolved === this.#waiting) this.#waiting = [];
        else this.#behind = [];
        for (const resolve of resolved) resolve();
        if (this.#behind.length > 0) this.#listen();
      }),
    );
  }
}
