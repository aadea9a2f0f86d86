import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** How headers and properties are written. */
export const readingSections = {
  'outside-section.none-above': () =>
    'This line stands in no section. Start one above it, for example “formula Morning Tin:”.',
  'line-too-long.longer': ({ count }: Args<'count'>, say: Speaker) =>
    `This line has more than ${say.count(count, { one: '# character', other: '# characters' })} and is not read. Break it up, or make it a comment with # in front.`,

  'missing-colon.at-end': ({ section }: Args<'section'>) =>
    `The line that starts the ${section} ends with a colon.`,
  'missing-colon.displaced': ({ section }: Args<'section'>) =>
    `The colon goes to the end of the line that starts the ${section}.`,
  'missing-colon.goes-on': () =>
    'A line that starts a section ends at its colon. Write what follows on a line of its own.',
  'missing-colon.open-quote': () => 'The quote is not closed, and so the colon is missing.',

  'stray-colon.two': () => 'One colon is enough, at the end of the line.',
  'stray-colon.amount': () => 'No colon goes between an ingredient and its amount.',
  'stray-colon.property': ({ property }: Args<'property'>) =>
    `No colon goes between “${property}” and its value.`,
  'stray-colon.no-section': () => 'A colon ends only the line that starts a section.',
  'stray-colon.no-header': ({ name }: Args<'name'>) =>
    `A colon ends only the line that starts a section. Write “${name}” and its amount without it.`,

  'missing-name.section': ({ section, example }: Args<'section' | 'example'>) =>
    `Give the ${section} a name: ${example}`,
  'missing-name.base': ({ example }: Args<'example'>) =>
    `Of which formula is it a variant? Its name follows “like”: ${example}`,
  'missing-name.ingredient': () => 'Which ingredient? Its name stands before the amount.',
  'missing-name.planned': () => 'Which formula? Its name stands before the amount.',
  'missing-name.step-of': ({ example }: Args<'example'>) =>
    `What is done? A step starts with its word: ${example}`,
  'missing-name.step': () => 'What is done? A step starts with its word: rest 15 min',
  'missing-mixer.where': () => 'Where is it mixed? Write it: mix in spiral: or mix by hand:',
  'missing-mixer.said-otherwise': ({ written, meant }: Args<'written' | 'meant'>) =>
    `“${written}” of a mix is written: ${meant}`,
  'missing-date.meant': ({ meant }: Args<'meant'>) => `A trial starts with its date, year first: ${meant}`,
  'missing-date.which': ({ meant, otherMeant }: Args<'meant' | 'otherMeant'>) =>
    `The day may be of two months. A trial starts with its date, year first: ${meant} or ${otherMeant}`,
  'missing-date.first': () => 'A trial starts with its date, year first: trial 2026-03-14:',

  'no-formula.none-above': ({ section }: Args<'section'>) =>
    `A ${section} belongs to a formula. Put “formula NAME:” above it.`,
  'no-formula.closed': ({ section, otherSection }: Args<'section' | 'otherSection'>) =>
    `A ${section} belongs to a formula, and the ${otherSection} above has closed it. Move it up to its formula.`,

  'unknown-section.dough': ({ written }: Args<'written'>) =>
    `A line like this is the dough itself. Its lines stand right below the header of the formula, not below “${written}”.`,
  'unknown-section.meant': ({ written, meant }: Args<'written' | 'meant'>) =>
    `No section is called “${written}”. Is it “${meant}”?`,
  'unknown-section.part': ({ example }: Args<'example'>) => `A line like this begins a part: ${example}`,
  'unknown-section.none': ({ name, words }: Args<'name' | 'words'>, say: Speaker) =>
    `No section is called “${name}”. Sections are ${say.list(words)}. Its lines are kept and not read.`,

  'unknown-property.meant': ({ section, written, meant }: Args<'section' | 'written' | 'meant'>) =>
    `“${written}” is not a property of ${a(section)}. Is it “${meant}”?`,
  'unknown-property.of-formula': ({ written, meant }: Args<'written' | 'meant'>) =>
    `“${written}”: the temperature of the dough is the formula’s, and stands below its header: ${meant}`,
  'unknown-property.said-otherwise': ({ section, written, meant }: Args<'section' | 'written' | 'meant'>) =>
    `In ${a(section)} “${written}” is written: ${meant}`,
  'unknown-property.mix-said': ({ meant }: Args<'meant'>) => `Read as: ${meant}`,
  'unknown-property.mixed': ({ example }: Args<'example'>) =>
    `A trial states what was run with “mixed”: ${example}`,
  'unknown-property.none': ({ section, name, words }: Args<'section' | 'name' | 'words'>, say: Speaker) =>
    `“${name}” is not a property of ${a(section)}. Its properties are ${say.list(words)}.`,
  'unknown-property.note-of-trial': (
    { written, meant, words }: Args<'written' | 'meant' | 'words'>,
    say: Speaker,
  ) =>
    `“${written}” is nothing that a trial measures. Keep it as a note: ${meant}. What is measured: ${say.list(words)}.`,
  'unknown-property.note-of-flour': (
    { written, meant, words }: Args<'written' | 'meant' | 'words'>,
    say: Speaker,
  ) =>
    `Nothing is worked out from “${written}”. Keep it as a note: ${meant}. A flour is known by its ${say.list(words)}.`,
  'unknown-property.base-temperature': ({ written, example, meant }: Args<'written' | 'example' | 'meant'>) =>
    `“${written}” is not needed: the water is worked out of the mixing and the temperature that the dough shall have, ${example}. Keep it as a note: ${meant}`,
  'unknown-property.folds': ({ written, meant }: Args<'written' | 'meant'>) =>
    `“${written}” is several folds with a rest before each, and how long one takes is not said. Write each: ${meant}`,
  'unknown-property.day': ({ written, example }: Args<'written' | 'example'>) =>
    `“${written}”: the day of an experiment stands in its header, behind a comma: ${example}`,
  'unknown-property.step': ({ written }: Args<'written'>) =>
    `“${written}” is a step of the process. The line above the steps is: process:`,

  'two-steps.two': ({ written, otherWritten }: Args<'written' | 'otherWritten'>) =>
    `“${written}” and “${otherWritten}” are two steps. Write each on a line of its own.`,
  'two-steps.time': ({ written, example }: Args<'written' | 'example'>) =>
    `“${written}” is a second time, and a step has one. Put it on a line of its own, or write what goes on for it: ${example}`,
  'cold-without-degrees.taken': ({ written, celsius }: Args<'written' | 'celsius'>, say: Speaker) =>
    `“${written}” gives no temperature: ${say.celsius(celsius)} is assumed.`,
  'fold-times.alone': ({ example }: Args<'example'>) =>
    `Folds are a part of the step that they interrupt. Write them behind it: ${example}`,
  'fold-past-end.later': ({ seconds, otherSeconds }: Args<'seconds' | 'otherSeconds'>, say: Speaker) =>
    `A fold at ${say.duration(seconds)} comes after this step, which takes ${say.duration(otherSeconds)}. Correct one of them; what comes later stands on a line of its own.`,
  'fold-times.no-step-time': ({ example }: Args<'example'>) =>
    `The step has no time that its folds could be spread over. Write it behind the step: ${example}`,

  'missing-value.none': ({ property, example }: Args<'property' | 'example'>) =>
    `“${property}” needs its value: ${example}`,
  'missing-value.unfinished': ({ property, example }: Args<'property' | 'example'>) =>
    `“${property}” is not finished. It reads like: ${example}`,

  'wrong-value.other-form': ({ written, property, example }: Args<'written' | 'property' | 'example'>) =>
    `“${written}” does not fit here. “${property}” reads like: ${example}`,
  'wrong-value.own-lines': ({ count }: Args<'count'>) =>
    `These are ${count} lines in one. Write each on a line of its own.`,
  'wrong-value.dough-part': ({ written, example }: Args<'written' | 'example'>) =>
    `“${written}” is neither where a dough is mixed nor how long it is worked. For example: ${example}`,
  'wrong-value.meant': ({ written, example }: Args<'written' | 'example'>) =>
    `“${written}” does not fit here. Write: ${example}`,
  'wrong-value.percent-of-what': ({
    written,
    name,
    meant,
    otherMeant,
  }: Args<'written' | 'name' | 'meant' | 'otherMeant'>) =>
    `${written} of the ${name}, or of the flour? Write “${meant}” or “${otherMeant}”.`,
  'wrong-value.no-such-word': ({ property, words }: Args<'property' | 'words'>, say: Speaker) =>
    `“${property}” is one of ${say.anyOf(words)}.`,
  'wrong-value.currency': () => 'A currency is three capitals: EUR',
  'wrong-value.fahrenheit': ({ property, meant }: Args<'property' | 'meant'>) =>
    `“${property}” cannot be as warm as that. Is it ${meant}?`,
  'wrong-value.count-alone': ({ written, example }: Args<'written' | 'example'>) =>
    `“${written}” states how many and not how heavy, so it sets no size. Write what one weighs, for example ${example}, or keep it as a note.`,
  'wrong-value.piece-too-heavy': ({ meant }: Args<'meant'>) => `No piece weighs so much. Is it ${meant}?`,
  'wrong-value.piece-too-light': ({ meant }: Args<'meant'>) => `No piece weighs so little. Is it ${meant}?`,
  'wrong-value.negative': ({ property }: Args<'property'>) => `“${property}” cannot be negative.`,
  'wrong-value.zero': ({ property }: Args<'property'>) => `“${property}” must be more than 0.`,
  'wrong-value.not-whole': ({ example }: Args<'example'>) => `Only whole ones count: ${example}`,
  'wrong-value.least-first': ({ example }: Args<'example'>) => `The least comes first: ${example}`,
  'wrong-value.above-all': ({ property }: Args<'property'>) =>
    `“${property}” is a share and cannot be above 100%.`,
  'wrong-value.nothing-left': ({ property }: Args<'property'>) =>
    `Nothing is left after a ${property} of 100%.`,
  'wrong-value.no-currency': ({ example }: Args<'example'>) =>
    `In which currency? Write its three capitals: ${example}`,
  'wrong-value.container': ({ written, example }: Args<'written' | 'example'>) =>
    `How much is in a ${written}? Write that: ${example}`,
  'wrong-value.price-of': ({ example }: Args<'example'>) => `A price for how much? Write: ${example}`,
};

function a(section: string): string {
  return /^[aeiou]/.test(section) ? `an ${section}` : `a ${section}`;
}
