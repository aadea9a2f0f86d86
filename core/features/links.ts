import { rulesByCode } from '../rules/catalogue.ts';
import type { SourceFile } from '../syntax/tree.ts';
import type { Place } from '../text/span.ts';

/** A code in an `# accept`, which leads to the page of its rule. */
export interface RuleLink {
  readonly place: Place;
  readonly code: string;
  readonly title: string;
}

/** The codes of rules that a file names. */
export function ruleLinksOf(file: SourceFile): RuleLink[] {
  return file.lines.flatMap(({ accept }, line) =>
    (accept?.codes ?? []).flatMap(({ code, span }) => {
      const rule = rulesByCode.get(code);
      return rule === undefined ? [] : [{ place: { line, ...span }, code, title: rule.title }];
    }),
  );
}
