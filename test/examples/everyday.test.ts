import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { contextsOf, findingsOf, workspaceOf } from '../rules/findings.ts';

/**
 * Twenty-four everyday formulas as a newcomer writes them from memory, before reading the guide. They are kept as they were first
 * written: what they get wrong is to be read as it is meant, or told, and never lost.
 */
const folder = join(import.meta.dirname, '..', 'fixtures', 'everyday');
const names = readdirSync(folder).toSorted();
const read = (name: string) => {
  const given = [{ path: name, text: readFileSync(join(folder, name), 'utf8') }];
  const { context } = contextsOf(workspaceOf(given), name)[0]!;
  return { context, analysis: context.analysis!, findings: findingsOf(given) };
};

describe('the first afternoon', () => {
  it('has twenty-four formulas, of which at least twenty-one keep the outlook of their mixing', () => {
    expect(names).toHaveLength(24);
    const lost = names.filter((name) => !read(name).analysis.doughMix.known);
    expect(lost.length, lost.join(', ')).toBeLessThanOrEqual(3);
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
      if (isLost) expect(told, text).toContain(line);
    }
    for (const section of resolved.input.sections)
      for (const one of section.lines)
        if (!one.known || one.amount.kind === 'unknown') expect(told, one.name).toContain(lineOf(one.id));
    // Every part gets into the dough, or its header says that it does not.
    const inBowl = new Set(solved!.finalMix.lines.map(({ sectionId }) => sectionId));
    for (const section of solved!.sections.slice(1))
      if (section.inBowl && !inBowl.has(section.id)) expect(told, section.name).toContain(lineOf(section.id));
  });

  it.each(names)('%s puts all of its dough into the bowl', (name) => {
    const { analysis } = read(name);
    if (!analysis.doughMix.known) return;
    const { input, doughGrams, unloaded, portionsOff } = analysis.doughMix.value;
    const loaded = input.phases.flatMap((phase) => ('portions' in phase ? phase.portions : []));
    const grams = loaded.reduce((sum, portion) => sum + portion.grams, 0);
    expect(grams / doughGrams).toBeCloseTo(1, 6);
    expect(portionsOff).toEqual([]);
    // Nothing had to be guessed to go in first.
    expect(unloaded).toEqual([]);
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

function lineOf(id: string): number {
  return Number(/\d+$/.exec(id)?.[0]);
}
