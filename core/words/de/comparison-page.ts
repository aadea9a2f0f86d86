import type { comparisonPage as english } from '../en/comparison-page.ts';
import type { Translation } from '../message.ts';

/** Was um die Änderungen eines Vergleichs steht: was er ergibt, die Überschriften, und was aus jeder Rezeptur wurde. */
export const comparisonPage: Translation<typeof english> = {
  'comparison-page.title': () => 'Was sich geändert hat',
  'comparison-page.same': () => 'Es gibt keinen Unterschied.',
  'comparison-page.outside': () => 'Nur Zeilen außerhalb aller Abschnitte unterscheiden sich.',
  'comparison-page.layout': () =>
    'Nichts, was abgewogen wird: nur Leerstellen, Kommentare oder die Reihenfolge der Abschnitte.',
  'comparison-page.wording': () => 'Dieselben Zahlen sind anders geschrieben.',
  'comparison-page.changed': () => 'Es wird anderes abgewogen oder getan.',

  'comparison-page.what': () => 'was',
  'comparison-page.before': () => 'vorher',
  'comparison-page.after': () => 'jetzt',
  'comparison-page.by': () => 'um',
  'comparison-page.not-there': () => 'nicht da',
  'comparison-page.removed': () => 'entfernt',
  'comparison-page.new': () => 'neu',
  'comparison-page.line': () => 'Zeile',
  'comparison-page.parts': () => 'Teile',
  'comparison-page.place': ({ file, number }, say) => `${file}, Zeile ${say.number(number, 0)}`,

  'comparison-page.renamed': ({ name }) => `hieß vorher ${name}`,
  'comparison-page.named-in': ({ count }, say) =>
    say.count(count, { one: 'auch in # Formel', other: 'auch in # Formeln' }),
  'comparison-page.named-on': ({ count }, say) =>
    say.count(count, { one: 'in # Zutatenverzeichnis', other: 'in # Zutatenverzeichnissen' }),
  'comparison-page.moved': ({ file }) => `stand vorher in ${file}`,
  'comparison-page.only-layout': () => 'nur Anordnung und Kommentare sind anders',
  'comparison-page.same-figures': () => 'anders geschrieben, dieselben Zahlen',
  'comparison-page.other-order': () => 'dieselben Zeilen in anderer Reihenfolge',

  'comparison-page.finding-new': () => 'neu',
  'comparison-page.finding-now': () => 'jetzt',
  'comparison-page.finding-no-longer': () => 'nicht mehr',
  'comparison-page.finding-was': ({ sentence, title }, say) => `${sentence} (vorher ${say.say(title)})`,

  'comparison-page.follow': ({ count }, say) =>
    say.count(count, {
      one: '# Rezeptur, die niemand bearbeitet hat, ändert sich durch etwas außerhalb von ihr',
      other: '# Rezepturen, die niemand bearbeitet hat, ändern sich durch etwas außerhalb von ihnen',
    }),
  'comparison-page.follow-change': ({ count }, say) =>
    say.count(count, {
      one: '# Rezeptur, die niemand bearbeitet hat, ändert sich durch die Änderung oben',
      other: '# Rezepturen, die niemand bearbeitet hat, ändern sich durch die Änderung oben',
    }),
  'comparison-page.follow-changes': ({ count }, say) =>
    say.count(count, {
      one: '# Rezeptur, die niemand bearbeitet hat, ändert sich durch die Änderungen oben',
      other: '# Rezepturen, die niemand bearbeitet hat, ändern sich durch die Änderungen oben',
    }),
  'comparison-page.more': ({ count }, say) => say.count(count, { other: '# weitere' }),
  'comparison-page.all': ({ count }, say) => `alle ${say.number(count, 0)}`,
};
