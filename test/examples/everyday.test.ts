import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { applied, contextsOf, findingsOf, firstFix, workspaceOf } from '../rules/findings.ts';

/**
 * Everyday formulas as newcomers write them from memory, before reading the guide: twenty-four that know the words of the notation,
 * twenty-four that know no more of it than how its sections begin, and twice twelve more of those. They are kept as they were first written:
 * what they get wrong is to be read as it is meant, or told, and never lost. `lost` is how many may lose the outlook as they
 * stand, `lostFixed` once every fix that is offered unasked is taken.
 */
const sets = [
  { folder: 'everyday', count: 24, lost: 3, lostFixed: 3 },
  { folder: 'everyday-notes', count: 24, lost: 3, lostFixed: 2 },
  { folder: 'everyday-further', count: 12, lost: 1, lostFixed: 1 },
  { folder: 'everyday-fresh', count: 12, lost: 5, lostFixed: 3 },
];
const readText = (name: string, text: string) => {
  const given = [{ path: name, text }];
  const { context } = contextsOf(workspaceOf(given), name)[0]!;
  return { context, analysis: context.analysis!, findings: findingsOf(given) };
};

/** A text with every fix that is offered unasked, one after another, as somebody takes them from the top. */
function fixed(name: string, text: string): string {
  let now = text;
  for (let round = 0; round < 60; round++) {
    const next = findingsOf([{ path: name, text: now }]).find(
      (one) => (one.level === 'error' || one.level === 'warning') && firstFix(one)?.preferred === true,
    );
    if (next === undefined) return now;
    now = applied(now, next.firstLine, firstFix(next)!);
  }
  throw new Error(`${name}: fixes never come to an end`);
}

describe.each(sets)('the first afternoon, $folder', ({ folder, count, lost: mayLose, lostFixed }) => {
  const path = join(import.meta.dirname, '..', 'fixtures', folder);
  const names = readdirSync(path).toSorted();
  const textOf = (name: string) => readFileSync(join(path, name), 'utf8');
  const read = (name: string) => readText(name, textOf(name));

  it(`has ${count} formulas, of which at most ${mayLose} lose the outlook of their mixing`, () => {
    expect(names).toHaveLength(count);
    const lost = names.filter((name) => !read(name).analysis.doughMix.known);
    expect(lost.length, lost.join(', ')).toBeLessThanOrEqual(mayLose);
  });

  it(`leaves at most ${lostFixed} without it once the fixes offered are taken, and no fix makes an error of its own`, () => {
    const after = names.map((name) => ({ name, ...readText(name, fixed(name, textOf(name))) }));
    const lost = after.filter(({ analysis }) => !analysis.doughMix.known).map(({ name }) => name);
    expect(lost.length, lost.join(', ')).toBeLessThanOrEqual(lostFixed);
    const errors = (findings: readonly { level: string }[]) =>
      findings.filter(({ level }) => level === 'error').length;
    for (const { name, findings } of after)
      expect(errors(findings), name).toBeLessThanOrEqual(errors(read(name).findings));
  });

  it.each(names)('%s loses no line in silence', (name) => {
    const { context, analysis, findings } = read(name);
    const told = new Set(findings.map(({ line }) => line));
    const { resolved, solved } = analysis;
    for (const [line, { statement, text }] of context.block.lines.entries()) {
      const isLost =
        statement.kind === 'unreadable' ||
        statement.kind === 'silent' ||
        (statement.kind === 'header' && statement.section === 'unknown') ||
        (statement.kind === 'property' && statement.value === undefined);
      // What stands in a section that nobody knows is told on its header.
      const header = statement.kind === 'silent' ? headerAbove(context.block, line) : line;
      if (isLost) expect(told.has(line) || told.has(header), text).toBe(true);
    }
    for (const section of resolved.input.sections)
      for (const one of section.lines)
        if (!one.known || one.amount.kind === 'unknown') expect(told, one.name).toContain(lineOf(one.id));
    // A dough whose lines stand below a header of their own is told there.
    if (solved === undefined) {
      expect(findings.some(({ code, level }) => code === 'unknown-section' && level === 'error')).toBe(true);
      return;
    }
    // Every part gets into the dough, or its header says that it does not.
    const inBowl = new Set(solved.finalMix.lines.map(({ sectionId }) => sectionId));
    for (const section of solved.sections.slice(1))
      if (section.inBowl && !inBowl.has(section.id)) expect(told, section.name).toContain(lineOf(section.id));
  });

  it.each(names)('%s puts all of its dough into the bowl', (name) => {
    const { analysis, findings } = read(name);
    if (!analysis.doughMix.known) return;
    const { input, doughGrams, unloaded, portionsOff } = analysis.doughMix.value;
    const loaded = input.phases.flatMap((phase) => ('portions' in phase ? phase.portions : []));
    const grams = loaded.reduce((sum, portion) => sum + portion.grams, 0);
    expect(grams / doughGrams).toBeCloseTo(1, 6);
    expect(portionsOff).toEqual([]);
    // What had to be guessed to go in first is told, with what writes it.
    const told = findings.some(({ code, fixes }) => code === 'not-loaded' && fixes.length > 0);
    const isSaidOtherwise = analysis.resolved.model.mixes.some(({ headerLine, endLine }) =>
      findings.some(({ code, line }) => code === 'unknown-property' && line > headerLine && line < endLine),
    );
    if (unloaded.length > 0) expect(told || isSaidOtherwise, name).toBe(true);
  });

  it('has at most one finding a line of what was written otherwise', () => {
    for (const name of names) {
      const { findings } = read(name);
      const byLine = new Map<number, number>();
      for (const { line, level } of findings)
        if (level === 'error') byLine.set(line, (byLine.get(line) ?? 0) + 1);
      expect(Math.max(0, ...byLine.values()), name).toBeLessThanOrEqual(1);
    }
  });
});

function headerAbove(
  { lines }: { readonly lines: readonly { statement: { kind: string } }[] },
  line: number,
): number {
  let at = line;
  while (at > 0 && lines[at]!.statement.kind !== 'header') at--;
  return at;
}

function lineOf(id: string): number {
  return Number(/\d+$/.exec(id)?.[0]);
}
