import type { plans as english } from '../en/plans.ts';
import type { Translation } from '../message.ts';

/** Warum eine Zeile nicht im Plan ist, als Satzteile hinter einem Doppelpunkt, und was an einem Plan auffällt. */
export const plans: Translation<typeof english> = {
  'plan.no-ready': ({ example }) =>
    `nirgends steht, wann es fertig sein muss; im Plan „${example}“ schreiben`,
  'plan.no-weights': () => 'die Gewichte sind noch nicht bekannt',
  'plan.no-piece-weight': ({ example }) =>
    `die Rezeptur gibt nicht an, was ein Stück wiegt; dort „${example}“ schreiben`,
  'plan.no-bake-loss': ({ example }) =>
    `die Rezeptur gibt ihren Backverlust nicht an; dort „${example}“ schreiben`,
  'plan.too-many': ({ count }, say) =>
    `damit hätte der Tag mehr als ${say.count(count, { one: '# Teig', other: '# Teige' })}, so wie Kessel und Ofen angegeben sind; weniger davon verlangen`,
  'plan.none': () => 'davon ist nichts verlangt',
  'plan.no-formula': () => 'keine Rezeptur heißt so',
  'plan.several-formulas': () => 'mehrere Rezepturen heißen so; jede braucht einen eigenen Namen',
  'plan.no-amount': ({ choices }, say) =>
    `wie viel davon, ist weder in Stück noch in Gewicht angegeben; ${say.anyOf(choices.map((one) => `„${one}“`))} schreiben`,

  'cannot-be-planned.because': ({ name, reason }, say) => `„${name}“ ist nicht im Plan: ${say.say(reason)}.`,

  'late.alone': () => 'ab „begin“ dauert schon seine eigene Arbeit länger, als Zeit ist',
  'late.heating': () => 'der Ofen ist noch nicht heiß, wenn er hineinkönnte',
  'late.people': () => 'alle Hände sind bei anderer Arbeit',
  'late.change': () => 'der Ofen muss erst auf eine andere Temperatur kommen',
  'late.oven': () => 'der Ofen ist mit anderen Schüssen belegt',
  'late.mixer': () => 'sein Kneter ist mit anderen Teigen belegt',
  'late.together': () => 'Kneter, Ofen und Hände sind mit anderen Teigen belegt',
  'not-ready-in-time.because': ({ name, seconds, reason }, say) =>
    `„${name}“ wird ${say.duration(seconds)} zu spät fertig: ${say.say(reason)}. Früher beginnen, weniger verlangen oder ein späteres „ready“ schreiben.`,
  'not-ready-in-time.late': ({ name, seconds }, say) =>
    `„${name}“ wird ${say.duration(seconds)} zu spät fertig, da vor „begin“ kein Teig geknetet wird. Früher beginnen, weniger verlangen oder ein späteres „ready“ schreiben.`,
};
