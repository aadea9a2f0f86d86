import { describe, expect, it } from 'vitest';
import { asCsv } from '../../core/sheet/build/csv-records.ts';

const field = (text: string): string => asCsv([[text]]).replace(/\r\n$/, '');

describe('a text that a spreadsheet would compute', () => {
  it.each([
    '-1+cmd|calc',
    '=1+1',
    '+1',
    '@SUM(A1)',
    '\t=1',
    ' =1',
    '"=1"',
    "'=1",
    '-A1',
    '-1-1',
    '-1=2',
    '＝1',
    '-1e5+2',
    '－1',
  ])('%j is kept a text', (text) => expect(field(text).replace(/^"/, '')).toMatch(/^'/));

  it.each(['-1', '-1.5', '-0,5', '-18 °C', '-2%', '12', '1-2', 'rye - dark', 'salt'])(
    '%j stays as it is',
    (text) => expect(field(text)).toBe(/,/.test(text) ? `"${text}"` : text),
  );
});
