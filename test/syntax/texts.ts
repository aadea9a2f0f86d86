import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';

const root = join(import.meta.dirname, '..', '..');

/** Every `.dough` file of the examples, with its path below them. */
export function exampleFiles(): { readonly path: string; readonly text: string }[] {
  const folder = join(root, 'examples');
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.dough'))
    .sort()
    .map((path) => ({ path: path.replaceAll('\\', '/'), text: readFileSync(join(folder, path), 'utf8') }));
}

const pieces = [
  ...['formula A:', 'preferment p:', 'mix in spiral:', 'process:', 'trial 2026-03-14:', 'plan Saturday:'],
  ...['flour white:', 'ingredient malt:', 'mixer spiral:', 'bakery Quay:', 'nonsense:', 'topping t:'],
  ...[
    'flour',
    'water',
    'salt',
    'draws',
    'all',
    'of',
    'to',
    'at',
    'for',
    'from',
    'baked',
    'a piece',
    'balance',
  ],
  ...[
    'remaining',
    'hydration',
    'effective',
    'yield',
    'loss',
    'speed 1',
    'load',
    'add',
    'bulk',
    'bake',
    'note',
  ],
  ...[
    '100%',
    '2 %',
    '500 g',
    '1,000 g',
    '1 000 g',
    '1.000 g',
    '50-60 min',
    '1 h 30 min',
    '-18 °C',
    '3 1/2',
    '-3 1/2',
    '½',
  ],
  ...[
    '24 pieces',
    '0.74 EUR per kg',
    '2026-03-14',
    '06:30',
    '105 rpm',
    '12',
    'type 550',
    '7-grain',
    '"',
    '"a, b"',
  ],
  ...[
    '(',
    ')',
    ',',
    ':',
    '#',
    '# accept x: y',
    ' ',
    '  ',
    '\t',
    '\u00A0',
    '\uFEFF',
    '\r',
    '\n',
    '\r\n',
    '\n\n',
  ],
  ...['é', 'e\u0301', '強力粉', 'חיטה', '\u200F', '🍞', '\uD83D', '\uDC00', '\u0000', '\u2028', '’', '–'],
];

/** Text that looks like the notation in one place and like nothing in the next. */
export const wildText = fc
  .array(
    fc.oneof(
      { weight: 6, arbitrary: fc.constantFrom(...pieces) },
      { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 12 }) },
      {
        weight: 1,
        arbitrary: fc.string({
          unit: fc.integer({ min: 0, max: 0xffff }).map((code) => String.fromCharCode(code)),
          maxLength: 6,
        }),
      },
    ),
    { maxLength: 60 },
  )
  .map((parts) => parts.join(''));

/** Lines of the examples in any order, some with a stretch taken out or put in. */
export const mixedLines = (() => {
  const lines = exampleFiles().flatMap(({ text }) => text.split('\n'));
  const line = fc.constantFrom(...lines);
  const hurt = fc
    .tuple(line, fc.nat(80), fc.nat(6), fc.oneof(fc.constantFrom(...pieces), fc.string({ maxLength: 4 })))
    .map(([text, at, take, put]) => text.slice(0, at) + put + text.slice(at + take));
  return fc
    .array(fc.oneof(line, line, hurt), { maxLength: 40 })
    .chain((parts) => fc.constantFrom('\n', '\r\n', '\r').map((ending) => parts.join(ending)));
})();
