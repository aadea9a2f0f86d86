import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { writeFixture } from '../fixture.ts';
import { updating } from '../updating.ts';
import { type Case, marked, readCases, writtenCase } from './archive.ts';
import { applied, findingsOf, firstFix } from './findings.ts';

const folder = new URL('../fixtures/rules/', import.meta.url);

for (const name of readdirSync(folder).sort()) {
  const url = new URL(name, folder);
  const code = name.replace(/\.txt$/, '');
  describe(code, () => {
    const { file, cases } = readCases(fileURLToPath(url));
    const updated: Case[] = [];
    for (const one of cases) {
      it(one.title, () => {
        const findings = findingsOf(one.files);
        const own = findings.find((finding) => finding.code === code);
        expect(own !== undefined, `${code} ${one.kind === 'fires' ? 'says nothing' : 'speaks'}`).toBe(
          one.kind === 'fires',
        );
        const expected = marked(one, findings);
        const fix = own === undefined ? undefined : firstFix(own);
        let fixed: string | undefined;
        if (one.fixed !== undefined) {
          expect(fix, 'has a fix').toBeDefined();
          const given = one.files.find(({ path }) => path === own!.path)!;
          fixed = applied(given.text, own!.firstLine, fix!).replaceAll('\r\n', '\n').replace(/\n+$/, '');
        }
        updated.push({ ...one, expected, fixed });
        if (updating) return;
        expect(expected).toEqual(one.expected);
        expect(fixed).toBe(one.fixed);
      });
    }
    if (updating) {
      it('is rewritten', () => {
        expect(updated).toHaveLength(cases.length);
        writeFixture(file, updated.map(writtenCase));
      });
    }
  });
}
