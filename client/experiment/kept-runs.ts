import { dayMilliseconds, type Store } from '../preview/kept.ts';
import { formulaKey } from '../preview/messages.ts';
import { type BenchRun, noRun } from './messages.ts';

/** How far the bench has come with each experiment, over reloads; it goes with the day. */
export interface KeptRuns {
  of(uri: string, experiment: string): BenchRun;
  set(uri: string, experiment: string, run: BenchRun): void;
  renamed(from: string, to: string): void;
  all(): readonly { readonly uri: string; readonly experiment: string; readonly run: BenchRun }[];
}

const storeKey = 'doughwright.experiments';
/** Nobody has more of them in hand. */
const mostExperiments = 20;

export function createKeptRuns(store: Store, now: () => number = Date.now): KeptRuns {
  let kept = new Map(
    Object.entries(
      store.get<Record<string, { readonly run: BenchRun; readonly at: number }>>(storeKey) ?? {},
    ),
  );
  const write = () => void store.update(storeKey, Object.fromEntries(kept));
  const of = (key: string): BenchRun | undefined => {
    const one = kept.get(key);
    return one && now() - one.at < dayMilliseconds ? one.run : undefined;
  };
  return {
    of: (uri, experiment) => of(formulaKey(uri, experiment)) ?? noRun,
    set(uri, experiment, run) {
      const key = formulaKey(uri, experiment);
      kept.delete(key);
      kept.set(key, { run, at: now() });
      kept = new Map([...kept].slice(-mostExperiments));
      write();
    },
    renamed(from, to) {
      kept = new Map(
        [...kept].map(([key, one]) => {
          const isOf = key.startsWith(`${from}\n`) || key.startsWith(`${from}/`);
          return [isOf ? to + key.slice(from.length) : key, one];
        }),
      );
      write();
    },
    all: () =>
      [...kept.keys()].flatMap((key) => {
        const at = key.indexOf('\n');
        const run = of(key);
        return run ? [{ uri: key.slice(0, at), experiment: key.slice(at + 1), run }] : [];
      }),
  };
}
