import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** Amounts that do not fit their line, one another, or what can be. */
export const amounts = {
  'added-by-part.on-top': ({ name, part }: Args<'name' | 'part'>) =>
    `The formula has no line of “${name}”: what “${part}” uses comes on top of its totals.`,
  'added-by-part.on-top-grams': ({ name, part, grams }: Args<'name' | 'part' | 'grams'>, say: Speaker) =>
    `The formula has no line of “${name}”: the ${say.mass(grams)} that “${part}” uses comes on top of its totals.`,
  'added-by-part.flour': ({ name }: Args<'name'>) =>
    `So “${name}” stands beside the 100% of the formula’s flours: give it a line there, or make the part of a flour that the formula has.`,

  'amount-does-not-fit.hydration': ({ name, meant }: Args<'name' | 'meant'>) =>
    `“to ${meant} hydration” is for water, and “${name}” is none. Write its amount: ${meant}, or a weight.`,
  'amount-does-not-fit.balance': ({ name }: Args<'name'>) =>
    `“balance” is what a flour takes of the 100%, and “${name}” is no flour. Write its percentage or weight.`,
  'amount-does-not-fit.remaining': ({ name }: Args<'name'>) =>
    `“remaining” is what is left of a part made here, and “${name}” is no part. Write its percentage or weight.`,

  'bake-loss-unknown.not-stated': () =>
    'The yield is a baked weight, and how much the oven takes is not stated. Write a bake loss, better one you have weighed.',
  'bake-loss-unknown.fix': ({ meant }: Args<'meant'>) => `Write ${meant} (common practice; weigh yours)`,

  'draws-contradict.fixed': ({ part }: Args<'part'>) =>
    `This does not fit what fixes “${part}” already. Keep one of the two.`,
  'draws-contradict.fixed-grams': (
    { part, grams, otherGrams }: Args<'part' | 'grams' | 'otherGrams'>,
    say: Speaker,
  ) =>
    `This does not fit what fixes “${part}” already. It would take ${say.mass(grams)}; the part as it is fixed already holds ${say.mass(otherGrams)}. Keep one of the two.`,

  'far-too-much.times': ({ name, fraction, choices }: Args<'name' | 'fraction' | 'choices'>, say: Speaker) =>
    `${say.percent(fraction)} “${name}” is ${say.number(fraction, 1)} times the flour. Is a point left out, or are grams meant? Write ${say.anyOf(choices)}.`,

  'grams-exceed-total.more': ({ name }: Args<'name'>) =>
    `The lines of “${name}” in weight outweigh the whole. Nothing is left for its flour.`,
  'grams-exceed-total.more-grams': (
    { name, grams, otherGrams }: Args<'name' | 'grams' | 'otherGrams'>,
    say: Speaker,
  ) =>
    `The lines of “${name}” in weight outweigh the whole: ${say.mass(grams)} of ${say.mass(otherGrams)} in all. Nothing is left for its flour.`,
  'grams-exceed-total.in-weight': () => 'a line in weight',

  'impossible-amount.beyond': () =>
    'This amount cannot be weighed, so it is left out of the sums. Correct the number.',

  'keeps-back-too-much.more': (
    { name, grams, otherGrams }: Args<'name' | 'grams' | 'otherGrams'>,
    say: Speaker,
  ) =>
    `“${name}” keeps back ${say.mass(grams)}, and only ${say.mass(otherGrams)} of it are made. Make more, or keep back less.`,

  'moist-flour.above': ({ fraction, limitFraction }: Args<'fraction' | 'limitFraction'>, say: Speaker) =>
    `${say.percent(fraction)} of moisture is more than the ${say.percent(limitFraction)} that flour may have (Codex CXS 152). Correct the number.`,

  'nothing-left.flours': ({ name }: Args<'name'>) =>
    `The other flours make all there is already: nothing is left for “${name}”.`,
  'nothing-left.flours-fraction': ({ name, fraction }: Args<'name' | 'fraction'>, say: Speaker) =>
    `The other flours make ${say.percent(fraction)} already: nothing is left for “${name}”.`,
  'nothing-left.flour': () => 'flour of the same section',

  'nothing-to-draw.formula': ({ name }: Args<'name'>) =>
    `The formula has no line of “${name}” to draw from. Add one, or draw what it has.`,
  'nothing-to-draw.part': ({ part, name }: Args<'part' | 'name'>) =>
    `“${part}” draws “${name}” and has no line of it. Add “${name}” to its lines, or draw what it has.`,

  'part-amounts-differ.differ': ({ name }: Args<'name'>) =>
    `What is made of “${name}” is not what is taken. Write the part in percent, or correct one weight.`,
  'part-amounts-differ.differ-grams': (
    { name, grams, otherGrams }: Args<'name' | 'grams' | 'otherGrams'>,
    say: Speaker,
  ) =>
    `What is made of “${name}” is not what is taken: ${say.mass(grams)} made, ${say.mass(otherGrams)} taken. Write the part in percent, or correct one weight.`,
  'part-amounts-differ.part': () => 'the same part',

  'parts-above-whole.sum': ({ name, fraction, parts }: Args<'name' | 'fraction' | 'parts'>, say: Speaker) =>
    `The parts of “${name}” make ${say.percent(fraction)}: ${say.list(parts.map(say.say))}. Correct one of them.`,
  'parts-above-whole.share': ({ property, fraction }: Args<'property' | 'fraction'>, say: Speaker) =>
    `${property} ${say.percent(fraction)}`,
  'parts-above-whole.inside': (inside: Inside, say: Speaker) =>
    `${say.percent(inside.fraction)} ${inside.property} are more than the ${say.percent(inside.limitFraction)} ${inside.otherProperty} that they are part of. Correct one of them.`,

  'portions-off.unsaid': ({ name }: Args<'name'>) =>
    `How much of the ${name} is that? Write a share, for example “90% of the ${name}”, and “remaining ${name}” where the rest goes in.`,
  'portions-off.rest-of-nothing': ({ name, meant }: Args<'name' | 'meant'>) =>
    `No line before says how much of the ${name} goes in first, so there is no rest of it. Write a share there, for example “${meant}”.`,
  'portions-off.more': ({ name, meant }: Args<'name' | 'meant'>) =>
    `More “${name}” is loaded here than is left. Take the rest with “${meant}”.`,
  'portions-off.more-grams': (portion: Portion, say: Speaker) =>
    `More “${portion.name}” is loaded here than is left: ${askedFor(portion, say)}. Take the rest with “${portion.meant}”.`,
  'portions-off.less': ({ name, meant }: Args<'name' | 'meant'>) =>
    `The portions of “${name}” do not make up its line. Take the rest with “${meant}”.`,
  'portions-off.less-grams': (portion: Portion, say: Speaker) =>
    `The portions of “${portion.name}” do not make up its line: ${askedFor(portion, say)}. Take the rest with “${portion.meant}”.`,

  'two-scales.disagree': () =>
    'Both the yield and flour in weight state how much is made, and they disagree. Write the flours in percent, or take the yield out.',
  'two-scales.disagree-grams': ({ grams, otherGrams }: Args<'grams' | 'otherGrams'>, say: Speaker) =>
    `Both the yield and flour in weight state how much is made, and they disagree: the yield asks for ${say.mass(grams)}, the lines make ${say.mass(otherGrams)}. Write the flours in percent, or take the yield out.`,
  'two-scales.flour': () => 'flour in weight',
  'two-scales.fix': () => 'Take the yield out',

  'weighs-nothing.none': ({ name }: Args<'name'>) =>
    `Nothing of “${name}” is weighed. Write how much, or take the line out.`,

  'wet-already.more': ({ targetFraction }: Args<'targetFraction'>, say: Speaker) =>
    `The other lines make more hydration already, and ${say.percent(targetFraction)} is wanted.`,
  'wet-already.more-effective': ({ targetFraction }: Args<'targetFraction'>, say: Speaker) =>
    `The other lines make more effective hydration already, and ${say.percent(targetFraction)} is wanted.`,
  'wet-already.hydration': (
    { fraction, targetFraction }: Args<'fraction' | 'targetFraction'>,
    say: Speaker,
  ) =>
    `The other lines make ${say.percent(fraction)} hydration already, and ${say.percent(targetFraction)} is wanted.`,
  'wet-already.effective-hydration': (
    { fraction, targetFraction }: Args<'fraction' | 'targetFraction'>,
    say: Speaker,
  ) =>
    `The other lines make ${say.percent(fraction)} effective hydration already, and ${say.percent(targetFraction)} is wanted.`,
  'wet-already.too-much': ({ grams }: Args<'grams'>, say: Speaker) =>
    `That is ${say.mass(grams)} of water too much.`,
  'wet-already.help': () => 'Ask for more, or use less of what is wet.',
  'wet-already.fix': ({ meant }: Args<'meant'>) => `Write ${meant}, the least that can be reached`,

  'worked-out-twice.again': ({ property, name }: Args<'property' | 'name'>) =>
    `“${property}” stands in this section already, on “${name}”. Write an amount here, or there.`,
  'worked-out-twice.first': ({ property }: Args<'property'>) => `the first “${property}”: it counts`,
};

type Inside = Args<'property' | 'fraction' | 'otherProperty' | 'limitFraction'>;
type Portion = Args<'name' | 'meant' | 'grams' | 'otherGrams'>;

function askedFor({ grams, otherGrams }: Portion, say: Speaker): string {
  return `${say.mass(grams)} asked for, ${say.mass(otherGrams)} there`;
}
