/** What a page of a rule says in another language than English, whose words stand in the rule’s own file. */
export interface RulePage {
  /** One line, for lists. */
  readonly title: string;
  /** Markdown: why it matters and what to do. */
  readonly explanation: string;
}

export type RulePages = Readonly<Record<string, RulePage>>;
