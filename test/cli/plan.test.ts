import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folderWith } from '../server/places.ts';
import { doughwright } from './run.ts';

// 20 pieces of 1 kg from 168 %: an oven of 10 pieces makes two batches of 10 kg. Worked backwards by hand from 06:00: cool
// 1 h, bake 40 min, so the oven takes them at 03:40 and 04:20, after 1 h 30 min of bulk and proof and 10 min of mixing.
const files = {
  'bakery.dough': 'bakery Quay Lane:\n  oven 10 pieces\n  currency EUR\n',
  'mixers.dough': 'mixer spiral one:\n  kind spiral\n  bowl 2 kg to 40 kg\n',
  'a.dough': [
    'formula Quay Tin:',
    '  yield 10 pieces of 1 kg',
    '  bread flour  100%',
    '  water  66%',
    '  salt  2%',
    '',
    'preferment poolish:',
    '  draws 20% of flour',
    '  bread flour  100%',
    '  water  100%',
    '  ferment 12 h at 18 °C',
    '',
    'mix in spiral one:',
    '  load flour, water, poolish, salt',
    '  speed 1 for 10 min',
    '',
    'process:',
    '  bulk 1 h',
    '  proof 30 min',
    '  bake 40 min at 230 °C',
    '  cool 1 h',
    '',
  ].join('\n'),
  'plan.dough': 'plan Friday:\n  ready 2026-05-15 06:00\n  Quay Tin  20 pieces\n',
  'late.dough': 'plan Hurry:\n  ready 2026-05-15 06:00\n  begin 03:00\n  Quay Tin  20 pieces\n',
  'wrong.dough': 'plan Odd:\n  Quay Tin  20 pieces\n',
};

