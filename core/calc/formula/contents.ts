import type { SolvedFormula, SolvedSection } from './formula-result.ts';

/** An ingredient by its key, with its weight in grams. */
export interface Content {
  readonly key: string;
  readonly name: string;
  readonly grams: number;
}

/**
 * What so many grams of a section hold of each ingredient; as much as goes into this batch where no weight is asked for.
 * Nested parts are dissolved, what steams away of a scald is gone, a ripe culture counts as what it is made of, what is kept back is left out. `undefined`
 * where a weight in it is not known.
 */
export function contentsOf(
  solved: SolvedFormula,
  section: SolvedSection,
  grams = section.usedGrams,
): readonly Content[] | undefined {
  return grams === undefined ? undefined : scaled(solved, section, grams);
}

/** What a section holds by its lines, and the sum of it. */
interface Held {
  readonly contents: readonly Content[];
  readonly totalGrams: number;
}

// A part of parts that each stand in the next twice is looked into once, not once for every way that leads to it.
const kept = new WeakMap<SolvedFormula, Map<string, Held | undefined>>();

function scaled(
  solved: SolvedFormula,
  section: SolvedSection,
  grams: number,
): readonly Content[] | undefined {
  const held = heldIn(solved, section);
  if (held === undefined) return undefined;
  const { contents, totalGrams } = held;
  if (!(totalGrams > 0)) return grams > 0 ? undefined : [];
  return contents.map((one) => ({ ...one, grams: (one.grams * grams) / totalGrams }));
}

function heldIn(solved: SolvedFormula, section: SolvedSection): Held | undefined {
  let known = kept.get(solved);
  if (known === undefined) {
    known = new Map();
    kept.set(solved, known);
  }
  if (known.has(section.id)) return known.get(section.id);
  // A section within itself holds nothing that can be told.
  known.set(section.id, undefined);
  const held = joinedLines(solved, section);
  known.set(section.id, held);
  return held;
}

function joinedLines(solved: SolvedFormula, section: SolvedSection): Held | undefined {
  const joined = new Map<string, Content>();
  let totalGrams = 0;
  for (const line of section.lines) {
    if (line.grams === undefined) return undefined;
    const part = line.part ? solved.sections.find((one) => one.id === line.key) : undefined;
    if (line.part && part === undefined) return undefined;
    const within =
      part === undefined
        ? [{ key: line.key, name: line.name, grams: line.grams - (line.steamGrams ?? 0) }]
        : scaled(solved, part, line.grams);
    if (within === undefined) return undefined;
    for (const { key, name, grams } of within) {
      joined.set(key, { key, name, grams: (joined.get(key)?.grams ?? 0) + grams });
      totalGrams += grams;
    }
  }
  return { contents: [...joined.values()], totalGrams };
}
