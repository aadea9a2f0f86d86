import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { nodeIds } from './node-ids.ts';
import type { Step, StepsSection } from './sheet-document.ts';
import type { TimelineMoment, WorkTimeline } from './timeline.ts';

/** Every moment of the work with its time; undefined where all there is is that it is mixed. */
export function clockSection(
  { asked, moments, notes }: WorkTimeline,
  { say, duration }: Speaker,
): StepsSection | undefined {
  if (asked === undefined && moments.every(({ kind }) => kind === 'mix')) return undefined;
  const idOf = nodeIds();
  return {
    kind: 'steps',
    id: 'clock',
    name: 'clock',
    title: say(message('sheet.clock')),
    heads: [say(message('sheet.at')), say(message('sheet.work')), say(message('sheet.lasts'))],
    steps: moments.map(({ kind, line, name, text, startSeconds, seconds, clock }): Step => {
      return {
        id: idOf('clock', name),
        of: kind,
        line,
        when: clock?.words ?? say(fromStart(startSeconds)),
        ...(clock === undefined ? {} : { clock }),
        text,
        startSeconds,
        ...(seconds === undefined ? {} : { seconds, lasts: duration(seconds) }),
      };
    }),
    notes,
  };
}

function fromStart(seconds: TimelineMoment['startSeconds']): Message {
  if (seconds < 0) return message('sheet.before', { seconds: -seconds });
  return seconds === 0 ? message('sheet.at-start') : message('sheet.after', { seconds });
}
