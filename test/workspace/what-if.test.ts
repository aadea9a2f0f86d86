import { describe, expect, it } from 'vitest';
import { createService, type Service, type SheetDocument, type SheetOptions } from '../../core/index.ts';
import type { WhatIf } from '../../core/sheet/build/sheet-options.ts';
import { withEdits } from '../../core/text/edits.ts';
import { kitchen, seeded } from '../kitchens/kitchens.ts';
import { exampleFiles } from '../syntax/texts.ts';

const uri = 'file:///quay/tin.dough';
const tin = `formula Harbour Tin:
  yield 20 kg
  bread flour        90%   # from the mill
  wholemeal wheat    10%
  water              65%
  salt               2%

preferment poolish:
  draws 20% of bread flour
  bread flour        100%
  water              100%
  ferment 12 h at 18 °C

mix in spiral:
  load bread flour, wholemeal wheat, water, poolish, salt
  speed 1 for 4 min
  rest 20 min
  speed 2 for 5 min   # watch it

trial 2026-05-02:
  water 14 °C
  at 4 min 22 °C
  end 25 °C
`;

function serviceWith(text: string): Service {
  const service = createService();
  service.setText(uri, text);
  return service;
}

function kept(text: string, asked: SheetOptions): string {
  const service = serviceWith(text);
  const line = text.split('\n').findIndex((one) => one.startsWith('formula'));
  const files = service.panelEdits(uri, line, { kind: 'keep', asked });
  if ('refused' in files) throw new Error(files.refused);
  expect(files.map((one) => one.uri)).toEqual([uri]);
  return withEdits(text, files[0]!.edits);
}

function refused(text: string, whatIf: WhatIf): string {
  const answer = serviceWith(text).panelEdits(uri, 0, { kind: 'keep', asked: { whatIf } });
  if (!('refused' in answer)) throw new Error(JSON.stringify(answer));
  return answer.refused;
}

/** The lines that differ, as they are after. */
function changed(before: string, after: string): string[] {
  const old = before.split('\n');
  return after.split('\n').filter((line, index) => line !== old[index]);
}

