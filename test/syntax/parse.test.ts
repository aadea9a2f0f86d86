import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { updating } from '../updating.ts';
import { readAnnotated, writeAnnotated } from './annotated.ts';
import { tell } from './told.ts';

// Every case of test/fixtures/parse: `UPDATE=1 npx vitest run test/syntax` writes anew what is expected, never the input.
const files = readAnnotated(join(import.meta.dirname, '..', 'fixtures', 'parse'));

for (const file of files) {
  if (updating)
    writeAnnotated(
      file,
      file.cases.map((one) => tell(one.input)),
    );
  describe(file.name, () => {
    for (const one of file.cases) {
      it(one.title, () => {
        expect(one.input.length).toBeGreaterThan(0);
        expect(tell(one.input)).toBe(updating ? tell(one.input) : one.body);
      });
    }
  });
}
