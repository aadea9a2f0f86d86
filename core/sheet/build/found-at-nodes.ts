import type { Fact, Section, SheetFinding, SheetNode } from './sheet-document.ts';

/** Sections that hold what was found at them, and what was found at nothing they show. */
export interface SectionsWithFindings {
  readonly sections: readonly Section[];
  readonly elsewhere: readonly SheetFinding[];
}

const weighed: ReadonlySet<Section['name']> = new Set(['before', 'bowl', 'later', 'apart']);

/** Findings whose essence is one of the answers at the head, by the answer's key. */
const answeredBy: Readonly<Record<string, string>> = {
  'too-warm': 'dough temperature',
  'let-down': 'state',
  'broken-down': 'state',
  'under-developed': 'state',
  'mixed-past-need': 'state',
  'ice-needed': 'water',
  'ice-above-half': 'water',
};

/**
 * Gives every finding the one node it concerns. What an answer at the head says in short stands there, where that answer is no
 * good one: it would say the same a second time at its line. All others go by their line: the thing weighed first, then a line of the mixing, the
 * mixing, the section of what is weighed, a moment of the clock, the yield, the facts and the trials. What a part says of itself, such
 * as how long it ferments, is no row: it stands at the part.
 *
 * @param formulaLine the line of the formula itself, at which nothing but the heading stands
 */
export function foundAtNodes(
  sections: readonly Section[],
  findings: readonly SheetFinding[],
  formulaLine: number,
): SectionsWithFindings {
  const nodeOfLine = new Map<number, SheetNode>();
  for (const node of claimants(sections))
    if (node.line !== undefined && node.line !== formulaLine && !nodeOfLine.has(node.line))
      nodeOfLine.set(node.line, node);
  const byNode = new Map<string, SheetFinding[]>();
  const elsewhere: SheetFinding[] = [];
  for (const finding of findings) {
    const atLine = nodeOfLine.get(finding.line) ?? partAround(sections, nodeOfLine, finding.line);
    const node = answerOf(sections, finding, atLine) ?? atLine;
    if (node === undefined) elsewhere.push(finding);
    else byNode.set(node.id, [...(byNode.get(node.id) ?? []), finding]);
  }
  const found = <Node extends SheetNode>(node: Node): Node => {
    const here = byNode.get(node.id);
    return here === undefined ? node : { ...node, findings: here };
  };
  return { sections: sections.map((section) => mapNodes(section, found)), elsewhere };
}

/** The answer at the head that already says what was found in the bowl or in the mixing of this dough. */
function answerOf(
  sections: readonly Section[],
  { code }: SheetFinding,
  atLine: SheetNode | undefined,
): Fact | undefined {
  const place = sections.find((section) => nodesOf(section).some((node) => node === atLine));
  if (place === undefined || !['mixing', 'bowl', 'later'].includes(place.name)) return undefined;
  return sections
    .flatMap((section) => (section.kind === 'facts' && section.name === 'glance' ? section.facts : []))
    .find(({ key, verdict }) => key === answeredBy[code] && ['off', 'bad'].includes(verdict?.level ?? ''));
}

/** Every node of a section: the section itself, and what stands in it. */
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

/** A section with every node of it changed, itself included. */
export function mapNodes(section: Section, change: <Node extends SheetNode>(node: Node) => Node): Section {
  switch (section.kind) {
    case 'facts':
      return change({ ...section, facts: section.facts.map(change) });
    case 'table':
      return change({ ...section, rows: section.rows.map(change) });
    case 'steps':
      return change({ ...section, steps: section.steps.map(change) });
    case 'chart':
    case 'notes':
      return change(section);
  }
}

/** The nodes that findings may stand at, those first that a line rather concerns. */
function claimants(sections: readonly Section[]): readonly SheetNode[] {
  const inside = (section: Section): readonly SheetNode[] => nodesOf(section).slice(1);
  const named = (name: Section['name']): readonly Section[] => sections.filter((one) => one.name === name);
  const weighing = sections.filter(({ name }) => weighed.has(name));
  return [
    ...weighing.flatMap(inside),
    ...named('mixing').flatMap(inside),
    ...named('mixing'),
    ...weighing,
    ...named('clock').flatMap(inside),
    ...named('yield').flatMap(inside),
    ...named('glance').flatMap(inside),
    ...named('facts').flatMap(inside),
    ...named('trial').flatMap((section) => [...inside(section), section]),
  ];
}

/** The part whose lines go on around a line that nothing shows. */
function partAround(
  sections: readonly Section[],
  nodeOfLine: ReadonlyMap<number, SheetNode>,
  line: number,
): SheetNode | undefined {
  const before = nodeOfLine.get(Math.max(...[...nodeOfLine.keys()].filter((one) => one < line)));
  const part = sections.find(
    (section) =>
      (section.name === 'before' || section.name === 'apart') &&
      nodesOf(section).some(({ id }) => id === before?.id),
  );
  if (part?.line === undefined || part.line >= line) return undefined;
  // The header of the steps stands right above the first of them and is shown nowhere.
  const below = nodeOfLine.get(line + 1);
  const isStepsHeader = sections.some(({ name, id }) => name === 'clock' && below?.id.startsWith(`${id}/`));
  return isStepsHeader ? undefined : part;
}
