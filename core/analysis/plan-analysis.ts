import { doughOf } from '../calc/formula/formula-input.ts';
import { type ScaleTarget, scaleTo } from '../calc/formula/scaling.ts';
import { type DayPlan, type PlannedDough, planDay } from '../calc/plan/plan.ts';
import { type DoughOrder, doughBatches, mostBatches, type OvenCapacity } from '../calc/plan/plan-batches.ts';
import type { DayLimits } from '../calc/plan/plan-taken.ts';
import { bakeryOf } from '../model/bakery.ts';
import type { FormulaModel } from '../model/formula-model.ts';
import { findMixer } from '../model/found-mixer.ts';
import { propertiesOf, type SaidProperties, saidValue } from '../model/properties.ts';
import type { Definition, Scope } from '../model/scope.ts';
import type { Block, PlannedStatement } from '../syntax/tree.ts';
import { daysOf } from '../text/dates.ts';
import { elementAt, firstOf } from '../text/element.ts';
import { type Message, message } from '../words/message.ts';
import { analyseBlock } from './analyse.ts';
import type { Analysis } from './analysis.ts';
import { bakeOf, type DoughWork, workOf } from './dough-work.ts';
import { plannedParts } from './planned-parts.ts';
import { scaledBy } from './scale-analysis.ts';

/** A plan worked out: what is made when, in minutes since midnight of 1 January 1970, local time. */
export interface PlanAnalysis {
  readonly name: string;
  readonly block: Block;
  /** Absent where the plan does not say when all must be ready; its lines may. */
  readonly readyMinutes?: number;
  readonly beginMinutes?: number;
  /** What the plan and its bakery state of people and oven. */
  readonly limits: DayLimits;
  /** False when `ready` has no date: then the days are counted from that of `ready`. */
  readonly dated: boolean;
  readonly formulas: readonly PlannedFormula[];
  readonly day: DayPlan;
  readonly problems: readonly PlanProblem[];
  /** Lines that are left out because of the name or the amount they have: findings of their own tell of them. */
  readonly unread: readonly PlanProblem[];
  /** What is wrong with the wording of lines: they count as far as they read. */
  readonly slips: readonly { readonly line: number; readonly message: Message }[];
}

/** A formula of the plan at the size of all its lines together. */
export interface PlannedFormula {
  readonly definition: Definition;
  readonly analysis: Analysis;
  /** Lines of the plan that ask for it, counted in the block. */
  readonly lines: readonly number[];
  readonly dough: PlannedDough;
  /** What its file does not say and a day needs. */
  readonly lacks: readonly ('mixing' | 'baking')[];
  /** Work of hands that no time is written for. */
  readonly untimed: readonly string[];
}

/** A line that cannot be planned, and why; counted in the block. */
export interface PlanProblem {
  readonly line: number;
  readonly name: string;
  readonly reason: Message;
}

const reasons = {
  ready: message('plan.no-ready', { example: 'ready 2026-12-05 06:30' }),
  weights: message('plan.no-weights'),
  pieces: message('plan.no-piece-weight', { example: 'yield 20 pieces of 880 g' }),
  baked: message('plan.no-bake-loss', { example: 'bake loss 12%' }),
  many: message('plan.too-many', { count: mostBatches }),
  none: message('plan.none'),
  unwritten: message('plan.no-formula'),
  several: message('plan.several-formulas'),
  amount: message('plan.no-amount', { choices: ['40 pieces', '12 kg'] }),
} as const;

