import type { PlanAnalysis, PlannedFormula } from '../../analysis/plan-analysis.ts';
import type { BatchPlan, DoughPlan, PartPlan } from '../../calc/plan/plan.ts';
import { costOf, currencyOf, type PricedPortion } from '../../calc/product/cost.ts';
import { inMixer } from '../../facts/mixing-words.ts';
import { planTimes } from '../../facts/plan-times.ts';
import { weighedOf } from '../../facts/product.ts';
import { timeMessage } from '../../facts/time-words.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { lanesOf } from './plan-lanes.ts';
import type {
  PlanBatchView,
  PlanDoughView,
  PlanMoment,
  PlanPartView,
  PlanStore,
  PlanView,
} from './plan-view.ts';

/** The production run of a plan, ready to be shown; `firstLine` is where its block begins in the file. */
export function planView(uri: string, firstLine: number, plan: PlanAnalysis, speaker: Speaker): PlanView {
  const when = (minutes: number): string => speaker.say(timeMessage(minutes, plan.dated));
  const doughs = plan.day.doughs.map((dough, index) =>
    doughView(dough, plan.formulas[index]!, firstLine, when),
  );
  const parts = plan.day.parts.map((part) => partView(part, when));
  const { readyMinutes, firstWorkMinutes, firstMixMinutes, lateMinutes } = planTimes(plan);
  const { stores, cost, costAtLeast, costUnknown } = storesOf(plan.formulas);
  return {
    plan: plan.name,
    uri,
    line: firstLine + (plan.block.top?.headerLine ?? 0),
    ...(readyMinutes === undefined ? {} : { ready: when(readyMinutes) }),
    ...(firstWorkMinutes === undefined ? {} : { firstWork: when(firstWorkMinutes) }),
    ...(firstMixMinutes === undefined ? {} : { firstMix: when(firstMixMinutes) }),
    ...(lateMinutes === undefined ? {} : { lateMinutes }),
    ...(plan.limits.people === undefined ? {} : { people: plan.limits.people }),
    ...handsOf(plan, when),
    doughs,
    parts,
    timeline: timelineOf(plan, when, speaker),
    lanes: lanesOf(plan, speaker),
    stores,
    ...(cost === undefined ? {} : { cost }),
    ...(costAtLeast === undefined ? {} : { costAtLeast }),
    remarks: [
      ...remarksOf(plan, firstLine, speaker),
      ...(costUnknown === undefined ? [] : [costUnknown]),
    ].map(speaker.say),
    complete: [plan.problems, plan.unread, plan.slips].every(({ length }) => length === 0),
  };
}

