import { yeastAlike } from '../../calc/fermentation/yeast.ts';
import { contentsOf } from '../../calc/formula/contents.ts';
import { doughOf } from '../../calc/formula/formula-input.ts';
import type { SolvedFormula, SolvedLine, SolvedSection } from '../../calc/formula/formula-result.ts';
import type { LineModel } from '../../model/formula-model.ts';
import { findIngredient } from '../../model/found-ingredient.ts';
import { message } from '../../words/message.ts';
import type { Action, ActionContext } from './action.ts';
import { lineAt, sectionAt, solvedLines } from './action-places.ts';
import { editsKeeping, isNear, type WholeFormula, wholeFormula } from './after.ts';
import { exactMass, exactPercent, roundedCloseness, roundedMass, roundedPercent } from './exact-figures.ts';
import { LineEdits, linesOf, rename } from './ingredient-lines.ts';
import { LineChanges } from './line-changes.ts';

export const changeYeast: Action = {
  id: 'change-yeast',
  kind: 'rewrite',
  variants: true,
  name: 'Change one kind of yeast for another',
  explanation:
    'Between fresh, active dry and instant yeast, as 1 : 0.4 : 0.33 by weight (Hamelman, Bread, 2004; the packet’s own figure ' +
    'goes before it). It changes every line of that yeast in the formula and what is loaded, and gives the water line of the section ' +
    'the water that fresh yeast brings and dry yeast lacks, so that effective hydration stays: the water is written as a baker writes it, `62.7%` or `1257 g`, ' +
    'never further off than half a percent of itself.',
  example:
    'formula Quay Tin:\n  bread flour        100%\n  water              65%\n  ‸fresh yeast        1%\n',
  *offers(context) {
    const line = lineAt(context);
    const section = sectionAt(context);
    if (line === undefined || section === undefined) return;
    const key = solvedLines(context, section).get(line.id)?.key ?? '';
    const from = yeastAlike.get(key);
    const whole = from === undefined ? undefined : wholeFormula(context);
    if (from === undefined || whole === undefined) return;
    for (const [name, to] of yeastAlike) {
      if (name === key || stands(whole, key, name)) continue;
      const change: YeastChange = { from: key, to: name, ratio: to / from };
      yield {
        title: message('change-yeast.change', {
          name: line.statement.name.text,
          otherName: name,
          fraction: change.ratio,
        }),
        argument: name,
        edits: () => editsOf(context, whole, change),
      };
    }
  },
};

interface YeastChange {
  readonly from: string;
  readonly to: string;
  readonly ratio: number;
}

function editsOf(context: ActionContext, whole: WholeFormula, change: YeastChange) {
  const waterMore = waterFor(context, whole, change);
  if (waterMore === undefined) return undefined;
  const edits = new LineEdits();
  const changes = new LineChanges(context);
  if (!writeYeast(edits, whole, change) || !writeWater(edits, whole, change, waterMore)) return undefined;
  rename(edits, whole, change.from, change.to);
  if (!edits.writeOwn(whole, changes)) return undefined;
  return editsKeeping(context, changes, (before, after) => isSameButYeast(before, after, change));
}

/** Grams of water that have to come for each gram of the yeast that goes. */
function waterFor(
  context: ActionContext,
  whole: WholeFormula,
  { from, to, ratio }: YeastChange,
): number | undefined {
  const before = whole.analysis.resolved.ingredients.get(from)?.composition.water;
  const found = findIngredient({ text: to, folded: to, start: 0, end: 0 }, context.scope);
  const after = found.kind === 'found' ? found.ingredient.composition.water : undefined;
  return before === undefined || after === undefined ? undefined : before - ratio * after;
}

/** Whether some section has both kinds: then one line could not become the other. */
function stands(whole: WholeFormula, from: string, to: string): boolean {
  const sections = new Set(linesOf(whole, from).map(({ section }) => section));
  return linesOf(whole, to).some(({ section }) => sections.has(section));
}

