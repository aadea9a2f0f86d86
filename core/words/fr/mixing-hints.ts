import type { mixingHints as english } from '../en/mixing-hints.ts';
import type { Translation } from '../message.ts';

/** Ce que sont les chiffres en bout de ligne, et sur quoi ils reposent ; Markdown. */
export const mixingHints: Translation<typeof english> = {
  'hint.both': ({ fraction, grams }, say) => `${say.percent(fraction)} · ${say.mass(grams)}`,
  'hint.share': ({ fraction }, say) => say.percent(fraction),
  'hint.weight': ({ grams }, say) => say.mass(grams),
  'hint.not-known': () => 'Pas encore connu',

  'hint.percent-stated': ({ fraction, grams }, say) =>
    `**${say.mass(grams)}** : ${say.percent(fraction)}. Le pourcentage est écrit ici.`,
  'hint.percent-stated-of': ({ fraction, grams, otherGrams }, say) =>
    `**${say.mass(grams)}** : ${say.percent(fraction)} de ${say.mass(otherGrams)}. Le pourcentage est écrit ici.`,
  'hint.weight-stated': ({ fraction }, say) =>
    `**${say.percent(fraction)}** de la farine. Le poids est écrit ici.`,
  'hint.weight-stated-of': ({ fraction, otherGrams }, say) =>
    `**${say.percent(fraction)}** de la farine (${say.mass(otherGrams)}). Le poids est écrit ici.`,
  'hint.weight-stated-line': ({ fraction }, say) =>
    `**${say.percent(fraction)}** de la ligne à 100 %. Le poids est écrit ici.`,
  'hint.weight-stated-line-of': ({ fraction, otherGrams }, say) =>
    `**${say.percent(fraction)}** de la ligne à 100 % (${say.mass(otherGrams)}). Le poids est écrit ici.`,
  'hint.balance': ({ figures }, say) =>
    `**${say.say(figures)}** : ce qui manque à 100 % de farine, calculé d’après les autres farines.`,
  'hint.hydration': ({ figures, fraction }, say) =>
    `**${say.say(figures)}** : ce que demande une hydratation de ${say.percent(fraction)}, calculé sur toute la recette.`,
  'hint.effective-hydration': ({ figures, fraction }, say) =>
    `**${say.say(figures)}** : ce que demande une hydratation effective de ${say.percent(fraction)}, calculé sur toute la recette.`,
  'hint.remaining': ({ figures }, say) => `**${say.say(figures)}** : tout ce qui reste de la partie.`,
  'hint.density': (line, say) =>
    `**${say.say(line.figures)}**, avec une densité de ${say.number(line.gramsPerMillilitre, 3)} g/ml : ${say.say(line.source)}.`,
  'hint.no-density': ({ figures }, say) => `**${say.say(figures)}** : sa densité n’est pas connue.`,
  'hint.pieces': ({ figures, grams, source }, say) =>
    `**${say.say(figures)}**, à ${say.mass(grams)} la pièce : ${say.say(source)}.`,
  'hint.no-piece-weight': ({ figures }, say) =>
    `**${say.say(figures)}** : ce que pèse une pièce n’est pas connu.`,
  'hint.composition': ({ source }, say) => `_Composition : ${say.say(source)}._`,

  'hint.scale-assumed': ({ grams }, say) =>
    `Aucun rendement n’est écrit : les poids sont ceux pour ${say.mass(grams)} de farine.`,
  'hint.scale-lines': () => 'La pétrissée est aussi grande que la font les lignes en poids.',
  'hint.scale-yield': ({ written }) => `La taille de la pétrissée est celle de \`${written}\`, comme écrit.`,

  'hint.totals': () =>
    'L’hydratation est l’eau des lignes d’eau sur toute la farine, parties comprises ; le poids est tout ce qui va dans la cuve.',
  'hint.totals-effective': ({ fraction }, say) =>
    `Avec l’eau contenue dans les autres ingrédients, elle est de ${say.percent(fraction)}, d’après la composition de chacun (le survol de chacun nomme la source).`,
  'hint.part': () =>
    'L’hydratation est l’eau de cette partie sur sa farine ; le poids est tout ce qui en est fait.',
  'hint.part-outside': () =>
    'Le poids du tout. Cela ne va jamais dans la cuve et ne compte dans aucune hydratation.',

  'hint.mixing': () =>
    'Les minutes du programme jusqu’ici, la température de la pâte à la fin de cette ligne, et son degré de développement.',
  'hint.computed-from': ({ facts }, say) => `Calculé d’après ${say.list(facts.map(say.say))}.`,
  'hint.room': ({ celsius }, say) => `fournil à ${say.celsius(celsius)} (donné)`,
  'hint.room-assumed': ({ celsius }, say) =>
    `fournil à ${say.celsius(celsius)} (usage courant : un jour tempéré)`,
  'hint.flour': ({ celsius }, say) => `farine à ${say.celsius(celsius)} (donné)`,
  'hint.flour-assumed': ({ celsius }, say) =>
    `farine à ${say.celsius(celsius)} (usage courant : un jour tempéré)`,
  'hint.machine': ({ name }) => `${name} comme sont d’ordinaire ces machines (usage courant)`,
  'hint.machine-stated': ({ name }) => `${name} comme sa section le décrit (le reste d’usage courant)`,
  'hint.bands': ({ fraction }, say) =>
    `_Le degré de développement est donné par plages : usage courant et notre propre ajustement, ±${say.percent(fraction)} tant que vos propres essais ne disent pas mieux._`,
  'hint.written-in': ({ meant }) => `Écrit dans la ligne, c’est \`${meant}\`.`,
};
