import type { GapMap } from '../../facts/gap-map.ts';
import { paragraph } from './chart-key.ts';
import type { Frame } from './frame.ts';
import { axisMessage, rowWords } from './map-words.ts';
import { linear, type Scale, ticks } from './scale.ts';
import { textWidth } from './text-fit.ts';

const plotHeight = { narrow: 230, wide: 290 };
/** Height of a row where rows are speeds, and stand for nothing between them. */
const speedHeight = 54;
const gap = 8;

/** Where minutes and rows lie in a drawing. */
export interface Grid {
  readonly frame: Frame;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly x: Scale;
  readonly y: Scale;
  /** How far a row reaches up and down where it stands for itself alone; 0 where what lies between two rows lies between their doughs. */
  readonly halfRow: number;
  /** The values that the axis names. */
  readonly ticks: readonly number[];
}

export function mapGrid(map: GapMap, frame: Frame): Grid {
  const values = map.rows.map(({ value }) => value);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const isStepped = map.against === 'speed' || !(high > low);
  const named = isStepped
    ? values
    : ticks(low * 100, high * 100, 7, 5).map((percent) => Math.round(percent) / 100);
  const widest = Math.max(...named.map((value) => textWidth(rowWords(map, value, frame.speaker))));
  const left = widest + gap;
  const right = frame.width - 10;
  const top = paragraph(frame.speaker.say(axisMessage(map)), frame, 0, true).height + gap;
  const height = isStepped ? values.length * speedHeight : frame.isWide ? plotHeight.wide : plotHeight.narrow;
  const bottom = top + height;
  return {
    frame,
    left,
    right,
    top,
    bottom,
    x: linear(0, map.lastMinute, left, right),
    y: isStepped
      ? (value) => bottom - (values.indexOf(value) + 0.5) * speedHeight
      : linear(low, high, bottom, top),
    halfRow: isStepped ? speedHeight / 2 : 0,
    ticks: named,
  };
}
