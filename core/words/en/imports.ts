import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** What was guessed, left out and checked when a table became a formula. */
export const imports = {
  'import.too-many-rows': ({ count, otherCount }: Args<'count' | 'otherCount'>, say: Speaker) =>
    `This table has ${say.count(count, { one: '# row', other: '# rows' })}; copy the ${say.number(otherCount, 0)} or fewer that are the formula.`,
  'import.nothing': () => 'There is nothing in this; copy the rows of the table first.',
  'import.no-columns': () =>
    'No column of names beside a column of amounts is in this; a formula needs both.',
  'import.quoted': ({ name }: Args<'name'>) => `“${name}”`,
  'import.more': ({ count }: Args<'count'>, say: Speaker) => say.count(count, { other: '# more' }),

  'import.table': ({ count, title }: Args<'count' | 'title'>, say: Speaker) =>
    `A table of ${say.count(count, { one: '# row', other: '# rows' })} with ${say.say(title)} between its cells, without a heading.`,
  'import.table-with-heading': ({ count, title }: Args<'count' | 'title'>, say: Speaker) =>
    `A table of ${say.count(count, { one: '# row', other: '# rows' })} with ${say.say(title)} between its cells, with a heading.`,
  'import.between-tab': () => 'tabs',
  'import.between-semicolon': () => 'semicolons',
  'import.between-comma': () => 'commas',
  'import.between-bar': () => 'bars',
  'import.between-blanks': () => 'several blanks',
  'import.between-none': () => 'nothing',
  'import.title': ({ name }: Args<'name'>) =>
    `“${name}” above the table is taken as the name of the formula.`,
  'import.column': ({ number }: Args<'number'>, say: Speaker) => `column ${say.number(number, 0)}`,
  'import.columns': ({ parts }: Args<'parts'>, say: Speaker) => `It has ${say.list(parts.map(say.say))}.`,
  'import.names-in': ({ title }: Args<'title'>, say: Speaker) => `names in ${say.say(title)}`,
  'import.percentages-in': ({ title }: Args<'title'>, say: Speaker) => `percentages in ${say.say(title)}`,
  'import.weights-in': ({ title }: Args<'title'>, say: Speaker) => `weights in ${say.say(title)}`,
  'import.temperatures-in': ({ title }: Args<'title'>, say: Speaker) => `temperatures in ${say.say(title)}`,
  'import.remarks-in': ({ title }: Args<'title'>, say: Speaker) => `remarks in ${say.say(title)}`,
  'import.parts-in': ({ title }: Args<'title'>, say: Speaker) => `parts in ${say.say(title)}`,
  'import.formulas-in': ({ title }: Args<'title'>, say: Speaker) => `formulas in ${say.say(title)}`,
  'import.percent-guessed': ({ title, number }: Args<'title' | 'number'>, say: Speaker) =>
    `The amounts in ${say.say(title)} have no unit and are taken as percent: the flours come to ${say.number(number, 0)}.`,
  'import.shares-of-one': ({ title }: Args<'title'>, say: Speaker) =>
    `The amounts in ${say.say(title)} are shares of 1, and are written as percent.`,
  'import.grams-guessed': ({ title }: Args<'title'>, say: Speaker) =>
    `The amounts in ${say.say(title)} have no unit: each is taken as grams.`,
  'import.left-out': ({ parts }: Args<'parts'>, say: Speaker) =>
    `More amounts than a line can have are left out: ${say.list(parts.map(say.say))}.`,
  'import.columns-again': ({ parts }: Args<'parts'>, say: Speaker) =>
    `Columns that come again are left out: ${say.list(parts.map(say.say))}. Where they are of another part, import that as a table of its own.`,
  'import.side-by-side': ({ count }: Args<'count'>, say: Speaker) =>
    `${say.count(count, { one: '# block stands', other: '# blocks stand' })} side by side in this table: they are taken one below the other.`,
  'import.merged-cells': ({ parts }: Args<'parts'>, say: Speaker) =>
    `Empty cells below one that is filled are taken to say the same, in ${say.list(parts.map(say.say))}.`,

  'import.parts-in-columns': ({ parts }: Args<'parts'>, say: Speaker) =>
    `The weights of each part stand in a column of its own, ${say.list(parts.map(say.say))}: they are taken one below the other, and what is said of all together is left out.`,

  'import.signs-mixed': () =>
    'Commas and points both stand before decimals in this table; each number is read by itself.',
  'import.decimal-comma': () => 'The comma is taken as the decimal sign.',
  'import.read-as': ({ written, meant }: Args<'written' | 'meant'>) =>
    `“${written}” is read as ${meant}, and so are others like it: check whether that is meant.`,
  'import.read-by-shares': ({ written, meant }: Args<'written' | 'meant'>) =>
    `“${written}” is ${meant}: so the weights are to one another as the percentages are.`,
  'import.read-by-sum': (
    { written, meant, name, grams }: Args<'written' | 'meant' | 'name' | 'grams'>,
    say: Speaker,
  ) => `“${written}” is ${meant}: so the rows come to “${name}”, ${say.number(grams, 1)} g.`,

  'import.taken-as': ({ number, name, otherName }: Args<'number' | 'name' | 'otherName'>, say: Speaker) =>
    `${row(number, name, say)}, is taken as “${otherName}”.`,
  'import.taken-as-one-of': (
    { number, name, otherName }: Args<'number' | 'name' | 'otherName'>,
    say: Speaker,
  ) => `${row(number, name, say)}, is taken as “${otherName}”; the table does not state which it is.`,
  'import.flour-by-name': ({ name }: Args<'name'>, say: Speaker) =>
    `“${name}” is flour, for with it the flours come to ${say.percent(1)}: it gets a section of its own, where its figures may go.`,
  'import.in-pieces': ({ number, name }: Args<'number' | 'name'>, say: Speaker) =>
    `${row(number, name, say)}, has no unit where other rows have one: it is counted in pieces.`,
  'import.culture': ({ number, name, part }: Args<'number' | 'name' | 'part'>, say: Speaker) =>
    `${row(number, name, say)}, feeds “${part}”: it is written as ripe culture, in percent of the flour that is fed.`,
  'import.heading': ({ number, name }: Args<'number' | 'name'>, say: Speaker) =>
    `${row(number, name, say)}, has no amount: it is taken as the heading of a part.`,
  'import.grams-assumed': ({ parts }: Args<'parts'>, say: Speaker) =>
    `Without a unit where other rows have one, and taken as grams: ${say.list(parts.map(say.say))}.`,
  'import.sums': ({ parts }: Args<'parts'>, say: Speaker) =>
    `Sums are left out, as a formula computes them: ${say.list(parts.map(say.say))}.`,
  'import.about-batch': ({ number, written }: Args<'number' | 'written'>, say: Speaker) =>
    `${row(number, written, say)}, is about the batch and no ingredient; it became a comment.`,
  'import.zero': ({ number, name }: Args<'number' | 'name'>, say: Speaker) =>
    `${row(number, name, say)}, is 0 and became a comment.`,
  'import.no-amount': ({ number, name }: Args<'number' | 'name'>, say: Speaker) =>
    `${row(number, name, say)}, has no amount and became a comment.`,
  'import.row-no-name': ({ number, written }: Args<'number' | 'written'>, say: Speaker) =>
    `${row(number, written, say)}, has no name; it became a comment.`,
  'import.row-not-read': ({ number, written }: Args<'number' | 'written'>, say: Speaker) =>
    `${row(number, written, say)}, has an amount that cannot be read; it became a comment.`,
  'import.row-no-amount': ({ number, written }: Args<'number' | 'written'>, say: Speaker) =>
    `${row(number, written, say)}, has no amount; it became a comment.`,
  'import.row-negative': ({ number, written }: Args<'number' | 'written'>, say: Speaker) =>
    `${row(number, written, say)}, has an amount below 0; it became a comment.`,
  'import.row-no-line': ({ number, written }: Args<'number' | 'written'>, say: Speaker) =>
    `${row(number, written, say)}, cannot be a line of a formula; it became a comment.`,

  'import.row-differs': (
    {
      number,
      name,
      written,
      grams,
      otherWritten,
    }: Args<'number' | 'name' | 'written' | 'grams' | 'otherWritten'>,
    say: Speaker,
  ) =>
    `${row(number, name, say)}: ${written} is ${say.number(grams, 1)} g, and the table says ${otherWritten}.`,
  'import.rows-differ': ({ count }: Args<'count'>, say: Speaker) =>
    say.count(count, { one: '# more row differs as well.', other: '# more rows differ as well.' }),
  'import.disagree': () => 'Percentages and weights do not agree; the weights are written.',
  'import.disagree-part': ({ part }: Args<'part'>) =>
    `Percentages and weights of “${part}” do not agree; the weights are written.`,
  'import.of-all': () =>
    'The percentages are of all that goes in and not of the flour; the weights are written.',
  'import.of-all-part': ({ part }: Args<'part'>) =>
    `The percentages of “${part}” are of all that goes in and not of the flour; the weights are written.`,
  'import.of-all-per-kilogram': () =>
    'The percentages are of all that goes in and not of the flour: they are written as weights, per kilogram.',
  'import.of-all-per-kilogram-part': ({ part }: Args<'part'>) =>
    `The percentages of “${part}” are of all that goes in and not of the flour: they are written as weights, per kilogram.`,
  'import.flours-make': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `The flours come to ${say.percent(fraction)} in the table, not to ${say.percent(1)}.`,
  'import.flours-make-part': ({ fraction, part }: Args<'fraction' | 'part'>, say: Speaker) =>
    `The flours of “${part}” come to ${say.percent(fraction)} in the table, not to ${say.percent(1)}.`,
  'import.flours-make-weights': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `The flours come to ${say.percent(fraction)} in the table, not to ${say.percent(1)}; the weights are written.`,
  'import.flours-make-weights-part': ({ fraction, part }: Args<'fraction' | 'part'>, say: Speaker) =>
    `The flours of “${part}” come to ${say.percent(fraction)} in the table, not to ${say.percent(1)}; the weights are written.`,
  'import.agree': () =>
    'Percentages and weights agree: the percentages are written, the weights as the yield.',
  'import.agree-part': ({ part }: Args<'part'>) =>
    `Percentages and weights of “${part}” agree: the percentages are written.`,

  'import.part-without-line': ({ part }: Args<'part'>) =>
    `The dough has no line for “${part}”, and nothing states how much of it goes in: add one.`,
  'import.part-all': ({ part, grams }: Args<'part' | 'grams'>, say: Speaker) =>
    `The dough has no line for “${part}”: all of it, ${say.mass(grams)}, goes in.`,
  'import.not-known': ({ parts }: Args<'parts'>, say: Speaker) =>
    `Not known, so counted as neither flour nor water: ${say.list(parts.map(say.say))}. Define them, or write names that are known.`,
  'import.not-known-meant': ({ parts, facts }: Args<'parts' | 'facts'>, say: Speaker) =>
    `Not known, so counted as neither flour nor water: ${say.list(parts.map(say.say))}; ${say.list(facts.map(say.say))}.`,
  'import.may-be': ({ name, otherName }: Args<'name' | 'otherName'>) => `“${name}” may be “${otherName}”`,
};

function row(number: number, name: string, say: Speaker): string {
  return `Row ${say.number(number, 0)}, “${name}”`;
}
