import { figureAt } from '../../text/element.ts';
import { isPerGram, linesWithin } from './formula-composition.ts';
import { type LineFacts, type Mass, type Masses, massesAt, massOf, sectionAt } from './formula-facts.ts';
import { doughOf } from './formula-input.ts';
import { onlyKnown } from './formula-only-known.ts';
import { drawnMass } from './formula-overall.ts';
import type { FinalMix, FinalMixLine, FormulaProblem, LinePlace, Unsolved } from './formula-result.ts';
import { type Evaluated, evaluate, gramsOf, type Scale } from './formula-scale.ts';
import { isBesideBowl } from './formula-structure.ts';

interface Row {
  readonly line: Omit<
    FinalMixLine,
    'grams' | 'fraction' | 'fractionOfFinalFlour' | 'unsolved' | 'drawnGrams'
  >;
  readonly left: Evaluated | undefined;
  readonly drawnGrams?: number | undefined;
  readonly unsolved?: Unsolved | undefined;
}

/**
 * What is left to weigh: the dough's lines less what drawn parts bring, and the parts. A part that brings more than
 * the formula has is reported on the formula's line, and that line has no weight.
 */
export function finalMixOf(masses: Masses, scale: Scale, problems: FormulaProblem[]): FinalMix {
  const { structure } = masses;
  const dough = doughOf(structure);
  const rows: Row[] = [];
  const drawn = new Map<number, Drawn>();
  for (const line of dough.lines) {
    const mass = massOf(masses, line);
    if (line.keyIndex >= 0) rows.push(ingredientRow(masses, scale, line, mass, drawn, problems));
    else if (line.child >= 0 && line.amount.kind !== 'none' && !isBesideBowl(line, structure.sections)) {
      rows.push(partRow(masses, scale, line.child, mass, line));
    }
  }
  const { culture } = doughOf(masses);
  if (culture) rows.push(partRow(masses, scale, 0, culture, undefined, 'ripe culture'));
  for (const section of structure.sections) {
    if (section.draws.length === 0) continue;
    rows.push(partRow(masses, scale, section.index, massesAt(masses, section.index).used));
    reportLacking(masses, scale, section.index, problems);
  }

  const flour = evaluate(scale, doughOf(masses).flour);
  const finalFlour = sumOf(rows.filter((row) => row.line.isFlour));
  return {
    lines: rows.map((row) => {
      const grams = inGrams(row.left);
      return {
        ...row.line,
        ...onlyKnown({
          grams,
          fraction: share(row.left, flour),
          fractionOfFinalFlour: share(row.left, finalFlour),
          drawnGrams: row.drawnGrams,
          unsolved: grams === undefined ? row.unsolved : undefined,
        }),
      };
    }),
    ...onlyKnown({
      flourGrams: inGrams(finalFlour),
      waterGrams: inGrams(sumOf(rows.filter((row) => row.line.role === 'water'))),
      totalGrams: inGrams(sumOf(rows)),
    }),
  };
}

/** What drawn parts bring of one ingredient, and what of it the lines so far have not taken up. */
interface Drawn {
  readonly mass: Mass;
  readonly all: Evaluated | undefined;
  left: number;
  /** Bring more than all lines of the ingredient have. */
  readonly over: boolean;
}

function ingredientRow(
  masses: Masses,
  scale: Scale,
  line: LineFacts,
  mass: Mass,
  drawnByKey: Map<number, Drawn>,
  problems: FormulaProblem[],
): Row {
  const { input } = line;
  const head = { kind: 'ingredient' as const, lineId: input.id, key: input.key, name: input.name };
  const facts = { ...head, role: input.role, isFlour: line.flour };
  let drawn = drawnByKey.get(line.keyIndex);
  if (!drawn) {
    drawn = drawnOf(masses, scale, line, problems);
    drawnByKey.set(line.keyIndex, drawn);
  }
  const written = line.amount.kind === 'none' ? undefined : evaluate(scale, mass);
  const { all } = drawn;
  const reason: Unsolved = (line.amount.kind === 'none' ? line.amount.unsolved : undefined) ??
    mass.unsolved ??
    drawn.mass.unsolved ??
    scale.reasons.find((other) => other !== undefined) ?? {
      code: 'no-scale',
      sectionId: line.section.input.id,
    };
  if (drawn.over) {
    return {
      line: facts,
      left: undefined,
      unsolved: { code: 'reported', sectionId: line.section.input.id, lineId: input.id },
    };
  }
  if (!written || written.value < 0 || !all || !isSameScale(written, all))
    return { line: facts, left: undefined, unsolved: reason };
  const taken = Math.min(drawn.left, written.value);
  drawn.left -= taken;
  const rest = written.value - taken;
  // What the drawn parts take whole leaves nothing, not the hair that sums in binary leave.
  const left = { value: rest > 1e-9 * written.value ? rest : 0, group: written.group };
  const drawnGrams = taken > 0 && (all.group ?? 0) === 0 ? taken : undefined;
  return { line: facts, left, drawnGrams, unsolved: reason };
}

