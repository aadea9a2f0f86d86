import type { sums as english } from '../en/sums.ts';
import type { Translation } from '../message.ts';
import type { Speaker } from '../speaker.ts';

/** Les quantités qui ne font pas un tout, ou dont rien ne fixe la taille. */
export const sums: Translation<typeof english> = {
  'no-density.unknown': ({ name, example }) =>
    `Ce que pèse un millilitre de « ${name} » n’est pas connu. Écrire ici son poids, ou dans sa section sa densité : ${example}`,
  'no-piece-weight.unknown': ({ name, example }) =>
    `Ce que pèse une pièce de « ${name} » n’est pas connu. Écrire le poids ici, ou dans sa section : ${example}`,
  'no-pieces.unknown': ({ example }) =>
    `Tant par pièce, pour combien de pièces ? L’écrire dans la recette : ${example}`,
  'no-pieces.also': () => 'compté aussi par pièce',

  'impossible-amount.cooking-loss': () =>
    'Il s’évapore ici plus d’eau qu’il n’y en a : rien n’est donc retiré. Écrire une perte plus petite, ou l’eau.',

  'no-flour.weighs-nothing': () =>
    'La farine de cette section ne pèse rien : les pourcentages non plus. Écrire combien il y a de farine.',
  'no-flour.dough': () =>
    'Cette section n’a ni farine ni ligne à 100 % : pour cent de quoi ? Ajouter la ligne de farine, ou écrire 100% sur la ligne qui sert de mesure aux autres.',
  'no-flour.part': () =>
    'Cette section n’a ni farine ni ligne à 100 % : pour cent de quoi ? Ses pourcentages portent sur elle-même : écrire 100% sur une ligne et les autres par rapport à elle, ou « of all flour » derrière chacun pour mesurer sur toute la farine de la recette.',
  'no-flour.fix-of-all-flour': () => 'Les rapporter à toute la farine',
  'no-flour.beside': () =>
    'Pour cent de quoi ? Il n’y a pas de farine ici : écrire combien il en va sur une pièce, par exemple 3 g a piece, ou combien en tout, par exemple 200 g.',

  'flour-not-hundred.short': ({ fraction, apartFraction }, say) =>
    `Les farines de cette section font ${say.percent(fraction)} : il manque ${say.percent(apartFraction)} aux 100 % auxquels se rapportent tous les pourcentages.`,
  'flour-not-hundred.above': ({ fraction, apartFraction }, say) =>
    `Les farines de cette section font ${say.percent(fraction)} : ${say.percent(apartFraction)} de plus que les 100 % auxquels se rapportent tous les pourcentages.`,
  'flour-not-hundred.starch': ({ fraction, name, example }, say) =>
    `Les farines de cette section font ${say.percent(fraction)}, et 100 % avec « ${name} », qui ne compte pas d’elle-même comme farine. Définissez-la avec « ${example} », ou portez les farines à 100 %.`,
  'flour-not-hundred.on-top': ({ fraction, grams }, say) =>
    `Les farines en pour cent font à elles seules ${say.percent(fraction)}, et ${say.mass(grams)} de farine s’y ajoutent. Écrire toutes les farines de la section en pour cent, ou toutes en poids.`,
  'flour-not-hundred.split': ({ fraction }, say) =>
    `Les farines font ici ${say.percent(fraction)}, et avec celles des parties 100 % : ce sont des pourcentages de toute la farine. Écrivez la formule entière, et ce que chaque partie y prélève.`,
  'flour-not-hundred.fix-split': () => 'Écrire la formule entière et les parties prélevées sur elle',
  'flour-not-hundred.other': () => 'farine de la même section',

  'no-scale.remaining': ({ part }) =>
    `« remaining » prend tout ce qui est fait de « ${part} », et rien ne fixe combien. Écrire ici son pourcentage, ou là-bas sa farine en poids.`,
  'no-scale.dough': () =>
    'Certaines lignes sont en poids et la farine en pour cent : rien ne fixe combien il y a de farine. Écrire un rendement (« yield »), ou la farine en poids.',
  'no-scale.variant': ({ name, otherName }) =>
    `Un poids dit combien « ${otherName} » donne, et « ${name} » n’en a aucun : le calcul se fait pour 1 kg de farine. Écrire une de ses farines en poids, ou un rendement (« yield »).`,
  'no-scale.part': ({ part }) =>
    `Rien ne fixe combien de « ${part} » est fait. Écrire un prélèvement (« draws »), nommer cette partie dans une ligne de la recette, ou écrire sa farine en poids.`,
  'no-scale.enclosed': ({ part, example }) =>
    `Rien ne fixe combien de « ${part} » est fait. Nommer cette partie dans une ligne de la recette, par exemple « ${example} », ou écrire ses lignes en poids.`,
  'no-scale.beside': ({ part, example }) =>
    `Rien ne fixe combien de « ${part} » est fait. Nommer cette partie dans une ligne de la recette avec son poids par pièce, par exemple « ${example} », ou écrire ses lignes en poids.`,
  'no-scale.in-weight': () => 'une ligne en poids',

  'drawn-too-much.unsized': ({ names, name }, say) =>
    `${quoted(names, say)} ${brings(names)} plus de « ${name} » que la recette n’en a. Prélever moins, ou augmenter cette ligne.`,
  'drawn-too-much.shares': ({ names, name, fraction, usualFraction }, say) =>
    `${quoted(names, say)} ${brings(names)} plus de « ${name} » que la recette n’en a : ${say.percent(fraction)} de la farine au lieu de ${say.percent(usualFraction)}. Prélever moins, ou augmenter cette ligne.`,
  'drawn-too-much.grams': ({ names, name, grams }, say) =>
    `${quoted(names, say)} ${brings(names)} plus de « ${name} » que la recette n’en a : ${say.mass(grams)} de trop. Prélever moins, ou augmenter cette ligne.`,
  'drawn-too-much.shares-grams': ({ names, name, fraction, usualFraction, grams }, say) =>
    `${quoted(names, say)} ${brings(names)} plus de « ${name} » que la recette n’en a : ${say.percent(fraction)} de la farine au lieu de ${say.percent(usualFraction)}, ${say.mass(grams)} de trop. Prélever moins, ou augmenter cette ligne.`,
  'drawn-too-much.brings': () => 'en apporte',

  'drawn-and-added.both': ({ part }) =>
    `« ${part} » prélève sa farine sur la recette et est encore ajouté ici. Supprimer cette ligne, ou son « draws ».`,
  'drawn-and-added.draws': () => 'sa section prélève',
};

function quoted(names: readonly string[], say: Speaker): string {
  return say.list(names.map((name) => `« ${name} »`));
}

function brings(names: readonly string[]): string {
  return names.length > 1 ? 'apportent' : 'apporte';
}
