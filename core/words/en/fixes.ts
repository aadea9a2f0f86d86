import type { Args } from '../args.ts';

/** What fixes are called. */
export const fixes = {
  'fix.write': ({ meant }: Args<'meant'>) => `Write ${meant}`,
  'fix.write-plain-sign': () => 'Write the plain sign',
  'fix.write-percent-sign': () => 'Write the percent sign',
  'fix.write-hydration': () => 'Write hydration behind it',
  'fix.write-balance': () => 'Write balance: what is left of 100%',
  'fix.take-out': () => 'Take it out',
  'fix.take-this-line-out': () => 'Take this line out',
  'fix.take-sign-out': ({ written }: Args<'written'>) => `Take “${written}” out`,
  'fix.take-colon-out': () => 'Take the colon out',
  'fix.take-line-out': () => 'Take this line out: it is drawn',
  'fix.take-draws-out': () => 'Take the draws out: it is added',
  'fix.put-colon': () => 'Put the colon',
  'fix.put-colon-at-end': () => 'Put the colon at the end',
  'fix.put-comma': () => 'Put the comma',
  'fix.put-name-first': () => 'Put the name first',
  'fix.put-on-own-line': () => 'Put it on a line of its own',
  'fix.close-quote': () => 'Close the quote',
  'fix.make-comment': () => 'Make it a comment',
  'fix.make-remark': () => 'Make it a remark',
  'fix.take-as-name': ({ name }: Args<'name'>) => `“${name}” is the name`,
  'fix.define-ingredient': ({ name }: Args<'name'>) => `Define “${name}” as an ingredient`,
  'fix.define-mixer': ({ name }: Args<'name'>) => `Define “${name}” as a mixer`,
  'fix.draw': ({ meant, name }: Args<'meant' | 'name'>) => `Draw ${meant} of ${name}`,
  'fix.draw-through': ({ meant }: Args<'meant'>) => `Draw ${meant} of the flour through it`,
};
