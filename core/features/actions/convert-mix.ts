import type { Analysis } from '../../analysis/analysis.ts';
import type { MixAnalysis } from '../../analysis/mixing.ts';
import { type Conversion, convertProgramme } from '../../calc/conversion.ts';
import type { Known } from '../../calc/known.ts';
import type { MixingPhase } from '../../calc/mixing-programme.ts';
import type { TemperedWater } from '../../calc/mixing-water.ts';
import { formulaOf, type MixModel } from '../../model/formula-model.ts';
import { byHand, findMixer, type Mixer } from '../../model/mixer.ts';
import { hottestCelsius } from '../../rules/hot-water.ts';
import { programmeInto, trialsToKeep } from '../../rules/kept-programme.ts';
import { degrees, mass, minutes, trimmed } from '../../text/figures.ts';
import { foldName } from '../../text/names.ts';
import type { Action, ActionContext } from './action.ts';
import { LineChanges } from './line-changes.ts';

/** More mixers than this make a menu nobody reads. */
const mostMixers = 5;
/** Kinds that stand for a usual mixer, for whoever has defined none. */
const usualKinds = ['spiral', 'planetary'];

export const convertMix: Action = {
  id: 'convert-mix',
  kind: 'rewrite',
  name: 'Convert a mixing programme to another mixer, or to and from hands',
  explanation:
    'Offered in a mixing programme for the mixers that your files define, nearest first, and for hands. Speeds and kneading become ' +
    'those of the other mixer, for as many half minutes as bring the dough as far; rests, folds and what is added stay where ' +
    'they are. Trials that do not say what they ran keep the programme as it was. The title tells the new working time, the temperature at the end and the water for it. All of it is a prediction with the ' +
    'bands of [mixing](mixing-and-process.md): watch the dough, and its thermometer, the first time, and stop the mixer before a probe or a hand goes in. In VS Code also as the command *Convert Mixing Programme*.',
  example:
    'formula Quay Tin:\n  yield 2 kg\n  bread flour        100%\n  water              65%\n  salt               2%\n\nmix in spiral:\n  load flour, water, salt\n  ‸speed 1 for 4 min\n  speed 2 for 4 min\n',
  *offers(context) {
    const index = mixAt(context);
    const analysis = index === undefined ? undefined : context.analysis();
    const mix = analysis?.mixes[index!];
    if (analysis === undefined || mix?.known !== true) return;
    const { bakery, model } = analysis.resolved;
    for (const mixer of otherMixers(context, mix.value.mixer)) {
      const converted = conversionOf(mix.value, mixer, bakery.tapCelsius);
      if (!converted.known || converted.value.converted.length === 0) continue;
      yield {
        title: titleOf(mix.value, mixer, converted.value),
        argument: foldName(mixer.name),
        edits: () => editsOf(context, analysis, model.mixes[index!]!, mix.value, mixer, converted.value),
      };
    }
  },
};

function mixAt({ block, line }: ActionContext): number | undefined {
  const index = formulaOf(block)?.mixes.findIndex((one) => line >= one.headerLine && line < one.endLine);
  return index === undefined || index < 0 ? undefined : index;
}

function otherMixers({ scope }: ActionContext, own: Mixer): Mixer[] {
  const found = new Map<string, Mixer>();
  const take = (text: string): void => {
    const mixer = findMixer({ text, folded: foldName(text), start: 0, end: 0 }, scope);
    if (mixer.kind === 'found' && found.size < mostMixers) found.set(foldName(text), mixer.mixer);
  };
  for (const { name } of scope.names('mixer')) take(name.text);
  if (found.size === 0) usualKinds.forEach(take);
  const others = [...found.values()].filter((one) => foldName(one.name) !== foldName(own.name));
  return own.data.kind === 'hand' ? others.filter(({ data }) => data.kind !== 'hand') : [...others, byHand];
}

const remembered = new WeakMap<MixAnalysis, Map<unknown, Known<Conversion>>>();

