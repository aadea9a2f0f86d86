import type { completion as english } from '../en/completion.ts';
import type { Translation } from '../message.ts';

/** Was neben einer Vervollständigung steht, und was sie über einen Teil, einen Kneter oder einen Abschnitt sagt. */
export const completion: Translation<typeof english> = {
  'completion.flour-protein': ({ fraction }, say) => `Mehl, ${say.percent(fraction)} Eiweiß`,
  'completion.with-water': ({ role, fraction }, say) => `${say.say(role)}, ${say.percent(fraction)} Wasser`,
  'completion.another-name': ({ name }) => `anderer Name für ${name}`,
  'completion.mixer': () => 'Kneter',
  'completion.usual-mixer': () => 'ein üblicher dieser Art',
  'completion.formula': () => 'Rezeptur',
  'completion.accept': () => 'nimmt einen Befund auf dieser Zeile an, mit einem Grund',
  'completion.step': () => 'ein Arbeitsschritt',
  'completion.part-temperature': () => 'wie warm dieser Teil war',
  'completion.section': () => 'beginnt einen Abschnitt',
  'completion.example': () => 'Beispiel',

  'part-detail.line': ({ name }) => `- ${name}`,
  'part-detail.line-share': ({ name, fraction }, say) => `- ${name} ${say.percent(fraction)}`,

  'mixer-detail.title': ({ name, written }) => `**${name}** — ${written}`,
  'mixer-detail.title-assumed': ({ name, written }) =>
    `**${name}** — ${written}, weil in seinem Abschnitt keine Art steht`,
  'mixer-detail.bowl': ({ leastGrams, mostGrams }, say) =>
    `Kessel: ${say.mass(leastGrams)} bis ${say.mass(mostGrams)} Teig.`,
  'mixer-detail.bowl-most': ({ mostGrams }, say) => `Kessel: bis ${say.mass(mostGrams)} Teig.`,
  'mixer-detail.speed': ({ number, rpm }, say) =>
    `- Gang ${say.number(number, 0)}: ${say.number(rpm, 1)} U/min`,
  'mixer-detail.figures': ({ source }, say) => `_Zahlen: ${say.say(source)}._`,
  'mixer-detail.figures-own': ({ written, source }, say) =>
    `_Zahlen: wie in seinem Abschnitt, der Rest vom üblichen ${written} (${say.say(source)})._`,

  'section-detail.ingredients': () => 'Hier stehen Zeilen mit Zutaten.',
  'section-detail.properties': ({ words }, say) => `Hier können stehen: ${say.list(words)}.`,
};
