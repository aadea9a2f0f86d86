import { type FormulaModel, formulaOf } from '../model/formula-model.ts';
import { byHand } from '../model/found-mixer.ts';
import { saidValue } from '../model/properties.ts';
import type { Definition, Scope } from '../model/scope.ts';
import { isVariant, wholeBlock } from '../model/variant.ts';

/** One trial of a formula. */
export interface Run {
  readonly definition: Definition;
  readonly index: number;
  /** ISO 8601; '' where the trial has none. */
  readonly date: string;
}

/** What a formula that is tried says of its trials, kept for each while the formula itself is read again only where that is asked for. */
interface Tried {
  /** ISO 8601 or '', by trial. */
  readonly dates: readonly string[];
  /** Mixers that its programmes and trials name, folded, hands among them. */
  readonly mixers: ReadonlySet<string>;
  /** A programme names none, so that it may be any. */
  readonly anyMixer: boolean;
}

/** The trials of all formulas in sight, newest first: those that may have been run on the mixer of this name, or all. */
export function runsOf(scope: Scope, mixer?: string): Run[] {
  const runs = scope.names('tried').flatMap((definition): Run[] => {
    const { dates, mixers, anyMixer } = triedOf(definition, scope);
    if (mixer !== undefined && !anyMixer && !mixers.has(mixer)) return [];
    return dates.map((date, index) => ({ definition, index, date }));
  });
  return runs.sort((one, other) => (one.date < other.date ? 1 : one.date > other.date ? -1 : 0));
}

/** A formula with trials as its own file sees it, a variant made whole. */
export function triedModel({ block, uri }: Definition, scope: Scope): FormulaModel | undefined {
  return formulaOf(wholeBlock(block, scope.from(uri)));
}

const known = new WeakMap<Definition, Tried>();

function triedOf(definition: Definition, scope: Scope): Tried {
  const before = known.get(definition);
  if (before !== undefined) return before;
  const model = triedModel(definition, scope);
  const tried = model === undefined ? nothing : saidOf(model);
  // A variant is another whenever its base is.
  if (!isVariant(definition.block)) known.set(definition, tried);
  return tried;
}

const nothing: Tried = { dates: [], mixers: new Set(), anyMixer: false };

function saidOf({ trials, mixes }: FormulaModel): Tried {
  const mixers = new Set<string>();
  let anyMixer = false;
  const add = (name: string | undefined, isByHand: boolean): void => {
    if (isByHand) mixers.add(byHand.name);
    if (name !== undefined) mixers.add(name);
  };
  for (const { said } of trials) {
    const mixed = saidValue(said, 'mixed', 'mixedIn');
    add((mixed?.name ?? saidValue(said, 'mixer', 'name')?.name)?.folded, mixed?.byHand === true);
  }
  for (const { header } of mixes) {
    if (header.byHand === true) add(undefined, true);
    else if (header.mixer === undefined) anyMixer = true;
    else add(header.mixer.folded, false);
  }
  return { dates: trials.map(({ header }) => header.date ?? ''), mixers, anyMixer };
}
