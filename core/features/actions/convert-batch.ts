import type { Analysis } from '../../analysis/analysis.ts';
import type { MixAnalysis } from '../../analysis/mix-analysis.ts';
import { doughOf } from '../../calc/formula/formula-input.ts';
import { mostDoughGrams, softness, usualDoughGrams } from '../../calc/mixing/bowl-load.ts';
import type { Mixer } from '../../model/found-mixer.ts';
import { wordFor } from '../../syntax/bread-words.ts';
import { elementAt } from '../../text/element.ts';
import { trimmed } from '../../text/figures.ts';
import type { LineEdit } from '../../text/span.ts';

/** A yield that brings the dough to the usual load of a bowl. */
export interface LoadedBatch {
  /** Beside the batch of the formula. */
  readonly factor: number;
  readonly doughGrams: number;
  /** The yield as it is to be. */
  readonly now: { readonly pieces: number } | { readonly grams: number };
  readonly line: number;
  readonly edit: LineEdit;
}

/** A batch nearer to the usual load than this is left as it is. */
const nearUsual = { least: 0.8, most: 1.25 };

/** How many batches a bowl takes a dough in; one where it states no most. */
export function batchesFor(mix: MixAnalysis, { mostGrams }: Mixer): number {
  if (mostGrams === undefined || !(mostGrams > 0)) return 1;
  return Math.max(1, Math.ceil(mix.doughGrams / mostDoughGrams(mostGrams, loadOf(mix)) - 1e-9));
}

/** The formula’s yield for one usual load of a bowl that states what it takes; undefined where that is about what it is. */
export function batchAtLoad(analysis: Analysis, mix: MixAnalysis, mixer: Mixer): LoadedBatch | undefined {
  const { resolved, solved } = analysis;
  const { mostGrams, leastGrams } = mixer;
  const isDough = mix.sectionId === doughOf(resolved.input).id;
  if (mostGrams === undefined || !isDough || solved?.assumedScale !== false) return undefined;
  const wanted = usualDoughGrams(mostGrams, leastGrams, loadOf(mix).waterToFlour) / mix.doughGrams;
  if (!(wanted > 0) || (wanted >= nearUsual.least && wanted <= nearUsual.most)) return undefined;
  const said = resolved.model.said.get('yield')?.[0];
  const value = said?.statement.value;
  if (said === undefined || value === undefined) return undefined;
  const { tokens } = elementAt(resolved.model.block.lines, said.line);
  const isCount = value.form === 'yieldPieces';
  const token = tokens.find(({ quantity }) => quantity?.kind === (isCount ? 'count' : 'mass'));
  const figure = isCount
    ? value.count
    : value.form === 'yieldMass' || value.form === 'yieldFlour'
      ? value.grams
      : undefined;
  if (token === undefined || figure === undefined || !(figure > 0)) return undefined;
  const now = isCount ? Math.max(1, Math.floor(figure * wanted + 1e-9)) : roundedGrams(figure * wanted);
  const factor = now / figure;
  if (factor === 1) return undefined;
  const insert = isCount ? `${now} ${wordFor(now, token.quantity?.unit ?? 'pieces')}` : massInFile(now);
  return {
    factor,
    doughGrams: mix.doughGrams * factor,
    now: isCount ? { pieces: now } : { grams: now },
    line: said.line,
    edit: { start: token.start, end: token.end, insert },
  };
}

function loadOf(mix: MixAnalysis): { readonly waterToFlour: number } {
  const portions = mix.input.phases.flatMap((phase) => ('portions' in phase ? phase.portions : []));
  return { waterToFlour: softness(portions) ?? 0 };
}

/** Two figures, as a baker sets a batch. */
function roundedGrams(grams: number): number {
  return Number(grams.toPrecision(2));
}

function massInFile(grams: number): string {
  return grams >= 1000 ? `${trimmed(grams / 1000, 3)} kg` : `${trimmed(grams, 1)} g`;
}
