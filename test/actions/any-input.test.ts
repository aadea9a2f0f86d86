import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createService } from '../../core/index.ts';
import { exampleFiles, mixedLines, wildText } from '../syntax/texts.ts';
import { edited, editsOf } from './apply.ts';

const uri = 'file:///quay-lane/breads/a.dough';

/** Offers everything at a place and does it; the count of what was done. */
function doEverything(text: string, line: number, endLine: number): number {
  const service = createService();
  service.setRoots(['file:///quay-lane/']);
  for (const { path, text: example } of exampleFiles()) service.setText(`file:///quay-lane/${path}`, example);
  service.setText(uri, text);
  const range = { line, start: 0, endLine, end: 0 };
  const offered = service.actions(uri, range);
  expect(JSON.parse(JSON.stringify(offered))).toEqual(offered);
  for (const { id, argument, title } of offered) {
    expect(title).not.toMatch(/undefined|NaN|Infinity|\[object|\n/);
    const edits = service.actionEdits(uri, range, id, argument);
    for (const one of edits ?? []) {
      if (one.uri === uri) edited(text, editsOf(edits, uri));
      expect(JSON.stringify(one)).not.toMatch(/NaN|Infinity|undefined/);
    }
  }
  return offered.length;
}

describe('actions on any text', () => {
  it('never fail, and edit only places that are there', () => {
    fc.assert(
      fc.property(fc.oneof(mixedLines, wildText), fc.nat(30), fc.nat(4), (text, from, more) => {
        const last = text.split(/\r\n|\r|\n/).length - 1;
        const line = Math.min(from, last);
        doEverything(text, line, Math.min(line + more, last));
      }),
      { numRuns: 30 },
    );
  }, 120_000);

  it('never fail at any line of the examples, whatever of it is typed', () => {
    let offered = 0;
    for (const { text } of exampleFiles()) {
      const lines = text.split('\n');
      for (let line = 0; line < lines.length; line += 9) {
        offered += doEverything(text, line, line);
        const half = [...lines];
        half[line] = half[line]!.slice(0, Math.floor(half[line]!.length / 2));
        offered += doEverything(half.join('\n'), line, line);
      }
    }
    expect(offered).toBeGreaterThan(50);
  }, 120_000);
});
