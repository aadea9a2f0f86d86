import type { Analysis } from '../../analysis/analysis.ts';
import type { MixAnalysis } from '../../analysis/mix-analysis.ts';
import type { SolvedSection } from '../../calc/formula/formula-result.ts';
import type { MixPortion } from '../../calc/mixing/mixing-programme.ts';
import { allPortions, type IcePlan } from '../../calc/mixing/mixing-water.ts';
import { phaseTimes } from '../../calc/mixing/phase-times.ts';
import { lineOfId, type SectionModel } from '../../model/formula-model.ts';
import { elementAt } from '../../text/element.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { nodeIds } from './node-ids.ts';
import { heldOf } from './part-times.ts';
import type { TableSection } from './sheet-document.ts';
import {
  roundedOnScale,
  rowsOf,
  type WeighedRows,
  type Weighing,
  type Weight,
  weighColumns,
  withUnits,
} from './sheet-rows.ts';
import type { Timeline } from './timeline.ts';
import { elsewhere, isDrawnWhole, isWeighed, tooLittle } from './too-little.ts';

/** What is weighed at one moment, and when that is. */
export interface Weighed {
  readonly section: TableSection;
  /** From the start of mixing. */
  readonly startSeconds: number;
}

interface WeighingInput {
  /** All that is made, and one batch of it. */
  readonly whole: Analysis;
  readonly batch: Analysis;
  readonly batches: number;
  readonly mix: MixAnalysis | undefined;
  /** The water to use, in words that stand alone and in those beside its name. */
  readonly water: { readonly alone: string; readonly beside: string } | undefined;
  readonly firstLine: number;
  readonly timeline: Timeline;
  readonly speaker: Speaker;
}

/**
 * What is weighed, in the order of the work: parts made before, once for all batches and the earliest first, then for
 * each batch the bowl and later additions, then what stays apart.
 */
export function weighingSections(input: WeighingInput): Weighed[] {
  const { whole, timeline, speaker, batches, mix } = input;
  const step = whole.resolved.bakery.scaleStepGrams;
  const once = { step, times: 1, speaker };
  const eachBatch = { step, times: batches, speaker };
  const idOf = nodeIds();
  const parts = whole.solved?.sections.slice(1) ?? [];
  const partOf = (section: SolvedSection, name: 'before' | 'apart'): Weighed =>
    partSection(input, section, name, idOf, once);
  const before = inWorkOrder(parts.filter((section) => section.inBowl)).map((one) => partOf(one, 'before'));
  const apart = parts.filter((section) => !section.inBowl).map((one) => partOf(one, 'apart'));
  const bowl = mix === undefined ? [plainBowl(input, eachBatch)] : bowlSections(input, mix, idOf, eachBatch);
  // The sort is stable: what begins at one time stays in the order of the work.
  before.sort((one, other) => one.startSeconds - other.startSeconds);
  return [...before, ...withWater(bowl, input.water), ...apart].map((one) => withClock(one, timeline));
}

function withClock({ section, startSeconds }: Weighed, { clock, view }: Timeline): Weighed {
  const takesTime = view.moments.some(({ kind, line }) => kind === 'before' && line === section.line);
  const isInBowl = section.name === 'bowl' || section.name === 'later';
  // A part that takes no time has none of its own.
  if (clock === undefined || !(takesTime || isInBowl)) return { section, startSeconds };
  return {
    section: { ...section, when: [clock(startSeconds).words, ...(section.when ?? [])] },
    startSeconds,
  };
}

/** Where no row of the bowl holds the water, what is said of it stands at the bowl. */
function withWater(bowl: readonly Weighed[], water: WeighingInput['water']): readonly Weighed[] {
  const [first, ...later] = bowl;
  if (water === undefined || first === undefined) return bowl;
  const isSaid = bowl.some(({ section }) =>
    section.rows.some(
      ({ id, notes = [] }) => id.endsWith('/ice') || notes.some((one) => one.includes(water.beside)),
    ),
  );
  if (isSaid) return bowl;
  const { section, startSeconds } = first;
  return [{ section: { ...section, lead: [...(section.lead ?? []), water.alone] }, startSeconds }, ...later];
}

/** A part that goes into another is made before it. */
function inWorkOrder(sections: readonly SolvedSection[]): SolvedSection[] {
  const done: SolvedSection[] = [];
  const visit = (section: SolvedSection, path: readonly string[]): void => {
    if (done.includes(section) || path.includes(section.id)) return;
    for (const line of section.lines) {
      const inner = line.part ? sections.find((one) => one.id === line.key) : undefined;
      if (inner !== undefined) visit(inner, [...path, section.id]);
    }
    done.push(section);
  };
  for (const section of sections) visit(section, []);
  return done;
}

