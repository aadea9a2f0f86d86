import type { FormulaTotals } from '../facts/totals.ts';
import { type Message, message as messageOf } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';
import type { Change, Told } from './comparison.ts';
import type { Accepted, FormulaSummary } from './file-summary.ts';

type Found = FormulaTotals<Message>['findings'][number];

/**
 * Findings that are new, that changed their level, and that are gone. One whose figures alone changed is none of them; one
 * that is silenced since is not gone: it is told with the reason that was given.
 */
export function findingChanges(before: FormulaSummary, after: FormulaSummary, say: Speaker): Change[] {
  const told = (one: Found): Told => tellFinding(one, say);
  const [gone, come] = [[...before.totals.findings], [...after.totals.findings]];
  const pairs = (keyOf: (one: Found) => string): (readonly [Found, Found])[] => {
    const found: (readonly [Found, Found])[] = [];
    for (const one of [...come]) {
      const at = gone.findIndex((old) => keyOf(old) === keyOf(one));
      if (at < 0) continue;
      found.push([gone[at]!, one]);
      gone.splice(at, 1);
      come.splice(come.indexOf(one), 1);
    }
    return found;
  };
  // The same words first, then another message of the same rule at its level, then at another.
  pairs(({ code, level, message }) => `${code} ${level} ${JSON.stringify(message)}`);
  pairs(({ code, level }) => `${code} ${level}`);
  const raised = pairs(({ code }) => code);
  const accepts = newAccepts(before.accepted, after.accepted);
  return [
    ...come.map((one): Change => ({ name: one.code, after: told(one) })),
    ...raised.map(([was, is]): Change => ({ name: is.code, before: told(was), after: told(is) })),
    ...gone.map((one): Change => {
      const at = accepts.findIndex(({ code }) => code === one.code);
      const [accept] = at < 0 ? [] : accepts.splice(at, 1);
      if (accept === undefined) return { name: one.code, before: told(one) };
      const text = say.say(
        accept.reason === undefined
          ? messageOf('comparison.accepted-unexplained')
          : messageOf('comparison.accepted', { written: accept.reason }),
      );
      return { name: one.code, before: told(one), after: { text, line: accept.line, accepted: true } };
    }),
  ];
}

/** The errors and warnings of a formula that has no former state. */
export function worthTelling({ findings }: FormulaTotals<Message>, say: Speaker): Change[] {
  return findings
    .filter(({ level }) => level === 'error' || level === 'warning')
    .map((one) => ({ name: one.code, after: tellFinding(one, say) }));
}

function tellFinding({ level, message, line }: Found, say: Speaker): Told {
  return { text: say.say(atLevel(level, say.say(message))), line: line - 1, level };
}

function atLevel(level: string, sentence: string): Message {
  switch (level) {
    case 'error':
      return messageOf('comparison.error', { sentence });
    case 'warning':
      return messageOf('comparison.warning', { sentence });
    case 'hint':
      return messageOf('comparison.hint', { sentence });
    default:
      return messageOf('comparison.information', { sentence });
  }
}

/** The accepts of the new state that the old one lacks. */
function newAccepts(before: readonly Accepted[], after: readonly Accepted[]): Accepted[] {
  const left = before.map(({ code }) => code);
  return after.filter(({ code }) => {
    const at = left.indexOf(code);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}
