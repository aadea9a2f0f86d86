import type { Analysis } from '../../analysis/analysis.ts';
import { experimentOf } from '../../analysis/experiment-analysis.ts';
import type { MixAnalysis } from '../../analysis/mix-analysis.ts';
import { handTrials, mixerTrials } from '../../analysis/mixer-trials.ts';
import { type PlanAnalysis, planOf } from '../../analysis/plan-analysis.ts';
import { type TrialAnalysis, trialsOf } from '../../analysis/trials.ts';
import { type MixingStage, mixingStages } from '../../calc/mixing/development.ts';
import { calibrationMarkdown } from '../../facts/calibration-markdown.ts';
import { compositionMarkdown, flourMarkdown } from '../../facts/composition-words.ts';
import { costTotals } from '../../facts/cost-of.ts';
import { experimentMarkdown } from '../../facts/experiment-words.ts';
import { partMessages, stepMessages } from '../../facts/fermentation-words.ts';
import { escapeMarkdown, totalsMarkdown } from '../../facts/formula-words.ts';
import { heatOf } from '../../facts/heat-of.ts';
import { billMarkdown, comparisonMarkdown, heatOutlook } from '../../facts/heat-words.ts';
import { inMarkdown } from '../../facts/in-markdown.ts';
import { factsOf, type LineFacts, sectionOf } from '../../facts/line-facts.ts';
import { lineMessages, sectionMessages } from '../../facts/line-words.ts';
import { mixingOutlook, waterToUse } from '../../facts/mixing-words.ts';
import { planLineMarkdown, planMarkdown } from '../../facts/plan-words.ts';
import { processTimes, stepTimes } from '../../facts/process-words.ts';
import { stagePicture } from '../../facts/stage-picture.ts';
import { feelMessage, readingMessage, trialMarkdown } from '../../facts/trial-words.ts';
import { baseMessages } from '../../facts/variant-words.ts';
import { lineId, sectionId } from '../../model/formula-model.ts';
import { findIngredient } from '../../model/found-ingredient.ts';
import type { Scope } from '../../model/scope.ts';
import { sectionAt } from '../../syntax/line-place.ts';
import type { Block, HeaderStatement, PropertyStatement, SectionKind } from '../../syntax/tree.ts';
import { findProperty } from '../../syntax/vocabulary.ts';
import { elementAt } from '../../text/element.ts';
import type { Span } from '../../text/span.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { phaseAdded, phaseLoads, phaseState } from './phase-words.ts';

/** What a hover says of one line of a block: the stretch of the line it is about, and Markdown. */
export interface LineHover {
  readonly span: Span;
  readonly markdown: string;
  /** What a link to the map of the gap is called, where the programme hovered over has one. */
  readonly mapLink?: string;
  /** The dough at the stage that it tells of, as an image in Markdown. */
  readonly picture?: string;
}

/** The hover of a line of a block; `undefined` where there is nothing to say. In a variant it says what stands in the base. */
export function hoverOf(
  block: Block,
  line: number,
  column: number,
  scope: Scope,
  analysis: Analysis | undefined,
  speaker: Speaker,
  planned: () => PlanAnalysis | undefined = () => planOf(block, scope),
): LineHover | undefined {
  const hover = plainHover(block, line, column, scope, analysis, speaker, planned);
  const beside = analysis === undefined ? [] : baseMessages(analysis.resolved.model.block, line);
  if (hover === undefined || beside.length === 0) return hover;
  return { ...hover, markdown: [hover.markdown, ...beside.map(speaker.say)].join('\n\n') };
}

