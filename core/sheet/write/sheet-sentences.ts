import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import type {
  Cell,
  Column,
  Fact,
  Row,
  SectionName,
  Sentence,
  SheetDocument,
  SheetFinding,
  SheetNode,
  TableSection,
} from '../build/sheet-document.ts';

/** Facts that stand below the heading of a sheet and have no title of their own. */
const atHead: ReadonlySet<SectionName> = new Set(['glance', 'facts', 'day']);

/** Whether a section stands below the heading of the sheet, before everything that is done. */
export function isAtHead({ name }: { readonly name: SectionName }): boolean {
  return atHead.has(name);
}

/** Below the heading: what holds the sheet up, what could not be done, what was found at nothing on the sheet. */
export function leadOf(sheet: SheetDocument, { say }: Speaker): string[] {
  const { heldBy } = sheet;
  return [
    ...(sheet.tried ? [say(message('sheet.tried'))] : []),
    ...(sheet.state === 'empty' ? [say(message('sheet.empty'))] : []),
    ...sheet.notDone,
    // Where it is a finding as well, it stands at its thing.
    ...(heldBy === undefined || isFound(sheet, heldBy.line)
      ? []
      : [say(message('sheet.held-by', { number: heldBy.line + 1, sentence: heldBy.message }))]),
    ...sheet.findings.map(({ level, message: sentence, line }) =>
      say(
        message('sheet.finding-at', { title: message(`sheet-level.${level}`), number: line + 1, sentence }),
      ),
    ),
  ];
}

/** Whether an error of that line stands anywhere on the sheet. */
function isFound({ sections, findings }: SheetDocument, line: number): boolean {
  const isIt = (one: SheetFinding): boolean => one.line === line && one.level === 'error';
  const isAt = (node: SheetNode): boolean => node.findings?.some(isIt) === true;
  return (
    findings.some(isIt) ||
    sections.some((section) => {
      if (isAt(section)) return true;
      if (section.kind === 'facts') return section.facts.some(isAt);
      if (section.kind === 'table') return section.rows.some(isAt);
      return section.kind === 'steps' && section.steps.some(isAt);
    })
  );
}

/** What was found at a node, in sentences. */
export function foundAt({ findings = [] }: SheetNode, { say }: Speaker): string[] {
  return findings.map(({ level, message: sentence }) =>
    say(message('sheet.finding', { title: message(`sheet-level.${level}`), sentence })),
  );
}

/** The columns of a table in which something stands. */
export function usedColumns({ columns, rows }: TableSection): readonly Column[] {
  return columns.filter(({ key }) => rows.some(({ cells }) => (cells[key]?.text ?? '') !== ''));
}

/** `9050 g`, with a blank that keeps the two on one line. */
export function cellWords(cell: Cell | undefined): string {
  if (cell === undefined) return '';
  return cell.unit === undefined ? cell.text : `${cell.text}\u00A0${cell.unit}`;
}

/** What is said of a row beside its figures. */
export function rowNotes({ notes = [], missing }: Row): readonly string[] {
  return [...notes, ...(missing === undefined ? [] : [missing])];
}

/** `80%, effective 81.2%, tried today`; a verdict with its sign before it: `✓ 25 °C, as wanted`. */
export function factWords({ value, notes, verdict, blank }: Fact): string {
  if (blank !== undefined) return `${'_'.repeat(8)} ${blank}`.trimEnd();
  const [sign, word] = verdict === undefined ? ['', []] : [`${verdict.sign} `, [verdict.word]];
  return sign + [value, ...word, ...notes].filter((part) => part !== '').join(', ');
}

/** A sentence as plain text; what is to be emphasised as `strong` has it. */
export function plainSentence(sentence: Sentence, strong: (text: string) => string): string {
  if (typeof sentence === 'string') return sentence;
  return sentence.map((part) => (part.strong === true ? strong(part.text) : part.text)).join('');
}
