import type { Section, SheetDocument, SheetNode } from '../../server/protocol.ts';

/**
 * The last sheet that was whole, under one that is held up: its figures stay, and what is said of them is what holds now. A
 * node keeps the figures of then and takes line and findings of the node with its id; what is gone from the file has
 * neither. What was found at a node that the last whole sheet does not have stands below the heading.
 */
export function lastFigures<Sheet extends SheetDocument>(good: Sheet, held: Sheet): Sheet {
  const now = new Map(held.sections.flatMap(nodesOf).map((node) => [node.id, node]));
  const then = new Set(good.sections.flatMap(nodesOf).map(({ id }) => id));
  const homeless = [...now.values()].flatMap(({ id, findings = [] }) => (then.has(id) ? [] : findings));
  return {
    ...held,
    makes: good.makes,
    batches: good.batches,
    moments: good.moments,
    sections: good.sections.map((section) => sectionNow(section, now)),
    findings: [...held.findings, ...homeless].sort((one, other) => one.line - other.line),
  };
}

function sectionNow(section: Section, now: ReadonlyMap<string, SheetNode>): Section {
  const asNow = <Node extends SheetNode>({ line: _, findings: _found, ...node }: Node): Node => {
    const { line, findings } = now.get(node.id) ?? {};
    return {
      ...node,
      ...(line === undefined ? {} : { line }),
      ...(findings === undefined ? {} : { findings }),
    } as unknown as Node;
  };
  switch (section.kind) {
    case 'facts':
      return { ...asNow(section), facts: section.facts.map(asNow) };
    case 'table':
      return { ...asNow(section), rows: section.rows.map(asNow) };
    case 'steps':
      return { ...asNow(section), steps: section.steps.map(asNow) };
    case 'chart':
    case 'notes':
      return asNow(section);
  }
}

/** A section and whatever stands in it. */
export function nodesOf(section: Section): readonly SheetNode[] {
  switch (section.kind) {
    case 'facts':
      return [section, ...section.facts];
    case 'table':
      return [section, ...section.rows];
    case 'steps':
      return [section, ...section.steps];
    case 'chart':
    case 'notes':
      return [section];
  }
}
