import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readFixtures, writeFixture } from '../fixture.ts';
import { updating } from '../updating.ts';
import { tell } from './told.ts';

// Every case of test/fixtures/parse: `UPDATE=1 npx vitest run test/syntax` writes anew what is expected, never the input.
const files = readFixtures(join(import.meta.dirname, '..', 'fixtures', 'parse'));

for (const file of files) {
  const told = file.cases.map(({ parts }) => parts.map(({ head, body }) => ({ head, body: tell(body) })));
  if (updating)
    writeFixture(
      file,
      file.cases.map(({ title }, index) => ({ title, parts: told[index]! })),
    );
  describe(file.name, () => {
    for (const [index, { title, parts }] of file.cases.entries()) {
      it(title, () => {
        expect(parts).toHaveLength(1);
        expect(told[index]).toEqual(updating ? told[index] : parts);
      });
    }
  });
}
