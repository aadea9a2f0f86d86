import type { DevelopmentFactor } from '../calc/calibration/calibration-development.ts';
import { solveFormula } from '../calc/formula/formula.ts';
import { doughOf } from '../calc/formula/formula-input.ts';
import { type Known, unknown } from '../calc/known.ts';
import { type FormulaModel, formulaOf } from '../model/formula-model.ts';
import { type ResolvedFormula, resolveFormula } from '../model/resolve.ts';
import type { Scope } from '../model/scope.ts';
import { wholeBlock } from '../model/variant.ts';
import { parseFile } from '../syntax/file.ts';
import type { Block } from '../syntax/tree.ts';
import { type Message, message } from '../words/message.ts';
import type { Analysis } from './analysis.ts';
import { analyseMix, type MixAnalysis } from './mix-analysis.ts';
import { seenDevelopment, seesStages } from './observed-development.ts';

/** Resolves, solves and mixes a formula. Never throws; what is not known stays so, with its reason. */
export function analyse(model: FormulaModel, scope: Scope): Analysis {
  const resolved = resolveFormula(model, scope);
  const plain = analyseResolved(resolved);
  if (!seesStages(model)) return plain;
  // What its trials saw widens the bands of the programme; it is looked at only when somebody asks for that.
  let seen: { readonly factor: DevelopmentFactor | undefined } | undefined;
  return analyseResolved({
    ...resolved,
    get seenDevelopment() {
      seen ??= { factor: seenDevelopment(plain, scope) };
      return seen.factor;
    },
  });
}

/** A formula as its lines say it, with what it takes of its base; `undefined` for a block that is no formula. */
export function analyseBlock(block: Block, scope: Scope): Analysis | undefined {
  const model = formulaOf(wholeBlock(block, scope));
  return model === undefined ? undefined : analyse(model, scope);
}

/** What a changed text of one formula would come to, seen from where its file stands; `undefined` where it is no longer one formula. */
export function analyseText(text: string, scope: Scope): TriedText | undefined {
  const { blocks } = parseFile(text);
  const block = blocks.length === 1 ? blocks[0]?.block : undefined;
  const analysis = block === undefined ? undefined : analyseBlock(block, scope);
  return block === undefined || analysis === undefined ? undefined : { block, analysis };
}

/** A changed text, read and worked out. */
export interface TriedText {
  readonly block: Block;
  readonly analysis: Analysis;
}

/** The same for a formula already resolved, at whatever yield its input now has. */
export function analyseResolved(resolved: ResolvedFormula): Analysis {
  // Half of a variant is no formula: what its base would bring is not there to be added up. Nor is one with both sides of a merge.
  const isHeld = resolved.baseProblem !== undefined || resolved.unfinishedMerge === true;
  const { solved, problems } = isHeld ? { solved: undefined, problems: [] } : solveFormula(resolved.input);
  const dough = doughOf(resolved.input).id;
  const index = resolved.mixes.findIndex((mix) => mix.sectionId === dough);
  let mixes: readonly Known<MixAnalysis, Message>[] | undefined;
  const mixed = (): readonly Known<MixAnalysis, Message>[] => {
    mixes ??= resolved.mixes.map((mix) =>
      solved === undefined ? unknown(message('mixing.no-lines')) : analyseMix(resolved, solved, mix),
    );
    return mixes;
  };
  return {
    resolved,
    solved,
    problems,
    get mixes() {
      return mixed();
    },
    get doughMix() {
      return mixed()[index] ?? unknown(message('mixing.no-programme'));
    },
  };
}
