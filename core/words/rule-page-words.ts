/** What a page of a rule says in another language than English, whose words stand in the rule’s own file. */
export interface RulePage {
  /** One line, for lists. */
  readonly title: string;
  /** Markdown: why it matters and what to do. */
  readonly explanation: string;
}

/** By code; a language in which not all rules have a page shows those of the others in English. */
export type RulePages = Readonly<Record<string, RulePage>>;

/** The words around a rule’s own: on its page and in the list of all. */
export interface RulePageWords {
  readonly levels: Readonly<Record<'error' | 'warning' | 'info' | 'hint', string>>;
  /** Before the level that a rule has unless it is set otherwise. */
  readonly usualLevel: string;
  /** Above the example that the rule speaks of, and above the one that it is silent on. */
  readonly fires: string;
  readonly silent: string;
  readonly allRules: string;
  /** The page with the list of all rules: its heading, Markdown below it, and the heads of its table. */
  readonly list: {
    readonly title: string;
    readonly text: string;
    readonly columns: readonly [code: string, level: string, finds: string];
  };
}
