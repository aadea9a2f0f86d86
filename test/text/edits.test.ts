import { expect, it } from 'vitest';
import { withEdits } from '../../core/text/edits.ts';

const text = 'flour 100%\nwater 65%\n';

it('makes edits in their order, and those that touch one after the other', () => {
  expect(
    withEdits(text, [
      { line: 0, start: 0, end: 5, insert: 'rye' },
      { line: 0, start: 5, end: 6, insert: '  ' },
      { line: 0, start: 10, endLine: 1, end: 0, insert: '; ' },
    ]),
  ).toBe('rye  100%; water 65%\n');
});

it.each([
  ['overlap', [0, 6], [4, 8]],
  ['lie within one another', [0, 9], [2, 3]],
  ['are out of order', [6, 8], [0, 2]],
] as const)('refuses edits that %s', (_, [start, end], [second, last]) => {
  const edits = [
    { line: 0, start, end, insert: 'a' },
    { line: 0, start: second, end: last, insert: 'b' },
  ];
  expect(() => withEdits(text, edits)).toThrow(RangeError);
});

it('refuses an edit that ends before it starts', () => {
  expect(() => withEdits(text, [{ line: 0, start: 4, end: 2, insert: '' }])).toThrow(RangeError);
});
