import type { Rule } from './rule.ts';
import { unknownIngredient } from './unknown-ingredient.ts';

/** Every rule, in the order in which findings of one place are told. */
export const rules: readonly Rule[] = [unknownIngredient];

export const rulesByCode: ReadonlyMap<string, Rule> = new Map(rules.map((rule) => [rule.code, rule]));
