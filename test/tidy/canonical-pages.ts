import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { formatted } from '../syntax/formatted.ts';

/** Where the guide lies, English first. */
export const guideFolders = ['docs/guide', 'docs/de/guide'] as const;

/** The pages of the guide that people write: their examples are brought into the canonical form. */
export function canonicalPages(project: string, read: (name: string) => string): [string, string][] {
  return guideFolders.flatMap((folder) =>
    readdirSync(join(project, folder))
      .filter((name) => name.endsWith('.md') && name !== 'reference.md' && name !== 'actions.md')
      .map((name) => `${folder}/${name}`)
      .map((name): [string, string] => [name, withCanonicalExamples(read(name))]),
  );
}

function withCanonicalExamples(page: string): string {
  return page.replace(
    /^(```dough\n)([\s\S]*?)^```$/gm,
    (_, open: string, example: string) => `${open}${formatted(example)}\`\`\``,
  );
}
