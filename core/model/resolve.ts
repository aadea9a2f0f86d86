import type {
  DrawInput,
  FormulaInput,
  LineInput,
  SectionInput,
  SectionKind,
  YieldInput,
} from '../calc/formula/formula-input.ts';
import { holdsMergeMarks } from '../syntax/merge-marks.ts';
import type { Block, IngredientStatement } from '../syntax/tree.ts';
import { roleWords } from '../syntax/vocabulary.ts';
import { firstOf } from '../text/element.ts';
import { cupsOf, plainAmount, weighed } from './amount-input.ts';
import { type Bakery, bakeryOf } from './bakery.ts';
import { type FormulaModel, formulaOf, type LineModel, lineId, type SectionModel } from './formula-model.ts';
import { findIngredient, type Ingredient } from './found-ingredient.ts';
import type { NameProblem } from './name-problem.ts';
import { fractionOf, saidValue } from './properties.ts';
import { type KeptProgramme, type ResolvedMix, resolveMix, resolveTrial } from './resolve-mix.ts';
import type { Definition, Scope } from './scope.ts';
import { baseProblem, basesOf, wholeBlock } from './variant.ts';

/** A formula with every name looked up, as plain data ready to be computed with. */
export interface ResolvedFormula {
  /** How many times as fast as worked out its own trials saw the dough develop, where one mixer and one flour alone show it. */
  readonly seenDevelopment?: { readonly least: number; readonly most?: number } | undefined;
  readonly model: FormulaModel;
  readonly input: FormulaInput;
  /** By key, as the lines of the input name them. */
  readonly ingredients: ReadonlyMap<string, Ingredient>;
  readonly bakery: Bakery;
  readonly mixes: readonly ResolvedMix[];
  /** What each trial keeps of the programme it ran, in the order of the trials. */
  readonly kept: readonly (KeptProgramme | undefined)[];
  readonly problems: readonly NameProblem[];
  /** The statement of each ingredient line as it is taken, by line id. */
  readonly statements: ReadonlyMap<string, IngredientStatement>;
  readonly doughCelsius?: number;
  /** Why what a variant takes of its base is not known, and so nothing of it is. */
  readonly baseProblem?: NameProblem;
  /** The lines of both sides of a merge stand in it, its base or a formula it takes, so that nothing may be added up. */
  readonly unfinishedMerge?: true;
}

const deepest = 8;

/** Looks up every name of a formula from where its file stands. */
export function resolveFormula(model: FormulaModel, scope: Scope): ResolvedFormula {
  const bakery = bakeryOf(scope);
  const gathering: Gathering = {
    scope,
    bakery: cupsOf(model, bakery),
    ingredients: new Map(),
    problems: [],
    statements: new Map(),
    sections: [],
    merging: [model.block, ...basesOf(model.block, scope).map(({ block }) => block)],
  };
  gatherFormula(gathering, model, '', 'dough', [model.name.folded]);
  const base = baseProblem(model.block, scope);
  const loss = fractionOf(model.said, 'loss') ?? 0;
  const bakeLoss = fractionOf(model.said, 'bake loss');
  const made = yieldOf(model);
  const input: FormulaInput = {
    sections: gathering.sections,
    lossFraction: loss,
    ...(bakeLoss === undefined ? {} : { bakeLossFraction: bakeLoss }),
    ...(made === undefined ? {} : { yield: made }),
  };
  const celsius = saidValue(model.said, 'dough temperature', 'temperature')?.celsius;
  return {
    model,
    input,
    ingredients: gathering.ingredients,
    bakery,
    mixes: model.mixes.map((_, index) => resolveMix(gathering, model, index)),
    kept: model.trials.map((trial) => resolveTrial(gathering, model, trial)),
    problems: gathering.problems,
    statements: gathering.statements,
    ...(base === undefined ? {} : { baseProblem: base }),
    ...(gathering.merging.some(holdsMergeMarks) ? { unfinishedMerge: true } : {}),
    ...(celsius === undefined ? {} : { doughCelsius: celsius }),
  };
}

interface Gathering {
  readonly scope: Scope;
  readonly bakery: Bakery;
  readonly ingredients: Map<string, Ingredient>;
  readonly problems: NameProblem[];
  readonly statements: Map<string, IngredientStatement>;
  readonly sections: SectionInput[];
  /** The blocks that must not be in the middle of a merge. */
  readonly merging: Block[];
}

