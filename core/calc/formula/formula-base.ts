import type { Base, LineFacts, SectionFacts } from './formula-facts.ts';
import type { FormulaProblem, Unsolved } from './formula-result.ts';

/**
 * What 100 % is in a section. Percentages are of the 100 % as written: where the flour lines add up to less or more
 * than that, each line still weighs its own percentage, and only the overall formula is told in true flour.
 */
export function baseOf(section: SectionFacts, column: number, problems: FormulaProblem[]): Base {
  const free: Base = { kind: 'column', column };
  const place = { sectionId: section.input.id };
  const flours = section.lines.filter((line) => line.flour);
  const [firstFlour] = flours;
  if (firstFlour === undefined) {
    if (section.lines.some((line) => isHundred(line))) return free;
    return baseWithoutFlour(section, problems);
  }

  let sumFraction = 0;
  let sumGrams = 0;
  let gramLines = 0;
  let unknown: Unsolved | undefined;
  for (const { amount, input } of flours) {
    if (amount.kind === 'balance') return free;
    if (amount.kind === 'linear') {
      sumFraction += amount.perBase;
      sumGrams += amount.grams;
      if (input.amount.kind !== 'fraction') gramLines++;
    } else if (amount.kind === 'unknown') unknown ??= amount.unsolved;
  }
  const tolerance = flours.length * 0.0005 + 1e-9;
  if (gramLines > 0 && unknown) return { kind: 'none', unsolved: unknown };
  if (sumFraction === 0 && sumGrams === 0 && !unknown) {
    problems.push({ kind: 'no-flour', ...place, lineId: firstFlour.input.id, values: { sumFraction: 0 } });
    return gramLines > 0 ? { kind: 'fixed', grams: 0 } : free;
  }
  if (gramLines > 0 && sumFraction < 1 - tolerance)
    return { kind: 'fixed', grams: sumGrams / (1 - sumFraction) };

  const short = sumFraction < 1 - tolerance;
  const missingMayBeUnknown = unknown !== undefined || section.lines.some((line) => !line.input.known);
  if (gramLines > 0 || sumFraction > 1 + tolerance || (short && !missingMayBeUnknown)) {
    const related = flours.slice(1).map((line) => ({ ...place, lineId: line.input.id }));
    const values = { sumFraction, ...(gramLines > 0 ? { gramsOnTop: sumGrams } : {}) };
    problems.push({ kind: 'flour-not-hundred', ...place, lineId: firstFlour.input.id, related, values });
  }
  return free;
}

function baseWithoutFlour(section: SectionFacts, problems: FormulaProblem[]): Base {
  const place = { sectionId: section.input.id };
  const percent = section.lines.find((line) => line.input.amount.kind === 'fraction');
  // An ingredient nobody knows, or a line still being typed, may well be the flour.
  const doubtful = section.lines.find((line) => !line.input.known || line.input.amount.kind === 'unknown');
  if (doubtful) {
    const code = doubtful.input.known ? 'unknown-amount' : 'unknown-ingredient';
    return { kind: 'none', unsolved: { code, ...place, lineId: doubtful.input.id } };
  }
  if (percent) {
    problems.push({
      kind: 'no-flour',
      ...place,
      lineId: percent.input.id,
      values: { name: section.input.name },
    });
  } else if (section.input.ripeCultureFraction !== undefined && section.lines.length > 0) {
    problems.push({ kind: 'no-flour', ...place, values: { name: section.input.name } });
  }
  return { kind: 'none', unsolved: { code: 'no-flour', ...place } };
}

function isHundred({ input }: LineFacts): boolean {
  return input.amount.kind === 'fraction' && Math.abs(input.amount.fraction - 1) < 1e-9;
}
