import type { Analysis } from '../../analysis/analysis.ts';
import type { MixAnalysis } from '../../analysis/mix-analysis.ts';
import type { SolvedSection } from '../../calc/formula/formula-result.ts';
import type { MixPortion } from '../../calc/mixing/mixing-programme.ts';
import { allPortions, type IcePlan } from '../../calc/mixing/mixing-water.ts';
import { lineOfId, type SectionModel } from '../../model/formula-model.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { ClockOf } from './clock.ts';
import { type Reading, rowsOf, type Weighing, type Weight } from './sheet-rows.ts';
import { heldOf, type Timeline } from './timeline.ts';
import { elsewhere, isDrawnWhole, isWeighed, tooLittle, withNotes } from './too-little.ts';
import type { SheetBlock, SheetClock } from './view.ts';

/** A dough parted into equal batches: how many, and one of them. */
interface Parted {
  readonly count: number;
  readonly each: Analysis;
}

/**
 * The blocks of a sheet in the order of the work: parts made before, once for all batches, then for each batch the bowl
 * and later additions, then what stays apart.
 */
export function blocksOf(
  analysis: Analysis,
  parted: Parted,
  mix: MixAnalysis | undefined,
  water: string | undefined,
  firstLine: number,
  timeline: Timeline,
  speaker: Speaker,
): SheetBlock[] {
  const solved = analysis.solved!;
  const weighing = { step: analysis.resolved.bakery.scaleStepGrams, times: 1, speaker };
  const inBatches = { ...weighing, times: parted.count };
  const parts = solved.sections.slice(1);
  const starts = new Map<number, number>();
  for (const { kind, line, startSeconds } of timeline.view.moments)
    if (kind === 'before') starts.set(line, startSeconds);
  const before = inWorkOrder(parts.filter((section) => section.inBowl)).map((section) =>
    partBlock(analysis, section, 'before', firstLine, weighing, starts),
  );
  const apart = parts
    .filter((section) => !section.inBowl)
    .map((section) => partBlock(analysis, section, 'apart', firstLine, weighing, starts));
  const bowl =
    mix === undefined
      ? [plainBowl(parted.each, water, firstLine, inBatches)]
      : bowlBlocks(parted.each, mix, water, firstLine, inBatches, timeline.clock);
  const clocks = new Map<number, SheetClock>();
  for (const { kind, line, clock } of timeline.view.moments)
    if (kind === 'before' && clock !== undefined) clocks.set(line, clock);
  const clocked = (block: SheetBlock): SheetBlock => withClock(block, clocks.get(block.line));
  return [...before.map(clocked), ...bowl, ...apart.map(clocked)];
}

function withClock(block: SheetBlock, clock: SheetClock | undefined): SheetBlock {
  return clock === undefined ? block : { ...block, clock };
}

/** A part that goes into another is made before it. */
function inWorkOrder(sections: readonly SolvedSection[]): SolvedSection[] {
  const done: SolvedSection[] = [];
  const visit = (section: SolvedSection, path: readonly string[]): void => {
    if (done.includes(section) || path.includes(section.id)) return;
    for (const line of section.lines) {
      const inner = line.part ? sections.find((one) => one.id === line.key) : undefined;
      if (inner !== undefined) visit(inner, [...path, section.id]);
    }
    done.push(section);
  };
  for (const section of sections) visit(section, []);
  return done;
}

function partBlock(
  analysis: Analysis,
  section: SolvedSection,
  kind: 'before' | 'apart',
  firstLine: number,
  weighing: Weighing,
  starts: ReadonlyMap<number, number>,
): SheetBlock {
  const { speaker } = weighing;
  const model = analysis.resolved.model.sections.find((one) => one.id === section.id);
  const line = firstLine + (model?.headerLine ?? 0);
  const weights: Weight[] = section.lines.map((one) => ({
    name: one.name,
    line: model === undefined ? line : firstLine + lineOfId(one.id),
    grams: one.grams,
    ...(one.fraction === undefined || one.part ? {} : { percent: speaker.percent(one.fraction) }),
  }));
  if (section.cultureGrams !== undefined && section.cultureGrams > 0) {
    weights.push({ name: speaker.say(message('sheet.ripe-culture')), line, grams: section.cultureGrams });
  }
  const { reading: _reading, ...made } = rowsOf(weights.filter(isWeighed), weighing);
  const notes = tooLittle(weights);
  if (section.keepBackGrams !== undefined && section.keepBackGrams > 0)
    notes.push(message('sheet.keep-back', { grams: section.keepBackGrams }));
  const { steamGrams, totalGrams } = section;
  if (steamGrams !== undefined && totalGrams !== undefined)
    notes.push(message('sheet.steams-away', { lostGrams: steamGrams, grams: totalGrams }));
  const block: SheetBlock = {
    title: section.name,
    when: model === undefined ? '' : speaker.say(whenOf(model, starts.get(line))),
    kind,
    line,
    ...made,
  };
  return withNotes(block, notes, speaker);
}

/** When to begin a part, counted back from the start of mixing, and how it is held. */
function whenOf(section: SectionModel, startSeconds: number | undefined): Message {
  const held = heldOf(section);
  const [only, ...others] = held;
  if (only === undefined) return message('sheet.before-mixing');
  const facts = held.map((one) => one.words);
  if (startSeconds === undefined || startSeconds >= 0) return message('sheet.before-mixing-held', { facts });
  const seconds = -startSeconds;
  if (others.length > 0 || only.seconds !== seconds) return message('sheet.before-held', { seconds, facts });
  return only.celsius === undefined
    ? message('sheet.before', { seconds })
    : message('sheet.before-at', { seconds, celsius: only.celsius });
}

