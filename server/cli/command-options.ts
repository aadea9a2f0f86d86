import { InvalidArgumentError, Option } from 'commander';

const sizes = ['pieces', 'dough', 'baked', 'flour', 'onHand', 'bowls'];

/** One of the ways to size a sheet, which exclude each other. */
export function sizeOption(flags: string, description: string): Option {
  const option = new Option(flags, description);
  return option.conflicts(sizes.filter((name) => name !== option.attributeName()));
}

/** A revision of git to read formulas from, in the place of the disk. */
export function revisionOption(): Option {
  return new Option(
    '--at <revision>',
    'as a revision of git has it, with the flours and mixers of that revision',
  );
}

/** How a command writes what it has; `usual` where the name of a file does not say it. */
export function formatOption(formats: readonly string[], usual: string): Option {
  const described = `how to write it; without it as the name of --out ends, else ${usual}`;
  return new Option('--format <format>', described).choices(formats);
}

/** What the command ends with, for scripts. */
export function ends(none: string, some: string): string {
  return `\nEnds with 0 where ${none}, 1 where ${some}, 2 where\nsomething could not be read or done.\n`;
}

export function example(call: string): string {
  return `\nExample:\n  ${call}`;
}

/** Minutes of a map. */
export function minutesAbove(text: string): number {
  const value = Number(text.replace(',', '.'));
  if (!(value > 0 && value <= 600))
    throw new InvalidArgumentError('Write minutes above 0 and up to 600, as 60.');
  return value;
}

/** A percent, with or without its sign, with a point or a comma. */
export function share(text: string): number {
  const value = Number(text.replace(/\s*%$/, '').replace(',', '.'));
  if (!(value > 0 && value < 100))
    throw new InvalidArgumentError('Write a percent above 0 and below 100, as 12.5.');
  return value;
}

/** One word more of an option that may be given again. */
export function again(word: string, before: readonly string[] = []): readonly string[] {
  return [...before, word];
}

export function wholeNumber(text: string): number {
  if (!/^[1-9]\d*$/.test(text)) throw new InvalidArgumentError('Write a whole number above 0.');
  return Number(text);
}
