import { figureAt } from '../../text/element.ts';
import { isPerGram } from './formula-composition.ts';
import {
  keyLineAt,
  type LineFacts,
  type Mass,
  type Masses,
  massesAt,
  massOf,
  type SectionFacts,
} from './formula-facts.ts';
import { type DrawInput, doughOf, type YieldInput } from './formula-input.ts';
import { addMass, zeroMass } from './formula-masses.ts';
import type { FormulaProblem, LinePlace, Unsolved } from './formula-result.ts';
import { isUsableGrams } from './formula-structure.ts';

/** One equation that helps to fix the scale: two masses that have to be the same. */
export interface Equation {
  readonly left: Mass;
  readonly right: Mass;
  /** Index of the section whose scale hangs on it. */
  readonly owner: number;
  /** What to say when it contradicts the equations before it. */
  readonly problem: (grams: (mass: Mass) => number | undefined) => FormulaProblem;
}

/** What the divider has to receive, or the flour, as an equation on the whole dough. */
export function yieldEquation(masses: Masses, problems: FormulaProblem[]): Equation | undefined {
  const { structure } = masses;
  const { input } = structure;
  const dough = doughOf(structure);
  const sectionId = dough.input.id;
  const wanted = input.yield;
  const losses = lossesOf(masses, problems);
  if (!wanted) return undefined;

  const yielded = zeroMass(structure);
  const right = zeroMass(structure);
  const grams = yieldGrams(wanted);
  right.terms[structure.unknowns] = grams ?? 0;
  const problem: Equation['problem'] = (gramsOf) => ({
    kind: 'two-scales',
    sectionId,
    related: linesThatFixScale(structure.sections),
    values: { yieldGrams: grams ?? '', linesGrams: gramsOf(yielded) ?? '' },
  });
  const equation: Equation = { left: yielded, right, owner: 0, problem };
  const count = wanted.kind === 'pieces' ? wanted.count : 1;
  if (
    !(count > 0) ||
    !Number.isFinite(count) ||
    (grams !== undefined && !(grams > 0 && isUsableGrams(grams)))
  ) {
    problems.push({ kind: 'impossible-yield', sectionId, values: { yield: String(grams ?? count) } });
    yielded.unsolved = { code: 'impossible-amount', sectionId };
    return equation;
  }
  if (grams === undefined) return undefined;

  const whole = doughOf(masses);
  if (wanted.kind === 'flour') addMass(yielded, whole.flour, 1);
  else {
    const baked = wanted.kind === 'baked' || (wanted.kind === 'pieces' && wanted.baked);
    const left = baked ? losses.baked : losses.dough;
    if (typeof left !== 'number') {
      yielded.unsolved = left;
      return equation;
    }
    addMass(yielded, dividedMass(masses), left);
  }
  return equation;
}

/** What is there to be divided, before any loss: the dough less what is kept back, and what is enclosed in it. */
export function dividedMass(masses: Masses): Mass {
  const divided = zeroMass(masses.structure);
  addMass(divided, doughOf(masses).used, 1);
  addMass(divided, enclosedMass(masses), 1);
  return divided;
}

/** What is folded into the mixed dough before it is divided. */
export function enclosedMass(masses: Masses): Mass {
  const enclosed = zeroMass(masses.structure);
  for (const section of masses.structure.sections) {
    if (section.input.enclosed) addMass(enclosed, massesAt(masses, section.index).used, 1);
  }
  return enclosed;
}

/** What the formula has of each drawn ingredient times the share drawn is what the part brings. */
export function drawEquations(masses: Masses, problems: FormulaProblem[]): Equation[] {
  const equations: Equation[] = [];
  for (const section of masses.structure.sections) {
    for (const draw of section.draws) equations.push(drawEquation(masses, section, draw, problems));
  }
  return equations;
}

/** What is taken of a part is what is made of it, less what is kept back. */
export function supplyEquations(masses: Masses): Equation[] {
  const { structure } = masses;
  const equations: Equation[] = [];
  for (const section of structure.sections) {
    const own = massesAt(masses, section.index);
    const fills = section.uses.some((line) => line.amount.kind === 'remaining');
    const [first, ...others] = section.uses;
    if (first === undefined || section.draws.length > 0 || fills) continue;
    const taken = zeroMass(structure);
    for (const line of section.uses) {
      addMass(taken, massOf(masses, line), 1);
    }
    if (!isPerGram(own.perGram) && own.perGram.code === 'nothing-there') taken.unsolved ??= own.perGram;
    const problem = (grams: (mass: Mass) => number | undefined): FormulaProblem => ({
      kind: 'part-amounts-differ',
      ...placeOf(first),
      related: [...others.map(placeOf), { sectionId: section.input.id }],
      values: { name: section.input.name, madeGrams: grams(own.used) ?? '', takenGrams: grams(taken) ?? '' },
    });
    equations.push({ left: taken, right: own.used, owner: section.index, problem });
  }
  return equations;
}