describe('what is tried of the formula itself is kept in the file', () => {
  it('the minutes of its programme, and its trials keep what they ran', () => {
    const text = kept(tin, { whatIf: { lines: [{ index: 2, minutes: 7.5 }] } });
    expect(text).toContain('  speed 2 for 7.5 min   # watch it\n');
    expect(text).toContain('trial 2026-05-02:\n  water 14 °C\n  mixed in spiral\n');
    expect(text.match(/speed 2 for 5 min/g)).toHaveLength(1);
    expect(text.slice(0, text.indexOf('mix in'))).toBe(tin.slice(0, tin.indexOf('mix in')));
  });

  it('a rest as well, and nothing where it lasts so long already', () => {
    expect(changed(tin, kept(tin, { whatIf: { lines: [{ index: 1, minutes: 30 }] } }))[0]).toBe(
      '  rest 30 min',
    );
    expect(refused(tin, { lines: [{ index: 1, minutes: 20 }] })).toBe(
      'All of it stands in the file as it is.',
    );
  });

  it('the water of the dough, as its line has it', () => {
    expect(changed(tin, kept(tin, { whatIf: { water: 0.705 } }))).toEqual(['  water              70.5%']);
    const toHydration = tin.replace('65%', 'to 67% hydration');
    expect(changed(toHydration, kept(toHydration, { whatIf: { water: 0.7 } }))).toEqual([
      '  water              to 70% hydration',
    ]);
    const weighed = tin
      .replace('  yield 20 kg\n', '')
      .replace('90%', '9 kg')
      .replace('10% ', '1 kg')
      .replace('10%', '1 kg')
      .replace('65%', '6.5 kg')
      .replace(/2%$/m, '200 g');
    expect(changed(weighed, kept(weighed, { whatIf: { water: 7000 } }))).toEqual([
      '  water              7 kg',
    ]);
  });

  it('another flour wherever it stands, its amounts left in their column', () => {
    const text = kept(tin, { whatIf: { flour: { from: 'bread flour', to: 'very strong flour' } } });
    expect(changed(tin, text)).toEqual([
      '  very strong flour  90%   # from the mill',
      '  draws 20% of very strong flour',
      '  very strong flour  100%',
      '  load very strong flour, wholemeal wheat, water, poolish, salt',
    ]);
  });

  it('all of it at once, with a size and the day', () => {
    const text = kept(tin, {
      whatIf: {
        lines: [{ index: 0, minutes: 3 }],
        water: 0.68,
        flour: { from: 'wholemeal wheat', to: 'spelt 630' },
      },
      size: { by: 'dough', grams: 30_000 },
      today: { roomCelsius: 26 },
    });
    expect(text).toMatch(/^bakery Our Bakery:\n {2}room 26 °C\n\nformula Harbour Tin:\n {2}yield 30 kg\n/);
    expect(text).toContain('  spelt 630          10%\n  water              68%\n');
    expect(text).toContain('  speed 1 for 3 min\n');
    expect(text).toContain(
      '  mixed in spiral\n  load bread flour, wholemeal wheat, water, poolish, salt\n  speed 1 for 4 min\n',
    );
  });

  it('in a variant as lines of its own, and its base stays as it is', () => {
    const both = `${tin}\nformula Wet Tin like Harbour Tin:\n  salt  1.9%\n`;
    const line = both.split('\n').findIndex((one) => one.startsWith('formula Wet'));
    const service = serviceWith(both);
    const asked: SheetOptions = {
      whatIf: { lines: [{ index: 2, minutes: 6 }], water: 0.72 },
      size: { by: 'dough', grams: 25_000 },
    };
    const tried = service.sheet(uri, line, asked);
    const files = service.panelEdits(uri, line, { kind: 'keep', asked });
    if ('refused' in files) throw new Error(files.refused);
    const after = withEdits(both, files[0]!.edits);
    expect(after.startsWith(tin)).toBe(true);
    const variant = after.slice(tin.length);
    expect(variant).toMatch(/^ {2}yield 25 kg$/m);
    expect(variant).toMatch(/^ {2}water +72%$/m);
    expect(variant).toMatch(/mix in spiral:[\s\S]*speed 2 for 6 min/);
    service.setText(uri, after);
    expect(figuresOf(service.sheet(uri, line, {}))).toEqual(figuresOf(tried));
  });

  it('with the line ends of its file', () => {
    const text = kept(tin.replaceAll('\n', '\r\n'), { whatIf: { lines: [{ index: 0, minutes: 3 }] } });
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  it('or not at all, with one sentence that says why', () => {
    expect(refused(tin, { lines: [{ index: 3, minutes: 3 }] })).toMatch(/another line there by now/);
    expect(refused(tin, { lines: [{ index: 0, minutes: 0 }] })).toMatch(
      /^The minutes are left out: 0 are none/,
    );
    expect(refused(tin, { water: -1 })).toMatch(/^The water is left out/);
    expect(refused(tin.replace('water              65%', 'water'), { water: 0.6 })).toMatch(
      /^The water is left out/,
    );
    expect(refused(tin, { flour: { from: 'rye', to: 'spelt 630' } })).toMatch(/no flour “rye”/);
    expect(refused(tin, { flour: { from: 'bread flour', to: 'harbour dust' } })).toMatch(
      /no other flour is called/,
    );
    expect(refused(tin, { flour: { from: 'bread flour', to: 'salt' } })).toMatch(/no other flour is called/);
  });
});

describe('a sheet of what is tried', () => {
  const examples = exampleFiles();

  it.each(examples.flatMap(({ path, text }) => (/^formula /m.test(text) ? [[path, text] as const] : [])))(
    '%s: says what the sheet of the file says once it is kept',
    (path, text) => {
      const file = `file:///quay/${path}`;
      const line = text.split('\n').findIndex((one) => one.startsWith('formula '));
      let count = 0;
      for (let seed = 0; seed < 6; seed++) {
        const service = createService();
        service.setRoots(['file:///quay/']);
        for (const one of examples) service.setText(`file:///quay/${one.path}`, one.text);
        const asked: SheetOptions = { whatIf: someChange(seed) };
        const tried = service.sheet(file, line, asked)!;
        const files = service.panelEdits(file, line, { kind: 'keep', asked });
        if ('refused' in files) continue;
        for (const one of files) service.setText(one.uri, withEdits(text, one.edits));
        expect(figuresOf(service.sheet(file, line, {}))).toEqual(figuresOf(tried));
        expect(tried.tried).toBe(true);
        count++;
      }
      expect(count).toBeGreaterThan(0);
    },
  );

  it('says so in any kitchen, of the mixing as of the weights', () => {
    let count = 0;
    for (let seed = 0; seed < 40; seed++) {
      const text = kitchen(seed, seed % 2 === 0 ? 'plausible' : 'absurd');
      const line = text.split('\n').findIndex((one) => one.startsWith('formula'));
      const service = serviceWith(text);
      const asked: SheetOptions = { whatIf: someChange(seed, true) };
      const tried = service.sheet(uri, line, asked)!;
      const files = service.panelEdits(uri, line, { kind: 'keep', asked });
      if ('refused' in files) continue;
      service.setText(uri, withEdits(text, files[0]!.edits));
      expect(figuresOf(service.sheet(uri, line, {})), `kitchen ${seed}`).toEqual(figuresOf(tried));
      count++;
    }
    expect(count).toBeGreaterThan(25);
  });
});

describe('what is tried beside what the file has', () => {
  const asked: SheetOptions = { whatIf: { lines: [{ index: 2, minutes: 12 }], water: 0.75 } };

  it('is a table of both, each with the figures of its own sheet', () => {
    const service = serviceWith(tin);
    const section = service.sheet(uri, 0, asked)?.sections.find(({ name }) => name === 'before-after');
    if (section?.kind !== 'table') throw new Error('There is no table.');
    const cells = Object.fromEntries(
      section.rows.map(({ id, cells: { inFile, tried } }) => [id, [inFile?.text, tried?.text]]),
    );
    expect(cells['before-after/hydration']).toEqual(['65%', '75%']);
    expect(cells['before-after/minutes']).toEqual(['29 min', '36 min']);
    const [before, after] = [service.totals(uri)[0]!, serviceWith(kept(tin, asked)).totals(uri)[0]!];
    expect(cells['before-after/stage']).toEqual([before.mixing?.stage, after.mixing?.stage]);
    expect(cells['before-after/celsius']?.[1]).toContain(after.mixing!.endCelsius!.toFixed(1));
  });

  it('is not there where nothing of the formula is tried', () => {
    const names = serviceWith(tin)
      .sheet(uri, 0, { size: { by: 'dough', grams: 10_000 } })
      ?.sections.map(({ name }) => name);
    expect(names).not.toContain('before-after');
  });

  it('is on the map as a ring, and trials stay at the water they had', () => {
    const service = serviceWith(tin.replace('  at 4 min 22 °C\n', '  at 4 min 22 °C, clean-up\n'));
    const data = service.map(uri, 0, {})?.data;
    const chart = service
      .sheet(uri, 0, { ...asked, map: {} })
      ?.sections.find(({ name }) => name === 'map-chart');
    if (chart?.kind !== 'chart') throw new Error('There is no map.');
    expect(chart.wide).toContain('class="before"');
    expect(chart.wide).toContain('As in the file: 65%, 29 min');
    expect(data?.trials.map(({ value }) => Math.round(value * 1000))).toEqual([650, 650]);
  });

  it('leaves minutes out, and says so, once the file has others', () => {
    const stale: SheetOptions = { whatIf: { lines: [{ index: 2, minutes: 12, from: 8 }] } };
    const sheet = serviceWith(tin).sheet(uri, 0, stale);
    expect(sheet?.tried).toBe(false);
    expect(sheet?.notDone).toEqual([
      'The minutes are left out: the programme has another line there by now, or other minutes.',
    ]);
  });
});

function someChange(seed: number, flourless = false): WhatIf {
  const random = seeded(seed + 77);
  const minutes = Math.round(random() * 30 + 1) / 2;
  return {
    lines: [{ index: Math.floor(random() * 2), minutes }],
    water: Math.round((0.6 + random() * 0.2) * 1000) / 1000,
    ...(random() < 0.5 || flourless ? {} : { flour: { from: 'strong white', to: 'soft white' } }),
  };
}

/** All that a sheet shows, but for what says that it is tried, where lines stand, and what was measured of the formula as it is written. */
function figuresOf(sheet: SheetDocument | undefined): unknown {
  const left = new Set(['line', 'tried', 'asked', 'source', 'inFile', 'whatIf']);
  const sections = sheet?.sections.filter(({ name }) => name !== 'trial' && name !== 'before-after');
  return JSON.parse(
    JSON.stringify({ ...sheet, sections }, (key, value: unknown) => {
      if (left.has(key)) return undefined;
      if (typeof value === 'number') return Number(value.toPrecision(10));
      if (!Array.isArray(value)) return value;
      return value.filter((one) => one !== 'tried today' && !/^trial/.test(String(one?.code ?? '')));
    }),
  );
}
