import type { Args } from '../args.ts';
import type { mixingTrials as english } from '../en/mixing-trials.ts';
import type { Translation } from '../message.ts';
import type { Speaker } from '../speaker.ts';

/** Knetversuche neben dem, was berechnet ist, und das Programm, das sie festhalten. */
export const mixingTrials: Translation<typeof english> = {
  'trial-contradicts.second': ({ seconds }, say) =>
    `Eine zweite Messung bei ${say.duration(seconds)}. Jede Minute eines Versuchs hat nur eine; bei einer von beiden die Zeit berichtigen.`,
  'trial-contradicts.backwards': ({ seconds, otherSeconds }, say) =>
    `Die Zeit läuft rückwärts: diese Messung steht bei ${say.duration(seconds)}, die davor bei ${say.duration(otherSeconds)}. Zeiten zählen ab Knetbeginn.`,
  'trial-contradicts.before': () => 'die Messung davor',
  'trial-contradicts.over': ({ seconds, otherSeconds }, say) =>
    `Das Programm ist nach ${say.duration(otherSeconds)} zu Ende, und diese Messung steht bei ${say.duration(seconds)}. Die Zeit berichtigen oder in den Versuch schreiben, was wirklich gelaufen ist: \`mixed in …\`, dann seine Zeilen \`speed\`.`,
  'trial-contradicts.over-kept': ({ seconds, otherSeconds }, say) =>
    `Das Programm ist nach ${say.duration(otherSeconds)} zu Ende, und diese Messung steht bei ${say.duration(seconds)}. Die Zeit berichtigen oder dem Programm des Versuchs die Minuten geben, die es wirklich gelaufen ist.`,
  'trial-contradicts.hotter': ({ celsius }, say) =>
    `${say.celsius(celsius)} ist heißer, als Kneten einen Teig macht. Die Messung berichtigen; was ein Thermometer in Fahrenheit zeigt, wird mit °F geschrieben.`,
  'trial-contradicts.colder': ({ celsius, limitCelsius }, say) =>
    `${say.celsius(celsius)} ist kälter, als dieser Teig gewesen sein kann: was hineinkam, ergibt vor jeder Erwärmung ${say.celsius(limitCelsius)}. Die Messung berichtigen oder die Temperaturen darüber; Eis zählt als kälteres Wasser.`,
  'trial-contradicts.stage-back': ({ stage, otherStage, seconds }, say) =>
    `„${say.say(stage)}“ nach „${say.say(otherStage)}“ bei ${say.duration(seconds)}: ein Teig entwickelt sich nicht zurück. Eines von beiden berichtigen.`,
  'trial-contradicts.stage': ({ stage }, say) => `„${say.say(stage)}“`,
  'trial-contradicts.heavier': ({ doughGrams, pouredGrams }, say) =>
    `Der Teig wiegt ${say.mass(doughGrams)}, und nur ${say.mass(pouredGrams)} kamen hinein: Teig wird nicht schwerer. Das berichtigen oder das Gewicht des Wassers angeben, das wirklich verwendet wurde.`,
  'trial-contradicts.baked-heavier': ({ bakedGrams, doughGrams }, say) =>
    `${say.mass(bakedGrams)} gebacken sind mehr als die ${say.mass(doughGrams)} Teig: Brot verliert im Ofen Gewicht. Eines von beiden berichtigen.`,

  'unknown-feel.meant': ({ name, meant }) =>
    `„${name}“ ist keins der Wörter für einen Teig und zählt nicht. Ist „${meant}“ gemeint?`,
  'unknown-feel.none': ({ name, words }, say) =>
    `„${name}“ ist weder eine Teigstufe noch ein Wort dafür, wie sich ein Teig anfühlt, und zählt nicht. Solche Wörter sind ${say.list(words)}.`,
  'unknown-feel.second': ({ name, otherName }) =>
    `Eine Messung hat eine Teigstufe, und „${name}“ zählt. „${otherName}“ herausnehmen.`,

  'trial-without-programme.none': () =>
    'Dieser Versuch gibt nicht an, was gelaufen ist; er wird deshalb mit dem Programm gelesen, wie es jetzt ist.',
  'trial-without-programme.write': () =>
    'Dieser Versuch gibt nicht an, was gelaufen ist; er wird deshalb mit dem Programm gelesen, wie es jetzt ist. In den Versuch schreiben, was gelaufen ist: `mixed in …`, dann seine Zeilen `speed`.',
  'trial-without-programme.fix-this': () => 'Das jetzige Programm in diesen Versuch schreiben',
  'trial-without-programme.fix-all': ({ count }, say) =>
    `In alle ${say.count(count, { other: '# Versuche' })} dieser Rezeptur schreiben, die keines festhalten`,

  'kept-programme.title': ({ title, count }, say) => `${say.say(title)}; ${keeps(count, say)}`,

  'not-in-dough.none': ({ name }) =>
    `„${name}“ ist nicht in diesem Teig, also kommt dafür nichts in den Kessel. Eine Zeile in der Rezeptur dafür schreiben oder es hier entfernen.`,
  'not-in-dough.meant': ({ name, otherName }) =>
    `„${name}“ ist nicht in diesem Teig, also kommt dafür nichts in den Kessel. Ist „${otherName}“ gemeint?`,
  'not-in-dough.trial': ({ name }) =>
    `„${name}“ ist nicht in diesem Teig, wie er jetzt ist; der Versuch wird ohne das berechnet.`,
  'not-in-dough.trial-meant': ({ name, otherName }) =>
    `„${name}“ ist nicht in diesem Teig, wie er jetzt ist; der Versuch wird ohne das berechnet. Ist „${otherName}“ gemeint?`,

  'feel.rough': () => 'rau',
  'feel.tears': () => 'reißt beim Dehnen',
  'feel.sticks to the bowl': () => 'klebt am Kessel',
  'feel.sticky': () => 'klebrig',
  'feel.wet': () => 'nass',
  'feel.clears the bowl': () => 'löst sich vom Kessel',
  'feel.smooth': () => 'glatt',
  'feel.stretches': () => 'dehnbar',
  'feel.shiny': () => 'glänzend',
  'feel.window': () => 'ein Fenster lässt sich ziehen',
  'feel.slack': () => 'schlaff',
  'feel.stringy': () => 'zieht Fäden',
  'reading.state': ({ celsius }, say) => say.celsius(celsius),
  'reading.state-stage': ({ celsius, stage }, say) => `${say.celsius(celsius)}, ${say.say(stage)}`,
  'reading.state-feel': ({ measured, facts }, say) => `${say.say(measured)}, ${say.list(facts.map(say.say))}`,
  'reading.seen': ({ facts }, say) => (facts.length === 0 ? 'nichts' : say.list(facts.map(say.say))),
  'reading.seen-alone': ({ measured, reason }, say) =>
    `**Gesehen: ${say.say(measured)}** — nichts zum Vergleich: ${say.say(reason)}.`,
  'reading.seen-beside': ({ measured, computed }, say) =>
    `**Gesehen: ${say.say(measured)}** — berechnet ${say.say(computed)}.`,
  'reading.seen-same-stage': ({ measured, computed }, say) =>
    `**Gesehen: ${say.say(measured)}** — berechnet ${say.say(computed)}: die Stufe stimmt überein.`,
  'reading.seen-other-stage': ({ measured, computed }, say) =>
    `**Gesehen: ${say.say(measured)}** — berechnet ${say.say(computed)}: eine andere Stufe.`,
  'feel.means-one': ({ stage }, say) =>
    `Fühlt sich an wie ein Teig auf der Stufe „${say.say(stage)}“ _(übliche Praxis)_.`,
  'feel.means': ({ stage, otherStage }, say) =>
    `Fühlt sich an wie ein Teig zwischen „${say.say(stage)}“ und „${say.say(otherStage)}“ _(übliche Praxis)_.`,
  'feel.any': () =>
    'Ein Fenster allein zeigt keine Teigstufe an: es lässt sich aus einem geruhten, kaum gekneteten Teig ziehen und aus einem weit über den Bedarf gekneteten. Ein anderes Wort daneben zeigt es.',
  'feel.both-ends': () =>
    'So fühlt sich ein Teig an, bevor er ausgeknetet ist, und wieder, wenn er nachlässt; allein zeigt das also keine Teigstufe an. Ein anderes Wort daneben zeigt es.',
  'feel.contradict': () =>
    'Auf keiner Teigstufe fühlt sich ein Teig nach all diesen Wörtern an, also zeigen sie keine an.',
  'feel.stage-wins': () => 'Die geschriebene Teigstufe zählt; wie sich der Teig anfühlt, steht daneben.',
  'reading.alone': ({ measured, reason }, say) =>
    `**Gemessen ${say.say(measured)}** — keine Zahl zum Vergleich: ${say.say(reason)}.`,
  'reading.beside': ({ measured, computed, difference }, say) =>
    `**Gemessen ${say.say(measured)}** — berechnet ${say.say(computed)}: ${say.say(difference)}.`,
  'reading.as-computed': () => 'wie berechnet',
  'reading.warmer': ({ apartCelsius }, say) => `${say.celsiusApart(apartCelsius)} wärmer als das`,
  'reading.colder': ({ apartCelsius }, say) => `${say.celsiusApart(apartCelsius)} kälter als das`,
  'reading.same-stage': ({ difference }, say) => `${say.say(difference)}, die Stufe stimmt überein`,
  'reading.other-stage': ({ difference }, say) => `${say.say(difference)}, und eine andere Stufe`,

  'readings.measured': () => 'gemessen',
  'readings.computed': () => 'berechnet',
  'readings.end': () => 'Ende',
  'readings.miss': ({ apartCelsius }, say) =>
    `Die Messungen weichen um ${say.celsiusApart(apartCelsius)} vom Berechneten ab.`,
  'readings.miss-warmer': ({ apartCelsius }, say) =>
    `Die Messungen weichen um ${say.celsiusApart(apartCelsius)} vom Berechneten ab, im Ganzen wärmer als berechnet.`,
  'readings.miss-colder': ({ apartCelsius }, say) =>
    `Die Messungen weichen um ${say.celsiusApart(apartCelsius)} vom Berechneten ab, im Ganzen kälter als berechnet.`,
  'readings.alone': ({ reason }, say) => `Nichts zum Vergleich mit den Messungen: ${say.say(reason)}.`,
  'readings.friction': ({ apartCelsius, example }, say) =>
    `Reibungsfaktor nach diesem Versuch: ${say.celsiusApart(apartCelsius)} (eine Differenz, für drei Temperaturen). Er gilt für solche Menge, Zeit und Hydration; im Abschnitt eines Kneters wird er geschrieben als \`${example}\`.`,
  'readings.stop-first': () => 'Den Kneter anhalten, bevor ein Fühler oder eine Hand hineingeht.',

  'trial-loss.half': (loss, say) =>
    `${missing(loss, say)} Wäre die Hälfte davon solcher Teig, wären es ${say.percent(loss.fraction)}. Wiegen, was hängen bleibt, oder der Rezeptur ein \`loss\` geben, um beides zu unterscheiden.`,
  'trial-loss.all-stuck': (loss, say) =>
    `${missing(loss, say)} Der Verlust, den die Rezeptur selbst angibt, lässt ebenso viel zurück: dann ist kein Wasser verloren.`,
  'trial-loss.some-stuck': (loss, say) =>
    `${missing(loss, say)} Der Verlust, den die Rezeptur selbst angibt, lässt ${say.mass(loss.stuckGrams)} Teig zurück: dann ist der Rest Wasser und die Hydration ${say.percent(loss.fraction)}.`,
};

function keeps(count: number, say: Speaker): string {
  return say.count(count, { one: 'Versuch bleibt', other: '# Versuche bleiben' });
}

type Loss = Args<'lostGrams' | 'pouredGrams' | 'highFraction' | 'lowFraction'>;

function missing({ lostGrams, pouredGrams, highFraction, lowFraction }: Loss, say: Speaker): string {
  return `${say.mass(lostGrams)} von ${say.mass(pouredGrams)} fehlten, als der Teig gewogen wurde. Wäre alles davon Wasser, wäre die Hydration von ${say.percent(highFraction)} auf ${say.percent(lowFraction)} gesunken, höchstens; Teig, der an Kessel, Tisch und Händen bleibt, nimmt sein Mehl mit und ändert keine Hydration.`;
}
