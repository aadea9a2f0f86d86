import type { Analysis } from '../../analysis/analysis.ts';
import type { MixAnalysis } from '../../analysis/mix-analysis.ts';
import { makesMessages } from '../../facts/formula-words.ts';
import { holdsUp } from '../../facts/holds-up.ts';
import { inMixer, waterToUse } from '../../facts/mixing-words.ts';
import { lineOfId } from '../../model/formula-model.ts';
import type { Scope } from '../../model/scope.ts';
import type { Finding } from '../../rules/engine/finding.ts';
import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { chartsOf } from '../charts/charts.ts';
import { inBatches, sized } from './batch-size.ts';
import { blocksOf } from './blocks.ts';
import { cautionsOf } from './cautions.ts';
import { conditionsOf, mixerNames, underToday } from './day-conditions.ts';
import { factsOf, roleLine, yieldsOf } from './facts.ts';
import { findingsAsTried } from './sheet-findings.ts';
import { labelsOf } from './sheet-labels.ts';
import { mixingOf } from './sheet-mixing.ts';
import type { SheetOptions } from './sheet-options.ts';
import { sheetCost, sheetLabel } from './sheet-product.ts';
import { trialsOfSheet } from './sheet-trials.ts';
import { stepText, timelineOf } from './timeline.ts';
import type {
  FactSource,
  SheetBatches,
  SheetFinding,
  SheetSize,
  SheetStep,
  SheetTimeline,
  SheetView,
} from './view.ts';

/** Lines of the view are counted in the file; those of the analysis in its block. */
export interface SheetInput {
  readonly uri: string;
  readonly firstLine: number;
  /** The formula as its file has it. */
  readonly analysis: Analysis;
  readonly scope: Scope;
  readonly asked: SheetOptions;
  /**
   * The findings of this formula for an analysis of it, with lines of the file: the file's own where that is the
   * analysis as given, else what the same rules find in the formula as it is tried.
   */
  readonly findingsOf: (analysis: Analysis) => readonly Finding[];
  /** Words all of it for its reader. */
  readonly speaker: Speaker;
}

/** The batch sheet of a formula as asked for, with every figure in the words it is shown in. */
export function sheetOf(input: SheetInput): SheetView {
  const { asked, firstLine, scope, speaker } = input;
  const today = underToday(input.analysis, asked.today ?? {}, scope);
  const made = sized(today.analysis, asked.size ?? { by: 'file' });
  const analysis = made.analysis;
  const { solved, resolved } = analysis;
  const tried = analysis !== input.analysis;
  const base = {
    formula: resolved.model.name.text,
    uri: input.uri,
    line: firstLine,
    tried,
    notDone: [...today.notDone, ...(made.notDone === undefined ? [] : [made.notDone])].map(speaker.say),
    conditions: conditionsOf(input.analysis, analysis, speaker),
    mixers: mixerNames(input.analysis, scope),
    size: sizeOf(analysis, asked),
    labels: labelsOf(speaker),
  };
  if (solved === undefined) {
    const nothing = {
      makes: [],
      facts: [],
      blocks: [],
      steps: [],
      yields: [],
      trials: [],
      charts: [],
      cautions: [],
    };
    const timeline = { moments: [], endSeconds: 0, notes: [] };
    const findings = told(input.findingsOf(input.analysis));
    return { ...base, ...nothing, state: 'empty', batches: { count: 1 }, timeline, findings };
  }
  const parted = inBatches(analysis);
  // The findings of what is not tried are those of its editor.
  const findings = tried
    ? findingsAsTried(
        { inFile: input.analysis, whole: analysis, each: parted.each },
        firstLine,
        input.findingsOf,
      )
    : input.findingsOf(input.analysis);
  const mix = parted.each.doughMix.known ? parted.each.doughMix.value : undefined;
  const water = mix === undefined ? undefined : waterInWords(mix, speaker);
  const waterLine = roleLine(analysis, 'water', firstLine);
  const held = heldBy(findings, analysis, firstLine, speaker);
  const source: FactSource = analysis === today.analysis ? 'file' : 'today';
  const timeline = timelineOf(analysis, parted.count, firstLine, asked.clock, speaker);
  const cost = sheetCost(analysis, speaker);
  const label = sheetLabel(analysis, speaker);
  return {
    ...base,
    state: held === undefined ? 'ready' : 'held',
    ...(held === undefined ? {} : { heldBy: held }),
    makes: makesMessages(solved).map(speaker.say),
    facts: factsOf(analysis, firstLine, source, speaker),
    batches: batchesOf(analysis, parted, firstLine, speaker),
    blocks: blocksOf(analysis, parted, mix, water?.text, firstLine, timeline, speaker),
    ...(mix?.water.known && water !== undefined
      ? {
          water: {
            ...(mix.water.value.waterCelsius === undefined ? {} : { celsius: mix.water.value.waterCelsius }),
            text: water.text,
            detail: water.detail,
            ...(waterLine === undefined ? {} : { line: waterLine }),
          },
        }
      : {}),
    ...(mix === undefined ? {} : { mixing: mixingOf(mix, parted.each, firstLine, speaker) }),
    steps: stepsOf(analysis, firstLine, timeline.view, speaker),
    timeline: timeline.view,
    yields: yieldsOf(analysis, firstLine, source, speaker),
    ...(cost === undefined ? {} : { cost }),
    ...(label === undefined ? {} : { label }),
    // What was measured belongs to the formula as it is written, whatever is tried today.
    trials: trialsOfSheet(input.analysis, scope, firstLine, speaker),
    charts: chartsOf({
      whole: analysis,
      batch: parted.each,
      scope,
      timeline: timeline.view,
      firstLine,
      speaker,
    }),
    findings: told(findings),
    cautions: cautionsOf(analysis).map(speaker.say),
  };
}

