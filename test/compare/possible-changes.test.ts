import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareSummaries, createService, filesThatMayDiffer } from '../../core/index.ts';
import { filesIn, project } from '../tidy/imports.ts';

const root = 'file:///bakery/';
const examples = new Map(
  filesIn('examples', '.dough').map((file) => [file, readFileSync(join(project, file), 'utf8')]),
);

function serviceOf(texts: ReadonlyMap<string, string>) {
  const service = createService();
  for (const [file, text] of texts) service.setText(root + file, text);
  service.setRoots([root]);
  return service;
}

/** Files of which a comparison tells something, each worked out on both sides. */
function changed(before: ReadonlyMap<string, string>, after: ReadonlyMap<string, string>): string[] {
  const [old, now] = [serviceOf(before), serviceOf(after)];
  return [...new Set([...before.keys(), ...after.keys()])].filter((file) => {
    const [was, is] = [old, now].map((service) => service.summary(root + file, file));
    const told = compareSummaries(was === undefined ? [] : [was], is === undefined ? [] : [is]);
    return told.verdict !== 'same' || told.formulas.length + told.definitions.length > 0;
  });
}

const flours = 'flour mill white:\n  grain wheat\n  protein 11%\n';
const loaf = (name: string, flour = 'mill white', more = '') =>
  `formula ${name}:\n  yield 10 kg\n  ${flour} 100%\n  water 65%\n  salt 2%\n  fresh yeast 1%\n${more}mix by hand:\n  load flour, water, salt, fresh yeast\n  knead for 12 min\n`;
const trial = 'trial 2026-03-02:\n  mixed by hand\n  room 22 °C\n';

describe('the files of which something may have changed', () => {
  it('are those that say a changed name, by however many definitions', () => {
    const before = new Map([
      ['flours.dough', flours],
      ['like.dough', 'flour bread flour:\n  like mill white\n'],
      ['a.dough', loaf('Alder Tin')],
      ['b.dough', loaf('Birch Round', 'bread flour')],
      ['c.dough', loaf('Cedar Slab', 'strong white')],
      ['plan.dough', 'plan Saturday:\n  Birch Round 40 pieces\n'],
    ]);
    const after = new Map(before).set('flours.dough', flours.replace('11%', '13%'));
    expect([...filesThatMayDiffer(before, after)!].sort()).toEqual(
      expect.arrayContaining(['a.dough', 'b.dough', 'flours.dough', 'like.dough', 'plan.dough']),
    );
    expect(filesThatMayDiffer(before, after)!.has('c.dough')).toBe(false);
  });

  it('are the changed ones alone where no other says their names', () => {
    const before = new Map([
      ['a.dough', loaf('Harbour Tin')],
      ['c.dough', loaf('Gull Rock Slab')],
    ]);
    const after = new Map(before).set('a.dough', loaf('Harbour Tin').replace('65%', '66%'));
    expect([...filesThatMayDiffer(before, after)!]).toEqual(['a.dough']);
  });

  it('are all where a bakery, a mixer or a formula with trials is another', () => {
    for (const [was, is] of [
      ['bakery Quay Lane:\n  room 22 °C\n', 'bakery Quay Lane:\n  room 26 °C\n'],
      ['mixer big:\n  kind spiral\n', 'mixer big:\n  kind fork\n'],
      [loaf('T', 'mill white', trial), loaf('T', 'mill white', trial.replace('22', '23'))],
    ]) {
      const before = new Map([
        ['one.dough', was!],
        ['a.dough', loaf('Alder Tin')],
      ]);
      expect(filesThatMayDiffer(before, new Map(before).set('one.dough', is!))).toBeUndefined();
    }
  });

  it('are all that a comparison of every file tells of, whatever lines of the examples come, go and change', () => {
    const files = [...examples.keys()];
    const lines = [...examples.values()].flatMap((text) => text.split('\n'));
    const edit = fc.record({
      file: fc.constantFrom(...files),
      at: fc.nat(200),
      less: fc.nat(2),
      more: fc.array(fc.constantFrom(...lines, '  protein 10%', '  salt 3%', ''), { maxLength: 2 }),
    });
    let unchanged = 0;
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 3 }), fc.boolean(), (edits, isWithoutTrials) => {
        const before = new Map(
          [...examples].filter(([, text]) => !isWithoutTrials || !/^(trial|mixer|bakery)/m.test(text)),
        );
        const after = new Map(before);
        for (const { file, at, less, more } of edits) {
          const text = after.get(file)?.split('\n');
          if (text === undefined) continue;
          text.splice(at % text.length, less, ...more);
          after.set(file, text.join('\n'));
        }
        const may = filesThatMayDiffer(before, after);
        if (may === undefined) return;
        unchanged += after.size - may.size;
        expect(changed(before, after).filter((file) => !may.has(file))).toEqual([]);
      }),
      { numRuns: 60 },
    );
    expect(unchanged).toBeGreaterThan(50);
  });
});
