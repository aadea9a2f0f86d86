import type { project as english } from '../en/project.ts';
import type { Translation } from '../message.ts';

/** Was an der Datei nicht stimmt, in der ein Projekt seine Einstellungen hat. */
export const project: Translation<typeof english> = {
  'project.not-json': () =>
    'ab hier ist dies nicht als JSON zu lesen, also gilt nichts aus der Datei; nach einem fehlenden Anführungszeichen, Komma oder einer Klammer sehen.',
  'project.no-setting': ({ setting, names }, say) =>
    `ein Projekt hat keine Einstellung „${setting}“; es gibt ${say.list(names)}.`,
  'project.no-section': ({ setting }) => `„${setting}“ nimmt Angaben zwischen geschweiften Klammern: { … }.`,
  'project.twice': ({ setting }) => `„${setting}“ steht hier ein zweites Mal; das erste gilt.`,
  'project.several': ({ files }, say) =>
    `dies gehört zu mehreren Projekten, ${say.list(files)}; jedes in einem eigenen Aufruf nennen.`,
};
