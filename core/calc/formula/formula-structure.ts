import { baseOf } from './formula-base.ts';
import type { FormulaStructure, LineAmount, LineFacts, SectionFacts } from './formula-facts.ts';
import type { FormulaInput, LineInput, SectionInput, SectionKind } from './formula-input.ts';
import { markLoops } from './formula-loops.ts';
import type { FormulaProblem, LinePlace, Unsolved } from './formula-result.ts';

// Amounts beyond these are slips of the keyboard, and would only turn into infinity further on.
const mostGrams = 1e12;
const mostFraction = 1e9;

/** Reads off an input all that needs no sums: who uses whom, what 100 % is where, and what cannot be. Never throws. */
export function structureOf(input: FormulaInput): FormulaStructure {
  const problems: FormulaProblem[] = [];
  const keys = new Map<string, number>();
  const keyLines: LineFacts[] = [];
  const indexes = new Map<string, number>();
  for (const [index, section] of input.sections.entries())
    if (!indexes.has(section.id)) indexes.set(section.id, index);

  const sections = input.sections.map((section, index): SectionFacts => {
    const lines: LineFacts[] = [];
    const facts: SectionFacts = {
      index,
      input: section,
      inBowl: isInBowl(section.kind),
      lines,
      uses: [],
      draws: index > 0 && isInBowl(section.kind) ? section.draws : [],
      keepBackGrams: isUsableGrams(section.keepBackGrams ?? 0) ? (section.keepBackGrams ?? 0) : 0,
      cookingLoss: usableLoss(section.cookingLossFraction),
      base: { kind: 'none', unsolved: { code: 'no-flour', sectionId: section.id } },
    };
    for (const line of section.lines) {
      // A section nobody can find is weighed like an ingredient nobody knows.
      const child = line.part ? (indexes.get(line.key) ?? -1) : -1;
      let keyIndex = -1;
      if (child < 0) {
        keyIndex = keys.get(line.key) ?? keys.size;
        keys.set(line.key, keyIndex);
      }
      // Only flour can be the balance, so an ingredient nobody knows is taken for flour there.
      const flour = child < 0 && (line.isFlour || (!line.known && line.amount.kind === 'balance'));
      const amount = amountOf(section, line, input, problems);
      const position = lines.length;
      const lineFacts: LineFacts = { input: line, section: facts, position, child, keyIndex, flour, amount };
      if (keyIndex >= 0) keyLines[keyIndex] ??= lineFacts;
      lines.push(lineFacts);
    }
    checkOwnAmounts(section, problems);
    return facts;
  });

  reportMissingPieces(input, problems);
  const order = markLoops(sections, problems);
  for (const section of sections) for (const line of section.lines) sections[line.child]?.uses.push(line);
  for (const section of sections) checkUses(section, problems);
  let unknowns = 0;
  for (const section of sections) {
    checkOncePerSection(section, problems);
    section.base = baseOf(section, unknowns, problems);
    if (section.base.kind === 'column') unknowns++;
  }
  const inDough = new Uint8Array(keys.size);
  for (const line of sections[0]?.lines ?? []) if (line.keyIndex >= 0) inDough[line.keyIndex] = 1;
  return { input, sections, order, unknowns, keys, keyLines, inDough, problems };
}

/** Whether a section of this kind goes into the bowl; fillings, toppings and baths do not. */
export function isInBowl(kind: SectionKind): boolean {
  return (
    kind === 'dough' || kind === 'preferment' || kind === 'soaker' || kind === 'scald' || kind === 'part'
  );
}

/** A line that says how much of a filling is made, in a section that goes into the bowl: nothing of it does. */
export function isBesideBowl(line: LineFacts, sections: readonly SectionFacts[]): boolean {
  return line.section.inBowl && sections[line.child]?.inBowl === false;
}

function usableLoss(fraction = 0): number {
  return fraction > 0 && fraction < 1 ? fraction : 0;
}

function isUsable(value: number, most: number): boolean {
  return value >= 0 && value <= most;
}

/** Whether a weight in grams, or a fraction, is one that can be computed with: from 0 to what no bakery weighs. */
export function isUsableGrams(value: number): boolean {
  return isUsable(value, mostGrams);
}

