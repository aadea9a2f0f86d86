import type { PlanAnalysis, PlannedFormula } from '../analysis/plan.ts';
import { costOf, currencyOf, type PricedPortion } from '../calc/cost.ts';
import type { BatchPlan, DoughPlan, PartPlan } from '../calc/plan.ts';
import { weighedOf } from '../features/product.ts';
import { timeWords } from '../text/dates.ts';
import { duration, mass } from '../text/figures.ts';
import { inMarks } from '../words/in-marks.ts';
import type {
  PlanBatchView,
  PlanDoughView,
  PlanMoment,
  PlanPartView,
  PlanStore,
  PlanView,
} from './plan-view.ts';

/** The production run of a plan, ready to be shown; `firstLine` is where its block begins in the file. */
export function planView(uri: string, firstLine: number, plan: PlanAnalysis): PlanView {
  const when = (minutes: number): string => timeWords(minutes, plan.dated);
  const doughs = plan.day.doughs.map((dough, index) =>
    doughView(dough, plan.formulas[index]!, firstLine, when),
  );
  const parts = plan.day.parts.map((part) => partView(part, when));
  const starts = plan.day.doughs.flatMap(({ batches }) => batches.map((batch) => batch.startMinutes));
  const firstMix = starts.length === 0 ? undefined : Math.min(...starts);
  const firstPart = plan.day.parts[0]?.startMinutes;
  const firstWork = firstMix === undefined ? undefined : Math.min(firstMix, firstPart ?? firstMix);
  const late = Math.max(0, ...plan.day.doughs.map((dough) => dough.lateMinutes));
  const { stores, cost, costAtLeast, costUnknown } = storesOf(plan.formulas);
  return {
    plan: plan.name,
    uri,
    line: firstLine + (plan.block.top?.headerLine ?? 0),
    ...(plan.readyMinutes === undefined ? {} : { ready: when(plan.readyMinutes) }),
    ...(firstWork === undefined ? {} : { firstWork: when(firstWork) }),
    ...(firstMix === undefined ? {} : { firstMix: when(firstMix) }),
    ...(late > 0.5 ? { lateMinutes: Math.ceil(late) } : {}),
    doughs,
    parts,
    timeline: timelineOf(plan, when),
    stores,
    ...(cost === undefined ? {} : { cost }),
    ...(costAtLeast === undefined ? {} : { costAtLeast }),
    remarks: [...remarksOf(plan, firstLine), ...(costUnknown === undefined ? [] : [costUnknown])],
    complete: [plan.problems, plan.unread, plan.slips].every(({ length }) => length === 0),
  };
}

function doughView(
  { dough, batches }: DoughPlan,
  formula: PlannedFormula,
  firstLine: number,
  when: (minutes: number) => string,
): PlanDoughView {
  const pieces = batches.every((batch) => batch.pieces !== undefined)
    ? batches.reduce((sum, batch) => sum + batch.pieces!, 0)
    : undefined;
  return {
    formula: dough.name,
    uri: formula.definition.uri,
    lines: formula.lines.map((line) => firstLine + line),
    doughGrams: batches.reduce((sum, batch) => sum + batch.doughGrams, 0),
    ...(pieces === undefined ? {} : { pieces }),
    ...(dough.mixer === undefined ? {} : { mixer: dough.mixer }),
    batches: batches.map((batch, index): PlanBatchView => {
      const { doughGrams, ovenLoads, lateMinutes, startMinutes, ovenStartMinutes, ovenMinutes } = batch;
      return {
        number: index + 1,
        of: batches.length,
        doughGrams,
        ...(batch.pieces === undefined ? {} : { pieces: batch.pieces }),
        mixStart: when(startMinutes),
        mixEnd: when(startMinutes + dough.mixMinutes),
        ...(ovenMinutes > 0
          ? { ovenStart: when(ovenStartMinutes), ovenEnd: when(ovenStartMinutes + ovenMinutes) }
          : {}),
        ovenLoads,
        ready: when(batch.endMinutes),
        ...(lateMinutes > 0.5 ? { lateMinutes: Math.ceil(lateMinutes) } : {}),
      };
    }),
  };
}

function partView(part: PartPlan, when: (minutes: number) => string): PlanPartView {
  return {
    name: part.name,
    grams: part.grams,
    start: when(part.startMinutes),
    needed: when(part.neededMinutes),
    ...(part.lastNeededMinutes - part.neededMinutes > 0.5
      ? { lastNeeded: when(part.lastNeededMinutes) }
      : {}),
    standsMinutes: part.neededMinutes - part.startMinutes,
    for: part.doughs,
  };
}

