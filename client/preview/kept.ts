import type { SheetOptions } from '../../server/protocol.ts';
import { formulaKey, noWork, type WorkState } from './messages.ts';

/** Where small plain data outlives a window: VS Code's own store of a workspace is one. */
export interface Store {
  get<T>(key: string): T | undefined;
  update(key: string, value: unknown): PromiseLike<void>;
}

interface KeptOfFormula {
  readonly asked?: SheetOptions;
  readonly work?: WorkState;
  /** When it was last changed, milliseconds since the epoch. */
  readonly at: number;
}

export interface Kept {
  /** What is tried for a formula: nothing where all is as in the file. */
  asked(uri: string, formula: string): SheetOptions;
  setAsked(uri: string, formula: string, asked: SheetOptions): void;
  work(uri: string, formula: string): WorkState;
  setWork(uri: string, formula: string, work: WorkState): void;
  /** A file or folder has another name: what is kept of its formulas goes with it. */
  renamed(from: string, to: string): void;
  /** Every formula that work is kept of. */
  allWork(): readonly { readonly uri: string; readonly formula: string; readonly work: WorkState }[];
}

const storeKey = 'doughwright.panel';
/** A hundred formulas are more than a bakery has in hand. */
const mostFormulas = 100;
/** A room is as warm as it was for a shift; the next day's is asked for anew. */
export const dayMilliseconds = 20 * 60 * 60 * 1000;

/**
 * What the panels keep of each formula over reloads and for all panels alike: what is tried, and how far the work has
 * come. Sizes and what is tried of the formula itself stay until they are taken back; the day's conditions, clock times and work go with the day.
 */
export function createKept(store: Store, now: () => number = Date.now): Kept {
  let all = new Map(Object.entries(store.get<Record<string, KeptOfFormula>>(storeKey) ?? {}));

  const of = (uri: string, formula: string): KeptOfFormula | undefined => {
    const kept = all.get(formulaKey(uri, formula));
    if (!kept || now() - kept.at < dayMilliseconds) return kept;
    const { size, whatIf, map } = kept.asked ?? {};
    const asked = { ...(size && { size }), ...(whatIf && { whatIf }), ...(map && { map }) };
    return Object.keys(asked).length > 0 ? { asked, at: kept.at } : undefined;
  };
  const set = (uri: string, formula: string, change: Partial<KeptOfFormula>) => {
    const key = formulaKey(uri, formula);
    const next = { ...of(uri, formula), ...change, at: now() };
    all.delete(key);
    all.set(key, next);
    all = new Map([...all].slice(-mostFormulas));
    void store.update(storeKey, Object.fromEntries(all));
  };

  return {
    asked: (uri, formula) => of(uri, formula)?.asked ?? {},
    setAsked: (uri, formula, asked) => set(uri, formula, { asked }),
    work: (uri, formula) => of(uri, formula)?.work ?? noWork,
    setWork: (uri, formula, work) => set(uri, formula, { work }),
    renamed(from, to) {
      const moved = [...all].map(([key, one]): [string, KeptOfFormula] => {
        const isOf = key.startsWith(`${from}\n`) || key.startsWith(`${from}/`);
        return [isOf ? to + key.slice(from.length) : key, one];
      });
      all = new Map(moved);
      void store.update(storeKey, Object.fromEntries(all));
    },
    allWork: () =>
      [...all.keys()].flatMap((key) => {
        const at = key.indexOf('\n');
        const [uri, formula] = [key.slice(0, at), key.slice(at + 1)];
        const work = of(uri, formula)?.work;
        return work ? [{ uri, formula, work }] : [];
      }),
  };
}
