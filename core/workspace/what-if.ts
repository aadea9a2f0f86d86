import { analyseText } from '../analysis/analyse.ts';
import type { Analysis } from '../analysis/analysis.ts';
import { waterLever } from '../analysis/water-axis.ts';
import type { ActionContext } from '../features/actions/action.ts';
import { type WholeFormula, wholeFormula } from '../features/actions/after.ts';
import { leastUptake, uptake, waterForFeel } from '../features/actions/flour-change.ts';
import { LineEdits, rename } from '../features/actions/ingredient-lines.ts';
import { lineOfId, type MixModel } from '../model/formula-model.ts';
import { findIngredient } from '../model/found-ingredient.ts';
import type { Said } from '../model/properties.ts';
import type { RuleEdit } from '../rules/engine/rule.ts';
import { quantityPlace } from '../rules/engine/rule-places.ts';
import { ownEdits } from '../rules/engine/variant-edits.ts';
import { programmeEdits, trialsToKeep } from '../rules/trials/kept-programme.ts';
import { massText } from '../sheet/build/apply-options.ts';
import type { SheetOptions, WhatIf } from '../sheet/build/sheet-options.ts';
import type { Block } from '../syntax/tree.ts';
import { withEdits } from '../text/edits.ts';
import { trimmed } from '../text/figures.ts';
import { foldName } from '../text/names.ts';
import { type Message, message } from '../words/message.ts';

/** A formula with what is tried of it written in. */
export interface TriedFormula {
  /** The block as it then stands in its file. */
  readonly block: Block;
  readonly analysis: Analysis;
  /** What each line of the block became: one line, or several. */
  readonly lines: readonly (readonly string[])[];
  /** What of it could not be done. */
  readonly notDone: readonly Message[];
}

/** Whether anything of the formula itself is tried. */
export function isWhatIf({ whatIf = {} }: SheetOptions): boolean {
  return (whatIf.lines?.length ?? 0) > 0 || whatIf.water !== undefined || whatIf.flour !== undefined;
}

/**
 * The formula as it would be if its file said what is tried: the same lines, some with another amount, time or name, read and worked
 * out anew. So a sheet of it is the sheet of the file once that is kept. A variant says itself what differs from its base. Where it is to
 * be kept and the programme runs otherwise, or in another mixer, trials that keep no programme get the one that they ran.
 */
export function triedFormula(
  asked: ActionContext,
  whatIf: WhatIf,
  keeping?: { readonly inOtherMixer: boolean },
): TriedFormula | undefined {
  const analysis = asked.analysis();
  if (analysis === undefined) return undefined;
  const whole = analysis.resolved.model.block;
  const context: ActionContext = { ...asked, block: whole };
  const edits = new LineEdits();
  const notDone: Message[] = [];
  const runsOtherwise = lineMinutes(edits, context, analysis, whatIf, notDone);
  changedFlour(edits, context, whatIf, notDone);
  changedWater(edits, context, analysis, whatIf, notDone);
  const all: RuleEdit[] = [...edits.all()];
  if (keeping !== undefined && (runsOtherwise || keeping.inOtherMixer))
    all.push(...programmeEdits(analysis, trialsToKeep(analysis, context.scope)));
  const own = ownEdits(whole, all);
  if (own === undefined) notDone.push(message('asked.not-in-variant'));
  const { block } = asked;
  const lines = block.lines.map(({ text }, line) => {
    const here = (own ?? []).filter((edit) => edit.line === line).map((edit) => ({ ...edit, line: 0 }));
    return withEdits(text, inLine(here)).split('\n');
  });
  if (own === undefined || own.length === 0) return { block, analysis, lines, notDone };
  const tried = analyseText(lines.flat().join('\n'), context.scope);
  return tried === undefined ? undefined : { ...tried, lines, notDone };
}

/** Edits of one line in the order in which they are made. */
export function inLine<T extends { readonly start: number }>(edits: readonly T[]): T[] {
  return [...edits].sort((one, other) => one.start - other.start);
}

/** The lines of the programme that mixes the dough which take time, in their order. */
export function timedLines(analysis: Analysis): readonly Said[] {
  const mix = doughMixModel(analysis);
  return (mix?.phases ?? []).filter(({ statement: { value } }) => secondsOf(value) !== undefined);
}

