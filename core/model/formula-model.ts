import type { DegreeOfMixing } from '../calc/mixing/development.ts';
import { memoByBlock } from '../syntax/block-memo.ts';
import {
  type Block,
  type HeaderStatement,
  type IngredientStatement,
  linesOf,
  type Name,
  type ParsedLine,
  type Section,
  type SectionKind,
  type StepStatement,
} from '../syntax/tree.ts';
import { degreeWords, holdsIngredients, programmeWords } from '../syntax/vocabulary.ts';
import { elementAt } from '../text/element.ts';
import { bareAmount } from './bare-amount.ts';
import { propertiesOf, type Said, type SaidProperties, saidValue } from './properties.ts';
import { partTakenWhole } from './taken-part.ts';

/** A formula as its block says it, before any name is looked up. Lines are counted in the block. */
export interface FormulaModel {
  readonly name: Name;
  readonly block: Block;
  readonly said: SaidProperties;
  /** The dough first, then its preferments, soakers, parts, fillings, toppings, baths. */
  readonly sections: readonly SectionModel[];
  readonly mixes: readonly MixModel[];
  readonly processes: readonly ProcessModel[];
  readonly trials: readonly TrialModel[];
}

export interface SectionModel {
  readonly id: string;
  readonly kind: SectionKind;
  readonly name: Name | undefined;
  readonly headerLine: number;
  readonly endLine: number;
  readonly said: SaidProperties;
  readonly lines: readonly LineModel[];
}

export interface LineModel {
  readonly id: string;
  readonly line: number;
  readonly parsed: ParsedLine;
  readonly statement: IngredientStatement;
}

export interface MixModel {
  readonly headerLine: number;
  readonly endLine: number;
  readonly header: HeaderStatement;
  readonly phases: readonly Said[];
  /** The degree of mixing wished; an improved mix where none is written. */
  readonly wish?: DegreeOfMixing;
  /** Whether a line of it cannot be read: what it runs is then not known. */
  readonly hasUnread: boolean;
}

export interface ProcessModel {
  readonly headerLine: number;
  readonly header: HeaderStatement;
  readonly steps: readonly { readonly line: number; readonly step: StepStatement }[];
}

export interface TrialModel {
  readonly headerLine: number;
  readonly header: HeaderStatement;
  readonly said: SaidProperties;
  /** The programme that was run, in its order; empty where the trial does not keep it. */
  readonly phases: readonly Said[];
}

export const lineId = (line: number): string => `L${line}`;
export const sectionId = (headerLine: number): string => `S${headerLine}`;
/** The line, counted in its block, that an id of a line or a section stands for. */
export const lineOfId = (id: string): number => Number(/(\d+)$/.exec(id)?.[1] ?? 0);

/** The formula that a block says, `undefined` when it is of another kind. Remembered for the blocks asked about last. */
export const formulaOf: (block: Block) => FormulaModel | undefined = memoByBlock(build);

function build(block: Block): FormulaModel | undefined {
  const { top } = block;
  if (top?.kind !== 'formula' || top.header.name === undefined) return undefined;
  const dough = sectionOf(block, top, 'formula');
  const rest = block.subs.filter((section) => holdsIngredients(section.kind));
  return {
    name: top.header.name,
    block,
    said: dough.said,
    sections: [dough, ...rest.map((section) => sectionOf(block, section, section.kind as SectionKind))],
    mixes: block.subs.filter((section) => section.kind === 'mix').map((section) => mixOf(block, section)),
    processes: [top, ...block.subs].flatMap((section) => {
      const process = processOf(block, section);
      return section.kind === 'process' || process.steps.length > 0 ? [process] : [];
    }),
    trials: block.subs
      .filter((section) => section.kind === 'trial')
      .map((section) => ({
        headerLine: section.headerLine,
        header: section.header,
        said: propertiesOf(block, section),
        phases: phasesOf(block, section),
      })),
  };
}

function sectionOf(block: Block, section: Section, kind: SectionKind): SectionModel {
  const lines: LineModel[] = [];
  for (const line of linesOf(section)) {
    const parsed = block.lines[line]!;
    if (parsed.statement.kind === 'ingredient')
      lines.push({
        id: lineId(line),
        line,
        parsed,
        statement: asMeant(block, line, parsed.statement),
      });
  }
  return {
    id: sectionId(section.headerLine),
    kind,
    name: section.header.name,
    headerLine: section.headerLine,
    endLine: section.endLine,
    said: propertiesOf(block, section),
    lines,
  };
}

/** A line that names a part and no amount takes all of it; a number without a unit is what those beside it are. */
function asMeant(block: Block, line: number, statement: IngredientStatement): IngredientStatement {
  const { start, end } = statement.amount;
  const bare = bareAmount(block, line);
  if (bare !== undefined) return { ...statement, amount: { ...bare, start, end } };
  const name = partTakenWhole(block, elementAt(block.lines, line).text, statement);
  return name === undefined ? statement : { ...statement, name, amount: { kind: 'remaining', start, end } };
}

function mixOf(block: Block, section: Section): MixModel {
  const { headerLine, endLine, header } = section;
  const word = saidValue(propertiesOf(block, section), 'develop', 'word')?.word;
  const wish = degreeWords.find((one) => one === word);
  const phases = phasesOf(block, section);
  const hasUnread = block.lines
    .slice(headerLine + 1, endLine)
    .some(({ statement }) => statement.kind === 'unreadable');
  return { headerLine, endLine, header, phases, hasUnread, ...(wish === undefined ? {} : { wish }) };
}

/** The lines of a programme of mixing, wherever else stands between them. */
function phasesOf(block: Block, section: Section): Said[] {
  const phases: Said[] = [];
  for (let line = section.headerLine + 1; line < section.endLine; line++) {
    const { statement, further = [] } = block.lines[line]!;
    for (const one of [statement, ...further])
      if (one.kind === 'property' && programmeWords.has(one.property)) phases.push({ line, statement: one });
  }
  return phases;
}

/** The steps of a section; those that stand in another than a process are of the dough. */
function processOf(block: Block, section: Section): ProcessModel {
  const steps: { line: number; step: StepStatement }[] = [];
  for (let line = section.headerLine + 1; line < section.endLine; line++) {
    const parsed = block.lines[line]!;
    if (parsed.statement.kind === 'step') steps.push({ line, step: parsed.statement });
  }
  const { headerLine, header, kind } = section;
  if (kind === 'process') return { headerLine, header, steps };
  return { headerLine, header: { kind: 'header', section: 'process', keyword: header.keyword }, steps };
}
