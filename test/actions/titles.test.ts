import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { createService } from '../../core/index.ts';
import { german } from '../../core/words/de/german.ts';
import { english } from '../../core/words/language.ts';
import { corpus } from '../fuzz/corpus.ts';
import { failed } from '../rules/failed.ts';

const folder = join(import.meta.dirname, '..', 'fixtures');
const everyday = ['everyday', 'everyday-notes', 'everyday-further', 'everyday-fresh'].flatMap((set) =>
  readdirSync(join(folder, set)).map((name) => readFileSync(join(folder, set, name), 'utf8')),
);

// A menu shows some seventy letters before it cuts; German words are longer.
describe.each([
  { language: english, most: 69 },
  { language: german, most: 80 },
])('titles of actions in $language.tag', ({ language, most }) => {
  it(`have at most ${most} letters at every line of all fixtures, examples and everyday formulas`, () => {
    const service = createService({ failed });
    service.setSettings({ language });
    const seen = new Set<string>();
    for (const text of [...corpus(), ...everyday]) {
      const uri = 'file:///quay/titles.dough';
      service.setText(uri, text);
      for (const [line, { length }] of service.lines(uri).entries())
        for (const { id, title } of service.actions(uri, { line, start: 0, endLine: line, end: length })) {
          expect([...title].length, `${id}: ${title}`).toBeLessThanOrEqual(most);
          seen.add(id);
        }
    }
    // All but those that want a selection.
    expect(seen.size).toBeGreaterThan(15);
  });
});

// A finding's menu stands in a narrow column beside it, and a programme that trials keep adds some words.
describe.each([
  { language: english, most: 60 },
  { language: german, most: 72 },
])('titles of fixes in $language.tag that trials have a part in', ({ language, most }) => {
  it(`have at most ${most} letters in all fixtures and examples`, () => {
    const service = createService({ failed });
    service.setSettings({ language });
    const seen = new Set<string>();
    for (const text of corpus()) {
      if (!/^trial /m.test(text)) continue;
      const uri = 'file:///quay/titles.dough';
      service.setText(uri, text);
      for (const { code, fixes } of service.findings(uri))
        for (const { title } of fixes) {
          if (!ofMixing.test(code)) continue;
          expect([...title].length, `${code}: ${title}`).toBeLessThanOrEqual(most);
          seen.add(code);
        }
    }
    expect(seen.size).toBeGreaterThan(6);
  });
});

const ofMixing =
  /^(?:too-warm|let-down|broken-down|mixed-past-need|under-developed|ice-|idle-rest|trial-|.*-can-be-calibrated)/;
