import fc from 'fast-check';
import { expect, it } from 'vitest';
import { createService } from '../../core/index.ts';
import { withEdits } from '../../core/text/edits.ts';
import { mixedLines } from '../syntax/texts.ts';

const uri = 'file:///quay-lane/a.dough';

it('fixes of any text are in order, never overlap, and change something', () => {
  let made = 0;
  fc.assert(
    fc.property(mixedLines, (text) => {
      const service = createService();
      service.setText(uri, text);
      for (const { fixes } of service.findings(uri))
        for (const { edits } of fixes) {
          // Refuses what is out of order or overlaps.
          const after = withEdits(
            text,
            edits.flatMap((one) => (one.uri === uri ? one.edits : [])),
          );
          expect(after).not.toBe(text);
          made++;
        }
    }),
    { numRuns: 200, seed: 17 },
  );
  expect(made).toBeGreaterThan(20);
}, 120_000);