/** The water to use, in words. */
function waterInWords(mix: MixAnalysis, speaker: Speaker): { text: string; detail: string[] } | undefined {
  const water = waterToUse(mix);
  return water === undefined
    ? undefined
    : { text: speaker.say(water.text), detail: water.detail.map(speaker.say) };
}

function told(findings: readonly Finding[]): SheetFinding[] {
  return findings.map(({ place, level, code, message }) => ({ line: place.line, level, code, message }));
}

/** The line that holds the sheet up: the first error that is not of a trial, or the first line whose weight is not known. */
function heldBy(
  findings: readonly Finding[],
  analysis: Analysis,
  firstLine: number,
  speaker: Speaker,
): { line: number; message: string } | undefined {
  const { block } = analysis.resolved.model;
  const error = findings.find((finding) => holdsUp(block, firstLine, finding));
  if (error !== undefined) return { line: error.place.line, message: error.message };
  const missing = analysis.solved?.finalMix.lines.find(
    (line) => line.grams === undefined && line.unsolved !== undefined,
  );
  if (missing === undefined) return undefined;
  const line = firstLine + (missing.lineId === undefined ? 0 : lineOfId(missing.lineId));
  return { line, message: speaker.say(message('sheet.weight-not-known', { name: missing.name })) };
}

function sizeOf(analysis: Analysis, asked: SheetOptions): SheetSize {
  const { solved, doughMix } = analysis;
  const mixer = doughMix.known ? doughMix.value.mixer : undefined;
  return {
    asked: asked.size ?? { by: 'file' },
    ...(solved?.pieces === undefined ? {} : { pieces: solved.pieces }),
    ...(solved?.yieldDoughGrams === undefined ? {} : { doughGrams: solved.yieldDoughGrams }),
    ...(solved?.flourGrams === undefined ? {} : { flourGrams: solved.flourGrams }),
    ...(solved?.bakedGrams === undefined ? {} : { bakedGrams: solved.bakedGrams }),
    ...(mixer?.mostGrams === undefined
      ? {}
      : {
          bowl: {
            mixer: mixer.name,
            mostGrams: mixer.mostGrams,
            ...(mixer.leastGrams === undefined ? {} : { leastGrams: mixer.leastGrams }),
          },
        }),
    ingredients: (solved?.overall ?? []).flatMap(({ name, grams }) =>
      grams === undefined || !(grams > 0) ? [] : [{ name, grams }],
    ),
  };
}

function batchesOf(
  analysis: Analysis,
  parted: ReturnType<typeof inBatches>,
  firstLine: number,
  speaker: Speaker,
): SheetBatches {
  const { each, count, fits } = parted;
  const grams = each.solved?.doughGrams;
  const mix = each.doughMix.known ? each.doughMix.value : undefined;
  const model = mix === undefined ? undefined : analysis.resolved.model.mixes[mix.index];
  const step = analysis.resolved.bakery.scaleStepGrams;
  const place = mix === undefined ? message('place.in-bowl') : inMixer(mix.mixer.name);
  const said =
    count > 1 && grams !== undefined
      ? message('sheet.batches-in', { count, grams, place })
      : fits || mix === undefined
        ? undefined
        : message('sheet.batches-none', { name: mix.mixer.name });
  return {
    count,
    ...(grams === undefined ? {} : { each: { grams, ...speaker.weighed(grams, step) } }),
    ...(said === undefined ? {} : { text: speaker.say(said) }),
    ...(model === undefined ? {} : { line: firstLine + model.headerLine }),
  };
}

function stepsOf(
  analysis: Analysis,
  firstLine: number,
  timeline: SheetTimeline,
  speaker: Speaker,
): SheetStep[] {
  return analysis.resolved.model.processes.flatMap((process) =>
    process.steps.map(({ line, step }): SheetStep => {
      const text = stepText(step, speaker);
      const at = firstLine + line;
      const clock = timeline.moments.find((one) => one.kind === 'step' && one.line === at)?.clock;
      return {
        line: at,
        text: process.header.part === undefined ? text : `${process.header.part.text}: ${text}`,
        ...(step.seconds === undefined ? {} : { seconds: step.seconds }),
        ...(clock === undefined ? {} : { clock }),
      };
    }),
  );
}
