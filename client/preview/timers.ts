import { formulaKey, type WorkState } from './messages.ts';

export interface Timers {
  /** Takes the timers of a formula as they run now; what ran before and is not among them is stopped. */
  set(uri: string, formula: string, work: WorkState): void;
  dispose(): void;
}

/** A timer whose end was missed by more than this is told no more: the dough has moved on. */
const lateMilliseconds = 2 * 60 * 60 * 1000;

/** A host counts its waiting in 32 bits, and takes longer for no time at all: 24.8 days; whoever waits longer waits again. */
const longestWait = 2 ** 31 - 1;

/**
 * Tells the end of each running timer once, also where no panel is open to show it and after a reload of the window.
 *
 * @param ended is told the formula and the label of the timer, and by how many milliseconds it comes late
 */
export function createTimers(
  ended: (uri: string, formula: string, label: string, late: number) => void,
  now: () => number = Date.now,
): Timers {
  const running = new Map<
    string,
    { readonly endsAt: number; readonly handle?: ReturnType<typeof setTimeout> }
  >();

  return {
    set(uri, formula, work) {
      const prefix = `${formulaKey(uri, formula)}\n`;
      const wanted = new Map(
        Object.entries(work.timers).map(([key, timer]) => [`${prefix}${key}`, timer] as const),
      );
      for (const [key, timer] of running) {
        if (!key.startsWith(prefix) || wanted.has(key)) continue;
        clearTimeout(timer.handle);
        running.delete(key);
      }
      for (const [key, { label, startedAt, seconds }] of wanted) {
        const endsAt = startedAt + seconds * 1000;
        const before = running.get(key);
        // What was told stands here without a handle, so that it is not told again.
        if (before?.endsAt === endsAt) continue;
        clearTimeout(before?.handle);
        const late = now() - endsAt;
        if (late > lateMilliseconds) {
          running.set(key, { endsAt });
          continue;
        }
        const wait = (): void => {
          const left = endsAt - now();
          const handle = setTimeout(
            left > longestWait ? wait : tellEnd,
            Math.max(0, Math.min(left, longestWait)),
          );
          running.set(key, { endsAt, handle });
        };
        const tellEnd = (): void => {
          running.set(key, { endsAt });
          ended(uri, formula, label, Math.max(0, now() - endsAt));
        };
        wait();
      }
    },
    dispose() {
      for (const { handle } of running.values()) clearTimeout(handle);
      running.clear();
    },
  };
}
