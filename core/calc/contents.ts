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
  return grams === undefined ? undefined : scaled(solved, section, grams, new Set());
}

function scaled(
  solved: SolvedFormula,
  section: SolvedSection,
  grams: number,
  above: ReadonlySet<string>,
): readonly Content[] | undefined {
  if (above.has(section.id)) return undefined;
  const inside = new Set(above).add(section.id);
  const all: Content[] = [];
  for (const line of section.lines) {
    if (line.grams === undefined) return undefined;
    if (!line.part) {
      all.push({ key: line.key, name: line.name, grams: line.grams - (line.steamGrams ?? 0) });
      continue;
    }
    const part = solved.sections.find((one) => one.id === line.key);
    const within = part === undefined ? undefined : scaled(solved, part, line.grams, inside);
    if (within === undefined) return undefined;
    all.push(...within);
  }
  const total = all.reduce((sum, one) => sum + one.grams, 0);
  if (!(total > 0)) return grams > 0 ? undefined : [];
  const joined = new Map<string, Content>();
  for (const one of all) {
    const before = joined.get(one.key)?.grams ?? 0;
    joined.set(one.key, { ...one, grams: before + (one.grams * grams) / total });
  }
  return [...joined.values()];
}
