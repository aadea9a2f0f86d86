import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { rulePageFolders } from './rule-pages.ts';

/** Writes docs/rules, and the same in other languages, from the catalogue of rules: `node test/tidy/generate-rule-pages.ts`. */
for (const [path, pages] of rulePageFolders) {
  const folder = new URL(`../../${path}/`, import.meta.url);
  mkdirSync(folder, { recursive: true });
  for (const name of readdirSync(folder)) rmSync(new URL(name, folder));
  for (const [name, text] of pages) writeFileSync(new URL(name, folder), text);
}
