import { figureAt } from '../../text/element.ts';
import { linesWithin } from './formula-composition.ts';
import type { Equation } from './formula-equations.ts';
import { drawEquations, supplyEquations, yieldEquation } from './formula-equations.ts';
import {
  type LineFacts,
  type Mass,
  type Masses,
  massesAt,
  type SectionFacts,
  sectionAt,
} from './formula-facts.ts';
import { doughOf } from './formula-input.ts';
import { addGrams } from './formula-masses.ts';
import type { FormulaProblem, Unsolved } from './formula-result.ts';
import { addEquation, type LinearSystem, linearSystem, solution } from './solve-linear.ts';

/** The weights of 100 % of all sections, as far as the formula says them. */
export interface Scale {
  readonly values: (number | undefined)[];
  /** 0: in grams. Above: only in proportion to the others of the same number. -1: not known. */
  readonly groups: Int32Array;
  readonly assumed: boolean;
  /** By section: why its scale is not known. */
  readonly reasons: (Unsolved | undefined)[];
  /** Lines that take what is `remaining` of a part, where nothing says how much of it is made. */
  readonly openRemainders: readonly LineFacts[];
}

export interface Evaluated {
  readonly value: number;
  /** As in Scale; undefined for a mass that is nothing at any scale. */
  readonly group: number | undefined;
}

/** Weights that two ways of writing agree on up to this share are the same weight, rounded on a scale. */
const agreeing = 1e-3;
const assumedGrams = 1000;

/**
 * Fixes the scale of every section: by flour in grams first, then the yield, what is drawn, and what is taken of each
 * part. Without any of these the formula is told for 1000 g of flour. Problems are added to `problems`.
 */
export function scaleOf(masses: Masses, problems: FormulaProblem[]): Scale {
  const { structure } = masses;
  const reasons: (Unsolved | undefined)[] = new Array(structure.sections.length).fill(undefined);
  const refused: Equation[] = [];

  const forYield = yieldEquation(masses, problems);
  const equations = [
    ...(forYield ? [forYield] : []),
    ...drawEquations(masses, problems),
    ...supplyEquations(masses),
  ];
  for (const { left, right, owner } of equations) {
    const unsolved = left.unsolved ?? right.unsolved;
    if (unsolved) reasons[owner] ??= unsolved;
  }
  let system = systemOf(equations, structure.unknowns, refused);

  const groups = new Int32Array(structure.unknowns).fill(-1);
  settle(system, groups, 0);
  // Where a part is as large as nobody knows, the yield leaves nothing to tell it by: all that is left are proportions.
  const { base } = doughOf(structure);
  const isOpen = base.kind === 'column' && groups[base.column] === -1;
  if (isOpen && forYield !== undefined && reasons.some((reason) => reason !== undefined))
    system = systemOf(
      equations.filter((equation) => equation !== forYield),
      structure.unknowns,
      [],
    );
  const openRemainders = openRemaindersOf(masses, system, forYield !== undefined);
  const assumed = scaleDough(masses, system, groups, reasons, forYield !== undefined, problems);
  scaleRest(masses, system, groups, reasons, problems);
  const scale: Scale = { values: solution(system), groups, assumed, reasons, openRemainders };
  for (const equation of refused) problems.push(equation.problem((mass) => gramsOf(scale, mass)));
  reportUnused(masses, problems);
  return scale;
}

/** All that can be said as equations, each added to those before; what contradicts them goes into `refused`. */
function systemOf(equations: readonly Equation[], unknowns: number, refused: Equation[]): LinearSystem {
  const system = linearSystem(unknowns);
  for (const equation of equations) {
    const { left, right } = equation;
    if (left.unsolved ?? right.unsolved) continue;
    const size = Math.max(
      Math.abs(figureAt(left.terms, unknowns)),
      Math.abs(figureAt(right.terms, unknowns)),
    );
    const difference = left.terms.map((term, i) => term - figureAt(right.terms, i));
    const outcome = addEquation(system, difference, size);
    if (outcome.kind === 'contradiction' && outcome.relative > agreeing) refused.push(equation);
  }
  return system;
}

/** Evaluates a mass at the scale; undefined when some of it is not known, or known in different proportions. */
export function evaluate(scale: Scale, mass: Mass): Evaluated | undefined {
  if (mass.unsolved) return undefined;
  const { terms } = mass;
  const n = terms.length - 1;
  let value = figureAt(terms, n);
  let largest = Math.abs(value);
  let group: number | undefined = value === 0 ? undefined : 0;
  for (let i = 0; i < n; i++) {
    const term = figureAt(terms, i);
    if (term === 0) continue;
    const own = scale.groups[i];
    const weight = scale.values[i];
    if (own === undefined || own < 0 || weight === undefined || (group !== undefined && group !== own))
      return undefined;
    group = own;
    const part = term * weight;
    largest = Math.max(largest, Math.abs(part));
    value += part;
  }
  // What two equal weights leave of each other is nothing, not a hair less.
  if (value < 0 && value >= -1e-12 * largest) value = 0;
  return Number.isFinite(value) ? { value, group } : undefined;
}

/** What a mass weighs, grams; undefined where some of it is not known, or known only in proportion to others. */
export function gramsOf(scale: Scale, mass: Mass): number | undefined {
  const evaluated = evaluate(scale, mass);
  return evaluated && (evaluated.group ?? 0) === 0 ? evaluated.value : undefined;
}

/** How many times `whole` goes into `mass`; known without a scale where both are in the same proportion. */
export function ratioOf(scale: Scale, mass: Mass, whole: Mass): number | undefined {
  const a = evaluate(scale, mass);
  const b = evaluate(scale, whole);
  if (!a || !b || !(b.value > 0)) return undefined;
  if (a.group !== undefined && a.group !== b.group) return undefined;
  const ratio = a.value / b.value;
  return Number.isFinite(ratio) ? ratio : undefined;
}

