import { doughOf } from '../../calc/formula/formula-input.ts';
import type { LineModel, SectionModel } from '../../model/formula-model.ts';
import type { Ingredient } from '../../model/found-ingredient.ts';
import { elementAt, firstOf } from '../../text/element.ts';
import { foldName } from '../../text/names.ts';
import { type Message, message } from '../../words/message.ts';
import type { Action, ActionContext } from './action.ts';
import { lineAt, sectionAt, selectedLines } from './action-places.ts';
import { editsKeeping, type WholeFormula, wholeFormula } from './after.ts';
import { exactPercent } from './exact-figures.ts';
import { LineChanges } from './line-changes.ts';
import { ingredientLine, layoutOf } from './line-layout.ts';
import { doughLoads, itemText, writeLoads } from './loads.ts';
import { drawWords } from './rewriting.ts';

export const extractPart: Action = {
  id: 'extract-part',
  kind: 'extract',
  variants: 'whole',
  name: 'Take lines out into a soaker or a preferment',
  explanation:
    'The lines of the formula that are selected, or the seeds at the cursor, become a part of their own that `draws` all of them, so ' +
    'that the lines of the formula stay as they are and so does the overall formula. A soaker whose water is not selected gets the water ' +
    'its seeds hold, a preferment that of the formula’s own hydration, out of the formula’s water. The mixing programme loads the part.',
  example:
    'formula Quay Tin:\n  bread flour        100%\n  water              75%\n  ‸linseed            8%\n  sunflower seeds    6%\n‸  salt               2%\n',
  *offers(context) {
    const chosen = chosenLines(context);
    if (chosen === undefined) return;
    const { taken } = chosen;
    const hasFlour = taken.some(({ ingredient }) => ingredient.isFlour);
    const isSoaked = taken.some(({ ingredient }) => (ingredient.holdsWater ?? 0) > 0);
    if (!context.isSelection && (hasFlour || !isSoaked)) return;
    for (const kind of hasFlour ? (['preferment', 'soaker'] as const) : (['soaker'] as const)) {
      yield {
        title: titleOf(taken, kind),
        argument: kind,
        edits: () => editsOf(context, chosen, kind),
      };
    }
  },
};

function titleOf(taken: readonly Taken[], kind: 'preferment' | 'soaker'): Message {
  return taken.length === 1
    ? message(`extract-part.${kind}`, { name: firstOf(taken).line.statement.name.text })
    : message(`extract-part.lines-${kind}`, { count: taken.length });
}

interface Taken {
  readonly line: LineModel;
  readonly ingredient: Ingredient;
  /** What of it is weighed into the final mix now; other parts have drawn theirs. */
  readonly grams: number;
}

interface Chosen extends WholeFormula {
  readonly dough: SectionModel;
  readonly taken: readonly Taken[];
}

function chosenLines(context: ActionContext): Chosen | undefined {
  const dough = sectionAt(context);
  if (dough?.kind !== 'formula') return undefined;
  const at = lineAt(context);
  const lines = context.isSelection ? selectedLines(context, dough) : at === undefined ? [] : [at];
  const whole = lines.length === 0 ? undefined : wholeFormula(context);
  if (whole === undefined || lines.length === dough.lines.length) return undefined;
  const taken = lines.flatMap((line): Taken[] => {
    const final = whole.solved.finalMix.lines.find(({ lineId }) => lineId === line.id);
    const ingredient = whole.analysis.resolved.ingredients.get(final?.key ?? '');
    if (final?.kind !== 'ingredient' || ingredient === undefined || !(final.grams! > 0)) return [];
    return [{ line, ingredient, grams: final.grams! }];
  });
  const onlyWater = taken.every(({ ingredient }) => ingredient.role === 'water');
  return taken.length < lines.length || onlyWater ? undefined : { ...whole, dough, taken };
}

