import { figureAt } from '../../text/element.ts';
import { isPerGram, linesWithin } from './formula-composition.ts';
import { dividedMass, enclosedMass, lossesOf } from './formula-equations.ts';
import {
  keyLineAt,
  type LineFacts,
  type Mass,
  type Masses,
  massesAt,
  massOf,
  type SectionFacts,
} from './formula-facts.ts';
import { finalMixOf } from './formula-final-mix.ts';
import { doughOf, type Role } from './formula-input.ts';
import { addMass, zeroMass } from './formula-masses.ts';
import { onlyKnown } from './formula-only-known.ts';
import { overallMasses } from './formula-overall.ts';
import type {
  FormulaProblem,
  OverallIngredient,
  SolvedFormula,
  SolvedLine,
  SolvedSection,
  Unsolved,
} from './formula-result.ts';
import { gramsOf, ratioOf, type Scale } from './formula-scale.ts';
import { isUsableGrams } from './formula-structure.ts';
import { steamByLine } from './formula-water.ts';

/** Turns the solved scale into numbers to show. Adds the problems that only the final mix brings to light. */
export function solvedFormula(masses: Masses, scale: Scale, problems: FormulaProblem[]): SolvedFormula {
  const { structure } = masses;
  const dough = doughOf(masses);
  const { flour, made } = dough;
  const doughGrams = gramsOf(scale, made);
  const overall = overallMasses(masses);
  const totalFraction = ratioOf(scale, made, flour);
  const hydration = ratioOf(scale, dough.water, flour);
  const fractionByRole = roleFractions(masses, scale, overall);
  const drawnOrInDough = [doughOf(structure), ...structure.sections.filter((s) => s.draws.length > 0)];
  return {
    assumedScale: scale.assumed,
    sections: structure.sections.map((section) => solvedSection(masses, scale, section)),
    finalMix: finalMixOf(masses, scale, problems),
    overall: overallIngredients(masses, scale, overall),
    waterUnknown: waterUnknown(drawnOrInDough.flatMap((section) => linesWithin(structure, section))),
    fractionByRole,
    ...onlyKnown({
      flourGrams: gramsOf(scale, flour),
      waterGrams: gramsOf(scale, dough.water),
      doughGrams,
      enclosedGrams: structure.sections.some((section) => section.input.enclosed)
        ? gramsOf(scale, enclosedMass(masses))
        : undefined,
      hydration,
      effectiveHydration: ratioOf(scale, dough.effectiveWater, flour),
      prefermentedFlour: ratioOf(scale, dough.preferment, flour),
      saltFraction: fractionByRole.salt,
      totalFraction,
      netDoughYield: hydration === undefined ? undefined : 100 * (1 + hydration),
      grossDoughYield: totalFraction === undefined ? undefined : 100 * totalFraction,
      unsolved: doughGrams === undefined ? reasonFor(scale, doughOf(structure), made) : undefined,
    }),
    ...yields(masses, scale),
  };
}

function yields(masses: Masses, scale: Scale): Partial<SolvedFormula> {
  const losses = lossesOf(masses, []);
  const wanted = masses.structure.input.yield;
  const dividedGrams = gramsOf(scale, dividedMass(masses));
  const after = (left: number | Unsolved): number | undefined => {
    return dividedGrams === undefined || typeof left !== 'number' ? undefined : dividedGrams * left;
  };
  const yieldDoughGrams = after(losses.dough);
  const bakedGrams = after(losses.baked);
  if (wanted?.kind !== 'pieces' || !(wanted.count > 0) || !Number.isFinite(wanted.count)) {
    return onlyKnown({ yieldDoughGrams, bakedGrams });
  }
  const { count } = wanted;
  const given =
    wanted.pieceGrams !== undefined && isUsableGrams(wanted.pieceGrams) ? wanted.pieceGrams : undefined;
  return onlyKnown({
    yieldDoughGrams,
    bakedGrams,
    pieces: count,
    pieceGrams: yieldDoughGrams === undefined ? (wanted.baked ? undefined : given) : yieldDoughGrams / count,
    bakedPieceGrams: bakedGrams === undefined ? (wanted.baked ? given : undefined) : bakedGrams / count,
  });
}

function solvedSection(masses: Masses, scale: Scale, section: SectionFacts): SolvedSection {
  const { structure } = masses;
  const own = massesAt(masses, section.index);
  const { input } = section;
  const totalGrams = gramsOf(scale, own.made);
  const steamGrams = own.steam && gramsOf(scale, own.steam);
  const pieces = structure.input.yield?.kind === 'pieces' ? structure.input.yield.count : undefined;
  return {
    id: input.id,
    name: input.name,
    kind: input.kind,
    inBowl: section.inBowl,
    ...(input.enclosed ? { enclosed: true as const } : {}),
    drawn: section.draws.length > 0,
    lines: withSteam(
      section,
      section.lines.map((line) => solvedLine(masses, scale, line)),
      steamGrams,
    ),
    waterUnknown: waterUnknown(linesWithin(structure, section)),
    ...onlyKnown({
      baseGrams: gramsOf(scale, own.base),
      flourGrams: gramsOf(scale, own.flour),
      waterGrams: gramsOf(scale, own.water),
      totalGrams,
      usedGrams: gramsOf(scale, own.used),
      keepBackGrams: section.keepBackGrams > 0 ? section.keepBackGrams : undefined,
      cultureGrams: own.culture && gramsOf(scale, own.culture),
      steamGrams,
      gramsPerPiece: !section.inBowl && pieces && totalGrams !== undefined ? totalGrams / pieces : undefined,
      hydration: hydrationOf(masses, scale, section, 'water'),
      effectiveHydration: hydrationOf(masses, scale, section, 'effectiveWater'),
      unsolved: totalGrams === undefined ? reasonFor(scale, section, own.made) : undefined,
    }),
  };
}

