import type { Rule, RuleLevel } from '../engine/rule.ts';
import { syntaxOfAmounts } from './syntax-amounts.ts';
import { syntaxOfSections } from './syntax-sections.ts';

/** What the reading of a line reports itself. */
export const syntaxRows: readonly Rule[] = [...syntaxOfSections, ...syntaxOfAmounts].map((row) => ({
  ...row,
  mendsSlips: true,
}));

const byCode: ReadonlyMap<string, RuleLevel> = new Map(syntaxRows.map((row) => [row.code, row.level]));

/** Whether a code is an error in how a line is written: such an error cannot be accepted, only cured. */
export function isWritingError(code: string): boolean {
  return byCode.get(code) === 'error';
}
