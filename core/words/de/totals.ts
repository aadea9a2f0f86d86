import type { totals as english } from '../en/totals.ts';
import type { Translation } from '../message.ts';

/** Was eine Rezeptur ergibt, in einer Zeile und im Ganzen, und wer sie verwendet. */
export const totals: Translation<typeof english> = {
  'totals.line': ({ parts }, say) => parts.map(say.say).join(' · '),
  'totals.hydration': ({ fraction }, say) => `${say.percent(fraction)} Hydration`,
  'totals.dough': ({ doughGrams }, say) => `${say.mass(doughGrams)} Teig`,
  'totals.flour': ({ grams }, say) => `${say.mass(grams)} Mehl`,
  'totals.prefermented': ({ fraction }, say) => `${say.percent(fraction)} im Vorteig`,
  'totals.no-line': () => 'Es steht noch keine Zutat da.',
  'totals.sheet': () => 'Backzettel',
  'lens.plan': () => 'Den Plan öffnen',
  'lens.plan-late': ({ seconds }, say) => `Den Plan öffnen: ${say.duration(seconds)} zu spät`,
  'totals.hydration-fact': ({ fraction }, say) => `Hydration **${say.percent(fraction)}**`,
  'totals.effective': ({ fraction }, say) => `effektiv ${say.percent(fraction)}`,
  'totals.effective-without': ({ fraction, names }, say) =>
    `effektiv ${say.percent(fraction)}, ohne ${say.list(names)}`,
  'totals.salt': ({ fraction }, say) => `Salz ${say.percent(fraction)}`,
  'totals.prefermented-fact': ({ fraction }, say) => `Mehl im Vorteig ${say.percent(fraction)}`,
  'totals.flour-fact': ({ grams }, say) => `Mehl ${say.mass(grams)}`,
  'totals.flour-mix': ({ parts }, say) => `Mehlmischung: ${parts.map(say.say).join(' · ')}`,
  'totals.head': () => 'insgesamt',
  'totals.head-share': () => 'vom Mehl',
  'totals.head-weight': () => 'Gewicht',

  'makes.all': ({ parts }, say) => `Ergibt ${parts.map(say.say).join(' · ')}.`,
  'makes.pieces': ({ count, grams }, say) =>
    `${say.count(count, { other: '# Stück' })} zu ${say.mass(grams)}`,
  'makes.in-bowl': ({ doughGrams }, say) => `${say.mass(doughGrams)} im Kessel`,
  'makes.baked': ({ bakedGrams }, say) => `${say.mass(bakedGrams)} gebacken`,
  'makes.no-yield': ({ grams }, say) => `für ${say.mass(grams)} Mehl, weil keine Ausbeute dasteht`,

  'status.totals': ({ name, parts }, say) => `${name}: ${parts.map(say.say).join(' · ')}.`,
  'status.effective': ({ fraction }, say) => `${say.percent(fraction)} effektive Hydration`,
  'status.as-last': () => 'Letzter Stand; eine Zeile ist nicht fertig.',

  'uses.none': () => 'nicht verwendet',
  'uses.by': ({ facts }, say) => `verwendet in ${say.list(facts.map(say.say))}`,
  'uses.formulas': ({ count }, say) => say.count(count, { one: '# Rezeptur', other: '# Rezepturen' }),
  'uses.flours': ({ count }, say) => say.count(count, { one: '# Mehl', other: '# Mehlen' }),
  'uses.ingredients': ({ count }, say) => say.count(count, { one: '# Zutat', other: '# Zutaten' }),
  'uses.mixers': ({ count }, say) => say.count(count, { one: '# Kneter', other: '# Knetern' }),
  'uses.bakeries': ({ count }, say) => say.count(count, { one: '# Bäckerei', other: '# Bäckereien' }),
  'uses.experiments': ({ count }, say) =>
    say.count(count, { one: '# Versuchsreihe', other: '# Versuchsreihen' }),
  'uses.plans': ({ count }, say) => say.count(count, { one: '# Plan', other: '# Plänen' }),

  'goes-into.catalogue': () => 'Katalog',
  'goes-into.role': ({ written }) => `alles, was als ${written} zählt`,
  'goes-into.several': ({ count }, say) => `${say.count(count, { other: '#-mal' })} definiert`,
  'goes-into.not-defined': () => 'nicht definiert',
  'goes-into.drawn': () => 'entnommen',
  'goes-into.part-of': ({ section, name }) => `${section} von ${name}`,
  'goes-into.part': ({ section }) => `${section} einer Rezeptur`,

  'overview.hydration': ({ fraction }, say) => say.percent(fraction),
  'overview.dough': ({ doughGrams }, say) => say.mass(doughGrams),
  'overview.room': ({ celsius }, say) => `Raum ${say.celsius(celsius)}`,
  'overview.flour': ({ celsius }, say) => `Mehl ${say.celsius(celsius)}`,
  'overview.tap-water': ({ celsius }, say) => `Leitungswasser ${say.celsius(celsius)}`,
  'overview.protein': ({ fraction }, say) => `${say.percent(fraction)} Eiweiß`,
  'overview.bowl-most': ({ mostGrams }, say) => `bis ${say.mass(mostGrams)}`,
  'overview.bowl': ({ leastGrams, mostGrams }, say) => `${say.mass(leastGrams)} bis ${say.mass(mostGrams)}`,
  'overview.ready': ({ when }, say) => `fertig ${say.say(when)}`,
};
