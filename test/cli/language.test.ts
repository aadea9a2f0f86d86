import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { folderWith } from '../server/places.ts';
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
      stdout.split('\n').map((line) => line.replace(/(: (?:error|warning|info): ).*( \[)/, '$1$2'));
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
