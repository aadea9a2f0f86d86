import { join } from 'node:path';
import { isFile, readFixtures, textOf } from '../fixture.ts';
import { exampleFiles } from '../syntax/texts.ts';

const families = ['rules', 'actions', 'features', 'format', 'parse', 'sheet'];

/** The longest text that is taken: fuzzing finds more in many small ones than in a few that are slow to ask about. */
const longest = 4000;

/** What people have written: the examples, and every file that a fixture gives, the shortest first, each once. */
export function corpus(): readonly string[] {
  const fixtures = families.flatMap((family) =>
    readFixtures(join(import.meta.dirname, '..', 'fixtures', family)).flatMap(({ cases }) =>
      cases.flatMap(({ parts }) => parts.filter(isFile).map((part) => textOf(part).replaceAll('‸', ''))),
    ),
  );
  const all = new Set([...exampleFiles().map(({ text }) => text), ...fixtures]);
  return [...all]
    .filter((text) => text.length <= longest)
    .sort((one, other) => one.length - other.length || (one < other ? -1 : 1));
}