function plainHover(
  block: Block,
  line: number,
  column: number,
  scope: Scope,
  analysis: Analysis | undefined,
  speaker: Speaker,
  planned: () => PlanAnalysis | undefined,
): LineHover | undefined {
  const parsed = block.lines[line];
  if (parsed === undefined) return undefined;
  const comment = parsed.tokens.find((token) => token.kind === 'comment');
  if (comment !== undefined && column >= comment.start) return undefined;
  const { statement } = parsed;
  const section = knownSectionAt(block, line);
  switch (statement.kind) {
    case 'header':
      return headerHover(block, line, statement, scope, analysis, speaker, planned);
    case 'ingredient': {
      const facts = analysis === undefined ? undefined : factsOf(analysis, lineId(line));
      if (analysis === undefined || facts === undefined) return undefined;
      const words = spanOf(statement.name.start, Math.max(statement.name.end, statement.amount.end));
      return { span: words, markdown: ingredientMarkdown(analysis, facts, speaker).join('\n\n') };
    }
    case 'planned': {
      const plan = planned();
      const said = plan === undefined ? undefined : planLineMarkdown(plan, line, speaker);
      const words = spanOf(statement.name.start, Math.max(statement.name.end, statement.amount.end));
      return said === undefined ? undefined : { span: words, markdown: said.join('\n\n') };
    }
    case 'property':
      return section === undefined
        ? undefined
        : propertyHover(block, section, line, statement, scope, analysis, speaker);
    case 'step': {
      const times = stepTimes(block, line);
      const said = [
        ...(times === undefined ? [] : [times]),
        ...(analysis === undefined ? [] : stepMessages(analysis, line)),
      ].map(speaker.say);
      const { start, end } = statement.words;
      return said.length === 0 ? undefined : { span: spanOf(start, end), markdown: said.join('\n\n') };
    }
    default:
      return undefined;
  }
}

const spanOf = (start: number, end: number): Span => ({ start, end });
function knownSectionAt(block: Block, line: number): { kind: SectionKind; headerLine: number } | undefined {
  const { kind, headerLine } = sectionAt(block, line) ?? {};
  return kind === undefined || kind === 'unknown' || headerLine === undefined
    ? undefined
    : { kind, headerLine };
}

function headerHover(
  block: Block,
  line: number,
  header: HeaderStatement,
  scope: Scope,
  analysis: Analysis | undefined,
  speaker: Speaker,
  planned: () => PlanAnalysis | undefined,
): LineHover | undefined {
  const words = elementAt(block.lines, line).text.trimEnd();
  const span = spanOf(header.keyword.start, words.length);
  const title = (text: string): string => speaker.say(message('line.title', { name: escapeMarkdown(text) }));
  if (header.section === 'formula' && analysis !== undefined && header.name !== undefined) {
    const cost = costTotals(analysis);
    const said = [title(header.name.text), ...totalsMarkdown(analysis, speaker)];
    if (cost !== undefined) said.push(escapeMarkdown(speaker.say(cost.text)));
    return { span, markdown: said.join('\n\n') };
  }
  if (header.section === 'mix' && analysis !== undefined) {
    const index = analysis.resolved.model.mixes.findIndex((mix) => mix.headerLine === line);
    const mix = analysis.mixes[index];
    if (mix === undefined) return undefined;
    if (!mix.known)
      return { span, markdown: speaker.say(message('programme.not-known', { reason: mix.reason })) };
    const hands =
      header.byHand === true && analysis.resolved.model.trials.length > 0 ? handTrials(scope) : undefined;
    const calibration = hands === undefined ? [] : calibrationMarkdown(hands, speaker);
    const hasMap = mix === analysis.doughMix && mix.value.outcome.development.known;
    return {
      span,
      markdown: [...mixMarkdown(mix.value, speaker), ...calibration].join('\n\n'),
      ...(hasMap ? { mapLink: speaker.say(message('map.title')) } : {}),
      ...pictureOf(mix.value.outcome.stage.known ? mix.value.outcome.stage.value : undefined, speaker),
    };
  }
  if (header.section === 'trial' && analysis !== undefined) {
    const trial = trialsOf(analysis, scope).find((one) => one.model.headerLine === line);
    const said = trial === undefined ? [] : trialMarkdown(trial, speaker);
    const when = [header.date, header.words].filter((one) => one !== undefined).join(', ');
    const head = speaker.say(message('section.trial', { written: escapeMarkdown(when) }));
    return said.length === 0 ? undefined : { span, markdown: [head, ...said].join('\n\n') };
  }
  if (header.section === 'process') {
    const said = processTimes(block, line);
    return said === undefined ? undefined : { span, markdown: speaker.say(said) };
  }
  if (header.section === 'experiment') {
    const experiment = experimentOf(block, scope);
    const said = experiment === undefined ? [] : experimentMarkdown(experiment, speaker);
    return said.length === 0 ? undefined : { span, markdown: said.join('\n\n') };
  }
  if (header.section === 'plan') {
    const plan = planned();
    return plan === undefined ? undefined : { span, markdown: planMarkdown(plan, speaker).join('\n\n') };
  }
  if (header.section === 'mixer' && header.name !== undefined) {
    const trials = mixerTrials(block, header.name, scope);
    if (trials === undefined) return undefined;
    return {
      span,
      markdown: [title(header.name.text), ...calibrationMarkdown(trials, speaker)].join('\n\n'),
    };
  }
  if (analysis !== undefined) {
    const solved = sectionOf(analysis, sectionId(line));
    if (solved !== undefined && header.section !== 'formula') {
      const said = [title(solved.name), ...sectionMessages(solved).map(speaker.say)];
      return { span, markdown: said.join('\n\n') };
    }
  }
  if ((header.section === 'flour' || header.section === 'ingredient') && header.name !== undefined) {
    const found = findIngredient(header.name, scope);
    if (found.kind === 'found')
      return { span, markdown: compositionMarkdown(found.ingredient, speaker).join('\n\n') };
  }
  return undefined;
}

