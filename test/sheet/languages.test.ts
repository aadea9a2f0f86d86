import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  createService,
  type LanguageTag,
  type PlanView,
  planPage,
  type SheetDocument,
  type SheetFormat,
  writeSheets,
} from '../../core/index.ts';
import type { Speaker } from '../../core/words/speaker.ts';
import { wordedIn } from '../../server/sync/language.ts';
import { layoutFaults } from './drawings.ts';
import { partsOf } from './parts.ts';

const folder = join(import.meta.dirname, '..', '..', 'examples');

interface Made {
  readonly sheets: readonly SheetDocument[];
  readonly plans: readonly PlanView[];
  readonly speaker: Speaker;
}

/** Every sheet and plan of the examples in a language: as in the file, and for a warm day by the clock in several batches. */
async function made(tag: LanguageTag): Promise<Made> {
  const service = createService();
  service.setSettings(await wordedIn(tag));
  for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' }))
    if (name.endsWith('.dough'))
      service.setText(`file:///quay-lane/${name}`, readFileSync(join(folder, name), 'utf8'));
  service.setRoots(['file:///quay-lane/']);
  const day = {
    size: { by: 'flour', grams: 120_000 },
    today: { roomCelsius: 28, flourCelsius: 90 },
    clock: { by: 'ready', minutes: 390 },
  } as const;
  return {
    sheets: service
      .overview()
      .filter(({ kind }) => kind === 'formula')
      .flatMap(({ uri, line }) => [{}, day].flatMap((asked) => service.sheet(uri, line, asked) ?? [])),
    plans: service.uris().flatMap((uri) => service.plans(uri)),
    speaker: service.speaker(),
  };
}

/** All texts of a view but its drawings, each with where it stands. */
function textsOf(data: unknown, at = ''): [at: string, text: string][] {
  if (typeof data === 'string') return [[at, data]];
  if (typeof data !== 'object' || data === null) return [];
  return Object.entries(data).flatMap(([key, value]) =>
    ['narrow', 'middle', 'wide', 'labels'].includes(key) ? [] : textsOf(value, `${at}/${key}`),
  );
}

/** The figures of a text in whatever order, with a point or a comma. */
const figuresOf = (text: string): string[] =>
  text
    .replace(/(?<=\d),(?=\d)/g, '.')
    .match(/\d+(?:\.\d+)?/g)
    ?.sort() ?? [];

describe('sheets and plans in another language', async () => {
  const [english, german] = await Promise.all([made('en'), made('de')]);

  it('have the same figures at the same places', () => {
    const [before, after] = [english, german].map(({ sheets, plans }) => textsOf({ sheets, plans }));
    expect(after!.map(([at]) => at)).toEqual(before!.map(([at]) => at));
    expect(before!.length).toBeGreaterThan(1000);
    for (const [index, [at, text]] of before!.entries())
      expect(figuresOf(after![index]![1]), `${at}: ${text}`).toEqual(figuresOf(text));
  });

  it('hold no English but what stands in the files', () => {
    const small = [
      'the',
      'and',
      'is',
      'with',
      'before',
      'after',
      'not',
      'this',
      'known',
      'from',
      'or',
      'each',
    ];
    const left = textsOf(german).filter(([at, text]) => {
      if (/uri$|code$|key$|kind$|source$|by$|state$|level$|\/id$|\/name$|\/of$/.test(at)) return false;
      // A step of one of the files.
      const words = text.replace('brush with milk', '').match(/[\p{L}]+/gu) ?? [];
      return words.some((word) => small.includes(word));
    });
    expect(left).toEqual([]);
  });

  it('are written in it in every format', () => {
    const origin = { file: 'a.dough', commit: '8eaa6f2d', changed: true };
    const write = ({ sheets, speaker }: Made, format: SheetFormat): string =>
      writeSheets(
        sheets.map((view) => ({ view, origin })),
        format,
        speaker,
      );
    for (const format of ['text', 'md', 'csv', 'html', 'tabbed'] as const) {
      const text = write(german, format);
      expect(text, format).toContain('Kneten');
      expect(text, format).not.toMatch(/Mixing|Ingredient|Scale reads|Yield and losses|Cautions|Batch Sheet/);
    }
    expect(write(german, 'html')).toContain('<html lang="de">');
    const keys = (json: string): string[] => [...json.matchAll(/"(\w+)":/g)].map(([, key]) => key!);
    expect(keys(write(german, 'json'))).toEqual(keys(write(english, 'json')));
    const pages = german.plans.map((view) => planPage(view, german.speaker));
    expect(pages.length).toBeGreaterThan(0);
    for (const { tables } of pages)
      expect(tables[0]!.columns.map(({ name }) => name)).toEqual(['Wann', 'Arbeit']);
  });

  it('have words in their charts that stand on no others', () => {
    const faults = german.sheets.flatMap((sheet) =>
      partsOf(sheet).charts.flatMap(({ name, narrow, wide }) =>
        [narrow, wide].flatMap(layoutFaults).map((fault) => `${sheet.formula}, ${name}: ${fault}`),
      ),
    );
    expect(faults).toEqual([]);
  });
});
