import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folderWith } from '../server/places.ts';
import { doughwright } from './run.ts';

const example = (name: string): string =>
  readFileSync(join(import.meta.dirname, '..', '..', 'examples', name), 'utf8');

const files = {
  'bakery.dough': example('bakery.dough'),
  'flours.dough': example('flours.dough'),
  'bench.dough': example('bench.dough'),
  'lost.dough': 'experiment Lost:\n  dough Nowhere\n  read at 8 min\n',
  'none.dough': 'flour harbour:\n  grain wheat\n',
};

describe('doughwright experiment', () => {
  it('writes what to expect, the order, the weights, and what the readings say', async () => {
    const { path } = await folderWith(files);
    const { code, stdout, stderr } = await doughwright(path, 'experiment', 'bench.dough');
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toMatch(/^How long is too long\n/);
    expect(stdout).toMatch(/Bench White +23\.\d °C ± 0\.\d °C, developing to developed/);
    expect(stdout).toMatch(/Bench Wet +in bench planetary +1:05/);
    expect(stdout).toMatch(/the water is +9 °C +24 °C +9 °C +14 °C/);
    expect(stdout).toContain('within the band');
    expect(stdout).toContain('by hand, what hands warm the dough towards: 31.');
    expect(stdout).toContain('Stop the mixer before a probe or a hand goes in.');
  });

  it('gives nothing away on the sheet of a class, and leaves room to write', async () => {
    const { path } = await folderWith(files);
    const { code, stdout } = await doughwright(
      path,
      'experiment',
      '--hidden',
      '--format',
      'md',
      'bench.dough',
    );
    expect(code).toBe(0);
    expect(stdout).not.toMatch(/±|developed|within the band/);
    expect(stdout).toMatch(/\| Bench Wholemeal \| 45 \| {2}\| {2}\|/);
    expect(stdout).toMatch(/\| Bench Wholemeal \| {2}\| {2}\|/);
    const shown = await doughwright(path, 'experiment', '--blanks', '--format', 'md', 'bench.dough');
    expect(shown.stdout).toMatch(/\| Bench Wholemeal \| 45 \| \d\d\.\d °C ± [^|]*breakdown \| +\| +\|/);
  });

  it('draws all doughs in one chart on its page, and none for a class', async () => {
    const { path } = await folderWith(files);
    const { stdout } = await doughwright(path, 'experiment', '--format', 'html', 'bench.dough');
    const [svg = ''] = /<svg[\s\S]*<\/svg>/.exec(stdout) ?? [];
    for (const name of ['Bench White', 'Bench White by Hand', 'Bench Wet', 'Bench Wholemeal'])
      expect(svg.split(`>${name}<`).length - 1, name).toBe(2);
    // A line a dough, a sign a reading that was taken, and the stages of the one that breaks down first.
    expect(svg.match(/<polyline/g)).toHaveLength(4);
    expect(svg.match(/<circle/g)?.length ?? 0).toBeGreaterThan(3);
    expect(svg).toContain('>breakdown<');
    const hidden = await doughwright(path, 'experiment', '--hidden', '--format', 'html', 'bench.dough');
    expect(hidden.stdout).not.toContain('<svg');
  });

  it('writes for programs: minutes, figures and measured values, lines as people count them', async () => {
    const { path } = await folderWith(files);
    const { stdout } = await doughwright(path, 'experiment', '--format', 'json', 'bench.dough');
    const [one] = JSON.parse(stdout);
    expect(one).toMatchObject({
      file: 'bench.dough',
      experiment: 'How long is too long',
      date: '2026-04-11',
    });
    expect(one.doughs).toHaveLength(4);
    const line = files['bench.dough'].split('\n')[one.doughs[0].line - 1];
    expect(line).toMatch(/^ {2}dough Bench White, speed 1/);
    expect(one.doughs[1].measured[3]).toMatchObject({ minutes: 60, measuredCelsius: 31, within: true });
    const csv = await doughwright(path, 'experiment', '--format', 'csv', 'bench.dough');
    expect(csv.stdout).toMatch(/^measured and expected,Bench White,2026-04-11,8,/m);
    const html = await doughwright(path, 'experiment', '--format', 'html', '--language', 'de', 'bench.dough');
    expect(html.stdout).toContain('<html lang="de">');
    expect(html.stdout).toContain('was die Messungen zeigen');
  });

  it('sets what was seen without a thermometer beside the stages, and draws no sign where no temperature is', async () => {
    const trial = `trial 2026-04-11:
  experiment How long is too long
  mixed in bench planetary
  load all
  speed 1 for 60 min
  at 8 min, rough
  at 16 min, slack
  at 30 min, smooth, shiny
  at 45 min, wet
`;
    const seen = files['bench.dough'].replace(
      '\nformula Bench Wholemeal',
      `\n${trial}\nformula Bench Wholemeal`,
    );
    expect(seen).not.toBe(files['bench.dough']);
    const { path } = await folderWith({ ...files, 'bench.dough': seen });
    const { stdout } = await doughwright(path, 'experiment', '--format', 'md', 'bench.dough');
    const rows = stdout.split('\n').filter((row) => /\| Bench Wet \| 2026/.test(row));
    expect(
      rows.map((row) =>
        row
          .split('|')
          .slice(4, 5)
          .concat(row.split('|').slice(6, 7))
          .map((cell) => cell.trim()),
      ),
    ).toEqual([
      ['rough', expect.stringMatching(/^(the stage agrees|not as far as expected)$/)],
      ['slack', 'further on than expected'],
      ['smooth, shiny', 'the stage agrees'],
      ['wet', ''],
    ]);
    const { stdout: page } = await doughwright(path, 'experiment', '--format', 'html', 'bench.dough');
    const before = await doughwright(
      (await folderWith(files)).path,
      'experiment',
      '--format',
      'html',
      'bench.dough',
    );
    for (const sign of [/<circle/g, /<rect/g, /<path/g])
      expect(page.match(sign)?.length, String(sign)).toBe(before.stdout.match(sign)?.length);
    const csv = await doughwright(path, 'experiment', '--format', 'csv', 'bench.dough');
    expect(csv.stdout).toMatch(/^measured and expected,Bench Wet,2026-04-11,30,,"smooth, shiny",/m);
  });

  it('ends with 1 where a dough cannot be predicted, and with 2 where there is no experiment', async () => {
    const { path } = await folderWith(files);
    const lost = await doughwright(path, 'experiment', 'lost.dough');
    expect(lost.code).toBe(1);
    expect(lost.stdout).toContain('“Nowhere” cannot be predicted');
    const none = await doughwright(path, 'experiment', 'none.dough');
    expect(none.code).toBe(2);
    expect(none.stderr).toContain('no experiment in here');
    const named = await doughwright(path, 'experiment', '--experiment', 'Other', 'bench.dough');
    expect(named.code).toBe(2);
    expect(named.stderr).toContain('“How long is too long”');
  });
});