function drawnOf(masses: Masses, scale: Scale, line: LineFacts, problems: FormulaProblem[]): Drawn {
  const mass = drawnMass(masses, line.keyIndex);
  const all = evaluate(scale, mass);
  let written = 0;
  let comparable = true;
  const same: LineFacts[] = [];
  for (const other of line.section.lines) {
    if (other.keyIndex !== line.keyIndex) continue;
    same.push(other);
    const value = evaluate(scale, massOf(masses, other));
    if (!value || !all || other.amount.kind === 'none' || !isSameScale(value, all)) comparable = false;
    else written += value.value;
  }
  const over = comparable && all !== undefined && all.value - written > 1e-9 * all.value;
  if (over) problems.push(negativeRemainder(masses, scale, line, same, all, written));
  return { mass, all, left: all?.value ?? 0, over };
}

function negativeRemainder(
  masses: Masses,
  scale: Scale,
  line: LineFacts,
  same: readonly LineFacts[],
  drawn: Evaluated,
  written: number,
): FormulaProblem {
  const { structure } = masses;
  const related: LinePlace[] = same
    .slice(1)
    .map((other) => ({ sectionId: line.section.input.id, lineId: other.input.id }));
  const parts: string[] = [];
  for (const section of structure.sections) {
    if (section.draws.length === 0) continue;
    const sources = linesWithin(structure, section).filter((inner) => inner.keyIndex === line.keyIndex);
    if (sources.length > 0) parts.push(section.input.name);
    for (const source of sources)
      related.push({ sectionId: source.section.input.id, lineId: source.input.id });
  }
  const flour = evaluate(scale, doughOf(masses).flour);
  const values = onlyKnown({
    name: line.input.name,
    role: line.input.role,
    parts,
    broughtFraction: share(drawn, flour),
    formulaFraction: share({ value: written, group: drawn.group }, flour),
    broughtGrams: inGrams(drawn),
    formulaGrams: inGrams({ value: written, group: drawn.group }),
    overGrams: inGrams({ value: drawn.value - written, group: drawn.group }),
    // Drawing this share of what is drawn now would fit.
    fittingShare: written / drawn.value,
  });
  return {
    kind: 'negative-remainder',
    sectionId: line.section.input.id,
    lineId: line.input.id,
    related,
    values,
  };
}

function partRow(
  masses: Masses,
  scale: Scale,
  child: number,
  mass: Mass,
  line?: LineFacts,
  name?: string,
): Row {
  const { input } = sectionAt(masses.structure, child);
  const weight = evaluate(scale, mass);
  const facts = { kind: 'part' as const, sectionId: input.id, key: input.id, name: name ?? input.name };
  const reason = mass.unsolved ??
    scale.reasons[child] ??
    scale.reasons[0] ?? { code: 'no-scale', sectionId: input.id };
  return {
    line: { ...facts, ...(line ? { lineId: line.input.id } : {}), role: 'other', isFlour: false },
    left: weight && weight.value >= 0 ? weight : undefined,
    unsolved: reason,
  };
}

/** A hint: a drawn part has ingredients of its own, which come on top of the formula's lines. */
function reportLacking(masses: Masses, scale: Scale, index: number, problems: FormulaProblem[]): void {
  const { structure } = masses;
  const section = sectionAt(structure, index);
  const { perGram, used } = massesAt(masses, index);
  const told = new Set<number>();
  for (const line of linesWithin(structure, section)) {
    if (line.keyIndex < 0 || structure.inDough[line.keyIndex] !== 0 || told.has(line.keyIndex)) continue;
    // Someone else has told that this ingredient is not known, or how much of it.
    if (!line.input.known || line.amount.kind === 'unknown') continue;
    told.add(line.keyIndex);
    const usedGrams = gramsOf(scale, used);
    const grams =
      isPerGram(perGram) && usedGrams !== undefined
        ? usedGrams * figureAt(perGram.byKey, line.keyIndex)
        : undefined;
    const place = { sectionId: line.section.input.id, lineId: line.input.id };
    problems.push({
      kind: 'added-by-part',
      ...place,
      values: onlyKnown({ name: line.input.name, part: section.input.name, grams }),
    });
  }
}

function isSameScale(a: Evaluated, b: Evaluated): boolean {
  return a.group === undefined || b.group === undefined || a.group === b.group;
}

function sumOf(rows: readonly Row[]): Evaluated | undefined {
  let value = 0;
  let group: number | undefined;
  for (const { left } of rows) {
    if (!left || (group !== undefined && left.group !== undefined && left.group !== group)) return undefined;
    group ??= left.group;
    value += left.value;
  }
  return { value, group };
}

function inGrams(mass: Evaluated | undefined): number | undefined {
  return mass && (mass.group ?? 0) === 0 ? mass.value : undefined;
}

function share(mass: Evaluated | undefined, whole: Evaluated | undefined): number | undefined {
  if (!mass || !whole || !(whole.value > 0) || !isSameScale(mass, whole)) return undefined;
  return mass.value / whole.value;
}
