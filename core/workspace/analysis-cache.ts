import { analyseBlock } from '../analysis/analyse.ts';
import type { Analysis } from '../analysis/analysis.ts';
import { type ExperimentAnalysis, experimentOf } from '../analysis/experiment-analysis.ts';
import { type PlanAnalysis, planOf } from '../analysis/plan-analysis.ts';
import { briefTotals, shortTotals } from '../facts/formula-words.ts';
import { type SemanticToken, semanticTokensOf } from '../features/outline/semantic-tokens.ts';
import type { PlacedBlock } from '../model/meaning.ts';
import type { Scope } from '../model/scope.ts';
import { type BlockFindings, checkBlock } from '../rules/engine/check.ts';
import type { Block } from '../syntax/tree.ts';
import type { Message } from '../words/message.ts';
import { Dependents } from './dependents.ts';
import { LookUps, type NamesNow } from './look-ups.ts';
import type { Snapshot } from './snapshot.ts';

/** A snapshot with its names, and the blocks of a file in it. */
export interface Moment extends NamesNow {
  readonly snapshot: Snapshot;
}

interface Kept {
  /** The names, roots and usual conditions that it is known to stand for. */
  stamp: number;
  roots: Snapshot['roots'];
  usual: Snapshot['settings']['usual'];
  readonly lookUps: LookUps;
  readonly scope: Scope;
  analysis: { readonly value: Analysis | undefined } | undefined;
  findings: BlockFindings | undefined;
  totals: ShortTotals | undefined;
  plan: { readonly value: PlanAnalysis | undefined } | undefined;
  experiment: { readonly value: ExperimentAnalysis | undefined } | undefined;
  tokens: readonly SemanticToken[] | undefined;
}

/** As many analyses as a file of several thousand lines needs. */
const mostAnalyses = 300;

/** As many more notes of who depends on what than when they were gathered last. */
const mostNotes = 100_000;

/**
 * What is computed of each block, kept as long as the block and everything it looked up stay the same. A keystroke
 * makes one new block; a change of a flour makes stale exactly the blocks that looked that flour up. Whoever asks says of
 * which moment, and gets the answer of that one.
 */
export class AnalysisCache {
  readonly #kept = new WeakMap<Block, Kept>();
  readonly #dependents: Dependents | undefined;
  #notesWhenGathered = 0;
  /** Weak, so that the blocks of former keystrokes are not held. */
  readonly #recent = new Set<WeakRef<Kept>>();
  readonly #references = new WeakMap<Kept, WeakRef<Kept>>();
  /** What look-ups see while an answer is made. */
  #moment: Moment | undefined;

  readonly #failed: (what: string) => void;

  /** `isLean`: nobody asks what a change makes stale. `failed` hears of rules that failed. */
  constructor(isLean: boolean, failed: (what: string) => void) {
    this.#failed = failed;
    this.#dependents = isLean ? undefined : new Dependents();
  }

  analysisOf(moment: Moment, uri: string, block: Block): Analysis | undefined {
    const kept = this.#keptOf(moment, uri, block);
    if (kept.analysis === undefined) {
      kept.analysis = { value: analyseBlock(block, kept.scope) };
    }
    this.#use(kept);
    return kept.analysis.value;
  }

  findingsOf(moment: Moment, uri: string, block: Block): BlockFindings {
    const kept = this.#keptOf(moment, uri, block);
    if (kept.findings === undefined) {
      const analysis = this.analysisOf(moment, uri, block);
      const plan = this.planOf(moment, uri, block);
      const experiment = this.experimentOf(moment, uri, block);
      kept.findings = checkBlock({
        uri,
        block,
        scope: kept.scope,
        ...(analysis === undefined ? {} : { analysis }),
        ...(plan === undefined ? {} : { plan }),
        ...(experiment === undefined ? {} : { experiment }),
      });
      for (const failure of kept.findings.failures) this.#failed(failure);
      // Worded now, while the analysis is at hand, they cost next to nothing.
      kept.totals ??= shortOf(analysis);
    }
    return kept.findings;
  }

  /** A plan worked out; `undefined` for a block of another kind. */
  planOf(moment: Moment, uri: string, block: Block): PlanAnalysis | undefined {
    if (block.top?.kind !== 'plan') return undefined;
    const kept = this.#keptOf(moment, uri, block);
    kept.plan ??= { value: planOf(block, kept.scope) };
    return kept.plan.value;
  }

  /** An experiment worked out; `undefined` for a block of another kind. */
  experimentOf(moment: Moment, uri: string, block: Block): ExperimentAnalysis | undefined {
    if (block.top?.kind !== 'experiment') return undefined;
    const kept = this.#keptOf(moment, uri, block);
    kept.experiment ??= { value: experimentOf(block, kept.scope) };
    return kept.experiment.value;
  }

