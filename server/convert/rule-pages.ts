/** Where the pages of the rules lie, by language: of each a URI that ends in a slash. */
export type RulePageFolders = Readonly<Partial<Record<string, string>>>;

/** What a client says of it: one folder, whose pages are English, or one for each language. Anything else says nothing. */
export function readRulePages(said: unknown): RulePageFolders | undefined {
  if (typeof said === 'string') return { en: said };
  if (typeof said !== 'object' || said === null || Array.isArray(said)) return undefined;
  return Object.fromEntries(
    Object.entries(said).filter((one): one is [string, string] => typeof one[1] === 'string'),
  );
}

/** The folder of the pages in a language, else that of the English ones; `undefined` where there is neither. */
export function rulePagesIn(folders: RulePageFolders | undefined, language: string): string | undefined {
  return folders?.[language] ?? folders?.en;
}
