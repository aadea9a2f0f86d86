import type { Analysis } from '../../analysis/analysis.ts';
import { shortTotals } from '../../facts/formula-words.ts';
import type { Block, Section, SourceFile } from '../../syntax/tree.ts';
import { elementAt } from '../../text/element.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { SymbolKind, SymbolNode } from '../answers.ts';

/** The sections of a file, sub-sections under their formula. */
export function symbolsOf(
  file: SourceFile,
  analysisOf: (block: Block) => Analysis | undefined,
  speaker: Speaker,
): SymbolNode[] {
  return file.blocks.flatMap(({ block, firstLine }) => {
    const children = block.subs.map((section) => nodeOf(block, section, firstLine, section.endLine, [], ''));
    if (block.top === undefined) return children;
    const analysis = analysisOf(block);
    const totals = analysis === undefined ? undefined : shortTotals(analysis);
    const detail = totals === undefined ? '' : speaker.say(totals);
    return [nodeOf(block, block.top, firstLine, block.lines.length, children, detail)];
  });
}

function nodeOf(
  block: Block,
  section: Section,
  firstLine: number,
  endLine: number,
  children: readonly SymbolNode[],
  detail: string,
): SymbolNode {
  const { header } = section;
  const text = elementAt(block.lines, section.headerLine).text;
  let last = endLine - 1;
  while (last > section.headerLine && elementAt(block.lines, last).empty) last--;
  const words = text.trim().replace(/:$/, '');
  const named = header.name !== undefined && header.name.text !== '';
  return {
    name: named && section.kind !== 'unknown' ? header.name!.text : words || section.kind,
    detail: detail !== '' ? detail : named ? section.kind : '',
    kind: kindOf(section.kind),
    place: {
      line: firstLine + section.headerLine,
      start: header.keyword.start,
      end: Math.max(header.keyword.end, header.name?.end ?? 0),
    },
    firstLine: firstLine + section.headerLine,
    lastLine: firstLine + last,
    lastColumn: elementAt(block.lines, last).text.length,
    children,
  };
}

function kindOf(kind: Section['kind']): SymbolKind {
  switch (kind) {
    case 'preferment':
    case 'soaker':
    case 'scald':
    case 'part':
    case 'filling':
    case 'topping':
    case 'bath':
      return 'part';
    case 'unknown':
      return 'line';
    default:
      return kind;
  }
}
