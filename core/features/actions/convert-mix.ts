import type { Analysis } from '../../analysis/analysis.ts';
import type { MixAnalysis } from '../../analysis/mix-analysis.ts';
import { doughMixOf } from '../../analysis/trial-programme.ts';
import type { Known } from '../../calc/known.ts';
import {
  type Conversion,
  type ConvertedWater,
  convertProgramme,
  type TimedWork,
} from '../../calc/mixing/conversion.ts';
import { formulaOf, type MixModel } from '../../model/formula-model.ts';
import { byHand, findHands, findMixer, type Mixer } from '../../model/found-mixer.ts';
import { isVariant, originOf } from '../../model/variant.ts';
import { hottestCelsius } from '../../rules/mixing/hot-water.ts';
import { programmeInto, trialsToKeep } from '../../rules/trials/kept-programme.ts';
import { elementAt } from '../../text/element.ts';
import { trimmed } from '../../text/figures.ts';
import { foldName } from '../../text/names.ts';
import { shortName } from '../../text/short-name.ts';
import { type Message, message } from '../../words/message.ts';
import type { Action, ActionContext } from './action.ts';
import { batchAtLoad, batchesFor, type LoadedBatch } from './convert-batch.ts';
import { LineChanges } from './line-changes.ts';

/** More mixers than this make a menu nobody reads. */
const mostMixers = 5;
/** Kinds that stand for a usual mixer, for whoever has defined none. */
const usualKinds = ['spiral', 'planetary'];

export const convertMix: Action = {
  id: 'convert-mix',
  kind: 'rewrite',
  variants: 'whole',
  name: 'Convert a mixing programme to another mixer, or to and from hands',
  explanation:
    'Offered in a mixing programme for the mixers that your files define, nearest first, and for hands; on the header of a variant for the programme that it takes of its base, which stays ' +
    'as it is: the variant gets its own. The work is written in the ' +
    'shape in which the other mixer is usually run: a machine’s first speed for three to five minutes to wet the flour, then its second; for stiff dough and rye the first alone; by hand kneading. ' +
    'It takes as many half minutes as bring the dough as far; rests, folds and what is added stay in their order. Trials that do not say what they ran keep the programme as it was. The title gives the ' +
    'working time, as a range by what is not known of the two mixers, the temperature at the end and the water for it; where that would be hotter than 45 °C, how cool the dough ends all the same. Where the bowl of the other mixer is stated, ' +
    'it gives the number of batches, and a second offer brings the `yield` to the usual load of that bowl, with that yield at its end. All of it is a prediction with the ' +
    'bands of [mixing](mixing-and-process.md): watch the dough, and its thermometer, the first time, and stop the mixer before a probe or a hand goes in. In VS Code also as the command *Convert Mixing Programme*.',
  example:
    'formula Quay Tin:\n  yield 2 kg\n  bread flour        100%\n  water              65%\n  salt               2%\n\nmix in spiral:\n  load flour, water, salt\n  ‸speed 1 for 4 min\n  speed 2 for 4 min\n',
  *offers(context) {
    const index = mixAt(context);
    const analysis = index === undefined ? undefined : context.analysis();
    const mix = analysis?.mixes[index!];
    if (analysis === undefined || mix?.known !== true) return;
    const model = elementAt(analysis.resolved.model.mixes, index!);
    for (const mixer of otherMixers(context, mix.value.mixer)) {
      const batches = batchesFor(mix.value, mixer);
      const converted = conversionOf(mix.value, mixer, 1 / batches);
      if (!converted.known || converted.value.converted.length === 0) continue;
      const argument = foldName(mixer.name);
      yield {
        title: titleOf(mix.value, mixer, converted.value, fitOf(mix.value, mixer, batches)),
        argument,
        edits: () => editsOf(context, analysis, model, mix.value, mixer, converted.value),
      };
      const loaded = batchAtLoad(analysis, mix.value, mixer);
      const scaled = loaded && conversionOf(mix.value, mixer, loaded.factor);
      if (loaded === undefined || scaled?.known !== true) continue;
      yield {
        title: titleOf(
          mix.value,
          mixer,
          scaled.value,
          'pieces' in loaded.now
            ? message('convert-mix.pieces', { count: loaded.now.pieces })
            : message('convert-mix.yield', { grams: loaded.now.grams }),
        ),
        argument: `${argument} at its usual load`,
        edits: () => editsOf(context, analysis, model, mix.value, mixer, scaled.value, loaded),
      };
    }
  },
};

