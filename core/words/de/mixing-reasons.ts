import type { mixingReasons as english } from '../en/mixing-reasons.ts';
import type { Translation } from '../message.ts';

/** Warum etwas am Kneten nicht bekannt ist: Satzteile hinter einem Doppelpunkt; und was angenommen wurde, in Sätzen. */
export const mixingReasons: Translation<typeof english> = {
  'flour.none': () => 'im Teig ist kein Mehl',
  'flour.of': ({ name, reason }, say) => `${name}: ${say.say(reason)}`,
  'flour.no-protein': () => 'das Eiweiß des Mehls ist nicht angegeben',
  'flour.no-ash': () => 'die Asche des Mehls ist nicht angegeben',
  'flour.no-network': ({ name }) =>
    `Mehl aus „${name}“ bildet kein Klebernetz, das sich durch Kneten entwickeln könnte`,
  'flour.mostly-rye': ({ fraction }, say) =>
    `mehr als ${say.percent(fraction)} des Mehls sind Roggen oder anderes Getreide, das kein Klebernetz bildet; mischen, bis der Teig gleichmäßig ist, überkneten lässt er sich nicht`,
  'flour.mostly-other': ({ fraction }, say) =>
    `mehr als ${say.percent(fraction)} des Mehls bilden kein Klebernetz; mischen, bis der Teig gleichmäßig ist, überkneten lässt er sich nicht`,
  'flour.protein-assumed': ({ fraction }, say) =>
    `Das Eiweiß des Mehls ist nicht angegeben: angenommen werden ${say.percent(fraction)}, deshalb sind die Bänder breit.`,
  'flour.type-alone': () =>
    'Die Type eines Mehls sagt, wie hell es ist, und nicht, wie stark: angenommen wird das übliche Eiweiß, deshalb sind die Bänder breiter. Ein eigener Abschnitt kann „protein“, „peak“ und „stability“ angeben.',
  'flour.extrapolated': ({ lowFraction, highFraction }, say) =>
    `Das Eiweiß liegt außerhalb von ${say.number(lowFraction * 100, 1)} bis ${say.percent(highFraction)}, deshalb ist die Wasseraufnahme extrapoliert.`,
  'flour.narrows': () =>
    'Roggen und anderes Getreide, das kein Klebernetz bildet, verringern die Knettoleranz.',

  'mixing.no-lines': () => 'die Rezeptur hat noch keine Zeilen',
  'mixing.no-programme': () => 'die Rezeptur hat kein Knetprogramm',
  'mixing.no-mixer': () => 'der Kneter ist nicht bekannt',
  'mixing.mixer-not-known': ({ name }) => `der Kneter „${name}“ ist nicht bekannt`,
  'mixing.no-weights': () => 'die Gewichte des Teigs sind noch nicht bekannt',
  'mixing.portion-unsaid': ({ name }) => `es steht nicht da, wie viel ${name} zuerst hineinkommt`,
  'mixing.line-unfinished': () => 'eine Zeile des Knetprogramms ist nicht fertig',
  'mixing.water-stated': ({ waterCelsius }, say) =>
    `die Datei gibt das Wasser mit ${say.celsius(waterCelsius)} an`,
  'mixing.no-rpm': ({ number }) =>
    `Gang ${number} des Kneters hat keine Drehzahl (rpm); sie gehört in den Abschnitt des Kneters`,
  'mixing.no-such-rpm': ({ number, rpm }, say) =>
    `kein Kneter läuft mit ${say.number(rpm, 1)} rpm; Gang ${number} im Abschnitt des Kneters berichtigen`,
  'mixing.too-gentle': () => 'so sanfte Arbeit knetet ihn nie aus',
  'mixing.never-together': () => 'das Programm knetet Mehl und Wasser nie zusammen',
  'mixing.too-hot': ({ limitCelsius }, say) =>
    `er wäre heißer als ${say.celsius(limitCelsius)}, und so warm wird kein Teig geknetet`,
  'mixing.over': () => 'das Programm ist dann schon zu Ende',
  'mixing.not-asked': () => 'gefragt ist nur nach Temperaturen',
  'mixing.no-limit': () => 'nach keiner Temperatur ist gefragt',
  'mixing.no-end': () => 'die Endtemperatur ist nicht bekannt',
  'mixing.never-so-warm': () => 'im letzten Gang wird der Teig nie so warm',
  'mixing.no-temperature': () => 'die Zahlen des Kneters führen zu keiner Temperatur',
  'mixing.nothing-warm': () => 'nichts mit bekannter Temperatur ist im Kessel',
  'mixing.nothing-yet': () => 'bis dahin ist nichts im Kessel',
  'mixing.on-the-way': () => 'die Temperaturen unterwegs sind nicht bekannt',
  'mixing.works-too-early': () =>
    'Das Programm knetet, bevor Mehl und Wasser beide im Kessel sind; diese Minuten entwickeln nichts.',
  'mixing.gentle-speed': ({ number }) =>
    `Gang ${number} ist so sanft, dass er mehr mischt als entwickelt: Arbeit zählt erst ab einer Mindestintensität voll.`,
  'mixing.gentle-work': () =>
    'Die Arbeit ist so sanft, dass sie mehr mischt als entwickelt: Arbeit zählt erst ab einer Mindestintensität voll.',

  'conversion.no-speeds': () => 'der andere Kneter gibt keine Gänge an',
  'conversion.too-long': ({ hours }, say) =>
    `der andere Kneter bräuchte mehr als ${say.count(hours, { one: 'eine Stunde', other: '# Stunden' })}`,

  'fermentation.nothing-raises': () => 'nichts in der Rezeptur lockert den Teig',

  'heat.amount-not-known': ({ name }) => `die Menge von „${name}“ ist nicht bekannt`,
  'heat.temperature-not-known': ({ name }) => `die Temperatur von „${name}“ ist nicht bekannt`,
  'heat.no-target': () => 'die gewünschte Teigtemperatur ist nicht angegeben',
  'heat.no-room': () => 'die Raumtemperatur ist nicht angegeben',
  'heat.no-tap': () => 'die Temperatur des Leitungswassers ist nicht angegeben',
  'heat.no-water-temperature': () => 'die Temperatur des Wassers ist nicht angegeben',
  'heat.no-rise': () => 'die Erwärmung beim Kneten ist nicht bekannt',
  'heat.no-water': () => 'es gibt kein Wasser, das sich temperieren ließe',
  'heat.no-solution': () => 'die angegebenen Temperaturen führen zu keiner Wassertemperatur',
  'heat.nothing': () => 'im Kessel ist nichts',

  'rule-of-thumb.ice': () => 'die Faustregel rechnet nicht mit Eis, das abgewogen dazukommt',
  'rule-of-thumb.no-flour': () => 'kein Mehl kommt trocken hinein, also gibt es keine Mehltemperatur',
  'rule-of-thumb.no-friction': () =>
    'so langes oder starkes Kneten hat keinen Reibungsfaktor, mit dem eine Faustregel rechnen könnte',
  'rule-of-thumb.no-lever': () => 'kein Wasser ändert etwas an diesem Teig',
  'rule-of-thumb.no-water': () => 'die Faustregel führt zu keinem Wasser, das sich zapfen ließe',

  'trial.no-yield': () => 'die Rezeptur hat keine Ausbeute',
  'trial.no-size': () => 'die Rezeptur hat keine Ausbeute, also ist nicht bekannt, was hineinkam',
  'trial.no-water': () => 'der Versuch gibt nicht an, wie warm das Wasser war',
  'trial.no-end': () => 'der Versuch gibt nicht an, wie warm der Teig am Ende war',
  'trial.no-dough-weight': () => 'der Versuch gibt nicht an, was der Teig gewogen hat',
  'trial.line-unfinished': () => 'eine Zeile im eigenen Programm des Versuchs ist nicht fertig',
  'trial.no-hydration': () => 'die Hydration ist nicht bekannt',
  'trial.other-size': () => 'der Teig hatte eine andere Größe als der der Rezeptur',
  'trial.no-loss': () => 'der Teig wiegt, was hineinkam',
  'trial.not-apart': () => 'Mehl und Wasser kommen nicht beide für sich hinein',
  'trial.no-temperatures': () => 'die Temperaturen dessen, was hineinkam, sind nicht bekannt',
};
