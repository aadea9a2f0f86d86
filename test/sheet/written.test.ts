import { join } from 'node:path';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import {
  type AskedWords,
  askedFromWords,
  createService,
  type SheetDocument,
  type SheetFormat,
  type SheetOptions,
  type SheetOrigin,
  writeSheets,
} from '../../core/index.ts';
import { type Asked, answersOf, readQuestions } from '../features/archive.ts';
import { updating } from '../updating.ts';
import { exampleSheet } from './example-sheet.ts';
import { partsOf } from './parts.ts';

const origin: SheetOrigin = {
  file: 'quay-lane/tin.dough',
  commit: '8eaa6f2d',
  changed: true,
  date: '2026-03-14',
};

// Every case of test/fixtures/written; `UPDATE=1` writes the answers anew.
for (const file of readQuestions(join(import.meta.dirname, '..', 'fixtures', 'written'))) {
  const told = answersOf(file, answer);
  describe(file.name, () => {
    file.cases.forEach((one, index) => {
      it(one.title, () => {
        expect(one.questions.length).toBeGreaterThan(0);
        const expected = updating ? told[index] : one.questions.map((question) => question.answer);
        expect(told[index]).toEqual(expected);
      });
    });
  });
}

function answer(words: string, { service, uri, line }: Asked): string {
  const [, format, tries] = /^(\w+)(?: for (.+))?$/.exec(words) ?? [];
  const view = service.sheet(uri, line, askedOf(tries));
  if (view === undefined) return 'nothing';
  const text = writeSheets([{ view: withoutCharts(view), origin }], format as SheetFormat);
  if (format === 'csv') return text.replaceAll('\r\n', '\n');
  return format === 'html' ? text.replace(/<style>.*<\/style>/, '<style>').replaceAll('><', '>\n<') : text;
}

function withoutCharts(sheet: SheetDocument): SheetDocument {
  return { ...sheet, sections: sheet.sections.filter(({ kind }) => kind !== 'chart') };
}

function askedOf(tries: string | undefined): SheetOptions {
  const pairs = (tries?.split(', ') ?? []).map((one) => {
    const at = one.indexOf(' ');
    return [one.slice(0, at), one.slice(at + 1)];
  });
  const read = askedFromWords(Object.fromEntries(pairs) as AskedWords);
  if ('cure' in read) throw new Error(read.cure.code);
  return read.asked;
}

const evil = '<img src=x onerror=alert(1)>';

function evilView(): SheetDocument {
  const service = createService();
  const uri = 'file:///quay-lane/evil.dough';
  service.setText(
    uri,
    `formula ${evil}:\n  yield 4 kg\n  bread flour  100%\n  "</style><b>"  50%\n  "=x & 'y' | z"  5%\n  water  60%\n  salt  2%\n\nprocess:\n  </style><script> 5 min\n`,
  );
  return service.sheet(uri, 0, {})!;
}

