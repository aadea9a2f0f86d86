import { type Point, textSize } from './svg.ts';
import { textWidth } from './text-fit.ts';

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** What a word keeps clear of: shapes as points along and across them, and boxes; it rather keeps clear of the heights of faint lines. */
export interface Ground {
  readonly points: readonly Point[];
  readonly boxes: readonly Box[];
  readonly faint: readonly number[];
}

const clear = 3;
const stepAcross = 9;
const stepDown = 4;
/** A word on a faint line stands as badly as one this much further away. */
const onFaint = 40;

/** The room that a text takes whose left end and baseline are at `at`. */
export function boxOf(text: string, { x, y }: Point): Box {
  return { left: x, right: x + textWidth(text), top: y - 0.75 * textSize, bottom: y + 0.25 * textSize };
}

/** Where a text stands free within a box, as near to a point as it can; undefined where there is no room. Gives its left end and baseline. */
export function freePlace(text: string, near: Point, within: Box, ground: Ground): Point | undefined {
  const width = textWidth(text);
  let best: { readonly at: Point; readonly cost: number } | undefined;
  for (let y = within.top + textSize; y <= within.bottom - 2; y += stepDown)
    for (let x = within.left + 2; x + width <= within.right - 2; x += stepAcross) {
      const box = boxOf(text, { x, y });
      const middle = { x: x + width / 2, y: (box.top + box.bottom) / 2 };
      const faint = ground.faint.some((one) => one > box.top && one < box.bottom) ? onFaint : 0;
      const across = Math.max(0, Math.abs(middle.x - near.x) - width / 2);
      const cost = across + Math.abs(middle.y - near.y) + faint;
      if (best !== undefined && cost >= best.cost) continue;
      if (isFree(box, ground)) best = { at: { x, y }, cost };
    }
  return best?.at;
}

function isFree(box: Box, { points, boxes }: Ground): boolean {
  const inside = ({ x, y }: Point): boolean =>
    x > box.left - clear && x < box.right + clear && y > box.top - clear && y < box.bottom + clear;
  return (
    !points.some(inside) &&
    !boxes.some(
      (one) =>
        one.left < box.right + clear &&
        box.left < one.right + clear &&
        one.top < box.bottom + clear &&
        box.top < one.bottom + clear,
    )
  );
}
