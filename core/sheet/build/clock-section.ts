import type { FermentationTimeline } from '../../facts/fermentation-timeline.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { nodeIds } from './node-ids.ts';
import { riseNotes } from './rise-notes.ts';
import type { Step, StepsSection } from './sheet-document.ts';
import type { TimelineMoment, WorkTimeline } from './timeline.ts';

/** Every moment of the work with its time; undefined where all there is is that it is mixed. */
export function clockSection(
  { asked, moments, endSeconds, notes }: WorkTimeline,
  fermentation: FermentationTimeline | undefined,
  firstLine: number,
  { say, duration }: Speaker,
): StepsSection | undefined {
  if (asked === undefined && moments.every(({ kind }) => kind === 'mix')) return undefined;
  const idOf = nodeIds();
  const rises = riseNotes(fermentation);
  const first = Math.min(0, ...moments.map(({ startSeconds }) => startSeconds));
  const whole = Math.max(60, endSeconds - first);
  const along = (at: number): number => Math.round(((at - first) / whole) * 1000) / 1000;
  return {
    kind: 'steps',
    id: 'clock',
    name: 'clock',
    title: say(message('sheet.clock')),
    heads: [say(message('sheet.at')), say(message('sheet.work')), say(message('sheet.lasts'))],
    steps: moments.map((moment): Step => {
      const { kind, line, name, text, brief, startSeconds, seconds, clock, ofPart } = moment;
      const rise = kind === 'step' && ofPart !== true ? rises.get(line - firstLine) : undefined;
      return {
        id: idOf('clock', name),
        of: kind,
        line,
        when: clock?.words ?? say(fromStart(startSeconds)),
        ...(clock === undefined ? {} : { clock }),
        text,
        ...(brief === undefined ? {} : { brief }),
        startSeconds,
        along: { from: along(startSeconds), to: along(startSeconds + (seconds ?? 0)) },
        ...(rise === undefined ? {} : { notes: rise.map(say) }),
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
