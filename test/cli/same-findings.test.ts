import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Log } from 'sarif';
import { describe, expect, it } from 'vitest';
import { folderWith } from '../server/places.ts';
import { repositoryWith } from './repository.ts';
import { doughwright } from './run.ts';

const careless = `formula Tin:
  yield 10 kg
  strong white  100 %
  water    65%
  salt 5,0 %
formula Other:
  yield 10 kg
  strong white  100 %
  water    65%
  salt 5,0 %
`;

describe('a finding stays the same finding', () => {
  it('through the formatter, for a baseline; and a new one is told all the same', async () => {
    const folder = folderWith({ 'tin.dough': careless });
    const check = (...more: string[]) => doughwright(folder.path, 'check', ...more, 'tin.dough');
    expect((await check()).stdout.match(/\[salt-range\]/g)).toHaveLength(2);
    expect((await check('--write-baseline', 'known.json')).code).toBe(0);
    expect((await doughwright(folder.path, 'format', 'tin.dough')).stdout).toBe('tin.dough\n');
    expect(await check('--baseline', 'known.json')).toEqual({ code: 0, stdout: '', stderr: '' });
    folder.write(
      'tin.dough',
      `${careless}formula Third:\n  yield 1 kg\n  strong white 100%\n  water 65%\n  salt 5%\n`,
    );
    expect((await check('--baseline', 'known.json')).stdout.match(/\[salt-range\]/g)).toHaveLength(1);
  });

  it('in a baseline that an older version wrote, which knew lines as they were laid out', async () => {
    const folder = folderWith({ 'tin.dough': careless });
    const files = { 'tin.dough': { 'salt-range: salt 5,0 %': 2 } };
    writeFileSync(join(folder.path, 'known.json'), JSON.stringify({ version: 1, files }));
    const { stdout } = await doughwright(folder.path, 'check', '--baseline', 'known.json', 'tin.dough');
    expect(stdout).not.toContain('[salt-range]');
  });

  it('and two alike are two, at their place in the repository, wherever the check runs', async () => {
    const folder = repositoryWith({ 'in/öl tin.dough': careless });
    const prints = async (from: string): Promise<[string, string][]> => {
      const { stdout } = await doughwright(join(folder.path, from), 'check', '--format', 'sarif', '.');
      const { results } = (JSON.parse(stdout) as Log).runs[0]!;
      return results!
        .filter(({ ruleId }) => ruleId === 'salt-range')
        .map(({ locations, partialFingerprints }) => [
          locations![0]!.physicalLocation!.artifactLocation!.uri!,
          partialFingerprints!['doughwrightFinding/v1']!,
        ]);
    };
    const found = await prints('.');
    expect(found).toEqual([
      ['in/%C3%B6l%20tin.dough', 'salt-range: salt 5.0%'],
      ['in/%C3%B6l%20tin.dough', 'salt-range: salt 5.0% (2)'],
    ]);
    expect(await prints('in')).toEqual(found);
  });
});

describe('what a command ends with', () => {
  const latin = Buffer.from('formula Tin:\n  strong white 100%\n  cr\xe8me 3%\n', 'latin1');

  it.each([['check', '--level', 'error'], ['totals'], ['sheet'], ['export'], ['format', '--check']])(
    '%s of a file that is no UTF-8 ends with 2, and says where',
    async (...args) => {
      const { path } = folderWith({ 'tin.dough': latin });
      const { code, stderr } = await doughwright(path, ...args, 'tin.dough');
      expect(code).toBe(2);
      expect(stderr).toMatch(
        /^doughwright: tin\.dough: line 3: this is not UTF-8, and is left as it is; save the file as UTF-8\.\n/,
      );
    },
  );

  it('plan ends with 1 where it is late, and with 0 where it is not', async () => {
    const tin =
      'formula Tin:\n  yield 10 kg\n  strong white 100%\n  water 65%\n  salt 2%\nprocess:\n  bulk 2 h\n  bake 40 min\n';
    const plan = (begin: string) => `plan Day:\n  begin ${begin}\n  ready 06:30\n  Tin 10 kg\n`;
    const run = async (begin: string) => {
      const { path } = folderWith({ 'tin.dough': tin, 'plan.dough': plan(begin) });
      return doughwright(path, 'plan', 'plan.dough');
    };
    const late = await run('06:00');
    expect([late.code, late.stdout]).toEqual([1, expect.stringContaining('late')]);
    expect((await run('01:00')).code).toBe(0);
  });

  it('totals keep the findings behind the two hundredth of a file', async () => {
    const many = Array.from(
      { length: 230 },
      (_, at) => `formula Tin ${at}:\n  strong white 100%\n  water 65%\n  salt 5%\n`,
    );
    const { path } = folderWith({ 'tins.dough': many.join('\n') });
    const { stdout } = await doughwright(path, 'totals', '--json', 'tins.dough');
    const told = JSON.parse(stdout) as { findings: { code: string }[] }[];
    expect(told).toHaveLength(230);
    for (const { findings } of told) expect(findings.map(({ code }) => code)).toContain('salt-range');
  });
});

describe('export for a spreadsheet that writes a comma', () => {
  it('has commas in numbers and semicolons between cells, and is read back', async () => {
    const tin = 'formula Tin:\n  yield 10 kg\n  strong white 100%\n  water 65.5%\n  salt 1.8%\n';
    const { path } = folderWith({ 'tin.dough': tin });
    const { code, stdout } = await doughwright(
      path,
      'export',
      '--decimal-comma',
      '--out',
      'tin.csv',
      'tin.dough',
    );
    expect([code, stdout]).toEqual([0, '']);
    const back = await doughwright(path, 'import', 'tin.csv');
    expect(back.stdout).toMatch(/water +65\.5%\n +salt +1\.8%\n/);
    const { stdout: csv } = await doughwright(path, 'export', '--decimal-comma', 'tin.dough');
    expect(csv).toMatch(/;water;water;65,5;65,5;3915,12\r\n/);
  });
});