function amountOf(
  section: SectionInput,
  line: LineInput,
  input: FormulaInput,
  problems: FormulaProblem[],
): LineAmount {
  const amount = line.amount;
  const place: LinePlace = { sectionId: section.id, lineId: line.id };
  const impossible = (value: number): LineAmount => {
    problems.push({ kind: 'impossible-amount', ...place, values: { name: line.name, value: String(value) } });
    return { kind: 'unknown', unsolved: { code: 'impossible-amount', ...place } };
  };
  switch (amount.kind) {
    case 'fraction':
      if (!isUsable(amount.fraction, mostFraction)) return impossible(amount.fraction);
      return { kind: 'linear', perBase: amount.fraction, grams: 0 };
    case 'grams':
      if (!isUsable(amount.grams, mostGrams)) return impossible(amount.grams);
      return { kind: 'linear', perBase: 0, grams: amount.grams };
    case 'perPiece': {
      if (!isUsable(amount.grams, mostGrams)) return impossible(amount.grams);
      const pieces = input.yield?.kind === 'pieces' ? input.yield.count : 0;
      const grams = amount.grams * pieces;
      if (!isUsable(grams, mostGrams)) return impossible(grams);
      if (pieces > 0) return { kind: 'linear', perBase: 0, grams };
      return { kind: 'unknown', unsolved: { code: 'no-pieces', ...place } };
    }
    case 'toHydration':
      if (!isUsable(amount.fraction, mostFraction)) return impossible(amount.fraction);
      return amount;
    case 'ofAllFlour':
      // Taken for grams before, and of nothing where all flour cannot be known.
      return { kind: 'unknown', unsolved: { code: 'unknown-amount', ...place } };
    case 'unknown':
      return { kind: 'unknown', unsolved: { code: 'unknown-amount', ...place } };
    default:
      return amount;
  }
}

function checkOwnAmounts(section: SectionInput, problems: FormulaProblem[]): void {
  const own = { ripeCulture: section.ripeCultureFraction, keepBack: section.keepBackGrams };
  for (const [property, value] of Object.entries(own)) {
    if (value === undefined || isUsable(value, mostGrams)) continue;
    const values = { property, value: String(value) };
    problems.push({ kind: 'impossible-amount', sectionId: section.id, values });
  }
}

/** Grams a piece say nothing without pieces: one cause, however many lines say it. */
function reportMissingPieces(input: FormulaInput, problems: FormulaProblem[]): void {
  if (input.yield?.kind === 'pieces') return;
  const places: LinePlace[] = [];
  for (const section of input.sections) {
    for (const line of section.lines) {
      if (line.amount.kind === 'perPiece') places.push({ sectionId: section.id, lineId: line.id });
    }
  }
  const [first, ...related] = places;
  if (first) problems.push({ kind: 'no-pieces', ...first, related, values: {} });
}

/**
 * A part that draws goes into the dough by itself. Named in a line of the dough it would be there twice, so the
 * draw counts; named in another part it leaves the totals with that part, so the line counts.
 */
function checkUses(section: SectionFacts, problems: FormulaProblem[]): void {
  const [[draw], [first]] = [section.draws, section.uses];
  if (draw === undefined || first === undefined) return;
  const inDough = section.uses.filter((line) => line.section.index === 0);
  const place: LinePlace = { sectionId: first.section.input.id, lineId: first.input.id };
  const values = { name: section.input.name, drawId: draw.id };
  problems.push({ kind: 'drawn-and-added', ...place, related: [{ sectionId: section.input.id }], values });
  if (inDough.length < section.uses.length) section.draws = [];
  if (section.draws.length === 0) return;
  for (const line of inDough) line.amount = { kind: 'none', unsolved: { code: 'reported', ...place } };
}

/** Balance and hydration may stand once a section and only where they have a meaning. */
function checkOncePerSection(section: SectionFacts, problems: FormulaProblem[]): void {
  const seen = new Map<string, LineFacts>();
  for (const line of section.lines) {
    const amount = line.amount;
    if (amount.kind !== 'balance' && amount.kind !== 'toHydration' && amount.kind !== 'remaining') continue;
    const place: LinePlace = { sectionId: section.input.id, lineId: line.input.id };
    const unsolved: Unsolved = { code: 'reported', ...place };
    const misplaced = misplacedAmount(line);
    if (misplaced) {
      if (line.input.known) {
        problems.push({ kind: misplaced, ...place, values: { name: line.input.name } });
        line.amount = { kind: 'unknown', unsolved };
      } else line.amount = { kind: 'unknown', unsolved: { ...unsolved, code: 'unknown-ingredient' } };
      continue;
    }
    const slot = amount.kind === 'remaining' ? `remaining ${line.input.key}` : amount.kind;
    const first = seen.get(slot);
    if (!first) {
      seen.set(slot, line);
      continue;
    }
    const kind = {
      balance: 'two-balances',
      toHydration: 'two-hydrations',
      remaining: 'two-remaining',
    } as const;
    const related = [{ sectionId: section.input.id, lineId: first.input.id }];
    problems.push({
      kind: kind[amount.kind],
      ...place,
      related,
      values: { name: line.input.name, first: first.input.name },
    });
    // The first one takes all there is, so the totals stay right without the second.
    line.amount = { kind: 'none', unsolved };
  }
}

function misplacedAmount(
  line: LineFacts,
): 'balance-not-flour' | 'hydration-not-water' | 'remaining-not-part' | undefined {
  const amount = line.amount;
  if (amount.kind === 'balance') return line.flour ? undefined : 'balance-not-flour';
  if (amount.kind === 'remaining') return line.child >= 0 ? undefined : 'remaining-not-part';
  if (amount.kind !== 'toHydration') return undefined;
  if (line.child >= 0 || line.flour) return 'hydration-not-water';
  if (line.input.role === 'water') return undefined;
  return amount.effective && (line.input.waterFraction ?? 0) > 0 ? undefined : 'hydration-not-water';
}
