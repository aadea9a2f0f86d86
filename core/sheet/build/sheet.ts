import type { Analysis } from '../../analysis/analysis.ts';
import { fermentationTimeline } from '../../facts/fermentation-timeline.ts';
import { makesMessages } from '../../facts/formula-words.ts';
import { holdsUp } from '../../facts/holds-up.ts';
import { inMixer, waterToUse } from '../../facts/mixing-words.ts';
import { lineOfId } from '../../model/formula-model.ts';
import type { Scope } from '../../model/scope.ts';
import { ownLine, wholeOf } from '../../model/variant.ts';
import type { Finding } from '../../rules/engine/finding.ts';
import type { Block } from '../../syntax/tree.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { chartsOf } from '../charts/charts.ts';
import { inBatches, sized } from './batch-size.ts';
import { beforeAfter } from './before-after.ts';
import { cautionsOf } from './cautions.ts';
import { clockSection } from './clock-section.ts';
import { dayConditions, mixerNames, underToday } from './day-conditions.ts';
import { doughFacts, yieldFacts } from './fact-sections.ts';
import { foundAtNodes, mapNodes } from './found-at-nodes.ts';
import { glanceSection } from './glance-section.ts';
import { logSection } from './log-section.ts';
import {
  type FactSource,
  type NotesSection,
  type Section,
  type SheetBatches,
  type SheetDocument,
  type SheetFinding,
  type SheetNode,
  type SheetSize,
  sheetVersion,
  type WhatIfFields,
  type WorkMoment,
} from './sheet-document.ts';
import { findingsAsTried } from './sheet-findings.ts';
import { labelsOf } from './sheet-labels.ts';
import { mixingLines, mixingSection } from './sheet-mixing.ts';
import type { SheetOptions } from './sheet-options.ts';
import { costSection, labelSections } from './sheet-product.ts';
import { withoutReading } from './sheet-rows.ts';
import { type TaughtAt, trialSections } from './sheet-trials.ts';
import { timelineOf } from './timeline.ts';
import { weighingSections } from './weighing-sections.ts';
import { workMoments } from './work-moments.ts';

/** Lines of the sheet are counted in the file; those of the analysis in its block. */
export interface SheetInput {
  readonly uri: string;
  readonly firstLine: number;
  /** The formula with what is tried of it written in; `inFile` where nothing is. */
  readonly analysis: Analysis;
  /** The formula as its file has it. */
  readonly inFile: Analysis;
  /** What of it could not be written in. */
  readonly notWritten?: readonly Message[];
  /** What of the formula itself can be tried. */
  readonly whatIf?: WhatIfFields;
  readonly scope: Scope;
  readonly asked: SheetOptions;
  /**
   * The findings of this formula for an analysis of it, with lines of the file: the file's own where that is the
   * analysis as given, else what the same rules find in the formula as it is tried.
   */
  readonly findingsOf: (analysis: Analysis) => readonly Finding[];
  /** Which mixer a trial of it can teach. */
  readonly taughtAt: TaughtAt;
  /** Whether a running scale reading stands beside the weights. */
  readonly scaleReading: boolean;
  /** Words all of it for its reader. */
  readonly speaker: Speaker;
}

/** The formula as a sheet is made of it. */
interface Tried {
  /** As its file has it. */
  readonly inFile: Analysis;
  /** All that is made today, and one batch of it. */
  readonly whole: Analysis;
  readonly batch: Analysis;
  readonly batches: number;
  /** Where the size comes from. */
  readonly size: FactSource;
}

/** The batch sheet of a formula as asked for, with every figure in the words it is shown in. */
export function sheetOf(input: SheetInput): SheetDocument {
  const { asked, firstLine, scope, speaker, uri } = input;
  const today = underToday(input.analysis, asked.today ?? {}, scope);
  const made = sized(today.analysis, asked.size ?? { by: 'file' });
  const analysis = made.analysis;
  const tried = analysis !== input.inFile;
  const parted = inBatches(analysis);
  // The findings of what is not tried are those of its editor.
  const findings =
    tried && analysis.solved !== undefined
      ? findingsAsTried(
          { inFile: input.inFile, whole: analysis, each: parted.each },
          firstLine,
          input.findingsOf,
        )
      : input.findingsOf(input.inFile);
  const { sections: shown, moments } = sectionsOf(input, {
    inFile: input.inFile,
    whole: analysis,
    batch: parted.each,
    batches: parted.count,
    size: analysis === today.analysis ? 'file' : 'today',
  });
  const read = input.scaleReading ? shown : shown.map(withoutReading);
  const sections = linesOfOwn(read, input.analysis.resolved.model.block, firstLine);
  const found = foundAtNodes(sections, told(findings), firstLine);
  const held = heldBy(findings, analysis, firstLine, speaker);
  return {
    version: sheetVersion,
    formula: analysis.resolved.model.name.text,
    uri,
    line: firstLine,
    state: held !== undefined ? 'held' : analysis.solved === undefined ? 'empty' : 'ready',
    ...(held === undefined ? {} : { heldBy: held }),
    tried,
    notDone: [
      ...(input.notWritten ?? []),
      ...today.notDone,
      ...(made.notDone === undefined ? [] : [made.notDone]),
    ].map(speaker.say),
    makes: analysis.solved === undefined ? [] : makesMessages(analysis.solved).map(speaker.say),
    scaleReading: input.scaleReading,
    size: sizeOf(analysis, asked),
    batches: analysis.solved === undefined ? { count: 1 } : batchesOf(analysis, parted, speaker),
    mixers: mixerNames(input.inFile, scope),
    ...(input.whatIf === undefined ? {} : { whatIf: input.whatIf }),
    ...(asked.map === undefined ? {} : { map: asked.map }),
    ...(asked.clock === undefined ? {} : { clock: asked.clock }),
    sections: found.sections,
    moments,
    findings: found.elsewhere,
    labels: labelsOf(speaker),
  };
}

