import type { Frame } from './frame.ts';
import type { Hatching } from './hatching.ts';
import { filledWith, hatchingDefinitions } from './hatching.ts';
import { drawing, label, pointsOf, stroked, tag, textSize } from './svg.ts';
import { fitted, isolated, spread, textWidth } from './text-fit.ts';

/** A part of the dough as it is drawn: one flour, or everything of one kind. */
export interface Share {
  /** A part by its name, or by its kind and the names in it. */
  readonly called: string;
  readonly fraction: number;
  /** Absent where the formula has no size of its own. */
  readonly grams?: number;
  readonly hatching: Hatching;
}

const leastHeight = 240;
const labelHeight = 24;
const leader = 26;

/** The dough as one column; beside each part its name, its share and its weight. */
export function compositionDrawing(
  shares: readonly Share[],
  frame: Frame,
  texts: { readonly title: string; readonly description: string },
): string {
  const { speaker } = frame;
  const columnWidth = frame.isWide ? 110 : 46;
  const height = Math.max(leastHeight, shares.length * labelHeight);
  const top = 6;
  let y = top;
  const parts = shares.map((share) => {
    const part = { share, top: y, height: share.fraction * height };
    y += part.height;
    return part;
  });
  // Rows are lines of the same height: what spreads texts along a row spreads rows along a column.
  const middles = spread(
    parts.map((part) => ({ middle: part.top + part.height / 2, width: labelHeight })),
    0,
    height + 2 * top,
    0,
  )!;
  const column = parts.map((part) =>
    tag('rect', {
      x: 1,
      y: part.top,
      width: columnWidth,
      height: part.height,
      fill: filledWith(part.share.hatching, frame.name),
      stroke: 'currentColor',
      'stroke-width': 1.2,
    }),
  );
  const shareTexts = shares.map(({ fraction }) => speaker.percent(fraction));
  const weightTexts = shares.map(({ grams }) =>
    frame.isWide && grams !== undefined ? speaker.mass(grams) : '',
  );
  const shareWidth = Math.max(0, ...shareTexts.map((text) => textWidth(text)));
  const weightWidth = Math.max(0, ...weightTexts.map((text) => textWidth(text)));
  const shareEdge = frame.width - (weightWidth === 0 ? 0 : weightWidth + 18);
  const from = columnWidth + leader;
  const labels = parts.map((part, index) => {
    const middle = middles[index]!;
    const centre = part.top + part.height / 2;
    const base = middle + textSize * 0.35;
    const bend = [
      { x: columnWidth + 1, y: centre },
      { x: columnWidth + 8, y: centre },
      { x: from - 9, y: middle },
      { x: from - 4, y: middle },
    ];
    return [
      tag('polyline', { points: pointsOf(bend), ...stroked }),
      label(isolated(fitted(part.share.called, shareEdge - shareWidth - 12 - from)), { x: from, y: base }),
      label(shareTexts[index]!, { x: shareEdge, y: base }, 'end', { 'font-weight': 'bold' }),
      weightTexts[index] === '' ? '' : label(weightTexts[index]!, { x: frame.width, y: base }, 'end'),
    ].join('');
  });
  return drawing(
    texts,
    { width: frame.width, height: height + 2 * top },
    'composition',
    hatchingDefinitions(
      shares.map(({ hatching }) => hatching),
      frame.name,
    ),
    ...column,
    ...labels,
  );
}
