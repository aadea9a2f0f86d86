import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatEdits, formatTyped } from '../../core/features/actions/format.ts';
import { parseFile } from '../../core/syntax/file.ts';
import { columnsOf } from '../../core/syntax/layout.ts';
import { meaning } from '../../core/syntax/print.ts';
import type { SourceFile } from '../../core/syntax/tree.ts';
import { withEdits } from '../../core/text/edits.ts';
import { givenLines, readFixtures, textOf, writeFixture } from '../fixture.ts';
import { updating } from '../updating.ts';
import { formatted } from './formatted.ts';
import { exampleFiles, mixedLines, wildText } from './texts.ts';

// Every case of test/fixtures/format; `UPDATE=1` writes what is expected anew.
for (const file of readFixtures(join(import.meta.dirname, '..', 'fixtures', 'format'))) {
  const told = file.cases.map(({ parts }) =>
    parts.map((part) => ({
      head: part.head,
      body: [
        ...givenLines(part.body),
        ...formatted(textOf(part))
          .split('\n')
          .map((line) => `> ${escaped(line)}`.trimEnd()),
      ].join('\n'),
    })),
  );
  if (updating)
    writeFixture(
      file,
      file.cases.map(({ title }, index) => ({ title, parts: told[index]! })),
    );
  describe(`format: ${file.name}`, () => {
    for (const [index, { title, parts }] of file.cases.entries())
      it(title, () => expect(updating ? told[index] : parts).toEqual(told[index]));
  });
}

/** Characters nobody sees as escapes, long runs cut short. */
function escaped(text: string): string {
  return text
    .replace(/(.)\1{99,}/gu, (run, one: string) => `${one.repeat(3)}…(${run.length})`)
    .replace(
      /[\p{C}\u00A0\u202F\uFEFF]| $/gu,
      (one) => `\\u{${one.codePointAt(0)!.toString(16).toUpperCase()}}`,
    );
}

const anyText = fc.oneof(wildText, mixedLines);

/** What a file says, line by line: its problems, its sections, its statements. */
function said(file: SourceFile): string[] {
  const problems = new Map(
    file.blocks.flatMap(({ block, firstLine }) =>
      block.problems.map((one) => [firstLine + one.line, one.code]),
    ),
  );
  return file.lines.flatMap((line, index) => {
    if (line.tokens.every((token) => token.kind === 'blank')) return [];
    const codes = [...line.problems.map((one) => one.code), problems.get(index)];
    return [`${codes.join()} ${meaning(line)}`];
  });
}

describe('formatting any text', () => {
  it('changes nothing of what it says', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(said(parseFile(formatted(text)))).toEqual(said(parseFile(text)));
      }),
      { numRuns: 600 },
    );
  });

  it('is done after once', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const once = formatted(text);
        expect(formatted(once)).toBe(once);
      }),
      { numRuns: 300 },
    );
  });

  it('leaves every line with a problem exactly as it is', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const broken = (of: string) =>
          parseFile(of).lines.flatMap((line) => (line.problems.length > 0 ? [line.text] : []));
        // A byte order mark is the file's, not the line's.
        const plain = (line: string) => line.replace(/^\uFEFF/, '');
        expect(broken(formatted(text)).map(plain)).toEqual(broken(text).map(plain));
      }),
      { numRuns: 300 },
    );
  });

  it('gives edits in order, none over another, none that changes nothing', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const file = parseFile(text);
        let [line, column] = [0, 0];
        for (const edit of formatEdits(file)) {
          expect(edit.line > line || (edit.line === line && edit.start >= column)).toBe(true);
          const end = edit.endLine ?? edit.line;
          expect(edit.start).toBeLessThanOrEqual(file.lines[edit.line]!.text.length);
          expect(edit.end).toBeLessThanOrEqual(file.lines[end]!.text.length);
          const replaced = end === edit.line ? file.lines[end]!.text.slice(edit.start, edit.end) : '\n';
          expect(edit.insert).not.toBe(replaced);
          [line, column] = [end, edit.end];
        }
      }),
      { numRuns: 300 },
    );
  });

  it('touches only the lines of a range, and does with them what it does with all', () => {
    fc.assert(
      fc.property(anyText, fc.nat(20), fc.nat(10), (text, firstLine, more) => {
        const file = parseFile(text);
        const lastLine = firstLine + more;
        const all = formatEdits(file).map((edit) => JSON.stringify(edit));
        for (const edit of formatEdits(file, { firstLine, lastLine })) {
          expect(edit.line).toBeGreaterThanOrEqual(firstLine);
          expect((edit.endLine ?? edit.line) - (edit.end === 0 ? 1 : 0)).toBeLessThanOrEqual(lastLine);
          if (edit.endLine === undefined) expect(all).toContain(JSON.stringify(edit));
        }
      }),
      { numRuns: 300 },
    );
  });

  it('gives a line the same form whatever stands around it in its section', () => {
    const lines = exampleFiles().flatMap(({ text }) =>
      text.split('\n').filter((line) => /^ +[a-z]/.test(line)),
    );
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...lines), { minLength: 1, maxLength: 6 }), (some) => {
        const head = 'formula A:';
        const alone = some.map((line) => formatted(`${head}\n${line}`).split('\n')[1]);
        const together = formatted([head, ...some].join('\n'))
          .split('\n')
          .slice(1, -1);
        expect(together).toEqual(alone);
      }),
      { numRuns: 200 },
    );
  });
});

