import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** What a check says beside its findings, and what a rename says. */
export const commandCheck = {
  'command-check.checked': ({ count, otherCount }: Args<'count' | 'otherCount'>, say: Speaker) =>
    `${say.number(count, 0)} of ${say.count(otherCount, { one: '# file', other: '# files' })} checked`,
  'command-check.more': ({ count }: Args<'count'>, say: Speaker) => `and ${say.number(count, 0)} more`,
  'command-check.no-rule': ({ code }: Args<'code'>) =>
    `there is no rule “${code}”; “doughwright rules” lists them.`,
  'command-check.no-rule-meant': ({ code, name }: Args<'code' | 'name'>) =>
    `there is no rule “${code}”. Is it ${name}?`,
  'command-check.no-baseline': ({ option }: Args<'option'>) =>
    `there is no such file; write one with ${option}`,
  'command-check.other-baseline': ({ option }: Args<'option'>) =>
    `this is no baseline; write a new one with ${option}`,
  'command-check.not-over': () =>
    'this is there already and no baseline; name another file, or add --force to write over it.',
  'command-check.stdin': ({ option }: Args<'option'>) =>
    `“-” alone is standard input, and ${option} says which file its text shall be in; write both.`,
  'command-check.fixed': ({ count }: Args<'count'>, say: Speaker) =>
    say.count(count, { one: 'mended in # file', other: 'mended in # files' }),
  'command-check.summary': (
    { parts, count, otherCount }: Args<'parts' | 'count' | 'otherCount'>,
    say: Speaker,
  ) =>
    `${say.list(parts.map(say.say))} in ${say.number(count, 0)} of ${say.count(otherCount, { one: '# file', other: '# files' })}.`,
  'command-check.errors': ({ count }: Args<'count'>, say: Speaker) =>
    say.count(count, { one: '# error', other: '# errors' }),
  'command-check.warnings': ({ count }: Args<'count'>, say: Speaker) =>
    say.count(count, { one: '# warning', other: '# warnings' }),
  'command-check.more-information': ({ count }: Args<'count'>, say: Speaker) =>
    say.count(count, { one: '# information', other: '# pieces of information' }),
  'command-check.baseline': ({ count, file }: Args<'count' | 'file'>, say: Speaker) =>
    say.count(count, { one: `# finding is in ${file} now.`, other: `# findings are in ${file} now.` }),
  'command-check.not-as-staged': (
    { files, count, command }: Args<'files' | 'count' | 'command'>,
    say: Speaker,
  ) =>
    say.count(count, {
      one: `${say.list(files)} is other on disk than what is staged, and what is staged was checked; if it is right on disk, stage it: ${command}`,
      other: `# files are other on disk than what is staged, and what is staged was checked: ${say.list(files)}; if they are right on disk, stage them: ${command}`,
    }),
  'command-check.nothing-staged': () =>
    'this repository has no files on disk, so that nothing is staged in it.',
  'command-check.watching': () => 'Watching for changes; Ctrl+C ends.',

  'command-rename.none': ({ name }: Args<'name'>) =>
    `nothing in here is defined as “${name}”; look at the spelling.`,
  'command-rename.none-meant': ({ name, otherName }: Args<'name' | 'otherName'>) =>
    `nothing in here is defined as “${name}”. Is it “${otherName}”?`,
  'command-rename.several': ({ name, files }: Args<'name' | 'files'>, say: Speaker) =>
    `“${name}” is defined at ${say.list(files)}; name the file of the one that is meant.`,
  'command-rename.not-written': ({ option }: Args<'option'>) => `Nothing was written; ${option} writes it.`,

  'command-check.error': () => 'error',
  'command-check.warning': () => 'warning',
  'command-check.information': () => 'information',
  'command-check.hint': () => 'hint',
};