  /** The totals of a formula in a short line and a shorter one; kept like findings, so that a list of a whole workspace costs little. */
  totalsOf(moment: Moment, uri: string, block: Block): ShortTotals {
    const kept = this.#keptOf(moment, uri, block);
    if (kept.totals === undefined) {
      const analysis = this.analysisOf(moment, uri, block);
      kept.totals = shortOf(analysis);
    }
    return kept.totals;
  }

  /** What every stretch of the block is, lines counted in it. */
  tokensOf(moment: Moment, at: PlacedBlock): readonly SemanticToken[] {
    const kept = this.#keptOf(moment, at.uri, at.block);
    kept.tokens ??= semanticTokensOf(at, kept.scope);
    return kept.tokens;
  }

  /**
   * The files, of those asked about, whose text is as before and whose answers are not, for a definition they looked up came,
   * went or changed. `blocks` are all that there are now.
   */
  affected(before: Moment, now: Moment, blocks: () => Iterable<Block>): Set<string> {
    const stale = new Set<string>();
    if (this.#dependents === undefined || before.index.stamp === now.index.stamp) return stale;
    const [former, present] = [before.scopeOf(''), now.scopeOf('')];
    for (const kind of new Set([...before.index.kinds.keys(), ...now.index.kinds.keys()])) {
      const [old, made] = [before.index.kinds.get(kind), now.index.kinds.get(kind)];
      if (made === undefined || made.stamp === old?.stamp) continue;
      const names = old === undefined ? made.byName.keys() : made.byName.differing(old.byName);
      for (const folded of names)
        for (const uri of this.#dependents.ofName(kind, folded, former, present)) stale.add(uri);
      for (const uri of this.#dependents.ofKind(kind, former, present)) stale.add(uri);
    }
    this.#gather(blocks);
    for (const uri of now.snapshot.texts.differing(before.snapshot.texts)) stale.delete(uri);
    return stale;
  }

  // Findings are small and are kept for every block. An analysis is large and quickly made again, so only those asked
  // for last are kept: a workspace of thousands of formulas must not cost memory for each.
  #use(kept: Kept): void {
    const self = this.#references.get(kept) ?? new WeakRef(kept);
    this.#references.set(kept, self);
    this.#recent.delete(self);
    this.#recent.add(self);
    if (this.#recent.size <= mostAnalyses) return;
    const [oldest] = this.#recent;
    this.#recent.delete(oldest!);
    const idle = oldest!.deref();
    if (idle !== undefined) idle.analysis = undefined;
  }

  // Names that are being typed are looked up at every letter, and nobody asks for them again.
  #gather(blocks: () => Iterable<Block>): void {
    const dependents = this.#dependents;
    if (dependents === undefined || dependents.size < 2 * this.#notesWhenGathered + mostNotes) return;
    dependents.clear();
    for (const block of blocks()) this.#kept.get(block)?.lookUps.note();
    this.#notesWhenGathered = dependents.size;
  }

  #keptOf(moment: Moment, uri: string, block: Block): Kept {
    this.#moment = moment;
    const { settings, roots } = moment.snapshot;
    const before = this.#kept.get(block);
    if (before !== undefined && stands(before, moment)) return before;
    const lookUps = new LookUps(uri, this.#dependents);
    const made: Kept = {
      ...{ stamp: moment.index.stamp, roots, usual: settings.usual, lookUps },
      scope: lookUps.scope(() => this.#moment!),
      ...{
        analysis: undefined,
        findings: undefined,
        totals: undefined,
        plan: undefined,
        experiment: undefined,
        tokens: undefined,
      },
    };
    this.#kept.set(block, made);
    return made;
  }
}

function stands(kept: Kept, moment: Moment): boolean {
  const { settings, roots } = moment.snapshot;
  if (kept.usual !== settings.usual) return false;
  const { stamp } = moment.index;
  if (kept.stamp === stamp && kept.roots === roots) return true;
  if (!kept.lookUps.stand(moment, kept.roots !== roots)) return false;
  kept.stamp = stamp;
  kept.roots = roots;
  return true;
}

/** The totals of a formula in a short line, and in figures alone. */
export interface ShortTotals {
  readonly line?: Message;
  readonly brief?: Message;
}

function shortOf(analysis: Analysis | undefined): ShortTotals {
  const [line, brief] = analysis === undefined ? [] : [shortTotals(analysis), briefTotals(analysis)];
  return { ...(line === undefined ? {} : { line }), ...(brief === undefined ? {} : { brief }) };
}