/** The mix at the cursor; on the header of a variant that has none of its own, the one that it takes of its base. */
function mixAt({ block, line, analysis }: ActionContext): number | undefined {
  const mixes = formulaOf(block)?.mixes;
  const index = mixes?.findIndex((one) => line >= one.headerLine && line < one.endLine) ?? -1;
  if (index >= 0) return index;
  const resolved = line === 0 && isVariant(block) ? analysis()?.resolved : undefined;
  const taken = resolved === undefined ? undefined : doughMixOf(resolved)?.index;
  return taken !== undefined && originOf(block, mixes?.[taken]?.headerLine ?? 0) !== undefined
    ? taken
    : undefined;
}

function otherMixers({ scope }: ActionContext, own: Mixer): Mixer[] {
  const hands = findHands(scope);
  const found = new Map<string, Mixer>();
  const take = (text: string): void => {
    if (foldName(text) === byHand.name) return;
    const mixer = findMixer({ text, folded: foldName(text), start: 0, end: 0 }, scope);
    if (mixer.kind === 'found' && found.size < mostMixers) found.set(foldName(text), mixer.mixer);
  };
  for (const { name } of scope.names('mixer')) take(name.text);
  if (found.size === 0) usualKinds.forEach(take);
  const others = [...found.values()].filter((one) => foldName(one.name) !== foldName(own.name));
  return own.data.kind === 'hand' ? others.filter(({ data }) => data.kind !== 'hand') : [...others, hands];
}

const remembered = new WeakMap<MixAnalysis, Map<unknown, Map<number, Known<Conversion, Message>>>>();

/** A conversion runs the programme many times over, and a menu asks for it at each move of the cursor. */
function conversionOf(mix: MixAnalysis, { data }: Mixer, batch: number): Known<Conversion, Message> {
  const ofMix = remembered.get(mix) ?? new Map<unknown, Map<number, Known<Conversion, Message>>>();
  remembered.set(mix, ofMix);
  const ofMixer = ofMix.get(data) ?? new Map<number, Known<Conversion, Message>>();
  ofMix.set(data, ofMixer);
  const before = ofMixer.get(batch);
  if (before !== undefined) return before;
  const made = convertProgramme({ ...mix.tempering, mixing: mix.input, to: data, batch, hottestCelsius });
  ofMixer.set(batch, made);
  return made;
}

function titleOf(mix: MixAnalysis, mixer: Mixer, converted: Conversion, fit: Message | undefined): Message {
  const { low, high } = converted.workedMinutes;
  // What speaks against it comes first.
  const parts = [
    ...(fit === undefined ? [] : [fit]),
    message('convert-mix.works', { lowMinutes: low, highMinutes: high }),
    ...heatOf(mix, converted),
  ];
  return mixer.name === byHand.name
    ? message('convert-mix.to-hands', { parts })
    : message('convert-mix.to', { name: shortName(mixer.name, 16), parts });
}

/** The dough at the end, and the water for it; the water as it is where the file itself gives it its temperature. */
function heatOf(mix: MixAnalysis, { after, water }: Conversion): Message[] {
  if (mix.water.known) return water.known ? waterMessages(water.value) : [];
  const { endCelsius } = after;
  return endCelsius.known
    ? [message('convert-mix.ends-as-stated', { celsius: sure(endCelsius.value, after) })]
    : [];
}

