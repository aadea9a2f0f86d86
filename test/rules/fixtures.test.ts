import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { updating } from '../updating.ts';
import { type Case, marked, readArchive, writeArchive } from './archive.ts';
import { applied, findingsOf, firstFix } from './findings.ts';

const folder = new URL('../fixtures/rules/', import.meta.url);

for (const name of readdirSync(folder).sort()) {
  const url = new URL(name, folder);
  const code = name.replace(/\.txt$/, '');
  describe(code, () => {
    const cases = readArchive(readFileSync(url, 'utf8'));
    const updated: Case[] = [];
    for (const one of cases) {
      it(one.title, () => {
        const findings = findingsOf(one.files);
        const own = findings.find((finding) => finding.code === code);
        expect(own !== undefined, `${code} ${one.kind === 'fires' ? 'says nothing' : 'speaks'}`).toBe(
          one.kind === 'fires',
        );
        const expected = marked(one.files, findings);
        const fix = own === undefined ? undefined : firstFix(own);
        let fixed: string | undefined;
        if (one.fixed !== undefined) {
          expect(fix, 'has a fix').toBeDefined();
          const given = one.files.find((file) => file.path === own!.path)!;
          fixed = applied(given.text, own!.firstLine, fix!).replaceAll('\r\n', '\n');
        }
        updated.push({ ...one, expected, fixed });
        if (updating) return;
        expect(expected).toBe(one.expected);
        expect(fixed).toBe(one.fixed);
      });
    }
    if (updating) {
      it('is rewritten', () => {
        expect(updated).toHaveLength(cases.length);
        writeFileSync(url, writeArchive(updated));
      });
    }
  });
}
