import type { Frame } from './frame.ts';
import { rowHeight } from './frame.ts';
import { label, line, type Point, tag, textSize } from './svg.ts';
import { spread, textWidth, wrapped } from './text-fit.ts';

/** Part of a drawing that takes some height. */
export interface Piece {
  readonly svg: string;
  readonly height: number;
}

/** A line of a key: what it looks like, around a middle, and what it means. */
export interface KeyItem {
  readonly width: number;
  readonly sample: (middle: Point) => string;
  readonly text: string;
}

/** Width of a sample that is drawn. */
export const sampleWidth = 26;
const sampleGap = 6;
/** How much wider bold letters come out. */
export const boldWider = 1.12;
const itemGap = 18;

/** The key from `y` down, its items side by side as far as they fit. */
export function keyOf(items: readonly KeyItem[], { width }: Frame, y: number): Piece {
  const drawn: string[] = [];
  let x = 0;
  let rows = 0;
  for (const { sample, text, width: sampled } of items) {
    const indent = sampled + sampleGap;
    const lines = shortened(text, width - indent);
    const widest = Math.max(0, ...lines.map((one) => textWidth(one)));
    if (x > 0 && x + indent + widest > width) {
      x = 0;
      rows++;
    }
    const top = y + rows * rowHeight;
    drawn.push(sample({ x: x + sampled / 2, y: top + rowHeight / 2 }));
    lines.forEach((one, index) => {
      drawn.push(label(one, { x: x + indent, y: top + index * rowHeight + textSize }));
    });
    rows += Math.max(0, lines.length - 1);
    x = lines.length > 1 ? width : x + indent + widest + itemGap;
  }
  return { svg: drawn.join(''), height: items.length === 0 ? 0 : (rows + 1) * rowHeight };
}

const mostLines = 4;

/** A text in a few lines; of a longer one its beginning, for the table says all of it. */
function shortened(text: string, width: number): string[] {
  const lines = wrapped(text, width);
  if (lines.length <= mostLines) return lines;
  const cut = wrapped(text, width - textWidth(' …')).slice(0, mostLines);
  return [...cut.slice(0, -1), `${cut.at(-1)!} …`];
}

/** A line of a key whose sign is itself a short text. */
export function signed(sign: string, text: string): KeyItem {
  return {
    width: Math.max(14, textWidth(sign) * boldWider),
    sample: ({ x, y }) => label(sign, { x, y: y + textSize * 0.35 }, 'middle', { 'font-weight': 'bold' }),
    text,
  };
}

/** A text from `y` down, in as many lines as it takes. */
export function paragraph(text: string, { width }: Frame, y: number, bold = false): Piece {
  const lines = wrapped(text, bold ? width / boldWider : width);
  const more = bold ? { 'font-weight': 'bold' } : {};
  return {
    svg: lines
      .map((one, index) => label(one, { x: 0, y: y + index * rowHeight + textSize }, 'start', more))
      .join(''),
    height: lines.length * rowHeight,
  };
}

/** A stretch along an axis and what it is called, the fullest way first. */
export interface Called {
  readonly from: number;
  readonly to: number;
  readonly texts: readonly string[];
  /** What a number in its place stands for. */
  readonly inFull: string;
}

const leader = 7;

/**
 * One row of words below stretches, each at its own; where they do not all fit, numbers instead, told by the key. Where
 * not even numbers fit the shortest stretches go without, and stand in the table only.
 */
export function callRow(
  called: readonly Called[],
  from: number,
  to: number,
  y: number,
  counted: (index: number) => string = (index) => String(index + 1),
): Piece & { readonly key: readonly KeyItem[] } {
  if (called.length === 0) return { svg: '', height: 0, key: [] };
  const most = Math.max(...called.map(({ texts }) => texts.length));
  for (let form = 0; form < most; form++) {
    const row = wordsAt(
      called.map((one) => ({ ...one, text: one.texts[Math.min(form, one.texts.length - 1)]! })),
      { from, to, y, gap: 8 },
    );
    if (row !== undefined) return { ...row, key: [] };
  }
  const numbered = called.map((one, index) => ({ ...one, text: counted(index) }));
  const byLength = [...numbered].sort((one, other) => other.to - other.from - (one.to - one.from));
  for (let kept = byLength.length; kept > 0; kept--) {
    const longest = new Set(byLength.slice(0, kept));
    const shown = numbered.filter((one) => longest.has(one));
    const row = wordsAt(shown, { from, to, y, gap: 4 });
    if (row !== undefined) return { ...row, key: shown.map(({ text, inFull }) => signed(text, inFull)) };
  }
  return { svg: '', height: 0, key: [] };
}

function wordsAt(
  called: readonly (Called & { readonly text: string })[],
  { from, to, y, gap }: { from: number; to: number; y: number; gap: number },
): Piece | undefined {
  const wanted = called.map((one) => ({ middle: (one.from + one.to) / 2, width: textWidth(one.text) }));
  const middles = spread(wanted, from, to, gap);
  if (middles === undefined) return undefined;
  const drawn = called.map((one, index) => {
    const middle = middles[index]!;
    return (
      line({ x: wanted[index]!.middle, y: y + 1 }, { x: middle, y: y + leader }) +
      label(one.text, { x: middle, y: y + leader + textSize - 1 }, 'middle')
    );
  });
  return { svg: drawn.join(''), height: leader + rowHeight };
}

/** A line of a key whose sign is an outline with its hatching. */
export function swatch(fill: string, text: string): KeyItem {
  return {
    width: sampleWidth,
    sample: ({ x, y }) =>
      tag('rect', { x: x - 12, y: y - 7, width: 24, height: 14, fill, stroke: 'currentColor' }),
    text,
  };
}
