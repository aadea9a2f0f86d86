import type { blends as english } from '../en/blends.ts';
import type { Translation } from '../message.ts';

/** Warum Mehle keine Mischung ergeben, die das Verlangte leistet: Sätze hinter einem Doppelpunkt. */
export const blends: Translation<typeof english> = {
  'blend.several-definitions': ({ name }) =>
    `„${name}“ ist hier mehrmals definiert, darum zählt keines davon`,
  'blend.not-defined': ({ name }) => `„${name}“ ist nicht definiert`,
  'blend.not-a-flour': ({ name }) => `„${name}“ ist kein Mehl`,
  'blend.one-protein': ({ fraction, usualFraction }, say) =>
    `alle diese Mehle haben ${say.percent(usualFraction, 2)} Eiweiß bei ${say.percent(0.14)} Feuchte, und ${say.percent(fraction, 2)} sind verlangt`,
  'blend.protein': ({ fraction, lowFraction, highFraction }, say) =>
    `diese Mehle reichen von ${say.percent(lowFraction, 2)} bis ${say.percent(highFraction, 2)} Eiweiß bei ${say.percent(0.14)} Feuchte, und ${say.percent(fraction, 2)} sind verlangt`,
  'blend.least-ash': ({ fraction, lowFraction }, say) =>
    `der kleinste Mineralstoffgehalt dieser Mehle ist ${say.percent(lowFraction, 2)} der Trockenmasse, und höchstens ${say.percent(fraction, 2)} sind verlangt`,
  'blend.ash': ({ fraction }, say) =>
    `keine Mischung dieser Mehle hat bei allem anderen, was verlangt ist, so wenig Mineralstoffe wie ${say.percent(fraction, 2)} der Trockenmasse`,
  'blend.none': () => 'keine Mischung dieser Mehle hält alle gesetzten Anteile ein',
};
