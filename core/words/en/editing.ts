import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** What is said when a file is to be changed: why a name stays, why a reading is not logged, what to begin with. */
export const editing = {
  'rename.no-name': () => 'No name stands here.',
  'rename.not-a-name': ({ number, file, name }: Args<'number' | 'file' | 'name'>) =>
    `On line ${number} of ${file} “${name}” would not be read as a name. Choose another.`,
  'rename.role': ({ name }: Args<'name'>) =>
    `“${name}” is a word of the notation for all of its kind, and cannot be renamed.`,
  'rename.catalogue': ({ name }: Args<'name'>) =>
    `“${name}” is a name of the built-in catalogue, and cannot be renamed. Write another name on this line, or define it.`,
  'rename.several': ({ name, count }: Args<'name' | 'count'>, say: Speaker) =>
    `“${name}” is defined ${say.count(count, { one: '# time', other: '# times' })} where it is looked for, so which is meant is not clear. Rename it at one of its definitions.`,
  'rename.no-part': ({ name }: Args<'name'>) =>
    `The formula has no part called “${name}”, so there is nothing to rename.`,
  'rename.not-defined': ({ name }: Args<'name'>) =>
    `“${name}” is not defined, so there is nothing to rename. Define it first.`,
  'rename.lent': ({ name }: Args<'name'>) =>
    `The section of “${name}” states only in part what it is; the rest comes from what has that name elsewhere. Write “like ${name}” into the section first, then rename it.`,
  'rename.empty': () => 'Write a name.',
  'rename.quote-mark': () => 'A name holds no quote marks.',
  'rename.to-role': ({ name }: Args<'name'>) =>
    `“${name}” is a word of the notation for all of its kind. Choose another name.`,
  'rename.formula-itself': ({ name }: Args<'name'>) =>
    `The formula itself is called “${name}”. Choose another name.`,
  'rename.part-already': ({ name }: Args<'name'>) =>
    `The formula has a part called “${name}” already. Choose another name.`,
  'rename.would-mean-part': ({ number, name }: Args<'number' | 'name'>) =>
    `Line ${number} names “${name}” already, and would then mean the part. Choose another name.`,
  'rename.defined-already': ({ name, number, file }: Args<'name' | 'number' | 'file'>) =>
    `“${name}” is defined already on line ${number} of ${file}. Choose another name.`,
  'rename.would-lend': ({ name }: Args<'name'>) =>
    `“${name}” is the name of something already, and would lend this section whatever it does not state itself. Choose another name.`,
  'rename.other-lent': ({ number, file, name }: Args<'number' | 'file' | 'name'>) =>
    `The section on line ${number} of ${file} leaves some of “${name}” to be stated elsewhere, and would come to mean something else. Write a “like” line into it first, or choose another name.`,
  'rename.means-already': ({ number, file, name }: Args<'number' | 'file' | 'name'>) =>
    `On line ${number} of ${file} “${name}” means something else already. Choose another name.`,
  'rename.would-mean': ({ number, file, name }: Args<'number' | 'file' | 'name'>) =>
    `On line ${number} of ${file} “${name}” would come to mean something else. Choose another name.`,

  'log-reading.no-day': ({ example }: Args<'example'>) =>
    `A trial needs the day it was made, for example ${example}.`,
  'log-reading.temperature': ({ fromCelsius, toCelsius }: Args<'fromCelsius' | 'toCelsius'>, say: Speaker) =>
    `A dough temperature lies between ${say.celsius(fromCelsius)} and ${say.celsius(toCelsius)}.`,
  'log-reading.nothing': () => 'A reading has a temperature, a stage or a word of how the dough feels.',
  'log-reading.minute': ({ minutes }: Args<'minutes'>, say: Speaker) =>
    `The minute counts from the start of mixing, 0 to ${say.number(minutes, 0)}.`,
  'log-reading.stage': ({ words }: Args<'words'>, say: Speaker) =>
    `A stage is one of these: ${say.list(words)}.`,
  'log-reading.feel': ({ words }: Args<'words'>, say: Speaker) =>
    `How a dough feels is one of these: ${say.list(words)}.`,
  'log-reading.no-minute': () => 'A reading of an experiment needs its minute from the start of mixing.',
  'log-reading.no-experiment': () => 'The experiment is not in the file any more.',
  'panel.formula-removed': () => 'The formula is not in the file any more.',

  'template.plain': () => 'Plain dough',
  'template.plain-how': () => 'flour, water, salt and yeast, mixed by machine',
  'template.preferment': () => 'With a preferment',
  'template.preferment-how': () => 'a poolish of the evening before, drawn out of the formula',
  'template.hand': () => 'Mixed by hand',
  'template.hand-how': () => 'two loaves at the bench, with rests and folds',
};
