import { describe, expect, it } from 'vitest';
import { formatOfFile, savedFormats } from '../../client/exports/formats.ts';
import { writeSheets } from '../../core/index.ts';
import { exampleSheet } from '../sheet/example-sheet.ts';

describe('where a sheet is saved', () => {
  it.each([
    ['/quay/tin.html', 'html'],
    ['/quay/Tin.HTM', 'html'],
    ['/quay/tin.md', 'md'],
    ['/quay/tin.markdown', 'md'],
    ['/quay/tin.csv', 'csv'],
    ['/quay/tin.json', 'json'],
    ['/quay/tin.pdf', undefined],
    ['/quay.md/tin', undefined],
    ['/quay/.md', undefined],
    ['/quay/tin.constructor', undefined],
  ])('%s is %s', (path, format) => {
    expect(formatOfFile(path)).toBe(format);
  });

  it('every ending that is offered is a format the core writes', () => {
    const sheet = { view: exampleSheet(), origin: { file: 'ferry.dough' } };
    for (const ending of savedFormats) {
      const format = formatOfFile(`sheet.${ending}`);
      expect(writeSheets([sheet], format!).length).toBeGreaterThan(100);
    }
  });
});