/** A temperature as exactly as its band allows. */
function sure(celsius: number, { endCelsiusBand }: Conversion['after']): number {
  return endCelsiusBand > widestSure ? Math.round(celsius) : celsius;
}

/** Wider than this, °C, and a temperature is told in whole degrees. */
const widestSure = 2;

/** A title has no room for more than whole degrees of the water, and nobody draws it closer. */
function waterMessages({ tempered, waterCelsius: exact, endCelsius, isTooCool }: ConvertedWater): Message[] {
  if (!endCelsius.known) return [];
  const celsius = sure(endCelsius.value, tempered.outcome);
  if (exact === undefined) return [message('convert-mix.whatever-water', { celsius })];
  const waterCelsius = Math.round(exact);
  if (isTooCool) return [message('convert-mix.too-cool', { celsius })];
  const { ice, reach } = tempered;
  if (ice !== undefined) return [message('convert-mix.with-ice', { celsius, iceGrams: ice.iceGrams })];
  if (reach !== 'tap too warm') return [message('convert-mix.with-water', { celsius, waterCelsius })];
  return [message('convert-mix.with-tap', { celsius })];
}

/** Dough that a pair of hands kneads at a time, at most; common practice, no source. */
const mostByHandGrams = 10_000;

function fitOf(
  { doughGrams }: MixAnalysis,
  { data, leastGrams }: Mixer,
  batches: number,
): Message | undefined {
  if (batches > 1) return message('convert-mix.batches', { count: batches });
  if (data.kind === 'hand' && doughGrams > mostByHandGrams) return message('convert-mix.too-much-for-hands');
  return leastGrams !== undefined && doughGrams < leastGrams ? message('convert-mix.too-little') : undefined;
}

function editsOf(
  context: ActionContext,
  analysis: Analysis,
  model: MixModel,
  mix: MixAnalysis,
  mixer: Mixer,
  { converted }: Conversion,
  loaded?: LoadedBatch,
) {
  const changes = new LineChanges(context);
  const { text, tokens } = elementAt(context.block.lines, model.headerLine);
  const { keyword, part } = model.header;
  const end = tokens.findLast((token) => token.kind !== 'comment' && token.kind !== 'blank')!.end;
  const what = part === undefined ? '' : ` ${text.slice(part.start, part.end)}`;
  const where = mixer.name === byHand.name ? byHand.name : `in ${mixer.name}`;
  changes.edit(model.headerLine, { start: keyword.start, end, insert: `mix${what} ${where}:` });
  if (loaded !== undefined) changes.edit(loaded.line, loaded.edit);
  for (const { phase, by } of converted) {
    const line = elementAt(mix.phaseLines, phase);
    const { statement, text: before } = elementAt(context.block.lines, line);
    if (statement.kind !== 'property') return undefined;
    const { start } = statement.keyword;
    const [first, ...more] = by.map(wordsOf);
    if (first === undefined) {
      // The line before goes on: this one goes, and a remark on it stays.
      const remark = before.slice(statement.valueSpan.end).trim();
      if (remark === '') changes.remove(line);
      else changes.replace(line, `${before.slice(0, start)}${remark}`);
      continue;
    }
    changes.edit(line, { start, end: statement.valueSpan.end, insert: first });
    if (more.length > 0) changes.addBelow(line, ...more.map((words) => `${before.slice(0, start)}${words}`));
  }
  // The trials of the dough were run on the programme as it was.
  if (analysis.doughMix.known && analysis.doughMix.value === mix)
    for (const { below, lines } of programmeInto(analysis, trialsToKeep(analysis, context.scope)))
      changes.addBelow(below, ...lines);
  return changes.edits();
}

function wordsOf(work: TimedWork): string {
  const time = `${trimmed(work.seconds / 60, 1)} min`;
  return work.kind === 'speed' ? `speed ${work.number} for ${time}` : `knead ${time}`;
}
