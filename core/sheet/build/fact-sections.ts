import type { Analysis } from '../../analysis/analysis.ts';
import { effectiveDiffers } from '../../facts/formula-words.ts';
import { productOf } from '../../facts/product.ts';
import { lineOfId } from '../../model/formula-model.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { Fact, FactSource, FactsSection } from './sheet-document.ts';

interface FactsInput {
  readonly analysis: Analysis;
  readonly firstLine: number;
  /** Where the size of the batch comes from. */
  readonly size: FactSource;
  readonly speaker: Speaker;
}

/** A figure to be made a fact of; without a value it is none. */
interface Figure {
  readonly key: string;
  readonly label: Message;
  readonly value: string | undefined;
  readonly source: FactSource;
  readonly line?: number | undefined;
  readonly note?: string | undefined;
}

/** Facts in the order given, each with where it comes from where that is not the file. */
function factsOf(section: string, figures: readonly Figure[], { say }: Speaker): Fact[] {
  return figures.flatMap(({ key, label, value, source, line, note }): Fact[] => {
    if (value === undefined) return [];
    const from = source === 'today' ? [say(message('sheet.tried-today'))] : [];
    return [
      {
        id: `${section}/${key}`,
        key,
        label: say(label),
        value,
        notes: [...(note === undefined ? [] : [note]), ...from],
        source,
        ...(line === undefined ? {} : { line }),
      },
    ];
  });
}

/** A section of facts; undefined where it has none. */
export function factsSection(
  name: 'facts' | 'day' | 'yield',
  title: string,
  facts: readonly Fact[],
): FactsSection | undefined {
  return facts.length === 0 ? undefined : { kind: 'facts', id: name, name, title, facts };
}

/** The figures a baker knows a dough by. */
export function doughFacts({ analysis, firstLine, size, speaker }: FactsInput): FactsSection | undefined {
  const { solved } = analysis;
  if (solved === undefined) return undefined;
  const share = (fraction: number | undefined): string | undefined =>
    fraction === undefined ? undefined : speaker.percent(fraction);
  const above = (fraction: number | undefined): number | undefined =>
    fraction !== undefined && fraction > 0 ? fraction : undefined;
  const figures: Figure[] = [
    {
      key: 'hydration',
      label: message('sheet.hydration'),
      value: share(solved.hydration),
      source: 'file',
      line: roleLine(analysis, 'water', firstLine),
      note: effectiveDiffers(solved)
        ? speaker.say(message('sheet.effective', { fraction: solved.effectiveHydration! }))
        : undefined,
    },
    {
      key: 'salt',
      label: message('sheet.salt'),
      value: share(above(solved.saltFraction)),
      source: 'file',
      line: roleLine(analysis, 'salt', firstLine),
    },
    {
      key: 'prefermented',
      label: message('sheet.prefermented'),
      value: share(above(solved.prefermentedFlour)),
      source: 'file',
    },
    {
      key: 'flour',
      label: message('sheet.flour-in-all'),
      value: solved.flourGrams === undefined ? undefined : speaker.mass(solved.flourGrams),
      source: size,
    },
  ];
  return factsSection('facts', '', factsOf('facts', figures, speaker));
}

/** What the batch comes to, before and after baking. */
export function yieldFacts({ analysis, firstLine, size, speaker }: FactsInput): FactsSection | undefined {
  const { solved } = analysis;
  if (solved === undefined) return undefined;
  const { lossFraction, bakeLossFraction } = analysis.resolved.input;
  const [yieldLine, lossLine, bakeLine] = ['yield', 'loss', 'bake loss'].map((word) =>
    saidLine(analysis, word, firstLine),
  );
  const weight = (grams: number | undefined): string | undefined =>
    grams === undefined ? undefined : speaker.mass(grams);
  const share = (fraction: number | undefined): string | undefined =>
    fraction === undefined || fraction === 0 ? undefined : speaker.percent(fraction);
  const lost = (grams: number | undefined, fraction: number | undefined): string | undefined =>
    grams === undefined || fraction === undefined ? undefined : speaker.mass(grams * fraction);
  const each = (grams: number | undefined): string | undefined =>
    grams === undefined ? undefined : speaker.say(message('sheet.each', { grams }));
  const made = solved.doughGrams === undefined ? undefined : solved.doughGrams + (solved.enclosedGrams ?? 0);
  const atDivider = lossFraction > 0 || solved.pieces !== undefined ? solved.yieldDoughGrams : undefined;
  const product = productOf(analysis);
  const sold = product.known ? product.value.bakedGrams : undefined;
  const isMoreSold =
    sold !== undefined && solved.bakedGrams !== undefined && sold - solved.bakedGrams > 1e-9 * sold;
  const soldEach = sold === undefined || solved.pieces === undefined ? undefined : sold / solved.pieces;
  const figures: Figure[] = [
    { key: 'bowl', label: message('sheet.into-bowl'), value: weight(solved.doughGrams), source: size },
    {
      key: 'folded in',
      label: message('sheet.folded-in'),
      value: weight(solved.enclosedGrams),
      source: size,
    },
    {
      key: 'loss',
      label: message('sheet.loss'),
      value: share(lossFraction),
      source: 'file',
      line: lossLine,
      note: lost(made, lossFraction),
    },
    {
      key: 'divided',
      label: message('sheet.divided'),
      value: weight(atDivider),
      source: size,
      line: yieldLine,
    },
    {
      key: 'pieces',
      label: message('sheet.pieces'),
      value: solved.pieces === undefined ? undefined : speaker.number(solved.pieces, 1),
      source: size,
      line: yieldLine,
      note: each(solved.pieceGrams),
    },
    {
      key: 'bake loss',
      label: message('sheet.bake-loss'),
      value: share(bakeLossFraction),
      source: 'file',
      line: bakeLine,
      note: lost(solved.yieldDoughGrams, bakeLossFraction),
    },
    {
      key: 'baked',
      label: message('sheet.baked'),
      value: weight(solved.bakedGrams),
      source: size,
      note: each(solved.bakedPieceGrams),
    },
    {
      key: 'sold',
      label: message('sheet.sold'),
      value: isMoreSold ? weight(sold) : undefined,
      source: size,
      note: each(soldEach),
    },
  ];
  return factsSection('yield', speaker.say(message('sheet.yield')), factsOf('yield', figures, speaker));
}

/** The line of the dough that holds the first ingredient of a role. */
export function roleLine(analysis: Analysis, role: string, firstLine: number): number | undefined {
  const line = analysis.solved?.sections[0]?.lines.find((one) => one.role === role);
  return line === undefined ? undefined : firstLine + lineOfId(line.id);
}

/** The line of the formula that holds a property of it. */
export function saidLine(analysis: Analysis, word: string, firstLine: number): number | undefined {
  const line = analysis.resolved.model.said.get(word)?.[0]?.line;
  return line === undefined ? undefined : firstLine + line;
}
