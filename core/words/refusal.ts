import type { Message } from './message.ts';
import type { Speaker } from './speaker.ts';

/** Why something that a person asked for is not done. Whoever can refuse answers with what was asked for, or with this. */
export interface Refusal {
  readonly refused: Message;
}

/** The same in one sentence for the baker. */
export interface Refused {
  readonly refused: string;
}

/** Whether an answer says why not, instead of being what was asked for. */
export function isRefusal<Answer extends object>(answer: Answer | Refusal): answer is Refusal {
  return 'refused' in answer;
}

/** The answer as it is, or its refusal put into words. */
export function saidAnswer<Answer extends object>(
  answer: Answer | Refusal,
  speaker: Speaker,
): Answer | Refused {
  return isRefusal(answer) ? { refused: speaker.say(answer.refused) } : answer;
}
