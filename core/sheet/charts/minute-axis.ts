import { message } from '../../words/message.ts';
import type { Piece } from './chart-key.ts';
import { type Frame, rowHeight } from './frame.ts';
import { minuteStep, multiples, type Scale } from './scale.ts';
import { label, line, textSize } from './svg.ts';
import { textWidth } from './text-fit.ts';

/** The minutes of a programme across a drawing. */
export interface Axis {
  readonly frame: Frame;
  readonly x: Scale;
  readonly left: number;
  readonly right: number;
  readonly lastMinute: number;
  readonly end: number;
}

/** The axis with its minutes, and a heavy mark where the programme ends. */
export function minuteAxis({ x, left, right, lastMinute, end, frame }: Axis, y: number): Piece {
  const words = (minutes: number): string =>
    frame.speaker.say(message('programme.minutes', { minutes: Math.round(minutes) }));
  // A text at an edge is moved in by half its width, so its neighbour needs as much more room.
  const room = textWidth(words(Math.round(lastMinute))) * 1.5 + 8;
  const step = minuteStep(lastMinute, (minutes) => x(minutes) - left >= room);
  const at = multiples(0, lastMinute, step);
  const marks = at.map((minutes) => {
    const middle = x(minutes);
    const text = words(minutes);
    const half = textWidth(text) / 2;
    const place = Math.min(Math.max(middle, half), frame.width - half);
    return (
      line({ x: middle, y }, { x: middle, y: y + 6 }) +
      label(text, { x: place, y: y + 6 + textSize }, 'middle')
    );
  });
  const finish = line({ x: end, y: y - 6 }, { x: end, y: y + 6 }, { 'stroke-width': 3 });
  return {
    svg: [line({ x: left, y }, { x: right, y }), ...marks, finish].join(''),
    height: 6 + rowHeight + 6,
  };
}