function editsOf(context: ActionContext, chosen: Chosen, kind: 'preferment' | 'soaker') {
  const { taken, dough, analysis, solved } = chosen;
  const flours = taken.filter(({ ingredient }) => ingredient.isFlour);
  const [most] = [...(flours.length > 0 ? flours : taken)]
    .filter(({ ingredient }) => ingredient.role !== 'water')
    .sort((one, other) => other.grams - one.grams);
  const base = flours.length > 0 ? flours.reduce((sum, { grams }) => sum + grams, 0) : most!.grams;
  const total = doughOf(solved).lines.reduce(
    (sum, { part, key, grams }) => sum + (!part && key === most!.ingredient.key ? (grams ?? 0) : 0),
    0,
  );
  const layout = layoutOf(dough);
  const text = context.block.lines;
  const nameIn = ({ parsed, statement: { name } }: LineModel): string =>
    parsed.text.slice(name.start, name.end);
  const name = freeName(chosen, `${most!.line.statement.name.text} ${kind}`);
  const lines = taken.map(({ line, grams }) =>
    ingredientLine(nameIn(line), exactPercent(grams / base), layout),
  );
  const water = waterLine(chosen, kind, base);
  if (water !== undefined)
    lines.push(ingredientLine(nameIn(water.line), exactPercent(water.fraction), layout));
  const changes = new LineChanges(context);
  const last = analysis.resolved.model.sections.reduce((one, other) =>
    other.headerLine > one.headerLine ? other : one,
  );
  let end = last.endLine - 1;
  while (end > last.headerLine && elementAt(text, end).empty) end--;
  changes.addBelow(
    end,
    '',
    `${kind} ${name}:`,
    `${layout.indent}draws ${drawWords(most!.grams / total, nameIn(most!.line))}`,
    ...lines,
  );
  loadPart(changes, context, chosen, name);
  return editsKeeping(context, changes);
}

/** The water that a part takes along where none was selected. */
function waterLine(
  { solved, analysis, dough, taken }: Chosen,
  kind: 'preferment' | 'soaker',
  base: number,
): { readonly line: LineModel; readonly fraction: number } | undefined {
  const own = doughOf(solved).lines;
  const line = dough.lines.find(({ id }) => own.find((one) => one.id === id)?.role === 'water');
  if (line === undefined || taken.some(({ ingredient }) => ingredient.role === 'water')) return undefined;
  const held = taken.reduce((sum, { ingredient, grams }) => sum + grams * (ingredient.holdsWater ?? 0), 0);
  const wanted = kind === 'soaker' ? held : base * (solved.hydration ?? 0);
  const left = solved.finalMix.lines.find(({ lineId }) => lineId === line.id)?.grams ?? 0;
  const isKnown = analysis.resolved.ingredients.has(own.find(({ id }) => id === line.id)!.key);
  // A whole percent is easier to weigh by than the exact share.
  const fraction = Math.round((100 * wanted) / base) / 100;
  return isKnown && fraction > 0 && fraction * base <= left ? { line, fraction } : undefined;
}

function freeName({ analysis }: Chosen, wanted: string): string {
  const taken = new Set(analysis.resolved.model.sections.map(({ name }) => name?.folded));
  for (let number = 1; ; number++) {
    const name = number === 1 ? wanted : `${wanted} ${number}`;
    if (!taken.has(foldName(name))) return name;
  }
}

/** The programme loads the part where it named what is in it, else with the first that goes in. */
function loadPart(changes: LineChanges, context: ActionContext, chosen: Chosen, name: string): void {
  const keys = new Set(chosen.taken.map(({ ingredient }) => ingredient.key));
  const roles = new Set<string>(chosen.taken.map(({ ingredient }) => ingredient.role));
  const loads = doughLoads(chosen);
  let isLoaded = false;
  for (const [line, items] of loads) {
    const texts = items.flatMap((load) => {
      if (load.item.allBut !== undefined) {
        // What takes everything takes the part.
        isLoaded ||= load.keys.some((key) => keys.has(key));
        return [itemText(context, load)];
      }
      const isNamed =
        load.keys.length === 1 && keys.has(firstOf(load.keys)) && !roles.has(load.item.name.folded);
      if (!isNamed || load.item.portion !== undefined) return [itemText(context, load)];
      if (isLoaded) return [];
      isLoaded = true;
      return [name];
    });
    if (texts.length < items.length || texts.includes(name)) writeLoads(changes, context, line, texts);
  }
  const [first] = loads;
  if (isLoaded || first === undefined) return;
  writeLoads(changes, context, first[0], [...first[1].map((load) => itemText(context, load)), name]);
}
