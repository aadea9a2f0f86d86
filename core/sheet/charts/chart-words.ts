import { stageMessage } from '../../analysis/mix-analysis.ts';
import type { CurveBand } from '../../facts/programme-curve.ts';
import { type Message, message } from '../../words/message.ts';

export function noTemperature(reason: Message = message('chart.not-known')): Message {
  return message('chart.no-temperature', { reason });
}

export function noDevelopment(reason: Message = message('chart.not-known')): Message {
  return message('chart.no-development', { reason });
}

/** `Let-down from about 26–31 min.`, and what that supposes where it lies past the end. */
export function bandSentence({ kind, lowMinutes, highMinutes, atLastSpeed }: CurveBand): Message {
  const band = { stage: stageMessage(kind), lowMinutes, highMinutes };
  return message(atLastSpeed ? 'chart.from-stage-if' : 'chart.from-stage', band);
}
