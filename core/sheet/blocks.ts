import type { Analysis } from '../analysis/analysis.ts';
import type { MixAnalysis } from '../analysis/mixing.ts';
import type { SolvedSection } from '../calc/formula-result.ts';
import type { MixPortion } from '../calc/mixing-programme.ts';
import { roundToStep } from '../calc/scaling.ts';
import { lineOfId } from '../model/formula-model.ts';
import { saidValue } from '../model/properties.ts';
import { degrees, duration, mass, percent, trimmed, weighedFigure } from '../text/figures.ts';
import type { SheetBlock, SheetFigure, SheetRow } from './view.ts';

/** A row before it is rounded to the scale. */
interface Weight {
  readonly name: string;
  readonly line: number;
  readonly grams: number | undefined;
  readonly percent?: string;
  readonly note?: string;
}

/** The blocks of a sheet in the order of the work: parts made before, the bowl, later additions, what stays apart. */
export function blocksOf(
  analysis: Analysis,
  mix: MixAnalysis | undefined,
  water: string | undefined,
  firstLine: number,
): SheetBlock[] {
  const solved = analysis.solved!;
  const step = analysis.resolved.bakery.scaleStepGrams;
  const parts = solved.sections.slice(1);
  const before = inWorkOrder(parts.filter((section) => section.inBowl)).map((section) =>
    partBlock(analysis, section, 'before', firstLine, step),
  );
  const apart = parts
    .filter((section) => !section.inBowl)
    .map((section) => partBlock(analysis, section, 'apart', firstLine, step));
  const bowl =
    mix === undefined
      ? [plainBowl(analysis, water, firstLine, step)]
      : bowlBlocks(analysis, mix, water, firstLine, step);
  return [...before, ...bowl, ...apart];
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
  const { readsGrams: _reads, ...made } = rowsOf(weights, step);
  const notes: string[] = [];
  if (section.keepBackGrams !== undefined && section.keepBackGrams > 0)
    notes.push(`keep back ${mass(section.keepBackGrams)} for the next day`);
  return {
    title: section.name,
    when: model === undefined ? '' : whenOf(model.said),
    kind,
    line,
    ...made,
    ...(notes.length === 0 ? {} : { note: notes.join(', ') }),
  };
}

function whenOf(said: Parameters<typeof saidValue>[0]): string {
  for (const word of ['ferment', 'soak', 'hold']) {
    const held = saidValue(said, word, 'duration');
    if (held === undefined) continue;
    return `${duration(held.seconds)} before${held.celsius === undefined ? '' : `, at ${degrees(held.celsius)}`}`;
  }
  return 'before mixing';
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
    .filter((line) => line.grams === undefined || line.grams > 0)
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
  const { readsGrams: _reads, ...made } = rowsOf(weights, step);
  return { title: 'Into the bowl', when: '', kind: 'bowl', line: firstLine, ...made };
}

function bowlBlocks(
  analysis: Analysis,
  mix: MixAnalysis,
  water: string | undefined,
  firstLine: number,
  step: number,
): SheetBlock[] {
  const blocks: SheetBlock[] = [];
  const flour = analysis.solved!.flourGrams;
  let reads = 0;
  let firstWater = true;
  mix.input.phases.forEach((phase, index) => {
    if (!('portions' in phase) || phase.portions.length === 0) return;
    const minutes = minutesBefore(mix, index);
    const line = firstLine + (mix.phaseLines[index] ?? 0);
    const weights = phase.portions.map((portion): Weight => {
      const given =
        portion.kind === 'water' && portion.tempered !== true ? `at ${degrees(portion.celsius)}` : undefined;
      const note = portion.tempered === true ? (firstWater ? water : 'at the same temperature') : given;
      if (portion.tempered === true) firstWater = false;
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
    const { readsGrams, ...rows } = rowsOf(weights, step, reads);
    reads = readsGrams;
    blocks.push({
      title: blocks.length === 0 ? 'Into the bowl' : 'Added later',
      when: minutes === 0 ? '' : `after ${trimmed(minutes, 1)} min`,
      kind: blocks.length === 0 ? 'bowl' : 'later',
      line,
      ...rows,
    });
  });
  return blocks;
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

/** Rounds rows to the scale's step, the total within half a step, and adds the running reading of one scale. */
function rowsOf(
  weights: readonly Weight[],
  step: number,
  startGrams = 0,
): Pick<SheetBlock, 'rows' | 'total'> & { readonly readsGrams: number } {
  const rounded = roundToStep(
    weights.map((weight, index) => ({
      lineId: String(index),
      ...(weight.grams === undefined ? {} : { grams: weight.grams }),
    })),
    step,
  );
  let reads = startGrams;
  let known = true;
  const rows = weights.map((weight, index): SheetRow => {
    const { grams, stepGrams } = rounded.lines[index]!;
    const base = {
      name: weight.name,
      line: weight.line,
      ...(weight.percent === undefined ? {} : { percent: weight.percent }),
      ...(weight.note === undefined ? {} : { note: weight.note }),
    };
    if (grams === undefined) {
      known = false;
      return { ...base, missing: 'not known yet' };
    }
    reads += grams;
    const exact = weight.grams ?? grams;
    return {
      ...base,
      weigh: figureOf(exact, grams, stepGrams ?? step),
      ...(known ? { scaleReads: figureOf(reads, Math.round(reads / step) * step, step) } : {}),
    };
  });
  const total = figureOf(rounded.exactTotalGrams, rounded.totalGrams, step);
  return { rows, ...(known ? { total } : {}), readsGrams: reads };
}

function figureOf(grams: number, shown: number, step: number): SheetFigure {
  return { grams, ...weighedFigure(shown, step) };
}