/**
 * Adds the sections of a formula. A formula that is an ingredient of another comes in as a part of it, with ids of its
 * own; its problems are told in its own file, not again here.
 */
function gatherFormula(
  to: Gathering,
  model: FormulaModel,
  prefix: string,
  kind: SectionKind,
  path: readonly string[],
): void {
  const enclosed = new Set(
    model.processes.flatMap((process) =>
      process.steps
        .filter(({ step }) => step.known === 'enclose')
        .map(({ step }) => step.words.folded.replace(/^enclose\s+/, '')),
    ),
  );
  const partIds = new Map<string, string>();
  for (const section of model.sections.slice(1)) {
    const folded = section.name?.folded;
    if (folded !== undefined && !partIds.has(folded)) partIds.set(folded, prefix + section.id);
  }
  const at = to.sections.length;
  const later: { model: FormulaModel; id: string; path: readonly string[] }[] = [];
  model.sections.forEach((section, index) => {
    const isEnclosed = section.name !== undefined && enclosed.has(section.name.folded);
    const sectionKind = index === 0 ? kind : isEnclosed ? 'filling' : (section.kind as SectionKind);
    const gathered = gatherSection(to, section, sectionKind, prefix, partIds, path, later, model.name.text);
    to.sections.push(isEnclosed && section.kind === 'part' ? { ...gathered, enclosed: true } : gathered);
  });
  if (prefix !== '' && to.sections[at] !== undefined) {
    // The dough of a formula used as an ingredient goes by the id that its users' lines hold.
    to.sections[at] = { ...to.sections[at]!, id: prefix };
  }
  for (const one of later) {
    const isPreferment = ['ripe culture', 'ferment'].some((word) => one.model.said.has(word));
    gatherFormula(to, one.model, one.id, isPreferment ? 'preferment' : 'part', one.path);
  }
}

function gatherSection(
  to: Gathering,
  section: SectionModel,
  kind: SectionKind,
  prefix: string,
  partIds: ReadonlyMap<string, string>,
  path: readonly string[],
  later: { model: FormulaModel; id: string; path: readonly string[] }[],
  formulaName: string,
): SectionInput {
  const quiet = prefix !== '';
  const tell = (problem: NameProblem): void => {
    if (!quiet) to.problems.push(problem);
  };
  const lines: LineInput[] = section.lines.map((line) => {
    const statement = boilingAsNamed(chosenReading(line, to.scope, partIds));
    const id = prefix + line.id;
    if (!quiet) to.statements.set(id, statement);
    const partId = partIds.get(statement.name.folded);
    const common = { id, name: statement.name.text };
    if (partId !== undefined) {
      return {
        ...common,
        key: partId,
        part: true,
        role: 'other',
        isFlour: false,
        known: true,
        amount: plainAmount(statement.amount),
      };
    }
    const found = findIngredient(statement.name, to.scope);
    if (found.kind === 'unknown') {
      const formulas = to.scope.find('formula', statement.name.folded)[0];
      if (formulas !== undefined) {
        return formulaLine(to, statement, formulas, common, line.line, path, later, tell);
      }
    }
    if (found.kind === 'several')
      tell({ kind: 'several', line: line.line, name: statement.name, definitions: found.definitions });
    if (found.kind === 'unknown') tell({ kind: 'unknown-ingredient', line: line.line, name: statement.name });
    if (found.kind !== 'found') {
      return {
        ...common,
        key: `?${statement.name.folded}`,
        part: false,
        role: 'other',
        isFlour: false,
        known: false,
        amount: plainAmount(statement.amount),
      };
    }
    const { ingredient } = found;
    to.ingredients.set(ingredient.key, ingredient);
    const water = ingredient.role === 'flour' ? undefined : ingredient.composition.water;
    return {
      ...common,
      key: ingredient.key,
      part: false,
      role: ingredient.role,
      isFlour: ingredient.isFlour,
      known: true,
      amount: weighed(statement, ingredient, to.bakery, (missing) =>
        tell({ kind: missing, line: line.line, name: statement.name }),
      ),
      ...(water === undefined ? {} : { waterFraction: water }),
    };
  });
  const culture = fractionOf(section.said, 'ripe culture');
  const keepBack = saidValue(section.said, 'keep back', 'mass')?.grams;
  const cookingLoss = fractionOf(section.said, 'cooking loss');
  return {
    id: prefix + section.id,
    name: section.name?.text ?? (kind === 'dough' ? formulaName : section.kind),
    kind,
    lines,
    draws: drawsOf(section, prefix, to.scope, partIds),
    ...(culture === undefined ? {} : { ripeCultureFraction: culture }),
    ...(keepBack === undefined ? {} : { keepBackGrams: keepBack }),
    ...(cookingLoss === undefined ? {} : { cookingLossFraction: cookingLoss }),
  };
}

