import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { folderWith, withoutLanguages } from '../server/places.ts';
import { repositoryWith } from './repository.ts';
import { doughwright, type Outcome } from './run.ts';

const salty = 'formula Harbour Tin:\n  strong white   100%\n  water          65%\n  salt           20%\n';

type Told = readonly { readonly message: string }[];

describe('--language', () => {
  it('words findings in German, and changes neither place, level, code nor what it ends with', async () => {
    const { path } = folderWith({ 'a.dough': salty });
    const [english, german] = await Promise.all([
      doughwright(path, 'check', '--language', 'en', 'a.dough'),
      doughwright(path, 'check', '--language', 'de', 'a.dough'),
    ]);
    expect(german.stdout).toContain('20\u00a0% Salz auf das gesamte Mehl ist ungewöhnlich viel');
    const frames = ({ stdout }: Outcome) =>
      // The last line counts in words.
      stdout
        .split('\n')
        .filter((line) => !/^\d+ \S+ in \d+ /.test(line))
        .map((line) => line.replace(/(: (?:error|warning|info): ).*( \[)/, '$1$2'));
    expect([german.code, frames(german)]).toEqual([english.code, frames(english)]);
  });

  it('in JSON the words alone are others', async () => {
    const { path } = folderWith({ 'a.dough': salty });
    const read = async (language: string): Promise<Told> => {
      const { stdout } = await doughwright(
        path,
        'check',
        '--format',
        'json',
        '--language',
        language,
        'a.dough',
      );
      return JSON.parse(stdout) as Told;
    };
    const [english, german] = [await read('en'), await read('de')];
    const words = (told: Told) => told.map(({ message }) => message);
    expect(words(german)).not.toEqual(words(english));
    const plain = (told: Told) => told.map((one) => ({ ...one, message: '', related: [] }));
    expect(plain(german)).toEqual(plain(english));
  });

  it('is English without it, whatever the machine is set to', async () => {
    const { path } = folderWith({ 'a.dough': salty });
    const before = process.env.LC_ALL;
    process.env.LC_ALL = 'de_DE.UTF-8';
    try {
      const { stdout } = await doughwright(path, 'check', 'a.dough');
      expect(stdout).toContain('20% salt on all flour is unusually much');
    } finally {
      if (before === undefined) delete process.env.LC_ALL;
      else process.env.LC_ALL = before;
    }
  });

  it('words in French what is there, and the rest in English', async () => {
    const unread = salty.replace('65%', '65');
    const { path } = folderWith({ 'a.dough': salty, 'b.dough': unread });
    const { stdout } = await doughwright(path, 'check', '--language', 'fr', 'a.dough', 'b.dough');
    expect(stdout).toContain('20\u00a0% de sel sur la farine totale, c’est beaucoup\u00a0:');
    expect(stdout).toContain('“65” of what?');
  });

  it('lists rules in German, by the same codes and levels', async () => {
    const { path } = folderWith({});
    const read = async (language: string) =>
      JSON.parse((await doughwright(path, 'rules', '--json', '--language', language)).stdout) as {
        code: string;
        level: string;
        title: string;
      }[];
    const [english, german] = [await read('en'), await read('de')];
    const bare = (all: typeof english) => all.map(({ code, level }) => [code, level]);
    expect(bare(german)).toEqual(bare(english));
    expect(german.find(({ code }) => code === 'too-warm')?.title).toBe(
      'Der Teig kommt zu warm aus dem Kneter',
    );
  });

  it('explains a rule as its page does, in the language asked for', async () => {
    const { path } = folderWith({});
    for (const [language, folder] of [
      ['en', 'docs/rules'],
      ['de', 'docs/de/rules'],
    ] as const) {
      const { code, stdout } = await doughwright(path, 'rules', 'too-warm', '--language', language);
      const page = readFileSync(new URL(`../../${folder}/too-warm.md`, import.meta.url), 'utf8');
      // The links of a page lead to other pages, which are not there on a terminal.
      expect(stdout).toBe(
        page
          .replace(/^\[.*\n\n?/gm, '')
          .trimEnd()
          .concat('\n'),
      );
      expect(code).toBe(0);
    }
  });

  it('says which there are', async () => {
    const { path } = folderWith({});
    const { code, stderr } = await doughwright(path, 'check', '--language', 'it');
    expect([code, stderr]).toEqual([2, expect.stringContaining('write one of en, de, fr')]);
  });
});

const tin = `formula Harbour Tin:
  yield 24 pieces of 880.5 g
  dough temperature 25.5 °C

  strong white       100%
  water              to 69.5% hydration
  salt               2%
  fresh yeast        0.9%

mix in spiral:
  load flour, water
  speed 1 for 4 min
  add salt, fresh yeast
  speed 2 for 3 min
`;

describe('what is written in German', () => {
  it('totals: words and a decimal comma; as JSON the same numbers, and a point in sentences', async () => {
    const { path } = folderWith({ 'a.dough': tin });
    const totals = (...words: string[]) =>
      doughwright(path, 'totals', '--language', 'de', ...words, 'a.dough');
    const { stdout, stderr, code } = await totals();
    expect([code, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(/ergibt +24 Stück zu 881 g, 21,13 kg Teig/);
    expect(stdout).toMatch(/Hydration +69,5\u00a0%, wirksam 7\d,?\d?\u00a0%\n/);
    expect(stdout).toMatch(/in den Kessel, .*kg Mehl\n/);
    expect(stdout).not.toMatch(/\d\.\d|\b(?:makes|flour mix|together|overall|into the bowl)\b/);
    const [german, english] = await Promise.all([
      totals('--json'),
      doughwright(path, 'totals', '--json', 'a.dough'),
    ]);
    const numbers = ({ stdout: json }: Outcome) => json.match(/(?<=: )-?\d[\d.e-]*(?=,?\n)/g);
    expect(numbers(german)).toEqual(numbers(english));
    const [one] = JSON.parse(german.stdout) as [{ mixing: { outlook: string[] } }];
    expect(one.mixing.outlook.join(' ')).toMatch(/\d\.\d °C/);
    expect(one.mixing.outlook.join(' ')).not.toMatch(/\d,\d/);
  });

  it('a comparison: one head for the terminal and the review, and the same verdict', async () => {
    const { path } = folderWith({
      'old.dough': tin,
      'new.dough': tin.replace('salt               2%', 'salt  2.2%'),
    });
    const compare = (...words: string[]) =>
      doughwright(path, 'compare', '--language', 'de', ...words, 'old.dough', 'new.dough');
    const [text, review, same] = await Promise.all([
      compare(),
      compare('--format', 'md'),
      doughwright(path, 'compare', '--language', 'de', 'old.dough', 'old.dough'),
    ]);
    expect([text.code, review.code, same.code]).toEqual([1, 1, 0]);
    expect(text.stdout).toMatch(
      /\n {2}Zutaten\n(?: {4}.*\n)* {4}salt +2\u00a0% .*→ 2,2\u00a0% .*\+0,2 Prozentpunkte/,
    );
    expect(review.stdout).toContain('new.dough, Zeile 1\n');
    expect(review.stdout).toContain('| | was | vorher | jetzt | um |\n');
    expect(same.stdout).toBe('Es gibt keinen Unterschied.\n');
  });

  it.each([
    ['check', 'nope.dough'],
    ['totals', 'flours.dough'],
    ['sheet', 'flours.dough'],
    ['plan', 'flours.dough'],
    ['export', 'flours.dough'],
    ['format', 'nope.dough'],
    ['import', 'nope.csv'],
    ['compare', 'nope.dough'],
    ['blend', '--in', 'nope', 'strong white'],
    ['check', '--rule', 'nonesuch=off', '.'],
    ['check', '--baseline', 'nope.json', '.'],
  ])('what %s cannot do (%s), with the same end', async (command, ...words) => {
    const { path } = folderWith({ 'flours.dough': 'flour strong white:\n  grain wheat\n' });
    const [german, english] = await Promise.all(
      ['de', 'en'].map((one) => doughwright(path, command, '--language', one, ...words)),
    );
    expect([german!.code, german!.stdout]).toEqual([english!.code, english!.stdout]);
    expect(german!.stderr).not.toBe(english!.stderr);
    expect(german!.stderr.split('\n')).toHaveLength(english!.stderr.split('\n').length);
    expect(german!.stderr).not.toMatch(/\b(?:this|there|the|is|no|name)\b/);
  });

  it('a list and a plural, by the grammar of the host', async () => {
    const { path } = folderWith({ 'a.dough': `${tin}\n${tin.replace('Harbour Tin', 'Quay Round')}` });
    const { stderr } = await doughwright(path, 'sheet', '--language', 'de', '--formula', 'X', 'a.dough');
    expect(stderr).toContain('„Harbour Tin“ und „Quay Round“');
    const known = await doughwright(
      path,
      'check',
      '--language',
      'de',
      '--write-baseline',
      'k.json',
      'a.dough',
    );
    const count = Object.values(
      (
        JSON.parse(readFileSync(`${path}/k.json`, 'utf8')) as {
          files: Record<string, Record<string, number>>;
        }
      ).files['a.dough'] ?? {},
    ).reduce((sum, one) => sum + one, 0);
    expect(known.stderr).toBe(
      `${count} ${count === 1 ? 'Befund steht' : 'Befunde stehen'} jetzt in k.json.\n`,
    );
  });

  it('git shows it where it was set up so', async () => {
    const folder = repositoryWith({ 'a.dough': tin });
    const { stdout } = await doughwright(folder.path, 'git-setup', '--yes', '--language', 'de');
    expect(stdout).toContain('Fertig.');
    folder.write('a.dough', tin.replace('salt               2%', 'salt  2.2%'));
    expect(folder.git('diff')).toContain('Prozentpunkte');
    folder.git('commit', '--quiet', '--all', '--message=Salt');
    expect(folder.git('log', '-p', '-1')).toMatch(/#= Hydration 69,5\u00a0%, Salz 2,2\u00a0%/);
  });
});

describe('a language whose file is missing', () => {
  it('is English, and one line says so', async () => {
    const { path } = folderWith({ 'a.dough': salty });
    const english = await doughwright(path, 'check', 'a.dough');
    const german = await withoutLanguages(() => doughwright(path, 'check', '--language', 'de', 'a.dough'));
    expect([german.code, german.stdout]).toEqual([english.code, english.stdout]);
    expect(german.stderr).toMatch(/^doughwright: The words of the language “de” cannot be loaded: .+\n$/);
  });

  it('so is one that was cut short, and one without anything in it', async () => {
    const { path } = folderWith({ 'a.dough': salty });
    for (const left of ['"use strict";var a={', '']) {
      const { stdout, stderr } = await withoutLanguages(
        () => doughwright(path, 'check', '--language', 'de', 'a.dough'),
        left,
      );
      expect(stdout).toContain('20% salt on all flour');
      expect(stderr.split('\n')).toHaveLength(2);
    }
  });
});
