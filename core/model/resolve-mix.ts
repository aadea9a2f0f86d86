import type { SectionInput } from '../calc/formula/formula-input.ts';
import type { DegreeOfMixing } from '../calc/mixing/development.ts';
import type { LoadItem, Name } from '../syntax/tree.ts';
import { roleWords } from '../syntax/vocabulary.ts';
import { foldName } from '../text/names.ts';
import type { Bakery } from './bakery.ts';
import type { FormulaModel, SectionModel, TrialModel } from './formula-model.ts';
import { findIngredient } from './found-ingredient.ts';
import { findHands, findMixer, type Mixer } from './found-mixer.ts';
import type { NameProblem } from './name-problem.ts';
import type { Said } from './properties.ts';
import type { Scope } from './scope.ts';

/** Lines of a programme with what they load looked up: those of a mix, or those that a trial keeps. */
export interface ResolvedProgramme {
  /** The section whose lines it mixes; the dough's where the header names no part. */
  readonly sectionId: string;
  /** Where what no line loads is told. */
  readonly headerLine: number;
  readonly mixer: Mixer | undefined;
  readonly phases: readonly Said[];
  readonly loads: readonly ResolvedLoad[];
  /** The degree of mixing wished; an improved mix where none is written. */
  readonly wish?: DegreeOfMixing;
}

/** A mixing programme of the formula with its names looked up. */
export interface ResolvedMix extends ResolvedProgramme {
  readonly index: number;
}

/** The lines of a programme that a trial keeps; in which mixer it was run is asked of the trial. */
export type KeptProgramme = Pick<ResolvedProgramme, 'sectionId' | 'headerLine' | 'phases' | 'loads'>;

/** One item of a `load` or `add` line and what it stands for: keys of lines, or ids of parts. */
export interface ResolvedLoad {
  readonly line: number;
  readonly item: LoadItem;
  readonly keys: readonly string[];
  /** Of an item that takes everything: what later lines add portions of one of its keys. */
  readonly keptBack?: ReadonlyMap<string, readonly ResolvedLoad[]>;
}

/** What a programme is resolved in; problems found are added to its list. */
export interface MixSurroundings {
  readonly scope: Scope;
  readonly bakery: Bakery;
  readonly problems: NameProblem[];
  readonly sections: readonly SectionInput[];
}

/** Looks up the mixer of a programme, the section it mixes, and what each of its loads stands for. */
export function resolveMix(to: MixSurroundings, model: FormulaModel, index: number): ResolvedMix {
  const mix = model.mixes[index]!;
  const { part, mixer: named } = mix.header;
  const dough = model.sections[0]!;
  const section = part === undefined ? dough : model.sections.find((one) => one.name?.folded === part.folded);
  if (part !== undefined && section === undefined && part.folded !== model.name.folded) {
    to.problems.push({ kind: 'unknown-part', line: mix.headerLine, name: part });
  }
  const chosen = section ?? dough;
  const base = {
    index,
    sectionId: chosen.id,
    headerLine: mix.headerLine,
    phases: mix.phases,
    ...(mix.wish === undefined ? {} : { wish: mix.wish }),
    loads: resolveLoads(to, model, mix.phases, chosen, (line, name) =>
      to.problems.push({ kind: 'not-in-dough', line, name }),
    ),
  };
  if (mix.header.byHand) return { ...base, mixer: findHands(to.scope) };
  const name = named ?? to.bakery.defaultMixer;
  if (name === undefined) return { ...base, mixer: undefined };
  const found = findMixer(name, to.scope);
  if (found.kind === 'found') return { ...base, mixer: found.mixer };
  if (named !== undefined) {
    to.problems.push(
      found.kind === 'several'
        ? { kind: 'several', line: mix.headerLine, name, definitions: found.definitions }
        : { kind: 'unknown-mixer', line: mix.headerLine, name },
    );
  }
  return { ...base, mixer: undefined };
}