/** The first line that takes what is left of a part, where nothing says how much of the part there is. */
export function openRemainder(
  scale: Scale,
): { line: LineFacts; problem: FormulaProblem; unsolved: Unsolved } | undefined {
  const line = scale.openRemainders[0];
  if (line === undefined) return undefined;
  const place = { sectionId: line.section.input.id, lineId: line.input.id };
  const values = { name: line.input.name };
  return {
    line,
    problem: { kind: 'under-determined', ...place, values },
    unsolved: { code: 'no-scale', ...place },
  };
}

/**
 * A part in percent that is taken as `remaining` is as large as nobody said, unless the yield leaves just so much for it.
 * Where the dough's own scale is open too, 1000 g of flour stand in for it.
 */
function openRemaindersOf(masses: Masses, system: LinearSystem, hasYield: boolean): readonly LineFacts[] {
  const { structure } = masses;
  const lines = structure.sections.flatMap((section) =>
    section.lines.filter((line) => line.child >= 0 && line.amount.kind === 'remaining'),
  );
  if (lines.length === 0) return lines;
  let known = system;
  const dough = doughOf(masses);
  if (!hasYield && !dough.flour.unsolved) {
    known = { ...system, rows: system.rows.map((row) => row.slice()), pivots: system.pivots.slice() };
    addEquation(known, equalTo(dough.flour, assumedGrams));
  }
  const values = solution(known);
  return lines.filter((line) => {
    const { base } = sectionAt(structure, line.child);
    return base.kind === 'column' && values[base.column] === undefined;
  });
}

function settle(system: LinearSystem, groups: Int32Array, group: number): void {
  const values = solution(system);
  for (let i = 0; i < values.length; i++) if (values[i] !== undefined && groups[i] === -1) groups[i] = group;
}

/** Says what the dough weighs where no equation did. True when 1000 g of flour had to be assumed. */
function scaleDough(
  masses: Masses,
  system: LinearSystem,
  groups: Int32Array,
  reasons: (Unsolved | undefined)[],
  hasYield: boolean,
  problems: FormulaProblem[],
): boolean {
  const { structure } = masses;
  const dough = doughOf(structure);
  if (dough.base.kind !== 'column' || groups[dough.base.column] !== -1) return false;
  const sectionId = dough.input.id;
  const forYield = structure.input.yield;

  let assumed = false;
  if (forYield?.kind === 'pieces' && forYield.pieceGrams === undefined) {
    problems.push({ kind: 'no-piece-weight', sectionId, values: { pieces: forYield.count } });
    reasons[0] ??= { code: 'no-piece-weight', sectionId };
  } else if (!reasons[0]) {
    const gramLine = linesWithin(structure, dough).find((line) => {
      return line.amount.kind === 'linear' && line.amount.grams > 0;
    });
    const doubt = reasons.find((reason) => reason !== undefined);
    if (!hasYield && !gramLine) assumed = true;
    else if (doubt) reasons[0] = doubt;
    else {
      const values = { name: dough.input.name };
      const related = gramLine ? [{ sectionId: gramLine.section.input.id, lineId: gramLine.input.id }] : [];
      problems.push({ kind: 'under-determined', sectionId, related, values });
      reasons[0] = { code: 'no-scale', sectionId };
    }
  }

  const { flour, base } = doughOf(masses);
  const byFlour = !flour.unsolved && figureAt(flour.terms, dough.base.column) > 0;
  addEquation(system, equalTo(byFlour ? flour : base, assumedGrams));
  settle(system, groups, assumed ? 0 : 1);
  if (groups[dough.base.column] === -1) {
    addEquation(system, equalTo(base, assumedGrams));
    settle(system, groups, assumed ? 0 : 1);
  }
  return assumed;
}

/** Sections that hang on nothing still have proportions; each gets a scale of its own to tell them by. */
function scaleRest(
  masses: Masses,
  system: LinearSystem,
  groups: Int32Array,
  reasons: (Unsolved | undefined)[],
  problems: FormulaProblem[],
): void {
  const { structure } = masses;
  let group = 2;
  for (const index of structure.order.toReversed()) {
    const section = sectionAt(structure, index);
    if (section.base.kind !== 'column' || groups[section.base.column] !== -1) continue;
    const own = massesAt(masses, section.index);
    if (!reasons[section.index] && section.index > 0) {
      reasons[section.index] = own.made.unsolved ?? { code: 'no-scale', sectionId: section.input.id };
      if (!own.made.unsolved && !isUnused(section)) {
        const values = { name: section.input.name };
        problems.push({ kind: 'under-determined', sectionId: section.input.id, values });
      }
    }
    addEquation(system, equalTo(own.base, assumedGrams));
    settle(system, groups, group);
    group++;
  }
}

function equalTo(mass: Mass, grams: number): number[] {
  const less: Mass = { ...mass, terms: mass.terms.slice() };
  addGrams(less, -grams);
  return less.terms;
}

function isUnused(section: SectionFacts): boolean {
  return section.index > 0 && section.inBowl && section.uses.length === 0 && section.input.draws.length === 0;
}

/** While some ingredient elsewhere is unknown, the part may be the one that is misspelt there. */
function reportUnused(masses: Masses, problems: FormulaProblem[]): void {
  const { structure } = masses;
  for (const section of structure.sections.filter((one) => isUnused(one))) {
    const others = structure.sections.filter((one) => one !== section);
    if (others.some((one) => one.lines.some((line) => !line.input.known))) continue;
    problems.push({ kind: 'unused-part', sectionId: section.input.id, values: { name: section.input.name } });
  }
}