/** Without a programme the final mix goes in as it is written. */
function plainBowl(
  analysis: Analysis,
  water: string | undefined,
  firstLine: number,
  weighing: Weighing,
): SheetBlock {
  const { speaker } = weighing;
  const solved = analysis.solved!;
  const weights = solved.finalMix.lines
    .filter((line) => !isDrawnWhole(line))
    .map(
      (line): Weight => ({
        name: line.name,
        line:
          firstLine + (line.lineId === undefined ? lineOfId(line.sectionId ?? 'S0') : lineOfId(line.lineId)),
        grams: line.grams,
        ...(line.fraction === undefined || line.kind === 'part'
          ? {}
          : { percent: speaker.percent(line.fraction) }),
        ...(line.role === 'water' && water !== undefined ? { note: water } : {}),
      }),
    );
  const { reading: _reading, ...made } = rowsOf(weights.filter(isWeighed), weighing);
  const block: SheetBlock = {
    title: speaker.say(message('sheet.into-bowl')),
    when: '',
    kind: 'bowl',
    line: firstLine,
    ...made,
  };
  return withNotes(block, [...elsewhere(solved), ...tooLittle(weights)], speaker);
}

function bowlBlocks(
  analysis: Analysis,
  mix: MixAnalysis,
  water: string | undefined,
  firstLine: number,
  weighing: Weighing,
  clock: ClockOf | undefined,
): SheetBlock[] {
  const { speaker } = weighing;
  const blocks: SheetBlock[] = [];
  const flour = analysis.solved!.flourGrams;
  const elsewhereNames = new Set(
    analysis.solved!.finalMix.lines.filter(isDrawnWhole).map(({ name }) => name),
  );
  let before: Reading | undefined;
  const notes = elsewhere(analysis.solved!);
  const tempered = allPortions(mix.input).filter((portion) => portion.tempered === true);
  const temperedGrams = tempered.reduce((sum, { grams }) => sum + grams, 0);
  mix.input.phases.forEach((phase, index) => {
    if (!('portions' in phase) || phase.portions.length === 0) return;
    const minutes = minutesBefore(mix, index);
    const line = firstLine + (mix.phaseLines[index] ?? 0);
    const weights = phase.portions.flatMap((portion): Weight[] => {
      const at = lineOfPortion(analysis, portion, firstLine) ?? line;
      const weightOf = (name: string, grams: number, note: string | undefined): Weight => ({
        name,
        line: at,
        grams,
        ...(isPart(analysis, portion) || flour === undefined || flour <= 0
          ? {}
          : { percent: speaker.percent(grams / flour) }),
        ...(note === undefined ? {} : { note }),
      });
      if (portion.tempered !== true) {
        const { kind, celsius } = portion;
        return [
          weightOf(
            portion.label,
            portion.grams,
            kind === 'water' ? speaker.say(message('sheet.water-at', { celsius })) : undefined,
          ),
        ];
      }
      const ice = iceOf(mix);
      if (ice !== undefined) {
        const share = portion.grams / temperedGrams;
        const fromTap = speaker.say(message('sheet.from-tap', { tapCelsius: ice.tapCelsius }));
        return [
          weightOf(portion.label, ice.tapGrams * share, fromTap),
          weightOf(speaker.say(message('sheet.ice')), ice.iceGrams * share, undefined),
        ];
      }
      const isFirst = portion === tempered[0] || water === undefined;
      const note = isFirst ? water : speaker.say(message('sheet.same-temperature'));
      return [weightOf(portion.label, portion.grams, note)];
    });
    const { reading, ...rows } = rowsOf(weights.filter(isWeighed), weighing, before);
    before = reading;
    const block: SheetBlock = {
      title: speaker.say(message(blocks.length === 0 ? 'sheet.into-bowl' : 'sheet.added-later')),
      when: minutes === 0 ? '' : speaker.say(message('sheet.after-minutes', { minutes })),
      kind: blocks.length === 0 ? 'bowl' : 'later',
      line,
      ...rows,
    };
    notes.push(...tooLittle(weights.filter(({ name }) => !elsewhereNames.has(name))));
    // An addition of nothing that anybody weighs is no block: what is said of it stands at the next one.
    if (rows.rows.length === 0) return;
    blocks.push(withClock(withNotes(block, notes.splice(0), speaker), clock?.(minutes * 60)));
  });
  const last = blocks.pop();
  if (last !== undefined) blocks.push(withNotes(last, notes, speaker));
  return blocks;
}

function isPart({ solved }: Analysis, portion: MixPortion): boolean {
  return (
    portion.kind === 'preferment' ||
    solved!.sections.some((one) => one.name === portion.label && one.kind !== 'dough')
  );
}

/** The ice of all the water whose temperature is chosen, and the tap water beside it. */
function iceOf({ water }: MixAnalysis): (IcePlan & { readonly tapCelsius: number }) | undefined {
  if (!water.known || water.value.ice === undefined) return undefined;
  return { ...water.value.ice, tapCelsius: water.value.tapCelsius };
}

function minutesBefore(mix: MixAnalysis, index: number): number {
  let minutes = 0;
  for (const phase of mix.input.phases.slice(0, index))
    if (!('portions' in phase)) minutes += phase.seconds / 60;
  return minutes;
}

function lineOfPortion(analysis: Analysis, portion: MixPortion, firstLine: number): number | undefined {
  const line = analysis.solved!.sections[0]?.lines.find((one) => one.name === portion.label);
  if (line !== undefined) return firstLine + lineOfId(line.id);
  const section = analysis.resolved.model.sections.find((one) => one.name?.text === portion.label);
  return section === undefined ? undefined : firstLine + section.headerLine;
}