function partSection(
  { whole, firstLine, timeline }: WeighingInput,
  section: SolvedSection,
  name: 'before' | 'apart',
  idOf: ReturnType<typeof nodeIds>,
  weighing: Weighing,
): Weighed {
  const { speaker } = weighing;
  const model = whole.resolved.model.sections.find((one) => one.id === section.id);
  const line = firstLine + (model?.headerLine ?? 0);
  const weights: Weight[] = section.lines.map((one) => ({
    name: one.name,
    line: model === undefined ? line : firstLine + lineOfId(one.id),
    grams: one.grams,
    ...(one.fraction === undefined || one.part ? {} : { percent: speaker.percent(one.fraction) }),
  }));
  if (section.cultureGrams !== undefined && section.cultureGrams > 0) {
    const name = speaker.say(message('sheet.ripe-culture'));
    weights.push({ key: 'ripe culture', name, line, grams: section.cultureGrams });
  }
  const notes = tooLittle(weights);
  if (section.keepBackGrams !== undefined && section.keepBackGrams > 0)
    notes.push(message('sheet.keep-back', { grams: section.keepBackGrams }));
  const { steamGrams, totalGrams } = section;
  if (steamGrams !== undefined && totalGrams !== undefined)
    notes.push(message('sheet.steams-away', { lostGrams: steamGrams, grams: totalGrams }));
  const startSeconds = timeline.partStarts.get(line) ?? 0;
  const id = idOf(name, section.name);
  const when = model === undefined ? [] : whenOf(model, startSeconds).map(speaker.say);
  const made = rowsOf(id, weights.filter(isWeighed), weighing);
  return {
    section: weighTable({ id, name, title: section.name, when, line, notes }, made, weighing),
    startSeconds,
  };
}

interface WeighingHead {
  readonly id: string;
  readonly name: 'before' | 'bowl' | 'later' | 'apart';
  readonly title: string;
  readonly when: readonly string[];
  readonly line: number;
  readonly notes: readonly Message[];
}

function weighTable(
  { notes, when, ...head }: WeighingHead,
  { rows, sum }: WeighedRows,
  { times, speaker }: Weighing,
): TableSection {
  const { say } = speaker;
  const often = times > 1 ? [say(message('sheet.times', { count: times }))] : [];
  return {
    kind: 'table',
    ...head,
    when: [...when, ...often],
    ...(notes.length === 0 ? {} : { lead: [notes.map(say).join('; ')] }),
    head: say(message('sheet.ingredient')),
    columns: withUnits(weighColumns(speaker), rows),
    rows,
    ...(sum === undefined ? {} : { sum }),
    times,
  };
}

/** When to begin a part, counted from the start of mixing, and how it is held. */
function whenOf(section: SectionModel, startSeconds: number): Message[] {
  const held = heldOf(section);
  const facts = held.map((one) => one.words);
  if (startSeconds > 0) return [message('sheet.after', { seconds: startSeconds }), ...facts];
  const [only, ...others] = held;
  if (only === undefined) return [message('sheet.before-mixing')];
  if (startSeconds === 0) return [message('sheet.before-mixing-held', { facts })];
  const seconds = -startSeconds;
  if (others.length > 0 || only.seconds !== seconds)
    return [message('sheet.before-held', { seconds, facts })];
  return [
    only.celsius === undefined
      ? message('sheet.before', { seconds })
      : message('sheet.before-at', { seconds, celsius: only.celsius }),
  ];
}

/** Without a programme the final mix goes in as it is written. */
function plainBowl({ batch, water, firstLine }: WeighingInput, weighing: Weighing): Weighed {
  const { speaker } = weighing;
  const solved = batch.solved!;
  const lines = solved.finalMix.lines.filter((line) => !isDrawnWhole(line));
  const weights = lines.map(
    (line): Weight => ({
      name: line.name,
      line:
        firstLine + (line.lineId === undefined ? lineOfId(line.sectionId ?? 'S0') : lineOfId(line.lineId)),
      grams: line.grams,
      ...(line.fraction === undefined || line.kind === 'part'
        ? {}
        : { percent: speaker.percent(line.fraction) }),
      ...(line.role === 'water' && water !== undefined ? { note: water.beside } : {}),
    }),
  );
  const made = rowsOf('bowl', weights.filter(isWeighed), weighing);
  const notes = [...elsewhere(solved), ...tooLittle(weights)];
  const title = speaker.say(message('sheet.into-bowl'));
  const head = { id: 'bowl', name: 'bowl', title, when: [], line: firstLine, notes } as const;
  return { section: weighTable(head, made, weighing), startSeconds: 0 };
}

