import type { PlannedPart } from '../calc/plan/plan.ts';
import { formulaOf } from '../model/formula-model.ts';
import { type SaidProperties, saidValue } from '../model/properties.ts';
import type { Scope } from '../model/scope.ts';
import { wholeBlock } from '../model/variant.ts';
import { groupOf } from '../text/element.ts';
import type { Analysis } from './analysis.ts';

/** What is made before the dough, with how long each stands. */
export function plannedParts(analysis: Analysis, scope: Scope): PlannedPart[] {
  const { resolved, solved } = analysis;
  const { sections } = resolved.input;
  return (solved?.sections ?? []).slice(1).flatMap((section): PlannedPart[] => {
    if ((!section.inBowl && !section.enclosed) || section.totalGrams === undefined) return [];
    const said = saidOf(analysis, section.id, scope);
    const stands = ['ferment', 'soak', 'hold'].reduce(
      (sum, word) => sum + (said === undefined ? 0 : (saidValue(said, word, 'duration')?.seconds ?? 0) / 60),
      0,
    );
    const taker = section.drawn
      ? undefined
      : sections.find((one) => one.lines.some((line) => line.part && line.key === section.id));
    return [
      {
        key: keyOf(analysis, section.id),
        name: section.name,
        grams: section.totalGrams,
        standsMinutes: stands,
        ...(taker === undefined || taker === sections[0] ? {} : { takenBy: keyOf(analysis, taker.id) }),
      },
    ];
  });
}

/** A formula that several doughs take is made once for all of them; other parts belong to their dough. */
function keyOf(analysis: Analysis, sectionId: string): string {
  const shared = /^F\d+:(.*)$/.exec(sectionId)?.[1];
  return shared ?? `${analysis.resolved.model.name.folded}:${sectionId}`;
}

function saidOf(analysis: Analysis, sectionId: string, scope: Scope): SaidProperties | undefined {
  const shared = /^F\d+:(.*):(S\d+)?$/.exec(sectionId);
  if (shared === null) return analysis.resolved.model.sections.find((one) => one.id === sectionId)?.said;
  const definition = scope.find('formula', groupOf(shared, 1))[0]?.[0];
  const model =
    definition === undefined
      ? undefined
      : formulaOf(wholeBlock(definition.block, scope.from(definition.uri)));
  return shared[2] === undefined ? model?.said : model?.sections.find((one) => one.id === shared[2])?.said;
}
