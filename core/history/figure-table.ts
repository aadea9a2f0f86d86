import { allergenName } from '../facts/allergen-words.ts';
import { foldName } from '../text/names.ts';
import { type Message, message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';
import type { FormulaFigures } from './formula-figures.ts';

/** A figure that a history follows: what it is called, what it is at a revision, and how it is written. */
export interface HistoryFigure {
  /** How it is asked for and named in data; of an ingredient `ingredient: NAME`. */
  readonly key: string;
  readonly name: (speaker: Speaker) => string;
  /** The number that a chart draws; absent of what is no number. */
  readonly number?: (figures: FormulaFigures) => number | undefined;
  /** As it is shown; undefined where it is not known. Two revisions differ in a figure where they are shown differently. */
  readonly text: (figures: FormulaFigures, speaker: Speaker) => string | undefined;
}

type Number =
  | 'hydration'
  | 'saltFraction'
  | 'prefermentedFlour'
  | 'mixMinutes'
  | 'endCelsius'
  | 'waterCelsius';

function figure(
  key: string,
  of: Number,
  name: Message,
  written: (value: number, speaker: Speaker) => string,
): HistoryFigure {
  return {
    key,
    name: (speaker) => speaker.say(name),
    number: (figures) => figures[of],
    text: (figures, speaker) => {
      const value = figures[of];
      return value === undefined ? undefined : written(value, speaker);
    },
  };
}

/** The figures of every formula, in the order in which they are shown. */
export const figureTable: readonly HistoryFigure[] = [
  figure('hydration', 'hydration', message('history.hydration'), (value, say) => say.percent(value)),
  figure('salt', 'saltFraction', message('history.salt'), (value, say) => say.percent(value)),
  figure('prefermented-flour', 'prefermentedFlour', message('history.prefermented-flour'), (value, say) =>
    say.percent(value),
  ),
  figure('mix-minutes', 'mixMinutes', message('history.mix-minutes'), (value, say) => say.minutes(value)),
  figure('end-temperature', 'endCelsius', message('history.end-temperature'), (value, say) =>
    say.celsius(value),
  ),
  figure('water-temperature', 'waterCelsius', message('history.water-temperature'), (value, say) =>
    say.celsius(value),
  ),
  {
    key: 'cost',
    name: (speaker) => speaker.say(message('history.cost')),
    number: ({ costPerKilogram }) => costPerKilogram,
    text: ({ costPerKilogram, currency, costIsAtLeast }, speaker) => {
      if (costPerKilogram === undefined || currency === undefined) return undefined;
      const amount = costPerKilogram;
      return speaker.say(
        costIsAtLeast
          ? message('history.cost-at-least', { amount, currency })
          : message('history.cost-of-kilogram', { amount, currency }),
      );
    },
  },
  {
    key: 'allergens',
    name: (speaker) => speaker.say(message('history.allergens')),
    text: ({ allergens }, speaker) => {
      if (allergens === undefined) return undefined;
      if (allergens.length === 0) return speaker.say(message('history.no-allergens'));
      return speaker.list(allergens.map((word) => allergenName(word, speaker)));
    },
  },
];

/** What the key of a figure begins with that is the share of one ingredient. */
const ofIngredient = 'ingredient: ';

/** A figure by its key. */
export function figureOf(key: string): HistoryFigure {
  return figureTable.find((one) => one.key === key) ?? ingredientFigure(key.slice(ofIngredient.length));
}

/** A figure that follows its ingredient through all the names that it had; any other is as it was. */
export function underAllNames(figure: HistoryFigure, names: readonly (readonly string[])[]): HistoryFigure {
  if (!figure.key.startsWith(ofIngredient)) return figure;
  const name = figure.key.slice(ofIngredient.length);
  return ingredientFigure(name, namesOf(name, names));
}

/** All names of an ingredient that has one of them. */
function namesOf(name: string, names: readonly (readonly string[])[]): readonly string[] {
  return names.find((some) => some.some((one) => foldName(one) === foldName(name))) ?? [];
}

/** Whether two keys are of one figure, the ingredient of which may have had several names. */
export function isOneFigure(key: string, other: string, names: readonly (readonly string[])[]): boolean {
  if (key === other || !key.startsWith(ofIngredient) || !other.startsWith(ofIngredient)) return key === other;
  const [name, otherName] = [key, other].map((one) => foldName(one.slice(ofIngredient.length)));
  return name === otherName || namesOf(name ?? '', names).some((one) => foldName(one) === otherName);
}

/**
 * The figure that is the share of one ingredient, by its folded name; shown as `name`. Where no ingredient is called so it is
 * the one that has another of its names.
 */
export function ingredientFigure(name: string, otherNames: readonly string[] = []): HistoryFigure {
  const [folded, ...others] = [name, ...otherNames].map(foldName);
  const foundIn = ({ ingredients }: FormulaFigures) =>
    ingredients.find((one) => foldName(one.name) === folded) ??
    ingredients.find((one) => others.includes(foldName(one.name)));
  const of = (figures: FormulaFigures): number | undefined => foundIn(figures)?.fraction;
  return {
    key: `${ofIngredient}${name}`,
    name: () => name,
    number: of,
    text: (figures, speaker) => {
      const fraction = of(figures);
      if (fraction !== undefined) return speaker.percent(fraction);
      // Not in the formula at all, or in it with a share that is not known.
      return foundIn(figures) === undefined ? undefined : speaker.say(message('history.not-known'));
    },
  };
}
