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

/** The figure that is the share of one ingredient, by its folded name; shown as `name`. */
export function ingredientFigure(name: string): HistoryFigure {
  const folded = foldName(name);
  const of = ({ ingredients }: FormulaFigures): number | undefined =>
    ingredients.find((one) => foldName(one.name) === folded)?.fraction;
  return {
    key: `ingredient: ${name}`,
    name: () => name,
    number: of,
    text: (figures, speaker) => {
      const fraction = of(figures);
      if (fraction !== undefined) return speaker.percent(fraction);
      // Not in the formula at all, or in it with a share that is not known.
      return figures.ingredients.some((one) => foldName(one.name) === folded)
        ? speaker.say(message('history.not-known'))
        : undefined;
    },
  };
}
