import { figureAt } from '../../text/element.ts';
import { isPerGram, keysWithin, nothingThere, perGramOf } from './formula-composition.ts';
import {
  type FormulaStructure,
  keyLineAt,
  type LineFacts,
  type Mass,
  type Masses,
  type PerGram,
  type SectionFacts,
  type SectionMasses,
  type Sums,
  sectionAt,
} from './formula-facts.ts';
import type { Unsolved } from './formula-result.ts';
import { isBesideBowl, isUsableGrams } from './formula-structure.ts';
import { effectiveWater, nominalWater, steamingWater } from './formula-water.ts';

/**
 * Writes every mass of the formula as a linear expression. The composition of a part that mixes grams and
 * percent depends on how much of it is made: it is taken at `guess`, and the caller repeats with the solution.
 */
export function massesOf(structure: FormulaStructure, guess: readonly (number | undefined)[]): Masses {
  const masses: Masses = {
    structure,
    sections: new Array(structure.sections.length).fill(undefined),
    approximate: false,
  };
  for (const index of structure.order) {
    masses.sections[index] = sectionMasses(masses, sectionAt(structure, index), guess);
  }
  return masses;
}

/** A mass of nothing, to be added to. */
export function zeroMass(structure: FormulaStructure): Mass {
  return { terms: new Array<number>(structure.unknowns + 1).fill(0), unsolved: undefined };
}

/**
 * Adds so many times a mass to another. What is not known stays so, with the reason that came first; nothing is added zero
 * times.
 */
export function addMass(to: Mass, mass: Mass, times: number): void {
  if (times === 0) return;
  if (mass.unsolved) to.unsolved ??= mass.unsolved;
  const { terms } = to;
  for (let i = 0; i < terms.length; i++) terms[i]! += times * mass.terms[i]!;
}

/** Adds a weight that hangs on nothing. */
export function addGrams({ terms }: Mass, grams: number): void {
  const last = terms.length - 1;
  terms[last] = figureAt(terms, last) + grams;
}

function sectionMasses(
  masses: Masses,
  section: SectionFacts,
  guess: readonly (number | undefined)[],
): SectionMasses {
  const { structure } = masses;
  const zero = (): Mass => zeroMass(structure);
  const base = baseMass(structure, section);
  const lines: Mass[] = new Array(section.lines.length);
  const sums: Sums = {
    fed: zero(),
    flour: zero(),
    ownFlour: zero(),
    water: zero(),
    effectiveWater: zero(),
    preferment: zero(),
  };

  let balance: LineFacts | undefined;
  let hydration: LineFacts | undefined;
  for (const line of section.lines) {
    if (line.amount.kind === 'balance') balance = line;
    else if (line.amount.kind === 'toHydration') hydration = line;
    else {
      const mass =
        line.amount.kind === 'remaining' ? remainingMass(masses, line) : plainMass(structure, line, base);
      lines[line.position] = mass;
      addLine(masses, sums, line, mass);
    }
  }
  if (section.index === 0) addLackingOfDrawnParts(masses, sums);
  if (balance !== undefined) {
    const mass = zero();
    addMass(mass, base, 1);
    addMass(mass, sums.ownFlour, -1);
    lines[balance.position] = mass;
    addLine(masses, sums, balance, mass);
  }
  if (hydration !== undefined) {
    const mass = hydrationMass(structure, hydration, sums);
    lines[hydration.position] = mass;
    addLine(masses, sums, hydration, mass);
  }

  const steam = takeSteam(structure, section, sums);
  // Nobody takes of the dough, so only its own culture and what is kept back of it ask for its composition.
  const isTaken =
    section.index > 0 || section.keepBackGrams > 0 || section.input.ripeCultureFraction !== undefined;
  const perGram = isTaken ? perGramOf(masses, section, lines, sums, guess) : nothingThere(section);
  const culture = cultureMass(structure, section, base);
  const made = zero();
  addMass(made, sums.fed, 1);
  if (culture) addMass(made, culture, 1);
  const used = zero();
  addMass(used, made, 1);
  addGrams(used, -section.keepBackGrams);
  if (section.keepBackGrams > 0 && !isPerGram(perGram)) used.unsolved ??= perGram;

  const share = (fraction: keyof PerGram & keyof Sums, fed: Mass): Mass => {
    if (!culture) return fed;
    const mass = zero();
    if (isPerGram(perGram)) addMass(mass, made, perGram[fraction]);
    else mass.unsolved = perGram;
    return mass;
  };
  return {
    lines,
    base,
    made,
    used,
    culture,
    steam,
    perGram,
    flour: share('flour', sums.flour),
    fedFlour: sums.flour,
    water: share('water', sums.water),
    effectiveWater: share('effectiveWater', sums.effectiveWater),
    preferment: share('preferment', sums.preferment),
  };
}

function baseMass(structure: FormulaStructure, section: SectionFacts): Mass {
  const mass = zeroMass(structure);
  const { base } = section;
  if (base.kind === 'column') mass.terms[base.column] = 1;
  else if (base.kind === 'fixed') mass.terms[structure.unknowns] = base.grams;
  else mass.unsolved = base.unsolved;
  return mass;
}

function plainMass(structure: FormulaStructure, line: LineFacts, base: Mass): Mass {
  const mass = zeroMass(structure);
  const { amount } = line;
  if (amount.kind === 'unknown') mass.unsolved = amount.unsolved;
  if (amount.kind !== 'linear') return mass;
  addMass(mass, base, amount.perBase);
  addGrams(mass, amount.grams);
  return mass;
}

