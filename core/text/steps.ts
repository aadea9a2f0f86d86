/**
 * Work that may be long, done a step at a time: whoever runs it may do something else between two steps, or stop. The
 * answer comes with the last step. It must not be taken up again once what it works on has changed.
 */
export type Steps<T> = Generator<void, T, void>;

/** Does all the steps at once. */
export function finish<T>(steps: Steps<T>): T {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}
