import type { Analysis } from '../../analysis/analysis.ts';
import type { Finding } from '../../rules/engine/finding.ts';
import type { Block } from '../../syntax/tree.ts';
import { holdsIngredients } from '../../syntax/vocabulary.ts';

/** The states of one formula that a tried sheet is made of. */
export interface TriedStates {
  /** As the file has it. */
  readonly inFile: Analysis;
  /** At the size and for the day that are tried. */
  readonly whole: Analysis;
  /** One batch of that. */
  readonly each: Analysis;
}

/**
 * The findings of a formula as it is tried, each of the state it concerns: a trial measured the formula as the file has
 * it; a preferment is made once for all batches; whatever else goes into the bowl batch by batch.
 */
export function findingsAsTried(
  { inFile, whole, each }: TriedStates,
  firstLine: number,
  findingsOf: (analysis: Analysis) => readonly Finding[],
): readonly Finding[] {
  const { block } = inFile.resolved.model;
  const kinds = block.subs.map(({ kind }) => kind);
  const states = [
    each,
    ...(each !== whole && kinds.some(holdsIngredients) ? [whole] : []),
    ...(kinds.includes('trial') ? [inFile] : []),
  ];
  const stateOf = (line: number): Analysis => {
    const kind = kindAt(block, line);
    if (kind === 'trial') return inFile;
    return kind !== undefined && holdsIngredients(kind) && states.includes(whole) ? whole : each;
  };
  return states
    .flatMap((state) => findingsOf(state).filter(({ place }) => stateOf(place.line - firstLine) === state))
    .sort((one, other) => one.place.line - other.place.line);
}

/** What kind of section a line of a block stands in; none in the formula's own lines. */
function kindAt(block: Block, line: number): Block['subs'][number]['kind'] | undefined {
  return block.subs.find(({ headerLine, endLine }) => line >= headerLine && line < endLine)?.kind;
}
