import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createService, type Service } from '../../core/index.ts';
import { edited, editsOf } from '../actions/apply.ts';
import { kitchen, seeded } from '../kitchens/kitchens.ts';
import { exampleFiles } from '../syntax/texts.ts';

// A variant is no more and no less than the formula written out in full: no figure may tell the two apart.

const uri = 'file:///quay-lane/formulas/variant.dough';

function serviceWith(text: string): Service {
  const service = createService();
  service.setRoots(['file:///quay-lane/']);
  for (const { path, text: example } of exampleFiles())
    if (!path.includes('formulas/')) service.setText(`file:///quay-lane/${path}`, example);
  service.setText(uri, text);
  return service;
}

const variantName = 'The Variant';

/** The header of the variant of a text, counted in its lines. */
const headerOf = (text: string): number =>
  text.split('\n').findIndex((line) => line.startsWith(`formula ${variantName}`));

/** All that is computed of the variant, without its lines and without what is found, which stands at other places. */
function computedOf(text: string): unknown {
  const service = serviceWith(text);
  const totals = service.totals(uri).find(({ formula }) => formula === variantName);
  expect(totals).toBeDefined();
  const { findings, ...rest } = totals!;
  return JSON.parse(
    JSON.stringify(rest, (key, value: unknown) => (key === 'line' || key === 'resolved' ? undefined : value)),
  );
}

function writtenOutText(text: string): string {
  const service = serviceWith(text);
  const line = headerOf(text);
  const range = { line, start: 0, endLine: line, end: 0 };
  const edits = service.actionEdits(uri, range, 'write-variant-out', undefined);
  expect(edits, text).toBeDefined();
  return edited(text, editsOf(edits, uri));
}

