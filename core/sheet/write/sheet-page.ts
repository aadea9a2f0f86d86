import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { originWords, type SheetOrigin } from '../build/origin.ts';
import type {
  ChartSection,
  FactsSection,
  Row,
  Section,
  SheetDocument,
  StepsSection,
  TableSection,
} from '../build/sheet-document.ts';
import {
  cellWords,
  factWords,
  foundAt,
  isAtHead,
  leadOf,
  plainSentence,
  rowNotes,
  usedColumns,
} from './sheet-sentences.ts';
import type { Page, Table } from './tables.ts';

/** A batch sheet as a page of tables in the order of the work, for text and Markdown. */
export function sheetPage(sheet: SheetDocument, origin: SheetOrigin, speaker: Speaker): Page {
  const { say } = speaker;
  const facts: [string, string][] = [];
  if (sheet.makes.length > 0) facts.push([say(message('sheet.makes')), sheet.makes.join(' · ')]);
  if (sheet.batches.text !== undefined) facts.push([say(message('sheet.batches')), sheet.batches.text]);
  for (const section of sheet.sections)
    if (section.kind === 'facts' && isAtHead(section))
      for (const fact of section.facts)
        facts.push([fact.label, [factWords(fact), ...foundAt(fact, speaker)].join(' – ')]);
  facts.push([say(message('sheet.from')), originWords(origin, speaker)]);
  const below = inPaperOrder(sheet.sections.filter((section) => !isAtHead(section)));
  return {
    language: speaker.language,
    title: sheet.formula,
    facts,
    lead: leadOf(sheet, speaker),
    tables: below.flatMap((section) => tableOf(section, speaker)),
    tableHead: say(message('csv.table')),
    notes: below.flatMap((section) => (section.kind === 'notes' ? (section.notes ?? []) : [])),
  };
}

/** Nobody works from trials: what is worked from comes before. */
function inPaperOrder(sections: readonly Section[]): readonly Section[] {
  const isTrial = ({ name }: Section): boolean => name === 'trial';
  return [...sections.filter((one) => !isTrial(one)), ...sections.filter(isTrial)];
}

function tableOf(section: Section, speaker: Speaker): Table[] {
  switch (section.kind) {
    case 'facts':
      return [factsTable(section, speaker)];
    case 'table':
      return [rowsTable(section, speaker)];
    case 'steps':
      return [stepsTable(section, speaker)];
    case 'chart':
      // The others draw what stands in tables already.
      return section.name === 'composition-chart' ? [chartTable(section)] : [];
    case 'notes':
      return [];
  }
}

const tick = '[ ]';

function titleOf({ title, when = [] }: Section): string {
  return [title, ...when].join(', ');
}

/** What stands around the rows of a section, in the order in which it is read: below them all. */
function notesAround(section: Section, inside: readonly string[], speaker: Speaker): string[] {
  const upper = (text: string): string => text.toUpperCase();
  return [
    ...(section.lead ?? []).map((one) => plainSentence(one, upper)),
    ...foundAt(section, speaker),
    ...inside,
    ...(section.notes ?? []),
  ];
}

function factsTable(section: FactsSection, speaker: Speaker): Table {
  const found = section.facts.flatMap((fact) =>
    foundAt(fact, speaker).map((said) => `${fact.label}: ${said}`),
  );
  return {
    title: titleOf(section),
    columns: [
      { name: '' },
      { name: speaker.say(message('sheet.figure')), figures: true },
      { name: speaker.say(message('sheet.note')) },
    ],
    rows: section.facts.map((fact) =>
      fact.blank === undefined
        ? [fact.label, fact.value, fact.notes.join(', ')]
        : [fact.label, factWords(fact), ''],
    ),
    notes: notesAround(section, found, speaker),
  };
}

function rowsTable(section: TableSection, speaker: Speaker): Table {
  const { rows, sum, times } = section;
  const columns = usedColumns(section);
  const hasNotes = rows.some((row) => rowNotes(row).length > 0);
  const line = (row: Row, box: string): string[] => [
    ...(times === undefined ? [] : [box]),
    row.name,
    ...columns.map(({ key }) => cellWords(row.cells[key])),
    ...(hasNotes ? [rowNotes(row).join('; ')] : []),
  ];
  const inside = rows.flatMap((row) => foundAt(row, speaker).map((said) => `${row.name}: ${said}`));
  return {
    title: titleOf(section),
    columns: [
      ...(times === undefined ? [] : [{ name: '' }]),
      { name: section.head },
      ...columns.map(({ title: name, figures }) =>
        figures === true ? ({ name, figures } as const) : { name },
      ),
      ...(hasNotes ? [{ name: speaker.say(message('sheet.note')) }] : []),
    ],
    rows: [...rows.map((row) => line(row, tick)), ...(sum === undefined ? [] : [line(sum, '')])],
    notes: notesAround(section, inside, speaker),
  };
}

function stepsTable(section: StepsSection, speaker: Speaker): Table {
  const [when, work, lasts] = section.heads;
  const found = section.steps.flatMap((step) =>
    [...(step.notes ?? []), ...foundAt(step, speaker)].map((said) => `${step.text}: ${said}`),
  );
  return {
    title: titleOf(section),
    columns: [{ name: '' }, { name: when }, { name: work }, { name: lasts, figures: true }],
    rows: section.steps.map((step) => [
      step.of === 'ready' ? '' : tick,
      step.when,
      step.text,
      step.lasts ?? '',
    ]),
    notes: notesAround(section, found, speaker),
  };
}

function chartTable({ title, description, table }: ChartSection): Table {
  return { title, columns: table.heads.map((name) => ({ name })), rows: table.rows, notes: [description] };
}
