import * as figures from '../text/figures.ts';
import { marked } from '../text/marked.ts';
import { english, plainGrammar } from './language.ts';
import type { Message } from './message.ts';
import { plainSpeaker } from './speak.ts';
import type { Said, Speaker } from './speaker.ts';

const sentences = english.catalogue as unknown as Readonly<
  Record<string, (args: object, say: Speaker) => string>
>;

/** Plain English with its figures marked, for a room that still puts its sentences together from texts. */
export const markingSpeaker: Speaker = {
  ...plainSpeaker,
  number: figures.figure,
  percent: (fraction, places) => figures.percent(fraction, places),
  points: (fraction) => figures.percent(fraction).replace('%', ''),
  mass: figures.mass,
  weighed: figures.weighedFigure,
  weighedHeavy: figures.heavyFigure,
  celsius: figures.degreesToRead,
  celsiusBand: (celsius, band) => figures.degreesWithBand(celsius, band).replace('-', '−'),
  celsiusApart: figures.degreesApart,
  celsiusPerMinute: figures.degreesPerMinute,
  minutes: figures.minutes,
  minutesBand: figures.minutesBand,
  duration: figures.duration,
  money: (amount, currency) => {
    const places = amount >= 1 || amount === 0 ? 2 : amount >= 0.01 ? 3 : 5;
    return `${marked('number', amount.toFixed(places))} ${currency}`;
  },
  count: (count, forms) =>
    (forms[plainGrammar.plural(count)] ?? forms.other).replace('#', figures.figure(count, 2)),
  say: (said: Said) => sentences[said.code]!(said.args, markingSpeaker),
};

/** What a reader is to be shown: a message, or a text of a room that puts its sentences together itself. */
export type Saying = Message | string;

/** A message for a room that still puts sentences together from texts. A text is what it was. */
export function inMarks(said: Saying): string {
  return typeof said === 'string' ? said : markingSpeaker.say(said);
}
