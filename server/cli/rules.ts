import { rules as ruleList } from '../../core/index.ts';
import type { ExitCode } from './exit-code.ts';
import { wording } from './speaker.ts';
import { levelStyles, styled } from './style.ts';

/** Lists the rules by code, with the level each has unless it is set otherwise. */
export function rules(options: { readonly json?: boolean }): ExitCode {
  const { rulePages = {} } = wording().language;
  const rows = ruleList
    .map(({ code, level, title, explanation }) => ({ code, level, title, explanation, ...rulePages[code] }))
    .sort((one, other) => (one.code < other.code ? -1 : 1));
  if (options.json) {
    process.stdout.write(`${JSON.stringify(rows, null, 2)}\n`);
    return 0;
  }
  const width = Math.max(...rows.map(({ code }) => code.length));
  for (const { code, level, title } of rows) {
    process.stdout.write(`${code.padEnd(width)}  ${styled(levelStyles[level], level.padEnd(7))}  ${title}\n`);
  }
  return 0;
}
