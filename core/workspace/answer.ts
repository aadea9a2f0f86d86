import { type Analysis, analyse } from '../analysis/analysis.ts';
import { formulaOf } from '../model/formula-model.ts';
import type { Definition, DefinitionKind, Scope } from '../model/scope.ts';
import { type BlockFindings, checkBlock } from '../rules/check.ts';
import type { Block } from '../syntax/tree.ts';
import type { Files } from './files.ts';

/** What was looked up to make an answer, so that it can be told whether the answer still stands. */
interface LookUp {
  readonly kind: DefinitionKind;
  /** A name, `''` for the nearest of a kind, `undefined` for all names of a kind. */
  readonly folded: string | undefined;
  readonly blocks: readonly Block[];
}

interface Kept {
  version: number;
  readonly lookUps: LookUp[];
  readonly scope: Scope;
  analysis: { readonly value: Analysis | undefined } | undefined;
  findings: BlockFindings | undefined;
}

/**
 * What is computed of each block, kept as long as the block and everything it looked up stay the same. A keystroke
 * makes one new block; a change of a flour makes stale exactly the blocks that looked that flour up.
 */
export class BlockAnswers {
  private kept = new WeakMap<Block, Kept>();
  private readonly files: Files;

  constructor(files: Files) {
    this.files = files;
  }

  analysisOf(uri: string, block: Block): Analysis | undefined {
    const kept = this.keptOf(uri, block);
    if (kept.analysis === undefined) {
      const model = formulaOf(block);
      kept.analysis = { value: model === undefined ? undefined : analyse(model, kept.scope) };
    }
    return kept.analysis.value;
  }

  findingsOf(uri: string, block: Block): BlockFindings {
    const kept = this.keptOf(uri, block);
    if (kept.findings === undefined) {
      const analysis = this.analysisOf(uri, block);
      kept.findings = checkBlock({
        uri,
        block,
        scope: kept.scope,
        ...(analysis === undefined ? {} : { analysis }),
      });
    }
    return kept.findings;
  }

  /** Whether an answer was made for the block and no longer stands. */
  isStale(uri: string, block: Block): boolean {
    const kept = this.kept.get(block);
    return kept !== undefined && !this.stands(uri, kept);
  }

  private keptOf(uri: string, block: Block): Kept {
    const before = this.kept.get(block);
    if (before !== undefined && this.stands(uri, before)) return before;
    const lookUps: LookUp[] = [];
    const made: Kept = {
      version: this.files.version,
      lookUps,
      scope: recording(this.files.scopeOf(uri), lookUps),
      analysis: undefined,
      findings: undefined,
    };
    this.kept.set(block, made);
    return made;
  }

  private stands(uri: string, kept: Kept): boolean {
    if (kept.version === this.files.version) return true;
    const scope = this.files.scopeOf(uri);
    for (const lookUp of kept.lookUps) if (!sameBlocks(ask(scope, lookUp), lookUp.blocks)) return false;
    kept.version = this.files.version;
    return true;
  }
}

function ask(scope: Scope, lookUp: LookUp): readonly Definition[] {
  if (lookUp.folded === undefined) return scope.names(lookUp.kind);
  if (lookUp.folded === '') {
    const nearest = scope.nearest(lookUp.kind);
    return nearest === undefined ? [] : [nearest];
  }
  return scope.find(lookUp.kind, lookUp.folded).flat();
}

function sameBlocks(definitions: readonly Definition[], blocks: readonly Block[]): boolean {
  return (
    definitions.length === blocks.length && definitions.every((one, index) => one.block === blocks[index])
  );
}

function recording(scope: Scope, lookUps: LookUp[]): Scope {
  const note = (
    kind: DefinitionKind,
    folded: string | undefined,
    definitions: readonly Definition[],
  ): void => {
    if (lookUps.some((one) => one.kind === kind && one.folded === folded)) return;
    lookUps.push({ kind, folded, blocks: definitions.map((one) => one.block) });
  };
  return {
    find: (kind, folded) => {
      const found = scope.find(kind, folded);
      if (folded !== '') note(kind, folded, found.flat());
      return found;
    },
    nearest: (kind) => {
      const found = scope.nearest(kind);
      note(kind, '', found === undefined ? [] : [found]);
      return found;
    },
    names: (kind) => {
      const found = scope.names(kind);
      note(kind, undefined, found);
      return found;
    },
  };
}
