import { type Analysis, solutionOf } from '../analysis/analysis.ts';
import type { SolvedLine, SolvedSection } from '../calc/formula/formula-result.ts';
import { allergenOf, isGlutenCereal, type LabelRegime } from '../calc/product/allergens.ts';
import {
  allergenLists,
  breadOrRoll,
  ingredientList,
  type LabelItem,
  meetsSolids,
} from '../calc/product/label.ts';
import { type FoodPortion, type NutrientRow, nutritionTable, waterOf } from '../calc/product/nutrition.ts';
import { tonguesOfName } from '../catalogue/catalogue.ts';
import { namesAbroad } from '../catalogue/names-abroad.ts';
import { elementAt, firstOf } from '../text/element.ts';
import { foldName } from '../text/names.ts';
import { type Message, message } from '../words/message.ts';
import { type Product, type ProductItem, productOf, type Weighed, weighedOf } from './product.ts';
import type { TotalsLabel, TotalsNutrient, TotalsNutrientAmount } from './totals-product.ts';

/** The draft of a label, in the manner the bakery names unless another is asked for; `undefined` where nothing is weighed yet. */
export function labelTotals(
  analysis: Analysis,
  regime: LabelRegime = analysis.resolved.bakery.label ?? 'EU',
): TotalsLabel<Message> | undefined {
  const { solved, resolved } = analysis;
  const weighed = weighedOf(analysis);
  if (solved === undefined || weighed === undefined) return undefined;
  if (weighed.bowl.every((item) => item.grams === undefined)) return undefined;
  const product = productOf(analysis);
  const evaporated = product.known ? product.value.evaporatedGrams : undefined;
  const items = labelItems(analysis, weighed, regime === 'EU' ? evaporated : undefined);
  const label: TotalsLabel<Message> = {
    regime,
    nutrition: [],
    ingredients: ingredientList(items, regime),
    // An allergen is one whatever the weight of what it is in, known or not.
    allergens: allergenLists([...items, ...unweighedItems(analysis, weighed)]),
    notes: [],
  };
  if (resolved.bakery.label === undefined && !resolved.bakery.bothLabels)
    label.notes.push(message('label.no-regime'));
  const unweighed = unweighedOf(weighed);
  if (unweighed.length > 0) label.notes.push(message('label.unweighed', { names: unweighed }));
  if (regime === 'EU' && evaporated === undefined) label.notes.push(message('label.water-as-weighed'));
  if (weighed.beside.some(({ section }) => section.kind === 'bath')) label.notes.push(message('label.bath'));
  if (!product.known) return { ...label, nutritionUnknown: product.reason };
  return withNutrition(label, product.value, solved.pieces);
}

function withNutrition(
  label: TotalsLabel<Message>,
  product: Product,
  pieces: number | undefined,
): TotalsLabel<Message> {
  const { regime } = label;
  const portions = product.items.map(({ name, grams, composition, ingredient }): FoodPortion => {
    const kilojoules = ingredient?.kilojoulesPer100Grams;
    const stated = kilojoules === undefined ? {} : { kilojoulesPerGram: kilojoules / 100 };
    return { name, grams: grams ?? 0, composition, ...stated };
  });
  const { bakedGrams, evaporatedGrams } = product;
  const water = waterOf(portions);
  if (evaporatedGrams > water.high + 1e-6 || !(bakedGrams > 0)) {
    return { ...label, nutritionUnknown: message('product.bake-loss-too-much') };
  }
  const pieceGrams = pieces !== undefined && pieces > 0 ? bakedGrams / pieces : undefined;
  const per100 = nutritionTable(portions, bakedGrams, 100, regime);
  const perPiece =
    pieceGrams === undefined ? undefined : nutritionTable(portions, bakedGrams, pieceGrams, regime);
  const done: TotalsLabel<Message> = {
    ...label,
    bakedGrams,
    nutrition: per100.map(
      (row, index): TotalsNutrient => ({
        nutrient: row.nutrient,
        per100Grams: amountOf(row),
        ...(perPiece === undefined ? {} : { perPiece: amountOf(elementAt(perPiece, index)) }),
        lacking: row.lacking,
      }),
    ),
    notes: [...label.notes, ...lentNotes(product), ...notesOf(regime)],
  };
  if (pieceGrams !== undefined) {
    done.bakedPieceGrams = pieceGrams;
    done.kind = breadOrRoll(pieceGrams);
  }
  if (water.lacking.length === 0) {
    done.solidsFraction = 1 - (water.low - evaporatedGrams) / bakedGrams;
    done.meetsSolids = meetsSolids(done.solidsFraction);
  } else done.notes.push(message('label.solids-not-known', { names: water.lacking }));
  return done;
}

/** Whose figures stand for those of a flour that its own section does not tell. */
function lentNotes({ items }: Product): Message[] {
  const lent = new Map(items.map(({ name, ingredient }) => [name, ingredient?.lentBy] as const));
  return [...lent].flatMap(([name, lender]) =>
    lender === undefined ? [] : [message('label.lent', { name, otherName: lender })],
  );
}

function notesOf(regime: LabelRegime): Message[] {
  const first = regime === 'EU' ? message('label.protein') : message('label.to-be-added');
  return [first, message('label.fermented')];
}

