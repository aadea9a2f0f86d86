import type { Analysis } from '../analysis/analysis.ts';
import type { SolvedFormula } from '../calc/formula-result.ts';
import { effectiveDiffers } from '../features/formula-words.ts';
import { productOf } from '../features/product.ts';
import { lineOfId } from '../model/formula-model.ts';
import { degrees, figure, mass, percent } from '../text/figures.ts';
import type { FactSource, SheetFact } from './view.ts';

/** The figures a baker knows a dough by. `size` says where the size of the batch comes from. */
export function factsOf(analysis: Analysis, firstLine: number, size: FactSource): SheetFact[] {
  const solved = analysis.solved!;
  const facts: SheetFact[] = [];
  const add = (fact: SheetFact, line: number | undefined): void => {
    facts.push(line === undefined ? fact : { ...fact, line });
  };
  if (solved.hydration !== undefined) {
    const note = effectiveDiffers(solved) ? { note: `effective ${percent(solved.effectiveHydration!)}` } : {};
    const value = percent(solved.hydration);
    add(
      { key: 'hydration', label: 'Hydration', value, source: 'file', ...note },
      roleLine(analysis, 'water', firstLine),
    );
  }
  if (solved.saltFraction !== undefined && solved.saltFraction > 0)
    add(
      { key: 'salt', label: 'Salt', value: percent(solved.saltFraction), source: 'file' },
      roleLine(analysis, 'salt', firstLine),
    );
  if (solved.prefermentedFlour !== undefined && solved.prefermentedFlour > 0) {
    const value = percent(solved.prefermentedFlour);
    add({ key: 'prefermented', label: 'Prefermented flour', value, source: 'file' }, undefined);
  }
  if (solved.flourGrams !== undefined)
    add({ key: 'flour', label: 'Flour in all', value: mass(solved.flourGrams), source: size }, undefined);
  const celsius = analysis.resolved.doughCelsius;
  if (celsius !== undefined)
    add(
      { key: 'dough temperature', label: 'Dough temperature', value: degrees(celsius), source: 'file' },
      saidLine(analysis, 'dough temperature', firstLine),
    );
  return facts;
}

/** What the batch comes to, before and after baking. */
export function yieldsOf(analysis: Analysis, firstLine: number, size: FactSource): SheetFact[] {
  const solved = analysis.solved!;
  const { lossFraction, bakeLossFraction } = analysis.resolved.input;
  const [yieldLine, lossLine, bakeLine] = ['yield', 'loss', 'bake loss'].map((word) =>
    saidLine(analysis, word, firstLine),
  );
  const facts: SheetFact[] = [];
  const add = (
    key: string,
    label: string,
    value: string | undefined,
    source: FactSource,
    line: number | undefined,
    note?: string,
  ): void => {
    if (value === undefined) return;
    facts.push({
      key,
      label,
      value,
      source,
      ...(note === undefined ? {} : { note }),
      ...(line === undefined ? {} : { line }),
    });
  };
  const weight = (grams: number | undefined): string | undefined =>
    grams === undefined ? undefined : mass(grams);
  const share = (fraction: number | undefined): string | undefined =>
    fraction === undefined || fraction === 0 ? undefined : percent(fraction);
  add('bowl', 'Into the bowl', weight(solved.doughGrams), size, undefined);
  add('folded in', 'Folded in', weight(solved.enclosedGrams), size, undefined);
  const made = solved.doughGrams === undefined ? undefined : solved.doughGrams + (solved.enclosedGrams ?? 0);
  const left = lost(made, lossFraction);
  add('loss', 'Stays in bowl and on bench', share(lossFraction), 'file', lossLine, left);
  const atDivider = lossFraction > 0 || solved.pieces !== undefined ? solved.yieldDoughGrams : undefined;
  add('divided', 'Dough divided', weight(atDivider), size, yieldLine);
  add('pieces', 'Pieces', piecesWords(solved), size, yieldLine, pieceNote(solved.pieceGrams));
  add(
    'bake loss',
    'Lost in the oven',
    share(bakeLossFraction),
    'file',
    bakeLine,
    lost(solved.yieldDoughGrams, bakeLossFraction),
  );
  add('baked', 'Baked', weight(solved.bakedGrams), size, undefined, pieceNote(solved.bakedPieceGrams));
  const product = productOf(analysis);
  const sold = product.known ? product.value.bakedGrams : undefined;
  if (sold !== undefined && solved.bakedGrams !== undefined && sold - solved.bakedGrams > 1e-9 * sold) {
    const piece = solved.pieces === undefined ? undefined : sold / solved.pieces;
    add('sold', 'With fillings and toppings', weight(sold), size, undefined, pieceNote(piece));
  }
  return facts;
}

/** The line of the dough that holds the first ingredient of a role. */
export function roleLine(analysis: Analysis, role: string, firstLine: number): number | undefined {
  const line = analysis.solved?.sections[0]?.lines.find((one) => one.role === role);
  return line === undefined ? undefined : firstLine + lineOfId(line.id);
}

function saidLine(analysis: Analysis, word: string, firstLine: number): number | undefined {
  const line = analysis.resolved.model.said.get(word)?.[0]?.line;
  return line === undefined ? undefined : firstLine + line;
}

function lost(grams: number | undefined, fraction: number | undefined): string | undefined {
  return grams === undefined || fraction === undefined ? undefined : mass(grams * fraction);
}

function piecesWords({ pieces }: SolvedFormula): string | undefined {
  return pieces === undefined ? undefined : figure(pieces, 1);
}

function pieceNote(grams: number | undefined): string | undefined {
  return grams === undefined ? undefined : `${mass(grams)} each`;
}