function ingredientMarkdown(analysis: Analysis, facts: LineFacts, speaker: Speaker): string[] {
  const { line, section, ingredient } = facts;
  const words = lineMessages(analysis, facts).map(speaker.say);
  if (line.part || ingredient === undefined) return words;
  const mix = analysis.doughMix;
  if (ingredient.role === 'water' && mix.known && section.kind === 'dough')
    words.push(...waterMarkdown(mix.value, speaker));
  if (ingredient.flour !== undefined) words.push(...flourMarkdown(ingredient, speaker));
  words.push(speaker.say(message('composition.figures', { source: inMarkdown(ingredient.source) })));
  return words;
}

function propertyHover(
  block: Block,
  section: { kind: SectionKind; headerLine: number },
  line: number,
  statement: PropertyStatement,
  scope: Scope,
  analysis: Analysis | undefined,
  speaker: Speaker,
): LineHover | undefined {
  const span = spanOf(statement.keyword.start, Math.max(statement.keyword.end, statement.valueSpan.end));
  const property = findProperty(section.kind, statement.property);
  const said: string[] = [];
  let stage: MixingStage | undefined;
  if (statement.value?.form === 'testedDough') {
    const experiment = experimentOf(block, scope);
    if (experiment !== undefined) said.push(...experimentMarkdown(experiment, speaker, line));
  }
  if (section.kind === 'mix' && analysis !== undefined) {
    const index = analysis.resolved.model.mixes.findIndex((mix) => mix.headerLine === section.headerLine);
    const mix = analysis.mixes[index];
    if (mix?.known) {
      const loads = phaseLoads(mix.value, line, analysis.solved?.assumedScale === true);
      if (loads !== undefined) said.push(speaker.say(loads));
      const state = phaseState(mix.value, line);
      if (state !== undefined) said.push(speaker.say(message('programme.line-end', { state })));
      const phase = mix.value.phaseLines.indexOf(line);
      stage = mix.value.outcome.phaseEnds.find((one) => one.phase === phase)?.stage;
      const added = phaseAdded(mix.value, line);
      if (added !== undefined) said.push(speaker.say(added));
    }
  }
  if (section.kind === 'trial' && analysis !== undefined) {
    const trial = trialsOf(analysis, scope).find((one) => one.model.headerLine === section.headerLine);
    const ran = trial === undefined ? undefined : ranState(trial, line);
    if (ran !== undefined) said.push(speaker.say(message('programme.line-end-trial', { state: ran })));
    const reading = trial === undefined ? undefined : readingMessage(trial, line);
    if (reading !== undefined) said.push(speaker.say(reading));
    const read = trial?.readings.find((one) => one.line === line)?.stage;
    stage = mixingStages.find((one) => one === read);
    const feel = trial === undefined ? undefined : feelMessage(trial, line);
    if (feel !== undefined) said.push(speaker.say(feel));
    if (statement.value?.form === 'partTemperature')
      said.push(
        speaker.say(message('line.part-warmth', { part: escapeMarkdown(statement.value.name.text) })),
      );
  }
  if (statement.property === 'ferment' && analysis !== undefined)
    said.push(...partMessages(analysis, sectionId(section.headerLine), line).map(speaker.say));
  if (statement.property === 'yield' && analysis?.solved !== undefined)
    said.push(...totalsMarkdown(analysis, speaker).slice(0, 2));
  if (property !== undefined) {
    const { word, meaning, example } = property;
    said.push(speaker.say(message('line.property', { property: word, meaning, example })));
  }
  return said.length === 0 ? undefined : { span, markdown: said.join('\n\n'), ...pictureOf(stage, speaker) };
}

