import { describe, expect, it } from 'vitest';
import { fileName, matching, sorted } from '../../client/list/entries.ts';
import { fileNameFor } from '../../client/list/file-name.ts';
import type { OverviewEntry } from '../../server/protocol.ts';

const entries: readonly OverviewEntry[] = [
  entry('formula', 'Harbour Tin', '69% hydration · 21.4 kg dough', 'file:///quay/b%C3%A4ckerei/tin.dough'),
  entry('flour', 'medium rye', 'rye · medium', 'file:///quay/flours.dough'),
];

describe('the filter of the list', () => {
  it.each([
    ['', 2],
    ['  ', 2],
    ['TIN', 1],
    ['rye medium', 1],
    ['69% tin', 1],
    ['flours.dough', 1],
    ['flour tin', 0],
    ['(', 0],
  ])('"%s" leaves %i', (typed, count) => {
    expect(matching(entries, typed)).toHaveLength(count);
  });

  it('stands in the order of the names, whichever file was read first', () => {
    const names = ['Tin 10', 'ärmel', 'Tin 9', 'Breakwater', 'Zopf'];
    const shown = sorted(
      names.map((name, index) => entry('formula', name, '', `file:///quay/${index}.dough`)),
    );
    expect(shown.map(({ name }) => name)).toEqual(['ärmel', 'Breakwater', 'Tin 9', 'Tin 10', 'Zopf']);
  });

  it('reads a file name as a person does, and one that is no code as it stands', () => {
    expect(fileName('file:///a/b%C3%A4r.dough')).toBe('bär.dough');
    expect(fileName('untitled:50%')).toBe('untitled:50%');
  });
});

describe('the file of a new formula', () => {
  it.each([
    ['Harbour Tin', 'harbour-tin'],
    ['  7-Grain / "Best" ', '7-grain-best'],
    ['Brötchen Über', 'brötchen-über'],
    ['לחם', 'לחם'],
    ['../../etc', 'etc'],
    ['???', 'formula'],
    ['CON', 'formula-con'],
    ['x'.repeat(200), 'x'.repeat(60)],
  ])('of "%s" is %s', (formula, file) => {
    expect(fileNameFor(formula)).toBe(file);
  });
});

function entry(kind: OverviewEntry['kind'], name: string, detail: string, uri: string): OverviewEntry {
  return { kind, name, detail, uri, line: 0 };
}
