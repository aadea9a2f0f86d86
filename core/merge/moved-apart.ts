import type { BlockUnit, LineUnit, SectionUnit } from './merge-units.ts';

/**
 * Marks an ingredient that both sides took out of the section it stood in, and one put into another section, or each into one of
 * its own: both would be applied, and it would go in twice, or though somebody took it out.
 */
export function withMovedApart(
  base: BlockUnit,
  ours: BlockUnit,
  theirs: BlockUnit,
): readonly [BlockUnit, BlockUnit] {
  const doubted = new Set<string>();
  const came = (side: BlockUnit, about: string): Set<string> =>
    new Set(
      side.sections.flatMap(({ id, lines }) =>
        holds(lines, about) && !holds(sectionOf(base, id)?.lines, about) ? [id] : [],
      ),
    );
  for (const section of base.sections)
    for (const { about, isIngredient } of section.lines) {
      if (isIngredient !== true) continue;
      if ([ours, theirs].some((side) => holds(sectionOf(side, section.id)?.lines, about))) continue;
      const [mine, yours] = [came(ours, about), came(theirs, about)];
      for (const id of [...mine, ...yours])
        if (!mine.has(id) || !yours.has(id)) doubted.add(keyOf(id, about));
    }
  if (doubted.size === 0) return [ours, theirs];
  const marked = (side: BlockUnit): BlockUnit => ({
    ...side,
    sections: side.sections.map((section) => ({
      ...section,
      lines: section.lines.map((unit) =>
        doubted.has(keyOf(section.id, unit.about)) ? { ...unit, isDoubted: true as const } : unit,
      ),
    })),
  });
  return [marked(ours), marked(theirs)];
}

function holds(lines: readonly LineUnit[] | undefined, about: string): boolean {
  return lines?.some((one) => one.isIngredient === true && one.about === about) === true;
}

function sectionOf({ sections }: BlockUnit, id: string): SectionUnit | undefined {
  return sections.find((one) => one.id === id);
}

const keyOf = (section: string, about: string): string => JSON.stringify([section, about]);
