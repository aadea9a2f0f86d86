import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { catalogueIngredients } from '../../core/catalogue/catalogue.ts';
import { flourTypes } from '../../core/catalogue/flour-types.ts';
import { createService, rules, type Service } from '../../core/index.ts';
import { slots } from '../../core/syntax/line-forms.ts';
import {
  allPropertyWords,
  properties,
  roleWords,
  sectionWords,
  stageWords,
  stepWords,
  wordsOfForm,
} from '../../core/syntax/vocabulary.ts';
import { english, type Language } from '../../core/words/language.ts';
import type { Said, Speaker } from '../../core/words/speaker.ts';

// A language of which every message is its code between quotation marks, with all that it was given: what an editor shows beside
// the codes is nobody's words but those of the file and of the notation, or was not asked of the language at all.
const sentence = (code: string) => (args: object, say: Speaker) => {
  const given = Object.values(args)
    .flat()
    .map((one: unknown) => (typeof one === 'object' ? say.say(one as Said) : one));
  return `«${code}» ${given.filter((one) => typeof one === 'string').join(' ')}`;
};
const subjects: Readonly<Record<string, object>> = english.subjects;
const codes: Language = {
  ...english,
  tag: 'codes',
  subjects: Object.fromEntries(
    Object.entries(subjects).map(([subject, sentences]) => [
      subject,
      Object.fromEntries(Object.keys(sentences).map((code) => [code, sentence(code)])),
    ]),
  ) as object,
};

const folder = new URL('../../examples/', import.meta.url);
const names = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.dough'))
  .sort();
const notation = [
  ...[...allPropertyWords, ...roleWords, ...sectionWords, ...stageWords, ...stepWords],
  ...Object.values(wordsOfForm).flat(),
  ...Object.values(slots).map(({ example }) => example),
  ...Object.values(properties)
    .flat()
    .map(({ example }) => example),
  ...catalogueIngredients.flatMap(({ name, aliases }) => [name, ...aliases]),
  ...flourTypes.map(({ name }) => name),
  ...rules.map(({ code }) => code),
  'NDB',
].join(' ');
const wordsOf = (text: string): string[] => text.toLowerCase().match(/\p{L}{3,}/gu) ?? [];

function workspace(): { service: Service; known: ReadonlySet<string> } {
  const service = createService();
  service.setSettings({ language: codes });
  service.setRoots([folder.href]);
  let all = notation;
  for (const name of names) {
    const text = readFileSync(new URL(name, folder), 'utf8');
    // Cost is left out: its words have tests of their own.
    service.setText(new URL(name, folder).href, text.replace(/^ *price .*$/gm, ''));
    all += ` ${text}`;
  }
  return { service, known: new Set(wordsOf(all)) };
}

describe('in another language', () => {
  const { service, known } = workspace();
  const foreign = (text: string): string[] =>
    wordsOf(text.replace(/«[^»]*»/g, ' ')).filter((word) => !known.has(word));

  it.each(names)('an editor shows no English of its own: %s', (name) => {
    const uri = new URL(name, folder).href;
    const shown: string[] = service.lines(uri).flatMap((text, line) => {
      const column = text.search(/\S/);
      if (column < 0) return [];
      const end = Math.max(column, text.trimEnd().length - 1);
      const range = { line, start: column, endLine: line, end: column };
      return [
        ...[column, end].map((at) => service.hover(uri, line, at)?.markdown ?? ''),
        service.hintDetail(uri, line)?.tooltip ?? '',
        ...service.actions(uri, range).map(({ title }) => title),
        service.goesItem(uri, line, column)?.detail ?? '',
        ...service.goesInto(uri, line, column).map(({ item }) => item.detail),
        ...(service.signatures(uri, line, text.length)?.signatures ?? []).flatMap(
          ({ documentation = '', parameters }) => [
            documentation,
            ...parameters.map((one) => one.documentation ?? ''),
          ],
        ),
      ];
    });
    shown.push(
      ...service.hints(uri, 0, 1e6).map(({ label }) => label),
      ...service.symbols(uri).map(({ detail }) => detail),
      ...service.lenses(uri).map((lens) => (lens.kind === 'totals' ? lens.text : '')),
      service.status(uri, 0)?.tooltip ?? '',
    );
    if (name.startsWith('formulas/')) expect(shown.join('')).toContain('«totals.line»');
    expect(new Set(shown.flatMap(foreign))).toEqual(new Set());
  });

  it('shows no English of its own beside what is defined, or to begin with', () => {
    const shown = [
      ...service.overview().map(({ detail }) => detail),
      ...service.templates().flatMap(({ title, explanation }) => [title, explanation]),
    ];
    expect(new Set(shown.flatMap(foreign))).toEqual(new Set());
  });
});
