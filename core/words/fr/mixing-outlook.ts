import type { Args } from '../args.ts';
import type { mixingOutlook as english } from '../en/mixing-outlook.ts';
import type { Translation } from '../message.ts';
import type { Speaker } from '../speaker.ts';

/** Ce que donne un programme de pétrissage, son eau de coulage, et chacune de ses lignes. */
export const mixingOutlook: Translation<typeof english> = {
  'place.by-hand': () => 'à la main',
  'place.in-mixer': ({ name }) => `dans ${name}`,

  'outlook.hot-from-start': ({ limitCelsius }, say) =>
    `Beaucoup trop chaude : elle dépasse ${say.celsius(limitCelsius)} dès le début.`,
  'outlook.hot': ({ limitCelsius, minutes }, say) =>
    `Beaucoup trop chaude : elle dépasse ${say.celsius(limitCelsius)} après ${say.minutes(minutes)}.`,
  'outlook.no-end': ({ reason }, say) =>
    `La température de fin de pétrissage n’est pas connue : ${say.say(reason)}.`,
  'outlook.as-wanted': (end, say) => `${ended(end, say)} : comme voulu.`,
  'outlook.about-as-wanted': (end, say) => `${ended(end, say)} : à peu près comme voulu.`,
  'outlook.as-usual': (end, say) => `${ended(end, say)} : comme d’usage.`,
  'outlook.about-as-usual': (end, say) => `${ended(end, say)} : à peu près comme d’usage.`,
  'outlook.warmer': (end, say) =>
    `${ended(end, say)} : ${say.say(end.warmth)}, de ${say.celsiusApart(end.apartCelsius)}, ${say.celsius(end.targetCelsius)} étant voulus.`,
  'outlook.warmer-usual': (end, say) =>
    `${ended(end, say)} : ${say.say(end.warmth)}, de ${say.celsiusApart(end.apartCelsius)}, ${say.celsius(end.targetCelsius)} étant d’usage.`,
  'outlook.cooler': (end, say) =>
    `${ended(end, say)} : ${say.celsiusApart(end.apartCelsius)} de moins que voulu, ${say.celsius(end.targetCelsius)} étant voulus.`,
  'outlook.cooler-usual': (end, say) =>
    `${ended(end, say)} : ${say.celsiusApart(end.apartCelsius)} de moins que d’usage, ${say.celsius(end.targetCelsius)} étant d’usage.`,
  'outlook.stage': ({ stage, programmeMinutes }, say) =>
    `État à la fin : ${say.say(stage)}, après ${say.minutes(programmeMinutes)} de programme.`,
  'outlook.wished': ({ meant, when }, say) => `Pétrie comme souhaité (${meant}) : ${say.say(when)}.`,
  'outlook.developed': ({ when }, say) => `Développée : ${say.say(when)}.`,
  'outlook.past': ({ when, otherWhen }, say) =>
    `Relâchée : ${say.say(when)} ; surpétrie : ${say.say(otherWhen)}.`,
  'outlook.no-development': ({ reason }, say) => `Son développement n’est pas connu : ${say.say(reason)}.`,

  'moment.from': ({ lowMinutes, highMinutes }, say) =>
    `à partir d’environ ${say.minutesBand(lowMinutes, highMinutes)}`,
  'moment.last-speed': ({ lowMinutes, highMinutes }, say) =>
    `environ ${say.minutesBand(lowMinutes, highMinutes)} à la dernière vitesse`,
  'moment.far-off': () => 'pas avant longtemps',
  'moment.not-known': ({ reason }, say) => `inconnu (${say.say(reason)})`,

  'water.at': ({ waterCelsius }, say) => `eau de coulage à ${say.celsius(waterCelsius)}`,
  'water.no-hotter': ({ waterCelsius }, say) =>
    `eau de coulage à ${say.celsius(waterCelsius)}, pas plus chaude`,
  'water.from-tap': () => 'eau du robinet',
  'water.tap-at': ({ tapCelsius }, say) => `eau du robinet, à ${say.celsius(tapCelsius)}`,
  'water.tap-assumed': ({ tapCelsius }, say) => `eau du robinet, supposée à ${say.celsius(tapCelsius)}`,
  'water.ice': (ice, say) =>
    `${say.mass(ice.iceGrams)} de glace et ${say.mass(ice.tapGrams)} d’eau du robinet, à ${say.celsius(ice.tapCelsius)}`,
  'water.ice-assumed': (ice, say) =>
    `${say.mass(ice.iceGrams)} de glace et ${say.mass(ice.tapGrams)} d’eau du robinet, supposée à ${say.celsius(ice.tapCelsius)}`,
  'water.caution': () => 'Attention : une eau aussi chaude brûle, et tue la levure qu’elle touche.',
  'water.warm-the-rest': ({ doughCelsius }, say) =>
    `La pâte ne finit pourtant qu’à ${say.celsius(doughCelsius)} : réchauffer la farine ou le fournil.`,
  'water.little': (lever, say) =>
    `Il y en a trop peu pour agir : une eau plus froide de ${say.celsiusApart(lever.colderCelsius)} ne refroidit la pâte que de ${say.celsiusApart(lever.apartCelsius)}.`,
  'water.follows-room': (lever, say) =>
    `Après ${say.minutes(lever.minutes)}, la pâte suit le fournil et la machine : une eau plus froide de ${say.celsiusApart(lever.colderCelsius)} ne la refroidit que de ${say.celsiusApart(lever.apartCelsius)}.`,
  'water.half-ice': ({ doughCelsius }, say) =>
    `La moitié de l’eau est de la glace, et la pâte finit pourtant à ${say.celsius(doughCelsius)} : refroidir la farine, ou pétrir moins longtemps ou plus lentement.`,
  'water.no-colder': () => 'Il n’y a pas d’eau plus froide, et la glace ferait gagner moins d’un demi-degré.',
  'water.for-dough': ({ targetCelsius, water }, say) =>
    `Pour une pâte à ${say.celsius(targetCelsius)} : ${say.say(water)}.`,
  'water.would-have-to': ({ targetCelsius, waterCelsius }, say) =>
    `Pour une pâte à ${say.celsius(targetCelsius)}, elle devrait être à ${say.celsius(waterCelsius)}.`,

  'programme.not-known': ({ reason }, say) => `Pas encore connu : ${say.say(reason)}.`,
  'programme.title': ({ name, seconds, doughGrams }, say) =>
    `**${name}** — ${say.duration(seconds)} de programme, ${say.mass(doughGrams)} de pâte`,
  'programme.bands': ({ fraction }, say) =>
    `_Le pétrissage est donné par plages : usage courant et notre propre ajustement, ±${say.percent(fraction)} tant que vos propres essais ne disent pas mieux._`,
  'programme.line-end': ({ state }, say) => `À la fin de cette ligne : **${say.say(state)}**.`,
  'programme.line-end-trial': ({ state }, say) =>
    `À la fin de cette ligne, par le calcul : **${say.say(state)}**.`,
  'programme.goes-in': ({ facts }, say) => `On y met : ${say.list(facts.map(say.say))}.`,
  'programme.portion': ({ name, grams }, say) => `${name} ${say.mass(grams)}`,
  'programme.portion-percent': ({ name, fraction }, say) => `${name} ${say.percent(fraction)}`,
  'programme.line-alone': ({ facts }, say) => `Cette ligne à elle seule : ${say.list(facts.map(say.say))}.`,
  'programme.no-change': () => 'pas de changement de température',
  'programme.change': ({ apartCelsius }, say) =>
    `${apartCelsius < 0 ? '' : '+'}${say.celsiusApart(apartCelsius)}`,
  'programme.work': ({ fraction }, say) =>
    `${say.percent(fraction, 0)} du travail que demande un plein développement`,
  'programme.state': ({ parts }, say) => parts.map(say.say).join(' · '),
  'programme.minutes': ({ minutes }, say) => `${say.number(minutes, 1)} min`,
  'programme.celsius': ({ celsius }, say) => say.celsius(celsius),
  'programme.ice-left': () => 'glace encore à fondre',
};

type End = Args<'celsius' | 'bandCelsius'>;

function ended({ celsius, bandCelsius }: End, say: Speaker): string {
  return `Finit à ${say.celsiusBand(celsius, bandCelsius)}`;
}
