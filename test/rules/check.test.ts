import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkBlock } from '../../core/rules/engine/check.ts';
import { isWritingError } from '../../core/rules/notation/syntax-rows.ts';
import { inWords } from '../words/told.ts';
import { contextsOf, findingsOf, type GivenFile, workspaceOf } from './findings.ts';

const examples = new URL('../../examples/', import.meta.url);
const read = (path: string): GivenFile => ({ path, text: readFileSync(new URL(path, examples), 'utf8') });
const bakery = ['bakery.dough', 'flours.dough', 'mixers.dough', 'plan.dough'].map(read);
const formulas = readdirSync(new URL('formulas/', examples)).map((name) => read(`formulas/${name}`));
const overMixed = 'formulas/slack-water-brown.dough';

describe('the Quay Lane bakery', () => {
  const findings = findingsOf([...bakery, ...formulas]);

  it('is free of errors and warnings but for the loaf that is over-mixed on purpose', () => {
    const serious = findings.filter((one) => one.path !== overMixed && one.level !== 'hint');
    expect(serious.map((one) => `${one.path} ${one.code}: ${inWords(one.message)}`)).toEqual([]);
  });

  it('says of that loaf that it is too wet, too warm and broken down, and no lesser thing of its mixing', () => {
    const said = findings.filter((one) => one.path === overMixed).map(({ code, level }) => [code, level]);
    expect(said).toEqual(['hydration-range', 'too-warm', 'broken-down'].map((code) => [code, 'warning']));
  });
});

/** What must hold of the findings of any text. */
function expectSound(given: readonly GivenFile[], path: string): void {
  const files = workspaceOf(given);
  for (const { context } of contextsOf(files, path)) {
    const { findings, failures } = checkBlock(context);
    expect(failures).toEqual([]);
    const written = findings.filter((one) => isWritingError(one.code)).map((one) => one.line);
    expect(new Set(written).size).toBe(written.length);
    for (const one of findings) {
      if (!isWritingError(one.code)) expect(written).not.toContain(one.line);
      const { text } = context.block.lines[one.line]!;
      expect(one.span.start).toBeGreaterThanOrEqual(0);
      expect(one.span.end).toBeGreaterThanOrEqual(one.span.start);
      expect(one.span.end).toBeLessThanOrEqual(text.length);
      expect(inWords(one.message)).not.toMatch(/undefined|NaN|Infinity/);
    }
    const lines = findings.map((one) => one.line);
    expect(lines).toEqual([...lines].sort((a, b) => a - b));
  }
}

describe('the pass over all rules', () => {
  it('holds at every line’s end and in every few letters while an example is typed', () => {
    for (const { path, text } of formulas) {
      for (let end = 0; end <= text.length; end++) {
        if (text[end] !== '\n' && end % 23 !== 0 && end !== text.length) continue;
        expectSound([...bakery, { path, text: text.slice(0, end) }], path);
      }
    }
  });

  it('holds for formulas whose lines are mixed up', () => {
    const lines = formulas.flatMap(({ text }) => text.split('\n'));
    const anyFile = fc.array(fc.oneof(fc.constantFrom(...lines), fc.string({ maxLength: 30 })), {
      maxLength: 30,
    });
    fc.assert(
      fc.property(anyFile, (chosen) => {
        expectSound([...bakery, { path: 'a.dough', text: ['formula A:', ...chosen].join('\n') }], 'a.dough');
      }),
      { numRuns: 300 },
    );
  });

  it('goes on when a rule fails, and remembers it', () => {
    const files = workspaceOf([{ path: 'a.dough', text: 'mixer big spiral:\n  kind spiral\n  kind fork' }]);
    const [first] = contextsOf(files, 'a.dough');
    const scope = {
      ...first!.context.scope,
      find: () => {
        throw new Error('no such shelf');
      },
    };
    const { findings, failures } = checkBlock({ ...first!.context, scope });
    expect(findings.map((one) => one.code)).toEqual(['said-twice']);
    expect(failures).toEqual(['same-name-twice: no such shelf']);
  });
});
