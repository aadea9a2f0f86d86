import type { FormulaModel } from '../model/formula-model.ts';

/**
 * What a fold, three hours of bulk and each hour beyond them add to the development of a dough, as D: a dough that is only stirred
 * together is finished by a night. Common practice, no source.
 */
const byFold = 0.15;
const byThreeHours = 0.1;
const byLaterHour = 0.12;

/** What folds and time do for a dough that was mixed short. */
export interface AfterMixing {
  readonly folds: number;
  readonly hours: number;
  /** Together, as D. */
  readonly development: number;
}

/** The folds and the hours of rest, bulk and retarding that a formula gives its dough. */
export function afterMixing(model: FormulaModel): AfterMixing {
  let [folds, seconds] = [0, 0];
  for (const { statement } of model.mixes.flatMap((mix) => mix.phases)) {
    if (statement.property === 'fold') folds++;
    if (statement.property === 'rest' && statement.value?.form === 'duration')
      seconds += statement.value.seconds;
  }
  for (const process of model.processes) {
    if (process.header.part !== undefined && process.header.part.folded !== model.name.folded) continue;
    for (const { step } of process.steps) {
      folds += step.foldSeconds.length + (step.known === 'fold' ? 1 : 0);
      if (step.known === 'bulk' || step.known === 'retard') seconds += step.seconds ?? 0;
    }
  }
  return developmentBy(folds, seconds / 3600);
}

/** The same with more folds. */
export function withFolds({ folds, hours }: AfterMixing, more: number): AfterMixing {
  return developmentBy(folds + more, hours);
}

function developmentBy(folds: number, hours: number): AfterMixing {
  const byTime = (byThreeHours * Math.min(3, hours)) / 3 + byLaterHour * Math.max(0, hours - 3);
  return { folds, hours, development: byFold * folds + byTime };
}
