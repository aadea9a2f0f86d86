import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** What a check says beside its findings. */
export const commandCheck = {
  'command-check.checked': ({ count, otherCount }: Args<'count' | 'otherCount'>, say: Speaker) =>
    `${say.number(count, 0)} of ${say.count(otherCount, { one: '# file', other: '# files' })} checked`,
  'command-check.more': ({ count }: Args<'count'>, say: Speaker) => `and ${say.number(count, 0)} more`,
  'command-check.no-rule': ({ code }: Args<'code'>) =>
    `there is no rule “${code}”; “doughwright rules” lists them.`,
  'command-check.no-baseline': ({ option }: Args<'option'>) =>
    `there is no such file; write one with ${option}`,
  'command-check.other-baseline': ({ option }: Args<'option'>) =>
    `this is no baseline; write a new one with ${option}`,
  'command-check.not-over': () =>
    'this is there already and no baseline; name another file, or add --force to write over it.',
  'command-check.baseline': ({ count, file }: Args<'count' | 'file'>, say: Speaker) =>
    say.count(count, { one: `# finding is in ${file} now.`, other: `# findings are in ${file} now.` }),
  'command-check.watching': () => 'Watching for changes; Ctrl+C ends.',

  'command-check.error': () => 'error',
  'command-check.warning': () => 'warning',
  'command-check.information': () => 'information',
  'command-check.hint': () => 'hint',
};
