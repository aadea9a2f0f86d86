import type { mixers as english } from '../en/mixers.ts';
import type { Translation } from '../message.ts';

/** Was ein Kneter ist und hat. */
export const mixers: Translation<typeof english> = {
  'no-mixer-kind.assumed': ({ meant, example }) =>
    `Welcher Bauart ist dieser Kneter? Angenommen wird „${meant}“. Die Bauart gehört in seinen Abschnitt: ${example}`,

  'no-such-speed.hand': ({ choices }, say) =>
    `Hände haben keine Gänge. Zu schreiben ist, was sie tun: ${say.anyOf(choices)}.`,
  'no-such-speed.none': ({ name, number, example }) =>
    `„${name}“ hat keinen Gang ${number}; Erwärmung und Auskneten lassen sich so nicht berechnen. In seinem Abschnitt steht keiner; ein neuer wird dort geschrieben als: ${example}`,
  'no-such-speed.others': ({ name, number, choices, example }, say) =>
    `„${name}“ hat keinen Gang ${number}; Erwärmung und Auskneten lassen sich so nicht berechnen. Vorhanden: ${say.list(choices)}; ein neuer wird dort geschrieben als: ${example}`,
  'no-such-speed.stands': ({ written, name, meant }) =>
    `„${written}“ ist Arbeit von Hand, und keine Zeile dieses Programms lässt „${name}“ laufen. Wo der Kneter es tut, gehört sein Gang hin: ${meant}`,
  'no-such-speed.section': () => 'sein Abschnitt',
};
