import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { createService, type FormulaTotals } from '../../core/index.ts';
import { parseFile } from '../../core/syntax/file.ts';
import { formatted } from '../syntax/formatted.ts';
import { exampleFiles } from '../syntax/texts.ts';
import { guideFolders } from '../tidy/canonical-pages.ts';
import { updating } from '../updating.ts';

const root = join(import.meta.dirname, '..', '..');
const snapshot = join(root, 'test', 'fixtures', 'features', 'example-totals.json');

/** Problems of wording in a text, as `line: code`, lines counted from one. */
function problemsIn(text: string): string[] {
  const file = parseFile(text);
  const ofLines = file.lines.flatMap((line, index) =>
    line.problems.map((one) => `${index + 1}: ${one.code}`),
  );
  const ofBlocks = file.blocks.flatMap(({ block, firstLine }) =>
    block.problems.map((one) => `${firstLine + one.line + 1}: ${one.code}`),
  );
  return [...ofLines, ...ofBlocks];
}

function bakery() {
  const service = createService();
  service.setRoots(['file:///quay-lane/']);
  for (const { path, text } of exampleFiles()) service.setText(`file:///quay-lane/${path}`, text);
  return service;
}

describe('the examples', () => {
  it.each(exampleFiles())('$path reads without a problem', ({ text }) => {
    expect(problemsIn(text)).toEqual([]);
  });

  it.each(exampleFiles())('$path is in the canonical form', ({ text }) => expect(formatted(text)).toBe(text));

  it('hold six formulas, four doughs of an experiment, a bakery, flours, mixers and a plan, each formula with a trial, a mix and a process', () => {
    const kinds = exampleFiles().flatMap(({ text }) => parseFile(text).blocks.map(({ block }) => block));
    const count = (kind: string): number => kinds.filter((block) => block.top?.kind === kind).length;
    expect(count('formula')).toBe(10);
    expect([count('bakery'), count('plan'), count('experiment')]).toEqual([1, 1, 1]);
    expect(count('flour')).toBeGreaterThanOrEqual(3);
    expect(count('mixer')).toBeGreaterThanOrEqual(2);
    for (const block of kinds.filter((one) => one.top?.kind === 'formula')) {
      // A variant has from its base what it does not say, but for trials.
      if (block.top?.header.base !== undefined) continue;
      const subs = new Set(block.subs.map((section) => section.kind));
      expect([...subs], block.top!.header.name!.text).toEqual(
        expect.arrayContaining(['mix', 'process', 'trial']),
      );
    }
  });

  it('are worked out: every formula is resolved and its weights are known', () => {
    const service = bakery();
    const totals = service.uris().flatMap((uri) => service.totals(uri));
    for (const one of totals) {
      expect(one.resolved, one.formula).toBe(true);
      for (const line of one.overall) expect(line.grams, `${one.formula}: ${line.name}`).toBeGreaterThan(0);
    }
  });

  it('agree with themselves: lines sum to the dough, flour to 100 %, and water to the hydration', () => {
    const service = bakery();
    for (const one of service.uris().flatMap((uri) => service.totals(uri))) {
      const sum = (lines: FormulaTotals['overall']): number =>
        lines.reduce((all, line) => all + (line.grams ?? 0), 0);
      expect(sum(one.overall), one.formula).toBeCloseTo(one.doughGrams!, 3);
      const flour = sum(one.overall.filter((line) => line.role === 'flour'));
      expect(flour, one.formula).toBeCloseTo(one.flourGrams!, 3);
      const water = sum(one.overall.filter((line) => line.role === 'water'));
      expect(water / flour, one.formula).toBeCloseTo(one.hydration!, 6);
    }
  });

  it('hold their totals: the figures kept beside the fixtures', () => {
    const service = bakery();
    const told = service
      .uris()
      .flatMap((uri) => service.totals(uri))
      .map((totals) => rounded(Object.fromEntries(held.map((key) => [key, totals[key]]))))
      .map((one) => JSON.parse(JSON.stringify(one).replaceAll('file:///quay-lane/', '')) as unknown);
    if (updating) writeFileSync(snapshot, `${JSON.stringify(told, null, 2)}\n`);
    expect(told).toEqual(JSON.parse(readFileSync(snapshot, 'utf8')));
  });
});

/** What the formulas come to; how they mix, what they cost and what is found in them is tested elsewhere. */
const held = [
  ...([
    'file',
    'formula',
    'resolved',
    'flourGrams',
    'doughGrams',
    'bakedGrams',
    'pieces',
    'pieceGrams',
  ] as const),
  ...(['hydration', 'effectiveHydration', 'prefermentedFlour', 'overall', 'parts'] as const),
];

/** Numbers to eight digits, so that the last bit of a sum may differ from machine to machine. */
function rounded(value: unknown): unknown {
  if (typeof value === 'number') return Number(value.toPrecision(8));
  if (Array.isArray(value)) return value.map(rounded);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, rounded(one)]));
}

describe.each(guideFolders)('the language guide in %s', (guide) => {
  const folder = join(root, guide);
  const pages = readdirSync(folder).filter((name) => name.endsWith('.md'));
  const blocks = pages.flatMap((page) => {
    const text = readFileSync(join(folder, page), 'utf8');
    return [...text.matchAll(/^```dough\n([\s\S]*?)^```$/gm)].map((match, index) => ({
      where: `${page}, block ${index + 1}`,
      text: match[1]!,
    }));
  });

  it('has examples', () => expect(blocks.length).toBeGreaterThan(8));

  it.each(blocks)('$where reads without a problem', ({ text }) => {
    expect(problemsIn(text)).toEqual([]);
  });

  it.each(blocks)('$where is in the canonical form', ({ text }) => expect(formatted(text)).toBe(text));
});
