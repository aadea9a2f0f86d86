import type { mixingWork as english } from '../en/mixing-work.ts';
import type { Translation } from '../message.ts';

/** Jusqu’où un programme pétrit une pâte : pour l’instant les états et les degrés, le reste est en anglais. */
export const mixingWork: Partial<Translation<typeof english>> = {
  'stage.pick-up': () => 'frasée',
  'stage.clean-up': () => 'décollée de la cuve',
  'stage.developing': () => 'en développement',
  'stage.developed': () => 'développée',
  'stage.let-down': () => 'relâchée',
  'stage.breakdown': () => 'surpétrie',
  'stage.other': ({ name }) => `« ${name} »`,

  'mix.guess': () => 'La durée pendant laquelle une pâte aussi molle tient est une estimation grossière.',

  'degree.short': () => 'un pétrissage à vitesse lente',
  'degree.improved': () => 'un pétrissage amélioré',
  'degree.intensive': () => 'un pétrissage intensifié',
};