function pictureOf(stage: MixingStage | undefined, speaker: Speaker): Pick<LineHover, 'picture'> {
  return stage === undefined ? {} : { picture: stagePicture(stage, speaker) };
}

/** The dough of a trial at the end of a line of the programme that it keeps. */
function ranState(trial: TrialAnalysis, line: number): Message | undefined {
  if (!trial.mix.known || !trial.mix.value.isKept) return undefined;
  const outcome = trial.predicted();
  if (!outcome.known) return undefined;
  return phaseState({ phaseLines: trial.mix.value.phaseLines, outcome: outcome.value }, line);
}

/** The water of a programme, the rule of thumb beside it, and what the tap would give. */
function waterMarkdown(mix: MixAnalysis, speaker: Speaker): string[] {
  const { targetCelsius } = mix;
  const water = waterSentences(mix);
  const facts = heatOf(mix);
  const { comparison } = facts;
  const said = water ?? [];
  if (water === undefined && comparison !== undefined)
    said.push(message('water.would-have-to', { targetCelsius, waterCelsius: comparison.balanceCelsius }));
  return [
    ...said.map(speaker.say),
    ...(comparison === undefined ? [] : comparisonMarkdown(comparison, speaker)),
    ...heatOutlook(facts).map(speaker.say),
  ];
}

function waterSentences(mix: MixAnalysis): Message[] | undefined {
  const water = waterToUse(mix);
  if (water === undefined) return undefined;
  const { targetCelsius } = mix;
  return [message('water.for-dough', { targetCelsius, water: water.text }), ...water.detail];
}

/** Half of the width of the bands where nothing of the mixer is calibrated. */
const usualBand = 0.2;

function mixMarkdown(mix: MixAnalysis, speaker: Speaker): string[] {
  const { doughGrams, outcome } = mix;
  const facts = heatOf(mix);
  const bill = billMarkdown(facts, speaker);
  const name = escapeMarkdown(mix.mixer.name);
  const seconds = outcome.programmeMinutes * 60;
  return [
    speaker.say(message('programme.title', { name, seconds, doughGrams })),
    ...(waterSentences(mix) ?? []).map(speaker.say),
    [...mixingOutlook(mix), ...heatOutlook(facts)].map((one) => `- ${speaker.say(one)}`).join('\n'),
    ...(bill === undefined ? [] : [bill]),
    speaker.say(message('programme.bands', { fraction: usualBand })),
  ];
}
