import { figureAt } from '../../text/element.ts';
import type { LineFacts, SectionFacts } from './formula-facts.ts';

/** Grams of water that a gram of the ingredient counts for in hydration; a part has none of its own. */
export function nominalWater(line: LineFacts): number {
  return line.child < 0 && line.input.role === 'water' ? 1 : 0;
}

/** As nominalWater, with the water inside; never the moisture of flour. */
export function effectiveWater(line: LineFacts): number {
  if (line.child >= 0 || line.flour) return 0;
  if (line.input.role === 'water') return 1;
  const inside = line.input.waterFraction ?? 0;
  return inside >= 0 && inside <= 1 ? inside : 0;
}

/**
 * Grams that a gram of each line of a section can give off as steam while it is cooked. Water alone does where there is any;
 * else milk and the like do, which then counts as so much less milk: its dry matter, a seventh at most, stays uncounted.
 */
export function steamingWater(section: SectionFacts): readonly number[] {
  const ofWater = section.lines.map(nominalWater);
  return ofWater.some((grams) => grams > 0) ? ofWater : section.lines.map(effectiveWater);
}

/** What steams away in all, grams, by the lines that give it off, from what each line weighs. */
export function steamByLine(
  section: SectionFacts,
  lineGrams: readonly number[],
  steamGrams: number,
): readonly number[] {
  const shares = steamingWater(section);
  const water = lineGrams.map((grams, at) => figureAt(shares, at) * grams);
  const all = water.reduce((sum, grams) => sum + grams, 0);
  return water.map((grams) => (all > 0 ? (steamGrams * grams) / all : 0));
}