/** How long a line of a programme lasts, seconds; undefined where it takes no time or is not whole. */
export function secondsOf(value: Said['statement']['value']): number | undefined {
  const timed = value as { readonly seconds?: number } | undefined;
  return timed?.seconds;
}

function doughMixModel({ resolved }: Analysis): MixModel | undefined {
  const dough = resolved.input.sections[0]?.id;
  const index = resolved.mixes.findIndex(({ sectionId }) => sectionId === dough);
  return resolved.model.mixes[index];
}

const mostMinutes = 600;

function lineMinutes(
  edits: LineEdits,
  { block }: ActionContext,
  analysis: Analysis,
  { lines = [] }: WhatIf,
  notDone: Message[],
): boolean {
  const timed = timedLines(analysis);
  let changes = false;
  for (const { index, minutes, from } of new Map(lines.map((one) => [one.index, one])).values()) {
    const line = timed[index];
    const span = line === undefined ? undefined : quantityPlace(block, line.line, 'duration');
    const written = (secondsOf(line?.statement.value) ?? 0) / 60;
    if (line === undefined || span === undefined || Math.abs(written - (from ?? written)) > 1e-6) {
      notDone.push(message('asked.no-line'));
      continue;
    }
    if (!(minutes > 0 && minutes <= mostMinutes)) {
      notDone.push(message('asked.no-minutes', { minutes }));
      continue;
    }
    if (Math.abs(written - minutes) < 1e-6) continue;
    edits.add(line.line, { ...span, insert: `${trimmed(minutes, 2)} min` });
    changes = true;
  }
  return changes;
}

function changedWater(
  edits: LineEdits,
  { block }: ActionContext,
  analysis: Analysis,
  { water }: WhatIf,
  notDone: Message[],
): void {
  if (water === undefined) return;
  const lever = waterLever(analysis);
  const statement = lever === undefined ? undefined : analysis.resolved.statements.get(lever.line.id);
  const isWeight = lever?.line.amount.kind === 'grams';
  const line = lever === undefined ? -1 : lineOfId(lever.line.id);
  const span =
    statement === undefined
      ? undefined
      : quantityPlace(block, line, isWeight ? 'mass' : 'fraction', statement.amount.start);
  if (lever === undefined || span === undefined || !(water > 0 && water < (isWeight ? 1e7 : 5))) {
    notDone.push(message('asked.no-water'));
    return;
  }
  if (Math.abs(water - lever.amount) < 1e-9) return;
  edits.add(line, { ...span, insert: isWeight ? massText(water) : `${trimmed(water * 100, 2)}%` });
}

function changedFlour(
  edits: LineEdits,
  context: ActionContext,
  { flour, water }: WhatIf,
  notDone: Message[],
): void {
  if (flour === undefined || foldName(flour.from) === foldName(flour.to)) return;
  const whole = wholeFormula(context);
  const from = whole === undefined ? undefined : flourOf(whole, flour.from);
  if (whole === undefined || from === undefined) {
    notDone.push(message('asked.no-such-flour', { name: flour.from }));
    return;
  }
  const to = findIngredient({ text: flour.to, folded: foldName(flour.to), start: 0, end: 0 }, context.scope);
  if (to.kind !== 'found' || to.ingredient.flour === undefined) {
    notDone.push(message('asked.no-other-flour', { name: flour.to }));
    return;
  }
  rename(edits, whole, from, to.ingredient.name);
  const before = whole.analysis.resolved.ingredients.get(from);
  if (flour.sameFeel !== true || water !== undefined || before === undefined) return;
  const feel = waterForFeel(whole, before, to.ingredient);
  if (feel !== undefined) {
    const { line, start, end, insert } = feel;
    edits.add(line, { start, end, insert });
  } else if (!(Math.abs(uptake(before, to.ingredient) ?? Number.NaN) < leastUptake))
    notDone.push(message('asked.no-feel', { name: flour.to }));
}

/** The key of a flour that the formula has under this name. */
function flourOf({ solved }: WholeFormula, name: string): string | undefined {
  const folded = foldName(name);
  return solved.overall.find((row) => row.isFlour && (foldName(row.name) === folded || row.key === folded))
    ?.key;
}
