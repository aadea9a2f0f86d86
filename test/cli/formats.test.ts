import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import Ajv from 'ajv-draft-04';
import type { Log } from 'sarif';
import { describe, expect, it, onTestFinished } from 'vitest';
import { commandLineProgram, nodeProgram } from '../editors/places.ts';
import { folderWith } from '../server/places.ts';
import { doughwright } from './run.ts';

const sound = 'formula Harbour Tin:\n  strong white   100%\n  water          65%\n  salt           2%\n';
const unsound = sound.replace('2%', '2');

describe('text', () => {
  it('shows the line and marks what is meant, under tabs and letters of any script', async () => {
    const { path } = folderWith({ 'a.dough': 'formula Brød:\n\tmjöl\tfin  100%\n' });
    const { stdout } = await doughwright(path, 'check', 'a.dough');
    expect(stdout).toMatch(/\n {2}2 │ \tmjöl\tfin {2}100%\n {4}│ \t\^{4}\t\^{3}\n/);
  });

  it('marks what is meant behind letters two columns wide, and marks that take none', async () => {
    const { path } = folderWith({ 'a.dough': 'formula 食パン:\n  食パン粉 🍞 cre\u0300me 3\n' });
    const { stdout } = await doughwright(path, 'check', 'a.dough');
    // Two blanks, four and one letters of two columns, three blanks, five letters.
    expect(stdout).toMatch(/\n {4}│ {3} {8} {1} {2} {1} {5} {1}\^\n/);
  });

  it('shows the piece of a long line that is meant, and sends no sign that moves the cursor', async () => {
    const { path } = folderWith({
      'a.dough': `formula A:\n  flour 100%${' '.repeat(900)}, ${'x'.repeat(900)}\n`,
      'b.dough': 'formula B:\n  flour 100%\n  \u001b[31mgold leaf 2%\n',
    });
    const { stdout } = await doughwright(path, 'check', '--level', 'info');
    expect(stdout).not.toContain('\u001b');
    expect(
      Math.max(...stdout.split('\n').map((line) => (line.includes('│') ? line.length : 0))),
    ).toBeLessThan(140);
  });

  it('colours nothing in a pipe unless asked, and nothing at all with NO_COLOR', async () => {
    const { path } = folderWith({ 'a.dough': unsound });
    expect((await doughwright(path, 'check')).stdout).not.toContain('\u001b');
  });
});

describe('SARIF', () => {
  // OASIS SARIF 2.1.0; its schema as published in the npm package @microsoft/jest-sarif.
  const schema = createRequire(import.meta.url).resolve(
    '@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json',
  );
  const validate = new Ajv({
    strict: false,
    allErrors: true,
    validateFormats: false,
    // One pattern of the schema has a bracket too many for the strict reading.
    unicodeRegExp: false,
  }).compile(JSON.parse(readFileSync(schema, 'utf8')) as object);

  it('is valid against the published schema, with findings, related places, fixes and troubles', async () => {
    const { path } = folderWith({
      'a ø/b#.dough': unsound,
      'twice.dough': 'formula A:\n  mill flour 100%\n  water 60%\n  salt 2%\n',
      'one.dough': 'flour mill flour:\n  grain wheat\n',
      'two.dough': 'flour mill flour:\n  grain rye\n',
    });
    const { code, stdout } = await doughwright(path, 'check', '--format', 'sarif', '.', 'missing.dough');
    expect(code).toBe(2);
    const log = JSON.parse(stdout) as Log;
    validate(log);
    expect(validate.errors).toBeNull();
    const [run] = log.runs;
    expect(run!.invocations![0]).toMatchObject({
      executionSuccessful: false,
      toolExecutionNotifications: [{ message: { text: expect.stringMatching(/no such file/) } }],
    });
    const unit = run!.results!.find(({ ruleId }) => ruleId === 'missing-unit')!;
    expect(unit).toMatchObject({
      level: 'error',
      locations: [
        {
          physicalLocation: {
            artifactLocation: { uri: 'a%20%C3%B8/b%23.dough' },
            region: { startLine: 4, startColumn: 18, endColumn: 19, snippet: { text: '  salt           2' } },
          },
        },
      ],
      partialFingerprints: { 'doughwrightFinding/v1': 'missing-unit: salt 2' },
    });
    expect(unit.fixes!.length).toBeGreaterThan(0);
    expect(run!.tool.driver.rules![unit.ruleIndex!]!.id).toBe('missing-unit');
    expect(run!.results!.some(({ relatedLocations }) => (relatedLocations?.length ?? 0) > 1)).toBe(true);
  });

  it('is valid where nothing is found', async () => {
    const { path } = folderWith({ 'a.dough': sound });
    const { stdout } = await doughwright(path, 'check', '--level', 'error', '--format', 'sarif');
    expect(validate(JSON.parse(stdout))).toBe(true);
  });

  it('the schema finds what is not SARIF', () => {
    expect(validate({ version: '2.1.0', runs: [{}] })).toBe(false);
  });
});

