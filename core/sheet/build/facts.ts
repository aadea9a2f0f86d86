import type { Analysis } from '../../analysis/analysis.ts';
import { effectiveDiffers } from '../../facts/formula-words.ts';
import { productOf } from '../../facts/product.ts';
import { lineOfId } from '../../model/formula-model.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { FactSource, SheetFact } from './view.ts';

/** The figures a baker knows a dough by. `size` says where the size of the batch comes from. */
export function factsOf(
  analysis: Analysis,
  firstLine: number,
  size: FactSource,
  speaker: Speaker,
): SheetFact[] {
  const solved = analysis.solved!;
  const facts: SheetFact[] = [];
  const add = (fact: SheetFact, line: number | undefined): void => {
    facts.push(line === undefined ? fact : { ...fact, line });
  };
  if (solved.hydration !== undefined) {
    const note = effectiveDiffers(solved)
      ? { note: speaker.say(message('sheet.effective', { fraction: solved.effectiveHydration! })) }
      : {};
    const value = speaker.percent(solved.hydration);
    const label = speaker.say(message('sheet.hydration'));
    add({ key: 'hydration', label, value, source: 'file', ...note }, roleLine(analysis, 'water', firstLine));
  }
  if (solved.saltFraction !== undefined && solved.saltFraction > 0)
    add(
      {
        key: 'salt',
        label: speaker.say(message('sheet.salt')),
        value: speaker.percent(solved.saltFraction),
        source: 'file',
      },
      roleLine(analysis, 'salt', firstLine),
    );
  if (solved.prefermentedFlour !== undefined && solved.prefermentedFlour > 0) {
    const value = speaker.percent(solved.prefermentedFlour);
    const label = speaker.say(message('sheet.prefermented'));
    add({ key: 'prefermented', label, value, source: 'file' }, undefined);
  }
  if (solved.flourGrams !== undefined) {
    const value = speaker.mass(solved.flourGrams);
    const label = speaker.say(message('sheet.flour-in-all'));
    add({ key: 'flour', label, value, source: size }, undefined);
  }
  const celsius = analysis.resolved.doughCelsius;
  if (celsius !== undefined)
    add(
      {
        key: 'dough temperature',
        label: speaker.say(message('sheet.dough-temperature')),
        value: speaker.celsius(celsius),
        source: 'file',
      },
      saidLine(analysis, 'dough temperature', firstLine),
    );
  return facts;
}

/** What the batch comes to, before and after baking. */
export function yieldsOf(
  analysis: Analysis,
  firstLine: number,
  size: FactSource,
  speaker: Speaker,
): SheetFact[] {
  const solved = analysis.solved!;
  const { lossFraction, bakeLossFraction } = analysis.resolved.input;
  const [yieldLine, lossLine, bakeLine] = ['yield', 'loss', 'bake loss'].map((word) =>
    saidLine(analysis, word, firstLine),
  );
  const facts: SheetFact[] = [];
  const add = (
    key: string,
    label: Message,
    value: string | undefined,
    source: FactSource,
    line: number | undefined,
    note?: string,
  ): void => {
    if (value === undefined) return;
    facts.push({
      key,
      label: speaker.say(label),
      value,
      source,
      ...(note === undefined ? {} : { note }),
      ...(line === undefined ? {} : { line }),
    });
  };
  const weight = (grams: number | undefined): string | undefined =>
    grams === undefined ? undefined : speaker.mass(grams);
  const share = (fraction: number | undefined): string | undefined =>
    fraction === undefined || fraction === 0 ? undefined : speaker.percent(fraction);
  const lost = (grams: number | undefined, fraction: number | undefined): string | undefined =>
    grams === undefined || fraction === undefined ? undefined : speaker.mass(grams * fraction);
  const each = (grams: number | undefined): string | undefined =>
    grams === undefined ? undefined : speaker.say(message('sheet.each', { grams }));
  add('bowl', message('sheet.into-bowl'), weight(solved.doughGrams), size, undefined);
  add('folded in', message('sheet.folded-in'), weight(solved.enclosedGrams), size, undefined);
  const made = solved.doughGrams === undefined ? undefined : solved.doughGrams + (solved.enclosedGrams ?? 0);
  const left = lost(made, lossFraction);
  add('loss', message('sheet.loss'), share(lossFraction), 'file', lossLine, left);
  const atDivider = lossFraction > 0 || solved.pieces !== undefined ? solved.yieldDoughGrams : undefined;
  add('divided', message('sheet.divided'), weight(atDivider), size, yieldLine);
  const pieces = solved.pieces === undefined ? undefined : speaker.number(solved.pieces, 1);
  add('pieces', message('sheet.pieces'), pieces, size, yieldLine, each(solved.pieceGrams));
  add(
    'bake loss',
    message('sheet.bake-loss'),
    share(bakeLossFraction),
    'file',
    bakeLine,
    lost(solved.yieldDoughGrams, bakeLossFraction),
  );
  add(
    'baked',
    message('sheet.baked'),
    weight(solved.bakedGrams),
    size,
    undefined,
    each(solved.bakedPieceGrams),
  );
  const product = productOf(analysis);
  const sold = product.known ? product.value.bakedGrams : undefined;
  if (sold !== undefined && solved.bakedGrams !== undefined && sold - solved.bakedGrams > 1e-9 * sold) {
    const piece = solved.pieces === undefined ? undefined : sold / solved.pieces;
    add('sold', message('sheet.sold'), weight(sold), size, undefined, each(piece));
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
