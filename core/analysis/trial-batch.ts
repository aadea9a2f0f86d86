import type { TrialModel } from '../model/formula-model.ts';
import { propertiesOf, saidValue } from '../model/properties.ts';
import type { Scope } from '../model/scope.ts';

/**
 * How much dough a trial mixed where it names an experiment that says so, grams: each dough of an experiment is mixed at its batch.
 * `undefined` where it names none, or the experiment leaves it to the formula.
 */
export function batchOfTrial({ said }: TrialModel, scope: Scope): number | undefined {
  const name = saidValue(said, 'experiment', 'name')?.name;
  const [definition, ...others] = name === undefined ? [] : (scope.find('experiment', name.folded)[0] ?? []);
  const top = definition?.block.top;
  if (definition === undefined || top === undefined || others.length > 0) return undefined;
  const grams = saidValue(propertiesOf(definition.block, top), 'batch', 'mass')?.grams;
  return grams !== undefined && grams > 0 ? grams : undefined;
}
