import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createService } from '../../core/index.ts';
import { definitionOf } from '../../core/model/scope.ts';
import { parseFile } from '../../core/syntax/file.ts';
import { indexFormulas } from '../../core/syntax/header-index.ts';
import { filesIn, project } from '../tidy/imports.ts';

const read = (file: string): string => readFileSync(join(project, file), 'utf8');
const examples = filesIn('examples', '.dough');
const fixtures = filesIn('test/fixtures', '.txt').map(read);

/** What a text defines, read whole. */
const defined = (text: string): [kind: string, folded: string, line: number][] =>
  parseFile(text).blocks.flatMap(({ block, firstLine }): [string, string, number][] => {
    const one = definitionOf('', firstLine, block);
    return one === undefined ? [] : [[one.kind, one.name.folded, one.firstLine]];
  });

function agree(text: string): void {
  const sketched = indexFormulas(text);
  const whole = defined(text);
  if (sketched === undefined) return;
  expect(sketched.map(({ name, firstLine }) => ['formula', name.folded, firstLine])).toEqual(whole);
}

describe('a file known by its headers', () => {
  it('defines what it defines read whole', () => {
    for (const text of [...examples.map(read), ...fixtures]) agree(text);
    expect(examples.map(read).filter((text) => indexFormulas(text) !== undefined).length).toBeGreaterThan(4);
  });

  it('whatever its lines', () => {
    const lines = [...examples.map(read), ...fixtures].flatMap((text) => text.split('\n'));
    const odd = [
      'formula',
      'formula:',
      'formula 12%',
      'flour:',
      'plan now',
      'bakery',
      'Formula “A”',
      'mixer b',
      '',
    ];
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...lines, ...odd), { maxLength: 30 }),
        fc.constantFrom('\n', '\r\n', '\r'),
        (all, end) => agree(all.join(end)),
      ),
      { numRuns: 500 },
    );
  });
});

describe('a lean service', () => {
  it('finds what every other finds, though it gives up what it has read', () => {
    const [lean, usual] = [createService({ lean: true }), createService()];
    for (const service of [lean, usual]) {
      for (const file of examples) service.setText(`file:///${file}`, read(file));
      // Many formulas, some of them levains of others, some of a name twice, in files that define nothing else.
      for (let index = 0; index < 450; index++) {
        const uri = `file:///examples/many/${index}.dough`;
        const levain = index % 9 === 0 ? '' : `  Levain ${index - (index % 9)}  ${20 + (index % 5)}%\n`;
        const name = index % 9 === 0 ? `Levain ${index}` : `Loaf ${index % 100}`;
        service.setText(
          uri,
          `formula ${name}:\n  strong white 100%\n  water ${60 + (index % 30)}%\n${levain}  salt 2\n`,
        );
      }
      service.setRoots(['file:///examples']);
    }
    for (const uri of usual.uris()) expect(lean.findings(uri), uri).toEqual(usual.findings(uri));
  });
});
