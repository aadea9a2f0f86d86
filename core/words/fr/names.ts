import type { names as english } from '../en/names.ts';
import type { Translation } from '../message.ts';

/** Les noms inconnus, ou connus plus d’une fois. */
export const names: Translation<typeof english> = {
  'unknown-ingredient.meant': ({ name, otherName }) =>
    `« ${name} » est inconnu : il est pesé, mais ne compte ni comme farine ni comme eau. Est-ce « ${otherName} » ?`,
  'unknown-ingredient.none': ({ name }) =>
    `« ${name} » est inconnu : il est pesé, mais ne compte ni comme farine ni comme eau. Le définir, ou écrire un nom connu.`,
  'unknown-ingredient.like-meant': ({ name, otherName }) =>
    `« ${name} » est inconnu : rien ne peut en partir. Est-ce « ${otherName} » ?`,
  'unknown-ingredient.like-none': ({ name }) =>
    `« ${name} » est inconnu : rien ne peut en partir. Le définir, ou écrire un nom connu.`,
  'which-kind.yeast': ({ name, meant, otherMeant }) =>
    `« ${name} » est lu comme ${meant} ; ce peut être ${otherMeant}. Trois fois moins de levure instantanée fait lever autant.`,
  'which-kind.spelt': ({ name, meant, otherMeant }) =>
    `« ${name} » est lu comme ${meant} ; ce peut être ${otherMeant}. L’épeautre blanc absorbe moins d’eau.`,
  'which-kind.oil': ({ name, meant, otherMeant }) =>
    `« ${name} » est lu comme ${meant} ; ce peut être ${otherMeant}. L’étiquette nomme la plante.`,
  'which-kind.malt': ({ name, meant, otherMeant }) =>
    `« ${name} » est lu comme ${meant} ; ce peut être ${otherMeant}. L’extrait est un sirop : il apporte du sucre et de l’eau, et pas d’enzymes.`,
  'unknown-ingredient.hydration': ({ example }) => `L’hydratation s’écrit sur la ligne de l’eau : ${example}`,
  'unknown-ingredient.culture-alone': ({ name }) =>
    `« ${name} » est de farine et d’eau, et ne compte pour aucune des deux sur une ligne à part. Écrit comme préferment, les deux comptent.`,
  'unknown-ingredient.fix-culture': ({ name, fraction }, say) =>
    `Écrire « ${name} » comme préferment à ${say.percent(fraction)} d’hydratation`,
  'unknown-ingredient.culture': ({ name, example }) =>
    `« ${name} » est inconnu. Le levain-chef de même nature que le préferment s’écrit : ${example}`,

  'unknown-mixer.meant': ({ name, otherName }) =>
    `Aucun pétrin ne s’appelle « ${name} » : ni l’échauffement ni le développement ne peuvent être calculés. Est-ce « ${otherName} » ?`,
  'unknown-mixer.none': ({ name }) =>
    `Aucun pétrin ne s’appelle « ${name} » : ni l’échauffement ni le développement ne peuvent être calculés. Le définir, ou nommer un type : spiral (à spirale), planetary (batteur), fork (à fourche).`,

  'unknown-part.meant': ({ name, otherName }) =>
    `Aucune partie de la recette ne s’appelle « ${name} ». Est-ce « ${otherName} » ?`,
  'unknown-part.none': ({ name }) =>
    `Aucune partie de la recette ne s’appelle « ${name} ». Elle n’a pas de parties.`,
  'unknown-part.others': ({ name, names: parts }, say) =>
    `Aucune partie de la recette ne s’appelle « ${name} ». Ses parties : ${say.list(parts)}.`,

  'unknown-formula.meant': ({ name, otherName }) =>
    `Aucune recette ne s’appelle « ${name} ». Est-ce « ${otherName} » ?`,
  'unknown-formula.none': ({ name }) => `Aucune recette ne s’appelle « ${name} ».`,
  'unknown-formula.no-experiment': ({ name }) => `Aucune série d’essais ne s’appelle « ${name} ».`,
  'unknown-formula.base': ({ name }) =>
    `Aucune recette ne s’appelle « ${name} » ; on ne sait donc pas ce que cette variante en reprend. Un nom qui contient « like » se met entre guillemets.`,
  'unknown-formula.base-meant': ({ name, otherName }) =>
    `Aucune recette ne s’appelle « ${name} » ; on ne sait donc pas ce que cette variante en reprend. Peut-être s’agit-il de « ${otherName} ».`,
  'unknown-formula.base-of-base': ({ name, otherName }) =>
    `« ${name} » est une variante de « ${otherName} », et aucune recette ne s’appelle ainsi ; ni l’une ni l’autre ne peut donc être calculée.`,
  'unknown-formula.several': ({ name, count }, say) =>
    `« ${name} » est écrit ${say.number(count, 0)} fois à l’endroit le plus proche qui le connaît. Donner à chaque recette un nom à elle.`,

  'several-definitions.several': ({ name, count }, say) =>
    `« ${name} » est défini ${say.number(count, 0)} fois à l’endroit le plus proche qui le connaît : aucune de ces définitions ne vaut. En garder une, ou renommer les autres.`,
  'several-definitions.one': () => 'l’une d’elles',

  'same-name-twice.folder': ({ name, count }, say) =>
    `« ${name} » est défini ${say.number(count, 0)} fois dans ce dossier, et laquelle est voulue n’est pas clair. Donner à chacune un nom à elle.`,
  'same-name-twice.part': ({ name }) =>
    `Cette recette a déjà une partie appelée « ${name} », et la première vaut. Donner à celle-ci un nom à elle.`,
  'same-name-twice.other': () => 'le même nom',
  'same-name-twice.first': () => 'la première : elle vaut',

  'same-ingredient-twice.adds-up': ({ name }) =>
    `« ${name} » figure déjà dans cette section : les deux lignes s’additionnent.`,
  'same-ingredient-twice.other': () => 's’additionne avec cette ligne',

  'not-in-base.none': ({ name, otherName }) =>
    `« ${otherName} » n’a pas de « ${name} » qu’on puisse omettre.`,
  'not-in-base.no-base': ({ name, example }) =>
    `« ${name} » ne s’omet que d’une recette de base, et cette recette n’est pas une variante. Une variante nomme sa base : ${example}`,
  'not-in-experiment.dough': ({ name, otherName }) =>
    `« ${name} » n’a pas de pâte « ${otherName} » : cet essai ne figure à côté de rien de ce qui y est attendu. Nommer « ${otherName} » dans une ligne de l’expérience : dough ${otherName}`,
  'not-in-experiment.mixer': ({ name, otherName }) =>
    `« ${name} » a « ${otherName} » plusieurs fois, et sur aucun pétrin de cet essai : il ne figure à côté d’aucune.`,
  'trial-of-other.other': ({ name, otherName }) =>
    `Cet essai figure sous « ${otherName} » et compte comme un essai de celle-ci. Le placer sous les lignes de « ${name} ».`,
  'not-in-base.fix': () => 'Retirer la ligne',
  'variant.in-base': ({ name, written }) => `${written} dans « ${name} »`,
  'variant.taken-celsius': ({ celsius, name }, say) => `à ${say.celsius(celsius)} comme dans « ${name} »`,
  'variant.added': ({ name }) => `pas dans « ${name} »`,
  'variant.new-line': ({ name, written }) => `${name} ${written} (nouveau)`,
  'variant.changed-line': ({ name, written, otherWritten }) => `${name} ${written} (là ${otherWritten})`,
  'variant.dropped': ({ name }) => `sans ${name}`,
  'variant.own-section': ({ written }) => `section propre : ${written}`,
  'variant.same': ({ names: bases }, say) =>
    `Une variante de ${say.list(bases.map((name) => `« ${name} »`))} qui n’y change rien`,
  'variant.of': ({ names: bases }, say) => `Une variante de ${say.list(bases.map((name) => `« ${name} »`))}`,
  'variant.line-of-base': () => 'la ligne de la recette de base',
  'loop.part': ({ names: around }) =>
    `Cela tourne en rond : ${around.join(' → ')}. Supprimer cette ligne ; le levain-chef de même nature s’écrit « ripe culture 20% ».`,
  'loop.variant': ({ names: around }, say) =>
    `Une variante ne peut pas être la sienne propre, même par d’autres : ${say.list(around.map((name) => `« ${name} »`))}.`,
  'loop.variant-of-itself': ({ name }) => `« ${name} » ne peut pas être une variante d’elle-même.`,
  'loop.in-circle': () => 'partie du cercle',
  'loop.formula': ({ name }) =>
    `« ${name} » est fait avec cette recette même : aucune des deux ne peut être pesée. Supprimer l’une des deux lignes.`,

  'unused-part.fix-add': ({ part }) => `Ajouter tout « ${part} » à la pâte`,
  'unused-part.unused': ({ name }) =>
    `Aucune ligne ne prend « ${name} » et rien n’y est prélevé : rien n’en arrive dans la pâte. Écrire un prélèvement (« draws »), ou une ligne qui le prend.`,
};