/** How many work at once, where anybody is known to. */
function handsOf(
  { day, formulas }: PlanAnalysis,
  when: (minutes: number) => string,
): Pick<PlanView, 'hands'> {
  const { mostPeople: most, mostAtMinutes } = day.work;
  if (mostAtMinutes === undefined) return {};
  const isLeast = day.parts.length > 0 || formulas.some(({ untimed }) => untimed.length > 0);
  return { hands: { most, at: when(mostAtMinutes), isLeast } };
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

function timelineOf(plan: PlanAnalysis, when: (minutes: number) => string, speaker: Speaker): PlanMoment[] {
  const moments: (PlanMoment & { readonly minutes: number })[] = [];
  const add = (minutes: number, kind: PlanMoment['kind'], said: Message): void => {
    moments.push({ minutes, at: when(minutes), kind, words: speaker.say(said) });
  };
  for (const part of plan.day.parts) {
    const stands = part.neededMinutes - part.startMinutes;
    const made = { part: part.name, grams: part.grams, names: part.doughs };
    add(
      part.startMinutes,
      'part',
      stands > 0
        ? message('plan.make-stands', { ...made, seconds: stands * 60 })
        : message('plan.make', made),
    );
  }
  for (const { kind, startMinutes, endMinutes, toCelsius: celsius } of plan.day.work.ovenTurns) {
    const seconds = (endMinutes - startMinutes) * 60;
    if (celsius === undefined) add(startMinutes, 'turn', message('plan.heat', { seconds }));
    else
      add(
        startMinutes,
        'turn',
        message(kind === 'heat' ? 'plan.heat-to' : 'plan.change-to', { celsius, seconds }),
      );
  }
  for (const { dough, batches } of plan.day.doughs) {
    for (const [index, batch] of batches.entries()) {
      const batchOf = { name: dough.name, number: index + 1, count: batches.length };
      const name = batches.length > 1 ? speaker.say(message('plan.dough-batch', batchOf)) : dough.name;
      add(batch.startMinutes, 'mix', mixMessage(name, dough, batch));
      if (batch.ovenMinutes > 0) {
        const baked = { name, seconds: batch.ovenMinutes * 60 };
        add(
          batch.ovenStartMinutes,
          'oven',
          batch.ovenLoads > 1
            ? message('plan.bake-loads', { ...baked, count: batch.ovenLoads })
            : message('plan.bake', baked),
        );
        add(batch.ovenStartMinutes + batch.ovenMinutes, 'out', message('plan.out', { name }));
      }
      add(
        batch.endMinutes,
        'ready',
        batch.lateMinutes > 0.5
          ? message('plan.done-late', { name, seconds: Math.ceil(batch.lateMinutes) * 60 })
          : message('plan.done', { name }),
      );
    }
  }
  // What is done goes before what begins, and a bread leaves the oven before it is ready.
  const order = ['out', 'ready', 'turn', 'oven', 'mix', 'part'];
  return moments
    .sort(
      (one, other) =>
        Math.round(one.minutes) - Math.round(other.minutes) ||
        order.indexOf(one.kind) - order.indexOf(other.kind),
    )
    .map(({ minutes: _minutes, ...moment }) => moment);
}

function mixMessage(
  name: string,
  { mixer, mixMinutes }: DoughPlan['dough'],
  { pieces, doughGrams: grams }: BatchPlan,
): Message {
  const figures =
    pieces === undefined
      ? message('plan.size', { grams })
      : message('plan.size-pieces', { count: pieces, grams });
  const seconds = mixMinutes * 60;
  if (mixer === undefined)
    return seconds > 0
      ? message('plan.mix-long', { name, figures, seconds })
      : message('plan.mix', { name, figures });
  const place = inMixer(mixer);
  return seconds > 0
    ? message('plan.mix-in-long', { name, figures, place, seconds })
    : message('plan.mix-in', { name, figures, place });
}

/** Everything that all doughs weigh, joined by ingredient, the most first. */
function storesOf(
  formulas: readonly PlannedFormula[],
): Pick<PlanView, 'stores' | 'cost' | 'costAtLeast'> & { readonly costUnknown?: Message } {
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
    return { stores, costUnknown: message('plan.cost-not-known', { reason: currency.reason }) };
  if (sum.amount !== undefined) return { stores, cost: { amount: sum.amount, currency: currency.value } };
  return {
    stores,
    costAtLeast: { amount: sum.atLeast, currency: currency.value, missing: sum.missing },
    costUnknown: message('plan.cost-without', { names: sum.missing }),
  };
}

function remarksOf(plan: PlanAnalysis, firstLine: number, speaker: Speaker): Message[] {
  const remarks: Message[] = [];
  for (const { line, message: slip } of plan.slips)
    remarks.push(message('plan.line', { number: firstLine + line + 1, sentence: speaker.say(slip) }));
  for (const { line, name, reason } of [...plan.problems, ...plan.unread])
    remarks.push(message('plan.line-left-out', { number: firstLine + line + 1, name, reason }));
  for (const [index, planned] of plan.day.doughs.entries()) {
    remarks.push(...doughRemarks(planned));
    const { name } = planned.dough;
    for (const lack of plan.formulas[index]?.lacks ?? [])
      remarks.push(message(lack === 'mixing' ? 'plan.no-mixing' : 'plan.no-baking', { name }));
  }
  remarks.push(...workRemarks(plan));
  return remarks;
}

/** What doughs share, and what is not counted of what the plan asks to be counted. */
function workRemarks({ day, formulas, limits, dated }: PlanAnalysis): Message[] {
  const remarks: Message[] = [];
  const nameOf = new Map(
    day.doughs.flatMap(({ dough, batches }) => batches.map(({ id }) => [id, dough.name])),
  );
  for (const { startMinutes, jobs } of day.work.sharedLoads)
    remarks.push(
      message('plan.shared-load', {
        names: jobs.map((id) => nameOf.get(id) ?? id),
        when: timeMessage(startMinutes, dated),
      }),
    );
  const untimed = [
    ...new Set([...formulas.flatMap((one) => one.untimed), ...day.parts.map(({ name }) => name)]),
  ];
  if (limits.people !== undefined && untimed.length > 0)
    remarks.push(message('plan.untimed', { names: untimed }));
  const unheated = day.doughs
    .filter(({ dough }) => dough.bakeMinutes > 0 && dough.inCelsius === undefined)
    .map(({ dough }) => dough.name);
  if (limits.changeMinutes !== undefined && unheated.length > 0)
    remarks.push(message('plan.no-temperature', { names: unheated }));
  return remarks;
}

function doughRemarks({ dough, batches, remarks: told, lateMinutes, lateReason }: DoughPlan): Message[] {
  const { name, mixer: otherName = '' } = dough;
  const remarks: Message[] = [];
  const leastGrams = dough.bowl?.leastGrams;
  const grams = batches[0]?.doughGrams ?? 0;
  const late = { name, seconds: Math.ceil(lateMinutes) * 60 };
  if (lateMinutes > 0.5)
    remarks.push(
      lateReason === undefined
        ? message('plan.late', late)
        : message('plan.late-because', { ...late, reason: message(`late.${lateReason}`) }),
    );
  if (told.includes('below-least') && leastGrams !== undefined)
    remarks.push(message('plan.too-little', { name, grams, leastGrams, otherName }));
  if (told.includes('gap') && leastGrams !== undefined)
    remarks.push(message('plan.gap', { name, otherName, count: batches.length, grams, leastGrams }));
  if (told.includes('several-loads')) remarks.push(message('plan.several-loads', { name }));
  return remarks;
}
