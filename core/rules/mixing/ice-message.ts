import type { IcePlan } from '../../calc/mixing/mixing-water.ts';
import { type Message, message } from '../../words/message.ts';

/** What ice would do to the dough, in a sentence. */
export function iceMessage({ iceGrams, tapGrams, doughCelsius }: IcePlan): Message {
  return message('ice.would-end', { iceGrams, tapGrams, doughCelsius });
}
