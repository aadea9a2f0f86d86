import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { SectionKind } from '../../core/syntax/tree.ts';
import { programmeWords, properties, sectionWords } from '../../core/syntax/vocabulary.ts';
import { guideFolders } from './canonical-pages.ts';
import { project } from './imports.ts';

const read = (path: string): string => readFileSync(join(project, path), 'utf8');
const pagesIn = (folder: string): string[] =>
  readdirSync(join(project, folder)).filter((name) => name.endsWith('.md'));

/** The page without its examples, which are notation and no words. */
const prose = (page: string): string => page.replace(/^```[\s\S]*?^```$/gm, '');

/** What a heading is called in a link, as the sites that show Markdown make it. */
function anchorsOf(page: string): Set<string> {
  const headings = [...prose(page).matchAll(/^#+ (.+)$/gm)].map(([, words]) => words!);
  return new Set(
    headings.map((words) =>
      words
        .toLowerCase()
        .replace(/[^\p{L}\p{N} _-]/gu, '')
        .replaceAll(' ', '-'),
    ),
  );
}

describe.each([...guideFolders, 'docs/rules', 'docs/de/rules'])('the links of %s', (folder) => {
  it.each(pagesIn(folder))('%s lead to pages and headings that are there', (name) => {
    const page = read(`${folder}/${name}`);
    const missing = [...prose(page).matchAll(/\]\(([^)#\s:]*)(?:#([^)\s]*))?\)/g)].flatMap(
      ([link, path, anchor]) => {
        const to = path === '' ? join(folder, name) : join(folder, path!);
        if (!existsSync(join(project, to))) return [link];
        return anchor === undefined || anchorsOf(read(to)).has(decodeURIComponent(anchor)) ? [] : [link];
      },
    );
    expect(missing).toEqual([]);
  });
});

describe('the guide in German', () => {
  const german = pagesIn('docs/de/guide');
  /** What is another in German: keys of a keyboard. */
  const others = new Set(['Ctrl+K V']);

  it('is linked from the top of each English page that it has, and leads back', () => {
    for (const name of pagesIn('docs/guide')) {
      const [, , top] = read(`docs/guide/${name}`).split('\n');
      expect(top === `[Deutsch](../de/guide/${name})`, name).toBe(german.includes(name));
    }
    for (const name of german)
      expect(read(`docs/de/guide/${name}`).split('\n')[2], name).toBe(`[English](../../guide/${name})`);
  });

  it('has a row on its first page for every page of the guide, in German or in English', () => {
    const first = read('docs/de/guide/README.md');
    for (const name of pagesIn('docs/guide').filter((one) => one !== 'README.md'))
      expect(first).toContain(german.includes(name) ? `](${name})` : `](../../guide/${name})`);
  });

  it.each(german)('%s has the examples of the English page, comments and notes in its own words', (name) => {
    const examples = (folder: string): string[] =>
      [...read(`${folder}/${name}`).matchAll(/^```dough\n([\s\S]*?)^```$/gm)].map(([, text]) =>
        text!
          .replace(/#.*$/gm, '#')
          .replace(/^( *note ).*$/gm, '$1')
          .replace(/^(trial [\d-]+), .*:$/gm, '$1:')
          .replace(/ +/g, ' '),
      );
    const own = examples('docs/de/guide');
    const english = examples('docs/guide');
    // A page may have more: German names of ingredients.
    expect(own.filter((one) => english.includes(one))).toEqual(english);
  });

  it.each(german)(
    '%s leaves out nothing that the English page quotes: words of the notation, options, codes',
    (name) => {
      const quoted = (folder: string): string[] => [
        ...new Set(
          [...prose(read(`${folder}/${name}`)).matchAll(/`([^`]+)`/g)].map(([, words]) =>
            words!.replace(/\s+/g, ' '),
          ),
        ),
      ];
      const own = new Set(quoted('docs/de/guide'));
      expect(quoted('docs/guide').filter((words) => !own.has(words) && !others.has(words))).toEqual([]);
    },
  );

  it.each(german)('%s shows the pictures and leads to the rules that the English page does', (name) => {
    const targets = (folder: string): string[] =>
      [...read(`${folder}/${name}`).matchAll(/\]\((?:\.\.\/)+(?:de\/)?((?:images|rules)\/[^)#]+)/g)].map(
        ([, to]) => to!,
      );
    expect(targets('docs/de/guide')).toEqual(expect.arrayContaining(targets('docs/guide')));
  });
});

describe.each([
  ['docs/guide/sections.md', '## What a section may say'],
  ['docs/de/guide/sections.md', '## Was ein Abschnitt sagen kann'],
])('the table of sections in %s', (page, heading) => {
  const table = read(page).split(heading)[1]!.split('\n\n')[1]!;
  const rows = new Map(
    table.split('\n').flatMap((line) => {
      const [, sections = '', words = ''] = line.split('|');
      const said = [...words.matchAll(/`([^`]+)`/g)].map(([, word]) => word!);
      return sections.split(',').map((one): [string, string[]] => [one.trim(), said]);
    }),
  );
  /** What a row says by naming another one. */
  const taken: Partial<Record<SectionKind, SectionKind>> = { flour: 'ingredient', scald: 'preferment' };

  it.each(sectionWords)('says every property of %s, and no other', (section) => {
    const said = [section, taken[section]].flatMap((one) => (one && rows.get(one)) ?? []);
    const words = properties[section].map(({ word }) => word);
    const isSaid = (word: string): boolean =>
      said.some((one) => one === word || one.startsWith(`${word} to `));
    // A trial has the lines of a mix, and a note may stand anywhere: the page says both in words.
    const inWords = (word: string): boolean =>
      word === 'note' || (section === 'trial' && programmeWords.has(word));
    expect(rows.has(section)).toBe(true);
    expect(words.filter((word) => !inWords(word) && !isSaid(word))).toEqual([]);
    const known = (one: string): boolean =>
      words.some((word) => word === one || one.startsWith(`${word} to `));
    expect((rows.get(section) ?? []).filter((one) => !known(one) && one !== 'a piece')).toEqual([]);
  });
});
