import {
  type Display,
  english,
  type LanguageTag,
  type Message,
  plainGrammar,
  type Settings,
  type Speaker,
  speakerOf,
} from '../../core/index.ts';
import { type Worded, wordedIn } from '../sync/language.ts';

/** In which words this run of the program speaks, to people and in what it writes for programs. */
interface Spoken {
  readonly worded: Worded;
  readonly shownIn: Partial<Display>;
  readonly forPeople: Speaker;
  readonly forPrograms: Speaker;
}

let spoken = spokenIn({ language: english, grammar: plainGrammar }, {});

/**
 * Chooses the language of all that this run says and how it shows figures to people, before anything is said. Where the language
 * cannot be loaded all is English, and `failed` is told so.
 */
export async function speakIn(
  tag: LanguageTag,
  failed: (sentence: string) => void,
  shownIn: Partial<Display> = {},
): Promise<void> {
  spoken = spokenIn(await wordedIn(tag, failed), shownIn);
}

/** How figures are shown to people, where it is not as usual; for a thread that speaks as this run does. */
export function shownToPeople(): Partial<Display> {
  return spoken.shownIn;
}

/** Whoever words what is said; where another program reads it, `forPrograms`, as `wording` has it. */
export function speaker(forPrograms = false): Speaker {
  return forPrograms ? spoken.forPrograms : spoken.forPeople;
}

/** A message in the language of this run. */
export function say(said: Message): string {
  return spoken.forPeople.say(said);
}

/** The language that this run speaks in truth. */
export function language(): LanguageTag {
  return spoken.worded.language.tag as LanguageTag;
}

/**
 * What a service is told of the words that are wanted. For people figures have the decimal sign of the language; for programs
 * the figures in sentences have a decimal point in every language, as all other figures of such a format have.
 */
export function wording(forPrograms = false): Pick<Settings, 'language' | 'grammar' | 'display'> {
  return wordingIn(spoken.worded, forPrograms, spoken.shownIn);
}

/** As `wording`, in a language that was loaded. */
export function wordingIn(
  worded: Worded,
  forPrograms: boolean,
  shownIn: Partial<Display> = {},
): Pick<Settings, 'language' | 'grammar' | 'display'> {
  const { decimalSign } = worded.language;
  const display: Display = {
    ...{ mass: 'grams', temperature: 'celsius' },
    ...{ decimalSign: forPrograms ? 'point' : decimalSign },
    ...(forPrograms ? {} : shownIn),
  };
  return { ...worded, display };
}

function spokenIn(worded: Worded, shownIn: Partial<Display>): Spoken {
  const speakerFor = (forPrograms: boolean): Speaker => {
    const { language, display, grammar } = wordingIn(worded, forPrograms, shownIn);
    return speakerOf(language, display, grammar);
  };
  return { worded, shownIn, forPeople: speakerFor(false), forPrograms: speakerFor(true) };
}
