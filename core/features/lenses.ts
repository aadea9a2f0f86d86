import type { Analysis } from '../analysis/analysis.ts';
import { mentionsOf } from '../model/mentions.ts';
import type { Block, Name, SourceFile } from '../syntax/tree.ts';
import { mass, percent } from '../text/figures.ts';
import type { Place } from '../text/span.ts';
import type { Steps } from '../text/steps.ts';
import { makesWords, shortTotals } from './formula-words.ts';
import { useWords } from './goes-into.ts';
import { type NameBook, nameAt, placeOfUse, usesOf } from './names.ts';
import type { Reference } from './references.ts';

/** A line of words above a header. */
export type Lens =
  | { readonly kind: 'totals'; readonly place: Place; readonly text: string }
  /** Who uses what the header defines is counted when the lens is seen. */
  | { readonly kind: 'uses'; readonly place: Place };

/** Who uses a definition. */
export interface Uses {
  readonly text: string;
  readonly references: readonly Reference[];
}

/** The totals over each formula, and a place for who uses it over each definition that others can use. */
export function lensesOf(
  book: NameBook,
  uri: string,
  file: SourceFile,
  analysisOf: (block: Block) => Analysis | undefined,
): Lens[] {
  const namedHere = namedIn(file);
  return file.blocks.flatMap(({ block, firstLine }): Lens[] => {
    const { top } = block;
    const name = top?.header.name;
    if (top === undefined || name === undefined || name.folded === '') return [];
    const place = { line: firstLine + top.headerLine, start: name.start, end: name.end };
    // Most formulas are made for themselves, and nothing is said over those.
    const isUsable = ['flour', 'ingredient', 'mixer'].includes(top.kind);
    const isUsed = top.kind === 'formula' && isNamedElsewhere(book, uri, namedHere, name);
    const used: Lens[] = isUsable || isUsed ? [{ kind: 'uses', place }] : [];
    const analysis = top.kind === 'formula' ? analysisOf(block) : undefined;
    const text = analysis === undefined ? undefined : totalsWords(analysis);
    return text === undefined ? used : [{ kind: 'totals', place, text }, ...used];
  });
}

function isNamedElsewhere(
  book: NameBook,
  uri: string,
  namedHere: ReadonlySet<string>,
  { folded }: Name,
): boolean {
  return namedHere.has(folded) || book.mentioning(folded).some((other) => other !== uri);
}

/** Every name that lines of a file name from elsewhere. */
function namedIn(file: SourceFile): ReadonlySet<string> {
  const named = new Set<string>();
  for (const { block } of file.blocks)
    for (const { name, use } of mentionsOf(block))
      if (use !== 'definition' && use !== 'part') named.add(name.folded);
  return named;
}

function totalsWords(analysis: Analysis): string | undefined {
  const { solved } = analysis;
  const totals = shortTotals(analysis);
  if (solved === undefined || totals === undefined) return undefined;
  const words = [totals];
  if (solved.flourGrams !== undefined) words.push(`${mass(solved.flourGrams)} flour`);
  if (solved.prefermentedFlour !== undefined && solved.prefermentedFlour > 0)
    words.push(`${percent(solved.prefermentedFlour)} prefermented`);
  const [makes] = solved.pieces === undefined ? [] : makesWords(solved);
  if (makes !== undefined) words.push(makes);
  return words.join(' · ');
}

/** Who uses what the header at a place defines: by amount, as a base or as a machine. */
export function* usesAt(book: NameBook, uri: string, line: number, column: number): Steps<Uses | undefined> {
  const target = nameAt(book, uri, line, column);
  if (target === undefined || target.mention.use !== 'definition') return undefined;
  const counted = ['line', 'planned', 'like', 'mixer'];
  const uses = (yield* usesOf(book, target)).filter(({ mention }) => counted.includes(mention.use));
  return {
    text: useWords(uses),
    references: uses.map((use) => ({ uri: use.at.uri, place: placeOfUse(book, use) })),
  };
}
