import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** What actions are called where they are offered, below 70 letters with usual names. */
export const actions = {
  'write-variant-out.write': ({ name }: Args<'name'>) => `Write out in full what it takes of “${name}”`,
  'make-variant.write': ({ name }: Args<'name'>) => `Write as a variant of “${name}”`,
  'accept-finding.accept': ({ code }: Args<'code'>) => `Accept “${code}” here, with a reason`,

  'add-part.write': ({ part }: Args<'part'>) => `Write “${part}” as a line of the dough, added to it`,
  'draw-part.write': ({ part }: Args<'part'>) => `Write “${part}” as drawn from the overall formula`,
  'inline-part.take': ({ part }: Args<'part'>) => `Take “${part}” back into the dough`,
  'extract-part.soaker': ({ name }: Args<'name'>) => `Take “${name}” out into a soaker`,
  'extract-part.preferment': ({ name }: Args<'name'>) => `Take “${name}” out into a preferment`,
  'extract-part.lines-soaker': ({ count }: Args<'count'>, say: Speaker) =>
    `Take ${selected(count, say)} out into a soaker`,
  'extract-part.lines-preferment': ({ count }: Args<'count'>, say: Speaker) =>
    `Take ${selected(count, say)} out into a preferment`,

  'blend-flours.cheapest': ({ fraction, facts }: Args<'fraction' | 'facts'>, say: Speaker) =>
    `Blend to ${say.percent(fraction)} protein, cheapest: ${say.list(facts.map(say.say))}`,
  'blend-flours.cheapest-at': (blend: Args<'fraction' | 'facts' | 'amount' | 'currency'>, say: Speaker) =>
    `Blend to ${say.percent(blend.fraction)} protein, ${say.money(blend.amount, blend.currency)} per kg: ${say.list(blend.facts.map(say.say))}`,
  'blend-flours.nearest': ({ fraction, facts }: Args<'fraction' | 'facts'>, say: Speaker) =>
    `Blend to ${say.percent(fraction)} protein, least change: ${say.list(facts.map(say.say))}`,
  'blend-flours.share': ({ fraction }: Args<'fraction'>, say: Speaker) => say.percent(fraction, 2),

  'change-flour.change': ({ name, otherName }: Args<'name' | 'otherName'>) => `“${name}” to “${otherName}”`,
  'change-flour.takes-more': (
    { name, otherName, apartFraction }: Args<'name' | 'otherName' | 'apartFraction'>,
    say: Speaker,
  ) => `“${name}” to “${otherName}”: ${say.percent(apartFraction, 1)} more water`,
  'change-flour.takes-less': (
    { name, otherName, apartFraction }: Args<'name' | 'otherName' | 'apartFraction'>,
    say: Speaker,
  ) => `“${name}” to “${otherName}”: ${say.percent(apartFraction, 1)} less water`,
  'same-feel.change': ({ name, otherName, written }: Args<'name' | 'otherName' | 'written'>) =>
    `“${name}” to “${otherName}”, water ${written}`,
  'same-feel.change-within': (
    { name, otherName, written, withinFraction }: Args<'name' | 'otherName' | 'written' | 'withinFraction'>,
    say: Speaker,
  ) => `“${name}” to “${otherName}”, water ${written} ± ${say.percent(withinFraction, 1)}`,
  'teach-mixer.nothing': () => 'The mixer says what its trials say already; nothing was written.',
  'teach-mixer.teach': ({ name }: Args<'name'>) => `Teach “${name}” what its trials say`,
  'change-yeast.change': (
    { name, otherName, fraction }: Args<'name' | 'otherName' | 'fraction'>,
    say: Speaker,
  ) => `Change “${name}” to “${otherName}”: ${say.number(fraction, 2)} g for 1 g`,

  'convert-mix.to': ({ name, parts }: Args<'name' | 'parts'>, say: Speaker) =>
    `Convert to ${name}: ${parts.map(say.say).join(' · ')}`,
  'convert-mix.to-hands': ({ parts }: Args<'parts'>, say: Speaker) =>
    `Convert to hands: ${parts.map(say.say).join(' · ')}`,
  'convert-mix.works': ({ lowMinutes, highMinutes }: Args<'lowMinutes' | 'highMinutes'>, say: Speaker) =>
    say.minutesBand(lowMinutes, highMinutes),
  'convert-mix.ends-as-stated': ({ celsius }: Args<'celsius'>, say: Speaker) => say.celsius(celsius),
  'convert-mix.whatever-water': ({ celsius }: Args<'celsius'>, say: Speaker) =>
    `${say.celsius(celsius)}, any water`,
  'convert-mix.too-cool': ({ celsius }: Args<'celsius'>, say: Speaker) =>
    `only ${say.celsius(celsius)} at best`,
  'convert-mix.with-ice': ({ celsius, iceGrams }: Args<'celsius' | 'iceGrams'>, say: Speaker) =>
    `${say.celsius(celsius)}, ${say.mass(iceGrams)} of ice`,
  'convert-mix.with-water': ({ celsius, waterCelsius }: Args<'celsius' | 'waterCelsius'>, say: Speaker) =>
    `${say.celsius(celsius)}, water ${say.celsius(waterCelsius)}`,
  'convert-mix.with-tap': ({ celsius }: Args<'celsius'>, say: Speaker) =>
    `${say.celsius(celsius)}, tap water`,
  'convert-mix.batches': ({ count }: Args<'count'>, say: Speaker) =>
    say.count(count, { one: '# batch', other: '# batches' }),
  'convert-mix.too-much-for-hands': () => 'too much dough',
  'convert-mix.too-little': () => 'little dough',
  'convert-mix.pieces': ({ count }: Args<'count'>, say: Speaker) =>
    say.count(count, { one: '# piece', other: '# pieces' }),
  'convert-mix.yield': ({ grams }: Args<'grams'>, say: Speaker) => `for ${say.mass(grams)}`,

  'define-name.flour-here': ({ name }: Args<'name'>) => `Define “${name}” as a flour in this file`,
  'define-name.flour': ({ name, file }: Args<'name' | 'file'>) => `Define “${name}” as a flour in ${file}`,
  'define-name.ingredient': ({ name, file }: Args<'name' | 'file'>) =>
    `Define “${name}” as an ingredient in ${file}`,
  'define-name.mixer': ({ name, file }: Args<'name' | 'file'>) => `Define “${name}” as a mixer in ${file}`,

  'fix-all.of-rule': ({ count, code }: Args<'count' | 'code'>, say: Speaker) =>
    `Fix all ${say.count(count, { other: '#' })} of “${code}” in this file`,
  'fix-all.slips': () => 'Fix all slips of writing',

  'section-units.grams': ({ name }: Args<'name'>) => `Write “${name}” in grams`,
  'section-units.grams-for': ({ name, grams }: Args<'name' | 'grams'>, say: Speaker) =>
    `Write “${name}” in grams for ${say.mass(grams)} of flour`,
  'section-units.percent': ({ name }: Args<'name'>) => `Write “${name}” in percent`,
  'weigh-measures.line': ({ name }: Args<'name'>) => `Write the measured line of “${name}” in grams`,
  'weigh-measures.lines': ({ name, count }: Args<'name' | 'count'>, say: Speaker) =>
    `Write ${say.count(count, { one: '# measured line', other: '# measured lines' })} of “${name}” in grams`,

  'sort-by-weight.sort': () => 'Sort by weight',
  'usual-order.sort': () => 'Put these lines in the usual order',

  'give-balance.give': ({ name }: Args<'name'>) => `Give “${name}” the balance`,
  'give-balance.swap': ({ name, otherName }: Args<'name' | 'otherName'>) =>
    `Give “${name}” the balance, and “${otherName}” its percent`,
  'write-out.write': ({ name, fraction }: Args<'name' | 'fraction'>, say: Speaker) =>
    `Write “${name}” as ${say.percent(fraction)}`,
  'state-hydration.plain': ({ name, fraction }: Args<'name' | 'fraction'>, say: Speaker) =>
    `Write “${name}” as to ${say.percent(fraction)} hydration`,
  'state-hydration.effective': ({ name, fraction }: Args<'name' | 'fraction'>, say: Speaker) =>
    `Write “${name}” as to ${say.percent(fraction)} effective hydration`,
};

function selected(count: number, say: Speaker): string {
  return say.count(count, { one: 'the # line selected', other: 'the # lines selected' });
}
