import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  createService,
  defaultSettings,
  rules,
  type Service,
  type SheetOptions,
  type SizeRequest,
} from '../../core/index.ts';
import { failed } from '../rules/failed.ts';
import { exampleFiles, mixedLines, wildText } from '../syntax/texts.ts';

const uri = 'file:///quay-lane/breads/a.dough';

function serviceOf(text: string): Service {
  const service = createService({ failed });
  service.setRoots(['file:///quay-lane/']);
  service.setText(uri, text);
  return service;
}

const sizes: readonly SizeRequest[] = [
  { by: 'file' },
  { by: 'pieces', pieces: 7 },
  { by: 'pieces', pieces: 0 },
  { by: 'dough', grams: 1234.5 },
  { by: 'flour', grams: -1 },
  { by: 'baked', grams: 900 },
  { by: 'bowl', batches: 2 },
  { by: 'onHand', ingredient: 'water', grams: 300 },
];

const triedToday: SheetOptions = {
  today: { roomCelsius: 31, flourCelsius: 25, tapCelsius: 22, scaleStepGrams: 0.1, mixer: 'planetary' },
  clock: { by: 'ready', minutes: 6 * 60 },
};

/** Every answer that leaves the service for a text, at a place. */
function everything(service: Service, line: number, column: number): unknown[] {
  return [
    service.findings(uri),
    service.hover(uri, line, column),
    service.completions(uri, line, column),
    service.hints(uri, 0, line),
    service.symbols(uri),
    service.folds(uri),
    service.status(uri, line),
    service.totals(uri),
    ...sizes.map((size) => service.sheet(uri, line, { size })),
    service.sheet(uri, line, triedToday, 'A'),
    [...service.affectedSince(service.snapshot)],
    service.uris(),
  ];
}

/** Plain data: it goes through a message and comes out the same; no number in it is none. */
function expectPlain(answers: readonly unknown[]): void {
  for (const answer of answers) {
    if (answer === undefined) continue;
    expect(structuredClone(answer)).toEqual(answer);
    expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
  }
}

function expectPlacesInside(service: Service, text: string): void {
  const lines = text.split(/\r\n|\r|\n/);
  const inside = (line: number, ...columns: number[]): void => {
    const length = lines[line]?.length ?? -1;
    if (columns.some((column) => column < 0 || column > length))
      throw new Error(`${line}:${columns} is outside`);
  };
  const perLine = new Map<number, number>();
  for (const finding of service.findings(uri)) {
    inside(finding.place.line, finding.place.start, finding.place.end);
    if (written.has(finding.code))
      perLine.set(finding.place.line, (perLine.get(finding.place.line) ?? 0) + 1);
    for (const fix of finding.fixes)
      for (const { edits } of fix.edits)
        for (const edit of edits) {
          inside(edit.line, edit.start);
          inside(edit.endLine ?? edit.line, edit.end);
        }
  }
  for (const [line, count] of perLine)
    if (count > 1) throw new Error(`${count} findings of wording on line ${line}`);
  for (const hint of service.hints(uri, 0, lines.length)) inside(hint.line, hint.column);
  for (const symbol of service.symbols(uri)) {
    inside(symbol.place.line, symbol.place.start, symbol.place.end);
    inside(symbol.lastLine, symbol.lastColumn);
  }
  for (const fold of service.folds(uri)) {
    inside(fold.firstLine, 0);
    inside(fold.lastLine, 0);
  }
}

/** The codes that the reading of lines reports. */
const written = new Set(
  rules
    .filter((rule) => rule.check === undefined && !rule.code.startsWith('accept'))
    .map((rule) => rule.code),
);