function amountOf({ low, high, lacking, figure }: NutrientRow): TotalsNutrientAmount {
  return {
    ...(lacking.length === 0 ? { amount: low } : { atLeast: low, atMost: high }),
    ...(figure === undefined ? {} : { figure }),
  };
}

function unweighedOf(weighed: Weighed): string[] {
  const bowl = weighed.bowl.filter((item) => item.grams === undefined).map((item) => item.name);
  const beside = [...weighed.enclosed, ...weighed.beside]
    .filter(({ items }) => items === undefined)
    .map(({ section }) => section.name);
  return [...new Set([...bowl, ...beside])];
}

/** What is in the product with a weight that is not known: named in no list, but with its allergens. */
function unweighedItems(analysis: Analysis, weighed: Weighed): LabelItem[] {
  const bowl = weighed.bowl.filter((item) => item.grams === undefined && !item.isWater);
  const beside = [...weighed.enclosed, ...weighed.beside].filter(
    ({ section, items }) => items === undefined && section.kind !== 'bath',
  );
  const lines = beside.flatMap(({ section }) => linesWithin(analysis, section, new Set()));
  return [
    ...bowl.map((item) => labelItem(item, 0)),
    ...lines.map(({ key, name }) => {
      const ingredient = analysis.resolved.ingredients.get(key);
      return labelItem({ name, ...(ingredient === undefined ? {} : { ingredient }) }, 0);
    }),
  ];
}

/** The ingredient lines of a section and of the parts in it. */
function linesWithin(
  analysis: Analysis,
  section: SolvedSection,
  above: ReadonlySet<string>,
): readonly SolvedLine[] {
  const inside = new Set(above).add(section.id);
  return section.lines.flatMap((line) => {
    if (!line.part) return line.role === 'water' ? [] : [line];
    const part = solutionOf(analysis).sections.find((one) => one.id === line.key);
    return part === undefined || inside.has(part.id) ? [] : linesWithin(analysis, part, inside);
  });
}

/**
 * The ingredients as they are listed: preferments and soakers dissolved, fillings and toppings as compounds. Water and ice
 * are one; in the EU water counts by what is left of it after baking (Annex VII, part A: from memory).
 */
function labelItems(analysis: Analysis, weighed: Weighed, evaporated: number | undefined): LabelItem[] {
  const { doughGrams, yieldDoughGrams, enclosedGrams } = solutionOf(analysis);
  const divided = doughGrams === undefined ? 0 : doughGrams + (enclosedGrams ?? 0);
  const share = yieldDoughGrams !== undefined && divided > 0 ? yieldDoughGrams / divided : 1;
  const byName = new Map<string, LabelItem>();
  const takeUp = (item: ProductItem, grams: number): void => {
    byName.set(item.name, labelItem(item, (byName.get(item.name)?.grams ?? 0) + grams));
  };
  let waterGrams = 0;
  for (const item of [...weighed.bowl, ...weighed.enclosed.flatMap(({ items }) => items ?? [])]) {
    const grams = (item.grams ?? 0) * share;
    if (item.isWater) waterGrams += grams;
    // What is enclosed in the dough is of the dough: butter of both makes one butter.
    else if (item.grams !== undefined) takeUp(item, grams);
  }
  const compounds: LabelItem[] = [];
  for (const { section, items: inside } of weighed.beside) {
    if (section.kind === 'bath' || inside === undefined) continue;
    const parts = inside.map((item) => labelItem(item, item.grams ?? 0));
    const grams = parts.reduce((sum, part) => sum + part.grams, 0);
    // A topping of one ingredient is that ingredient, wherever else it is.
    if (inside.length === 1) takeUp(firstOf(inside), grams);
    else compounds.push({ name: section.name, grams, allergens: [], parts });
  }
  const items = [...byName.values()];
  if (waterGrams > 0) {
    const left = Math.max(0, waterGrams - (evaporated ?? 0));
    if (left > 0) items.push({ name: waterName(weighed), grams: left, allergens: [] });
  }
  items.push(...compounds);
  return items;
}

/** What water is called in the language that the file has for it; ice and warm water are water too. */
function waterName({ bowl, enclosed }: Weighed): string {
  const all = [...bowl, ...enclosed.flatMap(({ items }) => items ?? [])].filter(({ isWater }) => isWater);
  for (const { name } of all) {
    const [tongue] = tonguesOfName(foldName(name));
    const own = tongue === undefined ? undefined : namesAbroad.water?.[tongue]?.[0];
    if (own !== undefined) return own;
  }
  return 'water';
}

function labelItem({ name, ingredient }: Pick<ProductItem, 'name' | 'ingredient'>, grams: number): LabelItem {
  const said = ingredient?.allergens ?? [];
  const grain = ingredient?.flour?.grain;
  // A flour like another one, but of another grain, is what its own grain is as well.
  const allergens = grain === undefined || isNamed(grain, said) ? said : [...said, grain];
  return {
    name,
    grams,
    allergens,
    ...(ingredient === undefined || ingredient.allergensUnsaid ? { allergensUnsaid: true } : {}),
  };
}

/** Whether a grain needs no naming: none of the cereals containing gluten, or said already, be it as another kind of wheat. */
function isNamed(grain: string, said: readonly string[]): boolean {
  const own = allergenOf(grain);
  if (own === undefined || !isGlutenCereal(grain)) return true;
  return said.some((word) => word === grain || (own.us !== undefined && allergenOf(word)?.us === own.us));
}
