/** What a number in a text stands for, and so how it is written for a reader. */
export type FigureKind =
  | 'number'
  | 'mass'
  | 'temperature'
  | 'difference'
  | 'warming'
  | 'weighed'
  | 'weighedUnit';

const letters: Readonly<Record<FigureKind, string>> = {
  number: 'n',
  mass: 'm',
  temperature: 't',
  difference: 'd',
  warming: 'r',
  weighed: 'w',
  weighedUnit: 'u',
};
const kinds = new Map(Object.entries(letters).map(([kind, letter]) => [letter, kind as FigureKind]));

// Two characters that no standard gives a meaning. Between them stand a letter, the number, and what else it takes.
const open = '\uE000';
const close = '\uE001';
const pattern = /\uE000([a-z])([^\uE000\uE001;]*);([^\uE000\uE001]*)\uE001/g;

/**
 * A number in a text that is not written out yet: nobody knows here how its reader wants it. Text that holds such
 * numbers must not be measured or cut; `written` writes them out.
 */
export function marked(kind: FigureKind, value: number | string, more = 0): string {
  return `${open}${letters[kind]}${value};${more}${close}`;
}

/** What a temperature or a difference takes besides its number, to be written in whole degrees. */
export const wholeDegrees = 1;

/** Whether a text holds numbers that are not written out. */
export function holdsMarked(text: string): boolean {
  return text.includes(open);
}

/** The text with each of its numbers written out. */
export function written(
  text: string,
  write: (kind: FigureKind, value: number, text: string, more: number) => string,
): string {
  return text.replace(pattern, (whole, letter: string, value: string, more: string) => {
    // Others may have made the sign a true minus, or put a backslash before it.
    const plain = value.replace(/\\/g, '').replace('−', '-');
    const kind = kinds.get(letter);
    const number = Number(plain);
    if (kind === undefined || plain === '' || Number.isNaN(number)) return whole;
    const said = write(kind, number, plain, Number(more));
    return value.includes('−') ? said.replace('-', '−') : said;
  });
}