/** What a variant takes of its base leads to the variant's header: its line stands in another formula. */
function linesOfOwn(sections: readonly Section[], block: Block, firstLine: number): readonly Section[] {
  if (wholeOf(block) === undefined) return sections;
  const placed = <Node extends SheetNode>(node: Node): Node =>
    node.line === undefined ? node : { ...node, line: firstLine + ownLine(block, node.line - firstLine) };
  return sections.map((section) => mapNodes(section, placed));
}

/** All sections in the order of the work, and what of them is done one after the other. A new section is a line here. */
function sectionsOf(
  { asked, firstLine, scope, speaker, taughtAt }: SheetInput,
  { inFile, whole, batch, batches, size }: Tried,
): { readonly sections: Section[]; readonly moments: WorkMoment[] } {
  const day = dayConditions(inFile, whole, speaker);
  if (whole.solved === undefined) return { sections: day === undefined ? [] : [day], moments: [] };
  const mix = batch.doughMix.known ? batch.doughMix.value : undefined;
  const draw = mix === undefined ? undefined : waterToUse(mix);
  const water =
    draw === undefined ? undefined : { alone: speaker.say(draw.text), beside: speaker.say(draw.beside) };
  const timeline = timelineOf(whole, batches, firstLine, asked.clock, speaker);
  const weighed = weighingSections({
    ...{ whole, batch, batches, mix, water, firstLine, timeline, speaker },
  });
  const lines = mix === undefined ? [] : mixingLines(mix, firstLine, speaker);
  const programme = { model: batch.resolved.model, times: batches, firstLine };
  const clock = clockSection(timeline.view, fermentationTimeline(whole), firstLine, speaker);
  const charts = chartsOf({
    ...{ whole, batch, scope, speaker, map: asked.map },
    inFile: inFile === whole ? batch : inBatches(inFile).each,
  });
  const facts = { analysis: whole, firstLine, size, speaker };
  const sections = [
    glanceSection(batch, firstLine, speaker),
    doughFacts(facts),
    day,
    asked.whatIf === undefined ? undefined : beforeAfter(inBatches(inFile).each, batch, speaker),
    ...weighed.map(({ section }) => section),
    mix === undefined ? undefined : mixingSection(mix, lines, programme, speaker),
    charts.mixing,
    charts.map,
    // What was measured belongs to the formula as it is written, whatever is tried today.
    ...trialSections(inFile, scope, firstLine, speaker, taughtAt),
    clock,
    logSection(speaker),
    yieldFacts(facts),
    charts.composition,
    costSection(whole, speaker),
    ...labelSections(whole, speaker),
    cautionsSection(whole, speaker),
  ].filter((section) => section !== undefined);
  return { sections, moments: workMoments(weighed, lines, clock) };
}

function cautionsSection(analysis: Analysis, { say }: Speaker): NotesSection {
  return {
    kind: 'notes',
    id: 'cautions',
    name: 'cautions',
    title: say(message('sheet.cautions')),
    notes: cautionsOf(analysis).map(say),
  };
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
  const { model, baseProblem, unfinishedMerge } = analysis.resolved;
  const { block } = model;
  // Where nothing is added up there is a reason to tell only if something is there to be added up.
  if (analysis.solved === undefined && baseProblem === undefined && unfinishedMerge === undefined)
    return undefined;
  const error = findings.find((finding) => holdsUp(block, firstLine, finding));
  if (error !== undefined) return { line: error.place.line, message: error.message };
  const missing = analysis.solved?.finalMix.lines.find(
    (line) => line.grams === undefined && line.unsolved !== undefined,
  );
  if (missing === undefined)
    return unfinishedMerge === undefined
      ? undefined
      : { line: firstLine, message: speaker.say(message('sheet.merge-elsewhere')) };
  const line = firstLine + (missing.lineId === undefined ? 0 : ownLine(block, lineOfId(missing.lineId)));
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

function batchesOf(analysis: Analysis, parted: ReturnType<typeof inBatches>, speaker: Speaker): SheetBatches {
  const { each, count, fits } = parted;
  const grams = each.solved?.doughGrams;
  const mix = each.doughMix.known ? each.doughMix.value : undefined;
  const step = analysis.resolved.bakery.scaleStepGrams;
  const place = mix === undefined ? message('place.in-bowl') : inMixer(mix.mixer.name);
  const said =
    count > 1 && grams !== undefined
      ? message('sheet.batches-in', { count, grams, place })
      : fits || mix === undefined
        ? undefined
        : message('sheet.batches-none', { name: mix.mixer.name });
  const shown = grams === undefined ? undefined : speaker.weighed(grams, step);
  return {
    count,
    ...(shown === undefined || grams === undefined
      ? {}
      : { each: { text: shown.figure, unit: shown.unit, grams } }),
    ...(said === undefined ? {} : { text: speaker.say(said) }),
  };
}
