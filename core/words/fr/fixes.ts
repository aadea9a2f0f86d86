import type { fixes as english } from '../en/fixes.ts';
import type { Translation } from '../message.ts';

/** Comment s’appellent les corrections. */
export const fixes: Translation<typeof english> = {
  'fix.write': ({ meant }) => `Écrire ${meant}`,
  'fix.write-plain-sign': () => 'Écrire le signe simple',
  'fix.write-percent-sign': () => 'Écrire le signe pour cent',
  'fix.write-hydration': () => 'Écrire « hydration » à la suite',
  'fix.write-balance': () => 'Écrire « balance » : ce qui manque à 100 %',
  'fix.take-out': () => 'Supprimer',
  'fix.take-this-line-out': () => 'Supprimer cette ligne',
  'fix.take-sign-out': ({ written }) => `Supprimer « ${written} »`,
  'fix.take-colon-out': () => 'Supprimer les deux-points',
  'fix.take-line-out': () => 'Supprimer cette ligne : c’est un prélèvement',
  'fix.take-draws-out': () => 'Supprimer le prélèvement : c’est un ajout',
  'fix.put-colon': () => 'Mettre les deux-points',
  'fix.put-colon-at-end': () => 'Mettre les deux-points à la fin',
  'fix.put-comma': () => 'Mettre la virgule',
  'fix.put-name-first': () => 'Mettre le nom en premier',
  'fix.put-behind-step-above': () => 'Mettre derrière l’étape du dessus',
  'fix.move-below-formula': () => 'Déplacer ces lignes sous l’en-tête de la formule',
  'fix.put-on-own-line': () => 'Mettre sur une ligne à part',
  'fix.close-quote': () => 'Fermer les guillemets',
  'fix.make-comment': () => 'En faire un commentaire',
  'fix.make-formula': ({ name }) => `Faire de ces lignes la formule « ${name} »`,
  'fix.make-remark': () => 'En faire une remarque',
  'fix.take-as-name': ({ name }) => `« ${name} » est le nom`,
  'fix.define-ingredient': ({ name }) => `Définir « ${name} » comme ingrédient`,
  'fix.define-mixer': ({ name }) => `Définir « ${name} » comme pétrin`,
  'fix.draw': ({ meant, name }) => `Prélever ${meant} de ${name}`,
  'fix.draw-through': ({ meant }) => `Y faire passer ${meant} de la farine`,
};
