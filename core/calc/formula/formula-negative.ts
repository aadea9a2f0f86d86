import { elementAt, figureAt } from '../../text/element.ts';
import { type LineFacts, type Masses, massesAt, massOf, sectionAt } from './formula-facts.ts';
import { waterAfterCooking } from './formula-masses.ts';
import type { FormulaProblem, Unsolved } from './formula-result.ts';
import { evaluate, gramsOf, ratioOf, type Scale } from './formula-scale.ts';
import { effectiveWater } from './formula-water.ts';

export interface ImpossibleLine {
  readonly line: LineFacts;
  /** Absent where the cause has been told already. */
  readonly problem: FormulaProblem | undefined;
  readonly unsolved: Unsolved;
}

/** A part that keeps back more than its grams make; from then on nothing is kept back. */
export function impossibleKeepBack(masses: Masses, scale: Scale): FormulaProblem | undefined {
  for (const section of masses.structure.sections) {
    if (section.keepBackGrams === 0) continue;
    const { made, used } = massesAt(masses, section.index);
    const usedGrams = gramsOf(scale, used);
    const madeGrams = gramsOf(scale, made);
    if (usedGrams === undefined || madeGrams === undefined || usedGrams >= -1e-9 * madeGrams) continue;
    const values = { name: section.input.name, madeGrams, keepBackGrams: section.keepBackGrams };
    section.keepBackGrams = 0;
    return { kind: 'keep-back-exceeds-made', sectionId: section.input.id, values };
  }
  return undefined;
}

/** A part of which more steams away than it has water; from then on nothing does. */
export function impossibleCooking(masses: Masses, scale: Scale): FormulaProblem | undefined {
  for (const section of masses.structure.sections) {
    const [left, lost] = [waterAfterCooking(masses, section), massesAt(masses, section.index).steam];
    if (left === undefined || lost === undefined) continue;
    const [water, steam] = [evaluate(scale, left), evaluate(scale, lost)];
    if (water === undefined || steam === undefined || water.value >= -1e-9 * steam.value) continue;
    const values = { property: 'cookingLoss', value: String(section.cookingLoss) };
    section.cookingLoss = 0;
    return { kind: 'impossible-amount', sectionId: section.input.id, values };
  }
  return undefined;
}

/**
 * Lines in grams that outweigh the whole would leave less than nothing for 100 %: no numbers come from that. The dough is
 * asked first, for its parts follow it.
 */
export function impossibleBase(masses: Masses, scale: Scale): FormulaProblem | undefined {
  const { structure } = masses;
  for (const index of structure.order.toReversed()) {
    const section = sectionAt(structure, index);
    if (section.base.kind !== 'column') continue;
    const { column } = section.base;
    if (scale.groups[column] !== 0 || elementAt(scale.values, column) > -1e-9) continue;
    const { made, used } = massesAt(masses, section.index);
    const sectionId = section.input.id;
    const totalGrams = gramsOf(scale, section.index === 0 ? made : used);
    const values: Record<string, number | string> = { name: section.input.name };
    values.linesGrams = figureAt(made.terms, structure.unknowns);
    if (totalGrams !== undefined) values.totalGrams = totalGrams;
    const related = section.lines
      .filter((line) => line.amount.kind === 'linear' && line.amount.grams > 0)
      .map((line) => ({ sectionId, lineId: line.input.id }));
    section.base = { kind: 'none', unsolved: { code: 'reported', sectionId } };
    return { kind: 'grams-exceed-total', sectionId, related, values };
  }
  return undefined;
}

/** The first line whose amount the others leave (`balance`, `to N% hydration`, `remaining`), and leave less than nothing. */
export function impossibleLine(
  masses: Masses,
  scale: Scale,
  told: readonly FormulaProblem[],
): ImpossibleLine | undefined {
  for (const index of masses.structure.order) {
    for (const line of sectionAt(masses.structure, index).lines) {
      const { kind } = line.amount;
      let found: ImpossibleLine | undefined;
      if (kind === 'balance') found = impossibleBalance(masses, scale, line);
      if (kind === 'toHydration') found = impossibleHydration(masses, scale, line, told);
      if (kind === 'remaining') found = impossibleRemainder(masses, scale, line);
      if (found) return found;
    }
  }
  return undefined;
}

