import { keyOf, swatch } from './chart-key.ts';
import type { Frame } from './frame.ts';
import type { Hatching } from './hatching.ts';
import { filledWith, hatchingDefinitions } from './hatching.ts';
import { drawing, tag } from './svg.ts';
import { fitted, isolated } from './text-fit.ts';

/** A part of the dough as it is drawn: one flour, or everything of one kind. */
export interface Share {
  /** A part by its name, or by its kind and the names in it. */
  readonly called: string;
  readonly fraction: number;
  /** Absent where the formula has no size of its own. */
  readonly grams?: number;
  readonly hatching: Hatching;
}

const barHeight = 16;

/** The dough as one thin bar, each part as long as its share; below it what the parts are, in the same order. */
export function compositionDrawing(
  shares: readonly Share[],
  frame: Frame,
  texts: { readonly title: string; readonly description: string },
): string {
  const { speaker } = frame;
  const width = frame.width - 2;
  let x = 1;
  const bar = shares.map((share) => {
    const part = tag('rect', {
      x,
      y: 2,
      width: share.fraction * width,
      height: barHeight,
      fill: filledWith(share.hatching, frame.name),
      stroke: 'currentColor',
      'stroke-width': 1.2,
      class: 'share',
    });
    x += share.fraction * width;
    return part;
  });
  const key = keyOf(
    shares.map(({ called, fraction, grams, hatching }) => {
      const weight = frame.isWide && grams !== undefined ? ` (${speaker.mass(grams)})` : '';
      const text = `${isolated(fitted(called, frame.width - 120))} ${speaker.percent(fraction)}${weight}`;
      return swatch(filledWith(hatching, frame.name), text);
    }),
    frame,
    barHeight + 8,
  );
  return drawing(
    texts,
    { width: frame.width, height: barHeight + 12 + key.height },
    'composition',
    hatchingDefinitions(
      shares.map(({ hatching }) => hatching),
      frame.name,
    ),
    ...bar,
    key.svg,
  );
}
