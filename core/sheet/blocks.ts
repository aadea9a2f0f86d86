import type { Analysis } from '../analysis/analysis.ts';
import type { MixAnalysis } from '../analysis/mixing.ts';
import type { SolvedSection } from '../calc/formula-result.ts';
import type { MixPortion } from '../calc/mixing-programme.ts';
import { allPortions } from '../calc/mixing-water.ts';
import { waterWords } from '../features/mixing-words.ts';
import { lineOfId, type SectionModel } from '../model/formula-model.ts';
import { degrees, duration, figure, mass, percent } from '../text/figures.ts';
import type { ClockOf } from './clock.ts';
import { forAll, type Reading, rowsOf, type Weight } from './rows.ts';
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
): SheetBlock[] {
  const solved = analysis.solved!;
  const step = analysis.resolved.bakery.scaleStepGrams;
  const parts = solved.sections.slice(1);
  const starts = new Map<number, number>();
  for (const { kind, line, startSeconds } of timeline.view.moments)
    if (kind === 'before') starts.set(line, startSeconds);
  const before = inWorkOrder(parts.filter((section) => section.inBowl)).map((section) =>
    partBlock(analysis, section, 'before', firstLine, step, starts),
  );
  const apart = parts
    .filter((section) => !section.inBowl)
    .map((section) => partBlock(analysis, section, 'apart', firstLine, step, starts));
  const bowl =
    mix === undefined
      ? [plainBowl(parted.each, water, firstLine, step)]
      : bowlBlocks(parted.each, mix, water, firstLine, step, timeline.clock);
  const clocks = new Map<number, SheetClock>();
  for (const { kind, line, clock } of timeline.view.moments)
    if (kind === 'before' && clock !== undefined) clocks.set(line, clock);
  const clocked = (block: SheetBlock): SheetBlock => withClock(block, clocks.get(block.line));
  return [...before.map(clocked), ...bowl.map((block) => forAll(block, parted.count)), ...apart.map(clocked)];
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
  step: number,
  starts: ReadonlyMap<number, number>,
): SheetBlock {
  const model = analysis.resolved.model.sections.find((one) => one.id === section.id);
  const line = firstLine + (model?.headerLine ?? 0);
  const weights: Weight[] = section.lines.map((one) => ({
    name: one.name,
    line: model === undefined ? line : firstLine + lineOfId(one.id),
    grams: one.grams,
    ...(one.fraction === undefined || one.part ? {} : { percent: percent(one.fraction) }),
  }));
  if (section.cultureGrams !== undefined && section.cultureGrams > 0) {
    weights.push({ name: 'ripe culture', line, grams: section.cultureGrams });
  }
  const { reading: _reading, ...made } = rowsOf(weights.filter(isWeighed), step);
  const notes: string[] = tooLittle(weights);
  if (section.keepBackGrams !== undefined && section.keepBackGrams > 0)
    notes.push(`keep back ${mass(section.keepBackGrams)} for the next day`);
  const block: SheetBlock = {
    title: section.name,
    when: model === undefined ? '' : whenOf(model, starts.get(line)),
    kind,
    line,
    times: 1,
    ...made,
  };
  return withNotes(block, notes);
}

/** When to begin a part, counted back from the start of mixing, and how it is held. */
function whenOf(section: SectionModel, startSeconds: number | undefined): string {
  const held = heldOf(section);
  const [only, ...others] = held;
  if (only === undefined) return 'before mixing';
  const how = held.map((one) => one.text).join(', ');
  if (startSeconds === undefined || startSeconds >= 0) return `before mixing: ${how}`;
  const before = `${duration(-startSeconds)} before`;
  if (others.length > 0 || only.seconds !== -startSeconds) return `${before}: ${how}`;
  return only.celsius === undefined ? before : `${before}, at ${degrees(only.celsius)}`;
}

/** Without a programme the final mix goes in as it is written. */
function plainBowl(
  analysis: Analysis,
  water: string | undefined,
  firstLine: number,
  step: number,
): SheetBlock {
  const solved = analysis.solved!;
  const weights = solved.finalMix.lines
    .filter((line) => !isDrawnWhole(line))
    .map(
      (line): Weight => ({
        name: line.name,
        line:
          firstLine + (line.lineId === undefined ? lineOfId(line.sectionId ?? 'S0') : lineOfId(line.lineId)),
        grams: line.grams,
        ...(line.fraction === undefined || line.kind === 'part' ? {} : { percent: percent(line.fraction) }),
        ...(line.role === 'water' && water !== undefined ? { note: water } : {}),
      }),
    );
  const { reading: _reading, ...made } = rowsOf(weights.filter(isWeighed), step);
  const block: SheetBlock = {
    title: 'Into the bowl',
    when: '',
    kind: 'bowl',
    line: firstLine,
    times: 1,
    ...made,
  };
  return withNotes(block, [...elsewhere(solved), ...tooLittle(weights)]);
}

function bowlBlocks(
  analysis: Analysis,
  mix: MixAnalysis,
  water: string | undefined,
  firstLine: number,
  step: number,
  clock: ClockOf | undefined,
): SheetBlock[] {
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
    const weights = phase.portions.map((portion): Weight => {
      const given =
        portion.kind === 'water' && portion.tempered !== true ? `at ${degrees(portion.celsius)}` : undefined;
      const note =
        portion.tempered !== true
          ? given
          : tempered.length === 1
            ? water
            : portionWater(mix, portion === tempered[0], portion.grams / temperedGrams);
      const isPart =
        portion.kind === 'preferment' ||
        analysis.solved!.sections.some((one) => one.name === portion.label && one.kind !== 'dough');
      return {
        name: portion.label,
        line: lineOfPortion(analysis, portion, firstLine) ?? line,
        grams: portion.grams,
        ...(isPart || flour === undefined || flour <= 0 ? {} : { percent: percent(portion.grams / flour) }),
        ...(note === undefined ? {} : { note }),
      };
    });
    const { reading, ...rows } = rowsOf(weights.filter(isWeighed), step, before);
    before = reading;
    const block: SheetBlock = {
      title: blocks.length === 0 ? 'Into the bowl' : 'Added later',
      when: minutes === 0 ? '' : `after ${figure(minutes, 1)} min`,
      kind: blocks.length === 0 ? 'bowl' : 'later',
      line,
      times: 1,
      ...rows,
    };
    notes.push(...tooLittle(weights.filter(({ name }) => !elsewhereNames.has(name))));
    // An addition of nothing that anybody weighs is no block: what is said of it stands at the next one.
    if (rows.rows.length === 0) return;
    blocks.push(withClock(withNotes(block, notes.splice(0)), clock?.(minutes * 60)));
  });
  const last = blocks.pop();
  if (last !== undefined) blocks.push(withNotes(last, notes));
  return blocks;
}

/** The water of one of several portions: each with its own ice. */
function portionWater(mix: MixAnalysis, isFirst: boolean, share: number): string | undefined {
  const text = waterWords(mix, share)?.text;
  const hasIce = mix.water.known && mix.water.value.ice !== undefined;
  return isFirst || hasIce || text === undefined ? text : 'at the same temperature';
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
