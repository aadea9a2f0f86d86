import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** What the figures at the ends of lines are, and what they stand on; Markdown. */
export const mixingHints = {
  'hint.both': ({ fraction, grams }: Args<'fraction' | 'grams'>, say: Speaker) =>
    `${say.percent(fraction)} · ${say.mass(grams)}`,
  'hint.share': ({ fraction }: Args<'fraction'>, say: Speaker) => say.percent(fraction),
  'hint.weight': ({ grams }: Args<'grams'>, say: Speaker) => say.mass(grams),
  'hint.not-known': () => 'Not known yet',

  'hint.percent-stated': ({ fraction, grams }: Args<'fraction' | 'grams'>, say: Speaker) =>
    `**${say.mass(grams)}**: ${say.percent(fraction)}. The percent is stated here.`,
  'hint.percent-stated-of': (
    { fraction, grams, otherGrams }: Args<'fraction' | 'grams' | 'otherGrams'>,
    say: Speaker,
  ) =>
    `**${say.mass(grams)}**: ${say.percent(fraction)} of ${say.mass(otherGrams)}. The percent is stated here.`,
  'hint.weight-stated': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `**${say.percent(fraction)}** of the flour. The weight is stated here.`,
  'hint.weight-stated-of': ({ fraction, otherGrams }: Args<'fraction' | 'otherGrams'>, say: Speaker) =>
    `**${say.percent(fraction)}** of the flour (${say.mass(otherGrams)}). The weight is stated here.`,
  'hint.weight-stated-line': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `**${say.percent(fraction)}** of its line of 100%. The weight is stated here.`,
  'hint.weight-stated-line-of': ({ fraction, otherGrams }: Args<'fraction' | 'otherGrams'>, say: Speaker) =>
    `**${say.percent(fraction)}** of its line of 100% (${say.mass(otherGrams)}). The weight is stated here.`,
  'hint.balance': ({ figures }: Args<'figures'>, say: Speaker) =>
    `**${say.say(figures)}**: what is left of 100% flour, computed from the other flours.`,
  'hint.hydration': ({ figures, fraction }: Args<'figures' | 'fraction'>, say: Speaker) =>
    `**${say.say(figures)}**: as much as ${say.percent(fraction)} hydration takes, computed over the whole formula.`,
  'hint.effective-hydration': ({ figures, fraction }: Args<'figures' | 'fraction'>, say: Speaker) =>
    `**${say.say(figures)}**: as much as ${say.percent(fraction)} effective hydration takes, computed over the whole formula.`,
  'hint.remaining': ({ figures }: Args<'figures'>, say: Speaker) =>
    `**${say.say(figures)}**: all that is left of the part.`,
  'hint.density': (line: Args<'figures' | 'gramsPerMillilitre' | 'source'>, say: Speaker) =>
    `**${say.say(line.figures)}**, by a density of ${say.number(line.gramsPerMillilitre, 3)} g/ml: ${say.say(line.source)}.`,
  'hint.no-density': ({ figures }: Args<'figures'>, say: Speaker) =>
    `**${say.say(figures)}**: its density is not known.`,
  'hint.pieces': ({ figures, grams, source }: Args<'figures' | 'grams' | 'source'>, say: Speaker) =>
    `**${say.say(figures)}**, by ${say.mass(grams)} a piece: ${say.say(source)}.`,
  'hint.no-piece-weight': ({ figures }: Args<'figures'>, say: Speaker) =>
    `**${say.say(figures)}**: what a piece weighs is not known.`,
  'hint.composition': ({ source }: Args<'source'>, say: Speaker) => `_Composition: ${say.say(source)}._`,

  'hint.scale-assumed': ({ grams }: Args<'grams'>, say: Speaker) =>
    `No yield is written, so the weights are those for ${say.mass(grams)} of flour.`,
  'hint.scale-lines': () => 'The batch is as large as the lines stated in weights make it.',
  'hint.scale-yield': ({ written }: Args<'written'>) => `The batch is sized by \`${written}\`, as stated.`,

  'hint.totals': () =>
    'Hydration is the water lines by all flour, parts included; the weight is all that goes in the bowl.',
  'hint.totals-effective': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `With the water inside the other ingredients it is ${say.percent(fraction)}, by the composition of each (its hover names the source).`,
  'hint.part': () =>
    'Hydration is the water of this part by its flour; the weight is all of it that is made.',
  'hint.part-outside': () => 'The weight of all of it. It never goes in the bowl and counts in no hydration.',

  'hint.mixing': () =>
    'The minutes of the programme so far, the temperature of the dough at the end of this line, and how far it is developed.',
  'hint.computed-from': ({ facts }: Args<'facts'>, say: Speaker) =>
    `Computed from ${say.list(facts.map(say.say))}.`,
  'hint.room': ({ celsius }: Args<'celsius'>, say: Speaker) => `room ${say.celsius(celsius)} (stated)`,
  'hint.room-assumed': ({ celsius }: Args<'celsius'>, say: Speaker) =>
    `room ${say.celsius(celsius)} (common practice: a mild day)`,
  'hint.flour': ({ celsius }: Args<'celsius'>, say: Speaker) => `flour ${say.celsius(celsius)} (stated)`,
  'hint.flour-assumed': ({ celsius }: Args<'celsius'>, say: Speaker) =>
    `flour ${say.celsius(celsius)} (common practice: a mild day)`,
  'hint.machine': ({ name }: Args<'name'>) => `${name} as such machines usually are (common practice)`,
  'hint.machine-stated': ({ name }: Args<'name'>) =>
    `${name} as its section states it (the rest common practice)`,
  'hint.bands': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `_The stage is shown in bands: common practice and our own fit, ±${say.percent(fraction)} until your own trials give better figures._`,
  'hint.written-in': ({ meant }: Args<'meant'>) => `Written into the line it is \`${meant}\`.`,
};
