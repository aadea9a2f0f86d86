import type { Role } from '../../calc/formula/role.ts';
import { findIngredient } from '../../model/found-ingredient.ts';
import { knownStepOf } from '../../syntax/known-step.ts';
import { sectionAt } from '../../syntax/line-place.ts';
import type { SubSection } from '../../syntax/tree.ts';
import type { stepWords } from '../../syntax/vocabulary.ts';
import type { Asked } from './completion-place.ts';

/**
 * What most often comes next at a place, as the beginning of a key that lists are sorted by: a formula goes on with what a dough still
 * lacks, a process with the step after the last, and a formula without its mix with that. Common practice, no source.
 */

/** What a dough is begun with, in this order. */
const firstRoles: readonly Role[] = ['flour', 'water', 'salt', 'yeast'];
/** The one of each that most doughs have. */
const usualNames: readonly string[] = ['bread flour', 'water', 'salt', 'fresh yeast'];

export interface LikelyIngredients {
  /** The key of an ingredient by its role and name; one of the baker’s own comes before one of the catalogue. */
  keyOf(role: Role | undefined, name: string, isOwn: boolean): string;
}

/** The keys of ingredients at a line: what its section still lacks first, what it has already last. */
export function likelyIngredients({ block, line, scope }: Asked): LikelyIngredients {
  const section = sectionAt(block, line);
  const roles = new Set<Role>();
  const names = new Set<string>();
  for (let at = (section?.headerLine ?? 0) + 1; at < (section?.endLine ?? 0); at++) {
    const { statement } = block.lines[at]!;
    if (at === line || statement.kind !== 'ingredient') continue;
    names.add(statement.name.folded);
    const found = findIngredient(statement.name, scope);
    if (found.kind === 'found') roles.add(found.ingredient.role);
  }
  return {
    keyOf(role, name, isOwn) {
      if (names.has(name.toLowerCase())) return '1~';
      const rank = role === undefined ? -1 : firstRoles.indexOf(role);
      const isLacking = rank >= 0 && role !== undefined && !roles.has(role);
      const isUsual = isOwn || usualNames.includes(name);
      if (!isUsual) return '1';
      return isLacking ? `0${rank}${isOwn ? 0 : 1}` : isOwn ? '05' : '1';
    },
  };
}

/** The order in which most breads are made. */
const usualSteps: readonly (typeof stepWords)[number][] = [
  'bulk',
  'fold',
  'divide',
  'rest',
  'shape',
  'proof',
  'score',
  'bake',
  'cool',
  'retard',
  'enclose',
  'sheet',
  'boil',
];

/** The words of steps as they most often follow the last step above a line. */
export function likelySteps({ block, line }: Asked): readonly (typeof stepWords)[number][] {
  const header = sectionAt(block, line)?.headerLine ?? line;
  for (let at = line - 1; at > header; at--) {
    const { statement } = block.lines[at]!;
    const step = statement.kind === 'step' ? knownStepOf(statement.known) : undefined;
    if (step === undefined) continue;
    const behind = usualSteps.indexOf(step) + 1;
    return [...usualSteps.slice(behind), ...usualSteps.slice(0, behind)];
  }
  return usualSteps;
}

/** The keys of the sections that a formula lacks, the likeliest first; behind a blank line they come before all else. */
export function likelySections({ block, line }: Asked): ReadonlyMap<SubSection, string> {
  const has = new Set(block.subs.map(({ kind }) => kind));
  const isApart = line > 0 && block.lines[line - 1]?.text.trim() === '';
  const lacking = (['mix', 'process', 'trial'] as const).filter((kind) => !has.has(kind));
  return new Map(lacking.map((kind, index) => [kind, `${isApart ? '00' : '30'}${index}`]));
}
