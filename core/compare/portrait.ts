import type { Analysis } from '../analysis/analysis.ts';
import type { Finding } from '../features/answers.ts';
import type { FormulaTotals } from '../features/totals.ts';
import { totalsOf } from '../features/totals-of.ts';
import { definitionOf } from '../model/scope.ts';
import type { Block, SourceFile } from '../syntax/tree.ts';
import { plainDisplay, worded } from '../text/display.ts';
import { foldName } from '../text/names.ts';
import { type WrittenLine, type WrittenSection, writtenLine, writtenSections } from './written.ts';

/**
 * A file as it is compared with another state of itself: what is written and what comes of it, as plain data that needs
 * no other file any more. A portrait of an old revision can be kept after its files are gone.
 */
export interface FilePortrait {
  readonly file: string;
  readonly formulas: readonly FormulaPortrait[];
  readonly definitions: readonly DefinitionPortrait[];
  /** Lines outside of any section. */
  readonly loose: readonly WrittenLine[];
}

interface BlockPortrait {
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

export interface FormulaPortrait extends BlockPortrait {
  readonly totals: FormulaTotals;
}

export interface DefinitionPortrait extends BlockPortrait {
  readonly kind: 'flour' | 'ingredient' | 'mixer' | 'bakery' | 'plan';
}

/** What a portrait needs to know of each formula of the file. */
export interface Sitter {
  readonly analysisOf: (block: Block) => Analysis | undefined;
  readonly findingsOf: (block: Block, firstLine: number) => readonly Finding[];
}

/** The portrait of a file; `file` is how the comparison shall name it. */
export function portraitOf(file: string, source: SourceFile, sitter: Sitter): FilePortrait {
  const formulas: FormulaPortrait[] = [];
  const definitions: DefinitionPortrait[] = [];
  const loose: WrittenLine[] = [];
  for (const { block, firstLine } of source.blocks) {
    const analysis = sitter.analysisOf(block);
    const definition = definitionOf(file, firstLine, block);
    if (analysis !== undefined) {
      const totals = worded(
        totalsOf(file, analysis, sitter.findingsOf(block, firstLine), firstLine),
        plainDisplay,
      );
      formulas.push({ ...blockPortrait(file, block, firstLine, totals.formula), totals });
    } else if (definition !== undefined && definition.kind !== 'formula') {
      definitions.push({
        ...blockPortrait(file, block, firstLine, definition.name.text),
        kind: block.top!.kind as DefinitionPortrait['kind'],
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

function blockPortrait(file: string, block: Block, firstLine: number, name: string): BlockPortrait {
  const sections = writtenSections(block, firstLine);
  return {
    file,
    name,
    folded: foldName(name),
    line: firstLine,
    source: block.lines.map(({ text }) => text).join('\n'),
    keys: sections.flatMap((section) => [`${section.title}:`, ...section.lines.map(({ key }) => key)]),
    sections,
  };
}
