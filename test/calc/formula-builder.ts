import type {
  AmountInput,
  DrawInput,
  FormulaInput,
  LineInput,
  Role,
  SectionInput,
  SectionKind,
  YieldInput,
} from '../../core/calc/formula/formula-input.ts';
import type { SolvedFormula, SolvedLine, SolvedSection } from '../../core/calc/formula/formula-result.ts';

/** Short ways to write a formula's plain data in a test: `pct(65)`, `g(468)`, `flour('white', pct(100))`. */
export const pct = (percent: number): AmountInput => ({ kind: 'fraction', fraction: percent / 100 });
export const g = (grams: number): AmountInput => ({ kind: 'grams', grams });
export const each = (grams: number): AmountInput => ({ kind: 'perPiece', grams });
export const balance: AmountInput = { kind: 'balance' };
export const remaining: AmountInput = { kind: 'remaining' };
export const halfTyped: AmountInput = { kind: 'unknown', reason: 'missing' };
export const toHydration = (percent: number, effective = false): AmountInput => {
  return { kind: 'toHydration', fraction: percent / 100, effective };
};

export function line(
  name: string,
  amount: AmountInput,
  role: Role,
  more: Partial<LineInput> = {},
): LineInput {
  const isFlour = role === 'flour';
  return { id: name, key: name, name, part: false, role, isFlour, known: true, amount, ...more };
}
export const flour = (name: string, amount: AmountInput): LineInput =>
  line(name, amount, 'flour', { waterFraction: 0.13 });
export const water = (amount: AmountInput): LineInput => line('water', amount, 'water', { waterFraction: 1 });
export const salt = (amount: AmountInput): LineInput => line('salt', amount, 'salt', { waterFraction: 0 });
export const yeast = (amount: AmountInput): LineInput =>
  line('yeast', amount, 'yeast', { waterFraction: 0.05 });
export const milk = (amount: AmountInput): LineInput =>
  line('milk', amount, 'dairy', { waterFraction: 0.88 });
export const butter = (amount: AmountInput): LineInput =>
  line('butter', amount, 'fat', { waterFraction: 0.16 });
export const part = (name: string, amount: AmountInput): LineInput =>
  line(name, amount, 'other', { part: true });

export function section(
  kind: SectionKind,
  name: string,
  lines: LineInput[],
  more: Partial<SectionInput> = {},
): SectionInput {
  return { id: name, name, kind, lines, draws: [], ...more };
}
export const dough = (...lines: LineInput[]): SectionInput => section('dough', 'dough', lines);

export const drawRole = (role: Role, percent: number): DrawInput => {
  return { id: `draws ${role}`, of: { kind: 'role', role }, fraction: percent / 100 };
};
export const drawKey = (key: string, percent: number): DrawInput => {
  return { id: `draws ${key}`, of: { kind: 'ingredient', key }, fraction: percent / 100 };
};

export function formula(
  sections: SectionInput[],
  yields?: YieldInput,
  more: Partial<FormulaInput> = {},
): FormulaInput {
  return { sections, lossFraction: 0, ...(yields ? { yield: yields } : {}), ...more };
}
export const pieces = (count: number, pieceGrams: number, baked = false): YieldInput => {
  return { kind: 'pieces', count, pieceGrams, baked };
};

export function sectionNamed(solved: SolvedFormula | undefined, name: string): SolvedSection {
  const found = solved?.sections.find((candidate) => candidate.name === name);
  if (!found) throw new Error(`no section ${name}`);
  return found;
}
export function lineNamed(solved: SolvedFormula | undefined, sectionName: string, name: string): SolvedLine {
  const found = sectionNamed(solved, sectionName).lines.find((candidate) => candidate.name === name);
  if (!found) throw new Error(`no line ${name}`);
  return found;
}
/** Grams of the final mix by name. */
export function finalGrams(solved: SolvedFormula | undefined): Record<string, number | undefined> {
  return Object.fromEntries((solved?.finalMix.lines ?? []).map((row) => [row.name, row.grams]));
}
/** Percent of all flour by name. */
export function overallPercent(solved: SolvedFormula | undefined): Record<string, number | undefined> {
  const rows = solved?.overall ?? [];
  return Object.fromEntries(
    rows.map((row) => [row.name, row.fraction === undefined ? undefined : 100 * row.fraction]),
  );
}
export function overallGrams(solved: SolvedFormula | undefined): Record<string, number | undefined> {
  return Object.fromEntries((solved?.overall ?? []).map((row) => [row.name, row.grams]));
}