/** Works a plan out; `undefined` for a block of another kind. Formulas nobody has written are left to their own finding. */
export function planOf(block: Block, scope: Scope): PlanAnalysis | undefined {
  const { top } = block;
  if (top?.kind !== 'plan' || top.header.name === undefined) return undefined;
  const said = propertiesOf(block, top);
  const ready = saidValue(said, 'ready', 'ready');
  const begin = saidValue(said, 'begin', 'ready');
  const day = ready?.date === undefined ? undefined : daysOf(ready.date);
  const at = (clock: number): number => (day ?? 0) * 1440 + clock;
  const readyMinutes = ready === undefined ? undefined : at(ready.minutes);
  // Work that begins at a later clock than that of `ready` begins the evening before.
  const beginMinutes =
    begin === undefined
      ? undefined
      : begin.date !== undefined
        ? (daysOf(begin.date) ?? 0) * 1440 + begin.minutes
        : at(begin.minutes) - (ready !== undefined && begin.minutes >= ready.minutes ? 1440 : 0);

  const problems: PlanProblem[] = [];
  const unread: PlanProblem[] = [];
  const asked = new Map<Block, { definition: Definition; lines: AskedLine[] }>();
  const slips: { line: number; message: Message }[] = [];
  for (let line = top.headerLine + 1; line < top.endLine; line++) {
    const { statement: first, otherwise, problems: wrong } = elementAt(block.lines, line);
    // A line of two readings is the other one where the whole of its words is the name of a formula.
    const isOther = wrong.some(
      ({ unlessKnown }) => unlessKnown !== undefined && scope.find('formula', unlessKnown).length > 0,
    );
    if (wrong.length > 0 && !isOther) slips.push({ line, message: firstOf(wrong).message });
    const statement = isOther ? (otherwise ?? first) : first;
    if (statement.kind !== 'planned') continue;
    const name = statement.name.text;
    const level = scope.find('formula', statement.name.folded)[0];
    if (level?.length !== 1) {
      unread.push({ line, name, reason: level === undefined ? reasons.unwritten : reasons.several });
      continue;
    }
    if (targetOf(statement) === undefined) {
      unread.push({ line, name, reason: reasons.amount });
      continue;
    }
    const wanted = statement.readyMinutes === undefined ? readyMinutes : at(statement.readyMinutes);
    if (wanted === undefined) {
      problems.push({ line, name, reason: reasons.ready });
      continue;
    }
    const definition = firstOf(level);
    const before = asked.get(definition.block);
    const one = { line, statement, readyMinutes: wanted };
    if (before === undefined) asked.set(definition.block, { definition, lines: [one] });
    else before.lines.push(one);
  }

  const limits = limitsOf(said, scope);
  let batches = 0;
  const formulas = [...asked.values()].flatMap(({ definition, lines }): PlannedFormula[] => {
    const planned = plannedFormula(definition, lines, scope, problems);
    if (planned === undefined) return [];
    const parted = doughBatches(planned.dough);
    const count = parted.tooMany ?? parted.batches.length;
    if (batches + count <= mostBatches) {
      batches += count;
      return [planned];
    }
    for (const line of planned.lines) problems.push({ line, name: planned.dough.name, reason: reasons.many });
    return [];
  });
  return {
    name: top.header.name.text,
    block,
    dated: day !== undefined,
    formulas,
    day: planDay(
      formulas.map((one) => one.dough),
      beginMinutes,
      limits,
    ),
    limits,
    problems,
    unread: unread.filter(({ line }) => !slips.some((slip) => slip.line === line)),
    slips,
    ...(readyMinutes === undefined ? {} : { readyMinutes }),
    ...(beginMinutes === undefined ? {} : { beginMinutes }),
  };
}

/** Less than one pair of hands, or half of one, is no number of people: it is told where it stands, and not counted. */
function limitsOf(said: SaidProperties, scope: Scope): DayLimits {
  const people = saidValue(said, 'people', 'count')?.count;
  const { ovenHeatMinutes, ovenChangeMinutes, sharesLoads } = bakeryOf(scope);
  return {
    ...(people === undefined || people < 1 ? {} : { people: Math.floor(people) }),
    ...(ovenHeatMinutes === undefined ? {} : { heatMinutes: ovenHeatMinutes }),
    ...(ovenChangeMinutes === undefined ? {} : { changeMinutes: ovenChangeMinutes }),
    ...(sharesLoads === undefined ? {} : { sharesLoads }),
  };
}

interface AskedLine {
  readonly line: number;
  readonly statement: PlannedStatement;
  readonly readyMinutes: number;
}

