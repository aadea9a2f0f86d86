import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** Amounts that do not make a whole, or of which nothing fixes the size. */
export const sums = {
  'no-density.unknown': ({ name, example }: Args<'name' | 'example'>) =>
    `What a millilitre of “${name}” weighs is not known. Write its weight here, or its density in its section: ${example}`,
  'no-piece-weight.unknown': ({ name, example }: Args<'name' | 'example'>) =>
    `What one “${name}” weighs is not known. Write the weight here, or in its section: ${example}`,
  'no-pieces.unknown': ({ example }: Args<'example'>) =>
    `So much a piece, of how many? Write it in the formula: ${example}`,
  'no-pieces.also': () => 'also counted a piece',

  'impossible-amount.cooking-loss': () =>
    'More steams away here than there is water in it, so nothing is taken off. Write a smaller loss, or the water.',

  'no-flour.weighs-nothing': () =>
    'The flour of this section weighs nothing, so percentages of it are nothing too. Write how much flour there is.',
  'no-flour.dough': () =>
    'This section has no flour and no line of 100%: percent of what? Add the flour line, or write 100% on what the others are measured by.',
  'no-flour.part': () =>
    'This section has no flour and no line of 100%: percent of what? Its percentages are of itself: write 100% on one line and the others against it, or “of all flour” behind each to measure by all the flour of the formula.',
  'no-flour.fix-of-all-flour': () => 'Write them of all flour',
  'no-flour.beside': () =>
    'Percent of what? Nothing here is flour: write how much goes on a piece, for example 3 g a piece, or how much in all, for example 200 g.',

  'flour-not-hundred.short': (
    { fraction, apartFraction }: Args<'fraction' | 'apartFraction'>,
    say: Speaker,
  ) =>
    `The flours of this section make ${say.percent(fraction)}: ${say.percent(apartFraction)} short of the 100% that all percentages are of.`,
  'flour-not-hundred.above': (
    { fraction, apartFraction }: Args<'fraction' | 'apartFraction'>,
    say: Speaker,
  ) =>
    `The flours of this section make ${say.percent(fraction)}: ${say.percent(apartFraction)} above the 100% that all percentages are of.`,
  'flour-not-hundred.starch': (
    { fraction, name, example }: Args<'fraction' | 'name' | 'example'>,
    say: Speaker,
  ) =>
    `The flours of this section make ${say.percent(fraction)}, and 100% with “${name}”, which counts as no flour by itself. Define it with “${example}”, or have the flours make 100%.`,
  'flour-not-hundred.on-top': ({ fraction, grams }: Args<'fraction' | 'grams'>, say: Speaker) =>
    `The flours in percent make ${say.percent(fraction)} by themselves, and ${say.mass(grams)} of flour come on top. Write all flours of the section in percent, or all in weight.`,
  'flour-not-hundred.split': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `The flours here make ${say.percent(fraction)}, and with those of the parts 100%: these are percentages of all the flour. Write the whole formula, and what each part draws of it.`,
  'flour-not-hundred.fix-split': () => 'Write the whole formula, and the parts as drawn from it',
  'flour-not-hundred.other': () => 'flour of the same section',

  'no-scale.remaining': ({ part }: Args<'part'>) =>
    `“remaining” takes what is made of “${part}”, and nothing fixes how much that is. Write its percentage here, or its flour in weight.`,
  'no-scale.dough': () =>
    'Some lines are in weight and the flour is in percent: nothing fixes how much flour there is. Write a yield, or the flour in weight.',
  'no-scale.variant': ({ name, otherName }: Args<'name' | 'otherName'>) =>
    `A weight says how much “${otherName}” makes, and “${name}” has none: it is worked out for 1 kg of flour. Write one of its flours in weight, or a yield.`,
  'no-scale.part': ({ part }: Args<'part'>) =>
    `Nothing fixes how much of “${part}” is made. Draw it, name it in a line of the formula, or write its flour in weight.`,
  'no-scale.enclosed': ({ part, example }: Args<'part' | 'example'>) =>
    `Nothing fixes how much of “${part}” is made. Name it in a line of the formula, for example “${example}”, or write its lines in weight.`,
  'no-scale.beside': ({ part, example }: Args<'part' | 'example'>) =>
    `Nothing fixes how much of “${part}” is made. Name it in a line of the formula with its weight a piece, for example “${example}”, or write its lines in weight.`,
  'no-scale.in-weight': () => 'a line in weight',

  'drawn-too-much.unsized': ({ names, name }: Args<'names' | 'name'>, say: Speaker) =>
    `${quoted(names, say)} ${brings(names)} more “${name}” than the formula has. Draw less, or raise this line.`,
  'drawn-too-much.shares': (
    { names, name, fraction, usualFraction }: Args<'names' | 'name' | 'fraction' | 'usualFraction'>,
    say: Speaker,
  ) =>
    `${quoted(names, say)} ${brings(names)} more “${name}” than the formula has: ${say.percent(fraction)} of the flour against ${say.percent(usualFraction)}. Draw less, or raise this line.`,
  'drawn-too-much.grams': ({ names, name, grams }: Args<'names' | 'name' | 'grams'>, say: Speaker) =>
    `${quoted(names, say)} ${brings(names)} more “${name}” than the formula has, ${say.mass(grams)} too much. Draw less, or raise this line.`,
  'drawn-too-much.shares-grams': (
    {
      names,
      name,
      fraction,
      usualFraction,
      grams,
    }: Args<'names' | 'name' | 'fraction' | 'usualFraction' | 'grams'>,
    say: Speaker,
  ) =>
    `${quoted(names, say)} ${brings(names)} more “${name}” than the formula has: ${say.percent(fraction)} of the flour against ${say.percent(usualFraction)}, ${say.mass(grams)} too much. Draw less, or raise this line.`,
  'drawn-too-much.brings': () => 'brings it',

  'drawn-and-added.both': ({ part }: Args<'part'>) =>
    `“${part}” draws its flour out of the formula and is added here as well. Take this line out, or its “draws”.`,
  'drawn-and-added.draws': () => 'its section draws',
};

function quoted(names: readonly string[], say: Speaker): string {
  return say.list(names.map((name) => `“${name}”`));
}

function brings(names: readonly string[]): string {
  return names.length > 1 ? 'bring' : 'brings';
}