const bad: readonly (readonly [string, string])[] = [
  ['an empty file', ''],
  ['blank lines', '\n\n\n'],
  ['only comments', '# one\n# two\n#'],
  ['CRLF', 'formula A:\r\n  bread flour 100%\r\n  water 60%\r\n'],
  ['a BOM', '\uFEFFformula A:\n  bread flour 100%\n  water 60'],
  ['BOMs everywhere', '\uFEFF\uFEFF\n\uFEFFformula\uFEFF A\uFEFF:\n\uFEFF  water\uFEFF 60%'],
  ['tabs', '\tformula\tA:\n\t\tbread flour\t100%\n\t\twater\t60\t%\t'],
  ['emoji', 'formula 🍞:\n  🌾 100%\n  "💧" 60%\n  🧂🧂'],
  ['right to left', 'formula לחם:\n  קמח  100%\n  \u202Bמים\u202C  60%\n'],
  ['a line of a million letters', `formula A:\n  ${'a'.repeat(1_000_000)}  5%\n  water 60%`],
  ['a header of a million letters', `formula ${'a'.repeat(1_000_000)}:\n  water 60%`],
  ['a comment of a million letters', `formula A:\n# ${'a '.repeat(500_000)}\n  bread flour 100%`],
  ['a million blanks', `formula A:\n${' '.repeat(1_000_000)}\n  bread flour 100%`],
  [
    'a line of commas, quotes and parentheses',
    `formula A:\n  ${'(",'.repeat(1300)}\n  ${'('.repeat(3900)}\n  ${')'.repeat(3900)}`,
  ],
  [
    'a line of numbers',
    `formula A:\n  ${'1 000 '.repeat(650)}g\n  ${'1,000,'.repeat(650)}\n  ${'9'.repeat(3900)} g`,
  ],
  ['a list of a thousand loads', `formula A:\n  flour 100%\nmix by hand:\n  load ${'flour, '.repeat(500)}`],
  [
    'bytes of a picture',
    Array.from({ length: 4096 }, (_, index) => String.fromCharCode((index * 7919) % 256)).join(''),
  ],
  [
    'every control character',
    Array.from({ length: 32 }, (_, index) => `formula A:\n  x${String.fromCharCode(index)}y 5%\n`).join(''),
  ],
  ['lone surrogates', 'formula \uD800:\n  \uDFFF\uD800 5%\n  \uD83C 100%\n'],
  [
    'prototype words',
    'formula __proto__:\n  constructor 100%\n  __proto__ 60%\n  toString 2%\n  hasOwnProperty 1%\nmix in valueOf:\n  load constructor\n',
  ],
  [
    'numbers beyond reason',
    'formula A:\n  yield 99999999999999999999999999999999999999 pieces of 99999999999999 kg\n  bread flour 0%\n  water 99999999999999999999999999%\n  salt 0.0000000000000000000000001 mg\n',
  ],
  [
    'nothing at all of everything',
    'formula A:\n  yield 1 piece of 0.0001 mg\n  bread flour 0 g\n  water 0%\n  water to 0% hydration\n',
  ],
];

describe('input that nobody means', () => {
  it.each(bad)('%s: every answer comes, is plain, and points into the text', (_, text) => {
    const service = serviceOf(text);
    const lines = text.split(/\r\n|\r|\n/);
    for (const line of [0, 1, 2, lines.length - 1, lines.length, 1_000_000]) {
      const width = lines[line]?.length ?? 0;
      for (const column of [0, 3, width, width + 10]) expectPlain(everything(service, line, column));
    }
    expectPlacesInside(service, text);
  });

  it('a hundred thousand lines: answers come, and findings are capped', () => {
    const line = '  bred flour 100\n  wrong: 60%\n  yield nothing\n  x\n';
    const service = serviceOf(`formula A:\n${line.repeat(25_000)}`);
    const findings = service.findings(uri);
    expect(findings).toHaveLength(defaultSettings.maxFindings + 1);
    const last = findings[findings.length - 1]!;
    expect(last.code).toBe('more-findings');
    expect(Number(/^(\d+) more/.exec(last.message)?.[1])).toBeGreaterThan(90_000);
    expectPlain([
      findings,
      service.hover(uri, 99_999, 3),
      service.completions(uri, 99_999, 3),
      service.folds(uri),
    ]);
  });

  it('a hundred thousand lines of headers', () => {
    const service = serviceOf(Array.from({ length: 50_000 }, (_, index) => `x${index}:\n`).join('\n'));
    expect(service.findings(uri)).toHaveLength(defaultSettings.maxFindings + 1);
    expect(service.symbols(uri)).toHaveLength(50_000);
  });
});

