import { splitLines } from '../text/lines.ts';
import { parseLine } from './line.ts';
import type { Name } from './tree.ts';
import { isTopSection } from './vocabulary.ts';

/** The header of a formula in a file that has not been read. */
export interface IndexedFormula {
  readonly name: Name;
  readonly firstLine: number;
  /** Whether trials of it may stand below it. */
  readonly tried: boolean;
}

// No mark of a line end is taken for a mark before the word: each would begin the search anew.
const trial = /^[^\p{L}\r\n\u2028\u2029]*trial(?![\p{L}\p{N}])/imu;
const top = /^[\s\uFEFF]*(?:formula|flour|ingredient|mixer|bakery|plan|experiment)(?![\p{L}\p{N}])/iu;
/**
 * Behind marks of another layout, such as bullets, bars and `a)`, it hangs on what is above whether it opens anything. The marks
 * before the first letter are taken once: two stretches of them side by side would be parted in every way there is.
 */
const markedSection = /^(?:formula|flour|ingredient|mixer|bakery|plan|experiment)(?![\p{L}\p{N}])/iu;
const letter = /\p{L}/u;

function isMarked(line: string): boolean {
  const first = line.search(letter);
  if (first < 0) return false;
  if (markedSection.test(line.slice(first, first + longestWord))) return true;
  if (!/^[a-z]\)/i.test(line.slice(first, first + 2))) return false;
  const rest = line.slice(first + 2);
  const second = rest.search(letter);
  return second >= 0 && markedSection.test(rest.slice(second, second + longestWord));
}

/** As much as has to be seen to know a word and what stands behind it. */
const longestWord = 16;

/**
 * The formulas of a text by its headers alone, or `undefined` where it defines anything else and has to be read. Whether a
 * plain line is the header of a formula does not depend on what is above it, so this agrees with reading the text whole, at a
 * hundredth of the cost.
 */
export function indexFormulas(text: string): IndexedFormula[] | undefined {
  const formulas: IndexedFormula[] = [];
  const { texts } = splitLines(text);
  const tried = trial.test(text);
  for (const [firstLine, line] of texts.entries()) {
    if (!top.test(line)) {
      if (isMarked(line)) return undefined;
      continue;
    }
    const { statement } = parseLine(line, { context: 'none', afterBlank: true });
    if (statement.kind !== 'header' || statement.section === 'unknown' || !isTopSection(statement.section))
      continue;
    if (statement.section !== 'formula') return undefined;
    if (statement.name !== undefined) formulas.push({ name: statement.name, firstLine, tried });
  }
  return formulas;
}
