import { describe, expect, it } from 'vitest';
import {
  DidChangeWatchedFilesNotification,
  FileChangeType,
  type PublishDiagnosticsParams,
} from 'vscode-languageserver-protocol/node';
import { rules } from '../../core/index.ts';
import { readProject } from '../../server/project/project-file.ts';
import { inProject } from '../../server/project/project-precedence.ts';
import { noProject } from '../../server/project/project-settings.ts';
import { readSettings } from '../../server/sync/settings.ts';
import { folderWith, startClient } from '../server/places.ts';
import { repositoryWith } from './repository.ts';
import { doughwright } from './run.ts';

const codes = new Set(rules.map(({ code }) => code));
const told = (text: string) =>
  readProject(text, codes).findings.map(({ line, start, end, message }) => [line, start, end, message.code]);
/** With far too much salt, and nothing else to be found. */
const salty =
  'formula Quay:\n  yield 2 kg\n  bread flour        100%\n  water              65%\n  salt               5%\n';
const off = '{ "rules": { "salt-range": "off" } }\n';

describe('a project file', () => {
  it('is JSON by the names of the editor’s settings; comments and a last comma do no harm', () => {
    expect(
      readProject(
        `{
  // What Quay Lane has agreed on.
  "$schema": "./project.json",
  "rules": { "no-salt": "off", "hydration-range": "hint" },
  "language": "de",
  "units": { "mass": "ounces", "temperature": "fahrenheit" },
  "decimalSign": "point",
  "usual": { "roomCelsius": 24, "flourCelsius": 22.5, "tapCelsius": 11 },
  "label": { "regime": "US" },
}`,
        codes,
      ),
    ).toEqual({
      findings: [],
      settings: {
        rules: { 'no-salt': 'off', 'hydration-range': 'hint' },
        usual: { roomCelsius: 24, flourCelsius: 22.5, tapCelsius: 11, label: 'US' },
        ...{ language: 'de', mass: 'ounces', temperature: 'fahrenheit', decimalSign: 'point' },
      },
    });
  });

  it('has one finding for each bad line, at its place; the rest of it holds', () => {
    const text = `{
  "rules": { "nope": "off", "no-salt": "loud", "hydration-range": "hint" },
  "units": "ounces",
  "usual": {
    "roomCelsius": "warm",
    "tapCelsius": 12,
    "tapCelsius": 13
  },
  "colour": "red"
}`;
    expect(told(text)).toEqual([
      [1, 13, 19, 'command-check.no-rule'],
      [2, 11, 19, 'project.no-section'],
      [4, 19, 25, 'session.no-celsius'],
      [6, 4, 16, 'project.twice'],
      [8, 2, 10, 'project.no-setting'],
    ]);
    expect(readProject(text, codes).settings).toEqual({
      rules: { 'hydration-range': 'hint' },
      usual: { tapCelsius: 12 },
    });
  });

  it('that is no JSON has one finding, and nothing of it holds', () => {
    for (const text of [
      '{ "rules": { "no-salt": "off" }',
      'rules: no',
      '[]',
      '',
      '3',
      '{"rules" {}}',
      '{"a": }',
    ])
      expect([text, readProject(text, codes).settings, told(text)]).toEqual([
        text,
        noProject,
        [[0, expect.any(Number), expect.any(Number), 'project.not-json']],
      ]);
  });

  it('goes before the editor where findings hang on it, and behind it in how figures are shown', () => {
    const project = readProject(
      '{"rules":{"no-salt":"off"},"usual":{"roomCelsius":26},"language":"de","units":{"mass":"ounces"}}',
      codes,
    ).settings;
    const set = (value: object) =>
      inProject(
        readSettings(value, () => {}),
        project,
      );
    const plain = set({});
    expect([plain.core.rules, plain.core.usual]).toEqual([{ 'no-salt': 'off' }, { roomCelsius: 26 }]);
    expect([plain.language, plain.display.mass]).toEqual(['de', 'ounces']);
    const own = set({
      rules: { 'no-salt': 'error', loop: 'hint' },
      usual: { roomCelsius: 20, tapCelsius: 9 },
      language: 'fr',
    });
    expect(own.core.rules).toEqual({ 'no-salt': 'off', loop: 'hint' });
    expect(own.core.usual).toEqual({ roomCelsius: 26, tapCelsius: 9 });
    expect(own.language).toBe('fr');
  });
});

