import * as figures from '../text/figures.ts';
import { marked } from '../text/marked.ts';
import { english, plainGrammar } from './language.ts';
import type { Message } from './message.ts';
import { cent, plainSpeaker } from './speak.ts';
import type { Said, Speaker } from './speaker.ts';

const sentences = english.catalogue as unknown as Readonly<
  Record<string, (args: object, say: Speaker) => string>
>;

/** Plain English with its figures marked, for a room that still puts its sentences together from texts. */
export const markingSpeaker: Speaker = {
  ...plainSpeaker,
  number: figures.figure,
  printed: (value, places) => marked('number', value.toFixed(places)),
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
    const text = `${marked('number', Math.max(amount, amount > 0 ? cent : amount).toFixed(2))} ${currency}`;
    return amount > 0 && amount < cent ? english.lessThan(text) : text;
  },
  moneyApart: (before, after, currency) => {
    const cents = Math.abs(Math.round(after * 100) - Math.round(before * 100));
    return cents === 0 ? undefined : markingSpeaker.money(cents / 100, currency);
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
