import type { Analysis } from '../analysis/analysis.ts';
import { handTrials, mixerTrials } from '../analysis/mixer-trials.ts';
import { type MixAnalysis, stageMessage } from '../analysis/mixing.ts';
import { type PlanAnalysis, planOf } from '../analysis/plan.ts';
import { type TrialAnalysis, trialsOf } from '../analysis/trials.ts';
import type { SolvedSection } from '../calc/formula-result.ts';
import { lineId, sectionId } from '../model/formula-model.ts';
import { findIngredient } from '../model/ingredient.ts';
import type { Scope } from '../model/scope.ts';
import type { Block, HeaderStatement, PropertyStatement, SectionKind } from '../syntax/tree.ts';
import { findProperty } from '../syntax/vocabulary.ts';
import { leastWeighedGrams, mass, percent } from '../text/figures.ts';
import type { Span } from '../text/span.ts';
import { type Message, message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';
import { calibrationMarkdown } from './calibration-words.ts';
import { compositionMarkdown, flourMarkdown } from './composition-words.ts';
import { costTotals } from './cost-of.ts';
import { partWords, stepWords } from './fermentation-words.ts';
import { escapeMarkdown, totalsMarkdown } from './formula-words.ts';
import { heatOf } from './heat-of.ts';
import { billMarkdown, comparisonMarkdown, heatOutlook } from './heat-words.ts';
import { factsOf, type LineFacts, sectionOf } from './line-facts.ts';
import { mixingOutlook, waterToUse } from './mixing-words.ts';
import { planLineMarkdown, planMarkdown } from './plan-words.ts';
import { processTimes, stepTimes } from './process-words.ts';
import { readingMessage, trialMarkdown } from './trial-words.ts';

/** What a hover says of one line of a block: the stretch of the line it is about, and Markdown. */
export interface LineHover {
  readonly span: Span;
  readonly markdown: string;
}

/** The hover of a line of a block; `undefined` where there is nothing to say. */
export function hoverOf(
  block: Block,
  line: number,
  column: number,
  scope: Scope,
  analysis: Analysis | undefined,
  speaker: Speaker,
  planned: () => PlanAnalysis | undefined = () => planOf(block, scope),
): LineHover | undefined {
  const parsed = block.lines[line];
  if (parsed === undefined) return undefined;
  const comment = parsed.tokens.find((token) => token.kind === 'comment');
  if (comment !== undefined && column >= comment.start) return undefined;
  const { statement } = parsed;
  const section = sectionAt(block, line);
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
      const said = plan === undefined ? undefined : planLineMarkdown(plan, line);
      const words = spanOf(statement.name.start, Math.max(statement.name.end, statement.amount.end));
      return said === undefined ? undefined : { span: words, markdown: said.join('\n\n') };
    }
    case 'property':
      return section === undefined
        ? undefined
        : propertyHover(section, line, statement, scope, analysis, speaker);
    case 'step': {
      const said = [...stepTimes(block, line), ...(analysis === undefined ? [] : stepWords(analysis, line))];
      const { start, end } = statement.words;
      return said.length === 0 ? undefined : { span: spanOf(start, end), markdown: said.join('\n\n') };
    }
    default:
      return undefined;
  }
}

const spanOf = (start: number, end: number): Span => ({ start, end });

