import { explainedRule, type Message, message, rules as ruleList, wordsOfRule } from '../../core/index.ts';
import type { ExitCode } from './exit-code.ts';
import type { RulesOutput } from './json-outputs.ts';
import { meantOf } from './meant.ts';
import { say, wording } from './speaker.ts';
import { levelStyles, styled } from './style.ts';
import { complain } from './terminal.ts';

/** That there is no rule of a code, and which one may be meant. */
export function noRule(code: string): Message {
  const name = meantOf(
    code,
    ruleList.map((rule) => rule.code),
  );
  return name === undefined
    ? message('command-check.no-rule', { code })
    : message('command-check.no-rule-meant', { code, name });
}

/** Lists the rules by code, with the level each has unless it is set otherwise; or explains one, as its page does. */
export function rules(asked: string | undefined, options: { readonly json?: boolean }): ExitCode {
  const { language } = wording();
  const wanted = ruleList.filter(({ code }) => asked === undefined || code === asked);
  if (wanted.length === 0) {
    complain(say(noRule(asked!)));
    return 2;
  }
  const rows: RulesOutput = wanted
    .map((rule) => ({ code: rule.code, level: rule.level, ...wordsOfRule(rule, language) }))
    .sort((one, other) => (one.code < other.code ? -1 : 1));
  if (options.json) {
    process.stdout.write(`${JSON.stringify(rows, null, 2)}\n`);
    return 0;
  }
  if (asked !== undefined) {
    process.stdout.write(explainedRule(wanted[0]!, language));
    return 0;
  }
  const width = Math.max(...rows.map(({ code }) => code.length));
  for (const { code, level, title } of rows) {
    process.stdout.write(`${code.padEnd(width)}  ${styled(levelStyles[level], level.padEnd(7))}  ${title}\n`);
  }
  return 0;
}
