import type { Args } from '../args.ts';
import type { calibration as english } from '../en/calibration.ts';
import type { Translation } from '../message.ts';
import type { Speaker } from '../speaker.ts';

/** Was Versuche von Knetern und Mehlen zeigen, und was nicht. Gründe sind Satzteile hinter einem Doppelpunkt. */
export const calibration: Translation<typeof english> = {
  'calibration.readings': ({ count, otherCount }, say) => readingsOf(count, otherCount, say),
  'calibration.readings-newest': ({ count, otherCount, trialCount }, say) =>
    `${readingsOf(count, otherCount, say)}, aus den neuesten ${say.count(trialCount, { other: '# Versuchen' })}`,
  'calibration.warms': ({ number }) => `wie Gang ${number} erwärmt`,
  'calibration.warms-towards': () => 'welcher Temperatur Hände den Teig nähern',
  'calibration.settles': () => 'wie langsam der Teig dem Raum folgt',
  'calibration.friction': () => 'wie groß der Reibungsfaktor ist',

  'calibration.no-kind': () => 'der Kneter gibt seine Bauart nicht an',
  'calibration.no-temperature': () =>
    'kein Versuch auf diesem Kneter hat eine Temperatur, die sich vergleichen lässt',
  'calibration.one-reading': () =>
    'eine einzige Messung ist zu wenig. Zwei oder drei während eines Knetens festhalten, die letzte an seinem Ende',
  'calibration.too-close': () =>
    'seine Messungen liegen zu nahe beieinander, um etwas darüber zu zeigen. Zwei oder drei festhalten, über ein Kneten verteilt, die letzte an seinem Ende',
  'calibration.no-stage': () => 'keine Teigstufe ist festgehalten, die sich vergleichen lässt',
  'calibration.stages-disagree': () =>
    'die gesehenen Teigstufen passen nicht zueinander; Mehle sind verschieden, und eine Stufe wird mit dem Auge beurteilt',
  'calibration.lacks-settling': () =>
    'das zeigt sich erst, wenn ein Teig nicht mehr wärmer wird. Einmal lange kneten, oder eine letzte Messung eines langen Programms festhalten',
  'calibration.lacks-drift': () =>
    'der Teig war noch nicht in ihre Nähe gekommen. Eine Messung nach einer Viertelstunde Arbeit oder mehr festhalten',
  'calibration.lacks-time': ({ number }) =>
    `zwischen zwei Messungen verging in Gang ${number} zu wenig Zeit. Die Teigtemperatur unmittelbar davor und danach messen`,
  'calibration.lacks-reading': ({ number }) =>
    `nachdem Gang ${number} gelaufen war, wurde nicht gemessen. Die Teigtemperatur unmittelbar davor und danach messen`,

  'calibration.not-yet': ({ reason }, say) =>
    `Seine Versuche zeigen noch nicht, wie sich der Teig erwärmt: ${say.say(reason)}.`,
  'calibration.title': ({ source, apartCelsius, laterCelsius }, say) =>
    `**Kalibrierung** aus ${say.say(source)}. Die Messungen werden verfehlt, wie es jetzt ist, um ${say.celsiusApart(apartCelsius)}; kalibriert um ${say.celsiusApart(laterCelsius)}.`,
  'calibration.title-before-not-known': ({ source, laterCelsius }, say) =>
    `**Kalibrierung** aus ${say.say(source)}. Um wie viel die Messungen jetzt verfehlt werden, ist nicht bekannt; kalibriert um ${say.celsiusApart(laterCelsius)}.`,
  'calibration.row': ({ title, parts }, say) => `${say.say(title)}: ${parts.map(say.say).join('; ')}`,
  'calibration.now': ({ figures, source }, say) => `jetzt ${say.say(figures)} _(${say.say(source)})_`,
  'calibration.by-trials': ({ figures, difference }, say) =>
    `nach den Versuchen **${say.say(figures)}** ± ${say.say(difference)}`,
  'calibration.not-shown': ({ reason }, say) => `die Versuche zeigen es nicht: ${say.say(reason)}`,
  'calibration.celsius-per-minute': ({ celsiusPerMinute }, say) => say.celsiusPerMinute(celsiusPerMinute, 2),
  'calibration.celsius': ({ celsius }, say) => say.celsius(celsius),
  'calibration.celsius-apart': ({ apartCelsius }, say) => say.celsiusApart(apartCelsius),
  'calibration.minutes': ({ minutes }, say) => `${say.number(minutes, minutes < 10 ? 1 : 0)} min`,
  'calibration.standard-error': () => '_± ist ein Standardfehler._',
  'calibration.stop-first': () =>
    '_Messungen für einen Versuch: den Kneter anhalten, bevor ein Fühler oder eine Hand hineingeht._',

  'calibration.development-not-known': ({ reason }, say) =>
    `Wie schnell sich der Teig entwickelt: ${say.say(reason)}.`,
  'calibration.factors': ({ lowFactor, highFactor }, say) =>
    `${say.number(lowFactor, 2)}- bis ${say.number(highFactor, 2)}-mal`,
  'calibration.least-factor': ({ lowFactor }, say) => `mindestens ${say.number(lowFactor, 2)}-mal`,
  'calibration.most-factor': ({ highFactor }, say) => `höchstens ${say.number(highFactor, 2)}-mal`,
  'calibration.develops-agrees': (seen, say) =>
    `${developsBy(seen, say)}: das stimmt überein, so verschieden wie Mehle sind.`,
  'calibration.develops-one-flour': (seen, say) =>
    `${developsBy(seen, say)}: nur ein Mehl zeigt es; es kann also am Mehl liegen oder am Kneter und wird bei keinem von beiden eingetragen.`,
  'calibration.develops-mixer': (seen, say) =>
    `${developsBy(seen, say)}: mehrere Mehle zeigen es, also liegt es am Kneter: \`develops\` an seine Gänge schreiben.`,

  'mixer-can-be-calibrated.mixer': ({ name, source }, say) =>
    `„${name}“ lässt sich kalibrieren, aus ${say.say(source)}.`,
  'mixer-can-be-calibrated.hands': ({ source }, say) =>
    `Die eigenen Hände lassen sich kalibrieren, aus ${say.say(source)}.`,
  'mixer-can-be-calibrated.misses': ({ apartCelsius, laterCelsius }, say) =>
    `Jetzt werden sie um ${say.celsiusApart(apartCelsius)} verfehlt, kalibriert um ${say.celsiusApart(laterCelsius)}.`,
  'mixer-can-be-calibrated.misses-calibrated': ({ laterCelsius }, say) =>
    `Kalibriert werden sie um ${say.celsiusApart(laterCelsius)} verfehlt.`,
  'mixer-can-be-calibrated.cannot-tell': ({ parts }, say) =>
    `Sie zeigen nicht, ${say.list(parts.map(say.say))}.`,
  'mixer-can-be-calibrated.apart': (reading, say) =>
    `${readingOf(reading, say)} steht abseits der anderen Messungen und zählt kaum; ein kalter Kessel oder ein eiliges Thermometer macht so etwas.`,
  'mixer-can-be-calibrated.several-apart': (reading, say) =>
    `${say.count(reading.count, { one: '# Messung steht', other: '# Messungen stehen' })} abseits der anderen und ${say.count(reading.count, { one: 'zählt', other: 'zählen' })} kaum, zuerst ${readingOf(reading, say)}.`,
  'mixer-can-be-calibrated.contradict': () =>
    'Die Messungen widersprechen einander, oder das Programm war nicht das geschriebene: sie zuerst noch einmal ansehen.',
  'mixer-can-be-calibrated.cooler': ({ number, otherNumber }) =>
    `Nach ihnen würde Gang ${number} weniger erwärmen als Gang ${otherNumber}, und das tut kein Kneter: die Messungen zuerst noch einmal ansehen.`,
  'mixer-can-be-calibrated.develops': ({ lowFactor, highFactor }, say) =>
    `Nach den gesehenen Teigstufen entwickelt er Teig ${say.number(lowFactor, 2)}- bis ${say.number(highFactor, 2)}-mal so schnell wie berechnet.`,
  'mixer-can-be-calibrated.far-off': () =>
    'So weit weicht kein Kneter ab: Teigstufen und Mehl zuerst noch einmal ansehen.',
  'mixer-can-be-calibrated.trial': () => 'ein Versuch auf diesem Kneter',
  'mixer-can-be-calibrated.fix': ({ words }, say) =>
    words.length === 1
      ? `Schreiben, was die Versuche zeigen: ${say.list(words)}`
      : `Die ${say.count(words.length, { other: '# Zahlen' })} schreiben, die die Versuche zeigen`,
  'mixer-can-be-calibrated.fix-develops': () =>
    'Schreiben, was die Versuche zeigen: wie schnell er Teig entwickelt',
  'mixer-can-be-calibrated.fix-both': ({ words }, say) =>
    `${say.count(words.length, { one: 'Die Zahl', other: 'Die # Zahlen' })} zur Erwärmung schreiben, und wie schnell er entwickelt`,

  'flour-can-be-calibrated.flour': (seen, say) =>
    `Nach ${say.count(seen.count, { one: '# Teigstufe', other: '# Teigstufen' })} auf ${say.count(seen.otherCount, { one: '# Kneter', other: '# Knetern' })} entwickeln sich Teige aus „${seen.name}“ ${say.number(seen.lowFactor, 2)}- bis ${say.number(seen.highFactor, 2)}-mal so schnell wie aus einer Entwicklungszeit („peak“) von ${say.minutes(seen.minutes)} berechnet. Das wiederholt sich über die Kneter hinweg, also liegt es am Mehl.`,
  'flour-can-be-calibrated.far-off': () =>
    'So weit weicht kein Mehl ab: die Teigstufen zuerst noch einmal ansehen.',
  'flour-can-be-calibrated.trial': () => 'ein Versuch mit seinem Teig',
  'flour-can-be-calibrated.fix': ({ meant }) => `Schreiben, was die Versuche zeigen: ${meant}`,
};

type Reading = Args<'celsius' | 'minutes' | 'name'>;

function readingsOf(count: number, otherCount: number, say: Speaker): string {
  return `${say.count(count, { one: '# Messung', other: '# Messungen' })} von ${say.count(otherCount, { one: 'einer Rezeptur', other: '# Rezepturen' })}`;
}

function developsBy({ count, figures }: Args<'count' | 'figures'>, say: Speaker): string {
  return `Nach ${say.count(count, { one: 'der gesehenen Teigstufe', other: 'den # gesehenen Teigstufen' })} entwickelt sich der Teig ${say.say(figures)} so schnell wie berechnet`;
}

/** Eine Messung so, dass sie sich finden lässt: `20,5 °C bei 3 min (Quay Tin, 2026-03-03)`. */
function readingOf({ celsius, minutes, name }: Reading, say: Speaker): string {
  return `${say.celsius(celsius)} bei ${say.minutes(minutes)} (${name})`;
}
