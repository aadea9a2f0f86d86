import type { glance as english } from '../en/glance.ts';
import type { Translation } from '../message.ts';

/** Die drei Antworten am Kopf eines Backzettels. */
export const glance: Translation<typeof english> = {
  'glance.leaves': () => 'Teig nach dem Kneten',
  'glance.stop': () => 'Zustand am Ende',
  'glance.water': () => 'Schüttwasser',
  'glance.not-known': () => 'nicht bekannt',

  'glance.as-wanted': () => 'wie gewünscht',
  'glance.about-as-wanted': () => 'etwa wie gewünscht',
  'glance.as-usual': () => 'wie üblich',
  'glance.about-as-usual': () => 'etwa wie üblich',
  'glance.warmer': ({ warmth, apartCelsius }, say) =>
    `${say.say(warmth)}, um ${say.celsiusApart(apartCelsius)}`,
  'glance.cooler': ({ apartCelsius }, say) => `um ${say.celsiusApart(apartCelsius)} zu kühl`,
  'glance.much-too-warm': () => 'viel zu warm',
  'glance.above': ({ limitCelsius }, say) => `über ${say.celsius(limitCelsius)}`,
  'glance.wanted': ({ targetCelsius }, say) => `gewünscht ${say.celsius(targetCelsius)}`,
  'glance.usual': ({ targetCelsius }, say) =>
    `üblich sind ${say.celsius(targetCelsius)}; die Rezeptur gibt keine an`,
  'glance.too-warm-from': ({ limitCelsius, minutes }, say) =>
    `über ${say.celsius(limitCelsius)} nach ${say.minutes(minutes)}`,
  'glance.too-warm-if': ({ limitCelsius, minutes }, say) =>
    `über ${say.celsius(limitCelsius)} nach ${say.minutes(minutes)}, liefe der letzte Gang weiter`,

  'glance.too-early': () => 'zu früh',
  'glance.perhaps-too-early': () => 'vielleicht zu früh',
  'glance.too-late': () => 'zu spät',
  'glance.perhaps-too-late': () => 'vielleicht zu spät',
  'glance.longer-than-needed': () => 'viel länger als nötig',
  'glance.stop-after': ({ programmeMinutes }, say) => `nach ${say.minutes(programmeMinutes)}`,
  'glance.best-stop': ({ minutes }, say) => `am besten nach etwa ${say.minutes(minutes)}`,
  'glance.best-stop-if': ({ minutes }, say) => `am besten nach etwa ${say.minutes(minutes)}, im letzten Gang`,
  'glance.until-let-down': ({ lowMinutes, highMinutes }, say) =>
    `lässt ${say.minutesBand(lowMinutes, highMinutes)} später nach, im letzten Gang`,
  'glance.let-down-from': ({ lowMinutes, highMinutes }, say) =>
    `lässt nach etwa ${say.minutesBand(lowMinutes, highMinutes)} nach`,
  'glance.let-down-far': () => 'lässt noch lange nicht nach',

  'glance.to-draw': () => 'so zapfen',
  'glance.no-hotter': () => 'und nicht heißer',
  'glance.of-ice': ({ iceGrams }, say) => `${say.mass(iceGrams)} Eis`,
  'glance.with-tap': ({ tapGrams, tapCelsius }, say) =>
    `und ${say.mass(tapGrams)} aus der Leitung, mit ${say.celsius(tapCelsius)}`,
  'glance.ice-enough': () => 'reicht dafür',
  'glance.not-enough': () => 'reicht nicht',
  'glance.from-tap': () => 'aus der Leitung',
  'glance.tap-assumed': () => 'aus der Leitung, angenommen',
  'glance.tap-too-warm': () => 'aus der Leitung zu warm',
  'glance.little-effect': () => 'bewirkt wenig',
  'glance.as-stated': () => 'wie in der Datei',
  'glance.flour-takes': ({ fraction, heldFraction }, say) =>
    `Mehl nimmt etwa ${say.percent(fraction, 0)} auf, der Teig hat ${say.percent(heldFraction, 0)}`,
  'glance.flour-takes-assumed': ({ fraction, heldFraction }, say) =>
    `Mehl dieser Art nimmt meist etwa ${say.percent(fraction, 0)} auf; der Teig hat ${say.percent(heldFraction, 0)}`,

  'log.title': () => 'Am Tag notiert',
  'log.day': () => 'Tag',
  'log.at-minutes': ({ unit }) => `${unit} nach ____ min`,
  'log.initials': () => 'Kürzel',
};
