import { type Analysis, analyse } from '../analysis/analysis.ts';
import { type PlanAnalysis, planOf } from '../analysis/plan.ts';
import { shortTotals } from '../features/formula-words.ts';
import { type SemanticToken, semanticTokensOf } from '../features/semantic-tokens.ts';
import { formulaOf } from '../model/formula-model.ts';
import type { PlacedBlock } from '../model/meaning.ts';
import type { Definition, DefinitionKind, Scope } from '../model/scope.ts';
import { type BlockFindings, checkBlock } from '../rules/check.ts';
import type { Block } from '../syntax/tree.ts';
import type { Message } from '../words/message.ts';
import type { Files, NameChange } from './files.ts';
import { Lookers } from './lookers.ts';

/** What was looked up of one kind to make an answer, so that it can be told whether the answer still stands. */
interface LookUps {
  readonly kind: DefinitionKind;
  /** The version of the kind up to which they are known to stand. */
  version: number;
  /** By name; there once a name was looked up. */
  found: Map<string, readonly (readonly Definition[])[]> | undefined;
  nearest: { readonly found: Definition | undefined } | undefined;
  names: readonly Definition[] | undefined;
}

interface Kept {
  version: number;
  readonly lookUps: LookUps[];
  readonly scope: Scope;
  analysis: { readonly value: Analysis | undefined } | undefined;
  findings: BlockFindings | undefined;
  totals: { readonly message: Message | undefined } | undefined;
  plan: { readonly value: PlanAnalysis | undefined } | undefined;
  tokens: readonly SemanticToken[] | undefined;
}

/** As many analyses as a file of several thousand lines needs. */
const mostAnalyses = 300;

/**
 * What is computed of each block, kept as long as the block and everything it looked up stay the same. A keystroke
 * makes one new block; a change of a flour makes stale exactly the blocks that looked that flour up.
 */
export class BlockAnswers {
  private kept = new WeakMap<Block, Kept>();
  /** Files with an answer that no longer stood when another was asked for: who has the former is to be told of it. */
  private readonly replaced = new Set<string>();
  private readonly files: Files;
  private lookers = new Lookers();
  private lookersWhenCleared = 0;
  /** Weak, so that the blocks of former keystrokes are not held. */
  private readonly recent = new Set<WeakRef<Kept>>();
  private readonly references = new WeakMap<Kept, WeakRef<Kept>>();

  constructor(files: Files) {
    this.files = files;
  }

  /** Every answer was made under other conditions. */
  forget(): void {
    this.kept = new WeakMap();
    this.recent.clear();
    this.lookers = new Lookers();
  }

  analysisOf(uri: string, block: Block): Analysis | undefined {
    const kept = this.keptOf(uri, block);
    if (kept.analysis === undefined) {
      const model = formulaOf(block);
      kept.analysis = { value: model === undefined ? undefined : analyse(model, kept.scope) };
    }
    this.use(kept);
    return kept.analysis.value;
  }

  // Findings are small and are kept for every block. An analysis is large and quickly made again, so only those asked
  // for last are kept: a workspace of thousands of formulas must not cost memory for each.
  private use(kept: Kept): void {
    const self = this.references.get(kept) ?? new WeakRef(kept);
    this.references.set(kept, self);
    this.recent.delete(self);
    this.recent.add(self);
    if (this.recent.size <= mostAnalyses) return;
    const [oldest] = this.recent;
    this.recent.delete(oldest!);
    const idle = oldest!.deref();
    if (idle !== undefined) idle.analysis = undefined;
  }

  findingsOf(uri: string, block: Block): BlockFindings {
    const kept = this.keptOf(uri, block);
    if (kept.findings === undefined) {
      const analysis = this.analysisOf(uri, block);
      const plan = this.planOf(uri, block);
      kept.findings = checkBlock({
        uri,
        block,
        scope: kept.scope,
        ...(analysis === undefined ? {} : { analysis }),
        ...(plan === undefined ? {} : { plan }),
      });
      // Said now, while the analysis is at hand, they cost next to nothing.
      kept.totals ??= { message: analysis === undefined ? undefined : shortTotals(analysis) };
    }
    return kept.findings;
  }

  /** A plan worked out; `undefined` for a block of another kind. */
  planOf(uri: string, block: Block): PlanAnalysis | undefined {
    if (block.top?.kind !== 'plan') return undefined;
    const kept = this.keptOf(uri, block);
    kept.plan ??= { value: planOf(block, kept.scope) };
    return kept.plan.value;
  }

  /** The totals of a formula in one short line; kept like findings, so that a list of a whole workspace costs little. */
  totalsOf(uri: string, block: Block): Message | undefined {
    const kept = this.keptOf(uri, block);
    if (kept.totals === undefined) {
      const analysis = this.analysisOf(uri, block);
      kept.totals = { message: analysis === undefined ? undefined : shortTotals(analysis) };
    }
    return kept.totals.message;
  }

  /** What every stretch of the block is, lines counted in it. */
  tokensOf(at: PlacedBlock): readonly SemanticToken[] {
    const kept = this.keptOf(at.uri, at.block);
    kept.tokens ??= semanticTokensOf(at, kept.scope);
    return kept.tokens;
  }

