import { describe, expect, it } from 'vitest';
import { type SheetDocument, writeSheets } from '../../core/index.ts';
import { nodesOf } from '../../core/sheet/build/found-at-nodes.ts';
import type { SheetFinding } from '../../core/sheet/build/sheet-document.ts';
import {
  findingAtNothing,
  findingAtPhase,
  findingAtStep,
  findingAtWater,
  harbourTin,
} from '../client/sheets.ts';
import { exampleSheets, fixtureSheets } from './all-sheets.ts';
import { placesOf, withFound } from './parts.ts';

const at = (line: number): SheetFinding => ({ line, level: 'warning', code: 'any', message: 'Any.' });

describe('where a finding stands', () => {
  it('is at the row, phase and step of its line, and under the heading where its line shows nowhere', () => {
    const found = withFound(harbourTin, [findingAtWater, findingAtPhase, findingAtStep, findingAtNothing]);
    expect(placesOf(found)).toEqual([
      ['bowl/water', [8]],
      ['mixing/fast', [26]],
      ['clock/proof 55 min at 28 °C', [35]],
      ['heading', [2]],
    ]);
  });

  it.each([
    ['the section of what is weighed', 20, 'bowl'],
    ['the mixing', 19, 'mixing'],
    ['a fact no row stands for', 14, 'facts/prefermented'],
    ['a preferment, for what it says below its rows', 18, 'before/Night poolish'],
    ['the heading, for the header of the steps', 30, 'heading'],
    ['the heading, for the line of the formula itself', 0, 'heading'],
  ])('is %s', (_, line, place) => {
    expect(placesOf(withFound(harbourTin, [at(line)]))).toEqual([[place, [line]]]);
  });

  it('is the answer at the head that says it already, and the line where that answer is a good one', () => {
    const warm: SheetFinding = { ...at(28), code: 'too-warm' };
    const past: SheetFinding = { ...at(28), code: 'let-down' };
    // The temperature of the sheet is as wanted, its state is not.
    expect(placesOf(withFound(harbourTin, [warm, past]))).toEqual([
      ['glance/state', [28]],
      ['mixing/slow 3', [28]],
    ]);
    // A preferment has a mixing of its own.
    expect(placesOf(withFound(harbourTin, [{ ...past, line: 18 }]))).toEqual([
      ['before/Night poolish', [18]],
    ]);
  });

  it('is one place only, though the line shows at several', () => {
    // The salt of line 9 is a row and a fact.
    expect(placesOf(withFound(harbourTin, [at(9), at(9)]))).toEqual([['later/After the rest/salt', [9, 9]]]);
  });
});

describe('every sheet of the examples and the fixtures', () => {
  const sheets: readonly SheetDocument[] = [...exampleSheets(), ...fixtureSheets()];

  it('has nodes whose names are their own', () => {
    expect(sheets.length).toBeGreaterThan(20);
    for (const { sections, formula } of sheets) {
      const ids = sections.flatMap(nodesOf).map(({ id }) => id);
      expect(new Set(ids).size, formula).toBe(ids.length);
    }
  });

  it('loses no finding, whatever its line, and has each once', () => {
    for (const sheet of sheets) {
      const lines = Array.from({ length: 60 }, (_, index) => sheet.line + index);
      const told = placesOf(withFound(sheet, lines.map(at))).flatMap(([, all]) => all);
      expect(told.sort((one, other) => one - other)).toEqual(lines);
    }
  });

  it('tells on the page what was found at the node it stands at, and in text below its name', () => {
    for (const sheet of sheets) {
      const lines = Array.from({ length: 60 }, (_, index) => sheet.line + index);
      const found = withFound(
        sheet,
        lines.map((line) => ({ ...at(line), message: `Found on line ${line} here.` })),
      );
      const write = (format: 'html' | 'text') =>
        writeSheets([{ view: found, origin: { file: 'a.dough' } }], format);
      const [page, text] = [write('html'), write('text')];
      expect(placesOnPage(page)).toEqual(
        new Map(placesOf(found).flatMap(([id, all]) => all.map((line) => [line, id]))),
      );
      for (const line of lines) expect(text.split(`Found on line ${line} here.`)).toHaveLength(2);
    }
  });
});

/** Which element with a `data-id` is nearest around or before each sentence of a page; the heading where none is. */
function placesOnPage(html: string): Map<number, string> {
  const places = new Map<number, string>();
  const open: (string | undefined)[] = [];
  for (const [, close, tag, attributes, line] of html.matchAll(
    /<(\/?)([a-z][a-z0-9]*)([^>]*)>|Found on line (\d+) here/g,
  )) {
    if (line !== undefined) places.set(Number(line), open.findLast((id) => id !== undefined) ?? 'heading');
    else if (close === '/') open.pop();
    else if (!['meta', 'br', 'col', 'hr'].includes(tag!) && !attributes!.endsWith('/'))
      open.push(plain(/ data-id="([^"]*)"/.exec(attributes!)?.[1]));
  }
  return places;
}

function plain(escaped: string | undefined): string | undefined {
  const signs = { lt: '<', gt: '>', quot: '"', '#39': "'", amp: '&' } as const;
  return escaped?.replace(/&(lt|gt|quot|#39|amp);/g, (_, name: keyof typeof signs) => signs[name]);
}
