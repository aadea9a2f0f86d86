import { money, moneyApart } from '../features/cost-words.ts';
import type { FormulaTotals, TotalsLine, TotalsPart } from '../features/totals.ts';
import { foldName } from '../text/names.ts';
import { degrees, mass, minutes, minutesBand, percent, trimmed } from '../text/plain-figures.ts';
import type { Change } from './comparison.ts';
import { changeOfFigure, changeOfShare } from './tell.ts';

/** What comes of a formula, before and after, by subject. */
export interface ComputedChanges {
  readonly makes: readonly Change[];
  readonly dough: readonly Change[];
  readonly ingredients: readonly Change[];
  readonly mixing: readonly Change[];
  readonly temperatures: readonly Change[];
  readonly cost: readonly Change[];
}

export function computedChanges(before: FormulaTotals, after: FormulaTotals): ComputedChanges {
  return {
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
      ...share('yeast', shareOfRole(before, 'yeast'), shareOfRole(after, 'yeast')),
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

/** Findings that are new and findings that are gone. One whose figures alone changed is neither. */
export function findingChanges(
  before: FormulaTotals['findings'],
  after: FormulaTotals['findings'],
): Change[] {
  const gone = without(before, after);
  const come = without(after, before);
  const told = ({ level, message, line }: FormulaTotals['findings'][number]) => ({
    text: `${level}: ${message}`,
    line: line - 1,
  });
  return [
    ...come.map((one): Change => ({ name: one.code, after: told(one) })),
    ...gone.map((one): Change => ({ name: one.code, before: told(one) })),
  ];
}

const share = (name: string, before: number | undefined, after: number | undefined): Change[] =>
  changeOfFigure(name, 'fraction', before, after, percent);

function shareOfRole({ overall, hydration }: FormulaTotals, role: TotalsLine['role']): number | undefined {
  const lines = overall.filter((line) => line.role === role);
  // Without yeast there is none, and that is known as soon as the formula is.
  if (lines.length === 0) return hydration === undefined ? undefined : 0;
  let sum = 0;
  for (const { fraction } of lines) {
    if (fraction === undefined) return undefined;
    sum += fraction;
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

/** The findings of `some` that `others` lack: the same message first, then another message of the same rule. */
function without(
  some: FormulaTotals['findings'],
  others: FormulaTotals['findings'],
): FormulaTotals['findings'] {
  const take = (counts: Map<string, number>, key: string): boolean => {
    const count = counts.get(key) ?? 0;
    if (count > 0) counts.set(key, count - 1);
    return count > 0;
  };
  const count = (keys: readonly string[]): Map<string, number> => {
    const counts = new Map<string, number>();
    for (const key of keys) counts.set(key, (counts.get(key) ?? 0) + 1);
    return counts;
  };
  const exact = ({ code, message }: FormulaTotals['findings'][number]): string => `${code} ${message}`;
  const messages = count(others.map(exact));
  const left = some.filter((one) => !take(messages, exact(one)));
  const back = count(some.map(exact));
  const codes = count(others.filter((one) => !take(back, exact(one))).map(({ code }) => code));
  return left.filter(({ code }) => !take(codes, code));
}