describe('findings of a file', () => {
  const many = `formula A:\n${'  x\n'.repeat(300)}`;

  it('are 200 at most, and one that counts the rest', () => {
    expect(defaultSettings.maxFindings).toBe(200);
    expect(serviceOf(many).findings(uri)).toHaveLength(201);
  });

  it('as many as is set', () => {
    const service = serviceOf(many);
    service.setSettings({ maxFindings: 5 });
    expect(service.findings(uri)).toHaveLength(6);
    service.setSettings({ maxFindings: 10_000 });
    expect(service.findings(uri).some((one) => one.code === 'more-findings')).toBe(false);
  });

  it('at the levels that are set, at once', () => {
    const service = serviceOf('formula A:\n  bread flour 100%\n  moondust 5%\n');
    const level = () => service.findings(uri).find((one) => one.code === 'unknown-ingredient')?.level;
    expect(level()).toBe(rules.find((one) => one.code === 'unknown-ingredient')!.level);
    service.setSettings({ rules: { 'unknown-ingredient': 'hint' } });
    expect(level()).toBe('hint');
    service.setSettings({ rules: { 'unknown-ingredient': 'off' } });
    expect(level()).toBeUndefined();
  });
});

describe('any text, any place', () => {
  const anyText = fc.oneof(wildText, mixedLines, mixedLines);

  it('never throws, and answers plain data that points into the text', () => {
    fc.assert(
      fc.property(anyText, fc.nat(40), fc.nat(60), (text, line, column) => {
        const service = serviceOf(text);
        expectPlain(everything(service, line, column));
        expectPlacesInside(service, text);
      }),
      { numRuns: 150 },
    );
  });

  it('a size that is no number is the size of the file', () => {
    const service = serviceOf('formula A:\n  yield 2 kg\n  bread flour 100%\n');
    for (const grams of [Number.NaN, Number.POSITIVE_INFINITY, -5, 0])
      expect(service.sheet(uri, 0, { size: { by: 'dough', grams } })?.size.doughGrams).toBe(2000);
  });

  it('survives questions beside the text and of files it does not hold', () => {
    const service = serviceOf('formula A:\n  bread flour 100%\n');
    for (const [line, column] of [
      [-1, 0],
      [0, -5],
      [99, 99],
      [1, 1e9],
    ] as const)
      expectPlain(everything(service, line, column));
    expect(service.findings('file:///nowhere.dough')).toEqual([]);
    expect(service.hover('file:///nowhere.dough', 0, 0)).toBeUndefined();
    expect(service.sheet('file:///nowhere.dough', 0, {})).toBeUndefined();
    expect(() => service.remove('file:///nowhere.dough')).not.toThrow();
    expect(() => service.index('file:///nowhere.dough')).not.toThrow();
  });
});

describe('typing an example into a workspace of examples', () => {
  for (const { path, text } of exampleFiles()) {
    it(path, { timeout: 120_000 }, () => {
      const service = createService();
      service.setRoots(['file:///quay-lane/']);
      for (const one of exampleFiles())
        if (one.path !== path) service.setText(`file:///quay-lane/${one.path}`, one.text);
      for (let end = 0; end <= text.length; end += end % 7 === 0 ? 9 : 5) {
        const prefix = text.slice(0, end);
        service.setText(uri, prefix);
        expectPlacesInside(service, prefix);
        const line = prefix.split('\n').length - 1;
        const column = prefix.length - prefix.lastIndexOf('\n') - 1;
        service.hover(uri, line, column);
        service.completions(uri, line, column);
        service.sheet(uri, line, {});
        if (end % 50 < 5) expectPlain(everything(service, line, column));
      }
    });
  }
});
