import { elementAt, figureAt } from '../../text/element.ts';
import {
  type FormulaStructure,
  type LineFacts,
  type Mass,
  type Masses,
  massesAt,
  type PerGram,
  type SectionFacts,
  type Sums,
  sectionAt,
} from './formula-facts.ts';
import type { Unsolved } from './formula-result.ts';
import { isBesideBowl } from './formula-structure.ts';
import { steamByLine } from './formula-water.ts';

/** Whether the composition of a part is known. */
export function isPerGram(value: PerGram | Unsolved): value is PerGram {
  return 'byKey' in value;
}

/** Indexes of the ingredients in a part and in the parts inside it. */
export function keysWithin(structure: FormulaStructure, section: SectionFacts): number[] {
  const keys = new Set<number>();
  for (const line of linesWithin(structure, section)) if (line.keyIndex >= 0) keys.add(line.keyIndex);
  return [...keys];
}

/** The lines of a section and of the parts inside it that go where it goes, each section once. */
export function linesWithin(structure: FormulaStructure, section: SectionFacts): LineFacts[] {
  const lines: LineFacts[] = [];
  const seen = new Set([section.index]);
  const pending = [section];
  for (let at = pending.pop(); at; at = pending.pop()) {
    for (const line of at.lines) {
      lines.push(line);
      if (line.child < 0 || seen.has(line.child) || isBesideBowl(line, structure.sections)) continue;
      seen.add(line.child);
      pending.push(sectionAt(structure, line.child));
    }
  }
  return lines;
}

/** Composition of a gram of the part: culture has the same, so the fed lines alone tell it. */
export function perGramOf(
  masses: Masses,
  section: SectionFacts,
  lines: readonly Mass[],
  sums: Sums,
  guess: readonly (number | undefined)[],
): PerGram | Unsolved {
  const { structure } = masses;
  const { fed } = sums;
  if (fed.unsolved) return fed.unsolved;
  const unsolved = sums.flour.unsolved ?? sums.water.unsolved ?? sums.preferment.unsolved;
  if (unsolved) return unsolved;

  let exact = isInProportion(structure, lines, sums);
  for (const line of section.lines) {
    const inner = line.child < 0 ? undefined : masses.sections[line.child]?.perGram;
    if (inner && isPerGram(inner) && !inner.exact) exact = false;
  }
  // Lines in proportion have the same composition at any weight; otherwise it holds at the guess only.
  const weights = new Array<number>(structure.unknowns + 1).fill(1);
  if (!exact) {
    for (let i = 0; i < structure.unknowns; i++) weights[i] = guess[i] ?? 1000;
    masses.approximate = true;
  }
  const total = weigh(fed, weights);
  if (!(total > 0)) return nothingThere(section);
  const byKey = new Array<number>(structure.keys.size).fill(0);
  for (const line of section.lines) {
    const share = weigh(elementAt(lines, line.position), weights) / total;
    if (line.keyIndex >= 0) byKey[line.keyIndex] = figureAt(byKey, line.keyIndex) + share;
    if (line.child < 0 || isBesideBowl(line, structure.sections)) continue;
    const inner = massesAt(masses, line.child).perGram;
    if (!isPerGram(inner)) continue;
    for (let key = 0; key < byKey.length; key++) byKey[key]! += share * inner.byKey[key]!;
  }
  if (section.cookingLoss > 0) {
    // The sums are net of what steams away, and so is what is made.
    const lineShares = lines.map((line) => weigh(line, weights) / total);
    const steam = section.cookingLoss / (1 - section.cookingLoss);
    const steamShares = steamByLine(section, lineShares, steam);
    for (const { keyIndex, position } of section.lines) {
      if (keyIndex >= 0) byKey[keyIndex] = figureAt(byKey, keyIndex) - figureAt(steamShares, position);
    }
  }
  return {
    flour: weigh(sums.flour, weights) / total,
    water: weigh(sums.water, weights) / total,
    effectiveWater: weigh(sums.effectiveWater, weights) / total,
    preferment: weigh(sums.preferment, weights) / total,
    byKey,
    exact,
  };
}

/** All lines hang on the same 100 %, or none on any. */
function isInProportion(structure: FormulaStructure, lines: readonly Mass[], sums: Sums): boolean {
  let present = 0;
  for (let i = 0; i <= structure.unknowns; i++) {
    const used = sums.fed.terms[i] !== 0 || sums.flour.terms[i] !== 0 || sums.water.terms[i] !== 0;
    if (used || lines.some((line) => line.terms[i] !== 0)) present++;
  }
  return present <= 1;
}

function weigh(mass: Mass, weights: number[]): number {
  let sum = 0;
  for (let i = 0; i < weights.length; i++) sum += mass.terms[i]! * weights[i]!;
  return sum;
}

/** Why a section has no composition that weighs nothing. */
export function nothingThere(section: SectionFacts): Unsolved {
  return { code: 'nothing-there', sectionId: section.input.id };
}