function impossibleBalance(masses: Masses, scale: Scale, line: LineFacts): ImpossibleLine | undefined {
  const { section } = line;
  const own = massesAt(masses, section.index);
  const mass = massOf(masses, line);
  const left = evaluate(scale, mass);
  const share = ratioOf(scale, mass, own.base);
  const isSomething = share === undefined ? (left?.value ?? 0) >= 0 : share > 1e-9;
  if (!left || isSomething) return undefined;
  const place = { sectionId: section.input.id, lineId: line.input.id };
  const related = section.lines
    .filter((other) => other.flour && other !== line)
    .map((other) => ({ sectionId: section.input.id, lineId: other.input.id }));
  const values: Record<string, number | string> = { name: line.input.name };
  const baseGrams = gramsOf(scale, own.base);
  if (share !== undefined) values.sumFraction = 1 - share;
  if (share !== undefined && baseGrams !== undefined) values.sumGrams = (1 - share) * baseGrams;
  const problem: FormulaProblem = { kind: 'nothing-left-for-balance', ...place, related, values };
  return { line, problem, unsolved: { code: 'reported', ...place } };
}

function impossibleRemainder(masses: Masses, scale: Scale, line: LineFacts): ImpossibleLine | undefined {
  const { section } = line;
  const { used } = massesAt(masses, line.child);
  const left = evaluate(scale, massOf(masses, line));
  const madeGrams = gramsOf(scale, used);
  if (!left || madeGrams === undefined || left.value >= -1e-9 * madeGrams) return undefined;
  const child = sectionAt(masses.structure, line.child);
  const place = { sectionId: section.input.id, lineId: line.input.id };
  const related = child.uses
    .filter((use) => use !== line)
    .map((use) => ({ sectionId: use.section.input.id, lineId: use.input.id }));
  const values = { name: child.input.name, madeGrams, takenGrams: madeGrams - left.value };
  const problem: FormulaProblem = { kind: 'part-amounts-differ', ...place, related, values };
  return { line, problem, unsolved: { code: 'reported', ...place } };
}

function impossibleHydration(
  masses: Masses,
  scale: Scale,
  line: LineFacts,
  told: readonly FormulaProblem[],
): ImpossibleLine | undefined {
  const { section, amount } = line;
  if (amount.kind !== 'toHydration') return undefined;
  const own = massesAt(masses, section.index);
  const water = evaluate(scale, massOf(masses, line));
  const flour = evaluate(scale, own.fedFlour);
  const place = { sectionId: section.input.id, lineId: line.input.id };

  if (flour && !(flour.value > 0)) {
    // Flour that weighs nothing for want of anything to weigh is no mistake of this line.
    if (section.lines.some((other) => other.flour) && water && water.value >= 0) return undefined;
    const doubtful = section.lines.some((other) => !other.input.known);
    const isTold =
      doubtful ||
      told.some((problem) => problem.kind === 'no-flour' && problem.sectionId === place.sectionId);
    const problem: FormulaProblem = { kind: 'no-flour', ...place, values: { name: line.input.name } };
    return { line, problem: isTold ? undefined : problem, unsolved: { code: 'no-flour', ...place } };
  }

  if (!water || water.value >= -1e-9 * (flour?.value ?? 0)) return undefined;
  const values: Record<string, number | string> = {
    name: line.input.name,
    fraction: amount.fraction,
    effective: amount.effective ? 'yes' : 'no',
  };
  const over = -water.value * (amount.effective ? effectiveWater(line) : 1);
  const reached = flour === undefined ? Number.NaN : amount.fraction + over / flour.value;
  if (Number.isFinite(reached)) values.ownFraction = reached;
  if ((water.group ?? 0) === 0) values.overGrams = -water.value;
  const problem: FormulaProblem = { kind: 'below-own-water', ...place, values };
  return { line, problem, unsolved: { code: 'reported', ...place } };
}