describe('a text of a file', () => {
  it('never becomes markup, in the page, its title and its style', () => {
    const view = evilView();
    expect(view.formula).toBe(evil);
    const html = writeSheets([{ view, origin: { file: '</style><script>alert(1)</script>.dough' } }], 'html');
    expect(html).toContain(`>${evil.replace('<', '&lt;').replace('>', '&gt;')}</h1>`);
    expect(html).not.toMatch(/<img|<script|<b>|\son\w+=(?!alert\(1\)&gt;)/);
    expect(html.match(/<style>/g)).toHaveLength(1);
    expect(html.match(/<\/style>/g)).toHaveLength(1);
  });

  it('never becomes markup in Markdown, nor ends its cell', () => {
    const md = writeSheets([{ view: evilView(), origin }], 'md');
    expect(md).toContain('# \\<img src=x onerror=alert(1)\\>\n');
    const rows = md.split('\n').filter((line) => line.startsWith('| \\[ \\] |'));
    const cells = rows.map((row) => row.split(/(?<!\\)\|/).length);
    expect(rows.length).toBeGreaterThan(3);
    expect(md).not.toMatch(/(?<!\\)<\w/);
    expect(new Set(cells.slice(0, 4)).size).toBe(1);
  });

  it('is no formula to a spreadsheet', () => {
    const view: SheetDocument = { ...evilView(), formula: '=1+1' };
    const { data } = Papa.parse<string[]>(writeSheets([{ view, origin }], 'csv').trimEnd());
    expect(data[1]![0]).toBe("'=1+1");
    expect(writeSheets([{ view, origin }], 'tabbed').split('\n')[1]).toMatch(/^'=1\+1\t/);
  });
});

describe('CSV', () => {
  it('is read back by a parser of others: one table, every weight of the view in grams', () => {
    const views = [evilView(), exampleSheet()];
    const csv = writeSheets(
      views.map((view) => ({ view, origin })),
      'csv',
    );
    expect(csv.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    const { data, errors, meta } = Papa.parse<Record<string, string>>(csv.trimEnd(), { header: true });
    expect(errors).toEqual([]);
    expect(meta.linebreak).toBe('\r\n');
    const read = data
      .filter(({ grams }) => grams !== '')
      .map((row) => [row.formula, row.name!.replace(/^'(?==)/, ''), Number(row.grams)]);
    const meant = views.flatMap((view) =>
      partsOf(view).blocks.flatMap(({ rows }) =>
        rows.flatMap(({ name, weigh }) =>
          weigh === undefined ? [] : [[view.formula, name, Number(weigh.grams.toFixed(3))]],
        ),
      ),
    );
    expect(meant.length).toBeGreaterThan(8);
    expect(read).toEqual(meant);
  });

  it('is the same with tabs for the clipboard, without empty columns', () => {
    const view = exampleSheet();
    const [head, ...lines] = writeSheets([{ view, origin }], 'tabbed').trimEnd().split('\n');
    expect(head!.split('\t')).not.toContain('in all');
    for (const line of lines) expect(line.split('\t')).toHaveLength(head!.split('\t').length);
    const weigh = head!.split('\t').indexOf('weigh');
    const [first] = partsOf(view).blocks[0]!.rows;
    const line = lines.find((one) => one.split('\t').includes(first!.name))!;
    expect(line.split('\t')[weigh]).toBe(first!.weigh!.figure);
  });
});

describe('JSON', () => {
  it('is the document, its lines counted from one, its file named', () => {
    const view = exampleSheet();
    const [read] = JSON.parse(writeSheets([{ view, origin }], 'json'));
    const { file, commit, changed, ...rest } = read;
    expect({ file, commit, changed }).toEqual({ file: origin.file, commit: '8eaa6f2d', changed: true });
    const fromZero = JSON.parse(JSON.stringify(rest), (key, value) => (key === 'line' ? value - 1 : value));
    const { uri: _, labels: _labels, ...meant } = view;
    expect(fromZero).toEqual(JSON.parse(JSON.stringify(meant)));
  });
});

describe('charts', () => {
  it('stand on the page wide, with their words, and no name stands twice on a page of several sheets', () => {
    const view = exampleSheet();
    const html = writeSheets(
      [
        { view, origin },
        { view, origin },
      ],
      'html',
    );
    const { charts } = partsOf(view);
    expect(charts.length).toBeGreaterThan(0);
    expect(html.match(/<svg [^>]*role="img"/g)).toHaveLength(2 * charts.length);
    for (const { title, description } of charts) {
      expect(html).toContain(title);
      expect(html).toContain(description);
    }
    const ids = [...html.matchAll(/(?<![-\w])id="([^"]+)"/g)].map((match) => match[1]!);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, id] of html.matchAll(/url\(#([^)]+)\)/g)) expect(ids).toContain(id);
    for (const [, named] of html.matchAll(/aria-(?:labelled|described)by="([^"]+)"/g))
      for (const id of named!.split(' ')) expect(ids).toContain(id);
  });
});