function bowlSections(
  input: WeighingInput,
  mix: MixAnalysis,
  idOf: ReturnType<typeof nodeIds>,
  weighing: Weighing,
): Weighed[] {
  const { batch, firstLine } = input;
  const { speaker } = weighing;
  const made: { readonly head: WeighingHead; readonly rows: WeighedRows; readonly minutes: number }[] = [];
  const elsewhereNames = new Set(batch.solved!.finalMix.lines.filter(isDrawnWhole).map(({ name }) => name));
  const additions = mix.input.phases.flatMap((phase, index) => {
    if (!('portions' in phase) || phase.portions.length === 0) return [];
    const line = firstLine + (mix.phaseLines[index] ?? 0);
    const weights = phase.portions.flatMap((portion) => portionWeights(input, mix, portion, line));
    return [{ minutes: minutesBefore(mix, index), line, weights, weighed: weights.filter(isWeighed) }];
  });
  const onScale = roundedOnScale(
    additions.flatMap(({ weighed }) => weighed),
    weighing.step,
  );
  let readsGrams = 0;
  let done = 0;
  let notes = elsewhere(batch.solved!);
  for (const { minutes, line, weights, weighed } of additions) {
    const name = made.length === 0 ? 'bowl' : 'later';
    const id = idOf(name);
    const rounded = onScale.slice(done, done + weighed.length);
    const rows = rowsOf(id, weighed, weighing, { readsGrams, rounded });
    readsGrams = rows.readsGrams;
    done += weighed.length;
    notes = [...notes, ...tooLittle(weights.filter((one) => !elsewhereNames.has(one.name)))];
    // An addition of nothing that anybody weighs is no section: what is said of it stands at the next one.
    if (rows.rows.length === 0) continue;
    const title = speaker.say(message(name === 'bowl' ? 'sheet.into-bowl' : 'sheet.added-later'));
    const when = minutes === 0 ? [] : [speaker.say(message('sheet.after-minutes', { minutes }))];
    made.push({ head: { id, name, title, when, line, notes }, rows, minutes });
    notes = [];
  }
  return made.map(({ head, rows, minutes }, index) => {
    const isLast = index === made.length - 1;
    const whole = isLast ? { ...head, notes: [...head.notes, ...notes] } : head;
    return { section: weighTable(whole, rows, weighing), startSeconds: minutes * 60 };
  });
}

/** What is weighed of a portion: one row, or tap water and ice. */
function portionWeights(
  { batch, water, firstLine, speaker }: WeighingInput,
  mix: MixAnalysis,
  portion: MixPortion,
  line: number,
): Weight[] {
  const flour = batch.solved?.flourGrams;
  const weight = (name: string, grams: number, note: string | undefined): Weight => ({
    name,
    line: lineOfPortion(batch, portion, firstLine) ?? line,
    grams,
    ...(isPart(batch, portion) || flour === undefined || flour <= 0
      ? {}
      : { percent: speaker.percent(grams / flour) }),
    ...(note === undefined ? {} : { note }),
  });
  const { label, grams, kind, celsius } = portion;
  if (portion.tempered !== true)
    return [
      weight(
        label,
        grams,
        kind === 'water' ? speaker.say(message('sheet.water-at', { celsius })) : undefined,
      ),
    ];
  const tempered = allPortions(mix.input).filter((one) => one.tempered === true);
  const isFirst = portion === tempered[0];
  const ice = iceOf(mix);
  if (ice !== undefined) {
    const share = grams / tempered.reduce((sum, one) => sum + one.grams, 0);
    const fromTap = speaker.say(message('sheet.from-tap', { tapCelsius: ice.tapCelsius }));
    const iceWeight = weight(speaker.say(message('sheet.ice')), ice.iceGrams * share, undefined);
    return [weight(label, ice.tapGrams * share, fromTap), { ...iceWeight, key: 'ice' }];
  }
  const same = speaker.say(message('sheet.same-temperature'));
  return [weight(label, grams, isFirst || water === undefined ? water?.beside : same)];
}

function isPart({ solved }: Analysis, portion: MixPortion): boolean {
  return (
    portion.kind === 'preferment' ||
    solved!.sections.some((one) => one.name === portion.label && one.kind !== 'dough')
  );
}

/** The ice of all the water whose temperature is chosen, and the tap water beside it. */
function iceOf({ water }: MixAnalysis): (IcePlan & { readonly tapCelsius: number }) | undefined {
  if (!water.known || water.value.ice === undefined) return undefined;
  return { ...water.value.ice, tapCelsius: water.value.tapCelsius };
}

function minutesBefore({ input }: MixAnalysis, index: number): number {
  return elementAt(phaseTimes(input.phases), index).startMinutes;
}

function lineOfPortion(analysis: Analysis, portion: MixPortion, firstLine: number): number | undefined {
  const line = analysis.solved!.sections[0]?.lines.find((one) => one.name === portion.label);
  if (line !== undefined) return firstLine + lineOfId(line.id);
  const section = analysis.resolved.model.sections.find((one) => one.name?.text === portion.label);
  return section === undefined ? undefined : firstLine + section.headerLine;
}
