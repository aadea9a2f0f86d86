import { diffArrays } from 'diff';
import { elementAt } from '../text/element.ts';
import type { LineUnit } from './merge-units.ts';

/** The lines of a side, each with what became of it. */
export interface MatchedSide {
  /** Those that stand in the base have the id they have there, new ones one of their own. */
  readonly lines: readonly LineUnit[];
  /** The ids of lines of the base that stand at another place among the others. */
  readonly moved: ReadonlySet<string>;
}

/**
 * Which line of a side is which of the base: lines that say the same in their order, then those that say the same at another place,
 * then those about the same thing between the same neighbours; and where the order says nothing, those about the same thing
 * anywhere, and an ingredient at the place of another in the same amount, unless the other side has it too. What is new is told apart
 * by what it is about, or by what it says where a section may say that several times.
 */
export function matchedSide(
  base: readonly LineUnit[],
  side: readonly LineUnit[],
  orderSays: boolean,
  otherSide: readonly LineUnit[] = [],
): MatchedSide {
  const partners = new Map<number, number>();
  const moved = new Set<string>();
  const gaps = sameInOrder(base, side, partners);
  const gone = (): number[] => base.flatMap((_, at) => (taken.has(at) ? [] : [at]));
  const taken = new Set(partners.values());
  const pair = (sides: readonly number[], bases: readonly number[], keyOf: (unit: LineUnit) => string) => {
    const found: number[] = [];
    let next = 0;
    for (const at of sides) {
      if (partners.has(at)) continue;
      const key = keyOf(elementAt(side, at));
      const match = bases.findIndex(
        (one, place) =>
          !taken.has(one) && (!orderSays || place >= next) && keyOf(elementAt(base, one)) === key,
      );
      if (match < 0) continue;
      if (orderSays) next = match + 1;
      const one = elementAt(bases, match);
      partners.set(at, one);
      taken.add(one);
      found.push(one);
    }
    return found;
  };
  const all = side.map((_, at) => at);
  for (const at of all)
    for (const one of pair([at], gone(), ({ meaning }) => meaning)) moved.add(elementAt(base, one).id);
  for (const { sides, bases } of gaps) pair(sides, bases, ({ about }) => about);
  for (const { sides, bases } of gaps) pair(sides, bases, ({ kind }) => kind);
  if (!orderSays) {
    pair(all, gone(), ({ about }) => about);
    const others = new Set(otherSide.map(({ about }) => about));
    for (const { sides, bases } of gaps) {
      const come = sides.filter((at) => !partners.has(at) && !others.has(elementAt(side, at).about));
      const [was, is] = [bases.filter((at) => !taken.has(at)), come].map((places, index) =>
        onlyOnes(places, (at) => amountIn(elementAt(index === 0 ? base : side, at))),
      ) as [number[], number[]];
      pair(is, was, (unit) => amountIn(unit) ?? '');
    }
  }
  const counts = new Map<string, number>();
  const lines = side.map((unit, at): LineUnit => {
    const partner = partners.get(at);
    if (partner !== undefined) return { ...unit, id: elementAt(base, partner).id };
    const count = (counts.get(unit.newId) ?? 0) + 1;
    counts.set(unit.newId, count);
    return { ...unit, id: `new ${unit.newId} (${count})` };
  });
  return { lines, moved };
}

/** What an ingredient line says but for the name. */
function amountIn({ isIngredient, about, meaning }: LineUnit): string | undefined {
  return isIngredient === true && meaning.startsWith(about) ? meaning.slice(about.length) : undefined;
}

/** Those of which no other has the same key; without one they are left out. */
function onlyOnes(places: readonly number[], keyOf: (place: number) => string | undefined): number[] {
  const keys = places.map(keyOf);
  return places.filter(
    (_, at) => keys[at] !== undefined && keys.filter((key) => key === keys[at]).length === 1,
  );
}

/** Matches lines that say the same in the same order; answers what lies between them on either side, by place. */
function sameInOrder(
  base: readonly LineUnit[],
  side: readonly LineUnit[],
  partners: Map<number, number>,
): { readonly sides: number[]; readonly bases: number[] }[] {
  const meanings = (units: readonly LineUnit[]): string[] => units.map(({ meaning }) => meaning);
  const gaps: { readonly sides: number[]; readonly bases: number[] }[] = [];
  let gap: { readonly sides: number[]; readonly bases: number[] } = { sides: [], bases: [] };
  let [from, to] = [0, 0];
  for (const { count, added, removed } of diffArrays(meanings(base), meanings(side))) {
    for (let at = 0; at < count; at++) {
      if (added) gap.sides.push(to + at);
      else if (removed) gap.bases.push(from + at);
      else partners.set(to + at, from + at);
    }
    if (!added) from += count;
    if (!removed) to += count;
    if (added || removed) continue;
    gaps.push(gap);
    gap = { sides: [], bases: [] };
  }
  return [...gaps, gap];
}
