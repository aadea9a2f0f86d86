import type { SheetDocument } from '../../core/index.ts';
import { foundAtNodes, nodesOf } from '../../core/sheet/build/found-at-nodes.ts';
import type {
  Cell,
  ChartSection,
  Fact,
  Row,
  Section,
  SheetFinding,
  StepsSection,
  TableSection,
} from '../../core/sheet/build/sheet-document.ts';

type Parts = ReturnType<typeof partsOf>;
export type Block = Parts['blocks'][number];

/** The parts of a sheet by what they are, with the figures as they are shown. */
export function partsOf(sheet: SheetDocument) {
  const { sections } = sheet;
  const [clock] = stepsOf(sections);
  return {
    ...sheet,
    facts: factsIn(sections, 'facts'),
    conditions: factsIn(sections, 'day'),
    yields: factsIn(sections, 'yield'),
    blocks: tablesIn(sections, 'before', 'bowl', 'later', 'apart').map(blockOf),
    glance: factsIn(sections, 'glance'),
    mixing: tablesIn(sections, 'mixing')[0],
    clock,
    moments: clock?.steps ?? [],
    steps: (clock?.steps ?? []).filter(({ of }) => of === 'step'),
    cost: tablesIn(sections, 'cost')[0],
    labels: tablesIn(sections, 'label'),
    trials: tablesIn(sections, 'trial'),
    charts: chartsOf(sections),
    cautions: sections.find(({ name }) => name === 'cautions')?.notes ?? [],
    findings: findingsOf(sheet),
  };
}

/** Everything that was found, at whatever it stands, by line. */
export function findingsOf({ sections, findings }: SheetDocument): SheetFinding[] {
  return [...sections.flatMap(nodesOf).flatMap((node) => node.findings ?? []), ...findings].sort(
    (one, other) => one.line - other.line,
  );
}

export function tablesIn(sections: readonly Section[], ...names: Section['name'][]): TableSection[] {
  return sections.flatMap((one) => (one.kind === 'table' && names.includes(one.name) ? [one] : []));
}

function factsIn(sections: readonly Section[], name: Section['name']): readonly Fact[] {
  return sections.flatMap((one) => (one.kind === 'facts' && one.name === name ? one.facts : []));
}

function stepsOf(sections: readonly Section[]): StepsSection[] {
  return sections.flatMap((one) => (one.kind === 'steps' ? [one] : []));
}

function chartsOf(sections: readonly Section[]): ChartSection[] {
  return sections.flatMap((one) => (one.kind === 'chart' ? [one] : []));
}

function blockOf({ name, title, when = [], lead = [], line, rows, sum, times }: TableSection) {
  const [note] = lead;
  return {
    kind: name,
    title,
    when,
    line,
    times,
    rows: rows.map(rowOf),
    ...(typeof note === 'string' ? { note } : {}),
    ...(sum === undefined ? {} : { total: figureOf(sum.cells.weigh), totalOfAll: figureOf(sum.cells.all) }),
  };
}

function rowOf({ name, line, cells, notes = [], missing }: Row) {
  return {
    ...{ name, line, missing },
    ...(notes.length === 0 ? {} : { note: notes.join(', ') }),
    weigh: figureOf(cells.weigh),
    all: figureOf(cells.all),
    scaleReads: figureOf(cells.reads),
    percent: cells.percent?.text,
  };
}

function figureOf(cell: Cell | undefined) {
  if (cell === undefined) return undefined;
  return { figure: cell.text, unit: cell.unit ?? '', grams: cell.grams ?? Number.NaN };
}

/** A sheet with other findings, each at the node of its line. */
export function withFound(sheet: SheetDocument, findings: readonly SheetFinding[]): SheetDocument {
  const bare = sheet.sections.map((section) => JSON.parse(JSON.stringify(section, dropFindings)) as Section);
  const found = foundAtNodes(bare, findings, sheet.line);
  return { ...sheet, sections: found.sections, findings: found.elsewhere };
}

const dropFindings = (key: string, value: unknown): unknown => (key === 'findings' ? undefined : value);

/** The ids of the nodes at which something was found, each with the lines; those at the heading under `heading`. */
export function placesOf({ sections, findings }: SheetDocument): [string, number[]][] {
  const lines = (all: readonly SheetFinding[]): number[] => all.map(({ line }) => line);
  const places = sections
    .flatMap(nodesOf)
    .flatMap((node): [string, number[]][] => (node.findings ? [[node.id, lines(node.findings)]] : []));
  return findings.length === 0 ? places : [...places, ['heading', lines(findings)]];
}

/** What a sheet has people weigh, as it is shown. */
export function weighedOf(sheet: SheetDocument) {
  return partsOf(sheet).blocks.map(({ rows }) =>
    rows.map(({ name, weigh, scaleReads }) => [name, weigh?.figure, weigh?.unit, scaleReads?.figure]),
  );
}
