import { figureAt } from '../../text/element.ts';
import { isPerGram, keysWithin } from './formula-composition.ts';
import { type Mass, type Masses, massesAt, massOf, sectionAt } from './formula-facts.ts';
import { doughOf } from './formula-input.ts';
import { addMass, zeroMass } from './formula-masses.ts';
import { isBesideBowl } from './formula-structure.ts';

/** Everything in the bowl by index of the ingredient's key, those of the dough's lines first. */
export function overallMasses(masses: Masses): Map<number, Mass> {
  const { structure } = masses;
  const dough = doughOf(structure);
  const overall = new Map<number, Mass>();
  const at = (keyIndex: number): Mass => {
    const mass = overall.get(keyIndex) ?? zeroMass(structure);
    overall.set(keyIndex, mass);
    return mass;
  };
  const addPart = (index: number, mass: Mass, lackingOnly: boolean): void => {
    const { perGram } = massesAt(masses, index);
    for (const keyIndex of keysWithin(structure, sectionAt(structure, index))) {
      if (lackingOnly && structure.inDough[keyIndex] !== 0) continue;
      if (isPerGram(perGram)) addMass(at(keyIndex), mass, figureAt(perGram.byKey, keyIndex));
      else at(keyIndex).unsolved ??= perGram;
    }
  };

  for (const line of dough.lines) {
    if (line.keyIndex < 0) continue;
    if (line.amount.kind === 'none') at(line.keyIndex).unsolved ??= line.amount.unsolved;
    else addMass(at(line.keyIndex), massOf(masses, line), 1);
  }
  const { culture } = doughOf(masses);
  if (culture) addPart(0, culture, false);
  for (const line of dough.lines) {
    if (line.child < 0 || line.amount.kind === 'none' || isBesideBowl(line, structure.sections)) continue;
    addPart(line.child, massOf(masses, line), false);
  }
  for (const section of structure.sections) {
    if (section.draws.length > 0) addPart(section.index, massesAt(masses, section.index).used, true);
  }
  return overall;
}

/** What drawn parts bring of an ingredient that the dough's lines have. */
export function drawnMass(masses: Masses, keyIndex: number): Mass {
  const { structure } = masses;
  const mass = zeroMass(structure);
  for (const section of structure.sections) {
    if (section.draws.length === 0) continue;
    const { perGram, used } = massesAt(masses, section.index);
    if (isPerGram(perGram)) addMass(mass, used, figureAt(perGram.byKey, keyIndex));
    else if (keysWithin(structure, section).includes(keyIndex)) mass.unsolved ??= perGram;
  }
  return mass;
}
