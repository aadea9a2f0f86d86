import type { experiments as english } from '../en/experiments.ts';
import type { Translation } from '../message.ts';

/** Eine Versuchsreihe: warum ein Teig darin nicht bekannt ist, was zu ihr zu sagen ist, und ihr Blatt. */
export const experiments: Translation<typeof english> = {
  'experiment.no-formula': () => 'keine Rezeptur heißt so, oder mehrere',
  'experiment.no-mixer': () =>
    'worin er geknetet wird, ist nicht bekannt; „in“ und den Namen des Kneters schreiben oder „by hand“',
  'experiment.no-run': () =>
    'seine Rezeptur hat kein Knetprogramm; schreiben, wie er geknetet wird, „speed 1 for 20 min“',
  'experiment.no-run-by-hand': () =>
    'wie lange er geknetet wird, ist nicht bekannt; „knead 12 min“ schreiben',
  'experiment.no-run-in-mixer': () =>
    'seine Rezeptur wird von Hand geknetet; schreiben, wie der Kneter ihn knetet, „speed 1 for 20 min“',
  'experiment.past-the-run': ({ minutes }, say) => `er wird nur ${say.minutes(minutes)} geknetet`,

  'experiment-lacks.doughs': ({ example }) => `Kein Teig ist genannt. Zum Beispiel: ${example}`,
  'experiment-lacks.minutes': ({ example }) =>
    `Nirgends steht, wann die Teige gemessen werden. Zum Beispiel: ${example}`,
  'experiment-lacks.before-start': () =>
    'Gemessen wird nach dem Beginn des Knetens: die Minuten von dort an schreiben, mindestens 1 min.',
  'experiment-lacks.same-minute': ({ seconds }, say) =>
    `${say.duration(seconds)} ist zweimal genannt; gemessen wird einmal.`,
  'experiment-lacks.same-dough': ({ name }) =>
    `„${name}“ ist oben mit demselben Kneter und demselben Kneten genannt: es wäre zweimal derselbe Teig.`,
  'experiment-lacks.first': () => 'der erste',
  'cannot-be-tested.because': ({ name, reason }, say) =>
    `„${name}“ lässt sich nicht vorhersagen: ${say.say(reason)}.`,
  'cannot-be-tested.at': ({ name, minutes, reason }, say) =>
    `Bei ${say.minutes(minutes)} lässt sich „${name}“ nicht vorhersagen: ${say.say(reason)}.`,
  'cannot-be-tested.past-the-run': ({ name, minutes, programmeMinutes, count }, say) =>
    `${say.count(count, { one: '# Messung ist', other: '# Messungen sind' })} geplant, wenn „${name}“ schon fertig ist: er wird ${say.minutes(programmeMinutes)} geknetet, und zuletzt gemessen wird bei ${say.minutes(minutes)}.`,
  'cannot-be-tested.fix-run': ({ meant }) => `Schreiben, wie er geknetet wird: ${meant}`,
  'cannot-be-tested.bowl': ({ name, grams, mostGrams, otherName }, say) =>
    `„${name}“ sind ${say.mass(grams)}, und der Kessel von ${otherName} fasst ${say.mass(mostGrams)}. Eine kleinere Charge schreiben.`,
  'cannot-be-tested.bowl-little': ({ name, grams, leastGrams, otherName }, say) =>
    `„${name}“ sind ${say.mass(grams)}, und der Kessel von ${otherName} verlangt mindestens ${say.mass(leastGrams)}. Eine größere Charge schreiben.`,
  'cannot-be-tested.hands': ({ name, grams, mostGrams }, say) =>
    `„${name}“ wiegt ${say.mass(grams)}, und zwei Hände kneten etwa ${say.mass(mostGrams)} auf einmal. Kleiner ansetzen.`,
  'cannot-be-tested.flour': ({ name, grams, otherGrams }, say) =>
    `Die Teige brauchen ${say.mass(grams)} „${name}“, und ${say.mass(otherGrams)} sind da.`,
  'cannot-be-tested.not-taken': ({ name }) => `Keiner der Teige braucht „${name}“.`,
  'cannot-be-tested.not-taken-near': ({ name, meant }) =>
    `Keiner der Teige braucht „${name}“. Ist „${meant}“ gemeint?`,
  'read-past-gone.gone': ({ name, minutes, lowMinutes, highMinutes }, say) =>
    `Bei ${say.minutes(minutes)} ist „${name}“ voraussichtlich überknetet, ab etwa ${say.minutesBand(lowMinutes, highMinutes)}. Diese Messung zeigt, wie ein solcher Teig ist.`,

  'experiment.not-predicted': ({ name, sentence }) => `„${name}“ lässt sich nicht vorhersagen: ${sentence}.`,
  'experiment.not-predicted-at': ({ name, minutes, sentence }, say) =>
    `Bei ${say.minutes(minutes)} lässt sich „${name}“ nicht vorhersagen: ${sentence}.`,
  'experiment.unread': ({ written }) => `Eine Zeile ließ sich nicht lesen, ihr Teig fehlt hier: ${written}`,
  'experiment.note': () => 'Notiz',
  'experiment.done-before': ({ minutes, names }, say) =>
    `Nach ${say.minutes(minutes)} wird nicht mehr gemessen, dann ist geknetet: ${say.list(names)}.`,
  'experiment.date': () => 'Tag',
  'experiment.room': () => 'Raum',
  'experiment.flour': () => 'Mehl',
  'experiment.water': () => 'Wasser',
  'experiment.tap-assumed': ({ celsius }, say) => `${say.celsius(celsius)}, angenommen`,
  'experiment.to-fetch': () => 'bereitzustellen',
  'experiment.drawing': () => 'Alle Teige, Minute für Minute',
  'experiment.drawing-told': ({ names }, say) =>
    `Wie warm ${say.list(names)} beim Kneten werden, mit dem Gemessenen, und die Zustände, die jeder durchläuft.`,
  'experiment.expected': () => 'was zu erwarten ist',
  'experiment.order': () => 'die Reihenfolge, mit einer Uhr ab dem ersten Teig',
  'experiment.weigh': () => 'abzuwiegen',
  'experiment.readings': () => 'Messungen',
  'experiment.loaf': () => 'das Brot',
  'experiment.results': () => 'gemessen und erwartet',
  'experiment.lessons': () => 'was die Messungen zeigen',
  'experiment.next': () => 'was eine weitere Messung klären würde',
  'experiment-column.dough': () => 'Teig',
  'experiment-column.mixed': () => 'geknetet',
  'experiment-column.minute': ({ minutes }, say) => say.minutes(minutes),
  'experiment-column.minutes': () => 'min',
  'experiment-column.ingredient': () => 'Zutat',
  'experiment-column.weight': () => 'Gewicht',
  'experiment-column.begins': () => 'beginnt',
  'experiment-column.stops': () => 'anhalten und messen bei',
  'experiment-column.ends': () => 'endet',
  'experiment-column.expected': () => 'erwartet',
  'experiment-column.celsius': () => '°C',
  'experiment-column.feel': () => 'Anfühlen, Teigstufe',
  'experiment-column.measured': () => 'gemessen',
  'experiment-column.apart': () => 'Abstand',
  'experiment-column.trial': () => 'Knetversuch',
  'experiment-column.grams': () => 'g',
  'experiment-column.stage': () => 'Teigstufe',
  'experiment-column.expected-celsius': () => 'erwartet °C',
  'experiment-column.band-celsius': () => '± °C',
  'experiment-column.apart-celsius': () => 'Abstand °C',
  'experiment-column.height': () => 'Höhe des Brots',
  'experiment-column.score': () => 'Note',
  'experiment.water-is': () => 'das Wasser hat',
  'experiment.total': () => 'zusammen',
  'experiment.dough-twice-named': ({ name, place }, say) => `${name}, ${say.say(place)}`,
  'experiment.cell': ({ celsius, bandCelsius, stage }, say) =>
    `${say.celsiusBand(celsius, bandCelsius)}, ${say.say(stage)}`,
  'experiment.cell-plain': ({ celsius, bandCelsius }, say) => say.celsiusBand(celsius, bandCelsius),
  'experiment.stage-span': ({ stage, otherStage }, say) => `${say.say(stage)} bis ${say.say(otherStage)}`,
  'experiment.measured-seen': ({ celsius, facts }, say) =>
    [say.celsius(celsius), ...facts.map(say.say)].reduce((all, one) => `${all}, ${one}`),
  'experiment.seen': ({ facts }, say) => facts.map(say.say).join(', ') || '–',
  'experiment.within': ({ difference }, say) => `${say.say(difference)}, innerhalb der Spanne`,
  'experiment.outside': ({ difference }, say) => `${say.say(difference)}, außerhalb der Spanne`,
  'experiment.beside': ({ celsius, apartCelsius, stage }, say) =>
    `${say.celsius(celsius)} ± ${say.celsiusApart(apartCelsius)}, ${say.say(stage)}`,
  'experiment.beside-plain': ({ celsius, apartCelsius }, say) =>
    `${say.celsius(celsius)} ± ${say.celsiusApart(apartCelsius)}`,
  'experiment.stage-as-expected': ({ difference }, say) => `${say.say(difference)}; die Teigstufe stimmt`,
  'experiment.stage-sooner': ({ difference }, say) => `${say.say(difference)}; aber weiter als erwartet`,
  'experiment.stage-later': ({ difference }, say) =>
    `${say.say(difference)}; aber nicht so weit wie erwartet`,
  'experiment.seen-as-expected': () => 'die Teigstufe stimmt',
  'experiment.seen-sooner': () => 'weiter als erwartet',
  'experiment.seen-later': () => 'nicht so weit wie erwartet',
  'experiment.order-note': () =>
    'Ein Kneter nimmt einen Teig nach dem anderen, hell vor Vollkorn und fest vor weich, damit der Kessel dazwischen nicht gewaschen werden muss; die Hände kommen zuletzt. Zwischen zwei Teigen liegen fünf Minuten.',
  'experiment.stop-first': () => 'Den Kneter anhalten, bevor ein Fühler oder eine Hand hineingeht.',
  'experiment.mixer-misses': ({ name, apartCelsius, laterCelsius }, say) =>
    `${name}: die Messungen verfehlen das Erwartete um ${say.celsiusApart(apartCelsius)}; ist er kalibriert, um ${say.celsiusApart(laterCelsius)}.`,
  'experiment.mixer-not-yet': ({ name, reason }, say) => `${name}: ${say.say(reason)}.`,
  'experiment.mixer-doubt': ({ name, parts }, say) => `${name}: ${parts.map(say.say).join(' ')}`,
  'experiment.learned': ({ name, title, figures, difference }, say) =>
    `${name}, ${say.say(title)}: ${say.say(figures)} ± ${say.say(difference)}, ein Standardfehler.`,
  'experiment.kind-alone': ({ name, example }) =>
    `${name}: eine Bauart ist kein eigener Kneter, deshalb lernt der nächste Teig aus diesen Messungen nichts. Ein Abschnitt, der mit „${example}“ beginnt, und dieser Name in den Zeilen der Teige und in den Versuchen ändern das.`,
  'experiment.develops': ({ name, figures }, say) =>
    `${name} knetet Teig ${say.say(figures)} so schnell aus wie angenommen: mehrere Mehle zeigen es, also liegt es am Kneter.`,
  'experiment.develops-so': ({ name, figures }, say) =>
    `${name} und das Mehl: nach den gesehenen Teigstufen entwickelt sich der Teig ${say.say(figures)} so schnell wie angenommen; das stimmt überein, so verschieden wie Mehle sind.`,
  'experiment.develops-either': ({ name, figures }, say) =>
    `In ${name} war der Teig ${say.say(figures)} so schnell ausgeknetet wie angenommen: nur ein Mehl zeigt es, also kann es am Mehl liegen oder am Kneter.`,
  'experiment.develops-unclear': ({ name, reason }, say) =>
    `Wie schnell ${name} Teig ausknetet: ${say.say(reason)}.`,
  'experiment.flour-develops': ({ name, lowFactor, highFactor, count }, say) =>
    `„${name}“ ist ${say.number(lowFactor, 2)}- bis ${say.number(highFactor, 2)}-mal so schnell ausgeknetet wie angenommen: ${say.count(count, { one: '# Kneter zeigt es', other: '# Kneter zeigen es' })}, also liegt es am Mehl.`,
  'experiment.next-parameter': ({ name, title, reason }, say) =>
    `${name}, ${say.say(title)}: ${say.say(reason)}.`,
  'experiment.next-flour': ({ name }) =>
    `Ob es am Mehl liegt oder an ${name}: die Stufe eines Teigs aus anderem Mehl in ${name}, oder desselben Teigs von Hand oder in einem anderen Kneter.`,
  'experiment.next-stage': ({ name }) =>
    `Wie schnell ${name} Teig ausknetet: die Stufe, oder wie sich der Teig anfühlt, neben einer Temperatur.`,
  'experiment.next-reading': ({ name, minutes }, say) =>
    `${name}: noch keine Messung. Am meisten sagt die bei ${say.minutes(minutes)}, denn dort ist die Spanne am weitesten.`,
  'experiment.next-first': ({ name, minutes }, say) =>
    `${name}: noch keine Messung. Zwei oder drei aufschreiben, eine davon bei ${say.minutes(minutes)}, wo die Spanne am weitesten ist.`,
  'experiment.nothing-yet': () =>
    'Noch nennt kein Knetversuch diese Versuchsreihe: „experiment“ und ihren Namen in einen schreiben.',

  'overlay.title': ({ names }, say) => `${say.list(names)} übereinander`,
  'overlay.at': ({ name, written }) => `${name}, ${written}`,
  'overlay.drawing': () => 'Kneten, übereinander',
  'overlay.drawing-told': ({ names }, say) =>
    `Wie warm beim Kneten werden: ${say.list(names)}; und die Teigstufen, durch die jeder Teig geht.`,
  'overlay.figures': () => 'nebeneinander',
  'overlay.figure': () => 'Zahl',
  'overlay.not-known': ({ name, sentence }) => `„${name}“ hat keine Kurve: ${sentence}.`,
  'overlay.too-few': () =>
    'Mindestens zwei Rezepturen nennen, oder eine und einen Stand in git, über den sie gelegt wird.',
  'overlay.too-many': ({ count, number }, say) =>
    `${say.count(count, { one: '# Rezeptur ist', other: '# Rezepturen sind' })} in einem Bild nicht auseinanderzuhalten: höchstens ${say.number(number, 0)} nennen.`,
  'overlay.not-there': ({ name, revision }) => `„${name}“ steht nicht in der Datei, wie ${revision} sie hat.`,

  'experiment.lens': ({ count }, say) =>
    `${say.count(count, { one: '# Teig', other: '# Teige' })} · Blatt und Tisch`,
  'bench.run': () => 'Am Tisch durchführen',
  'bench.run-hint': () => 'Eine Uhr je Teig, groß geschrieben; zweimal tippen trägt eine Messung ein',
  'bench.as-sheet': () => 'Zurück zum Blatt',
  'bench.blanks': () => 'Platz zum Schreiben',
  'bench.hidden': () => 'Vorhersagen verdeckt',
  'bench.doughs': () => 'Teige',
  'bench.begin': () => 'Kneten beginnt',
  'bench.stopped': () => 'Angehalten',
  'bench.go-on': () => 'Kneten geht weiter',
  'bench.mixed-so-far': () => 'Bisher geknetet',
  'bench.stop-mixer': () => 'Kneter anhalten',
  'bench.stop-hands': () => 'Nicht weiterkneten',
  'bench.stop-in': ({ written, otherWritten }) => `${written} in ${otherWritten}`,
  'bench.stop-now': ({ written }) => `${written}, jetzt`,
  'bench.read-at': ({ written }) => `Messung bei ${written}`,
  'bench.none-left': () => 'Für diesen Teig steht keine Messung mehr aus.',
  'bench.minute': () => 'Minute der Messung',
  'bench.by-timer': ({ written }) => `${written}, nach der Uhr`,
  'bench.minute-first': () => 'Erst das Kneten beginnen lassen oder die Minute der Messung wählen.',
  'bench.planned': () => 'Messungen dieses Teigs',
  'bench.expected': ({ written }) => `erwartet ${written}`,
  'bench.clear-sure': () => 'Alle Uhren dieser Versuchsreihe löschen?',
};