  /**
   * The files whose answers no longer stand because of what changed since this was last asked. That answers of one edited
   * file no longer stand goes without saying; of several, one may hang on another.
   */
  affected(edited: readonly string[]): string[] {
    const except = edited.length === 1 ? edited[0] : undefined;
    const stale = new Set(this.replaced);
    this.replaced.clear();
    if (except !== undefined) stale.delete(except);
    for (const change of this.files.takeChanges()) {
      for (const uri of this.lookers.of(change.kind, change.folded)) {
        if (uri !== except && !stale.has(uri) && this.isStaleBy(uri, change)) stale.add(uri);
      }
    }
    this.clearLookers();
    return [...stale];
  }

  private isStaleBy(uri: string, { kind, folded }: NameChange): boolean {
    const blocks = this.files.get(uri)?.source?.blocks ?? [];
    const scope = this.files.scopeOf(uri);
    return blocks.some(({ block }) => {
      const kept = this.kept.get(block);
      if (kept === undefined || kept.version === this.files.version) return false;
      const lookUps = kept.lookUps.find((one) => one.kind === kind);
      if (lookUps === undefined || lookUps.version === this.files.versionOf(kind)) return false;
      const levels = lookUps.found?.get(folded);
      const found = new Map(levels === undefined ? [] : [[folded, levels]]);
      return !areStill(scope, { ...lookUps, found });
    });
  }

  // Names that are being typed are looked up at every letter, and nobody asks for them again.
  private clearLookers(): void {
    if (this.lookers.size < 2 * this.lookersWhenCleared + 100_000) return;
    this.lookers = new Lookers();
    for (const uri of this.files.uris()) {
      for (const { block } of this.files.get(uri)?.source?.blocks ?? []) {
        for (const { kind, found, nearest, names } of this.kept.get(block)?.lookUps ?? []) {
          if (nearest !== undefined || names !== undefined) this.lookers.note(kind, undefined, uri);
          for (const folded of found?.keys() ?? []) this.lookers.note(kind, folded, uri);
        }
      }
    }
    this.lookersWhenCleared = this.lookers.size;
  }

  private keptOf(uri: string, block: Block): Kept {
    const before = this.kept.get(block);
    if (before !== undefined && this.stands(uri, before)) return before;
    if (before !== undefined) this.replaced.add(uri);
    const lookUps: LookUps[] = [];
    const made: Kept = {
      version: this.files.version,
      lookUps,
      scope: recording(this.files, uri, lookUps, (kind, folded) => {
        // Nobody asks a lean workspace what a change makes stale.
        if (!this.files.lean) this.lookers.note(kind, folded, uri);
      }),
      analysis: undefined,
      findings: undefined,
      totals: undefined,
      plan: undefined,
      tokens: undefined,
    };
    this.kept.set(block, made);
    return made;
  }

  private stands(uri: string, kept: Kept): boolean {
    if (kept.version === this.files.version) return true;
    for (const lookUps of kept.lookUps) {
      const version = this.files.versionOf(lookUps.kind);
      if (lookUps.version === version) continue;
      if (!areStill(this.files.scopeOf(uri), lookUps)) return false;
      lookUps.version = version;
    }
    kept.version = this.files.version;
    return true;
  }
}

function areStill(scope: Scope, { kind, found, nearest, names }: LookUps): boolean {
  for (const [folded, levels] of found ?? []) {
    const now = scope.find(kind, folded);
    if (now === levels) continue;
    if (now.length !== levels.length) return false;
    for (const [index, level] of now.entries()) if (!areSame(level, levels[index]!)) return false;
  }
  if (nearest !== undefined && scope.nearest(kind)?.block !== nearest.found?.block) return false;
  return names === undefined || areSame(scope.names(kind), names);
}

// A definition that only moved is another object of the same block.
function areSame(some: readonly Definition[], others: readonly Definition[]): boolean {
  return some.length === others.length && some.every((one, index) => one.block === others[index]!.block);
}

/** The scope of a file that remembers what it answered: the same question again costs a look into a map. */
function recording(
  files: Files,
  uri: string,
  lookUps: LookUps[],
  note: (kind: DefinitionKind, folded?: string) => void,
): Scope {
  const of = (kind: DefinitionKind): LookUps => {
    let made = lookUps.find((one) => one.kind === kind);
    if (made === undefined) {
      const version = files.versionOf(kind);
      made = { kind, version, found: undefined, nearest: undefined, names: undefined };
      lookUps.push(made);
    }
    return made;
  };
  const { usual } = files.scopeOf(uri);
  return {
    ...(usual === undefined ? {} : { usual }),
    find: (kind, folded) => {
      const lookedUp = of(kind);
      let levels = lookedUp.found?.get(folded);
      if (levels === undefined) {
        levels = files.scopeOf(uri).find(kind, folded);
        lookedUp.found ??= new Map();
        lookedUp.found.set(folded, levels);
        note(kind, folded);
      }
      return levels;
    },
    nearest: (kind) => {
      const lookedUp = of(kind);
      lookedUp.nearest ??= { found: files.scopeOf(uri).nearest(kind) };
      note(kind);
      return lookedUp.nearest.found;
    },
    names: (kind) => {
      const lookedUp = of(kind);
      lookedUp.names ??= files.scopeOf(uri).names(kind);
      note(kind);
      return lookedUp.names;
    },
  };
}