/** What the other lines leave of a part. */
function remainingMass(masses: Masses, line: LineFacts): Mass {
  const { structure } = masses;
  const mass = zeroMass(structure);
  const child = sectionAt(structure, line.child);
  const part = masses.sections[line.child];
  if (!part) return mass;
  addMass(mass, part.used, 1);
  for (const other of child.uses) {
    if (other === line) continue;
    addMass(mass, plainMass(structure, other, baseMass(structure, other.section)), -1);
  }
  return mass;
}

function addLine(masses: Masses, sums: Sums, line: LineFacts, mass: Mass): void {
  if (isBesideBowl(line, masses.structure.sections)) return;
  addMass(sums.fed, mass, 1);
  if (line.child < 0) {
    if (line.flour) {
      addMass(sums.flour, mass, 1);
      addMass(sums.ownFlour, mass, 1);
    }
    addMass(sums.water, mass, nominalWater(line));
    addMass(sums.effectiveWater, mass, effectiveWater(line));
    if (line.keyIndex < 0) markUnsolved(sums, mass.unsolved);
    return;
  }
  // A drawn part named in the dough is no part of the sums: it was reported, and its draw counts.
  if (line.amount.kind === 'none') return;
  addPerGram(masses, sums, line.child, mass);
}

function addPerGram(masses: Masses, sums: Sums, child: number, mass: Mass): void {
  const perGram = masses.sections[child]?.perGram;
  if (!perGram) return;
  if (!isPerGram(perGram)) {
    markUnsolved(sums, perGram);
    return;
  }
  addMass(sums.flour, mass, perGram.flour);
  addMass(sums.water, mass, perGram.water);
  addMass(sums.effectiveWater, mass, perGram.effectiveWater);
  const isPreferment = sectionAt(masses.structure, child).input.kind === 'preferment';
  addMass(sums.preferment, mass, isPreferment ? perGram.flour : perGram.preferment);
}

function markUnsolved(sums: Sums, unsolved: Unsolved | undefined): void {
  for (const mass of [sums.flour, sums.water, sums.effectiveWater, sums.preferment])
    mass.unsolved ??= unsolved;
}

/** A drawn part's flour and water are in the dough's lines already; only what they lack is added. */
function addLackingOfDrawnParts(masses: Masses, sums: Sums): void {
  const { structure } = masses;
  for (const section of structure.sections) {
    const part = masses.sections[section.index];
    if (section.draws.length === 0 || !part) continue;
    const perGram = part.perGram;
    if (!isPerGram(perGram)) {
      if (keysWithin(structure, section).some((key) => structure.inDough[key] === 0)) {
        sums.fed.unsolved ??= perGram;
        markUnsolved(sums, perGram);
      }
      sums.preferment.unsolved ??= perGram;
      continue;
    }
    const isPreferment = section.input.kind === 'preferment';
    addMass(sums.preferment, part.used, isPreferment ? perGram.flour : perGram.preferment);
    for (let key = 0; key < perGram.byKey.length; key++) {
      const share = figureAt(perGram.byKey, key);
      if (share === 0 || structure.inDough[key] !== 0) continue;
      const line = keyLineAt(structure, key);
      addMass(sums.fed, part.used, share);
      if (line.flour) addMass(sums.flour, part.used, share);
      addMass(sums.water, part.used, share * nominalWater(line));
      addMass(sums.effectiveWater, part.used, share * effectiveWater(line));
    }
  }
}

/** Takes out of the sums what steams away while the section is cooked. */
function takeSteam(structure: FormulaStructure, section: SectionFacts, sums: Sums): Mass | undefined {
  if (section.cookingLoss === 0) return undefined;
  const steam = zeroMass(structure);
  addMass(steam, sums.fed, section.cookingLoss);
  addMass(sums.fed, steam, -1);
  addMass(sums.effectiveWater, steam, -1);
  if (section.lines.some((line) => nominalWater(line) > 0)) addMass(sums.water, steam, -1);
  return steam;
}

/** The water that a cooked section has left of what could steam away; below nothing where its loss cannot be. */
export function waterAfterCooking(masses: Masses, section: SectionFacts): Mass | undefined {
  const own = masses.sections[section.index];
  if (own?.steam === undefined) return undefined;
  const left = zeroMass(masses.structure);
  const shares = steamingWater(section);
  for (const [at, line] of own.lines.entries()) addMass(left, line, figureAt(shares, at));
  addMass(left, own.steam, -1);
  return left;
}

function hydrationMass(structure: FormulaStructure, line: LineFacts, sums: Sums): Mass {
  const mass = zeroMass(structure);
  const { amount } = line;
  if (amount.kind !== 'toHydration') return mass;
  const share = amount.effective ? effectiveWater(line) : 1;
  mass.unsolved = sums.flour.unsolved;
  addMass(mass, sums.flour, amount.fraction / share);
  addMass(mass, amount.effective ? sums.effectiveWater : sums.water, -1 / share);
  return mass;
}

/** Percent of the fed flour, that is of the section's 100 %. */
function cultureMass(structure: FormulaStructure, section: SectionFacts, base: Mass): Mass | undefined {
  const fraction = section.input.ripeCultureFraction;
  if (fraction === undefined || !isUsableGrams(fraction)) return undefined;
  const mass = zeroMass(structure);
  addMass(mass, base, fraction);
  return mass;
}
