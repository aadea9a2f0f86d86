import { describe, expect, it } from 'vitest';
import { subSnippets, topSnippets } from '../../core/features/completion/snippets.ts';
import { createService } from '../../core/index.ts';
import {
  amountForms,
  besideForms,
  headerForms,
  patternsOfForm,
  plannedForms,
  type Slot,
  type SlotName,
  slots,
  stepPattern,
} from '../../core/syntax/line-forms.ts';
import { followPattern, patternOf } from '../../core/syntax/line-pattern.ts';
import { cutLine } from '../../core/syntax/tokens.ts';
import type { SectionKind } from '../../core/syntax/tree.ts';
import { holdsIngredients, properties, sectionWords, stepWords } from '../../core/syntax/vocabulary.ts';

// The patterns that help while typing is made of are what the grammar reads, and the other way round.

/** Every way to write a pattern: what is in brackets said or left out, places filled in with their example. */
function written(pattern: string): string[] {
  const bracket = /^(.*?)\[([^\]]*)\](.*)$/.exec(pattern);
  if (bracket !== null) {
    const [, before, inside, after] = bracket;
    return [...written(`${before}${inside}${after}`), ...written(`${before}${after}`)];
  }
  const filled = pattern
    .replace(/, …$/, '')
    .replace(/[A-Z]{2,}/g, (slot) => (slots[slot as SlotName] as Slot | undefined)?.example ?? slot)
    .replace(/\s+/g, ' ')
    .replace(/ ,/g, ',')
    .trim();
  return [filled];
}

const headerOf = (section: SectionKind): string =>
  ({ mix: 'mix in spiral:', process: 'process:', trial: 'trial 2026-03-14:' })[section as string] ??
  `${section} quay:`;

/** Problems of wording in a line of a section. */
function problemsOf(section: SectionKind, line: string): string[] {
  const service = createService();
  const isTop = ['formula', 'flour', 'ingredient', 'mixer', 'bakery', 'plan'].includes(section);
  const text = `${isTop ? '' : 'formula A:\n  bread flour 100%\n'}${headerOf(section)}\n  ${line}\n`;
  service.setText('file:///a.dough', text);
  const at = isTop ? 1 : 3;
  const wording = /missing|wrong|unknown-property|unfinished|range|grouped|stray|extra|outside/;
  return service
    .findings('file:///a.dough')
    .filter(({ place, code }) => place.line === at && wording.test(code))
    .map(({ message }) => message);
}

const ofProperties = sectionWords.flatMap((section) =>
  properties[section].filter(({ word }) => word !== 'note').map((one) => ({ section, ...one })),
);

describe('every pattern reads as the grammar wants it', () => {
  it.each(ofProperties)('$section: $word', ({ section, word, form }) => {
    for (const pattern of patternsOfForm[form])
      for (const value of written(pattern))
        expect(problemsOf(section, `${word} ${value}`), value).toEqual([]);
  });

  it('amounts, in each section that holds ingredients, and in plans', () => {
    for (const section of sectionWords.filter((one) => holdsIngredients(one))) {
      const isBeside = ['filling', 'topping', 'bath'].includes(section);
      for (const { pattern, of } of isBeside ? besideForms : amountForms)
        for (const amount of written(pattern))
          expect(
            problemsOf(section, `${of === 'part' ? 'quay' : (of ?? 'butter')}  ${amount}`),
            amount,
          ).toEqual([]);
    }
    for (const { pattern } of plannedForms)
      for (const amount of written(pattern)) expect(problemsOf('plan', `A  ${amount}`), amount).toEqual([]);
  });

  it('steps', () => {
    for (const word of [...stepWords, 'admire'])
      for (const rest of written(stepPattern(word)))
        expect(problemsOf('process', `${word} ${rest}`)).toEqual([]);
  });

  it('headers', () => {
    for (const section of sectionWords)
      for (const pattern of headerForms[section])
        for (const header of written(pattern)) {
          const service = createService();
          service.setText('file:///a.dough', `formula A:\n  bread flour 100%\n${header}\n`);
          const told = service
            .findings('file:///a.dough')
            .filter(({ code }) => /colon|name|section/.test(code));
          expect(
            told.map(({ message }) => message),
            header,
          ).toEqual([]);
        }
  });
});

describe('every example of the vocabulary', () => {
  it.each(ofProperties)('is of a pattern: $section: $example', ({ word, form, example }) => {
    const tokens = cutLine(example).tokens.filter(
      ({ kind, start }) => kind !== 'blank' && start >= word.length,
    );
    const found = patternsOfForm[form].some((pattern) => followPattern(patternOf(pattern), tokens)?.isWhole);
    expect(found).toBe(true);
  });
});

describe('every snippet', () => {
  it.each(Object.entries({ ...topSnippets, ...subSnippets }))(
    '%s has no problem of wording when it is filled in',
    (word, snippet) => {
      const text = snippet
        .replace(/\$\{\d+\|([^,|}]*)[^}]*\}/g, '$1')
        .replace(/\$\{\d+:([^}]*)\}/g, '$1')
        .replace('$0', '');
      const service = createService();
      service.setText(
        'file:///a.dough',
        word in topSnippets ? text : `formula A:\n  bread flour 100%\n${text}`,
      );
      const wording = /missing|wrong|unknown-property|range|grouped|stray|extra|outside|colon/;
      expect(service.findings('file:///a.dough').filter(({ code }) => wording.test(code))).toEqual([]);
    },
  );
});
