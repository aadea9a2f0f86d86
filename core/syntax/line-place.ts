import type { Block, Section, SourceFile } from './tree.ts';

/** The block of a file that a line stands in; undefined above the first. */
export function blockAt(source: SourceFile, line: number): SourceFile['blocks'][number] | undefined {
  return source.blocks.findLast(({ firstLine }) => firstLine <= line);
}

/** The section of a block that a line of it stands in, its header included; undefined above the first. */
export function sectionAt({ top, subs }: Block, line: number): Section | undefined {
  const isIn = (section: Section): boolean => section.headerLine <= line && line < section.endLine;
  return subs.findLast(isIn) ?? (top !== undefined && isIn(top) ? top : undefined);
}
