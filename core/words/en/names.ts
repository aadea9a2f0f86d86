import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** Names that are not known, or known more than once. */
export const names = {
  'unknown-ingredient.meant': ({ name, otherName }: Args<'name' | 'otherName'>) =>
    `“${name}” is not known: it is weighed, but counts as neither flour nor water. Is it “${otherName}”?`,
  'unknown-ingredient.none': ({ name }: Args<'name'>) =>
    `“${name}” is not known: it is weighed, but counts as neither flour nor water. Define it, or write a name that is known.`,
  'unknown-ingredient.like-meant': ({ name, otherName }: Args<'name' | 'otherName'>) =>
    `“${name}” is not known: nothing starts from it. Is it “${otherName}”?`,
  'unknown-ingredient.like-none': ({ name }: Args<'name'>) =>
    `“${name}” is not known: nothing starts from it. Define it, or write a name that is known.`,
  'which-kind.yeast': ({ name, meant, otherMeant }: Args<'name' | 'meant' | 'otherMeant'>) =>
    `“${name}” is taken as ${meant}; it may be ${otherMeant}. A third as much instant yeast raises alike.`,
  'which-kind.spelt': ({ name, meant, otherMeant }: Args<'name' | 'meant' | 'otherMeant'>) =>
    `“${name}” is taken as ${meant}; it may be ${otherMeant}. White spelt takes up less water.`,
  'which-kind.oil': ({ name, meant, otherMeant }: Args<'name' | 'meant' | 'otherMeant'>) =>
    `“${name}” is taken as ${meant}; it may be ${otherMeant}. The label names the plant.`,
  'which-kind.malt': ({ name, meant, otherMeant }: Args<'name' | 'meant' | 'otherMeant'>) =>
    `“${name}” is taken as ${meant}; it may be ${otherMeant}. Extract is a syrup: it brings sugar and water, and no enzymes.`,
  'unknown-ingredient.hydration': ({ example }: Args<'example'>) =>
    `Hydration is written on the line of the water: ${example}`,
  'unknown-ingredient.culture-alone': ({ name }: Args<'name'>) =>
    `“${name}” is flour and water, and counts as neither on a line of its own. Write it as a preferment: its flour and water then count.`,
  'unknown-ingredient.fix-culture': ({ name, fraction }: Args<'name' | 'fraction'>, say: Speaker) =>
    `Write “${name}” as a preferment of ${say.percent(fraction)} hydration`,
  'unknown-ingredient.culture': ({ name, example }: Args<'name' | 'example'>) =>
    `“${name}” is not known. A ripe starter of the preferment’s own kind is written: ${example}`,

  'unknown-mixer.meant': ({ name, otherName }: Args<'name' | 'otherName'>) =>
    `No mixer is called “${name}”, so neither warming nor development can be computed. Is it “${otherName}”?`,
  'unknown-mixer.none': ({ name }: Args<'name'>) =>
    `No mixer is called “${name}”, so neither warming nor development can be computed. Define it, or name a kind: spiral, planetary, fork.`,

  'unknown-part.meant': ({ name, otherName }: Args<'name' | 'otherName'>) =>
    `The formula has no part called “${name}”. Is it “${otherName}”?`,
  'unknown-part.none': ({ name }: Args<'name'>) =>
    `The formula has no part called “${name}”. It has no parts.`,
  'unknown-part.others': ({ name, names: parts }: Args<'name' | 'names'>, say: Speaker) =>
    `The formula has no part called “${name}”. Its parts are ${say.list(parts)}.`,

  'unknown-formula.meant': ({ name, otherName }: Args<'name' | 'otherName'>) =>
    `No formula is called “${name}”. Is it “${otherName}”?`,
  'unknown-formula.none': ({ name }: Args<'name'>) => `No formula is called “${name}”.`,
  'unknown-formula.no-experiment': ({ name }: Args<'name'>) => `No experiment is called “${name}”.`,
  'unknown-formula.base': ({ name }: Args<'name'>) =>
    `No formula is called “${name}”, so what this variant takes of it is not known. A name that has “like” in it stands in quotes.`,
  'unknown-formula.base-meant': ({ name, otherName }: Args<'name' | 'otherName'>) =>
    `No formula is called “${name}”, so what this variant takes of it is not known. “${otherName}” may be meant.`,
  'unknown-formula.base-of-base': ({ name, otherName }: Args<'name' | 'otherName'>) =>
    `“${name}” is a variant of “${otherName}”, and no formula is called that, so neither can be computed.`,
  'unknown-formula.several': ({ name, count }: Args<'name' | 'count'>, say: Speaker) =>
    `“${name}” is written ${times(count, say)} in the nearest place that has it. Give each a name of its own.`,

  'several-definitions.several': ({ name, count }: Args<'name' | 'count'>, say: Speaker) =>
    `“${name}” is defined ${times(count, say)} in the nearest place that has it, so none of them counts. Keep one, or rename the others.`,
  'several-definitions.one': () => 'one of them',

  'same-name-twice.folder': ({ name, count }: Args<'name' | 'count'>, say: Speaker) =>
    `“${name}” is defined ${times(count, say)} in this folder, and which is meant is not clear. Give each a name of its own.`,
  'same-name-twice.part': ({ name }: Args<'name'>) =>
    `This formula has a part called “${name}” already, and the first counts. Give this one a name of its own.`,
  'same-name-twice.other': () => 'the same name',
  'same-name-twice.first': () => 'the first: it counts',

  'same-ingredient-twice.adds-up': ({ name }: Args<'name'>) =>
    `“${name}” stands in this section already: the two lines add up.`,
  'same-ingredient-twice.other': () => 'adds up with this line',

  'not-in-base.none': ({ name, otherName }: Args<'name' | 'otherName'>) =>
    `“${otherName}” has no “${name}” that could be left out.`,
  'not-in-base.no-base': ({ name, example }: Args<'name' | 'example'>) =>
    `“${name}” can only be left out of a base, and this formula is no variant. A variant names its base: ${example}`,
  'not-in-experiment.dough': ({ name, otherName }: Args<'name' | 'otherName'>) =>
    `“${name}” has no dough “${otherName}”, so this trial stands beside none of what it expects. Name “${otherName}” in a line of the experiment: dough ${otherName}`,
  'not-in-experiment.mixer': ({ name, otherName }: Args<'name' | 'otherName'>) =>
    `“${name}” has “${otherName}” more than once, and on no mixer that this trial was run on, so the trial stands beside none of them.`,
  'trial-of-other.other': ({ name, otherName }: Args<'name' | 'otherName'>) =>
    `This trial stands below “${otherName}” and counts as one of it. Move it below the lines of “${name}”.`,
  'not-in-base.fix': () => 'Take the line out',
  'variant.in-base': ({ name, written }: Args<'name' | 'written'>) => `${written} in “${name}”`,
  'variant.taken-celsius': ({ celsius, name }: Args<'celsius' | 'name'>, say: Speaker) =>
    `at ${say.celsius(celsius)} as in “${name}”`,
  'variant.added': ({ name }: Args<'name'>) => `not in “${name}”`,
  'variant.new-line': ({ name, written }: Args<'name' | 'written'>) => `${name} ${written} (new)`,
  'variant.changed-line': ({ name, written, otherWritten }: Args<'name' | 'written' | 'otherWritten'>) =>
    `${name} ${written} (there ${otherWritten})`,
  'variant.dropped': ({ name }: Args<'name'>) => `without ${name}`,
  'variant.own-section': ({ written }: Args<'written'>) => `its own: ${written}`,
  'variant.same': ({ names: bases }: Args<'names'>, say: Speaker) =>
    `A variant of ${say.list(bases.map((name) => `“${name}”`))} that changes nothing of it`,
  'variant.of': ({ names: bases }: Args<'names'>, say: Speaker) =>
    `A variant of ${say.list(bases.map((name) => `“${name}”`))}`,
  'variant.line-of-base': () => 'the line of the base',
  'loop.part': ({ names: around }: Args<'names'>) =>
    `This goes round in a circle: ${around.join(' → ')}. Take this line out; for a starter of its own kind write “ripe culture 20%”.`,
  'loop.variant': ({ names: around }: Args<'names'>, say: Speaker) =>
    `A variant cannot be of itself by way of others: ${say.list(around.map((name) => `“${name}”`))}.`,
  'loop.variant-of-itself': ({ name }: Args<'name'>) => `“${name}” cannot be a variant of itself.`,
  'loop.in-circle': () => 'part of the circle',
  'loop.formula': ({ name }: Args<'name'>) =>
    `“${name}” is made with this formula itself, so neither can be weighed. Take one of the two out.`,

  'unused-part.fix-add': ({ part }: Args<'part'>) => `Add all of “${part}” to the dough`,
  'unused-part.unused': ({ name }: Args<'name'>) =>
    `No line takes “${name}” and it draws nothing, so none of it gets into the dough. Write what it draws, or add a line for it.`,
};

function times(count: number, say: Speaker): string {
  return say.count(count, { one: '# time', other: '# times' });
}
