import { nodesOf } from '../build/found-at-nodes.ts';
import type { Row, Section, SheetDocument, Step, TableSection } from '../build/sheet-document.ts';

/**
 * How a sheet is laid out for paper: all of it on one page; the work on one and what comes of it on the next; or flowing over as many as it
 * takes, where the work itself needs several.
 */
export type PaperLayout = 'one-page' | 'two-pages' | 'flowing';

/** So much work fits one sheet of A4 with all that is said around it, however long its names. */
const mostRowsOfOnePage = 6;
const mostMixingRowsOfOnePage = 4;
const mostStepsOfOnePage = 13;
/** Boxes for more batches than these need rows of their own. */
const mostBatches = 3;
/** What a page of A4 leaves for the work between its margins, and its foot, millimetres. */
const workMillimetres = 272;

/** The layout that a sheet is small enough for. */
export function paperLayout(view: SheetDocument): PaperLayout {
  const { sections, batches, findings } = view;
  const weighed = weighedSections(view);
  const steps = stepsOf(view);
  if (weighed.length === 0 || steps.length === 0 || batches.count > mostBatches) return 'flowing';
  const isSmall =
    batches.count === 1 &&
    findings.length === 0 &&
    foundMillimetres(sections.flatMap(nodesOf)) === 0 &&
    weighed.length === 1 &&
    rowsOf(weighed) <= mostRowsOfOnePage &&
    rowsOf(mixingOf(view)) <= mostMixingRowsOfOnePage &&
    steps.length <= mostStepsOfOnePage &&
    sections.every(({ name }) => name !== 'trial' && name !== 'map-chart' && name !== 'before-after');
  if (isSmall) return 'one-page';
  return heightOfWork(view) <= workMillimetres ? 'two-pages' : 'flowing';
}

/** Sections that are weighed, with the boxes to tick. */
function weighedSections({ sections }: SheetDocument): readonly TableSection[] {
  return sections.filter(
    (one): one is TableSection => one.kind === 'table' && one.columns.some(({ key }) => key === 'weigh'),
  );
}

function mixingOf({ sections }: SheetDocument): readonly TableSection[] {
  return sections.flatMap((one) => (one.kind === 'table' && one.name === 'mixing' ? [one] : []));
}

function stepsOf({ sections }: SheetDocument): readonly Step[] {
  return sections.flatMap((one) => (one.kind === 'steps' ? one.steps : []));
}

function rowsOf(sections: readonly TableSection[]): number {
  return sections.reduce((sum, { rows }) => sum + rows.length, 0);
}

/** About how high the head and the work are in the dress of two pages, millimetres: by letters, for nothing here measures type. */
function heightOfWork(view: SheetDocument): number {
  const answered = view.sections.filter(({ name }) => name === 'glance').flatMap(nodesOf);
  const head = 49 + foundMillimetres([...answered, view]) + 5 * view.notDone.length;
  const weighed = weighedSections(view).reduce((sum, one) => sum + heightOfWeighed(one), 4);
  const clock = view.sections.filter(({ kind }) => kind === 'steps');
  const left = [
    ...clock.map((one) => 11 + foundMillimetres(nodesOf(one)) + notesMillimetres(one, 55)),
    ...stepsOf(view).map(heightOfStep),
  ];
  const right = mixingOf(view).flatMap((one) => [
    46 + foundMillimetres(nodesOf(one)) + notesMillimetres(one, 50),
    ...one.rows.map(({ name }) => 0.8 + 3.7 * Math.ceil(name.length / 11)),
  ]);
  return head + weighed + Math.max(sumOf(left), sumOf(right));
}

function sumOf(figures: readonly number[]): number {
  return figures.reduce((sum, one) => sum + one, 0);
}

function heightOfWeighed(section: TableSection): number {
  const { rows, columns, sum } = section;
  const hasAll =
    columns.some(({ key }) => key === 'all') && rows.some(({ cells }) => cells.all !== undefined);
  const isRead = rows.some(({ cells }) => cells.reads !== undefined);
  const height = (row: Row): number => {
    const letters = [row.name, ...(row.notes ?? []), row.missing ?? ''].join('  ').length;
    return Math.max(hasAll ? 13.5 : 8.8, 6.6 * Math.ceil(letters / 28));
  };
  return (
    9 +
    sumOf(rows.map(height)) +
    (sum === undefined || isRead ? 0 : 7) +
    foundMillimetres(nodesOf(section)) +
    notesMillimetres(section, 110)
  );
}

function heightOfStep({ brief, text, notes = [] }: Step): number {
  const letters = (brief ?? text).length + 0.75 * notes.join('  ').length;
  return 1.4 + 3.7 * Math.ceil(letters / 19);
}

function notesMillimetres({ lead = [], notes = [] }: Section, lettersOfLine: number): number {
  return [...lead, ...notes].reduce<number>((sum, one) => {
    const text = typeof one === 'string' ? one : one.map((part) => part.text).join('');
    return sum + 4.5 * Math.ceil(text.length / lettersOfLine);
  }, 0);
}

type WithFindings = Pick<SheetDocument, 'findings'> | { readonly findings?: SheetDocument['findings'] };

function foundMillimetres(some: readonly WithFindings[]): number {
  return some
    .flatMap(({ findings = [] }) => findings)
    .reduce((sum, { message }) => sum + 4.6 * Math.ceil((message.length + 12) / 115), 0);
}
