import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Display, plainDisplay } from '../../core/text/display.ts';
import type { subjects } from '../../core/words/en/english.ts';
import { type Grammar, type Language, plainGrammar } from '../../core/words/language.ts';
import { type Code, type Message, message, type Translation } from '../../core/words/message.ts';
import { plainSpeaker, speakerOf } from '../../core/words/speak.ts';
import type { Said, Speaker } from '../../core/words/speaker.ts';
import { intlGrammar } from '../../server/host/grammar.ts';
import { filesIn, project } from '../tidy/imports.ts';
import { updating } from '../updating.ts';
import { anyArgs, argsFrom, broken, usualArgs } from './args.ts';
import { asTheyCome } from './as-they-come.ts';
import { languages } from './languages.ts';

const abroad: Display = { mass: 'ounces', temperature: 'fahrenheit', decimalSign: 'comma' };
const said = (code: string, args: object): Said => ({ code, args });

type Sentences = Readonly<Record<string, (args: object, say: Speaker) => string>>;
const asItComes = (code: string): object => asTheyCome[code as Code] ?? argsFrom(usualArgs);
const sentencesOf = (language: Language): Sentences => Object.assign({}, ...Object.values(language.subjects));
const codesOf = (language: Language): string[] => Object.keys(sentencesOf(language));

