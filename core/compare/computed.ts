import { asFreshYeast } from '../calc/yeast.ts';
import { money, moneyApart } from '../features/cost-words.ts';
import type { FormulaTotals, TotalsLine, TotalsPart } from '../features/totals.ts';
import { foldName } from '../text/names.ts';
import { degrees, duration, mass, minutes, minutesBand, percent, trimmed } from '../text/plain-figures.ts';
import type { Change } from './comparison.ts';
import { labelChanges } from './label.ts';
import type { WorkTimes } from './portrait.ts';
import { changeOfFigure, changeOfShare } from './tell.ts';

/** What comes of a formula, before and after, by subject. */
export interface ComputedChanges {
  readonly label: readonly Change[];
  readonly makes: readonly Change[];
  readonly dough: readonly Change[];
  readonly ingredients: readonly Change[];
  readonly mixing: readonly Change[];
  readonly temperatures: readonly Change[];
  readonly cost: readonly Change[];
}

export function computedChanges(before: FormulaTotals, after: FormulaTotals): ComputedChanges {
  return {
    label: labelChanges(before.label, after.label),
    makes: [
      ...changeOfFigure('pieces', 'pieces', before.pieces, after.pieces, (count) => trimmed(count, 1)),
      ...changeOfFigure('weight of a piece', 'grams', before.pieceGrams, after.pieceGrams, mass),
      ...changeOfFigure('dough in the bowl', 'grams', before.doughGrams, after.doughGrams, mass),
      ...changeOfFigure('flour', 'grams', before.flourGrams, after.flourGrams, mass),
      ...changeOfFigure('baked', 'grams', before.bakedGrams, after.bakedGrams, mass),
    ],
    dough: [
      ...share('hydration', before.hydration, after.hydration),
      ...share('effective hydration', before.effectiveHydration, after.effectiveHydration),
      ...share('salt', before.saltFraction, after.saltFraction),
      ...yeastChanges(before, after),
      ...share('prefermented flour', before.prefermentedFlour, after.prefermentedFlour),
    ],
    ingredients: ingredientChanges(before.overall, after.overall),
    mixing: mixingChanges(before.mixing, after.mixing),
    temperatures: temperatureChanges(before, after),
    cost: costChanges(before.cost, after.cost),
  };
}

/** The water of a part, where both sides have it. */
export function partHydration(before: TotalsPart | undefined, after: TotalsPart | undefined): Change[] {
  if (before === undefined || after === undefined) return [];
  return share('hydration', before.hydration, after.hydration);
}

/** How long the work takes, where a step, a programme or a preferment takes another time. */
export function workChanges(before: WorkTimes | undefined, after: WorkTimes | undefined): Change[] {
  const time = (name: string, one: number | undefined, other: number | undefined): Change[] =>
    changeOfFigure(name, 'minutes', one, other, (value) => duration(value * 60));
  return [
    ...time('from first work to ready', before?.totalMinutes, after?.totalMinutes),
    ...time('from mixing to ready', before?.fromMixMinutes, after?.fromMixMinutes),
  ];
}

const share = (name: string, before: number | undefined, after: number | undefined): Change[] =>
  changeOfFigure(name, 'fraction', before, after, percent);

/** Packets differ by more than this from the measure in which kinds of yeast are exchanged; common practice, no source. */
const sameStrength = 0.05;

/** Yeast by its strength, so that another kind in its measure is no change. */
function yeastChanges(before: FormulaTotals, after: FormulaTotals): Change[] {
  const kinds = ({ overall }: FormulaTotals): string =>
    overall.flatMap(({ role, name }) => (role === 'yeast' ? [foldName(name)] : [])).join();
  const [old, now] = [yeastStrength(before), yeastStrength(after)];
  const isOnlyAnother = kinds(before) !== kinds(after) && old !== undefined && now !== undefined;
  if (isOnlyAnother && Math.abs(old - now) <= sameStrength * Math.max(old, now)) return [];
  return share('yeast, as fresh yeast', old, now);
}

