import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { filesIn, project } from './imports.ts';

const read = (file: string): string => readFileSync(join(project, file), 'utf8');

/** What DEVELOPERS.md says always holds, by its number, and the tests that hold it: file and title. */
const held: Readonly<Record<number, readonly (readonly [file: string, title: string])[]>> = {
  1: [
    ['tidy/invariants', 'it imports itself and few pure libraries: no editor, no protocol, no file system'],
    ['tidy/invariants', 'it has no clock, no chance, no locale, no console, no global of a host'],
    ['tidy/invariants', 'its compiler knows no types of a host'],
  ],
  2: [
    ['tidy/invariants', 'the server enters the core by its door; the protocol takes types only'],
    ['tidy/invariants', 'the client takes types from the protocol and nothing else of server and core'],
    ['tidy/invariants', 'nobody imports the client'],
  ],
  3: [
    [
      'syntax/properties',
      'is kept to the last character, with at most one problem a line and every span in its line',
    ],
    ['syntax/properties', 'reads each line as it reads alone in its section, whatever a memo holds'],
    ['tidy/invariants', 'syntax knows text and messages alone'],
  ],
  4: [['tidy/always', 'a mass, a temperature or a time is told by its unit and not by what it measures']],
  5: [
    [
      'calc/formula-properties',
      'never throws, never gives NaN or infinity, never a negative weight, and is serialisable',
    ],
    [
      'syntax/properties',
      'is kept to the last character, with at most one problem a line and every span in its line',
    ],
    ['rules/check', 'holds at every line’s end and in every few letters while an example is typed'],
  ],
  6: [
    ['workspace/any-input', 'never throws, and answers plain data that points into the text'],
    ['words/messages', 'is plain data that survives being written as JSON'],
    ['words/languages', 'changes no code, no level, no place, no edit and no figure of what is found'],
  ],
  7: [
    ['tidy/generated', 'what is generated is fresh; npm run generate writes it anew'],
    ['tidy/rules', 'has its page in every language, made from the row'],
  ],
};

describe('what the guide for developers says always holds', () => {
  const part = read('DEVELOPERS.md').split('## What always holds')[1]?.split('\n## ')[0] ?? '';
  const claims = [...part.matchAll(/^(\d+)\. /gm)].map(([, number]) => Number(number));

  it('has its tests, each claim of it', () => {
    expect(claims.length).toBeGreaterThan(5);
    expect(Object.keys(held).map(Number)).toEqual(claims);
  });

  it.each(Object.values(held).flat())('test/%s.test.ts: %s', (file, title) => {
    expect(read(`test/${file}.test.ts`)).toContain(`'${title}'`);
  });

  it('a mass, a temperature or a time is told by its unit and not by what it measures', () => {
    const measured =
      /^ *readonly (\w*(?:mass|weight|temperature|warmth|duration|time|energy|volume))\??: number\b/gim;
    const found = ['calc', 'catalogue', 'model', 'analysis', 'facts', 'sheet'].flatMap((room) =>
      filesIn(`core/${room}`, '.ts').flatMap((file) =>
        [...read(file).matchAll(measured)].map(([, name]) => `${file}: ${name}`),
      ),
    );
    expect(found).toEqual([]);
    expect('  readonly doughTemperature?: number;'.match(measured)).toHaveLength(1);
  });
});
