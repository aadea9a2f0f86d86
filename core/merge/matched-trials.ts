import { groupBy } from '../compare/group.ts';
import { formerOnes, mostAlikeFirst } from '../compare/same-name.ts';
import type { BlockUnit, SectionUnit } from './merge-units.ts';

/**
 * A side whose trials have the id of the trial of the base that they are, by what stands in them: of several of one day their
 * order says nothing, and what was measured of one batch must not come to another. Those that are none of the base are told apart.
 */
export function withTrialsOf(base: BlockUnit, side: BlockUnit): BlockUnit {
  const ids = new Map<SectionUnit, string>();
  const former = groupBy(trialsIn(base), ({ key }) => key);
  for (const [key, trials] of groupBy(trialsIn(side), (one) => one.key)) {
    const before = former.get(key) ?? [];
    const partners = formerOnes(before, trials, meaningsIn);
    trials.forEach((trial, at) => {
      ids.set(trial, partners.get(trial)?.id ?? `${key} (new ${at + 1})`);
    });
  }
  return withIds(side, ids);
}

/** Both sides, where those of their new trials that are of one batch have one id, and of two batches never. */
export function withNewTrialsMatched(
  base: BlockUnit | undefined,
  ours: BlockUnit,
  theirs: BlockUnit,
): readonly [BlockUnit, BlockUnit] {
  const known = new Set(base?.sections.map(({ id }) => id));
  const [mine, yours] = [ours, theirs].map((side) =>
    groupBy(
      trialsIn(side).filter(({ id }) => !known.has(id)),
      ({ key }) => key,
    ),
  ) as [Map<string, SectionUnit[]>, Map<string, SectionUnit[]>];
  const [ids, otherIds] = [new Map<SectionUnit, string>(), new Map<SectionUnit, string>()];
  for (const key of new Set([...mine.keys(), ...yours.keys()])) {
    const [some, others] = [mine.get(key) ?? [], yours.get(key) ?? []];
    some.forEach((trial, at) => {
      ids.set(trial, `${key} (ours ${at + 1})`);
    });
    others.forEach((trial, at) => {
      otherIds.set(trial, `${key} (theirs ${at + 1})`);
    });
    const taken = new Set<SectionUnit>();
    for (const { one, other } of mostAlikeFirst(some, others, meaningsIn)) {
      if (taken.has(one) || taken.has(other) || !isOneBatch(one, other)) continue;
      taken.add(one).add(other);
      otherIds.set(other, ids.get(one)!);
    }
  }
  return [withIds(ours, ids), withIds(theirs, otherIds)];
}

function trialsIn({ sections }: BlockUnit): SectionUnit[] {
  return sections.filter(({ isTrial }) => isTrial);
}

function withIds(side: BlockUnit, ids: ReadonlyMap<SectionUnit, string>): BlockUnit {
  return { ...side, sections: side.sections.map((one) => ({ ...one, id: ids.get(one) ?? one.id })) };
}

function isSame(one: SectionUnit, other: SectionUnit): boolean {
  return meaningsIn(one).join('\n') === meaningsIn(other).join('\n');
}

function meaningsIn({ lines }: SectionUnit): string[] {
  return lines.map(({ meaning }) => meaning);
}

/**
 * Whether two trials of one day that both sides wrote down are of one batch: they are the same, one of them says nothing yet,
 * something that was measured is in both, or the day and the programme of one are those of the other. United, the readings of another
 * batch would be set beside the mix of this one.
 */
function isOneBatch(ours: SectionUnit, theirs: SectionUnit): boolean {
  if (isSame(ours, theirs) || ours.lines.length === 0 || theirs.lines.length === 0) return true;
  if (measuredIn(ours).some((line) => measuredIn(theirs).includes(line))) return true;
  const [ran, otherRan] = [ranIn(ours), ranIn(theirs)];
  if (ran.length === 0 || otherRan.length === 0) return false;
  const isAllIn = (some: readonly string[], others: readonly string[]) =>
    some.every((line) => others.includes(line));
  return isAllIn(ran, otherRan) || isAllIn(otherRan, ran);
}

/** Words of a trial that say what was measured; all others but notes say what was run and what the day was like. */
const measures: ReadonlySet<string> = new Set(['at', 'end', 'rise', 'dough', 'baked']);

function measuredIn({ lines }: SectionUnit): readonly string[] {
  return lines.filter(({ kind }) => measures.has(kind)).map(({ meaning }) => meaning);
}

function ranIn({ lines }: SectionUnit): readonly string[] {
  return lines.filter(({ kind }) => !measures.has(kind) && kind !== 'note').map(({ meaning }) => meaning);
}
