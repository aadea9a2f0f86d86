import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** Lines of a section that repeat another, or that something lacks or needs none of: properties, loads, accepts. */
export const sectionLines = {
  'unknown-accept.none': ({ code }: Args<'code'>) => `No finding has the code “${code}”.`,
  'unknown-accept.meant': ({ code, meant }: Args<'code' | 'meant'>) =>
    `No finding has the code “${code}”. Is it “${meant}”?`,

  'unused-accept.writing': ({ code }: Args<'code'>) =>
    `“${code}” is an error in how the line is written: it cannot be accepted, only corrected.`,
  'unused-accept.nothing-below': () =>
    'Nothing stands right below this line in its section, so nothing is accepted. Write it at the end of the line it is about.',
  'unused-accept.none': ({ code }: Args<'code'>) =>
    `There is no “${code}” here to accept. Take it out, or put it on the line it is about.`,
  'unused-accept.fix': () => 'Take the accept out',

  'said-twice.property': ({ property }: Args<'property'>) => statedTwice(`“${property}”`),
  'said-twice.water-weight': () => statedTwice('The weight of the water'),
  'said-twice.water-temperature': () => statedTwice('The temperature of the water'),
  'said-twice.trial-mixer': () => statedTwice('The mixer of the trial'),
  'said-twice.first': () => 'stated first: it counts',

  'not-loaded.none': ({ names }: Args<'names'>, say: Speaker) =>
    `No line loads ${say.list(names)}, so it is taken to go in at the start.`,
  'not-loaded.fix-more': ({ names, count }: Args<'names' | 'count'>, say: Speaker) =>
    `Load ${say.list([...names, say.count(count, { other: '# more' })])} at the start`,
  'not-loaded.fix': ({ names }: Args<'names'>, say: Speaker) => `Load ${say.list(names)} at the start`,
};

function statedTwice(what: string): string {
  return `${what} is stated in this section already, and the first counts. Take one of the two out.`;
}