/** All yeast as so much fresh yeast of all flour, so that another kind in its measure is no change. */
function yeastStrength({ overall, hydration }: FormulaTotals): number | undefined {
  const lines = overall.filter(({ role }) => role === 'yeast');
  // Without yeast there is none, and that is known as soon as the formula is.
  if (lines.length === 0) return hydration === undefined ? undefined : 0;
  let sum = 0;
  for (const { name, fraction } of lines) {
    if (fraction === undefined) return undefined;
    sum += fraction * asFreshYeast(name, undefined);
  }
  return sum;
}

function ingredientChanges(before: readonly TotalsLine[], after: readonly TotalsLine[]): Change[] {
  const old = new Map(before.map((line) => [foldName(line.name), line]));
  const now = new Map(after.map((line) => [foldName(line.name), line]));
  return [
    ...after.flatMap((line) => changeOfShare(line.name, old.get(foldName(line.name)), line)),
    ...before.flatMap((line) =>
      now.has(foldName(line.name)) ? [] : changeOfShare(line.name, line, undefined),
    ),
  ];
}

function mixingChanges(before: FormulaTotals['mixing'], after: FormulaTotals['mixing']): Change[] {
  if (before === undefined && after === undefined) return [];
  const programme = (mixing: typeof before): number | undefined => mixing?.curve.at(-1)?.minutes;
  return [
    ...changeOfFigure('programme', 'minutes', programme(before), programme(after), minutes),
    ...changeOfFigure('slow minutes', 'minutes', before?.slowMinutes, after?.slowMinutes, minutes),
    ...words('state at the end', before?.stage, after?.stage),
    ...words('developed after', band(before?.developedAfterMinutes), band(after?.developedAfterMinutes)),
    ...words('let-down after', band(before?.letDownAfterMinutes), band(after?.letDownAfterMinutes)),
    ...words('broken down after', band(before?.breakdownAfterMinutes), band(after?.breakdownAfterMinutes)),
  ];
}

function band(ends: readonly [number, number] | undefined): string | undefined {
  return ends === undefined ? undefined : minutesBand(...ends);
}

function words(name: string, before: string | undefined, after: string | undefined): Change[] {
  if (before === after) return [];
  return [{ name, before: { text: before ?? 'not known' }, after: { text: after ?? 'not known' } }];
}

function temperatureChanges(before: FormulaTotals, after: FormulaTotals): Change[] {
  const celsius = (name: string, one: number | undefined, other: number | undefined): Change[] =>
    changeOfFigure(name, 'celsius', one, other, degrees);
  return [
    ...celsius('water', before.water?.celsius, after.water?.celsius),
    ...changeOfFigure('ice', 'grams', before.water?.iceGrams, after.water?.iceGrams, mass),
    ...celsius('end of mixing', before.mixing?.endCelsius, after.mixing?.endCelsius),
  ];
}

function costChanges(before: FormulaTotals['cost'], after: FormulaTotals['cost']): Change[] {
  const currency = after?.currency ?? before?.currency;
  if (currency === undefined) return [];
  if (before?.currency !== undefined && after?.currency !== undefined && before.currency !== after.currency)
    return words('currency', before.currency, after.currency);
  const amount = (name: string, one: number | undefined, other: number | undefined): Change[] =>
    changeOfFigure(
      name,
      'amount',
      one,
      other,
      (value) => money(value, currency),
      (from, to) => moneyApart(from, to, currency),
    );
  return [
    ...amount('a batch', before?.batch, after?.batch),
    ...amount('a batch, at least', before?.atLeast, after?.atLeast),
    ...amount('a piece', before?.piece, after?.piece),
    ...amount('per kg baked', before?.bakedKilogram, after?.bakedKilogram),
    ...(before?.bakedKilogram === undefined && after?.bakedKilogram === undefined
      ? amount('per kg of dough', before?.doughKilogram, after?.doughKilogram)
      : []),
    ...words('without a price', listed(before?.missing), listed(after?.missing)),
  ];
}

const listed = (names: readonly string[] | undefined): string => names?.toSorted().join(', ') || 'none';
