import type { actions as english } from '../en/actions.ts';
import type { Translation } from '../message.ts';
import type { Speaker } from '../speaker.ts';

/** Wie Aktionen heißen, wo sie angeboten werden, mit üblichen Namen unter 70 Zeichen. */
export const actions: Translation<typeof english> = {
  'write-variant-out.write': ({ name }) => `Ausschreiben, was von „${name}“ übernommen ist`,
  'make-variant.write': ({ name }) => `Als Abwandlung von „${name}“ schreiben`,
  'accept-finding.accept': ({ code }) => `„${code}“ hier annehmen, mit Begründung`,

  'add-part.write': ({ part }) => `„${part}“ als Zeile des Teigs schreiben, zugegeben`,
  'draw-part.write': ({ part }) => `„${part}“ als Entnahme aus der Rezeptur schreiben`,
  'inline-part.take': ({ part }) => `„${part}“ in den Teig zurücknehmen`,
  'extract-part.soaker': ({ name }) => `„${name}“ in ein Quellstück herausnehmen`,
  'extract-part.preferment': ({ name }) => `„${name}“ in einen Vorteig herausnehmen`,
  'extract-part.lines-soaker': ({ count }, say) => `${selected(count, say)} in ein Quellstück herausnehmen`,
  'extract-part.lines-preferment': ({ count }, say) =>
    `${selected(count, say)} in einen Vorteig herausnehmen`,

  'blend-flours.cheapest': ({ fraction, facts }, say) =>
    `Auf ${say.percent(fraction)} Eiweiß mischen, am billigsten: ${say.list(facts.map(say.say))}`,
  'blend-flours.cheapest-at': (blend, say) =>
    `Auf ${say.percent(blend.fraction)} Eiweiß mischen, ${say.money(blend.amount, blend.currency)} je kg: ${say.list(blend.facts.map(say.say))}`,
  'blend-flours.nearest': ({ fraction, facts }, say) =>
    `Auf ${say.percent(fraction)} Eiweiß mischen, nah am Jetzigen: ${say.list(facts.map(say.say))}`,
  'blend-flours.share': ({ fraction }, say) => say.percent(fraction, 2),

  'change-flour.change': ({ name, otherName }) => `„${name}“ zu „${otherName}“`,
  'change-flour.takes-more': ({ name, otherName, apartFraction }, say) =>
    `„${name}“ zu „${otherName}“: ${say.percent(apartFraction, 1)} mehr Wasser`,
  'change-flour.takes-less': ({ name, otherName, apartFraction }, say) =>
    `„${name}“ zu „${otherName}“: ${say.percent(apartFraction, 1)} weniger Wasser`,
  'same-feel.change': ({ name, otherName, written }) => `„${name}“ zu „${otherName}“, Wasser ${written}`,
  'same-feel.change-within': ({ name, otherName, written, withinFraction }, say) =>
    `„${name}“ zu „${otherName}“, Wasser ${written} ± ${say.percent(withinFraction, 1)}`,
  'teach-mixer.nothing': () =>
    'Beim Kneter steht schon, was seine Knetversuche sagen; nichts wurde geschrieben.',
  'teach-mixer.teach': ({ name }) => `„${name}“ lehren, was seine Knetversuche sagen`,
  'change-yeast.change': ({ name, otherName, fraction }, say) =>
    `„${name}“ zu „${otherName}“: ${say.number(fraction, 2)} g für 1 g`,

  'convert-mix.to': ({ name, parts }, say) => `Auf ${name} umrechnen: ${parts.map(say.say).join(' · ')}`,
  'convert-mix.to-hands': ({ parts }, say) => `Auf Hände umrechnen: ${parts.map(say.say).join(' · ')}`,
  'convert-mix.works': ({ lowMinutes, highMinutes }, say) => say.minutesBand(lowMinutes, highMinutes),
  'convert-mix.ends-as-stated': ({ celsius }, say) => say.celsius(celsius),
  'convert-mix.whatever-water': ({ celsius }, say) => `${say.celsius(celsius)}, jedes Wasser`,
  'convert-mix.too-cool': ({ celsius }, say) => `höchstens ${say.celsius(celsius)}`,
  'convert-mix.with-ice': ({ celsius, iceGrams }, say) =>
    `${say.celsius(celsius)}, ${say.mass(iceGrams)} Eis`,
  'convert-mix.with-water': ({ celsius, waterCelsius }, say) =>
    `${say.celsius(celsius)}, Wasser ${say.celsius(waterCelsius)}`,
  'convert-mix.with-tap': ({ celsius }, say) => `${say.celsius(celsius)}, Leitungswasser`,
  'convert-mix.batches': ({ count }, say) => say.count(count, { one: '# Teig', other: '# Teige' }),
  'convert-mix.too-much-for-hands': () => 'zu viel Teig',
  'convert-mix.too-little': () => 'wenig Teig',
  'convert-mix.pieces': ({ count }, say) => say.count(count, { other: '# Stück' }),
  'convert-mix.yield': ({ grams }, say) => `Ausbeute ${say.mass(grams)}`,

  'define-name.flour-here': ({ name }) => `„${name}“ als Mehl in dieser Datei definieren`,
  'define-name.flour': ({ name, file }) => `„${name}“ als Mehl in ${file} definieren`,
  'define-name.ingredient': ({ name, file }) => `„${name}“ als Zutat in ${file} definieren`,
  'define-name.mixer': ({ name, file }) => `„${name}“ als Kneter in ${file} definieren`,

  'fix-all.of-rule': ({ count, code }, say) =>
    `Alle ${say.count(count, { other: '#' })} von „${code}“ in dieser Datei beheben`,
  'fix-all.slips': () => 'Alle Schreibversehen beheben',

  'section-units.grams': ({ name }) => `„${name}“ in Gramm schreiben`,
  'section-units.grams-for': ({ name, grams }, say) =>
    `„${name}“ in Gramm schreiben, für ${say.mass(grams)} Mehl`,
  'section-units.percent': ({ name }) => `„${name}“ in Prozent schreiben`,
  'weigh-measures.line': ({ name }) => `Die gemessene Zeile von „${name}“ in Gramm schreiben`,
  'weigh-measures.lines': ({ name, count }, say) =>
    `${say.count(count, { one: '# gemessene Zeile', other: '# gemessene Zeilen' })} von „${name}“ in Gramm schreiben`,

  'sort-by-weight.sort': () => 'Nach Gewicht ordnen',
  'usual-order.sort': () => 'Diese Zeilen in die übliche Reihenfolge bringen',

  'give-balance.give': ({ name }) => `„${name}“ als „balance“ schreiben`,
  'give-balance.swap': ({ name, otherName }) =>
    `„${name}“ als „balance“ schreiben, „${otherName}“ in Prozent`,
  'write-out.write': ({ name, fraction }, say) => `„${name}“ als ${say.percent(fraction)} schreiben`,
  'state-hydration.plain': ({ name, fraction }, say) =>
    `„${name}“ über die Hydration angeben: ${say.percent(fraction)}`,
  'state-hydration.effective': ({ name, fraction }, say) =>
    `„${name}“ über die effektive Hydration angeben: ${say.percent(fraction)}`,
};

function selected(count: number, say: Speaker): string {
  return say.count(count, { one: 'Die # gewählte Zeile', other: 'Die # gewählten Zeilen' });
}
