import type { AmountInput, FormulaInput, LineInput } from '../calc/formula/formula-input.ts';
import type { SolvedFormula } from '../calc/formula/formula-result.ts';
import { type Known, known, unknown } from '../calc/known.ts';
import { findIngredient, type Ingredient } from '../model/found-ingredient.ts';
import type { ResolvedFormula } from '../model/resolve.ts';
import type { Scope } from '../model/scope.ts';
import { foldName } from '../text/names.ts';
import { type Message, message } from '../words/message.ts';
import { analyseResolved } from './analyse.ts';
import { type AxisBase, type AxisRow, type AxisRows, rowOf } from './map-axis.ts';

const rowCount = 40;

/**
 * The same formula with one of its flours little by little in the place of another, all else as it is written, the water too. The
 * two are the flour there is most of and the one named, else the formula's second, else one of wholemeal, or of white for a
 * wholemeal dough.
 */
export function flourRows(
  { analysis, mix }: AxisBase,
  scope: Scope,
  named?: string,
): Known<AxisRows, Message> {
  const { resolved, solved } = analysis;
  const flours = floursBySize(resolved, solved);
  const from = flours[0]?.ingredient;
  if (solved === undefined || from === undefined) return unknown(message('map.no-flour'));
  const to = secondFlour(
    flours.map(({ ingredient }) => ingredient),
    scope,
    named,
  );
  if (!to.known) return to;
  const gramsOf = (key: string): number =>
    flours.find(({ ingredient }) => ingredient.key === key)?.grams ?? 0;
  const [fromGrams, toGrams] = [gramsOf(from.key), gramsOf(to.value.key)];
  const own = toGrams / (fromGrams + toGrams);
  const rows: AxisRow[] = [{ value: own, outcome: mix.outcome, isOwn: true }];
  for (let step = 0; step < rowCount; step++) {
    const share = step / (rowCount - 1);
    if (Math.abs(share - own) < 1e-6) continue;
    const changed =
      share > own
        ? withFlour(resolved, solved, from, to.value, (share - own) / (1 - own))
        : withFlour(resolved, solved, to.value, from, (own - share) / own);
    const row = rowOf(analysis, analyseResolved(changed), share);
    if (row !== undefined) rows.push(row);
  }
  rows.sort((one, other) => one.value - other.value);
  return known({ rows, flours: [from.name, to.value.name], notes: [] }, 'common practice');
}

interface SizedFlour {
  readonly ingredient: Ingredient;
  readonly grams: number;
}

function floursBySize(resolved: ResolvedFormula, solved: SolvedFormula | undefined): SizedFlour[] {
  return (solved?.overall ?? [])
    .flatMap(({ key, isFlour, grams }) => {
      const ingredient = resolved.ingredients.get(key);
      const isMilled = isFlour && ingredient?.flour !== undefined;
      return isMilled && grams !== undefined && grams > 0 ? [{ ingredient, grams }] : [];
    })
    .sort((one, other) => other.grams - one.grams);
}

function secondFlour(
  [from, second]: readonly Ingredient[],
  scope: Scope,
  named: string | undefined,
): Known<Ingredient, Message> {
  const find = (name: string): Ingredient | undefined => {
    const found = findIngredient({ text: name, folded: foldName(name), start: 0, end: 0 }, scope);
    return found.kind === 'found' && found.ingredient.flour !== undefined ? found.ingredient : undefined;
  };
  if (named !== undefined) {
    const found = find(named);
    if (found === undefined) return unknown(message('map.flour-not-found', { name: named }));
    return found.key === from?.key
      ? unknown(message('map.flour-same', { name: found.name }))
      : known(found, 'given');
  }
  if (second !== undefined) return known(second, 'given');
  const milling = from?.flour?.milling === 'wholemeal' ? 'white' : 'wholemeal';
  // What the bakery has comes before what a catalogue knows.
  for (const { name } of scope.names('ingredient')) {
    const found = find(name.text);
    if (found?.flour?.milling === milling && found.flour.grain === 'wheat') return known(found, 'given');
  }
  const usual = find(milling === 'white' ? 'bread flour' : 'wholemeal wheat');
  return usual === undefined ? unknown(message('map.no-flour')) : known(usual, 'common practice');
}

/** The formula with a part (0 to 1) of one flour replaced by as much of another, in every line that has it. */
export function withFlour(
  resolved: ResolvedFormula,
  solved: SolvedFormula,
  from: Ingredient,
  to: Ingredient,
  part: number,
): ResolvedFormula {
  const written = new Map(
    solved.sections.flatMap(({ lines }) => lines.map(({ id, fraction }) => [id, fraction])),
  );
  const statements = new Map(resolved.statements);
  const sections = resolved.input.sections.map((section): FormulaInput['sections'][number] => ({
    ...section,
    lines: section.lines.flatMap((line): LineInput[] => {
      if (line.key !== from.key || line.part) return [line];
      const { key, name } = to;
      if (part > 1 - 1e-9) return [{ ...line, key, name }];
      const { kept, moved } = halves(line.amount, part, written.get(line.id));
      if (moved === undefined) return [line];
      const added: LineInput = { ...line, id: `${line.id} ${key}`, key, name, amount: moved };
      const statement = statements.get(line.id);
      if (statement !== undefined) statements.set(added.id, statement);
      return [{ ...line, amount: kept }, added];
    }),
  }));
  const mixes = resolved.mixes.map((mix) => ({
    ...mix,
    loads: mix.loads.map((load) =>
      load.keys.includes(from.key) && !load.keys.includes(to.key)
        ? { ...load, keys: [...load.keys, to.key] }
        : load,
    ),
  }));
  // What trials saw of the formula's own flour says nothing of another.
  const { seenDevelopment: _, ...rest } = resolved;
  return {
    ...rest,
    input: { ...resolved.input, sections },
    ingredients: new Map(resolved.ingredients).set(to.key, to),
    statements,
    mixes,
  };
}

/** An amount parted in two; what is the balance of its section gives way by itself to what is added beside it. */
function halves(
  amount: AmountInput,
  part: number,
  fraction: number | undefined,
): { readonly kept: AmountInput; readonly moved?: AmountInput } {
  switch (amount.kind) {
    case 'fraction':
    case 'ofAllFlour':
      return {
        kept: { ...amount, fraction: amount.fraction * (1 - part) },
        moved: { ...amount, fraction: amount.fraction * part },
      };
    case 'grams':
      return {
        kept: { ...amount, grams: amount.grams * (1 - part) },
        moved: { ...amount, grams: amount.grams * part },
      };
    case 'balance':
      return fraction === undefined
        ? { kept: amount }
        : { kept: amount, moved: { kind: 'fraction', fraction: fraction * part } };
    default:
      return { kept: amount };
  }
}