function sectionAt(block: Block, line: number): { kind: SectionKind; headerLine: number } | undefined {
  const all = block.top === undefined ? block.subs : [block.top, ...block.subs];
  const found = all.findLast((section) => section.headerLine <= line && line < section.endLine);
  return found === undefined || found.kind === 'unknown'
    ? undefined
    : { kind: found.kind, headerLine: found.headerLine };
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
  const words = block.lines[line]!.text.trimEnd();
  const span = spanOf(header.keyword.start, words.length);
  const title = (text: string): string => `**${escapeMarkdown(text)}**`;
  if (header.section === 'formula' && analysis !== undefined && header.name !== undefined) {
    const cost = costTotals(analysis);
    const said = [title(header.name.text), ...totalsMarkdown(analysis)];
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
    const calibration = hands === undefined ? [] : calibrationMarkdown(hands);
    return { span, markdown: [...mixMarkdown(mix.value, speaker), ...calibration].join('\n\n') };
  }
  if (header.section === 'trial' && analysis !== undefined) {
    const trial = trialsOf(analysis, scope).find((one) => one.model.headerLine === line);
    const said = trial === undefined ? [] : trialMarkdown(trial, speaker);
    const when = [header.date, header.words].filter((one) => one !== undefined).join(', ');
    return said.length === 0 ? undefined : { span, markdown: [title(`Trial ${when}`), ...said].join('\n\n') };
  }
  if (header.section === 'process') {
    const said = processTimes(block, line);
    return said.length === 0 ? undefined : { span, markdown: said.join('\n\n') };
  }
  if (header.section === 'plan') {
    const plan = planned();
    return plan === undefined ? undefined : { span, markdown: planMarkdown(plan).join('\n\n') };
  }
  if (header.section === 'mixer' && header.name !== undefined) {
    const trials = mixerTrials(block, header.name, scope);
    if (trials === undefined) return undefined;
    return { span, markdown: [title(header.name.text), ...calibrationMarkdown(trials)].join('\n\n') };
  }
  if (analysis !== undefined) {
    const solved = sectionOf(analysis, sectionId(line));
    if (solved !== undefined && header.section !== 'formula') {
      const said = [title(solved.name)];
      if (solved.totalGrams !== undefined)
        said.push(
          `${mass(solved.totalGrams)} in all${solved.flourGrams !== undefined && solved.flourGrams > 0 ? `, ${mass(solved.flourGrams)} of it flour` : ''}.`,
        );
      if (solved.hydration !== undefined) said.push(`hydration **${percent(solved.hydration)}**`);
      if (solved.cultureGrams !== undefined) said.push(`Takes ${mass(solved.cultureGrams)} of ripe culture.`);
      if (solved.steamGrams !== undefined)
        said.push(`${mass(solved.steamGrams)} steams away while it cooks.`);
      if (solved.keepBackGrams !== undefined) said.push(`${mass(solved.keepBackGrams)} is kept back.`);
      if (!solved.inBowl) said.push('Never in the bowl: it counts in no hydration.');
      return { span, markdown: said.join('\n\n') };
    }
  }
  if ((header.section === 'flour' || header.section === 'ingredient') && header.name !== undefined) {
    const found = findIngredient(header.name, scope);
    if (found.kind === 'found') return { span, markdown: compositionMarkdown(found.ingredient).join('\n\n') };
  }
  return undefined;
}

/** What the percent of a section is of: its flour, or its line of 100% where it has no flour. */
function wholeOf(section: SolvedSection): string {
  if (section.kind === 'dough') return 'of the flour';
  const name = escapeMarkdown(section.name);
  if (section.flourGrams === undefined || section.flourGrams > 0) return `of the flour of the ${name}`;
  const whole = section.lines.filter((line) => line.fraction !== undefined && isNear(line.fraction, 1));
  return whole.length === 1 ? `of the ${escapeMarkdown(whole[0]!.name)}` : `in the ${name}`;
}

const isNear = (one: number, other: number): boolean => Math.abs(one - other) < 1e-9;