function withSteam(
  section: SectionFacts,
  lines: readonly SolvedLine[],
  steamGrams: number | undefined,
): readonly SolvedLine[] {
  if (steamGrams === undefined) return lines;
  const byLine = steamByLine(
    section,
    lines.map(({ grams }) => grams ?? 0),
    steamGrams,
  );
  return lines.map((line, at) => {
    const grams = figureAt(byLine, at);
    return grams === 0 ? line : { ...line, steamGrams: grams };
  });
}

/** A part's composition is known without its weight, unless it mixes grams and percent. */
function hydrationOf(
  masses: Masses,
  scale: Scale,
  section: SectionFacts,
  kind: 'water' | 'effectiveWater',
): number | undefined {
  const own = massesAt(masses, section.index);
  const { perGram } = own;
  if (isPerGram(perGram) && perGram.exact)
    return perGram.flour > 0 ? perGram[kind] / perGram.flour : undefined;
  return ratioOf(scale, own[kind], own.flour);
}

function solvedLine(masses: Masses, scale: Scale, line: LineFacts): SolvedLine {
  const { input, section, amount } = line;
  const own = massesAt(masses, section.index);
  const mass = massOf(masses, line);
  const isNone = amount.kind === 'none';
  const size = gramsOf(scale, own.base);
  const grams = isNone ? undefined : notNegative(gramsOf(scale, mass), size);
  const written = amount.kind === 'linear' && input.amount.kind === 'fraction' ? amount.perBase : undefined;
  return {
    id: input.id,
    key: input.key,
    name: input.name,
    part: input.part,
    role: input.role,
    isFlour: line.flour,
    ...onlyKnown({
      fraction: isNone ? undefined : (written ?? notNegative(ratioOf(scale, mass, own.base), 1)),
      grams,
      unsolved:
        grams === undefined ? (isNone ? amount.unsolved : reasonFor(scale, section, mass)) : undefined,
    }),
  };
}

function overallIngredients(
  masses: Masses,
  scale: Scale,
  overall: ReadonlyMap<number, Mass>,
): OverallIngredient[] {
  const { flour, made } = doughOf(masses);
  const doughGrams = gramsOf(scale, made);
  return [...overall].map(([keyIndex, mass]) => {
    const line = keyLineAt(masses.structure, keyIndex);
    const grams = notNegative(gramsOf(scale, mass), doughGrams);
    const unsolved = grams === undefined ? reasonFor(scale, doughOf(masses.structure), mass) : undefined;
    return {
      key: line.input.key,
      name: line.input.name,
      role: line.input.role,
      isFlour: line.flour,
      ...onlyKnown({ fraction: notNegative(ratioOf(scale, mass, flour), 1), grams, unsolved }),
    };
  });
}

function roleFractions(
  masses: Masses,
  scale: Scale,
  overall: ReadonlyMap<number, Mass>,
): Partial<Record<Role, number>> {
  const { flour } = doughOf(masses);
  const sums = new Map<Role, Mass>([['salt', zeroMass(masses.structure)]]);
  for (const [keyIndex, mass] of overall) {
    const line = keyLineAt(masses.structure, keyIndex);
    const role = line.flour ? 'flour' : line.input.role;
    const sum = sums.get(role) ?? zeroMass(masses.structure);
    addMass(sum, mass, 1);
    sums.set(role, sum);
  }
  const fractions: Partial<Record<Role, number>> = {};
  for (const [role, sum] of sums) {
    const fraction = ratioOf(scale, sum, flour);
    if (fraction !== undefined) fractions[role] = fraction;
  }
  return fractions;
}

/** Salt has no water worth the name, so only other ingredients without composition are named. */
function waterUnknown(lines: readonly LineFacts[]): string[] {
  const names = new Set<string>();
  for (const line of lines) {
    const { input } = line;
    if (line.keyIndex < 0 || line.flour || input.role === 'water' || input.role === 'salt') continue;
    if (input.waterFraction === undefined) names.add(input.name);
  }
  return [...names];
}

/** Below nothing by rounding is nothing; below nothing in earnest is no weight at all. */
function notNegative(value: number | undefined, size = 1): number | undefined {
  if (value === undefined || value >= 0) return value;
  return value >= -1e-9 * Math.max(1, size) ? 0 : undefined;
}

function reasonFor(scale: Scale, section: SectionFacts, mass: Mass): Unsolved {
  const reason =
    mass.unsolved ?? scale.reasons[section.index] ?? scale.reasons.find((other) => other !== undefined);
  return reason ?? { code: 'no-scale', sectionId: section.input.id };
}
