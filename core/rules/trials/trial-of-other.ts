import { foldName } from '../../text/names.ts';
import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';

/** `of Wet White, cold flour` behind the day of a trial. */
const ofAnother = /^(?:of|for)\s+([^,]+)/iu;

export const trialOfOther: Rule = {
  code: 'trial-of-other',
  level: 'warning',
  title: 'A trial says that it is of another formula',
  explanation:
    'A trial is of the formula that it stands below, whatever stands behind its day: its readings are set beside what is worked out for that formula, and teach its mixer and its rise. ' +
    'Move it below the lines of the formula that was made; what stands behind the day is a label, for the flour or the weather.',
  bad: 'formula Plain White:\n  yield 2 kg\n  bread flour  100%\n  water  65%\n\ntrial 2026-04-11 of Wet White:\n  water 20 °C\n  mixed by hand\n  load all\n  knead 30 min\n  at 8 min  24 °C\n\nformula Wet White:\n  yield 2 kg\n  bread flour  100%\n  water  75%\n',
  good: 'formula Plain White:\n  yield 2 kg\n  bread flour  100%\n  water  65%\n\nformula Wet White:\n  yield 2 kg\n  bread flour  100%\n  water  75%\n\ntrial 2026-04-11 of Wet White:\n  water 20 °C\n  mixed by hand\n  load all\n  knead 30 min\n  at 8 min  24 °C\n',
  *check({ block, scope }) {
    const { top, subs } = block;
    const own = top?.kind === 'formula' ? top.header.name : undefined;
    if (own === undefined) return;
    for (const { kind, header, headerLine } of subs) {
      const [, named = ''] = kind === 'trial' ? (ofAnother.exec(header.words ?? '') ?? []) : [];
      const folded = foldName(named);
      if (folded === '' || folded === own.folded || scope.find('formula', folded).length === 0) continue;
      const line = block.lines[headerLine]?.text ?? '';
      const start = line.indexOf(named);
      const said = message('trial-of-other.other', { name: named.trim(), otherName: own.text });
      yield { line: headerLine, span: { start, end: start + named.trimEnd().length }, message: said };
    }
  },
};