function timelineOf(plan: PlanAnalysis, when: (minutes: number) => string): PlanMoment[] {
  const moments: (PlanMoment & { readonly minutes: number })[] = [];
  const add = (minutes: number, kind: PlanMoment['kind'], words: string): void => {
    moments.push({ minutes, at: when(minutes), kind, words });
  };
  for (const part of plan.day.parts) {
    const stands = part.neededMinutes - part.startMinutes;
    const long = stands > 0 ? `, stands ${duration(stands * 60)}` : '';
    add(
      part.startMinutes,
      'part',
      `make ${part.name}, ${mass(part.grams)}${long}, for ${part.doughs.join(', ')}`,
    );
  }
  for (const { dough, batches } of plan.day.doughs) {
    for (const [index, batch] of batches.entries()) {
      const which = `${dough.name}${batches.length > 1 ? `, batch ${index + 1} of ${batches.length}` : ''}`;
      const mixer = dough.mixer === undefined ? '' : ` in ${dough.mixer}`;
      const length = dough.mixMinutes > 0 ? `, ${duration(dough.mixMinutes * 60)}` : '';
      add(batch.startMinutes, 'mix', `mix ${which}: ${batchSize(batch)}${mixer}${length}`);
      if (batch.ovenMinutes > 0) {
        const loads = batch.ovenLoads > 1 ? `, ${batch.ovenLoads} loads one behind another` : '';
        add(batch.ovenStartMinutes, 'oven', `bake ${which}, ${duration(batch.ovenMinutes * 60)}${loads}`);
        add(batch.ovenStartMinutes + batch.ovenMinutes, 'out', `${which} out of the oven`);
      }
      const late = batch.lateMinutes > 0.5 ? `, ${duration(Math.ceil(batch.lateMinutes) * 60)} late` : '';
      add(batch.endMinutes, 'ready', `${which} ready${late}`);
    }
  }
  // What is done goes before what begins, and a bread leaves the oven before it is ready.
  const order = ['out', 'ready', 'oven', 'mix', 'part'];
  return moments
    .sort(
      (one, other) =>
        Math.round(one.minutes) - Math.round(other.minutes) ||
        order.indexOf(one.kind) - order.indexOf(other.kind),
    )
    .map(({ minutes: _minutes, ...moment }) => moment);
}

function batchSize({ pieces, doughGrams }: BatchPlan): string {
  return pieces === undefined ? mass(doughGrams) : `${pieces} pieces, ${mass(doughGrams)}`;
}

/** Everything that all doughs weigh, joined by ingredient, the most first. */
function storesOf(
  formulas: readonly PlannedFormula[],
): Pick<PlanView, 'stores' | 'cost' | 'costAtLeast'> & { readonly costUnknown?: string } {
  const joined = new Map<string, PricedPortion & { grams: number }>();
  for (const { analysis } of formulas) {
    const weighed = weighedOf(analysis);
    if (weighed === undefined) continue;
    const outside = [...weighed.enclosed, ...weighed.beside].flatMap(({ items }) => items ?? []);
    for (const { name, grams, isWater, ingredient } of [...weighed.bowl, ...outside]) {
      if (grams === undefined || !(grams > 0)) continue;
      // An ingredient that two folders define otherwise is two.
      const key = ingredient === undefined ? name : `${ingredient.key} ${ingredient.definition?.uri ?? ''}`;
      const { price, pieceGrams, densityGramsPerMillilitre } = ingredient ?? {};
      joined.set(key, {
        name: ingredient?.name ?? name,
        grams: (joined.get(key)?.grams ?? 0) + grams,
        isWater,
        ...(price === undefined ? {} : { price }),
        ...(pieceGrams === undefined ? {} : { pieceGrams }),
        ...(densityGramsPerMillilitre === undefined ? {} : { densityGramsPerMillilitre }),
      });
    }
  }
  const portions = [...joined.values()].sort((one, other) => other.grams - one.grams);
  const currency = currencyOf(portions);
  const sum = costOf(portions);
  const stores = portions.map(({ name, grams }, index): PlanStore => {
    const amount = currency.known ? sum.lines[index]?.amount : undefined;
    return { name, grams, ...(amount === undefined ? {} : { cost: amount }) };
  });
  // Who writes no prices is not told that they are missing.
  if (!portions.some(({ price }) => price !== undefined)) return { stores };
  if (!currency.known)
    return { stores, costUnknown: `What the stores cost is not known: ${currency.reason}.` };
  if (sum.amount !== undefined) return { stores, cost: { amount: sum.amount, currency: currency.value } };
  return {
    stores,
    costAtLeast: { amount: sum.atLeast, currency: currency.value, missing: sum.missing },
    costUnknown: `The cost of the stores is without ${sum.missing.join(', ')}: no usable price.`,
  };
}

function remarksOf(plan: PlanAnalysis, firstLine: number): string[] {
  const remarks: string[] = [];
  for (const { line, message } of plan.slips)
    remarks.push(`Line ${firstLine + line + 1}: ${inMarks(message)}`);
  for (const { line, name, reason } of [...plan.problems, ...plan.unread])
    remarks.push(`Line ${firstLine + line + 1}, ${name}, is not in the plan: ${inMarks(reason)}.`);
  for (const [index, { dough, batches, remarks: told, lateMinutes }] of plan.day.doughs.entries()) {
    const least = dough.bowl?.leastGrams;
    const each = batches[0]?.doughGrams ?? 0;
    if (lateMinutes > 0.5)
      remarks.push(`${dough.name} cannot be ready in time: ${duration(Math.ceil(lateMinutes) * 60)} late.`);
    if (told.includes('below-least') && least !== undefined)
      remarks.push(`${dough.name}: ${mass(each)} is less than the ${mass(least)} that ${dough.mixer} wants.`);
    if (told.includes('gap') && least !== undefined)
      remarks.push(
        `${dough.name}: one batch is too much for ${dough.mixer} and ${batches.length} are too little, ${mass(each)} each where it wants ${mass(least)}.`,
      );
    if (told.includes('several-loads'))
      remarks.push(
        `${dough.name}: a batch fills the oven more than once, so some of it waits while the first load bakes.`,
      );
    for (const lack of plan.formulas[index]?.lacks ?? []) {
      remarks.push(
        lack === 'mixing'
          ? `${dough.name} has no mixing programme that can be run: no time is planned for it.`
          : `${dough.name} has no step that bakes: no oven is planned for it.`,
      );
    }
  }
  return remarks;
}
