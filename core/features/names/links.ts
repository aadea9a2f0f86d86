import { rulesByCode } from '../../rules/engine/rule-catalogue.ts';
import { wordsOfRule } from '../../rules/engine/rule-page.ts';
import type { SourceFile } from '../../syntax/tree.ts';
import type { Place } from '../../text/span.ts';
import type { Language } from '../../words/language.ts';

/** A code in an `# accept`, which leads to the page of its rule. */
export interface RuleLink {
  readonly place: Place;
  readonly code: string;
  readonly title: string;
}

/** The codes of rules that a file names, with their titles in a language. */
export function ruleLinksOf(file: SourceFile, language: Language): RuleLink[] {
  return file.lines.flatMap(({ accept }, line) =>
    (accept?.codes ?? []).flatMap(({ code, span }) => {
      const rule = rulesByCode.get(code);
      return rule === undefined
        ? []
        : [{ place: { line, ...span }, code, title: wordsOfRule(rule, language).title }];
    }),
  );
}