/** A conversion runs the programme many times over, and a menu asks for it at each move of the cursor. */
function conversionOf(mix: MixAnalysis, { data }: Mixer, tapCelsius: number | undefined): Known<Conversion> {
  const known = remembered.get(mix) ?? new Map<unknown, Known<Conversion>>();
  remembered.set(mix, known);
  const before = known.get(data);
  if (before !== undefined) return before;
  const made = convertProgramme({
    mixing: mix.input,
    to: data,
    targetCelsius: mix.targetCelsius,
    ...(tapCelsius === undefined ? {} : { tapCelsius }),
  });
  known.set(data, made);
  return made;
}

function titleOf(mix: MixAnalysis, mixer: Mixer, { before, after, water }: Conversion): string {
  const to = mixer.data.kind === 'hand' ? 'to hands' : `to ${mixer.name}`;
  const worked = `${minutes(after.workedMinutes)} of work instead of ${minutes(before.workedMinutes)}`;
  return `Convert ${to}: ${worked}${heatOf(mix, after, water)}${fitOf(mix, mixer)}`;
}

function heatOf(mix: MixAnalysis, after: Conversion['after'], water: Conversion['water']): string {
  const needed = water.known ? waterWords(water.value) : undefined;
  // Where the file itself gives the water its temperature, that stays, and what it should be is told beside.
  const isGiven = !mix.water.known;
  const end = water.known && !isGiven ? water.value.outcome.endCelsius : after.endCelsius;
  if (!end.known) return '';
  const ends = `, ends at ${degrees(end.value)}`;
  if (needed === undefined) return ends;
  return isGiven
    ? `${ends} with the water as it is, at ${degrees(mix.targetCelsius)} with ${needed}`
    : `${ends} with ${needed}`;
}

function waterWords({ waterCelsius, ice }: TemperedWater): string {
  if (ice !== undefined) return `tap water and ${mass(ice.iceGrams)} of ice`;
  if (waterCelsius === undefined) return 'water from the tap';
  if (waterCelsius > hottestCelsius) return `water at ${degrees(waterCelsius)}, hotter than yeast bears`;
  return `water at ${degrees(waterCelsius)}`;
}

/** Dough that a pair of hands kneads at a time, at most; common practice, no source. */
const mostByHandGrams = 10_000;

function fitOf(mix: MixAnalysis, { data, mostGrams, leastGrams }: Mixer): string {
  if (mostGrams !== undefined && mix.doughGrams > mostGrams) return '; too much for its bowl';
  if (data.kind === 'hand' && mix.doughGrams > mostByHandGrams)
    return '; more dough than hands knead at once';
  return leastGrams !== undefined && mix.doughGrams < leastGrams ? '; too little for its bowl' : '';
}

function editsOf(
  context: ActionContext,
  analysis: Analysis,
  model: MixModel,
  mix: MixAnalysis,
  mixer: Mixer,
  { mixing, converted }: Conversion,
) {
  const changes = new LineChanges(context);
  const { text, tokens } = context.block.lines[model.headerLine]!;
  const { keyword, part } = model.header;
  const end = tokens.findLast((token) => token.kind !== 'comment' && token.kind !== 'blank')!.end;
  const what = part === undefined ? '' : ` ${text.slice(part.start, part.end)}`;
  const where = mixer.data.kind === 'hand' ? 'by hand' : `in ${mixer.name}`;
  changes.edit(model.headerLine, { start: keyword.start, end, insert: `mix${what} ${where}:` });
  for (const index of converted) {
    const line = mix.phaseLines[index]!;
    const statement = context.block.lines[line]!.statement;
    const words = wordsOf(mixing.phases[index]!);
    if (statement.kind !== 'property' || words === undefined) return undefined;
    changes.edit(line, { start: statement.keyword.start, end: statement.valueSpan.end, insert: words });
  }
  // The trials of the dough were run on the programme as it was.
  if (analysis.doughMix.known && analysis.doughMix.value === mix)
    for (const { below, lines } of programmeInto(analysis, trialsToKeep(analysis, context.scope)))
      changes.addBelow(below, ...lines);
  return changes.edits();
}

function wordsOf(phase: MixingPhase): string | undefined {
  if (phase.kind !== 'speed' && phase.kind !== 'knead') return undefined;
  const time = `${trimmed(phase.seconds / 60, 1)} min`;
  return phase.kind === 'speed' ? `speed ${phase.number} for ${time}` : `knead ${time}`;
}
