import { analyseResolved } from '../../analysis/analyse.ts';
import type { Analysis } from '../../analysis/analysis.ts';
import { mixers as catalogueMixers } from '../../catalogue/mixers.ts';
import type { Bakery } from '../../model/bakery.ts';
import { byHand, findHands, findMixer, type Mixer } from '../../model/found-mixer.ts';
import type { Scope } from '../../model/scope.ts';
import { foldName } from '../../text/names.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { factsSection } from './fact-sections.ts';
import type { Fact, FactSource, FactsSection } from './sheet-document.ts';
import type { TodayConditions } from './sheet-options.ts';

/** A formula under the conditions of the day, and what of them could not be taken. */
export interface UnderToday {
  readonly analysis: Analysis;
  readonly notDone: readonly Message[];
}

/** No kitchen is colder or hotter than this, °C; beyond it a figure is a slip of the pen. */
const coldestCelsius = -30;
const hottestCelsius = 60;

/**
 * The formula in today's room, with today's flour, tap water, scale and mixer. What the file does not say and is taken
 * from the room, as the temperature of the flour, follows today's room. The formula itself when nothing is tried.
 */
export function underToday(analysis: Analysis, today: TodayConditions, scope: Scope): UnderToday {
  const { resolved } = analysis;
  const notDone: Message[] = [];
  const taken = takenOf(today, notDone);
  const mixer = today.mixer === undefined ? undefined : mixerNamed(today.mixer, scope);
  if (today.mixer !== undefined && mixer === undefined)
    notDone.push(message('asked.no-such-mixer', { name: today.mixer }));
  if (Object.keys(taken).length === 0 && mixer === undefined) return { analysis, notDone };
  const dough = resolved.input.sections[0]!.id;
  const mixes =
    mixer === undefined
      ? resolved.mixes
      : resolved.mixes.map((mix) => (mix.sectionId === dough ? { ...mix, mixer } : mix));
  if (mixer !== undefined && !resolved.mixes.some((mix) => mix.sectionId === dough))
    notDone.push(message('asked.nothing-mixed'));
  return {
    analysis: analyseResolved({ ...resolved, mixes, bakery: bakeryToday(resolved.bakery, taken) }),
    notDone,
  };
}

/** The conditions of a sheet, each with where it comes from. */
export function dayConditions(inFile: Analysis, now: Analysis, speaker: Speaker): FactsSection | undefined {
  const [file, today] = [inFile.resolved.bakery, now.resolved.bakery];
  const condition = <Value extends number | string>(
    key: 'room' | 'flour' | 'tap water' | 'scale step' | 'mixer',
    label: Message,
    [before, after]: readonly [Value | undefined, Value | undefined],
    assumed: boolean,
    words: (value: Value) => string,
  ): Fact => {
    const notKnown = speaker.say(message('sheet.not-known'));
    const said = (value: Value | undefined): string => (value === undefined ? notKnown : words(value));
    const source = sourceOf(before === after, assumed);
    const from =
      source === 'today'
        ? [message('sheet.instead-of', { written: said(before) })]
        : source === 'assumed' && after !== undefined
          ? [message('sheet.assumed')]
          : [];
    return {
      id: `day/${key}`,
      key,
      label: speaker.say(label),
      value: said(after),
      notes: from.map(speaker.say),
      ...(typeof after === 'number' ? { figure: after } : {}),
      source,
      ...(before === after ? {} : { inFile: said(before) }),
    };
  };
  const [mixerBefore, mixer] = [doughMixer(inFile)?.name, doughMixer(now)?.name];
  return factsSection('day', '', [
    condition(
      'room',
      message('sheet.room'),
      [file.roomCelsius, today.roomCelsius],
      file.assumed.includes('room'),
      speaker.celsius,
    ),
    condition(
      'flour',
      message('sheet.flour'),
      [file.flourCelsius, today.flourCelsius],
      file.assumed.includes('flour'),
      speaker.celsius,
    ),
    condition(
      'tap water',
      message('sheet.tap-water'),
      [file.tapCelsius, today.tapCelsius],
      file.tapCelsius === undefined,
      speaker.celsius,
    ),
    condition(
      'scale step',
      message('sheet.scale-step'),
      [file.scaleStepGrams, today.scaleStepGrams],
      file.assumed.includes('scale step'),
      speaker.scaleStep,
    ),
    ...(mixer === undefined
      ? []
      : [
          condition('mixer', message('sheet.mixer'), [mixerBefore, mixer], false, (name) =>
            mixerWords(name, speaker),
          ),
        ]),
  ]);
}

/** The mixers that can be asked for: the file's own first, then those that files define, then the built-in kinds. */
export function mixerNames(analysis: Analysis, scope: Scope): string[] {
  const own = doughMixer(analysis)?.name;
  const defined = scope.names('mixer').map((one) => one.name.text);
  const builtIn = catalogueMixers.map((one) => (one.name === 'hand' ? byHand.name : one.name));
  const seen = new Set<string>();
  return [...(own === undefined ? [] : [own]), ...defined, ...builtIn].filter((name) => {
    const folded = foldName(name);
    return seen.has(folded) ? false : seen.add(folded) !== undefined;
  });
}

function sourceOf(same: boolean, assumed: boolean): FactSource {
  if (!same) return 'today';
  return assumed ? 'assumed' : 'file';
}

/** A mixer by its name; hands in the words of the reader. */
function mixerWords(name: string, speaker: Speaker): string {
  return name === byHand.name ? speaker.say(message('place.by-hand')) : name;
}

function doughMixer({ resolved }: Analysis): Mixer | undefined {
  return resolved.mixes.find((mix) => mix.sectionId === resolved.input.sections[0]!.id)?.mixer;
}

type Taken = Omit<TodayConditions, 'mixer'>;

function takenOf(today: TodayConditions, notDone: Message[]): Taken {
  const taken: { -readonly [Key in keyof Taken]: Taken[Key] } = {};
  for (const [key, code] of [
    ['roomCelsius', 'asked.no-room'],
    ['flourCelsius', 'asked.no-flour'],
    ['tapCelsius', 'asked.no-tap'],
  ] as const) {
    const celsius = today[key];
    if (celsius === undefined) continue;
    if (celsius >= coldestCelsius && celsius <= hottestCelsius) taken[key] = celsius;
    else notDone.push(message(code, { celsius }));
  }
  const step = today.scaleStepGrams;
  if (step !== undefined) {
    if (step > 0 && Number.isFinite(step)) taken.scaleStepGrams = step;
    else notDone.push(message('asked.no-scale-step'));
  }
  return taken;
}

function bakeryToday(bakery: Bakery, taken: Taken): Bakery {
  const { roomCelsius, flourCelsius, tapCelsius, scaleStepGrams } = taken;
  // Flour that nobody measured is as warm as the room.
  const flour = flourCelsius ?? (bakery.assumed.includes('flour') ? roomCelsius : undefined);
  return {
    ...bakery,
    ...(roomCelsius === undefined ? {} : { roomCelsius }),
    ...(flour === undefined ? {} : { flourCelsius: flour }),
    ...(tapCelsius === undefined ? {} : { tapCelsius }),
    ...(scaleStepGrams === undefined ? {} : { scaleStepGrams }),
  };
}

function mixerNamed(name: string, scope: Scope): Mixer | undefined {
  const folded = foldName(name);
  if (folded === 'by hand' || folded === 'hand') return findHands(scope);
  const found = findMixer({ text: name, folded, start: 0, end: 0 }, scope);
  return found.kind === 'found' ? found.mixer : undefined;
}