/**
 * The lines of the yeast, each as much as raises alike. What drawing parts bring of the new kind counts in the dough's line of
 * it once there is one, so that line holds their share too.
 */
function writeYeast(edits: LineEdits, whole: WholeFormula, { from, to, ratio }: YeastChange): boolean {
  const { solved } = whole;
  const dough = doughOf(solved);
  const drawn = (key: string): number =>
    solved.sections
      .filter((one) => one.drawn)
      .flatMap((one) => contentsOf(solved, one) ?? [])
      .reduce((sum, one) => sum + (one.key === key ? one.grams : 0), 0);
  const inDough = (key: string) => linesOf(whole, key).filter(({ section }) => section === dough.id);
  let more = inDough(from).length > 0 ? drawn(to) : drawn(from) * ratio;
  const write = (line: LineModel, section: string, factor: number): boolean => {
    const { amount } = line.statement;
    const grams = solvedLine(whole, section, line)?.grams;
    const base = solved.sections.find(({ id }) => id === section)?.baseGrams;
    if ('aPiece' in amount || grams === undefined) return false;
    const extra = section === dough.id ? more : 0;
    if (section === dough.id) more = 0;
    if (amount.kind === 'fraction' && extra > 0 && base === undefined) return false;
    const text =
      amount.kind === 'fraction'
        ? exactPercent(amount.fraction * factor + (extra > 0 ? extra / base! : 0))
        : exactMass(grams * factor + extra);
    edits.add(line.line, { start: amount.start, end: amount.end, insert: text });
    return true;
  };
  const ownLine = inDough(from).length > 0 ? [] : inDough(to).slice(0, more > 0 ? 1 : 0);
  return (
    linesOf(whole, from).every(({ line, section }) => write(line, section, ratio)) &&
    ownLine.every(({ line, section }) => write(line, section, 1))
  );
}

/**
 * The water of each section that has its own takes up the difference; the dough's takes that of the rest too. A part that is
 * added by weight or percent is then added by as much more or less as it now weighs.
 */
function writeWater(
  edits: LineEdits,
  whole: WholeFormula,
  { from, ratio }: YeastChange,
  waterMore: number,
): boolean {
  const { solved, analysis } = whole;
  const { model } = analysis.resolved;
  const grams = linesOf(whole, from);
  let inDough = (solved.overall.find(({ key }) => key === from)?.grams ?? 0) * waterMore;
  const overall = inDough;
  for (const section of model.sections.slice(1)) {
    const yeast = grams
      .filter((one) => one.section === section.id)
      .reduce((sum, { line }) => sum + (solvedLine(whole, section.id, line)?.grams ?? 0), 0);
    const part = solved.sections.find(({ id }) => id === section.id);
    if (yeast === 0 || part === undefined) continue;
    const water = section.lines.find((line) => solvedLine(whole, section.id, line)?.role === 'water');
    if (water === undefined || part.keepBackGrams !== undefined) return false;
    const more = writeMore(edits, water, part, yeast * waterMore, part.flourGrams);
    if (more === undefined) return false;
    if (part.drawn) continue;
    const within = contentsOf(solved, part)?.find(({ key }) => key === from)?.grams ?? 0;
    inDough -= within * waterMore;
    const lines = part.lines.reduce((sum, line) => sum + (line.grams ?? 0), 0);
    if (!writeUses(edits, whole, part, (lines + yeast * (ratio - 1) + more) / lines)) return false;
  }
  const dough = doughOf(solved);
  const water = doughOf(model).lines.find((line) => solvedLine(whole, dough.id, line)?.role === 'water');
  if (water === undefined) return Math.abs(inDough) < 1e-9;
  const isHydration = water.statement.amount.kind === 'hydration';
  const more = writeMore(edits, water, dough, isHydration ? overall : inDough, solved.flourGrams);
  return more !== undefined;
}

