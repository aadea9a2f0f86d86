import { trimmed } from '../../text/figures.ts';
import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { asCsv, asTabbed } from '../build/csv-records.ts';
import type { Cell, Column, ColumnKey, Row, Section, SheetDocument } from '../build/sheet-document.ts';
import { cellWords, foundAt, rowNotes } from './sheet-sentences.ts';

const columns = [
  'formula',
  'part',
  'when',
  'name',
  'weigh',
  'unit',
  'grams',
  'in-all',
  'in-all-unit',
  'scale-reads',
  'scale-reads-unit',
  'of-flour',
  'minutes',
  'dough-temperature',
  'stage',
  'note',
] as const;

type Fields = Partial<Record<(typeof columns)[number], string>>;

/**
 * Sheets as one table, a record for each fact, row and moment. `grams` and `minutes` are plain numbers for computing; what
 * a scale shows stands beside them as it is weighed; what has no column of its own stands in the note.
 */
export function sheetsAsCsv(sheets: readonly SheetDocument[], speaker: Speaker): string {
  return asCsv([headsOf(speaker), ...sheets.flatMap((sheet) => records(sheet, speaker))]);
}

/** The same for a spreadsheet to take from the clipboard, without the columns that would be empty. */
export function sheetsAsTabbed(sheets: readonly SheetDocument[], speaker: Speaker): string {
  const all = sheets.flatMap((sheet) => records(sheet, speaker));
  const used = columns.flatMap((_, index) => (all.some((record) => record[index] !== '') ? [index] : []));
  return asTabbed([headsOf(speaker), ...all].map((record) => used.map((index) => record[index]!)));
}

function headsOf(speaker: Speaker): string[] {
  return columns.map((column) => speaker.say(message(`csv.${column}`)));
}

function records(sheet: SheetDocument, speaker: Speaker): string[][] {
  return sheet.sections
    .flatMap((section) => fieldsOf(section, speaker))
    .map((one) => columns.map((name) => (name === 'formula' ? sheet.formula : (one[name] ?? ''))));
}

function fieldsOf(section: Section, speaker: Speaker): Fields[] {
  const part = section.title;
  switch (section.kind) {
    case 'facts':
      if (section.name === 'log') return [];
      return section.facts.map((fact) => ({
        part,
        name: fact.label,
        note: joined([fact.value, fact.verdict?.word ?? '', ...fact.notes, ...foundAt(fact, speaker)]),
      }));
    case 'table':
      return section.rows.map((row) => ({
        part,
        ...whenOf(section),
        ...rowFields(row, section.columns, speaker),
      }));
    case 'steps':
      return section.steps.map((step) => ({
        part,
        when: step.when,
        name: step.text,
        minutes: step.seconds === undefined ? '' : trimmed(step.seconds / 60, 3),
        note: joined([...(step.notes ?? []), ...foundAt(step, speaker)]),
      }));
    case 'chart':
    case 'notes':
      return [];
  }
}

/** When something is weighed: by the clock, else as it stands behind its title. */
function whenOf({ name, when = [] }: Section): Fields {
  return name === 'mixing' ? {} : { when: when[0] ?? '' };
}

/** The cells that have a column of their own, by what stands in them. */
const fields: Readonly<Partial<Record<ColumnKey, (cell: Cell) => Fields>>> = {
  weigh: ({ text, unit = '', grams }) => ({ weigh: text, unit, grams: plain(grams) }),
  all: ({ text, unit = '' }) => ({ 'in-all': text, 'in-all-unit': unit }),
  reads: ({ text, unit = '' }) => ({ 'scale-reads': text, 'scale-reads-unit': unit }),
  percent: ({ text }) => ({ 'of-flour': text }),
  lasts: ({ minutes }) => ({ minutes: plain(minutes) }),
  until: () => ({}),
  celsius: ({ text }) => ({ 'dough-temperature': text }),
  stage: ({ text }) => ({ stage: text }),
};

function rowFields(row: Row, all: readonly Column[], speaker: Speaker): Fields {
  const made: Fields[] = [];
  const others: string[] = [];
  for (const { key, title } of all) {
    const cell = row.cells[key];
    const field = fields[key];
    if (cell === undefined || cell.text === '') continue;
    if (field !== undefined) made.push(field(cell));
    else others.push(all.length === 1 ? cellWords(cell) : `${title} ${cellWords(cell)}`);
  }
  const note = joined([...others, ...rowNotes(row), ...foundAt(row, speaker)]);
  return Object.assign({ name: row.name }, ...made, { note });
}

function joined(parts: readonly string[]): string {
  return parts.filter((part) => part !== '').join('; ');
}

function plain(figure: number | undefined): string {
  return figure === undefined ? '' : trimmed(figure, 3);
}