/** Fractions of the weighed dough that are left for the divider and after baking; problems once. */
export function lossesOf(
  masses: Masses,
  problems: FormulaProblem[],
): { dough: number | Unsolved; baked: number | Unsolved } {
  const { input } = masses.structure;
  const sectionId = doughOf(masses.structure).input.id;
  const wanted = input.yield;
  const impossible = (property: string, value: number): Unsolved => {
    problems.push({ kind: 'impossible-loss', sectionId, values: { property, value: String(value) } });
    return { code: 'impossible-amount', sectionId };
  };
  const isLoss = (value: number): boolean => value >= 0 && value < 1;
  const dough = isLoss(input.lossFraction) ? 1 - input.lossFraction : impossible('loss', input.lossFraction);
  const bakeLoss = input.bakeLossFraction;
  if (bakeLoss === undefined) {
    const needed = wanted?.kind === 'baked' || (wanted?.kind === 'pieces' && wanted.baked);
    if (needed) problems.push({ kind: 'bake-loss-unknown', sectionId, values: {} });
    return { dough, baked: { code: 'bake-loss-unknown', sectionId } };
  }
  if (!isLoss(bakeLoss)) return { dough, baked: impossible('bakeLoss', bakeLoss) };
  return { dough, baked: typeof dough === 'number' ? dough * (1 - bakeLoss) : dough };
}

function yieldGrams(wanted: YieldInput): number | undefined {
  if (wanted.kind !== 'pieces') return wanted.grams;
  return wanted.pieceGrams === undefined ? undefined : wanted.count * wanted.pieceGrams;
}

function drawEquation(
  masses: Masses,
  section: SectionFacts,
  draw: DrawInput,
  problems: FormulaProblem[],
): Equation {
  const { structure } = masses;
  const own = massesAt(masses, section.index);
  const dough = doughOf(structure);
  const sectionId = section.input.id;
  const wanted = zeroMass(structure);
  const brought = zeroMass(structure);
  const name = draw.of.kind === 'role' ? draw.of.role : draw.of.key;
  const values = { drawId: draw.id, name, part: section.input.name };
  const equation: Equation = {
    left: brought,
    right: wanted,
    owner: section.index,
    problem: (grams) => ({
      kind: 'contradiction',
      sectionId,
      values: { ...values, wantedGrams: grams(wanted) ?? '', broughtGrams: grams(brought) ?? '' },
    }),
  };
  const refuse = (kind: FormulaProblem['kind'], lines: readonly LineFacts[]): Equation => {
    const unknown = lines.find((line) => !line.input.known);
    if (unknown) brought.unsolved = { code: 'unknown-ingredient', ...placeOf(unknown) };
    else {
      problems.push({
        kind,
        sectionId,
        values: kind === 'impossible-amount' ? { ...values, property: 'draws' } : values,
      });
      brought.unsolved = { code: 'reported', sectionId };
    }
    return equation;
  };

  if (!isUsableGrams(draw.fraction)) return refuse('impossible-amount', []);
  let found = false;
  for (const line of dough.lines) {
    if (!isDrawn(draw, line)) continue;
    found = true;
    addMass(wanted, massOf(masses, line), draw.fraction);
  }
  if (!found) return refuse('drawn-not-in-formula', dough.lines);
  if (!isPerGram(own.perGram)) {
    brought.unsolved = own.perGram;
    return equation;
  }
  let share = 0;
  for (let key = 0; key < own.perGram.byKey.length; key++) {
    if (isDrawn(draw, keyLineAt(structure, key))) share += figureAt(own.perGram.byKey, key);
  }
  if (share === 0) return refuse('drawn-not-in-part', section.lines);
  addMass(brought, own.used, share);
  return equation;
}

function isDrawn(draw: DrawInput, line: LineFacts): boolean {
  if (line.keyIndex < 0) return false;
  if (draw.of.kind === 'ingredient') return line.input.key === draw.of.key;
  return draw.of.role === 'flour' ? line.flour : line.input.role === draw.of.role;
}

function placeOf(line: LineFacts): LinePlace {
  return { sectionId: line.section.input.id, lineId: line.input.id };
}

/** Flour lines in grams in the bowl: beside a yield they are a second source of scale. */
function linesThatFixScale(sections: readonly SectionFacts[]): LinePlace[] {
  return sections
    .filter((section) => section.inBowl && section.base.kind === 'fixed')
    .flatMap((section) => section.lines)
    .filter((line) => line.flour && line.amount.kind === 'linear' && line.amount.grams > 0)
    .map(placeOf);
}