describe('the command line in a project', () => {
  it('goes by it, and an option goes before it', async () => {
    const { path, write } = repositoryWith({ 'formulas/quay.dough': salty });
    expect((await doughwright(path, 'check')).stdout).toContain('[salt-range]');
    write('doughwright.json', off);
    expect(await doughwright(path, 'check', 'formulas/quay.dough')).toMatchObject({ code: 0, stderr: '' });
    const louder = await doughwright(path, 'check', '--rule', 'salt-range=error');
    expect(louder.stdout).toContain('error');
    write('doughwright.json', '{ "language": "de", "units": { "mass": "ounces" } }');
    const german = await doughwright(path, 'totals', 'formulas');
    expect(german.stdout).toMatch(/Mehl +\d+(,\d+)? lb/);
    const plain = await doughwright(path, 'totals', 'formulas', '--language', 'en', '--mass', 'grams');
    expect(plain.stdout).toMatch(/flour +1\.18 kg/);
    // Programs read grams, degrees Celsius and points, whatever people like to read.
    const json = await doughwright(path, 'totals', '--json', 'formulas');
    expect(json.stdout).not.toMatch(/ lb|°F/);
  });

  it('warms and cools by its usual temperatures, and is that of the nearest folder above', async () => {
    const mixed = `${salty}  dough temperature  25 °C\n\nmix by hand:\n  knead 8 min\n`;
    const { path, write } = repositoryWith({
      'doughwright.json': '{ "usual": { "roomCelsius": 21, "tapCelsius": 12 } }',
      'north/quay.dough': mixed,
      'south/quay.dough': mixed,
    });
    const water = async (folder: string): Promise<number> => {
      const { stdout } = await doughwright(path, 'totals', '--json', folder);
      return (JSON.parse(stdout) as [{ water: { celsius: number } }])[0].water.celsius;
    };
    const same = await water('north');
    expect(await water('south')).toBe(same);
    write('south/doughwright.json', '{ "usual": { "roomCelsius": 29, "tapCelsius": 12 } }');
    expect(await water('north')).toBe(same);
    expect(await water('south')).toBeLessThan(same - 1);
    const both = await doughwright(path, 'check', 'north', 'south');
    expect(both.code).toBe(2);
    expect(both.stderr).toBe(
      'doughwright: these belong to several projects, doughwright.json and south/doughwright.json; name them in calls of their own.\n',
    );
  });

  it('names each bad line, does the rest, and ends with 2; a broken one does not stop a check', async () => {
    const { path, write } = repositoryWith({
      'doughwright.json': '{\n  "rules": { "salt-range": "of" },\n  "language": "xx"\n}\n',
      'quay.dough': salty,
    });
    const { code, stdout, stderr } = await doughwright(path, 'check');
    expect(code).toBe(2);
    expect(stdout).toContain('[salt-range]');
    expect(stderr.split('\n')).toEqual([
      expect.stringMatching(/^doughwright: doughwright\.json:2: .*salt-range/),
      expect.stringMatching(/^doughwright: doughwright\.json:3: .*language/),
      '',
    ]);
    write('doughwright.json', '{');
    expect((await doughwright(path, 'check')).stderr).toMatch(
      /^doughwright: doughwright\.json:1: [^\n]*JSON[^\n]*\n$/,
    );
    expect((await doughwright(path, '--help')).code).toBe(0);
  });

  it('has git show formulas in its language, and a bad one spoils nothing that git shows', async () => {
    const { path, write, git } = repositoryWith({
      'doughwright.json': '{ "language": "de" }',
      'quay.dough': salty,
    });
    expect((await doughwright(path, 'git-setup', '--yes')).code).toBe(0);
    write('quay.dough', salty.replace('   5%', '   4%'));
    expect(git('diff')).toMatch(/Salz +5\u00a0% → 4\u00a0% .*Prozentpunkt/);
    const shown = git('diff', '--no-ext-diff');
    expect(shown).toMatch(/^\+formula Quay: {2}#= .*Salz 4\u00a0%/m);
    write('doughwright.json', '{');
    expect(git('diff', '--no-ext-diff', '--', '*.dough')).toMatch(/^\+formula Quay: {2}#= .*salt 4%/m);
    expect(git('diff', '--no-ext-diff', '--', '*.dough').match(/^\+formula/gm)).toHaveLength(1);
    expect(git('diff', '--', '*.dough')).toMatch(/salt +5% → 4% .*point/);
  });

  it('holds for what git is about to commit', async () => {
    const { path, write, git } = repositoryWith({ 'doughwright.json': off });
    write('quay.dough', salty);
    git('add', '.');
    expect((await doughwright(path, 'check', '--staged')).code).toBe(0);
    write('doughwright.json', '{}');
    expect((await doughwright(path, 'check', '--staged')).code).toBe(0);
    git('add', '.');
    expect((await doughwright(path, 'check', '--staged')).code).toBe(1);
  });
});

describe('the editor in a project', () => {
  it('goes by it, shows its bad lines there, and follows it when it changes', async () => {
    const folder = folderWith({ 'doughwright.json': off, 'quay.dough': salty });
    const client = await startClient({ folders: [folder.uri] });
    const [quay, file] = [folder.uriOf('quay.dough'), folder.uriOf('doughwright.json')];
    await client.open(quay, salty);
    const lacks = ({ diagnostics }: PublishDiagnosticsParams) =>
      !diagnostics.some(({ code }) => code === 'salt-range');
    const watched = (type: FileChangeType) =>
      client.connection.sendNotification(DidChangeWatchedFilesNotification.type, {
        changes: [{ uri: file, type }],
      });
    await client.publication(quay, lacks);
    folder.write('doughwright.json', '{\n  "rules": { "salt-rnage": "off" }\n}');
    await watched(FileChangeType.Changed);
    await client.publication(quay, (told) => !lacks(told));
    const shown = await client.publication(file, ({ diagnostics }) => diagnostics.length > 0);
    expect(shown.diagnostics).toMatchObject([
      { message: expect.stringContaining('salt-rnage'), range: { start: { line: 1, character: 13 } } },
    ]);
    folder.remove('doughwright.json');
    await watched(FileChangeType.Deleted);
    await client.publication(file, ({ diagnostics }) => diagnostics.length === 0);
    await client.publication(quay, (told) => !lacks(told));
  });
});
