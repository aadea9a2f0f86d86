import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { rules } from '../../core/rules/catalogue.ts';
import { indexOf, pageOf } from '../../core/rules/page.ts';

/** Writes docs/rules from the catalogue of rules: `node test/tidy/generate-rule-pages.ts`. */
const folder = new URL('../../docs/rules/', import.meta.url);
mkdirSync(folder, { recursive: true });
for (const name of readdirSync(folder)) rmSync(new URL(name, folder));
for (const rule of rules) writeFileSync(new URL(`${rule.code}.md`, folder), pageOf(rule));
writeFileSync(new URL('README.md', folder), indexOf(rules));
