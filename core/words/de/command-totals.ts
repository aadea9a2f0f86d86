import type { commandTotals as english } from '../en/command-totals.ts';
import type { Translation } from '../message.ts';

/** Summen und Mehlmischungen, wie sie im Terminal stehen: die Worte links, die Werte, und die Überschriften. */
export const commandTotals: Translation<typeof english> = {
  'command-totals.makes': () => 'ergibt',
  'command-totals.flour': () => 'Mehl',
  'command-totals.hydration': () => 'Hydration',
  'command-totals.salt': () => 'Salz',
  'command-totals.prefermented-flour': () => 'Mehl im Vorteig',
  'command-totals.flour-mix': () => 'Mehlmischung',
  'command-totals.water': () => 'Schüttwasser',

  'command-totals.pieces-of': ({ count, grams }, say) =>
    `${say.number(count, 1)} Stück zu ${say.mass(grams)}`,
  'command-totals.of-dough': ({ doughGrams }, say) => `${say.mass(doughGrams)} Teig`,
  'command-totals.of-dough-folded': ({ doughGrams, grams }, say) =>
    `${say.mass(doughGrams)} Teig, dazu ${say.mass(grams)} eingeschlagen`,
  'command-totals.baked': ({ bakedGrams }, say) => `${say.mass(bakedGrams)} gebacken`,
  'command-totals.effective': ({ fraction, laterFraction }, say) =>
    `${say.percent(fraction)}, wirksam ${say.percent(laterFraction)}`,
  'command-totals.protein': ({ fraction }, say) => `Eiweiß ${say.percent(fraction)}`,
  'command-totals.absorption': ({ fraction }, say) => `Wasseraufnahme ${say.percent(fraction)}`,
  'command-totals.at-moisture': ({ parts }, say) =>
    `${say.list(parts.map(say.say))} bei ${say.percent(0.14)} Feuchte`,
  'command-totals.ash': ({ fraction }, say) => `Asche ${say.percent(fraction)} der Trockenmasse`,
  'command-totals.per-kilogram': ({ amount, currency }, say) => `${say.money(amount, currency)} je kg`,

  'command-totals.water-at': ({ waterCelsius }, say) => `mit ${say.celsius(waterCelsius)}`,
  'command-totals.water-from-tap': ({ tapCelsius }, say) => `aus der Leitung, mit ${say.celsius(tapCelsius)}`,
  'command-totals.water-from-tap-assumed': ({ tapCelsius }, say) =>
    `aus der Leitung, angenommen mit ${say.celsius(tapCelsius)}`,
  'command-totals.water-with-ice': ({ iceGrams, tapGrams, water }, say) =>
    `${say.mass(iceGrams)} Eis und ${say.mass(tapGrams)} ${say.say(water)}`,
  'command-totals.water-rule': ({ water, celsius }, say) =>
    `${say.say(water)} (Faustregel ${say.celsius(celsius)})`,
  'command-totals.water-rule-friction': ({ water, celsius, apartCelsius }, say) =>
    `${say.say(water)} (Faustregel ${say.celsius(celsius)}, Reibungsfaktor ${say.celsiusApart(apartCelsius)})`,

  'command-totals.overall': () => 'insgesamt',
  'command-totals.into-bowl': () => 'in den Kessel',
  'command-totals.part': ({ part, section }) => `${part} (${section})`,
  'command-totals.part-folded': ({ part, section }) => `${part} (${section}, eingeschlagen)`,
  'command-totals.with-hydration': ({ title, fraction }, say) =>
    `${say.say(title)}, Hydration ${say.percent(fraction)}`,
  'command-totals.with-flour': ({ title, grams }, say) => `${say.say(title)}, ${say.mass(grams)} Mehl`,
  'command-totals.together': () => 'zusammen',
  'command-totals.mixing': () => 'Kneten',
  'command-totals.heat': () => 'Wärme',
  'command-totals.cost': () => 'Kosten',
  'command-totals.cost-of-part': ({ part }) => `alles von ${part}`,
  'command-totals.label-nutrition': ({ code }) => `Entwurf der Kennzeichnung (${code}): Nährwerte, gebacken`,
  'command-totals.label-ingredients': () => 'Entwurf der Kennzeichnung: Zutaten',
  'command-totals.label-to-check': () => 'Entwurf der Kennzeichnung: zu prüfen',
  'command-totals.findings': () => 'Befunde',
  'command-totals.line': ({ number }, say) => `Zeile ${say.number(number, 0)}`,

  'command-totals.no-blend': ({ sentence }) => `keine Mischung: ${sentence}.`,
  'command-totals.no-blend-priced': ({ sentence }) =>
    `keine Mischung: ${sentence}; das Fehlende schreiben oder --nearest nehmen, wofür Preise nicht zählen.`,
};