describe('JUnit XML and annotations', () => {
  it('writes a suite for each file, a passed case where there is nothing, and an error for what cannot be read', async () => {
    const { path } = folderWith({ 'a & b.dough': unsound, 'c.dough': sound });
    const { code, stdout } = await doughwright(
      path,
      'check',
      '--level',
      'error',
      '--format',
      'junit',
      '.',
      'd.dough',
    );
    expect(code).toBe(2);
    expect(stdout).toMatch(
      /^<\?xml version="1\.0" encoding="UTF-8"\?>\n<testsuites .*tests="3" failures="1" errors="1">/,
    );
    expect(stdout).toContain('<testsuite name="a &amp; b.dough" tests="1" failures="1" errors="0">');
    expect(stdout).toContain('<testcase classname="c.dough" name="check"/>');
    expect(stdout).toMatch(
      /<testcase classname="d\.dough" name="read"><error message="there is no such file/,
    );
    const open = stdout.match(/<(?!\/|\?)[^>]*[^/]>/g)!.length;
    expect(stdout.match(/<\/[a-z]+>/g)).toHaveLength(open);
  });

  it('writes a note for each line, with signs that part the note escaped', async () => {
    const { path } = folderWith({ 'a,b.dough': unsound });
    const { stdout } = await doughwright(path, 'check', '--level', 'error', '--format', 'annotations');
    expect(stdout).toMatch(
      /^::error file=a%2Cb\.dough,line=4,col=18,endColumn=19,title=missing-unit::.*2%25 .*\n$/,
    );
  });
});

describe('a baseline', () => {
  it('leaves out what was there, wherever it has moved, and tells what is new', async () => {
    const folder = folderWith({ 'in/a.dough': unsound });
    const check = (...words: string[]) => doughwright(folder.path, 'check', '--level', 'error', ...words);
    const written = await check('--write-baseline', 'known.json');
    expect(written).toMatchObject({ code: 0, stdout: '', stderr: '1 finding is in known.json now.\n' });
    expect(await check('--baseline', 'known.json')).toMatchObject({ code: 0, stdout: '' });
    folder.write('in/a.dough', `# moved\n\n${unsound.replace('salt           2', 'salt  2')}`);
    expect((await check('--baseline', 'known.json')).code).toBe(0);
    folder.write('in/a.dough', `${unsound}  fresh yeast  1\n`);
    const { code, stdout } = await check('--baseline', 'known.json');
    expect(code).toBe(1);
    expect(stdout.match(/ error: /g)).toHaveLength(1);
    expect(stdout).toMatch(/^in\/a\.dough:5:/);
    // The same wrong line a second time is new.
    folder.write('in/a.dough', `${unsound}  salt 2\n`);
    expect((await check('--baseline', 'known.json')).stdout.match(/missing-unit/g)).toHaveLength(1);
  });

  it.each([
    ['{"version": 2}', /no baseline/],
    ['[', /no baseline/],
    ['{"version":1,"files":{"a":{"b":"c"}}}', /no baseline/],
  ])('%s is told in one line', async (content, message) => {
    const { path } = folderWith({ 'a.dough': sound, 'known.json': content });
    const { code, stderr } = await doughwright(path, 'check', '--baseline', 'known.json');
    expect([code, stderr.split('\n').length]).toEqual([2, 2]);
    expect(stderr).toMatch(message);
  });

  it('that cannot be written leaves nothing behind', async () => {
    const { path } = folderWith({ 'a.dough': sound });
    const { code, stderr } = await doughwright(path, 'check', '--write-baseline', 'no/such/folder.json');
    expect(code).toBe(2);
    expect(stderr).toMatch(/^doughwright: no\/such\/folder\.json: this cannot be written/);
  });
});

describe('--watch', () => {
  it('checks again when a file changes, and ends with 130 when it is interrupted', async () => {
    const folder = folderWith({ 'a.dough': sound });
    const child = spawn(nodeProgram, [commandLineProgram(), 'check', '--watch', '--level', 'error'], {
      cwd: folder.path,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    onTestFinished(() => void child.kill('SIGKILL'));
    let [out, errors] = ['', ''];
    child.stdout.on('data', (data) => {
      out += data;
    });
    child.stderr.on('data', (data) => {
      errors += data;
    });
    await expect.poll(() => errors, { timeout: 15_000 }).toContain('Watching');
    expect(out).toBe('');
    folder.write('a.dough', unsound);
    await expect.poll(() => out, { timeout: 15_000 }).toMatch(/^a\.dough:4:18: error: /);
    const ended = new Promise((resolve) => child.once('close', resolve));
    child.kill('SIGINT');
    expect(await ended).toBe(130);
  });
});
