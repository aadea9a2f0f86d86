import type { planSheets as english } from '../en/plan-sheets.ts';
import type { Translation } from '../message.ts';

/** Ein Produktionsplan, wie er gezeigt wird: was wann getan wird und was nicht passt. */
export const planSheets: Translation<typeof english> = {
  'plan.make': ({ part, grams, names }, say) =>
    `${part} ansetzen, ${say.mass(grams)}, für ${say.list(names)}`,
  'plan.make-stands': ({ part, grams, names, seconds }, say) =>
    `${part} ansetzen, ${say.mass(grams)}, steht ${say.duration(seconds)}, für ${say.list(names)}`,
  'plan.dough-batch': ({ name, number, count }) => `${name}, Teig ${number} von ${count}`,
  'plan.size': ({ grams }, say) => say.mass(grams),
  'plan.size-pieces': ({ count, grams }, say) =>
    `${say.count(count, { other: '# Stück' })}, ${say.mass(grams)}`,
  'plan.mix': ({ name, figures }, say) => `${name} kneten: ${say.say(figures)}`,
  'plan.mix-in': ({ name, figures, place }, say) => `${name} kneten: ${say.say(figures)} ${say.say(place)}`,
  'plan.mix-long': ({ name, figures, seconds }, say) =>
    `${name} kneten: ${say.say(figures)}, ${say.duration(seconds)}`,
  'plan.mix-in-long': ({ name, figures, place, seconds }, say) =>
    `${name} kneten: ${say.say(figures)} ${say.say(place)}, ${say.duration(seconds)}`,
  'plan.bake': ({ name, seconds }, say) => `${name} backen, ${say.duration(seconds)}`,
  'plan.bake-loads': ({ name, seconds, count }, say) =>
    `${name} backen, ${say.duration(seconds)}, ${say.count(count, { one: '# Schuss', other: '# Schüsse nacheinander' })}`,
  'plan.out': ({ name }) => `${name} aus dem Ofen`,
  'plan.done': ({ name }) => `${name} fertig`,
  'plan.done-late': ({ name, seconds }, say) => `${name} fertig, ${say.duration(seconds)} zu spät`,

  'plan.line': ({ number, sentence }) => `Zeile ${number}: ${sentence}`,
  'plan.line-left-out': ({ number, name, reason }, say) =>
    `Zeile ${number}, ${name}, ist nicht im Plan: ${say.say(reason)}.`,
  'plan.late': ({ name, seconds }, say) =>
    `${name} wird nicht rechtzeitig fertig: ${say.duration(seconds)} zu spät.`,
  'plan.late-because': ({ name, seconds, reason }, say) =>
    `${name} wird nicht rechtzeitig fertig: ${say.duration(seconds)} zu spät; ${say.say(reason)}.`,
  'plan.untimed': ({ names }, say) =>
    `Für ${say.list(names)} ist niemand gerechnet: für diese Arbeit steht keine Zeit da.`,
  'plan.no-temperature': ({ names }, say) =>
    `Für das Backen von ${say.list(names)} steht keine Temperatur da: der Ofen wird dafür auf keine andere gebracht.`,
  'plan.shared-load': ({ names, when }, say) => `Ein Schuss im Ofen, ${say.say(when)}: ${say.list(names)}.`,
  'plan.heat': ({ seconds }, say) => `Ofen aufheizen, ${say.duration(seconds)}`,
  'plan.heat-to': ({ celsius, seconds }, say) =>
    `Ofen auf ${say.celsius(celsius)} aufheizen, ${say.duration(seconds)}`,
  'plan.change-to': ({ celsius, seconds }, say) =>
    `Ofen auf ${say.celsius(celsius)} bringen, ${say.duration(seconds)}`,
  'plan.heating': () => 'Aufheizen',
  'plan.to-degrees': ({ celsius }, say) => `auf ${say.celsius(celsius)}`,
  'plan.person': ({ number }) => `Person ${number}`,
  'plan.hands': () => 'Hände zugleich',
  'plan.hands-from': ({ number, written }) => `${number}, zuerst ${written}`,
  'plan.hands-at-least': ({ number, written }) => `mindestens ${number}, zuerst ${written}`,
  'plan.people': () => 'Leute',
  'plan.work-of': ({ name, written }) => `${name}: ${written}`,
  'plan.too-little': ({ name, grams, leastGrams, otherName }, say) =>
    `${name}: ${say.mass(grams)} sind weniger als die ${say.mass(leastGrams)}, die ${otherName} braucht.`,
  'plan.gap': ({ name, otherName, count, grams, leastGrams }, say) =>
    `${name}: ein Teig ist zu viel für ${otherName}, und ${say.number(count, 0)} sind zu wenig, je ${say.mass(grams)}, wo er ${say.mass(leastGrams)} braucht.`,
  'plan.several-loads': ({ name }) =>
    `${name}: ein Teig füllt den Ofen mehr als einmal; ein Teil davon wartet also, während der erste Schuss backt.`,
  'plan.no-mixing': ({ name }) =>
    `${name} hat kein Knetprogramm, das sich rechnen lässt: dafür ist keine Zeit eingeplant.`,
  'plan.no-baking': ({ name }) => `${name} hat keinen Schritt, der backt: dafür ist kein Ofen eingeplant.`,
  'plan.cost-not-known': ({ reason }, say) =>
    `Was die Vorräte kosten, ist nicht bekannt: ${say.say(reason)}.`,
  'plan.cost-without': ({ names }, say) =>
    `Die Kosten der Vorräte sind ohne ${say.list(names)}: kein brauchbarer Preis.`,

  'plan.ready': () => 'fertig',
  'plan.first-work': () => 'erste Arbeit',
  'plan.first-dough': () => 'erster Teig',
  'plan.late-by': () => 'zu spät um',
  'plan.stores-cost': () => 'Kosten der Vorräte',
  'plan.and-more': ({ written }) => `${written} und mehr`,
  'plan.by-hand': () => 'von Hand',
  'plan.bench': () => 'Tisch und Gare',
  'plan.oven': () => 'Ofen',
  'plan.lanes': () => 'Wer und was wann belegt ist',
  'plan.lanes-told': ({ names }, say) => `${say.list(names)} gegen die Uhr.`,
  'plan.lanes-late': ({ names }, say) => `Zu spät: ${say.list(names)}.`,
  'plan.timeline': () => 'Zeitplan',
  'plan.batches': () => 'Teige',
  'plan.before-doughs': () => 'Vor den Teigen',
  'plan.stores': () => 'Vorräte',
  'plan.of': ({ number, count }) => `${number} von ${count}`,
  'plan-column.at': () => 'Wann',
  'plan-column.work': () => 'Arbeit',
  'plan-column.dough': () => 'Teig',
  'plan-column.batch': () => 'Nr.',
  'plan-column.pieces': () => 'Stück',
  'plan-column.dough-weight': () => 'Teiggewicht',
  'plan-column.mixer': () => 'Kneter',
  'plan-column.mixed': () => 'geknetet',
  'plan-column.oven': () => 'Ofen',
  'plan-column.ready': () => 'fertig',
  'plan-column.part': () => 'Teil',
  'plan-column.weight': () => 'Gewicht',
  'plan-column.made': () => 'angesetzt',
  'plan-column.stands': () => 'steht',
  'plan-column.needed': () => 'gebraucht',
  'plan-column.for': () => 'für',
  'plan-column.ingredient': () => 'Zutat',
  'plan-column.cost': () => 'Kosten',
};
