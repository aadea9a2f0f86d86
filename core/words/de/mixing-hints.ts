import type { mixingHints as english } from '../en/mixing-hints.ts';
import type { Translation } from '../message.ts';

/** Was die Zahlen am Ende der Zeilen sind und worauf sie beruhen; Markdown. */
export const mixingHints: Translation<typeof english> = {
  'hint.both': ({ fraction, grams }, say) => `${say.percent(fraction)} · ${say.mass(grams)}`,
  'hint.share': ({ fraction }, say) => say.percent(fraction),
  'hint.weight': ({ grams }, say) => say.mass(grams),
  'hint.not-known': () => 'Noch nicht bekannt',

  'hint.percent-stated': ({ fraction, grams }, say) =>
    `**${say.mass(grams)}**: ${say.percent(fraction)}. Angegeben ist hier der Prozentwert.`,
  'hint.percent-stated-of': ({ fraction, grams, otherGrams }, say) =>
    `**${say.mass(grams)}**: ${say.percent(fraction)} von ${say.mass(otherGrams)}. Angegeben ist hier der Prozentwert.`,
  'hint.weight-stated': ({ fraction }, say) =>
    `**${say.percent(fraction)}** vom Mehl. Angegeben ist hier das Gewicht.`,
  'hint.weight-stated-of': ({ fraction, otherGrams }, say) =>
    `**${say.percent(fraction)}** vom Mehl (${say.mass(otherGrams)}). Angegeben ist hier das Gewicht.`,
  'hint.weight-stated-line': ({ fraction }, say) =>
    `**${say.percent(fraction)}** seiner Zeile mit 100 %. Angegeben ist hier das Gewicht.`,
  'hint.weight-stated-line-of': ({ fraction, otherGrams }, say) =>
    `**${say.percent(fraction)}** seiner Zeile mit 100 % (${say.mass(otherGrams)}). Angegeben ist hier das Gewicht.`,
  'hint.balance': ({ figures }, say) =>
    `**${say.say(figures)}**: was von 100 % Mehl übrig ist, aus den anderen Mehlen berechnet.`,
  'hint.hydration': ({ figures, fraction }, say) =>
    `**${say.say(figures)}**: so viel, wie ${say.percent(fraction)} Hydration verlangen, über die ganze Rezeptur berechnet.`,
  'hint.effective-hydration': ({ figures, fraction }, say) =>
    `**${say.say(figures)}**: so viel, wie ${say.percent(fraction)} effektive Hydration verlangen, über die ganze Rezeptur berechnet.`,
  'hint.remaining': ({ figures }, say) => `**${say.say(figures)}**: alles, was von dem Teil übrig ist.`,
  'hint.density': (line, say) =>
    `**${say.say(line.figures)}**, bei einer Dichte von ${say.number(line.gramsPerMillilitre, 3)} g/ml: ${say.say(line.source)}.`,
  'hint.no-density': ({ figures }, say) => `**${say.say(figures)}**: die Dichte ist nicht bekannt.`,
  'hint.pieces': ({ figures, grams, source }, say) =>
    `**${say.say(figures)}**, bei ${say.mass(grams)} je Stück: ${say.say(source)}.`,
  'hint.no-piece-weight': ({ figures }, say) =>
    `**${say.say(figures)}**: was ein Stück wiegt, ist nicht bekannt.`,
  'hint.composition': ({ source }, say) => `_Zusammensetzung: ${say.say(source)}._`,

  'hint.scale-assumed': ({ grams }, say) =>
    `Es steht keine Ausbeute da; die Gewichte gelten deshalb für ${say.mass(grams)} Mehl.`,
  'hint.scale-lines': () =>
    'Der Teig ist so groß, wie ihn die Zeilen machen, in denen ein Gewicht angegeben ist.',
  'hint.scale-yield': ({ written }) => `Die Größe des Teigs folgt aus \`${written}\`, wie angegeben.`,

  'hint.totals': () =>
    'Die Hydration ist das Wasser der Wasserzeilen durch alles Mehl, die Teile eingeschlossen; das Gewicht ist alles, was in den Kessel kommt.',
  'hint.totals-effective': ({ fraction }, say) =>
    `Mit dem Wasser in den anderen Zutaten sind es ${say.percent(fraction)}, nach der Zusammensetzung jeder einzelnen (die Quelle steht in ihrem Hinweis).`,
  'hint.part': () =>
    'Die Hydration ist das Wasser dieses Teils durch sein Mehl; das Gewicht ist alles, was davon gemacht wird.',
  'hint.part-outside': () =>
    'Das Gewicht des Ganzen. Es kommt nie in den Kessel und zählt in keiner Hydration.',

  'hint.mixing': () =>
    'Die Minuten des Knetprogramms bis hierher, die Teigtemperatur am Ende dieser Zeile und wie weit der Teig entwickelt ist.',
  'hint.computed-from': ({ facts }, say) => `Berechnet aus: ${say.list(facts.map(say.say))}.`,
  'hint.room': ({ celsius }, say) => `Raum ${say.celsius(celsius)} (angegeben)`,
  'hint.room-assumed': ({ celsius }, say) => `Raum ${say.celsius(celsius)} (gängige Praxis: ein milder Tag)`,
  'hint.flour': ({ celsius }, say) => `Mehl ${say.celsius(celsius)} (angegeben)`,
  'hint.flour-assumed': ({ celsius }, say) => `Mehl ${say.celsius(celsius)} (gängige Praxis: ein milder Tag)`,
  'hint.machine': ({ name }) => `${name}, wie solche Maschinen meist sind (gängige Praxis)`,
  'hint.machine-stated': ({ name }) => `${name}, wie sein Abschnitt es angibt (das Übrige gängige Praxis)`,
  'hint.bands': ({ fraction }, say) =>
    `_Die Stufe wird in Bändern gezeigt: gängige Praxis und unsere eigene Anpassung, ±${say.percent(fraction)}, bis eigene Knetversuche bessere Zahlen liefern._`,
  'hint.written-in': ({ meant }) => `In die Zeile geschrieben ist es \`${meant}\`.`,
};