function plannedFormula(
  definition: Definition,
  lines: readonly AskedLine[],
  planScope: Scope,
  problems: PlanProblem[],
): PlannedFormula | undefined {
  const scope = planScope.from(definition.uri);
  const written = analyseBlock(definition.block, scope);
  if (written === undefined) return undefined;
  const { model } = written.resolved;
  const { solved } = written;
  const doughGrams = solved?.doughGrams;
  if (solved === undefined || doughGrams === undefined || !(doughGrams > 0)) {
    problems.push({ line: firstOf(lines).line, name: model.name.text, reason: reasons.weights });
    return undefined;
  }
  const orders: DoughOrder[] = [];
  const taken: number[] = [];
  for (const { line, statement, readyMinutes } of lines) {
    const target = targetOf(statement);
    if (target === undefined) continue;
    const scaled = scaleTo(solved, target);
    if (!scaled.ok) {
      const isNone = target.kind === 'pieces' ? target.count === 0 : target.grams === 0;
      const reason = isNone
        ? reasons.none
        : target.kind === 'pieces'
          ? reasons.pieces
          : target.kind === 'baked'
            ? reasons.baked
            : reasons.weights;
      problems.push({ line, name: model.name.text, reason });
      continue;
    }
    taken.push(line);
    const pieces = solved.pieces === undefined ? undefined : solved.pieces * scaled.factor;
    const whole = pieces === undefined ? undefined : Math.round(pieces);
    orders.push({
      readyMinutes,
      doughGrams: scaled.doughGrams,
      ...(whole !== undefined && Math.abs(whole - pieces!) < 1e-6 ? { pieces: whole } : {}),
    });
  }
  if (orders.length === 0) return undefined;
  const total = orders.reduce((sum, order) => sum + order.doughGrams, 0);
  const analysis = scaledBy(written, total / doughGrams);
  const times = timesOf(model, written);
  const mixer = mixerOf(written, planScope);
  const oven = ovenOf(model, planScope);
  return {
    definition,
    analysis,
    lines: taken,
    lacks: times.lacks,
    untimed: times.untimed,
    dough: {
      key: model.name.folded,
      name: model.name.text,
      orders,
      dividedPerGram: (solved.yieldDoughGrams ?? doughGrams) / doughGrams,
      mixMinutes: times.mixMinutes,
      betweenMinutes: times.betweenMinutes,
      bakeMinutes: times.bakeMinutes,
      afterMinutes: times.afterMinutes,
      ...(times.hands.length === 0 ? {} : { hands: times.hands }),
      ...times.bake,
      parts: plannedParts(analysis, scope),
      ...(mixer === undefined ? {} : { mixer: mixer.name, bowl: mixer.bowl }),
      ...(oven === undefined ? {} : { oven }),
    },
  };
}

function targetOf({ amount }: PlannedStatement): ScaleTarget | undefined {
  if (amount.kind === 'count') return { kind: 'pieces', count: amount.count };
  if (amount.kind !== 'mass') return undefined;
  return { kind: amount.baked ? 'baked' : 'dough', grams: amount.grams };
}

function timesOf(
  model: FormulaModel,
  analysis: Analysis,
): Pick<PlannedDough, 'mixMinutes' | 'betweenMinutes' | 'bakeMinutes' | 'afterMinutes'> &
  Pick<PlannedFormula, 'lacks'> &
  DoughWork & { readonly bake: ReturnType<typeof bakeOf> } {
  const lacks: ('mixing' | 'baking')[] = [];
  const { doughMix } = analysis;
  if (!doughMix.known) lacks.push('mixing');
  const steps = model.processes
    .filter(({ header }) => header.part === undefined && header.name === undefined)
    .flatMap((process) => process.steps.map(({ step }) => step));
  const first = steps.findIndex((step) => step.known === 'bake');
  const last = steps.findLastIndex((step) => step.known === 'bake');
  const minutes = (some: typeof steps): number =>
    some.reduce((sum, step) => sum + (step.seconds ?? 0) / 60, 0);
  if (first < 0) lacks.push('baking');
  return {
    mixMinutes: doughMix.known ? doughMix.value.outcome.programmeMinutes : 0,
    betweenMinutes: minutes(first < 0 ? steps : steps.slice(0, first)),
    bakeMinutes: first < 0 ? 0 : minutes(steps.slice(first, last + 1)),
    afterMinutes: first < 0 ? 0 : minutes(steps.slice(last + 1)),
    ...workOf(analysis, steps),
    bake: bakeOf(first < 0 ? [] : steps.slice(first, last + 1)),
    lacks,
  };
}

/** The mixer by its name as the plan's folder knows it. */
function mixerOf(
  analysis: Analysis,
  planScope: Scope,
): { name: string; bowl: { leastGrams?: number; mostGrams?: number } } | undefined {
  const { resolved } = analysis;
  const mix = resolved.mixes.find((one) => one.sectionId === doughOf(resolved.input).id);
  if (mix?.mixer === undefined) return undefined;
  const { header } = elementAt(resolved.model.mixes, mix.index);
  const named = header.mixer ?? bakeryOf(planScope).defaultMixer;
  const found = header.byHand || named === undefined ? undefined : findMixer(named, planScope);
  const { name, leastGrams, mostGrams } = found?.kind === 'found' ? found.mixer : mix.mixer;
  return {
    name,
    bowl: {
      ...(leastGrams === undefined ? {} : { leastGrams }),
      ...(mostGrams === undefined ? {} : { mostGrams }),
    },
  };
}

function ovenOf(model: FormulaModel, planScope: Scope): OvenCapacity | undefined {
  const load = saidValue(model.said, 'oven load', 'count')?.count;
  if (load !== undefined && load > 0) return { measure: 'pieces', count: load };
  return bakeryOf(planScope).oven;
}
