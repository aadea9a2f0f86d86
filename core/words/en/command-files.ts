import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** Files that a command reads and writes, and what it does not find in them. Each stands behind the path and a colon. */
export const commandFiles = {
  'command-files.missing': () => 'there is no such file or folder; look at the spelling.',
  'command-files.folder': () => 'this is a folder; name a file.',
  'command-files.no-permission': () => 'you may not read this; give yourself the right to.',
  'command-files.too-large': () => 'this file is larger than 4 MiB; divide it into several.',
  'command-files.binary': () => 'line 1: this is not plain text; a formula is text saved as UTF-8.',
  'command-files.binary-table': () => 'line 1: this is not plain text; a table is text saved as UTF-8.',
  'command-files.broken': () =>
    'this cannot be read; name an ordinary file, or look whether its disk is all right.',
  'command-files.strange-name': () => 'this name cannot be read; give it one in UTF-8.',
  'command-files.other-letters': ({ number }: Args<'number'>, say: Speaker) =>
    `line ${say.number(number, 0)}: this is not UTF-8, and is left as it is; save the file as UTF-8.`,
  'command-files.empty-folder': () =>
    'no .dough file in this folder; hidden folders and what git ignores are left out.',
  'command-files.read-so-far': ({ count }: Args<'count'>, say: Speaker) =>
    say.count(count, { one: '# file read', other: '# files read' }),
  'command-files.standard-input': () => 'standard input',

  'command-files.not-written': ({ reason }: Args<'reason'>, say: Speaker) =>
    `this cannot be written: ${say.say(reason)}`,
  'command-files.left-as-was': ({ reason }: Args<'reason'>, say: Speaker) =>
    `it could not be written, and is as it was: ${say.say(reason)}`,
  'command-files.output-not-written': ({ reason }: Args<'reason'>, say: Speaker) =>
    `standard output cannot be written: ${say.say(reason)}`,
  'command-files.no-folder': () => 'there is no such folder; make it, or name another file.',
  'command-files.no-folder-here': () => 'there is no such folder; make it.',
  'command-files.is-folder': () => 'this is a folder; name a file.',
  'command-files.no-right': () =>
    'you may not write there; give yourself the right to, or name another file.',
  'command-files.no-right-here': () => 'you may not write there; give yourself the right to.',
  'command-files.disk-full': () => 'the disk is full; make room.',
  'command-files.disk-trouble': () => 'look whether its disk is all right, or name another file.',
  'command-files.disk-trouble-here': () => 'look whether its disk is all right.',
  'command-files.is-formula': () =>
    'this is a formula file, and what would be written is no formula; name another file.',
  'command-files.formula-there': () =>
    'this formula file is there already; name another one, or add --force to write over it.',
  'command-files.leads-out': () =>
    'this leads out of its folder by a link, and what lies there is left alone; name that file.',
  'command-files.no-ordinary-file': () =>
    'this is no ordinary file; name another one, or leave it out for standard output.',
  'command-files.link-out': () =>
    'this is a link out of its folder, and what it leads to is left alone; name that file.',

  'command-files.no-formula': () => 'no formula in here; a formula begins with a line “formula NAME:”.',
  'command-files.no-formula-named': ({ name, names }: Args<'name' | 'names'>, say: Speaker) =>
    `no formula “${name}” in here; there is ${quoted(names, say)}.`,
  'command-files.no-experiment': () =>
    'no experiment in here; an experiment begins with a line “experiment NAME:”.',
  'command-files.no-experiment-named': ({ name, names }: Args<'name' | 'names'>, say: Speaker) =>
    `no experiment “${name}” in here; there is ${quoted(names, say)}.`,
  'command-files.no-plan': () => 'no plan in here; a plan begins with a line “plan NAME:”.',
  'command-files.no-plan-named': ({ name, names }: Args<'name' | 'names'>, say: Speaker) =>
    `no plan “${name}” in here; there is ${quoted(names, say)}.`,
  'command-files.nothing-to-weigh': () => 'nothing can be weighed yet; write an ingredient and its amount.',
  'command-files.to-look-at': () => 'look',
};

function quoted(names: readonly string[], say: Speaker): string {
  return say.list(names.map((name) => `“${name}”`));
}