describe('an example written carelessly', () => {
  for (const { path, text } of exampleFiles()) {
    it(`${path} comes out as it was`, () => {
      const blanks = fc.constantFrom(' ', '  ', '\t', '   ', '\u00A0', ' \t ');
      const careless = text
        .split('\n')
        .map((line) =>
          /^\s*(?:#|note)|^$/.test(line)
            ? fc.constant(line)
            : fc
                .tuple(fc.array(blanks, { minLength: 12, maxLength: 12 }), fc.boolean(), fc.boolean(), blanks)
                .map(([some, comma, glue, tail]) => carelessly(line, some, comma, glue) + tail),
        );
      fc.assert(
        fc.property(fc.tuple(...careless), fc.constantFrom('\n', '\r\n', '\r'), (lines, ending) => {
          expect(formatted(lines.join(ending))).toBe(text.split('\n').join(ending));
        }),
        { numRuns: 20 },
      );
    });
  }
});

function carelessly(line: string, blanks: readonly string[], comma: boolean, glue: boolean): string {
  let at = 0;
  const written = line.replace(/(\d) (g|kg|min|h|°C|pieces|rpm|%)(?![\w/])/g, glue ? '$1$2' : '$1  $2');
  return (comma ? written.replace(/(\d)\.(\d)/g, '$1,$2') : written).replace(
    / +/g,
    () => blanks[at++ % blanks.length]!,
  );
}

describe('while somebody types', () => {
  const typed = (before: string, key: string) => {
    const at = before.indexOf('‸');
    const text = before.replace('‸', '');
    const above = text.slice(0, at).split('\n');
    const edits = formatTyped(parseFile(text), above.length - 1, above.at(-1)!.length, key);
    return withEdits(text, edits);
  };

  it('a line break puts the line just left right, and no other', () => {
    expect(typed('formula A:\n salt 2%\n water 60%\n  ‸\n rye 3%\n', '\n')).toBe(
      'formula A:\n salt 2%\n  water              60%\n  \n rye 3%\n',
    );
  });

  it('a line break leaves an unfinished line alone', () => {
    const text = 'formula A:\n   water    60\n  ‸';
    expect(typed(text, '\n')).toBe(text.replace('‸', ''));
  });

  it('the colon of a header brings it to the margin', () => {
    expect(typed('formula A:\n  salt 2%\n  mix in big spiral:‸\n', ':')).toBe(
      'formula A:\n  salt 2%\nmix in big spiral:\n',
    );
  });

  it('any other colon does nothing', () => {
    for (const text of [
      'formula A:\n    salt:‸ 2%\n',
      'plan A:\n   ready 06:‸\n',
      'formula A:\n   salt   2% # why:‸\n',
      'formula A:\n   process:‸ bulk 1 h\n',
    ])
      expect(typed(text, ':'), text).toBe(text.replace('‸', ''));
  });
});

describe('columns', () => {
  it('are counted as a fixed-width font draws them', () => {
    expect(['salt', 'crème', 'cre\u0300me', '強力粉', '🍞', ''].map(columnsOf)).toEqual([4, 5, 5, 6, 2, 0]);
  });
});
