import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from '../editors/places.ts';
import { isFile, readFixture, textOf } from '../fixture.ts';

/** Every formula file of the examples and of all fixtures, without the marks of a cursor. */
export function formulaTexts(): string[] {
  const below = (path: string): string[] =>
    readdirSync(join(projectFolder, path), { recursive: true, encoding: 'utf8' })
      .sort()
      .map((name) => join(projectFolder, path, name));
  const [files, fixtures] = [[...below('examples'), ...below('test/fixtures')], below('test/fixtures')];
  const whole = files.filter((name) => name.endsWith('.dough')).map((name) => readFileSync(name, 'utf8'));
  const parts = fixtures
    .filter((name) => name.endsWith('.txt') && !/fixtures.(?:words|suites)/.test(name))
    .flatMap((name) => readFixture(name).cases)
    .flatMap(({ parts }) => parts.filter(isFile).map(textOf));
  return [...whole, ...parts].map((text) => text.replaceAll('‸', ''));
}
