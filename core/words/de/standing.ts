import type { standing as english } from '../en/standing.ts';
import type { Translation } from '../message.ts';

/** Die Stunden außerhalb des Kneters: Schritte, Gare und der Plan eines Tages. */
export const standing: Translation<typeof english> = {
  'step-time.begins': ({ seconds }, say) => `Beginnt nach ${say.duration(seconds)}.`,
  'step-time.first': ({ seconds }, say) => `Beginnt als Erstes, endet nach ${say.duration(seconds)}.`,
  'step-time.later': ({ seconds, otherSeconds }, say) =>
    `Beginnt nach ${say.duration(seconds)}, endet nach ${say.duration(otherSeconds)}.`,
  'step-time.allow': ({ names }, say) => `Dazu kommt, was keine Zeit hat: ${say.list(names)}.`,
  'step-time.whole': ({ seconds }, say) => `**${say.duration(seconds)}** nach den Zeiten, die dastehen.`,

  'rise.as-long': ({ seconds, celsius }, say) =>
    `**So lange wie ${say.duration(seconds)} bei ${say.celsius(celsius)}**.`,
  'rise.nothing-moves': () => 'Darin bewegt sich nichts.',
  'rise.far': () => 'Bis dahin ist der Teig weit mehr als verdoppelt.',
  'rise.grown': (rise, say) =>
    `Am Ende um etwa ${say.percent(rise.fraction, 0)} aufgegangen (${say.number(rise.lowFraction * 100, 0)}–${say.percent(rise.highFraction, 0)}).`,
  'rise.warmth': ({ fromCelsius, toCelsius }, say) =>
    `Der Teig geht dabei von ${say.celsius(fromCelsius)} auf ${say.celsius(toCelsius)}.`,
  'rise.by-trials': () => '_Nach der Gare der eigenen Knetversuche; der Teig gilt mehr als die Uhr._',
  'rise.until-trial': () =>
    '_Gängige Praxis, bis ein Knetversuch ein `rise` angibt; der Teig gilt mehr als die Uhr._',
  'rise.common-practice': () => '_Gängige Praxis; der Teig gilt mehr als die Uhr._',

  'time.clock': ({ minutes }, say) => say.clock(minutes),
  'time.day': ({ number, minutes }, say) => `Tag ${number} ${say.clock(minutes)}`,
  'time.date': ({ written, minutes }, say) => `${written} ${say.clock(minutes)}`,

  'planned.batches': ({ count, when }, say) =>
    `${say.count(count, { one: '# Teig', other: '# Teige' })}, der erste wird ${say.say(when)} geknetet.`,
  'planned.first-work': ({ part, when }, say) => `Die erste Arbeit ist ${part}, ${say.say(when)}.`,
  'planned.late': ({ name, seconds }, say) => `${name} wird ${say.duration(seconds)} zu spät fertig.`,
  'planned.in-time': () => 'Alles wird rechtzeitig fertig.',
  'planned.left-out': ({ reason }, say) => `Nicht im Plan: ${say.say(reason)}.`,
  'planned.together': ({ name }) => `**${name}**, zusammen mit den anderen Zeilen davon`,
  'planned.batch': ({ figures, parts }, say) => `${say.say(figures)}: ${parts.map(say.say).join(' · ')}`,
  'planned.pieces': ({ count, grams }, say) =>
    `${say.count(count, { other: '# Stück' })}, ${say.mass(grams)}`,
  'planned.mix': ({ when }, say) => `kneten ${say.say(when)}`,
  'planned.oven': ({ when }, say) => `Ofen ${say.say(when)}`,
  'planned.ready': ({ when }, say) => `fertig ${say.say(when)}`,
  'planned.part': ({ part, grams, when }, say) => `${part}: ${say.mass(grams)} ansetzen ${say.say(when)}`,
  'planned.doughs': ({ count }, say) => say.count(count, { one: '# Teig', other: '# Teige' }),
  'planned.formulas': ({ count }, say) => say.count(count, { one: '# Rezeptur', other: '# Rezepturen' }),
};