describe.each(languages)('$tag', (language) => {
  const speakers = [plainDisplay, abroad].map((display) =>
    speakerOf(language, display, intlGrammar(language.tag)),
  );

  it('words every message whatever its figures and names, each of which is there', () => {
    fc.assert(
      fc.property(anyArgs, (values) => {
        for (const code of codesOf(language)) {
          const args = argsFrom(values);
          for (const speaker of speakers) {
            const sentence = speaker.say(said(code, args));
            // Hundreds of thousands of sentences: each by an expectation of its own takes ten times as long.
            if (broken.test(sentence) || sentence.trim() === '') throw new Error(`${code}: “${sentence}”`);
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  it('has the messages that there are, each in one subject', () => {
    const all = codesOf(languages[0]!);
    if (language.whole) expect(codesOf(language).sort()).toEqual(all.sort());
    else expect(codesOf(language).filter((code) => !all.includes(code))).toEqual([]);
    const subjects = Object.values(language.subjects).flatMap((subject) => Object.keys(subject));
    expect(subjects.sort()).toEqual(codesOf(language).sort());
  });

  it('takes the arguments that English takes', () => {
    const [english, own] = [sentencesOf(languages[0]!), sentencesOf(language)];
    for (const code of codesOf(language)) {
      const [wanted, used] = [new Set<string>(), new Set<string>()];
      english[code]!(argsFrom(usualArgs, wanted), plainSpeaker);
      own[code]!(argsFrom(usualArgs, used), plainSpeaker);
      expect(
        [...used].filter((name) => !wanted.has(name)),
        code,
      ).toEqual([]);
    }
  });

  for (const [subject, sentences] of Object.entries(language.subjects)) {
    it(`reads as it stands written down: ${subject}`, () => {
      const url = new URL(`../fixtures/words/${language.tag}/${subject}.txt`, import.meta.url);
      const speaker = speakers[0]!;
      const lines = Object.keys(sentences).map(
        (code) => `${code}\n  ${speaker.say(said(code, asItComes(code))).replaceAll('\n', '\n  ')}\n`,
      );
      if (updating) writeFileSync(url, lines.join(''));
      expect(lines.join('')).toBe(readFileSync(url, 'utf8'));
    });
  }

  it('is written down for no subject that is gone', () => {
    const folder = new URL(`../fixtures/words/${language.tag}/`, import.meta.url);
    expect(
      readdirSync(folder)
        .map((name) => basename(name, '.txt'))
        .sort(),
    ).toEqual(Object.keys(language.subjects).sort());
  });
});

it('how messages come is said for those alone that there are', () => {
  expect(Object.keys(asTheyCome).filter((code) => !codesOf(languages[0]!).includes(code))).toEqual([]);
});

describe('a language that lacks a sentence', () => {
  const few: Language = {
    ...languages.find(({ tag }) => tag === 'fr')!,
    subjects: { 'mixing-warmth': { 'warmth.too': () => 'trop chaude' } },
  };
  const speaker = speakerOf(few, { ...plainDisplay, decimalSign: 'comma' }, intlGrammar('fr'));

  it('says it in English, with the figures and lists of English', () => {
    expect(speaker.say(message('warmth.too'))).toBe('trop chaude');
    expect(
      speaker.say(message('salt-range.much', { fraction: 0.205, lowFraction: 0.015, highFraction: 0.025 })),
    ).toBe('20,5% salt on all flour is unusually much: 1,5 to 2,5% is common practice.');
    expect(speaker.say(message('unknown-part.others', { name: 'a', names: ['b', 'c', 'd'] }))).toBe(
      'The formula has no part called “a”. Its parts are b, c and d.',
    );
  });
});

describe('French', () => {
  // Common practice of French printing, no source: no line may break between a word and these.
  it('has a blank that does not break before : ; ? ! % and within « »', () => {
    const speaker = speakerOf(languages.find(({ tag }) => tag === 'fr')!, plainDisplay, intlGrammar('fr'));
    for (const code of codesOf(languages.find(({ tag }) => tag === 'fr')!)) {
      const sentence = speaker.say(said(code, argsFrom(usualArgs)));
      expect(sentence, code).not.toMatch(/ [:;?!%»]|« |[^\s\u00a0\u202f]»|«[^\u00a0\u202f]/);
    }
  });
});

describe('the plural', () => {
  const all = languages.flatMap((language) => {
    const grammars: Grammar[] = [intlGrammar(language.tag)];
    if (language.tag === 'en') grammars.push(plainGrammar);
    return grammars.map((grammar) => [language, grammar] as const);
  });
  const wanted: Readonly<Record<string, readonly string[]>> = {
    en: ['0 loaves', '1 loaf', '2 loaves', '5 loaves'],
    de: ['0 loaves', '1 loaf', '2 loaves', '5 loaves'],
    // Unicode CLDR, plural rules: French counts zero as one.
    fr: ['0 loaf', '1 loaf', '2 loaves', '5 loaves'],
  };

  it('is that of the language for 0, 1, 2 and 5', () => {
    for (const [language, grammar] of all) {
      const speaker = speakerOf(language, plainDisplay, grammar);
      const counted = [0, 1, 2, 5].map((count) => speaker.count(count, { one: '# loaf', other: '# loaves' }));
      expect(counted, language.tag).toEqual(wanted[language.tag]);
    }
  });

  it('takes `other` where a language has no form of its own, and a name with a sign in it as it is', () => {
    expect(plainSpeaker.count(1, { other: '# kg of “$&”' })).toBe('1 kg of “$&”');
  });
});

describe('a list', () => {
  it('is joined alike by plain English and by the host', () => {
    const hosts = intlGrammar('en');
    for (const words of [[], ['a'], ['a', 'b'], ['a', 'b', 'c']])
      for (const kind of ['and', 'or'] as const)
        expect(plainGrammar.list(words, kind)).toBe(hosts.list(words, kind));
  });
});

describe('a message', () => {
  it('is plain data that survives being written as JSON', () => {
    const made: Message = message('salt-range.much', {
      fraction: 0.2,
      lowFraction: 0.015,
      highFraction: 0.025,
    });
    expect(JSON.parse(JSON.stringify(made))).toEqual(made);
    expect(plainSpeaker.say(JSON.parse(JSON.stringify(made)) as Message)).toMatch(/^20% salt/);
  });

  it('does not compile where it does not exist or is given something else', () => {
    // @ts-expect-error: no message has this code
    const misspelt = () => message('salt-rang.much', { fraction: 0.2 });
    // @ts-expect-error: it wants a fraction
    const without = () => message('salt-range.much', { lowFraction: 0.2, highFraction: 0.3 });
    // @ts-expect-error: its name is a text
    const other = () => message('unknown-part.none', { name: 3 });
    // @ts-expect-error: it takes none
    const none = () => message('no-pieces.also', { name: 'a' });
    expect([misspelt, without, other, none]).toHaveLength(4);
  });

  it('wants a sentence in every language, of its name and with its arguments', () => {
    type Few = Pick<typeof subjects.sums, 'no-pieces.also' | 'no-scale.part'>;
    const whole: Translation<Few> = {
      'no-pieces.also': () => 'auch je Stück gezählt',
      'no-scale.part': ({ part }) => `Wie viel von „${part}“ gemacht wird, steht nirgends.`,
    };
    // @ts-expect-error: one is missing
    const missing: Translation<Few> = { 'no-pieces.also': () => '' };
    // @ts-expect-error: no message is called so
    const misspelt: Translation<Few> = { ...whole, 'no-scale.parts': () => '' };
    // @ts-expect-error: it is not given that
    const other: Translation<Few> = { ...whole, 'no-scale.part': ({ name }) => name };
    expect([whole, missing, misspelt, other]).toHaveLength(4);
  });

  it('of another version is shown by its code', () => {
    expect(plainSpeaker.say({ code: 'not-here.any', args: {} })).toBe('not-here.any');
  });
});

describe('no sentence', () => {
  it('is left in a catalogue that nobody makes', () => {
    const sources = [...filesIn('core', '.ts'), ...filesIn('server', '.ts')]
      .filter((file) => !file.startsWith('core/words/'))
      .map((file) => readFileSync(`${project}/${file}`, 'utf8'))
      .join('\n');
    const used = new Set(
      [...sources.matchAll(/[`'](?<code>[a-z-]+\.[a-z-]+)[`']/g)].map((one) => one.groups!.code!),
    );
    // `missing-unit.${kind}`
    const begun = [...sources.matchAll(/`([a-z-]+\.(?:[a-z-]+-)?)\$\{/g)].map(([, start]) => start!);
    const unused = codesOf(languages[0]!).filter(
      (code) => !used.has(code) && !begun.some((start) => code.startsWith(start)),
    );
    expect(unused).toEqual([]);
  });
});
