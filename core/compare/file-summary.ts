import type { Analysis } from '../analysis/analysis.ts';
import type { PlanTimes } from '../facts/plan-times.ts';
import type { FormulaTotals } from '../facts/totals.ts';
import { type FoundInFile, totalsOf } from '../facts/totals-of.ts';
import { definitionOf } from '../model/scope.ts';
import type { Block, SourceFile } from '../syntax/tree.ts';
import { foldName } from '../text/names.ts';
import type { Message } from '../words/message.ts';
import type { Renaming } from './comparison.ts';
import {
  type WrittenLine,
  type WrittenSection,
  writtenKeys,
  writtenLine,
  writtenSections,
} from './written.ts';

/**
 * A file as it is compared with another state of itself: what is written and what comes of it, as plain data that needs
 * no other file any more. A summary of an old revision can be kept after its files are gone.
 */
export interface FileSummary {
  readonly file: string;
  readonly formulas: readonly FormulaSummary[];
  readonly definitions: readonly DefinitionSummary[];
  /** Lines outside of any section. */
  readonly loose: readonly WrittenLine[];
}

/** A summary as it was written, and as it would be if what got another name had been called so before. */
export interface Formerly<T> {
  readonly written: T;
  readonly renamings: readonly Renaming[];
}

interface BlockSummary {
  readonly file: string;
  readonly name: string;
  readonly folded: string;
  readonly line: number;
  /** As it stands in the file, for telling apart what only looks different. */
  readonly source: string;
  /** What is written, one key a line: equal where nothing but blanks and comments differ. */
  readonly keys: readonly string[];
  readonly sections: readonly WrittenSection[];
}

export interface FormulaSummary extends BlockSummary {
  /** Findings and all else that is said stand in it as messages. */
  readonly totals: FormulaTotals<Message>;
  /** Findings that somebody has looked at and let stand. */
  readonly accepted: readonly Accepted[];
  readonly formerly?: Formerly<FormulaSummary>;
  /** How long the work takes by the times that are written. */
  readonly work?: WorkTimes;
}

/** The times of a formula's work in minutes, of those steps alone that have one. */
export interface WorkTimes {
  /** From the first hand that is moved, for a preferment say, until all is ready. */
  readonly totalMinutes: number;
  /** From the start of mixing until all is ready. */
  readonly fromMixMinutes: number;
}

/** A finding let stand by an `# accept`; its line counted from zero. */
export interface Accepted {
  readonly code: string;
  readonly reason?: string;
  readonly line: number;
}

export interface DefinitionSummary extends BlockSummary {
  readonly kind: 'flour' | 'ingredient' | 'mixer' | 'bakery' | 'plan' | 'experiment';
  readonly formerly?: Formerly<DefinitionSummary>;
  /** Of a plan. */
  readonly times?: PlanTimes;
}

/** What a summary needs to know of each formula of the file. */
export interface AnalysisProvider {
  readonly analysisOf: (block: Block) => Analysis | undefined;
  readonly findingsOf: (block: Block, firstLine: number) => readonly FoundInFile[];
  readonly workOf: (analysis: Analysis) => WorkTimes;
  /** The times of a plan; none for what is no plan. */
  readonly planTimesOf: (block: Block) => PlanTimes | undefined;
}

/** Whether a formula has names that mean nothing where it stands. */
export function isLackingNames({ totals }: FormulaSummary): boolean {
  return totals.findings.some(({ code }) => code.startsWith('unknown-'));
}

/** Whether a text still holds the marks that git writes around what it could not merge. */
export function isUnfinishedMerge(text: string): boolean {
  return /^(?:<{7,}|\|{7,}|={7,}|>{7,})(?=\s|$)/m.test(text);
}

/** The summary of a file; `file` is how the comparison shall name it. */
export function summaryOf(file: string, source: SourceFile, provider: AnalysisProvider): FileSummary {
  const formulas: FormulaSummary[] = [];
  const definitions: DefinitionSummary[] = [];
  const loose: WrittenLine[] = [];
  for (const { block, firstLine } of source.blocks) {
    const analysis = provider.analysisOf(block);
    const definition = definitionOf(file, firstLine, block);
    const times = definition?.kind === 'plan' ? provider.planTimesOf(block) : undefined;
    if (analysis !== undefined) {
      const totals = totalsOf(file, analysis, provider.findingsOf(block, firstLine), firstLine);
      formulas.push({
        ...blockSummary(file, block, firstLine, totals.formula),
        totals,
        accepted: acceptedIn(block, firstLine),
        work: provider.workOf(analysis),
      });
    } else if (definition !== undefined && definition.kind !== 'formula') {
      definitions.push({
        ...blockSummary(file, block, firstLine, definition.name.text),
        kind: block.top!.kind as DefinitionSummary['kind'],
        ...(times === undefined ? {} : { times }),
      });
    } else {
      block.lines.forEach((parsed, index) => {
        const written = writtenLine(parsed, firstLine + index);
        if (written !== undefined) loose.push(written);
      });
    }
  }
  return { file, formulas, definitions, loose };
}

function acceptedIn(block: Block, firstLine: number): Accepted[] {
  return block.lines.flatMap(({ accept }, index) =>
    (accept?.codes ?? []).map(({ code }) => ({
      code,
      line: firstLine + index,
      ...(accept?.reason === undefined ? {} : { reason: accept.reason }),
    })),
  );
}

function blockSummary(file: string, block: Block, firstLine: number, name: string): BlockSummary {
  const sections = writtenSections(block, firstLine);
  return {
    file,
    name,
    folded: foldName(name),
    line: firstLine,
    source: block.lines.map(({ text }) => text).join('\n'),
    keys: writtenKeys(sections),
    sections,
  };
}
