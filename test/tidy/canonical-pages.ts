import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { formatted } from '../syntax/formatted.ts';

/** The pages of the guide that people write: their examples are brought into the canonical form. */
export function canonicalPages(project: string, read: (name: string) => string): [string, string][] {
  return readdirSync(join(project, 'docs/guide'))
    .filter((name) => name.endsWith('.md') && name !== 'reference.md' && name !== 'actions.md')
    .map((name) => `docs/guide/${name}`)
    .map((name) => [name, withCanonicalExamples(read(name))]);
}

function withCanonicalExamples(page: string): string {
  return page.replace(
    /^(```dough\n)([\s\S]*?)^```$/gm,
    (_, open: string, example: string) => `${open}${formatted(example)}\`\`\``,
  );
}
