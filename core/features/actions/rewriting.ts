import { type DrawInput, doughOf } from '../../calc/formula/formula-input.ts';
import type { SolvedLine } from '../../calc/formula/formula-result.ts';
import type { LineModel, SectionModel } from '../../model/formula-model.ts';
import { indentOf } from '../../text/indent.ts';
import type { WholeFormula } from './after.ts';
import { exactMass, exactPercent } from './exact-figures.ts';
import type { LineChanges } from './line-changes.ts';
import { commentOf } from './line-layout.ts';

/** Weights below this are rounding, and nothing to write. */
export const nothing = 1e-9;

/** What a drawing part may be said to draw. */
interface Drawable {
  readonly key: string;
  readonly role: string;
  readonly isFlour: boolean;
}

/** New weights of the lines of a section, in grams by line id; lines that are not named keep theirs. */
export type NewGrams = ReadonlyMap<string, number>;

/**
 * Writes the lines of a section so that they weigh what is wanted, each in its own manner: a percent as a percent of the new
 * flour, a mass as a mass; what is worked out (`balance`, `to N% hydration`) stays so. A volume or count whose weight
 * changes becomes a mass. Lines that weigh nothing any more go, their comments stay. `undefined` where a line cannot say it.
 */
export function writeLines(
  changes: LineChanges,
  section: SectionModel,
  solved: ReadonlyMap<string, SolvedLine>,
  wanted: NewGrams,
  baseGrams: number,
): true | undefined {
  for (const line of section.lines) {
    const before = solved.get(line.id)?.grams;
    if (before === undefined) return undefined;
    const grams = wanted.get(line.id) ?? before;
    const { amount } = line.statement;
    if (amount.kind === 'hydration') continue;
    if (grams <= nothing && before > nothing) {
      const comment = commentOf(line.parsed).trim();
      changes.replace(line.line, ...(comment === '' ? [] : [`${indentOf(line.parsed.text)}${comment}`]));
      continue;
    }
    const isSame = Math.abs(grams - before) <= nothing * Math.max(1, before);
    switch (amount.kind) {
      case 'balance':
      case 'remaining':
        continue;
      case 'unknown':
        return undefined;
      case 'fraction':
        if (!(baseGrams > 0)) return undefined;
        if (Math.abs(grams / baseGrams - amount.fraction) > 1e-12)
          writeAmount(changes, line, exactPercent(grams / baseGrams));
        continue;
      default:
        if (isSame) continue;
        if ('aPiece' in amount) return undefined;
        writeAmount(changes, line, exactMass(grams));
    }
  }
  return true;
}

/** Puts another amount into an ingredient line, in the place of what stands there. */
export function writeAmount(
  changes: LineChanges,
  { line, statement: { amount } }: LineModel,
  text: string,
): void {
  changes.edit(line, { start: amount.start, end: amount.end, insert: text });
}

/** The flour that 100 % is of, when the lines of a section weigh what is wanted. */
export function flourOfLines(lines: readonly SolvedLine[], wanted: NewGrams): number {
  return lines.reduce(
    (sum, { id, isFlour, grams }) => sum + (isFlour ? (wanted.get(id) ?? grams ?? 0) : 0),
    0,
  );
}

/**
 * Writes what the other drawing parts draw, so that each still takes the same grams of dough lines that weigh otherwise
 * now.
 */
export function writeDraws(
  changes: LineChanges,
  { analysis, solved }: WholeFormula,
  except: string,
  wanted: NewGrams,
  added: readonly (Drawable & { readonly grams: number })[] = [],
): true | undefined {
  const dough = doughOf(solved);
  const { model, input } = analysis.resolved;
  for (const section of model.sections.slice(1)) {
    const draws = input.sections.find(({ id }) => id === section.id)?.draws ?? [];
    if (section.id === except) continue;
    for (const { line, statement } of section.said.get('draws') ?? []) {
      const draw = draws.find(({ id }) => id === `L${line}`);
      if (draw === undefined || statement.value?.form !== 'draws') return undefined;
      const drawn = dough.lines.filter((one) => !one.part && isDrawn(draw, one));
      const before = drawn.reduce((sum, { grams }) => sum + (grams ?? 0), 0);
      const after =
        drawn.reduce((sum, { id, grams }) => sum + (wanted.get(id) ?? grams ?? 0), 0) +
        added.reduce((sum, one) => sum + (isDrawn(draw, one) ? one.grams : 0), 0);
      if (Math.abs(after - before) <= nothing * before) continue;
      if (!(after > 0)) return undefined;
      changes.edit(line, {
        start: statement.valueSpan.start,
        end: statement.valueSpan.end,
        insert: drawWords(draw.fraction * (before / after), statement.value.name.text),
      });
    }
  }
  return true;
}

/** `22% of flour`, or `all linseed` where nothing is left over. */
export function drawWords(fraction: number, name: string): string {
  return Math.abs(fraction - 1) <= 1e-10 ? `all ${name}` : `${exactPercent(fraction)} of ${name}`;
}

function isDrawn({ of }: DrawInput, line: Drawable): boolean {
  if (of.kind === 'ingredient') return line.key === of.key;
  return of.role === 'flour' ? line.isFlour : line.role === of.role;
}

/**
 * The weights of the lines of the dough when it has so much more, or less, of each ingredient. Where an ingredient stands on
 * several lines each takes its share. `lacking` are the ingredients that no line has.
 */
export function withContents(
  lines: readonly SolvedLine[],
  contents: readonly { readonly key: string; readonly grams: number }[],
): { readonly wanted: Map<string, number>; readonly lacking: string[] } {
  const wanted = new Map<string, number>();
  const lacking: string[] = [];
  for (const { key, grams } of contents) {
    const own = lines.filter((line) => !line.part && line.key === key);
    const total = own.reduce((sum, line) => sum + (line.grams ?? 0), 0);
    if (own.length === 0) lacking.push(key);
    for (const line of own)
      wanted.set(line.id, line.grams! + grams * (total > 0 ? line.grams! / total : 1 / own.length));
  }
  return { wanted, lacking };
}
