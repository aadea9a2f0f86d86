import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** What stands beside a completion, and what it says of a part, a mixer or a section. */
export const completion = {
  'completion.flour-protein': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `flour, ${say.percent(fraction)} protein`,
  'completion.with-water': ({ role, fraction }: Args<'role' | 'fraction'>, say: Speaker) =>
    `${say.say(role)}, ${say.percent(fraction)} water`,
  'completion.another-name': ({ name }: Args<'name'>) => `another name of ${name}`,
  'completion.mixer': () => 'mixer',
  'completion.usual-mixer': () => 'a usual one of this kind',
  'completion.formula': () => 'formula',
  'completion.accept': () => 'accepts a finding on this line, with a reason',
  'completion.step': () => 'a step',
  'completion.part-temperature': () => 'how warm this part was',
  'completion.section': () => 'begins a section',
  'completion.example': () => 'example',

  'part-detail.line': ({ name }: Args<'name'>) => `- ${name}`,
  'part-detail.line-share': ({ name, fraction }: Args<'name' | 'fraction'>, say: Speaker) =>
    `- ${name} ${say.percent(fraction)}`,

  'mixer-detail.title': ({ name, written }: Args<'name' | 'written'>) => `**${name}** — ${written}`,
  'mixer-detail.title-assumed': ({ name, written }: Args<'name' | 'written'>) =>
    `**${name}** — ${written}, as its section does not state its kind`,
  'mixer-detail.bowl': ({ leastGrams, mostGrams }: Args<'leastGrams' | 'mostGrams'>, say: Speaker) =>
    `Bowl: ${say.mass(leastGrams)} to ${say.mass(mostGrams)} of dough.`,
  'mixer-detail.bowl-most': ({ mostGrams }: Args<'mostGrams'>, say: Speaker) =>
    `Bowl: up to ${say.mass(mostGrams)} of dough.`,
  'mixer-detail.speed': ({ number, rpm }: Args<'number' | 'rpm'>, say: Speaker) =>
    `- speed ${say.number(number, 0)}: ${say.number(rpm, 1)} rpm`,
  'mixer-detail.figures': ({ source }: Args<'source'>, say: Speaker) => `_Figures: ${say.say(source)}._`,
  'mixer-detail.figures-own': ({ written, source }: Args<'written' | 'source'>, say: Speaker) =>
    `_Figures: as its section states, the rest from the usual ${written} (${say.say(source)})._`,

  'section-detail.ingredients': () => 'Holds ingredient lines.',
  'section-detail.properties': ({ words }: Args<'words'>, say: Speaker) => `May state: ${say.list(words)}.`,
};
