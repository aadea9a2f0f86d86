import { clockOf } from '../text/dates.ts';
import { type Display, plainDisplay } from '../text/display.ts';
import { percentPlaces, placesWithin, trimmed } from '../text/figures.ts';
import {
  differenceText,
  heavyText,
  massText,
  stepText,
  temperatureText,
  warmingText,
  weighedText,
} from '../text/shown-figures.ts';
import { english, type Grammar, type Language, plainGrammar } from './language.ts';
import type { Said, Speaker } from './speaker.ts';

/**
 * Whoever words messages in a language, with figures as they are to be shown. What the language has no sentence for is said in
 * English, its figures and lists too.
 */
export function speakerOf(language: Language, display: Display, grammar: Grammar = plainGrammar): Speaker {
  const sentenceOf = sentencesOf(language);
  const inEnglish = language === english ? undefined : speakerOf(english, display);
  // A sign of print before a number, never the hyphen of a keyboard; and the decimal sign that is set.
  const signed = (text: string): string => {
    const minus = text.startsWith('-') ? `−${text.slice(1)}` : text;
    return display.decimalSign === 'comma' ? minus.replace('.', ',') : minus;
  };
  const number = (value: number, places: number): string => signed(trimmed(value, places));
  const minutes = (value: number): string => `${number(roundMinutes(value), 1)} min`;
  const speaker: Speaker = {
    language: language.tag,
    number,
    printed: (value, places) => signed(value.toFixed(places)),
    percent: (fraction, places = percentPlaces(fraction)) =>
      `${number(fraction * 100, places)}${language.percentSign}`,
    points: (fraction) => number(fraction * 100, percentPlaces(fraction)),
    mass: (grams) => signed(massText(grams, display, language.lessThan)),
    weighed: (grams, stepGrams) => {
      const { figure, unit } = weighedText(grams, stepGrams, display);
      return { figure: signed(figure), unit };
    },
    weighedHeavy: (grams) => {
      const { figure, unit } = heavyText(grams, display);
      return { figure: signed(figure), unit };
    },
    scaleStep: (stepGrams) => signed(stepText(stepGrams, display)),
    celsius: (celsius) => signed(temperatureText(celsius, display)),
    celsiusBand: (celsius, band) => {
      const places = placesWithin(band);
      if (places === undefined) return speaker.celsius(celsius);
      const alone = signed(temperatureText(celsius, display, places));
      return `${alone} ± ${signed(differenceText(band, display, places))}`;
    },
    celsiusApart: (celsius) => signed(differenceText(celsius, display)),
    celsiusPerMinute: (rate, places) => signed(warmingText(rate, places, display)),
    minutes,
    minutesBand: (low, high) => {
      const [from, to] = [roundMinutes(low), roundMinutes(high)];
      return from === to ? minutes(from) : `${number(from, 1)}–${minutes(to)}`;
    },
    duration: (seconds) => {
      if (seconds < 60) return `${number(seconds, 0)} s`;
      if (seconds < 600 && seconds % 60 !== 0) return `${number(seconds / 60, 1)} min`;
      const whole = Math.round(seconds / 60);
      const [hours, rest] = [Math.floor(whole / 60), whole % 60];
      if (hours === 0) return `${rest} min`;
      return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
    },
    clock: clockOf,
    money: (amount, currency) => {
      const text = `${signed(Math.max(amount, amount > 0 ? cent : amount).toFixed(2))} ${currency}`;
      return amount > 0 && amount < cent ? language.lessThan(text) : text;
    },
    moneyApart: (before, after, currency) => {
      const cents = Math.abs(Math.round(after * 100) - Math.round(before * 100));
      return cents === 0 ? undefined : speaker.money(cents / 100, currency);
    },
    lessThan: language.lessThan,
    list: (words) => grammar.list(words, 'and'),
    anyOf: (words) => grammar.list(words, 'or'),
    count: (count, forms) => (forms[grammar.plural(count)] ?? forms.other).replace('#', number(count, 2)),
    // A message of another version, come as data, is shown by its code rather than not at all.
    say: (said: Said) => sentenceOf(said.code)?.(said.args, speaker) ?? inEnglish?.say(said) ?? said.code,
  };
  return speaker;
}

type Sentence = (args: object, say: Speaker) => string;

/** Finds the sentence of a message, and remembers it. */
function sentencesOf(language: Language): (code: string) => Sentence | undefined {
  const found = new Map<string, Sentence | undefined>();
  return (code) => {
    if (!found.has(code)) {
      const subject = Object.values(language.subjects).find((one) => Object.hasOwn(one, code));
      found.set(code, (subject as Readonly<Record<string, Sentence>> | undefined)?.[code]);
    }
    return found.get(code);
  };
}

/** The least that money is paid in, of a currency with hundredths. */
export const cent = 0.01;

/** Plain English, grams and °C. */
export const plainSpeaker: Speaker = speakerOf(english, plainDisplay);

function roundMinutes(value: number): number {
  return value >= 10 ? Math.round(value) : Math.round(value * 2) / 2;
}
