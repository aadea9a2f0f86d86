import { InvalidArgumentError } from 'commander';
import type { Level } from '../../core/index.ts';

/** Levels by the codes of rules, where they are not to be the usual ones. */
export type RuleLevels = Readonly<Record<string, Level | 'off'>>;

/** What a level of a rule may be called; the names of the editor's setting too. */
const levels: Readonly<Record<string, Level | 'off'>> = {
  error: 'error',
  warning: 'warning',
  info: 'info',
  information: 'info',
  hint: 'hint',
  off: 'off',
};

/** Adds one `code=level`, as it is typed, to those before. */
export function ruleLevels(text: string, before: RuleLevels = {}): RuleLevels {
  const [, code, word] = /^([a-z-]+)=(\w+)$/.exec(text) ?? [];
  const level = word === undefined || !Object.hasOwn(levels, word) ? undefined : levels[word];
  if (code === undefined || level === undefined)
    throw new InvalidArgumentError(
      'Write the code of a rule and error, warning, info, hint or off, as no-salt=off.',
    );
  return { ...before, [code]: level };
}
