import type { MixingStage } from '../calc/mixing/development.ts';

/** The side of the square that a drawing of a stage is made in. */
export const stageDrawingSize = 24;

/**
 * The dough at each stage in one stroke, our own drawings: shaggy, a rough ball, a ball that tears, a dome with its drawn-out
 * skin, a dome that sags, a puddle that draws strings. Commands of an SVG path within a square of 24.
 */
export const stageDrawings: Readonly<Record<MixingStage, string>> = {
  'pick-up': 'M3 19L5 15L7 18L8 12L11 16L12 10L15 15L17 11L18 17L21 14L21 19Z',
  'clean-up': 'M4 19C3 14 6 11 8 12C8 8 13 8 14 11C17 9 21 13 20 19Z',
  developing: 'M4 19C3 11 8 8 12 8C16 8 21 11 20 19H14L13 14L11 19Z',
  developed: 'M3 19C3 9 8 5 12 5C16 5 21 9 21 19ZM8 11C10 8 14 8 16 11',
  'let-down': 'M2 19C3 13 7 12 10 13C14 14 17 11 19 14C21 16 22 17 22 19Z',
  breakdown: 'M2 19C4 16 8 17 12 17C16 17 20 16 22 19ZM7 17V9M12 17V6M17 17V10',
};
