import { stageMessage } from '../analysis/mix-analysis.ts';
import { asFreshYeast } from '../calc/fermentation/yeast.ts';
import type { FormulaTotals, TotalsLine, TotalsPart, TotalsWater } from '../facts/totals.ts';
import { foldName } from '../text/names.ts';
import { type Message, message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';
import type { Change, Told } from './comparison.ts';
import type { WorkTimes } from './file-summary.ts';
import { labelChanges } from './label-changes.ts';
import { changeOfFigure, changeOfShare, changeOfWords } from './tell.ts';

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

export function computedChanges(
  before: FormulaTotals<Message>,
  after: FormulaTotals<Message>,
  say: Speaker,
): ComputedChanges {
  const grams = (name: Message, one: number | undefined, other: number | undefined): Change[] =>
    changeOfFigure(name, 'grams', one, other, say.mass, say);
  const share = (name: Message, one: number | undefined, other: number | undefined): Change[] =>
    shareChanges(name, one, other, say);
  return {
    label: labelChanges(before.label, after.label, say),
    makes: [
      ...changeOfFigure(
        message('comparison-name.pieces'),
        'pieces',
        before.pieces,
        after.pieces,
        (count) => say.number(count, 1),
        say,
      ),
      ...grams(message('comparison-name.piece-weight'), before.pieceGrams, after.pieceGrams),
      ...grams(message('comparison-name.dough-in-bowl'), before.doughGrams, after.doughGrams),
      ...grams(message('comparison-name.flour'), before.flourGrams, after.flourGrams),
      ...grams(message('comparison-name.baked'), before.bakedGrams, after.bakedGrams),
    ],
    dough: [
      ...share(message('comparison-name.hydration'), before.hydration, after.hydration),
      ...share(
        message('comparison-name.effective-hydration'),
        before.effectiveHydration,
        after.effectiveHydration,
      ),
      ...share(message('comparison-name.salt'), before.saltFraction, after.saltFraction),
      ...yeastChanges(before, after, say),
      ...share(
        message('comparison-name.prefermented-flour'),
        before.prefermentedFlour,
        after.prefermentedFlour,
      ),
    ],
    ingredients: ingredientChanges(before.overall, after.overall, say),
    mixing: mixingChanges(before.mixing, after.mixing, say),
    temperatures: temperatureChanges(before, after, say),
    cost: costChanges(before.cost, after.cost, say),
  };
}

/** The water of a part, where both sides have it. */
export function partHydration(
  before: TotalsPart | undefined,
  after: TotalsPart | undefined,
  say: Speaker,
): Change[] {
  if (before === undefined || after === undefined) return [];
  return shareChanges(message('comparison-name.hydration'), before.hydration, after.hydration, say);
}

/** How long the work takes, where a step, a programme or a preferment takes another time. */
export function workChanges(
  before: WorkTimes | undefined,
  after: WorkTimes | undefined,
  say: Speaker,
): Change[] {
  const time = (name: Message, one: number | undefined, other: number | undefined): Change[] =>
    changeOfFigure(name, 'minutes', one, other, (value) => say.duration(value * 60), say);
  return [
    ...time(message('comparison-name.first-work-to-ready'), before?.totalMinutes, after?.totalMinutes),
    ...time(message('comparison-name.mixing-to-ready'), before?.fromMixMinutes, after?.fromMixMinutes),
  ];
}

function shareChanges(
  name: Message,
  before: number | undefined,
  after: number | undefined,
  say: Speaker,
): Change[] {
  return changeOfFigure(name, 'fraction', before, after, (fraction) => say.percent(fraction), say);
}

/** Packets differ by more than this from the measure in which kinds of yeast are exchanged; common practice, no source. */
const sameStrength = 0.05;

/** Yeast by its strength, so that another kind in its measure is no change. */
function yeastChanges(before: FormulaTotals<Message>, after: FormulaTotals<Message>, say: Speaker): Change[] {
  const kinds = ({ overall }: FormulaTotals<Message>): string =>
    overall.flatMap(({ role, name }) => (role === 'yeast' ? [foldName(name)] : [])).join();
  const [old, now] = [yeastStrength(before), yeastStrength(after)];
  const isOnlyAnother = kinds(before) !== kinds(after) && old !== undefined && now !== undefined;
  if (isOnlyAnother && Math.abs(old - now) <= sameStrength * Math.max(old, now)) return [];
  return shareChanges(message('comparison-name.yeast'), old, now, say);
}

/** All yeast as so much fresh yeast of all flour, so that another kind in its measure is no change. */
function yeastStrength({ overall, hydration }: FormulaTotals<Message>): number | undefined {
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

function ingredientChanges(
  before: readonly TotalsLine[],
  after: readonly TotalsLine[],
  say: Speaker,
): Change[] {
  const old = new Map(before.map((line) => [foldName(line.name), line]));
  const now = new Map(after.map((line) => [foldName(line.name), line]));
  return [
    ...after.flatMap((line) => changeOfShare(line.name, old.get(foldName(line.name)), line, say)),
    ...before.flatMap((line) =>
      now.has(foldName(line.name)) ? [] : changeOfShare(line.name, line, undefined, say),
    ),
  ];
}

function mixingChanges(
  before: FormulaTotals<Message>['mixing'],
  after: FormulaTotals<Message>['mixing'],
  say: Speaker,
): Change[] {
  if (before === undefined && after === undefined) return [];
  const programme = (mixing: typeof before): number | undefined => mixing?.curve.at(-1)?.minutes;
  const stage = (mixing: typeof before): string | undefined =>
    mixing?.stage === undefined ? undefined : say.say(stageMessage(mixing.stage));
  const band = (ends: readonly [number, number] | undefined): string | undefined =>
    ends === undefined ? undefined : say.minutesBand(...ends);
  const minutes = (name: Message, one: number | undefined, other: number | undefined): Change[] =>
    changeOfFigure(name, 'minutes', one, other, say.minutes, say);
  const words = (name: Message, one: string | undefined, other: string | undefined): Change[] =>
    changeOfWords(name, one, other, say);
  return [
    ...minutes(message('comparison-name.programme'), programme(before), programme(after)),
    ...minutes(message('comparison-name.slow-minutes'), before?.slowMinutes, after?.slowMinutes),
    ...words(message('comparison-name.stage'), stage(before), stage(after)),
    ...words(
      message('comparison-name.developed'),
      band(before?.developedAfterMinutes),
      band(after?.developedAfterMinutes),
    ),
    ...words(
      message('comparison-name.let-down'),
      band(before?.letDownAfterMinutes),
      band(after?.letDownAfterMinutes),
    ),
    ...words(
      message('comparison-name.broken-down'),
      band(before?.breakdownAfterMinutes),
      band(after?.breakdownAfterMinutes),
    ),
  ];
}

function temperatureChanges(
  before: FormulaTotals<Message>,
  after: FormulaTotals<Message>,
  say: Speaker,
): Change[] {
  return [
    ...waterChanges(before.water, after.water, say),
    ...changeOfFigure(
      message('comparison-name.ice'),
      'grams',
      before.water?.iceGrams,
      after.water?.iceGrams,
      say.mass,
      say,
    ),
    ...changeOfFigure(
      message('comparison-name.dough-temperature'),
      'celsius',
      before.mixing?.endCelsius,
      after.mixing?.endCelsius,
      say.celsius,
      say,
    ),
  ];
}

/** The water to draw: its temperature, and why it is no other, or none, where that is so on one side alone. */
function waterChanges(
  before: TotalsWater | undefined,
  after: TotalsWater | undefined,
  say: Speaker,
): Change[] {
  const name = message('comparison-name.water');
  const [change] = changeOfFigure(name, 'celsius', before?.celsius, after?.celsius, say.celsius, say);
  if (before === undefined || after === undefined || before.reach === after.reach)
    return change === undefined ? [] : [change];
  const tell = (water: TotalsWater): Told => ({
    text: waterText(water, say),
    ...(water.celsius === undefined ? {} : { celsius: water.celsius }),
  });
  const by = change?.by;
  return [
    { name: say.say(name), before: tell(before), after: tell(after), ...(by === undefined ? {} : { by }) },
  ];
}

function waterText({ reach, celsius, iceGrams }: TotalsWater, say: Speaker): string {
  if (celsius === undefined) return say.say(message('comparison.water-any'));
  switch (reach) {
    case 'not warm enough':
      return say.say(message('comparison.water-warmest', { celsius }));
    case 'tap too warm':
      return say.say(
        message((iceGrams ?? 0) > 0 ? 'comparison.water-with-ice' : 'comparison.water-from-tap', { celsius }),
      );
    default:
      return say.celsius(celsius);
  }
}

function costChanges(
  before: FormulaTotals<Message>['cost'],
  after: FormulaTotals<Message>['cost'],
  say: Speaker,
): Change[] {
  const currency = after?.currency ?? before?.currency;
  if (currency === undefined) return [];
  if (before?.currency !== undefined && after?.currency !== undefined && before.currency !== after.currency)
    return changeOfWords(message('comparison-name.currency'), before.currency, after.currency, say);
  const amount = (name: Message, one: number | undefined, other: number | undefined): Change[] =>
    changeOfFigure(
      name,
      'amount',
      one,
      other,
      (value) => say.money(value, currency),
      say,
      // What is shown as less than a cent on one side lies no cent apart from what is shown as one.
      (from, to) => say.moneyApart(from, to, currency),
    );
  const isKnown = (cost: FormulaTotals<Message>['cost']): boolean =>
    cost?.batch !== undefined || cost?.atLeast !== undefined;
  const listed = (names: readonly string[] = []): string =>
    names.length === 0 ? say.say(message('comparison.none')) : names.toSorted().join(', ');
  return [
    ...amount(message('comparison-name.batch'), before?.batch, after?.batch),
    ...amount(message('comparison-name.batch-at-least'), before?.atLeast, after?.atLeast),
    ...amount(message('comparison-name.piece'), before?.piece, after?.piece),
    ...amount(message('comparison-name.kilogram-baked'), before?.bakedKilogram, after?.bakedKilogram),
    ...(before?.bakedKilogram === undefined && after?.bakedKilogram === undefined
      ? amount(message('comparison-name.kilogram-dough'), before?.doughKilogram, after?.doughKilogram)
      : []),
    // Where no cost is known any more, that is told, and not that nothing lacks a price.
    ...(isKnown(before) && !isKnown(after)
      ? []
      : changeOfWords(
          message('comparison-name.without-price'),
          listed(before?.missing),
          listed(after?.missing),
          say,
        )),
  ];
}
