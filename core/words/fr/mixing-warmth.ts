import type { Args } from '../args.ts';
import type { mixingWarmth as english } from '../en/mixing-warmth.ts';
import type { Translation } from '../message.ts';
import type { Speaker } from '../speaker.ts';

/** La pâte trop chaude, et l’eau, la glace et la levure qui vont avec. */
export const mixingWarmth: Translation<typeof english> = {
  'warmth.slightly': () => 'un peu chaude',
  'warmth.too': () => 'trop chaude',
  'warmth.much-too': () => 'beaucoup trop chaude',

  'too-warm.leaves': (end, say) =>
    `La pâte sort du pétrin ${say.say(end.warmth)} : ${ended(end, say)} au-dessus des ${say.celsius(end.targetCelsius)} voulus.`,
  'too-warm.leaves-usual': (end, say) =>
    `La pâte sort du pétrin ${say.say(end.warmth)} : ${ended(end, say)} au-dessus des ${say.celsius(end.targetCelsius)} d’usage.`,
  'too-warm.may-leave': (end, say) =>
    `La pâte sort peut-être du pétrin ${say.say(end.warmth)} : ${ended(end, say)} au-dessus des ${say.celsius(end.targetCelsius)} voulus.`,
  'too-warm.may-leave-usual': (end, say) =>
    `La pâte sort peut-être du pétrin ${say.say(end.warmth)} : ${ended(end, say)} au-dessus des ${say.celsius(end.targetCelsius)} d’usage.`,
  'too-warm.from-start': ({ limitCelsius }, say) => `Elle dépasse ${say.celsius(limitCelsius)} dès le début.`,
  'too-warm.passes': (at, say) =>
    `Elle dépasse ${say.celsius(at.limitCelsius)} après ${say.minutes(at.minutes)} sur ${say.minutes(at.programmeMinutes)}.`,
  'too-warm.hot-from-start': ({ limitCelsius }, say) =>
    `La pâte sort du pétrin beaucoup trop chaude : elle dépasse ${say.celsius(limitCelsius)} dès le début, et la levure n’y survit pas.`,
  'too-warm.hot': (at, say) =>
    `La pâte sort du pétrin beaucoup trop chaude : elle dépasse ${say.celsius(at.limitCelsius)} après ${say.minutes(at.minutes)} sur ${say.minutes(at.programmeMinutes)}, et la levure n’y survit pas.`,
  'too-warm.no-water': () =>
    'Il n’y a pas d’eau à refroidir : refroidir la farine et le reste, ou pétrir moins longtemps ou plus lentement.',
  'too-warm.little-water': () =>
    'Il y a trop peu d’eau pour la refroidir : refroidir la farine et le reste, ou pétrir moins longtemps ou plus lentement.',
  'too-warm.follows-room': () =>
    'Une autre eau change peu après si longtemps : pétrir moins longtemps ou plus lentement, ou dans un fournil plus frais.',
  'too-warm.half-ice': () =>
    'La moitié de l’eau est déjà de la glace : refroidir la farine, ou pétrir moins longtemps ou plus lentement.',
  'too-warm.ice-not-enough': () =>
    'Même la moitié de l’eau en glace ne suffirait pas : pétrir moins longtemps ou plus lentement.',
  'too-warm.tap-assumed': ({ tapCelsius }, say) =>
    `L’eau du robinet est supposée à ${say.celsius(tapCelsius)}.`,
  'too-warm.target': () => 'la température de pâte voulue',
  'too-warm.fix-leave-out': () => 'Enlever la température : l’eau de coulage est calculée',
  'too-warm.fix-water': ({ meant }) => `Prendre l’eau à ${meant}`,
  'too-warm.fix-developed': (stop) => `${stopAt(stop)} : développée d’ici là, et moins chaude`,
  'too-warm.fix-rest': (stop) => `${stopAt(stop)} : les rabats et le pointage font le reste`,
  'too-warm.fix-fold': (stop) => `${stopAt(stop)}, et donner deux rabats pendant le pointage`,

  'ice.would-end': (ice, say) =>
    `Avec ${say.mass(ice.iceGrams)} de glace et ${say.mass(ice.tapGrams)} d’eau du robinet, elle finirait à ${say.celsius(ice.doughCelsius)}.`,
  'ice.fix-take': ({ meant, doughCelsius }, say) =>
    `Prendre ${meant} en glace : elle finirait à ${say.celsius(doughCelsius)}`,

  'ice-needed.tap': (tap, say) =>
    `Avec l’eau du robinet, à ${say.celsius(tap.tapCelsius)}, la pâte finit à ${instead(tap, say)}.`,
  'ice-needed.tap-assumed': (tap, say) =>
    `Avec l’eau du robinet, supposée à ${say.celsius(tap.tapCelsius)} (écrire « ${tap.property} » dans la section de la boulangerie), la pâte finit à ${instead(tap, say)}.`,
  'ice-needed.would-bring': ({ doughCelsius }, say) => `La glace l’amènerait à ${say.celsius(doughCelsius)}.`,

  'ice-above-half.weighed': (ice, say) =>
    `La moitié de l’eau est de la glace, ${say.mass(ice.iceGrams)}, et davantage fond trop tard : la pâte finit pourtant à ${instead(ice, say)}. Refroidir la farine, ou pétrir moins longtemps ou plus lentement.`,
  'ice-above-half.unsized': (ice, say) =>
    `La moitié de l’eau est de la glace, et davantage fond trop tard : la pâte finit pourtant à ${instead(ice, say)}. Refroidir la farine, ou pétrir moins longtemps ou plus lentement.`,

  'hot-water.not-enough': (water, say) =>
    `Même avec une eau à ${say.celsius(water.waterCelsius)}, la pâte finit à ${instead(water, say)}. Réchauffer le fournil ou le reste de ce qui entre, ou écrire la température de pâte qui en résulte.`,
  'hot-water.too-little': ({ doughCelsius, targetCelsius }, say) =>
    `Aucune eau n’amène la pâte à ${say.celsius(targetCelsius)} : il y en a trop peu à côté de tout ce qui est plus froid, et la pâte finit à ${say.celsius(doughCelsius)}. Réchauffer le fournil ou le reste de ce qui entre, ou écrire la température de pâte qui en résulte.`,
  'hot-water.follows-room': ({ doughCelsius, targetCelsius }, say) =>
    `Aucune eau n’amène la pâte à ${say.celsius(targetCelsius)} : après si longtemps elle suit le fournil et la machine, jusqu’à ${say.celsius(doughCelsius)}. Réchauffer le fournil ou le reste de ce qui entre, ou écrire la température de pâte qui en résulte.`,
  'hot-water.stated': ({ waterCelsius, limitCelsius }, say) =>
    `Une eau à ${say.celsius(waterCelsius)} nuit à la levure et peut brûler : au-delà d’environ ${say.celsius(limitCelsius)}, réchauffer plutôt la farine, ou accepter une pâte plus fraîche.`,
  'hot-water.computed': ({ waterCelsius, limitCelsius, targetCelsius }, say) =>
    `Pour atteindre ${say.celsius(targetCelsius)}, l’eau devrait être à ${say.celsius(waterCelsius)}, ce qui nuit à la levure et peut brûler : au-delà d’environ ${say.celsius(limitCelsius)}, réchauffer plutôt la farine, ou accepter une pâte plus fraîche.`,

  'yeast-in-the-hot.dies': ({ name, celsius }, say) =>
    `La levure rencontre ${name} à ${say.celsius(celsius)} et n’y survivra pas. L’ajouter plus tard, quand la farine et l’eau ont refroidi la cuve, ou laisser d’abord refroidir.`,
  'yeast-in-the-hot.may-suffer': ({ name, celsius }, say) =>
    `La levure rencontre ${name} à ${say.celsius(celsius)} et peut en souffrir. L’ajouter plus tard, quand la farine et l’eau ont refroidi la cuve, ou laisser d’abord refroidir.`,
  'yeast-in-the-hot.dies-in-bowl': ({ celsius }, say) =>
    `La levure rencontre ce qui est dans la cuve à ${say.celsius(celsius)} et n’y survivra pas. L’ajouter plus tard, quand la farine et l’eau ont refroidi la cuve, ou laisser d’abord refroidir.`,
  'yeast-in-the-hot.may-suffer-in-bowl': ({ celsius }, say) =>
    `La levure rencontre ce qui est dans la cuve à ${say.celsius(celsius)} et peut en souffrir. L’ajouter plus tard, quand la farine et l’eau ont refroidi la cuve, ou laisser d’abord refroidir.`,
};

type End = Args<'warmth' | 'celsius' | 'bandCelsius' | 'overCelsius' | 'targetCelsius'>;

function ended({ celsius, bandCelsius, overCelsius }: End, say: Speaker): string {
  return `${say.celsiusBand(celsius, bandCelsius)}, ${say.celsiusApart(overCelsius)}`;
}

function instead(
  { doughCelsius, targetCelsius }: Args<'doughCelsius' | 'targetCelsius'>,
  say: Speaker,
): string {
  return `${say.celsius(doughCelsius)} au lieu de ${say.celsius(targetCelsius)}`;
}

type Stop = Args<'number' | 'choices'>;

/** Quand arrêter, et combien de temps durent alors les lignes, dans leur ordre. */
function stopAt({ number, choices }: Stop): string {
  const [only] = choices;
  return choices.length === 1
    ? `Arrêter à la minute ${number} (écrire ${only})`
    : `Arrêter à la minute ${number} (raccourcir à ${choices.join(', puis ')})`;
}
