import { likeness } from '../compare/same-name.ts';
import { elementAt, firstOf } from '../text/element.ts';
import { withTrialsOf } from './matched-trials.ts';
import type { BlockUnit, FileUnits, SectionUnit } from './merge-units.ts';

/** Less than half alike is another one, not a renamed one. */
const alike = 0.5;

/** The units of a side, where a formula or a section that only has another name keeps the id it had in the base. */
export function withRenamed(base: FileUnits, side: FileUnits): FileUnits {
  const blocks = renamed(base.blocks, side.blocks, meaningsOfBlock, isOfOneKind).map((block): BlockUnit => {
    const before = base.blocks.find(({ id }) => id === block.id);
    if (before === undefined) return block;
    const sections = renamed(
      before.sections,
      withTrialsOf(before, block).sections,
      meaningsOfSection,
      // Which of several trials of one day is which was asked above.
      (one, other) => isOfOneKind(one, other) && (!one.isTrial || one.key !== other.key),
    );
    return { ...block, sections: withOwnHeader(before, sections) };
  });
  return { ...side, blocks };
}

/** The header of a block is matched by the block; sections that belong to no block have no such header. */
function withOwnHeader(before: BlockUnit, sections: readonly SectionUnit[]): readonly SectionUnit[] {
  const own = before.sections.find(({ header }) => header !== undefined);
  const at = sections.findIndex(({ header }) => header !== undefined);
  if (own === undefined || at < 0 || kindOf(own) !== kindOf(elementAt(sections, at))) return sections;
  if (sections.some(({ id }) => id === own.id)) return sections;
  return sections.map((one, index) => (index === at ? { ...one, id: own.id } : one));
}

function renamed<T extends { readonly id: string }>(
  base: readonly T[],
  side: readonly T[],
  meaningsOf: (unit: T) => readonly string[],
  mayBe: (before: T, now: T) => boolean,
): T[] {
  const there = new Set(side.map(({ id }) => id));
  const known = new Set(base.map(({ id }) => id));
  const missing = base.filter(({ id }) => !there.has(id));
  return side.map((unit) => {
    if (known.has(unit.id)) return unit;
    // Without a line nothing tells it.
    if (meaningsOf(unit).length === 0) return unit;
    const partners = missing
      .filter((one) => mayBe(one, unit))
      .map((one) => ({ one, likeness: likeness(meaningsOf(one), meaningsOf(unit)) }))
      .filter((partner) => partner.likeness >= alike)
      .sort((some, other) => other.likeness - some.likeness);
    const [best] = partners;
    if (best === undefined) return unit;
    missing.splice(missing.indexOf(best.one), 1);
    return { ...unit, id: best.one.id };
  });
}

function isOfOneKind(one: { readonly id: string }, other: { readonly id: string }): boolean {
  return kindOf(one) === kindOf(other);
}

function kindOf({ id }: { readonly id: string }): string {
  return firstOf(id.split(' '));
}

function meaningsOfBlock({ sections }: BlockUnit): readonly string[] {
  return sections.flatMap(meaningsOfSection);
}

function meaningsOfSection({ lines }: SectionUnit): readonly string[] {
  return lines.map(({ meaning }) => meaning);
}