/** Writes so many grams more into a water line, rounded as a baker writes water; how many that came to, `undefined` where it cannot be said. */
function writeMore(
  edits: LineEdits,
  { line, statement: { amount } }: LineModel,
  section: SolvedSection,
  grams: number,
  flourGrams: number | undefined,
): number | undefined {
  const solved = section.lines.find(({ id }) => id === `L${line}`)?.grams;
  if (Math.abs(grams) < 1e-12) return 0;
  if (solved === undefined || solved + grams < 0) return undefined;
  const write = (insert: string): void => edits.add(line, { start: amount.start, end: amount.end, insert });
  /** The share as it is written, and the grams that it comes to more than it was. */
  const share = (was: number, baseGrams: number): { readonly text: string; readonly more: number } => {
    const text = roundedPercent(was + grams / baseGrams) ?? exactPercent(was + grams / baseGrams);
    return { text, more: (Number.parseFloat(text) / 100 - was) * baseGrams };
  };
  switch (amount.kind) {
    case 'fraction': {
      if (section.baseGrams === undefined) return undefined;
      const { text, more } = share(amount.fraction, section.baseGrams);
      write(text);
      return more;
    }
    case 'hydration': {
      if (amount.effective) return 0;
      if (flourGrams === undefined) return undefined;
      const { text, more } = share(amount.fraction, flourGrams);
      write(`to ${text} hydration`);
      return more;
    }
    case 'mass':
    case 'volume': {
      const text = roundedMass(solved + grams) ?? exactMass(solved + grams);
      write(text);
      return Number.parseFloat(text) * (text.endsWith('kg') ? 1000 : 1) - solved;
    }
    default:
      return undefined;
  }
}

function writeUses(
  edits: LineEdits,
  { analysis, solved }: WholeFormula,
  part: SolvedSection,
  factor: number,
): boolean {
  return analysis.resolved.model.sections.every((section) =>
    section.lines.every(({ id, line, statement: { amount } }) => {
      const own = solved.sections.find((one) => one.id === section.id)?.lines.find((one) => one.id === id);
      if (own?.part !== true || own.key !== part.id) return true;
      const { start, end } = amount;
      if (amount.kind === 'fraction')
        edits.add(line, { start, end, insert: exactPercent(amount.fraction * factor) });
      else if (amount.kind === 'mass')
        edits.add(line, { start, end, insert: exactMass(amount.grams * factor) });
      else return amount.kind === 'remaining';
      return true;
    }),
  );
}

/**
 * Everything else is as it was, in percent of flour, and the water as nearly as it is written; where grams stand beside a yield those stay instead, and the percent of
 * the rest moves by as much as the scale does.
 */
function isSameButYeast(
  before: SolvedFormula,
  after: SolvedFormula,
  { from, to, ratio }: YeastChange,
): boolean {
  const rows = new Map(after.overall.map((row) => [row.key, row]));
  const was = (key: string): number => before.overall.find((row) => row.key === key)?.fraction ?? 0;
  const [flour, flourAfter] = [before.flourGrams ?? 0, after.flourGrams ?? 0];
  const others = before.overall.filter(({ key, role }) => role !== 'water' && key !== from && key !== to);
  const isScaled = others.every(({ key, fraction }) => isNear(fraction, rows.get(key)?.fraction, 1));
  const size = isScaled ? 1 : 1 + Math.abs(flourAfter / flour - 1) / 1e-9;
  return (
    isAsWet(before.effectiveHydration, after.effectiveHydration) &&
    isNear(was(from) * ratio + was(to), rows.get(to)?.fraction, size) &&
    others.every(({ key, fraction, grams }) => {
      const now = rows.get(key);
      return isNear(fraction, now?.fraction, 1) || isNear(grams, now?.grams, flour);
    })
  );
}

/** Whether two hydrations are the same but for the rounding of the water in them. */
function isAsWet(before: number | undefined, after: number | undefined): boolean {
  if (before === undefined || after === undefined) return before === after;
  return Math.abs(after - before) <= roundedCloseness * before;
}

function solvedLine({ solved }: WholeFormula, section: string, line: LineModel): SolvedLine | undefined {
  return solved.sections.find(({ id }) => id === section)?.lines.find(({ id }) => id === line.id);
}