/** `boiling water` says how warm it is, unless the line says otherwise. */
function boilingAsNamed(statement: IngredientStatement): IngredientStatement {
  const isBoiling = statement.name.folded === 'boiling water' && statement.celsius === undefined;
  return isBoiling ? { ...statement, celsius: boilingCelsius } : statement;
}

/** Of water at sea level. */
const boilingCelsius = 100;

/** Which reading of `type 550 500 g` holds: the one whose name is known. */
function chosenReading(
  line: LineModel,
  scope: Scope,
  partIds: ReadonlyMap<string, string>,
): IngredientStatement {
  const { otherwise, problems } = line.parsed;
  if (otherwise?.kind !== 'ingredient') return line.statement;
  const name = problems.find((one) => one.unlessKnown !== undefined)?.unlessKnown;
  if (name === undefined) return line.statement;
  const isKnown = partIds.has(name) || findIngredient(otherwise.name, scope).kind !== 'unknown';
  return isKnown ? otherwise : line.statement;
}

function formulaLine(
  to: Gathering,
  statement: IngredientStatement,
  definitions: readonly Definition[],
  common: { id: string; name: string },
  line: number,
  path: readonly string[],
  later: { model: FormulaModel; id: string; path: readonly string[] }[],
  tell: (problem: NameProblem) => void,
): LineInput {
  const unusable: LineInput = {
    ...common,
    key: `?${statement.name.folded}`,
    part: false,
    role: 'other',
    isFlour: false,
    known: false,
    amount: plainAmount(statement.amount),
  };
  if (definitions.length > 1) {
    tell({ kind: 'several', line, name: statement.name, definitions });
    return unusable;
  }
  const definition = firstOf(definitions);
  const seen = to.scope.from(definition.uri);
  const model = formulaOf(wholeBlock(definition.block, seen));
  if (model === undefined || baseProblem(definition.block, seen) !== undefined) return unusable;
  if (path.includes(model.name.folded) || path.length >= deepest) {
    tell({ kind: 'loop-of-formulas', line, name: statement.name });
    return unusable;
  }
  to.merging.push(definition.block, ...basesOf(definition.block, seen).map(({ block }) => block));
  const id = `F${path.length}:${model.name.folded}:`;
  if (!to.sections.some((section) => section.id === id) && !later.some((one) => one.id === id)) {
    later.push({ model, id, path: [...path, model.name.folded] });
  }
  return {
    ...common,
    key: id,
    part: true,
    role: 'other',
    isFlour: false,
    known: true,
    amount: plainAmount(statement.amount),
  };
}

function drawsOf(
  section: SectionModel,
  prefix: string,
  scope: Scope,
  partIds: ReadonlyMap<string, string>,
): DrawInput[] {
  return (section.said.get('draws') ?? []).flatMap(({ line, statement: { value } }): DrawInput[] => {
    if (value?.form !== 'draws') return [];
    const id = prefix + lineId(line);
    const role = roleWords.find((word) => word === value.name.folded);
    const isIngredient = scope.find('ingredient', value.name.folded).length > 0;
    if (role !== undefined && !isIngredient && role !== 'water' && role !== 'salt') {
      return [{ id, of: { kind: 'role', role }, fraction: value.fraction }];
    }
    const partId = partIds.get(value.name.folded);
    const found = findIngredient(value.name, scope);
    const key = partId ?? (found.kind === 'found' ? found.ingredient.key : `?${value.name.folded}`);
    return [{ id, of: { kind: 'ingredient', key }, fraction: value.fraction }];
  });
}

function yieldOf(model: FormulaModel): YieldInput | undefined {
  const value = model.said.get('yield')?.find((one) => one.statement.value !== undefined)?.statement.value;
  switch (value?.form) {
    case 'yieldPieces':
      return { kind: 'pieces', count: value.count, pieceGrams: value.grams, baked: value.baked };
    case 'yieldMass':
      return value.baked ? { kind: 'baked', grams: value.grams } : { kind: 'dough', grams: value.grams };
    case 'yieldFlour':
      return { kind: 'flour', grams: value.grams };
    default:
      return undefined;
  }
}
