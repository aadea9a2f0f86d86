import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { rules } from '../../core/rules/engine/rule-catalogue.ts';
import { isWritingError } from '../../core/rules/notation/syntax-rows.ts';
import { readCases } from '../rules/archive.ts';
import { findingsOf, firstFix } from '../rules/findings.ts';
import { problemCodes } from '../rules/problem-codes.ts';
import { inWords } from '../words/told.ts';
import { filesIn } from './imports.ts';
import { rulePageFolders } from './rule-pages.ts';

const here = (path: string): URL => new URL(`../../${path}`, import.meta.url);
const ruleFiles = filesIn('core/rules', '.ts');
const codes = rules.map((rule) => rule.code);

describe('the catalogue of rules', () => {
  it('gives every rule a code of its own, in kebab case', () => {
    expect(new Set(codes).size).toBe(codes.length);
    for (const code of codes) expect(code).toMatch(/^[a-z]+(-[a-z]+)*$/);
  });

  it('has a row for every code that the reading of lines uses, and no other row without a check', () => {
    const rows = rules.filter((rule) => rule.check === undefined).map((rule) => rule.code);
    expect(rows.sort()).toEqual([...problemCodes(), 'unknown-accept', 'unused-accept'].sort());
  });

  it('lets no error of writing be accepted, and only those', () => {
    for (const rule of rules)
      expect(isWritingError(rule.code)).toBe(rule.check === undefined && rule.level === 'error');
  });
});

describe.each(rules)('$code', (rule) => {
  const fixture = here(`test/fixtures/rules/${rule.code}.txt`);
  const own = (text: string) =>
    findingsOf([{ path: 'test.dough', text }]).filter((one) => one.code === rule.code);

  it('has a file named after it', () => {
    const named = ruleFiles.filter((file) => file.endsWith(`/${rule.code}.ts`));
    expect(named).toHaveLength(rule.check === undefined ? 0 : 1);
  });

  it('speaks of its bad example and is silent on the good one, where nothing else is wrong', () => {
    expect(own(rule.bad)).not.toEqual([]);
    const good = findingsOf([{ path: 'test.dough', text: rule.good }]);
    expect(good.map((one) => `${one.level} ${one.code}: ${inWords(one.message)}`)).toEqual([]);
  });

  it('has fixtures that fire and stay silent, and one of its fix', () => {
    const { cases } = readCases(fileURLToPath(fixture));
    expect(cases.some((one) => one.kind === 'fires')).toBe(true);
    expect(cases.some((one) => one.kind === 'silent')).toBe(true);
    const firing = cases.flatMap((one) =>
      findingsOf(one.files).filter((finding) => finding.code === rule.code),
    );
    const fixes = firing.some((finding) => firstFix(finding) !== undefined);
    expect(cases.some((one) => one.fixed !== undefined)).toBe(fixes);
  });

  it('keeps its message to one line in a baker’s words', () => {
    for (const one of own(rule.bad)) {
      const message = inWords(one.message);
      expect(message).not.toMatch(/undefined|NaN|Infinity|\n|\[object/);
      expect(message.length).toBeLessThan(320);
    }
  });

  it('has its page in every language, made from the row', () => {
    for (const [folder, pages] of rulePageFolders) {
      const name = `${rule.code}.md`;
      expect(readFileSync(here(`${folder}/${name}`), 'utf8'), folder).toBe(pages.get(name));
    }
  });
});

describe.each([...rulePageFolders])('%s', (folder, pages) => {
  it('holds the table and a page for each rule, and nothing else', () => {
    expect(readFileSync(here(`${folder}/README.md`), 'utf8')).toBe(pages.get('README.md'));
    const expected = ['README.md', ...codes.map((code) => `${code}.md`)].sort();
    expect(readdirSync(here(folder)).sort()).toEqual(expected);
  });

  it('has the examples of every rule as the English page has them', () => {
    const examples = (page: string) => page.match(/^```dough\n[\s\S]*?^```$/gm);
    for (const [name, page] of pages) {
      const english = rulePageFolders.get('docs/rules')!.get(name)!;
      expect(examples(page), name).toEqual(examples(english));
      if (name !== 'README.md') expect(examples(page), name).toHaveLength(2);
    }
  });

  it('leads from each page to pages that are there', () => {
    for (const [name, page] of pages)
      for (const [, to] of page.matchAll(/\]\(([^)#]+)/g))
        expect(existsSync(new URL(to!, here(`${folder}/${name}`))), `${name}: ${to}`).toBe(true);
  });
});

describe('the fixtures of rules', () => {
  it('are there for no rule that is gone', () => {
    expect(readdirSync(here('test/fixtures/rules')).sort()).toEqual(
      codes.map((code) => `${code}.txt`).sort(),
    );
  });
});
