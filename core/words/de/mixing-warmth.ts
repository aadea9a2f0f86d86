import type { Args } from '../args.ts';
import type { mixingWarmth as english } from '../en/mixing-warmth.ts';
import type { Translation } from '../message.ts';
import type { Speaker } from '../speaker.ts';

/** Zu warmer Teig, und was Wasser, Eis und Hefe damit zu tun haben. */
export const mixingWarmth: Translation<typeof english> = {
  'warmth.slightly': () => 'etwas zu warm',
  'warmth.too': () => 'zu warm',
  'warmth.much-too': () => 'viel zu warm',

  'too-warm.leaves': (end, say) =>
    `Der Teig kommt ${say.say(end.warmth)} aus dem Kneter: ${ended(end, say)} über den gewünschten ${say.celsius(end.targetCelsius)}.`,
  'too-warm.leaves-usual': (end, say) =>
    `Der Teig kommt ${say.say(end.warmth)} aus dem Kneter: ${ended(end, say)} über den üblichen ${say.celsius(end.targetCelsius)}.`,
  'too-warm.may-leave': (end, say) =>
    `Der Teig kommt womöglich ${say.say(end.warmth)} aus dem Kneter: ${ended(end, say)} über den gewünschten ${say.celsius(end.targetCelsius)}.`,
  'too-warm.may-leave-usual': (end, say) =>
    `Der Teig kommt womöglich ${say.say(end.warmth)} aus dem Kneter: ${ended(end, say)} über den üblichen ${say.celsius(end.targetCelsius)}.`,
  'too-warm.from-start': ({ limitCelsius }, say) => `Er ist von Anfang an über ${say.celsius(limitCelsius)}.`,
  'too-warm.passes': (at, say) =>
    `Er überschreitet ${say.celsius(at.limitCelsius)} nach ${say.minutes(at.minutes)} von ${say.minutes(at.programmeMinutes)}.`,
  'too-warm.hot-from-start': ({ limitCelsius }, say) =>
    `Der Teig kommt viel zu warm aus dem Kneter: er ist von Anfang an über ${say.celsius(limitCelsius)}, und das überlebt Hefe nicht.`,
  'too-warm.hot': (at, say) =>
    `Der Teig kommt viel zu warm aus dem Kneter: er überschreitet ${say.celsius(at.limitCelsius)} nach ${say.minutes(at.minutes)} von ${say.minutes(at.programmeMinutes)}, und das überlebt Hefe nicht.`,
  'too-warm.no-water': () =>
    'Es gibt kein Wasser zu kühlen: das Mehl und die übrigen Zutaten kühlen, kürzer oder langsamer kneten.',
  'too-warm.little-water': () =>
    'Das Wasser ist zu wenig, um damit zu kühlen: das Mehl und die übrigen Zutaten kühlen, kürzer oder langsamer kneten.',
  'too-warm.follows-room': () =>
    'Anderes Wasser ändert nach so langer Zeit wenig: kürzer oder langsamer kneten oder in einem kühleren Raum.',
  'too-warm.half-ice': () =>
    'Die Hälfte des Wassers ist schon Eis: das Mehl kühlen, kürzer oder langsamer kneten.',
  'too-warm.ice-not-enough': () =>
    'Nicht einmal die Hälfte des Wassers als Eis würde reichen: kürzer oder langsamer kneten.',
  'too-warm.tap-assumed': ({ tapCelsius }, say) =>
    `Für das Leitungswasser werden ${say.celsius(tapCelsius)} angenommen.`,
  'too-warm.target': () => 'die gewünschte Teigtemperatur',
  'too-warm.fix-leave-out': () => 'Die Temperatur weglassen: das Wasser wird berechnet',
  'too-warm.fix-water': ({ meant }) => `Das Wasser mit ${meant} nehmen`,
  'too-warm.fix-developed': (stop) => `${stopAt(stop)}: bis dahin ausgeknetet`,
  'too-warm.fix-rest': (stop) => `${stopAt(stop)}: Falten und Stockgare tun den Rest`,
  'too-warm.fix-fold': (stop) => `${stopAt(stop)}, und in der Stockgare zweimal falten`,

  'ice.would-end': (ice, say) =>
    `Mit ${say.mass(ice.iceGrams)} Eis und ${say.mass(ice.tapGrams)} Leitungswasser würde er bei ${say.celsius(ice.doughCelsius)} enden.`,
  'ice.fix-take': ({ meant, doughCelsius }, say) =>
    `${meant} als Eis nehmen: der Teig würde bei ${say.celsius(doughCelsius)} enden`,

  'ice-needed.tap': (tap, say) =>
    `Mit Leitungswasser von ${say.celsius(tap.tapCelsius)} endet der Teig bei ${instead(tap, say)}.`,
  'ice-needed.tap-assumed': (tap, say) =>
    `Mit Leitungswasser von angenommen ${say.celsius(tap.tapCelsius)} („${tap.property}“ in den Abschnitt der Bäckerei schreiben) endet der Teig bei ${instead(tap, say)}.`,
  'ice-needed.would-bring': ({ doughCelsius }, say) => `Eis brächte ihn auf ${say.celsius(doughCelsius)}.`,

  'ice-above-half.weighed': (ice, say) =>
    `Die Hälfte des Wassers ist Eis, ${say.mass(ice.iceGrams)}, und mehr schmilzt zu spät: der Teig endet trotzdem bei ${instead(ice, say)}. Das Mehl kühlen, kürzer oder langsamer kneten.`,
  'ice-above-half.unsized': (ice, say) =>
    `Die Hälfte des Wassers ist Eis, und mehr schmilzt zu spät: der Teig endet trotzdem bei ${instead(ice, say)}. Das Mehl kühlen, kürzer oder langsamer kneten.`,

  'hot-water.not-enough': (water, say) =>
    `Selbst mit Wasser von ${say.celsius(water.waterCelsius)} endet der Teig bei ${instead(water, say)}. ${warmTheRest}`,
  'hot-water.too-little': ({ doughCelsius, targetCelsius }, say) =>
    `Kein Wasser bringt den Teig auf ${say.celsius(targetCelsius)}: es ist zu wenig neben allem, was kälter ist, und er endet bei ${say.celsius(doughCelsius)}. ${warmTheRest}`,
  'hot-water.follows-room': ({ doughCelsius, targetCelsius }, say) =>
    `Kein Wasser bringt den Teig auf ${say.celsius(targetCelsius)}: nach so langer Zeit folgt er dem Raum und dem Kneter, bis ${say.celsius(doughCelsius)}. ${warmTheRest}`,
  'hot-water.stated': ({ waterCelsius, limitCelsius }, say) =>
    `Wasser mit ${say.celsius(waterCelsius)} schadet der Hefe und kann verbrühen: über etwa ${say.celsius(limitCelsius)} stattdessen das Mehl wärmen oder den Teig kühler führen.`,
  'hot-water.computed': ({ waterCelsius, limitCelsius, targetCelsius }, say) =>
    `Für ${say.celsius(targetCelsius)} müsste das Wasser ${say.celsius(waterCelsius)} haben, und das schadet der Hefe und kann verbrühen: über etwa ${say.celsius(limitCelsius)} stattdessen das Mehl wärmen oder den Teig kühler führen.`,

  'yeast-in-the-hot.dies': ({ name, celsius }, say) =>
    `Die Hefe trifft auf „${name}“ mit ${say.celsius(celsius)} und überlebt das nicht. ${addLater}`,
  'yeast-in-the-hot.may-suffer': ({ name, celsius }, say) =>
    `Die Hefe trifft auf „${name}“ mit ${say.celsius(celsius)} und nimmt womöglich Schaden. ${addLater}`,
  'yeast-in-the-hot.dies-in-bowl': ({ celsius }, say) =>
    `Die Hefe trifft im Kessel auf ${say.celsius(celsius)} und überlebt das nicht. ${addLater}`,
  'yeast-in-the-hot.may-suffer-in-bowl': ({ celsius }, say) =>
    `Die Hefe trifft im Kessel auf ${say.celsius(celsius)} und nimmt womöglich Schaden. ${addLater}`,
};

const warmTheRest =
  'Den Raum oder die übrigen Zutaten wärmer halten oder die Teigtemperatur schreiben, die sich ergibt.';
const addLater =
  'Sie später zugeben, wenn Mehl und Wasser den Kessel abgekühlt haben, oder das Heiße erst abkühlen lassen.';

type End = Args<'celsius' | 'bandCelsius' | 'overCelsius'>;

function ended({ celsius, bandCelsius, overCelsius }: End, say: Speaker): string {
  return `${say.celsiusBand(celsius, bandCelsius)}, ${say.celsiusApart(overCelsius)}`;
}

function instead(
  { doughCelsius, targetCelsius }: Args<'doughCelsius' | 'targetCelsius'>,
  say: Speaker,
): string {
  return `${say.celsius(doughCelsius)} statt ${say.celsius(targetCelsius)}`;
}

type Stop = Args<'number' | 'choices'>;

/** Wann aufzuhören ist, und wie lange die Zeilen dann dauern, in ihrer Reihenfolge. */
function stopAt({ number, choices }: Stop): string {
  const [only] = choices;
  return choices.length === 1
    ? `${only} schreiben, bis Minute ${number}`
    : `Auf ${choices.join(', dann ')} kürzen, bis Minute ${number}`;
}
