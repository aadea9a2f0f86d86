import { rules } from '../../core/rules/engine/rule-catalogue.ts';
import { indexOf, type PageElsewhere, pageOf } from '../../core/rules/engine/rule-page.ts';
import { german } from '../../core/words/de/german.ts';
import { english } from '../../core/words/language.ts';

/** The folders of rule pages, a language each, with every page that they hold. */
export const rulePageFolders: ReadonlyMap<string, ReadonlyMap<string, string>> = new Map([
  ['docs/rules', pagesIn(english, [{ language: 'Deutsch', folder: '../de/rules/' }])],
  ['docs/de/rules', pagesIn(german, [{ language: 'English', folder: '../../rules/' }])],
]);

function pagesIn(language: typeof english, elsewhere: readonly PageElsewhere[]): ReadonlyMap<string, string> {
  return new Map([
    ...rules.map((rule) => [`${rule.code}.md`, pageOf(rule, language, elsewhere)] as const),
    ['README.md', indexOf(rules, language, elsewhere)],
  ]);
}
