import { readFile } from 'node:fs/promises';
import { isUnfinishedMerge, mergeTexts, usualMarks } from '../../core/index.ts';
import { largestFileBytes } from '../host/host.ts';
import { replaceFile } from './write-out.ts';

/** What a merge in conflict ends with: no other program that fails, Node among them, ends with it. */
export const conflictCode = 100;

export interface MergeOptions {
  readonly markerSize: number;
  readonly labels?: readonly string[];
}

/**
 * Merges a formula file for git, into the file of our side: 0 where all came together, `conflictCode` where lines are marked
 * for the baker, 2 where this is not for us, so that git merges it line by line.
 */
export async function mergeFile(
  paths: { readonly ours: string; readonly base: string; readonly theirs: string },
  { markerSize, labels = [] }: MergeOptions,
): Promise<0 | 2 | typeof conflictCode> {
  const texts: string[] = [];
  for (const path of [paths.base, paths.ours, paths.theirs]) {
    const text = await textOf(path);
    // A base may hold the marks of an older merge, which git tried in between.
    if (text === undefined || isUnfinishedMerge(text)) return 2;
    texts.push(text);
  }
  const label = (at: number, usual: string): string => {
    const name = labels[at];
    // A git before 2.45 knows no names for the sides and leaves its placeholder standing.
    return name === undefined || name === '' || name.startsWith('%') ? usual : name;
  };
  const { text, conflicts } = mergeTexts(texts[0]!, texts[1]!, texts[2]!, {
    ours: label(0, usualMarks.ours),
    theirs: label(1, usualMarks.theirs),
    size: markerSize,
  });
  await replaceFile(paths.ours, text);
  return conflicts === 0 ? 0 : conflictCode;
}

/** The text letter by letter; `undefined` where it is none that may be written back. */
async function textOf(path: string): Promise<string | undefined> {
  try {
    const bytes = await readFile(path);
    if (bytes.length > largestFileBytes || bytes.includes(0)) return undefined;
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return undefined;
  }
}
