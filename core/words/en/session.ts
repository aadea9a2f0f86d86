import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** What the language server says to its user beside findings and answers, and what any program says of its language. */
export const session = {
  'session.no-history': () =>
    'this editor runs where git cannot be asked; open the folder in an editor on a desktop.',
  'session.language-not-loaded': ({ code }: Args<'code'>) =>
    `The words of the language “${code}” cannot be loaded: their file is missing or broken. All is in English until Doughwright is installed anew.`,
  'session.reading': () => 'Reading formulas',
  'session.read-so-far': ({ count, otherCount }: Args<'count' | 'otherCount'>, say: Speaker) =>
    `${say.number(count, 0)} of ${say.count(otherCount, { one: '# file', other: '# files' })}`,
  'session.changed-since-offered': () => 'The text has changed since this was offered.',
  'session.changed-meanwhile': () => 'The text has changed meanwhile.',
  'session.cannot-be-done': ({ name }: Args<'name'>) => `“${name}” cannot be done here.`,
  'session.not-used': () => 'not used',
  'session.no-plan': () => 'Put the cursor into a section that begins with “plan NAME:”.',
  'session.no-experiment': () => 'Put the cursor into a section that begins with “experiment NAME:”.',
  'session.no-table': () => 'The table could not be read; the log says why.',
  'session.no-edit': () => 'The edit could not be made; the log says why.',
  'session.file-not-known': () => 'The file is not open and not in the workspace.',

  'session.no-level': (
    { setting, code, written, choices }: Args<'setting' | 'code' | 'written' | 'choices'>,
    say: Speaker,
  ) => `Setting ${setting}, ${code}: ${written} is no level; write ${say.anyOf(choices)}.`,
  'session.no-switch': ({ setting, written }: Args<'setting' | 'written'>) =>
    `Setting ${setting}: ${written} does not fit; write true or false.`,
  'session.no-choice': (
    { setting, written, choices }: Args<'setting' | 'written' | 'choices'>,
    say: Speaker,
  ) => `Setting ${setting}: ${written} does not fit; write ${say.anyOf(choices)}.`,
  'session.no-celsius': (
    { setting, written, leastNumber, mostNumber }: Args<'setting' | 'written' | 'leastNumber' | 'mostNumber'>,
    say: Speaker,
  ) =>
    `Setting ${setting}: ${written} does not fit; write degrees Celsius from ${say.number(leastNumber, 0)} to ${say.number(mostNumber, 0)}, without a unit.`,
  'session.no-count': ({ setting, written }: Args<'setting' | 'written'>) =>
    `Setting ${setting}: ${written} does not fit; write a whole number above 0.`,

  'file-too-large.whole': () =>
    'This file is larger than 4 MiB, so nothing in it is computed; divide it into several files.',
};
