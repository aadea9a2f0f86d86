import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  createService,
  type Finding,
  type LanguageTag,
  languageTagOf,
  languageTags,
  loadLanguage,
  rules,
} from '../../core/index.ts';
import { languageOption } from '../../server/cli/language-option.ts';
import { wordedIn } from '../../server/sync/language.ts';
import { settingsTable } from '../../server/sync/settings-table.ts';
import { languages } from './languages.ts';

const examples = new URL('../../examples/', import.meta.url);

/** What is found in the examples and in what each rule has for bad. */
async function findingsIn(tag: LanguageTag): Promise<readonly Finding[]> {
  const service = createService();
  service.setSettings(await wordedIn(tag));
  const names = readdirSync(examples).filter((name) => name.endsWith('.dough'));
  const texts = [
    ...names.map((name) => readFileSync(new URL(name, examples), 'utf8')),
    ...rules.map(({ bad }) => bad),
  ];
  return texts.flatMap((text, index) => {
    // A root of its own each, for they define the same names.
    const uri = `file:///quay-lane/${index}/a.dough`;
    service.setRoots([`file:///quay-lane/${index}`]);
    service.setText(uri, text);
    const found = service.findings(uri);
    service.remove(uri);
    return found;
  });
}

const withoutWords = ({ message: _, fixes, related, ...rest }: Finding) => ({
  ...rest,
  fixes: fixes?.map(({ title: _title, ...fix }) => fix),
  related: related?.map(({ message: _message, ...one }) => one),
});

/** The figures of a sentence, however it writes them and in whatever order. */
const figuresOf = (text: string): string[] => text.match(/\d+(?:\.\d+)?/g)?.sort() ?? [];

describe('another language', () => {
  it('changes no code, no level, no place, no edit and no figure of what is found', async () => {
    const english = await findingsIn('en');
    expect(english.length).toBeGreaterThan(100);
    for (const tag of languageTags.filter((one) => one !== 'en')) {
      const other = await findingsIn(tag);
      expect(other.map(withoutWords), tag).toEqual(english.map(withoutWords));
      for (const [index, { message, code }] of english.entries())
        expect(figuresOf(other[index]!.message), `${tag} ${code}: ${message}`).toEqual(figuresOf(message));
      const translated = other.filter(({ message }, index) => message !== english[index]!.message);
      expect(translated.length, tag).toBeGreaterThan(30);
    }
  });

  it('is known by the first part of a locale, and English stands for all others', () => {
    const tags = ['de', 'de-AT', 'de-CH', 'DE_de', 'en', 'en-GB', 'fr', 'fr-CA', 'it', 'den', ''].map(
      languageTagOf,
    );
    expect(tags).toEqual(['de', 'de', 'de', 'de', 'en', 'en', 'fr', 'fr', 'en', 'en', 'en']);
  });

  it('is loaded by its tag, and is the same wherever it may be chosen', async () => {
    for (const tag of languageTags) expect((await loadLanguage(tag)).tag).toBe(tag);
    expect(languages.map(({ tag }) => tag)).toEqual([...languageTags]);
    expect(languageOption().argChoices).toEqual([...languageTags]);
    const setting = settingsTable.find(({ key }) => key === 'language')!;
    expect(setting.type === 'choice' && setting.choices).toEqual(['editor', ...languageTags]);
  });

  it('has a page for every rule that there is, in its own words, and for no other; or none at all', async () => {
    for (const tag of languageTags) {
      const { rulePages } = await loadLanguage(tag);
      if (rulePages === undefined) expect(['en', 'fr']).toContain(tag);
      else expect(Object.keys(rulePages!).sort()).toEqual(rules.map(({ code }) => code).sort());
      for (const { code, title } of rules) {
        const own = rulePages?.[code]?.title ?? '';
        expect(own, code).not.toBe(title);
        expect(own, code).not.toMatch(/\.$/);
      }
    }
  });

  it('keeps in the page of a rule every warning to stop the mixer, every figure and every piece of the notation', async () => {
    const { rulePages } = await loadLanguage('de');
    for (const { code, explanation } of rules) {
      const own = rulePages![code]!.explanation;
      expect(figuresOf(own.replace(/(\d),(?=\d)/g, '$1.')), code).toEqual(figuresOf(explanation));
      if (explanation.includes('Stop the mixer')) expect(own, code).toContain('Den Kneter anhalten');
      const pieces = (text: string) => [...text.matchAll(/`([^`]+)`/g)].map(([, piece]) => piece!);
      const known = pieces(explanation).map((piece) => piece.replace(/ reason$|: reason$|: …$/, ''));
      for (const piece of pieces(own))
        expect(
          known.some((one) => piece.startsWith(one)),
          `${code}: ${piece}`,
        ).toBe(true);
    }
  });
});