function ingredientMarkdown(analysis: Analysis, facts: LineFacts, speaker: Speaker): string[] {
  const { line, section, ingredient, final } = facts;
  const figures: string[] = [];
  if (line.fraction !== undefined) figures.push(`**${percent(line.fraction)}** ${wholeOf(section)}`);
  if (line.grams !== undefined) figures.push(`**${mass(line.grams)}**`);
  const said = [
    `**${escapeMarkdown(line.name)}** ${figures.length > 0 ? `— ${figures.join(' · ')}` : ''}`.trim(),
  ];
  if (line.unsolved !== undefined) said.push('Not known yet: the line, or one it hangs on, is not finished.');
  if (final?.grams !== undefined && final.drawnGrams !== undefined && final.drawnGrams > 0) {
    const rest = `${mass(final.grams)} goes into the final mix; ${mass(final.drawnGrams)} comes with what is drawn.`;
    said.push(final.grams < leastWeighedGrams ? 'All of it comes with what is drawn.' : rest);
  }
  if (line.part) {
    const part = analysis.solved?.sections.find((one) => one.id === line.key);
    if (part?.hydration !== undefined)
      said.push(`A part of its own at ${percent(part.hydration)} hydration.`);
    return said;
  }
  if (ingredient === undefined)
    return [...said, 'Nobody has said what it is: it is weighed, and counts as neither flour nor water.'];
  const water = ingredient.composition.water;
  if (!ingredient.isFlour && ingredient.role !== 'water' && line.grams !== undefined) {
    said.push(
      water === undefined
        ? 'How much water it brings is not known.'
        : water > 0.005
          ? `Brings ${mass(water * line.grams)} of water (${percent(water)} of it).`
          : 'Brings no water.',
    );
  }
  if (ingredient.role === 'water') {
    const mix = analysis.doughMix;
    if (mix.known) {
      if (section.kind === 'dough') said.push(...waterMarkdown(mix.value, speaker));
    }
  }
  if (ingredient.flour !== undefined) said.push(...flourMarkdown(ingredient));
  said.push(`_Figures: ${escapeMarkdown(ingredient.source)}._`);
  return said;
}

function propertyHover(
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
  if (section.kind === 'mix' && analysis !== undefined) {
    const index = analysis.resolved.model.mixes.findIndex((mix) => mix.headerLine === section.headerLine);
    const mix = analysis.mixes[index];
    if (mix?.known) {
      const state = phaseState(mix.value, line);
      if (state !== undefined) said.push(speaker.say(message('programme.line-end', { state })));
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
    if (statement.value?.form === 'partTemperature')
      said.push(`**${escapeMarkdown(statement.value.name.text)}** — how warm this part was on that day.`);
  }
  if (statement.property === 'ferment' && analysis !== undefined)
    said.push(...partWords(analysis, sectionId(section.headerLine), line));
  if (statement.property === 'yield' && analysis?.solved !== undefined)
    said.push(...totalsMarkdown(analysis).slice(0, 2));
  if (property !== undefined)
    said.push(`**${property.word}** — ${property.meaning}. Reads like: \`${property.example}\``);
  return said.length === 0 ? undefined : { span, markdown: said.join('\n\n') };
}

/** What a line of the programme did to the dough: the degrees and the part of its development that it alone brought. */
function phaseAdded(mix: MixAnalysis, line: number): Message | undefined {
  const phase = mix.phaseLines.indexOf(line);
  const { phaseEnds } = mix.outcome;
  const index = phaseEnds.findIndex((one) => one.phase === phase);
  const [before, end] = [phaseEnds[index - 1], phaseEnds[index]];
  if (before === undefined || end === undefined) return undefined;
  const facts: Message[] = [];
  if (before.celsius !== undefined && end.celsius !== undefined) {
    const apartCelsius = end.celsius - before.celsius;
    // Less than reads as a tenth of a degree.
    if (Math.abs(apartCelsius) < 0.05) facts.push(message('programme.no-change'));
    else facts.push(message('programme.change', { apartCelsius }));
  }
  const fraction = (end.development ?? 0) - (before.development ?? 0);
  if (fraction >= 0.005) facts.push(message('programme.work', { fraction }));
  return facts.length === 0 ? undefined : message('programme.line-alone', { facts });
}

/** The dough at the end of a phase: `7 min · 22.4 °C · clean-up`. */
export function phaseState(
  mix: Pick<MixAnalysis, 'phaseLines' | 'outcome'>,
  line: number,
): Message | undefined {
  const phase = mix.phaseLines.indexOf(line);
  const end = mix.outcome.phaseEnds.find((one) => one.phase === phase);
  if (end === undefined) return undefined;
  const { minutes, celsius, stage } = end;
  const parts: Message[] = [message('programme.minutes', { minutes })];
  // Below freezing the balance of heat stands for a dough in which ice has yet to melt.
  if (celsius !== undefined)
    parts.push(celsius < 0 ? message('programme.ice-left') : message('programme.celsius', { celsius }));
  if (stage !== undefined) parts.push(stageMessage(stage));
  return message('programme.state', { parts });
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
