import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** Revisions, and what git is taught. */
export const commandGit = {
  'command-git.not-installed': () => 'git is not installed, or not on the path.',
  'command-git.not-started': () => 'git could not be started.',
  'command-git.ended': ({ number }: Args<'number'>, say: Speaker) =>
    `git ended with ${say.number(number, 0)}.`,
  'command-git.stopped': () => 'git was stopped.',
  /** What git itself says, in its own language. */
  'command-git.said': ({ written }: Args<'written'>) => `git: ${written}`,
  'command-git.no-revision': ({ revision }: Args<'revision'>) => `there is no such revision: ${revision}`,
  'command-git.no-commit': () =>
    'this repository has no commit yet; history begins with the first “git commit”.',
  'command-git.unreadable': ({ command }: Args<'command'>) =>
    `git cannot read its files of that revision; try “${command}”.`,
  'command-git.outside': ({ file }: Args<'file'>) => `${file}: this lies outside of the repository.`,
  'command-git.no-files': ({ option }: Args<'option'>) =>
    `this repository has no files on disk; compare two revisions with ${option}.`,
  'command-git.not-at': ({ revision }: Args<'revision'>) =>
    `${revision} has no formula file of this name, or below it.`,
  'command-git.two-revisions': ({ option, command }: Args<'option' | 'command'>) =>
    `${option} takes two revisions: ${command}`,
  'command-git.on-neither-side': ({ file }: Args<'file'>) =>
    `${file}: there is no formula file of this name, or below it, on either side.`,
  'command-git.two-places': () =>
    'name two files or two folders, or use --since REVISION or --between OLD NEW.',
  'command-git.file-and-folder': ({ file, otherFile }: Args<'file' | 'otherFile'>) =>
    `${file} and ${otherFile} are a file and a folder; name two of one kind.`,
  'command-git.no-text': ({ file, revision }: Args<'file' | 'revision'>) =>
    `${file} of ${revision}: this is not plain text, or larger than 4 MiB.`,
  'command-git.no-submodule': ({
    file,
    revision,
    commit,
    command,
  }: Args<'file' | 'revision' | 'commit' | 'command'>) =>
    `${file} of ${revision}: this submodule is not here at ${commit}; run “git submodule update --init” and “${command}”.`,
  'command-git.for-git': () => 'git hands over a path and two files; this is for git to call.',
  'command-git.in-conflict': ({ file, command }: Args<'file' | 'command'>) =>
    `${file}: in conflict; decide on its marked lines, then “${command}”.`,
  'command-git.not-text': ({ count, code }: Args<'count' | 'code'>, say: Speaker) =>
    `not plain text: ${say.count(count, { one: '# byte', other: '# bytes' })}, SHA-256 ${code}`,

  'command-git.hydration': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `hydration ${say.percent(fraction)}`,
  'command-git.salt': ({ fraction }: Args<'fraction'>, say: Speaker) => `salt ${say.percent(fraction)}`,
  'command-git.prefermented-flour': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `prefermented flour ${say.percent(fraction)}`,
  'command-git.flour': ({ grams }: Args<'grams'>, say: Speaker) => `flour ${say.mass(grams)}`,
  'command-git.dough': ({ grams }: Args<'grams'>, say: Speaker) => `dough ${say.mass(grams)}`,
  'command-git.not-known': ({ names }: Args<'names'>, say: Speaker) =>
    `not known, counted as neither flour nor water: ${say.list(names)}`,
  'command-git.unfinished': () => 'a merge is not finished here: nothing is added up',

  'command-git.nothing-to-undo': () => 'There is nothing to take back.',
  'command-git.all-set': () => 'All is set up already.',
  'command-git.repository': ({ file }: Args<'file'>) => `In the repository ${file}:`,
  'command-git.nothing-changed': () => 'Nothing was changed.',
  'command-git.undone': () => 'Taken back.',
  'command-git.done': ({ command }: Args<'command'>) => `Done. “${command}” takes it back.`,
  'command-git.add-line': ({ file, written }: Args<'file' | 'written'>) =>
    `${file}   add the line: ${written}`,
  'command-git.take-line-out': ({ file, written }: Args<'file' | 'written'>) =>
    `${file}   take out the line: ${written}`,
  'command-git.write-script': ({ file, command }: Args<'file' | 'command'>) =>
    `${file}   write the script that calls ${command}`,
  'command-git.remove-script': ({ file }: Args<'file'>) => `${file}   remove the script, and what it keeps`,
  'command-git.set': ({ file, setting, written }: Args<'file' | 'setting' | 'written'>) =>
    `${file}   set ${setting} = ${written}`,
  'command-git.change': ({ file, setting, written }: Args<'file' | 'setting' | 'written'>) =>
    `${file}   change ${setting} = ${written}`,
  'command-git.remove-section': ({ file, setting }: Args<'file' | 'setting'>) =>
    `${file}   remove the section ${setting}`,
  'command-git.without-asking': ({ option }: Args<'option'>) =>
    `To do this without being asked, add ${option}.`,
  'command-git.shall-i': () => 'Shall I? (yes/no)',
  /** What is taken for yes, whole or by its first letter. */
  'command-git.yes': () => 'yes',
};