/** A variant of the last formula of a text that changes, drops and adds at random. */
function withVariant(base: string, seed: number): string | undefined {
  const random = seeded(seed);
  const one = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const lines = base.split('\n');
  const from = lines.findLastIndex((line) => line.startsWith('formula '));
  if (from < 0) return undefined;
  const name = lines[from]!.replace(/^formula\s+/, '').replace(/:.*$/, '');
  const end = lines.findIndex((line, at) => at > from && line.trim() === '');
  const own = lines.slice(from + 1, end < 0 ? undefined : end).map((line) => line.replace(/\s#.*$/, ''));
  const said: string[] = [];
  for (const line of own) {
    const percent = /^(\s*\p{L}.*\s)([\d.]+)%(.*)$/u.exec(line);
    const chance = random();
    if (percent !== null && chance < 0.3)
      said.push(
        `${percent[1]}${(Number(percent[2]) * (0.8 + 0.4 * random())).toFixed(1)}%${chance < 0.15 ? '' : percent[3]}`,
      );
    else if (percent !== null && chance < 0.4 && !/flour|wheat|rye|water|loss/.test(line))
      said.push(`  without ${percent[1]!.trim()}`);
  }
  if (random() < 0.4)
    said.push(`  ${one(['olive oil  2%', 'sunflower seeds  6%', 'honey  1.5%', 'yield 7 kg'])}`);
  const more = one([
    '',
    '',
    '\nmix by hand:\n  load all\n  knead 11 min\n',
    '\nmix in spiral:\n  load all\n  speed 1 for 3 min\n  speed 2 for 9 min\n',
    '\nprocess:\n  bulk 2 h at 24 °C, fold at 60 min\n  divide\n  proof 50 min at 27 °C\n  bake 25 min at 220 °C\n',
    '\nsoaker seed soaker:\n  linseed  100%\n  water  100%\n',
  ]);
  return `${base.trimEnd()}\n\nformula ${variantName} like ${name}:\n${said.join('\n')}\n${more}`;
}

const bases = [
  ...exampleFiles()
    .filter(({ path }) => path.includes('formulas/'))
    .map(({ text }) => text),
  ...Array.from({ length: 30 }, (_, seed) => kitchen(seed, 'plausible')),
];

describe('a variant and the same written out in full', () => {
  it.each(bases.map((base, index) => ({ base, index })))('base $index: every figure', ({ base, index }) => {
    for (let turn = 0; turn < 4; turn++) {
      const text = withVariant(base, index * 31 + turn);
      if (text === undefined) return;
      const out = writtenOutText(text);
      expect(out).not.toContain(' like ');
      expect(computedOf(out), text).toEqual(computedOf(text));
    }
  });

  it('finds nothing that the formula written out would not have, and marks only its own lines', () => {
    for (const [index, base] of bases.entries()) {
      const text = withVariant(base, index * 17 + 3);
      if (text === undefined) continue;
      const header = headerOf(text);
      const inVariant = serviceWith(text)
        .findings(uri)
        .filter(({ place }) => place.line >= header);
      const out = writtenOutText(text);
      const inFull = new Set(
        serviceWith(out)
          .findings(uri)
          .filter(({ place }) => place.line >= headerOf(out))
          .map(({ code }) => code),
      );
      for (const one of inVariant) {
        expect(
          inFull.has(one.code) || one.code === 'not-in-base',
          `${one.code}: ${one.message}\n${text}`,
        ).toBe(true);
        expect(one.place.line).toBeLessThan(text.split('\n').length);
      }
    }
  });

  it('drops what it is without from a load, and leaves portion and temperature of what stays', () => {
    const dough = 'bread flour  100%\n  water  70%\n  salt  2%\n  instant yeast  0.7%\n';
    const rest = '  speed 1 for 4 min\n  add remaining water at 30 °C, salt\n  speed 2 for 4 min\n';
    const whole = (name: string, oil: string, load: string): string =>
      `formula ${name}:\n  yield 20 kg\n  ${dough}${oil}\nmix in spiral:\n  load ${load}\n${rest}\n`;
    const base = whole('The Base', '  oil  3%\n', 'all flour, water 55% at 8 °C, oil, instant yeast');
    const variant = `${base}formula ${variantName} like The Base:\n  without oil\n`;
    const inFull = whole(variantName, '', 'all flour, water 55% at 8 °C, instant yeast');
    expect(computedOf(variant)).toEqual(computedOf(inFull));
    expect(writtenOutText(variant)).toContain('load all flour, water 55% at 8 °C, instant yeast\n');
  });

  it('keeps the temperature of an ingredient whose amount alone it says, along a chain of bases', () => {
    const chain = (water: string, ...variants: readonly string[]): string =>
      [
        `formula A:\n  yield 3 kg\n  bread flour  100%\n  water  ${water}\n  salt  2%\n  butter  4%, at 18 °C\n`,
        ...variants,
      ].join('\n');
    const between = 'formula B like A:\n  butter  6%\n';
    const kept = chain(
      '65%, at 46.4 °F',
      between,
      `formula ${variantName} like B:\n  water  75%  # wetter\n`,
    );
    const out = writtenOutText(kept);
    expect(out).toContain('  water  75%, at 8 °C  # wetter\n');
    expect(out.slice(out.indexOf(variantName))).toContain('  butter  6%, at 18 °C\n');
    expect(computedOf(kept)).toEqual(computedOf(out));
    const own = chain('65%, at 8 °C', between, `formula ${variantName} like B:\n  water  75%, at 20 °C\n`);
    expect(writtenOutText(own)).toContain('  water  75%, at 20 °C\n');
    const twice = chain('40%, at 8 °C\n  water  25%', `formula ${variantName} like A:\n  water  75%\n`);
    expect(writtenOutText(twice)).toContain('  water  75%\n');
  });

  it('is what a copy becomes, where most lines are the same', () => {
    let made = 0;
    for (const [index, base] of bases.entries()) {
      const text = withVariant(base, index * 13 + 5);
      if (text === undefined) continue;
      const out = writtenOutText(text);
      const service = serviceWith(out);
      const line = headerOf(out);
      const range = { line, start: 0, endLine: line, end: 0 };
      const edits = service.actionEdits(uri, range, 'make-variant', undefined);
      if (edits === undefined) continue;
      made++;
      const again = edited(out, editsOf(edits, uri));
      expect(again).toContain(' like ');
      expect(computedOf(again), out).toEqual(computedOf(out));
    }
    expect(made).toBeGreaterThan(10);
  });

  it('takes no line twice and loses none, however the chain goes', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom('water', 'salt', 'butter', 'sugar', 'milk'), { maxLength: 4 }),
        fc.array(fc.constantFrom('water', 'salt', 'butter', 'honey'), { maxLength: 4 }),
        (second, third) => {
          const line = (name: string, index: number): string => `  ${name}  ${index + 3}%`;
          const text = [
            'formula A:\n  yield 3 kg\n  bread flour  100%\n  water  60%\n  salt  2%\n  butter  4%\n',
            `formula B like A:\n${[...new Set(second)].map(line).join('\n')}\n`,
            `formula ${variantName} like B:\n${[...new Set(third)].map(line).join('\n')}\n`,
          ].join('\n');
          const service = serviceWith(text);
          const totals = service.totals(uri).find(({ formula }) => formula === variantName)!;
          const names = totals.overall.map(({ name }) => name).sort();
          const wanted = new Set(['bread flour', 'water', 'salt', 'butter', ...second, ...third]);
          expect(names).toEqual([...wanted].sort());
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('what is tried on the sheet of a variant', () => {
  const text =
    'formula Plain White:\n  yield 12 kg\n  bread flour  100%\n  water  62%\n  salt  2%\n\nmix in spiral:\n  load all\n' +
    '  speed 1 for 4 min\n\ntrial 2026-03-14:\n  at 4 min  22 °C\n\nformula The Variant like Plain White:\n  water  72%\n';
  const header = headerOf(text);

  it.each([
    ['the size', { size: { by: 'dough', grams: 5000 } } as const, '  yield 5 kg'],
    ['the mixer', { today: { mixer: 'by hand' } } as const, 'mix by hand:'],
  ])('%s is kept in the variant alone', (_, asked, written) => {
    const service = serviceWith(text);
    const files = service.panelEdits(uri, header, { kind: 'keep', asked });
    if ('refused' in files) throw new Error(files.refused);
    const after = edited(text, editsOf(files, uri)).split('\n');
    const lines = text.split('\n');
    expect(after.slice(0, header)).toEqual(lines.slice(0, header));
    expect(after.slice(header)).toContain(written);
  });

  it('a reading begins a trial of the variant', () => {
    const service = serviceWith(text);
    const reading = { date: '2026-03-15', minutes: 4, celsius: 22.5 };
    const files = service.panelEdits(uri, header, { kind: 'reading', reading });
    if ('refused' in files) throw new Error(files.refused);
    const after = edited(text, editsOf(files, uri)).split('\n');
    expect(after.slice(0, header + 2)).toEqual(text.split('\n').slice(0, header + 2));
    expect(after.slice(header + 2).join('\n')).toMatch(/trial 2026-03-15:\n {2}mixed in spiral\n/);
  });

  it('stands on lines of the variant alone, and what the base brings leads to its header', () => {
    const service = serviceWith(text);
    const sheet = service.sheet(uri, header, {})!;
    const lines: number[] = [];
    JSON.stringify(sheet, (key, value: unknown) => {
      if (key === 'line' && typeof value === 'number') lines.push(value);
      return value;
    });
    expect(lines.length).toBeGreaterThan(5);
    for (const line of lines) expect([header, header + 1]).toContain(line);
    expect(lines).toContain(header + 1);
  });
});