/** Looks up what the lines of a trial loaded of the dough as it is now; undefined where it keeps no programme. */
export function resolveTrial(
  to: MixSurroundings,
  model: FormulaModel,
  { headerLine, phases }: TrialModel,
): KeptProgramme | undefined {
  if (phases.length === 0) return undefined;
  const dough = model.sections[0]!;
  const loads = resolveLoads(to, model, phases, dough, (line, name) =>
    to.problems.push({ kind: 'not-in-dough', line, name, tried: true }),
  );
  return { sectionId: dough.id, headerLine, phases, loads };
}

function resolveLoads(
  to: MixSurroundings,
  model: FormulaModel,
  phases: readonly Said[],
  section: SectionModel,
  lacks: (line: number, name: Name) => void,
): ResolvedLoad[] {
  const input = to.sections.find((one) => one.id === section.id);
  if (input === undefined) return [];
  const parts = new Map<string, string>();
  for (const one of model.sections)
    if (one.name !== undefined && one !== section) parts.set(one.name.folded, one.id);
  const keysOf = (item: LoadItem): readonly string[] => {
    const { folded } = item.name;
    const role = roleWords.find((word) => word === folded);
    const ofRole =
      role === undefined ? [] : input.lines.filter((line) => line.role === role).map((line) => line.key);
    if (item.all && ofRole.length > 0) return [...new Set(ofRole)];
    if (folded === 'ripe culture' && input.ripeCultureFraction !== undefined) return [section.id];
    const part = parts.get(folded);
    if (part !== undefined) return [part];
    const found = findIngredient(item.name, to.scope);
    const key = found.kind === 'found' ? found.ingredient.key : `?${folded}`;
    const line = input.lines.find(
      ({ key: own, name }) => own === key || foldName(name) === folded || foldName(name) === `the ${folded}`,
    );
    if (line !== undefined) return [line.key];
    return [...new Set(ofRole)];
  };
  const items = phases.flatMap(({ line, statement: { value } }) =>
    value?.form === 'load' ? value.items.map((item) => ({ line, item })) : [],
  );
  const named = items.map(({ line, item }): ResolvedLoad => {
    if (item.allBut !== undefined) return { line, item, keys: [] };
    const keys = keysOf(item);
    if (keys.length === 0) lacks(line, item.name);
    return { line, item, keys };
  });
  const takesAll = named.some(({ item }) => item.allBut !== undefined);
  if (!takesAll) return named;
  const inBowl = everythingIn(input, to.sections, section === model.sections[0]);
  const taken = new Set<string>();
  return named.map((load, at) => {
    const { line, item } = load;
    if (item.allBut === undefined) return load;
    const out = new Set(taken);
    for (const name of item.allBut) {
      const left = keysOf({ name, all: true, remaining: false, start: name.start, end: name.end });
      if (left.length === 0) lacks(line, name);
      for (const key of left) out.add(key);
    }
    const keptBack = new Map<string, ResolvedLoad[]>();
    named.forEach((other, index) => {
      const isPortion = other.item.portion !== undefined;
      for (const key of other.keys) {
        if (!isPortion) out.add(key);
        else if (index > at) keptBack.set(key, [...(keptBack.get(key) ?? []), other]);
      }
    });
    const keys = inBowl.filter((key) => !out.has(key));
    for (const key of keys) taken.add(key);
    return { line, item, keys, ...(keptBack.size === 0 ? {} : { keptBack }) };
  });
}

/** The keys of all that may go into the bowl for a section: its lines, its own ripe culture, and what the dough’s parts draw. */
function everythingIn(
  input: SectionInput,
  sections: readonly SectionInput[],
  isDough: boolean,
): readonly string[] {
  const keys = input.lines.map(({ key }) => key);
  if (input.ripeCultureFraction !== undefined) keys.push(input.id);
  if (isDough) for (const one of sections) if (one.draws.length > 0) keys.push(one.id);
  return [...new Set(keys)];
}
