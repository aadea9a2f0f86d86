import fc from 'fast-check';
import { corpus } from './corpus.ts';

/** One thing that a person does to a text, at a place that is a share of its length, so that it is there in every text. */
interface Deed {
  readonly kind: (typeof deeds)[number];
  readonly at: number;
  readonly other: number;
  readonly piece: string;
}

const deeds = [
  'half a line',
  'no line',
  'a line twice',
  'two lines swapped',
  'letters out',
  'letters in',
  'a pasted piece',
  'another unit',
  'another figure',
  'two letters swapped',
  'another indent',
  'a comment',
] as const;

const units = [
  'g',
  'kg',
  '%',
  'ml',
  'l',
  'pieces',
  'min',
  'h',
  's',
  '°C',
  '°F',
  'day',
  'EUR',
  'rpm',
  '٪',
  '',
];
const figures = [
  '0',
  '-1',
  '2,5',
  '2.5',
  '1 000',
  '1,000',
  '½',
  '3 1/2',
  '50-60',
  '0.05',
  '1e3',
  '99999999',
  '',
];
const indents = ['', ' ', '  ', '    ', '\t', '\u00A0 '];
const letters = [
  ...[':', '#', '"', '(', ')', ',', ' ', '  ', '\n', '\t', '%', '-', '–', '’', '/', '.', '=', '$', '}', '\\'],
  ...[
    'é',
    'e\u0301',
    '強力粉',
    '🥖',
    'חיטה',
    '\u200F',
    '\u200B',
    '\uFEFF',
    '\uD83D',
    '\u0000',
    '\u2028',
    'ß',
  ],
  ...['flour', 'water', 'salt', 'balance', 'at', 'to', 'of', 'all', '# accept no-salt: ours', '# accept'],
];

const texts = corpus();
const lines = [...new Set(texts.flatMap((text) => text.split('\n')))].filter((line) => line.trim() !== '');
const blocks = [...new Set(texts.flatMap((text) => text.split(/\n(?=\S)/)))];

const deed: fc.Arbitrary<Deed> = fc.record({
  kind: fc.constantFrom(...deeds),
  at: fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true }),
  other: fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true }),
  piece: fc.oneof(
    fc.constantFrom(...letters),
    fc.constantFrom(...lines),
    fc.constantFrom(...blocks).map((block) => `\n${block}\n`),
    fc.string({ unit: 'binary', maxLength: 4 }),
  ),
});

const pick = <T>(all: readonly T[], at: number): T => all[Math.floor(at * all.length)] as T;

/** The text after one deed. */
function done(text: string, { kind, at, other, piece }: Deed): string {
  const all = text.split('\n');
  const index = Math.floor(at * all.length);
  const line = all[index] ?? '';
  const put = (...instead: string[]): string => all.toSpliced(index, 1, ...instead).join('\n');
  const place = Math.floor(at * (text.length + 1));
  const swap = (of: RegExp, values: readonly string[]): string =>
    put(line.replace(of, () => pick(values, other)));
  switch (kind) {
    case 'half a line':
      return put(line.slice(0, Math.floor(other * (line.length + 1))));
    case 'no line':
      return put();
    case 'a line twice':
      return put(line, line);
    case 'two lines swapped': {
      const second = Math.floor(other * all.length);
      return all
        .with(index, all[second] ?? '')
        .with(second, line)
        .join('\n');
    }
    case 'letters out':
      return text.slice(0, place) + text.slice(place + 1 + Math.floor(other * 6));
    case 'letters in':
    case 'a pasted piece':
      return kind === 'a pasted piece' && other < 0.5
        ? put(line, piece)
        : text.slice(0, place) + piece + text.slice(place);
    case 'another unit':
      return swap(/(?<=\d\s*)[%°\p{L}]+/u, units);
    case 'another figure':
      return swap(/\d[\d.,]*/, figures);
    case 'two letters swapped':
      return (
        text.slice(0, place) +
        text.slice(place + 1, place + 2) +
        text.slice(place, place + 1) +
        text.slice(place + 2)
      );
    case 'another indent':
      return swap(/^\s*/, indents);
    case 'a comment':
      return put(other < 0.5 ? `${line} # ${piece.trim()}` : `# ${line}`);
  }
}

const wholes = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom(...texts) },
  {
    weight: 2,
    arbitrary: fc.array(fc.constantFrom(...blocks), { maxLength: 4 }).map((some) => some.join('\n')),
  },
  {
    weight: 1,
    arbitrary: fc
      .array(fc.constantFrom(...lines), { maxLength: 14 })
      .map((some) => `formula A:\n${some.join('\n')}`),
  },
);

const asSaved = fc.constantFrom<(text: string) => string>(
  (text) => text,
  (text) => text,
  (text) => text.replace(/\n+$/, ''),
  (text) => `${text}\n`,
  (text) => text.replaceAll('\n', '\r\n'),
  (text) => `\uFEFF${text}`,
);

/** A text of people after some minutes of theirs: half lines, pasted pieces, other units, and how editors save. */
export const personsText: fc.Arbitrary<string> = fc
  .tuple(wholes, fc.array(deed, { maxLength: 5 }), asSaved)
  .map(([text, some, saved]) => saved(some.reduce(done, text)));

/** A text, and what it becomes deed by deed. */
export const personsEdits: fc.Arbitrary<readonly string[]> = fc
  .tuple(wholes, fc.array(deed, { minLength: 1, maxLength: 8 }), asSaved)
  .map(([text, some, saved]) => {
    const made = [text];
    for (const one of some) made.push(done(made.at(-1) ?? '', one));
    return made.map(saved);
  });

/** A place as shares of the lines and of the columns. */
export const somewhere = fc.record({
  line: fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true }),
  column: fc.double({ min: 0, max: 1, noNaN: true }),
});