describe('doughwright plan', () => {
  it('writes batches, times and stores as JSON', async () => {
    const { path } = folderWith(files);
    const { code, stdout, stderr } = await doughwright(path, 'plan', '--format', 'json', 'plan.dough');
    expect([code, stderr]).toEqual([0, '']);
    const [plan] = JSON.parse(stdout);
    expect(plan).toMatchObject({
      file: 'plan.dough',
      plan: 'Friday',
      ready: '2026-05-15 06:00',
      firstMix: '2026-05-15 02:00',
      firstWork: '2026-05-14 14:00',
    });
    expect(plan.doughs[0]).toMatchObject({ file: 'a.dough', formula: 'Quay Tin', pieces: 20, lines: [3] });
    const batches = plan.doughs[0].batches.map(
      (batch: { pieces: number; mixStart: string; ovenStart: string; ready: string }) => [
        batch.pieces,
        batch.mixStart.slice(11),
        batch.ovenStart.slice(11),
        batch.ready.slice(11),
      ],
    );
    expect(batches).toEqual([
      [10, '02:00', '03:40', '05:20'],
      [10, '02:40', '04:20', '06:00'],
    ]);
    const grams = Object.fromEntries(
      plan.stores.map((store: { name: string; grams: number }) => [store.name, store.grams]),
    );
    // 20 kg of 168 %, so 1 % weighs 119.05 g.
    expect(grams['bread flour']).toBeCloseTo(20_000 / 1.68, 6);
    expect(grams.water).toBeCloseTo((20_000 / 1.68) * 0.66, 6);
    expect(grams.salt).toBeCloseTo((20_000 / 1.68) * 0.02, 6);
  });

  it('says by how long ready is missed', async () => {
    const { path } = folderWith(files);
    const { stdout } = await doughwright(path, 'plan', 'late.dough');
    // Begun at 03:00 the loads go in at 04:40 and 05:20: ready 06:20 and 07:00.
    expect(stdout).toMatch(/late by +1 h$/m);
    expect(stdout).toContain('Quay Tin cannot be ready in time: 1 h late; the oven is taken by other loads.');
    const { stdout: told } = await doughwright(path, 'check', 'late.dough');
    expect(told).toMatch(/late\.dough:4:3: warning: .*1 h too late.*\[not-ready-in-time\]/);
  });

  // Each of 10 pieces, in an oven of 20. Backwards by hand from 06:00: cool 1 h and bake 40 min, so in at 04:20; proof 30 min,
  // shaping 20 min, bulk 1 h and mixing 10 min before, so from 02:20 on. The oven is heated from 03:30 on.
  const formula = (name: string, mixer: string) =>
    `formula ${name}:\n  yield 10 pieces of 1 kg\n  bread flour  100%\n  water  66%\n  salt  2%\nmix in ${mixer}:\n  load all\n` +
    '  speed 1 for 10 min\nprocess:\n  bulk 1 h\n  shape 20 min\n  proof 30 min\n  bake 40 min at 230 °C\n  cool 1 h\n\n';
  const shared = (more: string) => ({
    'bakery.dough': `bakery Quay Lane:\n  oven 20 pieces\n  oven heats 50 min\n  oven changes 15 min\n  shared loads same bake\n`,
    'mixers.dough': 'mixer one:\n  kind spiral\n\nmixer two:\n  kind spiral\n',
    'a.dough': formula('Quay Tin', 'one') + formula('Quay Bun', 'two'),
    'plan.dough': `plan Friday:\n  ready 2026-05-15 06:00\n${more}  Quay Tin  10 pieces\n  Quay Bun  10 pieces\n`,
  });

  it('bakes two doughs in one load for two people, and heats the oven before it', async () => {
    const { path } = folderWith(shared('  people 2\n'));
    const { stdout } = await doughwright(path, 'plan', 'plan.dough');
    expect(stdout).toMatch(/02:20 +mix Quay Tin.*\n.*02:20 +mix Quay Bun/);
    expect(stdout).toMatch(
      /03:30 +heat the oven to 230 °C, 50 min\n.*04:20 +bake Quay Tin, 40 min\n.*04:20 +bake Quay Bun/,
    );
    expect(stdout).toMatch(/hands at once +2, first 2026-05-15 02:20$/m);
    expect(stdout).toContain('One load of the oven, 2026-05-15 04:20: Quay Tin and Quay Bun.');
    const json = await doughwright(path, 'plan', '--format', 'json', 'plan.dough');
    const [plan] = JSON.parse(json.stdout);
    const people = plan.lanes.filter((lane: { kind: string }) => lane.kind === 'person');
    expect(
      people.map((lane: { bars: { name: string; start: string }[] }) =>
        lane.bars.map(({ name, start }) => `${start.slice(11)} ${name}`),
      ),
    ).toEqual([
      ['02:20 Quay Tin: mix', '03:30 Quay Tin: shape'],
      ['02:20 Quay Bun: mix', '03:30 Quay Bun: shape'],
    ]);
  });

  it('has one person do one after the other: 40 min earlier, so that the oven is free again', async () => {
    const { path } = folderWith(shared('  people 1\n'));
    const { stdout } = await doughwright(path, 'plan', 'plan.dough');
    expect(stdout).toMatch(/01:40 +mix Quay/);
    expect(stdout).toMatch(/02:20 +mix Quay/);
    expect(stdout).toMatch(/hands at once +1, first/);
    expect(stdout).not.toContain('One load');
    const late = folderWith(shared('  people 1\n  begin 02:20\n'));
    const told = await doughwright(late.path, 'check', 'plan.dough');
    expect(told.stdout).toContain('too late: all hands are at other work.');
  });

  it('writes Markdown, CSV and HTML, and into a file', async () => {
    const { path } = folderWith(files);
    const md = await doughwright(path, 'plan', '--format', 'md', 'plan.dough');
    expect(md.stdout).toMatch(/^# Friday\n\n- ready: 2026-05-15 06:00\n/);
    expect(md.stdout).toContain(
      '| 2026-05-15 02:00 | mix Quay Tin, batch 1 of 2: 10 pieces, 10 kg in spiral one, 10 min |',
    );
    const csv = await doughwright(path, 'plan', '--format', 'csv', 'plan.dough');
    expect(csv.stdout).toContain(
      'Timeline,2026-05-15 02:00,"mix Quay Tin, batch 1 of 2: 10 pieces, 10 kg in spiral one, 10 min"\r\n',
    );
    const html = await doughwright(path, 'plan', '--out', 'out.html', 'plan.dough');
    expect([html.code, html.stdout]).toEqual([0, '']);
    const written = readFileSync(join(path, 'out.html'), 'utf8');
    expect(written).toMatch(/^<!doctype html>/);
    expect(written).toContain('<caption>Stores</caption>');
    expect(written).not.toContain('<script');
  });

  it('says what cannot be planned, and where there is no plan', async () => {
    const { path } = folderWith(files);
    const odd = await doughwright(path, 'plan', 'wrong.dough');
    expect(odd.code).toBe(1);
    expect(odd.stdout).toContain('nothing states when it has to be ready');
    const none = await doughwright(path, 'plan', 'a.dough');
    expect([none.code, none.stdout]).toEqual([2, '']);
    expect(none.stderr).toBe(
      'doughwright: a.dough: no plan in here; a plan begins with a line “plan NAME:”.\n',
    );
  });

  it('names each line that it leaves out', async () => {
    const { path } = folderWith({
      ...files,
      'part.dough': [
        'plan Friday:',
        '  ready 2026-05-15 06:00',
        '  Quay Tin  20 pieces',
        '  Quay Tin  12',
        '  Pier Loaf  12 pieces',
        '  Quay Tin  0 pieces',
        '  Quay Tin  20 pieces, ready 25:00',
        '',
      ].join('\n'),
    });
    const { code, stdout } = await doughwright(path, 'plan', 'part.dough');
    expect(code).toBe(1);
    expect(stdout).toContain('mix Quay Tin, batch 1 of 4: 10 pieces');
    expect(stdout).toContain('Line 4: “12” of what? Write a unit: 12 pieces, or 12 kg.');
    expect(stdout).not.toContain('Line 4, ');
    expect(stdout).toContain('Line 6, Quay Tin, is not in the plan: none of it is asked for.');
    expect(stdout).toContain(
      'Line 7: After the comma goes a time, for example “ready 07:15”; “ready 25:00” is not known here.',
    );
    expect(stdout).toContain('Line 5, Pier Loaf, is not in the plan: no formula has this name.');
  });

  it('tells what the priced stores cost where others have no price, and why there is no sum', async () => {
    const priced = {
      ...files,
      'stores.dough': 'flour bread flour:\n  price 20 EUR per 25 kg\n',
    };
    const some = await doughwright(folderWith(priced).path, 'plan', 'plan.dough');
    // 20 kg of 168 %: 11.905 kg of flour at 0.80 EUR.
    expect(some.stdout).toMatch(/stores cost +9\.52 EUR and more$/m);
    expect(some.stdout).toMatch(/bread flour +11\.9 kg +9\.52 EUR$/m);
    expect(some.stdout).toContain('The cost of the stores is without salt: no usable price.');
    const mixed = { ...priced, 'salt.dough': 'ingredient salt:\n  price 0.50 GBP per kg\n' };
    const two = await doughwright(folderWith(mixed).path, 'plan', 'plan.dough');
    expect(two.stdout).not.toMatch(/stores cost +\d/);
    expect(two.stdout).toContain('What the stores cost is not known: prices are in two currencies,');
  });

  it('lets a bread leave the oven before it is ready', async () => {
    const { path } = folderWith({ ...files, 'a.dough': files['a.dough'].replace('  cool 1 h\n', '') });
    const { stdout } = await doughwright(path, 'plan', 'plan.dough');
    expect(stdout).toMatch(
      /06:00 +Quay Tin, batch 2 of 2 out of the oven\n.*06:00 +Quay Tin, batch 2 of 2 ready$/m,
    );
  });
});
