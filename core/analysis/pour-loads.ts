import type { SolvedFormula } from '../calc/formula/formula-result.ts';
import type { MixingPhase, MixPortion } from '../calc/mixing/mixing-programme.ts';
import type { ResolvedLoad, ResolvedProgramme } from '../model/resolve-mix.ts';
import { entryOf } from '../text/element.ts';
import { type Message, message } from '../words/message.ts';
import type { Batch, batchesOf } from './portions.ts';

/** The phases of a programme with what goes in by weight, and what its lines leave out or ask too much of. */
export interface Poured {
  readonly phases: MixingPhase[];
  readonly lines: number[];
  readonly unloaded: { key: string; name: string }[];
  readonly portionsOff: { line: number; name: string; askedGrams: number; hasGrams: number }[];
}

/** Less than this weighs nothing on any scale. */
const leastGrams = 1e-3;

/** Puts what the lines of a programme load into the bowl, line by line; what no line loads goes in first. */
export function pourAll(
  solved: SolvedFormula,
  mix: ResolvedProgramme,
  batches: ReturnType<typeof batchesOf>,
): Poured {
  const left = new Map([...batches].map(([key, batch]) => [key, batch.grams]));
  const touched = new Set<string>();
  const portionsOff: Poured['portionsOff'] = [];
  // A portion is in percent of what the lines of its section are, so that it can be set against its line.
  const section = solved.sections.find(({ id }) => id === mix.sectionId);
  const base = section?.baseGrams ?? section?.flourGrams ?? solved.flourGrams ?? 0;
  const phases: MixingPhase[] = [];
  const lines: number[] = [];
  for (const { line, statement } of mix.phases) {
    const { value } = statement;
    if (value?.form === 'load') {
      const portions: MixPortion[] = [];
      for (const load of mix.loads.filter((one) => one.line === line)) {
        for (const key of load.keys) {
          const batch = batches.get(key);
          if (batch === undefined) continue;
          touched.add(key);
          const has = entryOf(left, key);
          const later = (load.keptBack?.get(key) ?? []).reduce(
            (sum, other) => sum + (portionOf(other, batch, batches, base) ?? 0),
            0,
          );
          const wanted = portionOf(load, batch, batches, base) ?? Math.max(0, has - later);
          if (wanted > has + Math.max(0.5, batch.grams * 1e-6)) {
            portionsOff.push({ line, name: batch.name, askedGrams: wanted, hasGrams: has });
          }
          const grams = Math.min(wanted, has);
          left.set(key, has - grams);
          if (grams > 0) portions.push(...batch.portions(batch.grams - has, grams, load.item.celsius));
        }
      }
      phases.push({ kind: statement.property === 'load' ? 'load' : 'add', portions });
      lines.push(line);
    } else {
      const phase = timePhase(statement.property, value);
      if (phase === undefined) continue;
      phases.push(phase);
      lines.push(line);
    }
  }
  // What a part draws to the last gram leaves a rounding behind, and nobody loads that.
  const unloaded = [...batches.values()].filter(
    (batch) => !touched.has(batch.key) && batch.grams > leastGrams,
  );
  for (const batch of batches.values()) {
    const rest = entryOf(left, batch.key);
    if (touched.has(batch.key) && rest > Math.max(0.5, batch.grams * 1e-6)) {
      portionsOff.push({
        line: lastLineOf(mix, batch.key),
        name: batch.name,
        askedGrams: batch.grams - rest,
        hasGrams: batch.grams,
      });
    }
  }
  if (unloaded.length > 0) {
    const portions = unloaded.flatMap((batch) => batch.portions(0, batch.grams, undefined));
    const first = phases.findIndex((phase) => 'portions' in phase);
    const firstPhase = phases[first];
    if (first === 0 && firstPhase !== undefined && 'portions' in firstPhase) {
      phases[0] = { ...firstPhase, portions: [...firstPhase.portions, ...portions] };
    } else {
      phases.unshift({ kind: 'load', portions });
      lines.unshift(mix.headerLine);
    }
  }
  return { phases, lines, unloaded: unloaded.map(({ key, name }) => ({ key, name })), portionsOff };
}

/**
 * Grams of a batch that a load asks for; undefined where it names no portion. `base` is the flour that percentages are of. A portion
 * of several, as `half of the flour`, takes of each as much as there is of it.
 */
function portionOf(
  { item: { portion }, keys }: ResolvedLoad,
  batch: Batch,
  batches: ReadonlyMap<string, Batch>,
  base: number,
): number | undefined {
  if (portion === undefined || portion.kind === 'unsaid') return undefined;
  if (portion.kind === 'ofLine') return portion.fraction * batch.grams;
  const all = keys.reduce((sum, key) => sum + (batches.get(key)?.grams ?? 0), 0);
  const wanted = portion.kind === 'weight' ? portion.grams : portion.fraction * base;
  return (wanted * batch.grams) / all;
}

function lastLineOf(mix: ResolvedProgramme, key: string): number {
  return mix.loads.findLast((load) => load.keys.includes(key))?.line ?? 0;
}

function timePhase(property: string, value: { form: string } | undefined): MixingPhase | undefined {
  const timed = value as { form: string; number?: number; seconds?: number } | undefined;
  if (timed?.seconds === undefined) return undefined;
  if (timed.form === 'mixSpeed') return { kind: 'speed', number: timed.number!, seconds: timed.seconds };
  if (property === 'rest') return { kind: 'rest', seconds: timed.seconds };
  if (property === 'knead' || property === 'fold' || property === 'stir')
    return { kind: property, seconds: timed.seconds };
  return undefined;
}

/** Why a programme cannot be run that puts in most of the water, and says no figure. */
export function unsaidOf({ loads }: ResolvedProgramme): Message | undefined {
  const unsaid = loads.find(({ item }) => item.portion?.kind === 'unsaid');
  return unsaid === undefined ? undefined : message('mixing.portion-unsaid', { name: unsaid.item.name.text });
}
