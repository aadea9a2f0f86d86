import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** How amounts and options are written. */
export const readingAmounts = {
  'missing-unit.ingredient': ({ written }: Args<'written'>) =>
    `“${written}” of what? Write a unit: ${written}% of flour, or ${written} g.`,
  'missing-unit.planned': ({ written }: Args<'written'>) =>
    `“${written}” of what? Write a unit: ${written} pieces, or ${written} kg.`,
  'missing-unit.hydration': ({ example }: Args<'example'>) => `Write the hydration in percent: ${example}`,
  'missing-unit.counted': ({ written, example }: Args<'written' | 'example'>) =>
    `“${written}” of what? What is counted is written in pieces: ${example}`,
  'missing-unit.times': ({ written, example }: Args<'written' | 'example'>) =>
    `“${written}” of what? Write how often: ${example}`,
  'missing-unit.fluid-ounce': ({ written, meant, otherMeant }: Args<'written' | 'meant' | 'otherMeant'>) =>
    `A fluid ounce is not the same everywhere: “${written}” is taken as ${meant}, the ounce of the United States; the imperial one makes ${otherMeant}. Write it in millilitres.`,
  'missing-unit.fix-imperial': ({ meant }: Args<'meant'>) => `Write ${meant}, the imperial ounce`,
  'missing-unit.other': ({ written, example }: Args<'written' | 'example'>) =>
    `“${written}” of what? Write a unit: ${example}`,
  'missing-unit.minutes': ({ written, meant }: Args<'written' | 'meant'>) =>
    `“${written}” lacks the unit of its minutes: ${meant}`,
  'missing-unit.time-in-words': ({ written, meant }: Args<'written' | 'meant'>) =>
    `“${written}” is a time. Write it with its unit: ${meant}`,
  'missing-unit.overnight': ({ written, example }: Args<'written' | 'example'>) =>
    `“${written}” is how many hours? The clock needs them: ${example}`,
  'missing-unit.one-sign': ({ meant }: Args<'meant'>) => `One % is enough: ${meant}`,
  'missing-unit.no-unit': ({ written, unit, meant }: Args<'written' | 'unit' | 'meant'>) =>
    `“${written}” is not a unit; “${unit}” is: ${meant}`,
  'missing-unit.letters': ({ written, unit, meant }: Args<'written' | 'unit' | 'meant'>) =>
    `“${written}” is not a unit; “${unit}” is, with just these letters: ${meant}`,
  'missing-unit.dozens': ({ meant }: Args<'meant'>) => `Dozens are counted in pieces: ${meant}`,

  'missing-amount.part': ({ name, example }: Args<'name' | 'example'>) =>
    `All of “${name}” goes in. Write: ${example}`,
  'missing-amount.none': ({ name, example }: Args<'name' | 'example'>) =>
    `How much “${name}”? Write an amount after it: ${example}`,
  'missing-amount.unfinished': ({ written, example }: Args<'written' | 'example'>) =>
    `“${written}” is not finished: ${example}`,
  'missing-amount.figure': ({ written, meant }: Args<'written' | 'meant'>) =>
    `“${written}” is not finished. Write the amount with its unit, for example ${meant} or 20 g.`,
  'missing-amount.to-how-much': ({ written, example }: Args<'written' | 'example'>) =>
    `To how much ${written}? ${example}`,
  'missing-amount.open-quote': () =>
    'The quote that starts here is not closed. Put its second " right after the name.',

  'no-amount.other-quantity': ({ written }: Args<'written'>) =>
    `“${written}” is not an amount. Write a percent of flour, a weight, a volume or pieces.`,
  'no-amount.dough-yield': ({ written, meant }: Args<'written' | 'meant'>) =>
    `“${written}” is the dough on 100 of flour. The water of it is written: ${meant}`,
  'no-amount.parts': ({ written, meant }: Args<'written' | 'meant'>) =>
    `“${written}” is a share of what? Percent are of the flour of the section: one part of flour is 100%, and “${written}” beside it ${meant}.`,
  'no-amount.planned': ({ written, example }: Args<'written' | 'example'>) =>
    `“${written}” cannot be planned. Write pieces or a weight: ${example}`,
  'no-amount.sum': ({ written, meant }: Args<'written' | 'meant'>) =>
    `“${written}” is two amounts. Write their sum: ${meant}`,
  'no-amount.two-units': ({ written, meant }: Args<'written' | 'meant'>) =>
    `“${written}” is one weight in two units. Write it in one: ${meant}`,
  'no-amount.point-first': ({ meant }: Args<'meant'>) => `Write a figure before the point: ${meant}`,
  'no-amount.point-last': ({ meant }: Args<'meant'>) => `No point goes where no figure follows it: ${meant}`,
  'no-amount.rest': ({ written, meant }: Args<'written' | 'meant'>) =>
    `“${written}” is not an amount. What is left of 100% flour is written: ${meant}`,
  'no-amount.any-weight': ({ written }: Args<'written'>) =>
    `“${written}” can be any weight. Write what it weighs, for example 2 g.`,
  'no-amount.no-figure': ({ written }: Args<'written'>) =>
    `“${written}” is not an amount. Write how much it usually is, for example 2% or 20 g.`,

  'amount-first.name-first': ({ example }: Args<'example'>) =>
    `The name comes first, then its amount: ${example}`,
  'amount-first.counted': ({ example }: Args<'example'>) =>
    `The name comes first, and what is counted is written in pieces: ${example}`,
  'amount-first.planned': ({ example }: Args<'example'>) =>
    `The name comes first, and behind it how many: ${example}`,

  'negative-amount.negative': () => 'An amount cannot be negative. Take the minus sign out.',
  'negative-amount.plus': ({ written }: Args<'written'>) =>
    `“${written}” is more than what? An amount says what there is in all. Write the whole of it.`,

  'range.one-value': ({ written }: Args<'written'>) =>
    `“${written}” is a range; one value is needed. Choose one end and keep the other in a comment.`,
  'range.both-units': ({ meant }: Args<'meant'>) => `Write both ends with their unit: ${meant}`,

  'two-readings.two-ways': ({ written, choices }: Args<'written' | 'choices'>, say: Speaker) =>
    `“${written}” can be read two ways. Write ${say.anyOf(choices)}.`,
  'two-readings.groups': ({ written, meant }: Args<'written' | 'meant'>) =>
    `“${written}” is written in groups of three. Write ${meant}.`,
  'two-readings.or-name': ({
    written,
    meant,
    name,
    example,
  }: Args<'written' | 'meant' | 'name' | 'example'>) =>
    `“${written}” can be read two ways. Write ${meant}, or two blanks where “${name}” is the name: ${example}`,

  'beyond-limit.most': ({ written, meant }: Args<'written' | 'meant'>) =>
    `“${written}” is beyond what a bakery can mean, so it is left out of the sums. Write at most ${meant}.`,
  'beyond-limit.between': ({ written, meant, otherMeant }: Args<'written' | 'meant' | 'otherMeant'>) =>
    `“${written}” is beyond what a bakery can mean, so it is left out of the sums. Write from ${meant} to ${otherMeant}.`,

  'point-or-thousand.read-as': ({ written, meant, otherMeant }: Args<'written' | 'meant' | 'otherMeant'>) =>
    `“${written}” is read as ${meant}. Write ${meant} or ${otherMeant}, so that nobody reads it the other way.`,

  'missing-comma.warmth': ({ written, meant }: Args<'written' | 'meant'>) =>
    `How warm it is stands behind a comma: “${written}” is ${meant}`,
  'missing-comma.before': ({ written, example }: Args<'written' | 'example'>) =>
    `A comma goes before “${written}”: ${example}`,

  'after-amount.ingredient': ({ written, example }: Args<'written' | 'example'>) =>
    `Only a comma and a temperature may follow the amount: ${example}. Put “${written}” behind a #.`,
  'after-amount.planned': ({ written, example }: Args<'written' | 'example'>) =>
    `Only a comma and a time may follow the amount: ${example}. Put “${written}” behind a #.`,
  'after-amount.meant': ({ written, meant }: Args<'written' | 'meant'>) =>
    `“${written}” is written: ${meant}`,

  'unknown-option.warmth': ({ written, meant }: Args<'written' | 'meant'>) =>
    `After the comma a temperature is written with “at”: “${written}” is ${meant}`,
  'unknown-option.ingredient': ({ written }: Args<'written'>) =>
    `After the comma goes a temperature, for example “at 8 °C”; “${written}” is not known here. Put other words behind a #.`,
  'unknown-option.planned': ({ written }: Args<'written'>) =>
    `After the comma goes a time, for example “ready 07:15”; “${written}” is not known here. Put other words behind a #.`,

  'unreadable.encoding': () =>
    'A letter here cannot be read. Save the file as UTF-8, and write the letter anew.',
  'unreadable.unseen': ({ code }: Args<'code'>) =>
    `A character that cannot be seen (${code}) stands here. Take it out.`,
  'unreadable.character': ({ written }: Args<'written'>) =>
    `“${written}” cannot stand here. Take it out, or put the name in quotes: "…".`,
  'unreadable.mark': ({ written }: Args<'written'>) => `A line needs no mark like “${written}” before it.`,
  'unreadable.ruled': () =>
    'A ruled line has no meaning here. Leave a blank line instead, or make it a comment.',
  'unreadable.comment': ({ written }: Args<'written'>) => `A comment starts with #, not with “${written}”.`,
  'unreadable.table': () => 'A table needs no “|” here: blanks part the columns.',
  'unreadable.quotes': () => 'A quote is written with the straight mark, for example "7-grain mix".',
  'unreadable.digits': () => 'A figure is written with plain digits, for example 12.5%.',
  'unreadable.around': ({ written }: Args<'written'>) => `Words need no “${written}” around them.`,
  'unreadable.between': ({ written }: Args<'written'>) => `No “${written}” goes here: a blank is enough.`,
  'unreadable.full-stop': () => 'A line ends without a full stop.',
  'unreadable.semicolon': () => 'A line ends without a semicolon.',
  'unreadable.merge': () =>
    'A merge is not finished here. Keep the lines that count, and take out those that mark the two sides.',
};
