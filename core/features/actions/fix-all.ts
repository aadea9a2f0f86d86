import type { Finding, Fix } from '../../rules/engine/finding.ts';
import { rulesByCode } from '../../rules/engine/rule-catalogue.ts';
import { type FileEdit, inOrder, type TextEdit } from '../../text/edits.ts';
import { message } from '../../words/message.ts';
import type { Action, ActionContext } from './action.ts';
import { touchedFindings } from './action-places.ts';
import { areSound } from './sound-edits.ts';

export const fixAllOfRule: Action = {
  id: 'fix-all-of-rule',
  kind: 'fix',
  name: 'Fix all findings of one rule',
  explanation:
    'Takes the preferred fix of every finding of the rule at the cursor, in the whole file. Offered where there are several. A fix after which there would be an error that was not there before is left out.',
  example: 'formula Quay Tin:\n  bread flour        100%\n  water              ‸65\n  salt               2\n',
  variants: true,
  *offers(context) {
    const seen = new Set<string>();
    for (const { code } of touchedFindings(context)) {
      if (seen.has(code)) continue;
      seen.add(code);
      const alike = preferredOf(context).filter(({ finding }) => finding.code === code);
      if (alike.length < 2) continue;
      yield {
        title: message('fix-all.of-rule', { count: alike.length, code }),
        argument: code,
        findings: alike.map(({ finding }) => finding),
        isSound: true,
        edits: () => together(context, alike),
      };
    }
  },
};

export const fixAllSlips: Action = {
  id: 'fix-all-slips',
  kind: 'fixAll',
  name: 'Fix all slips of writing',
  explanation:
    'Takes the preferred fix of every finding in the file on how something is written: a unit, a colon or a name. Where two would change the same ' +
    'words the first is taken, and a fix after which there would be an error that was not there before is left out. What a fix would change of the bread itself, weights or minutes, is left to the baker. Editors can ask for it when a file is saved.',
  example: 'formula Quay Tin:\n  bread flour        100%\n  ‸water              65\n  salt               2\n',
  variants: true,
  *offers(context) {
    const slips = preferredOf(context).filter(
      ({ finding }) => rulesByCode.get(finding.code)?.mendsSlips === true,
    );
    if (slips.length > 0)
      yield { title: message('fix-all.slips'), isSound: true, edits: () => together(context, slips) };
  },
};

interface Preferred {
  readonly finding: Finding;
  readonly fix: Fix;
}

function preferredOf({ findings }: ActionContext): Preferred[] {
  return findings().flatMap((finding) => {
    const fix = finding.fixes.find((one) => one.preferred === true);
    return fix === undefined ? [] : [{ finding, fix }];
  });
}

/** The edits of several fixes as one, without those that would leave their finding or make an error beside the others. */
function together(context: ActionContext, all: readonly Preferred[]): readonly FileEdit[] | undefined {
  const isSound = (some: readonly Preferred[]): boolean => {
    const meant = some.map(({ finding }) => finding);
    return areSound(context.uri, joined(some), meant, context.examine);
  };
  const apart = withoutClashes(all);
  if (apart.length > 0 && isSound(apart)) return joined(apart);
  const taken: Preferred[] = [];
  for (const one of apart) if (isSound([...taken, one])) taken.push(one);
  return taken.length === 0 ? undefined : joined(taken);
}

/** The fixes without those that would touch what another has changed. */
function withoutClashes(all: readonly Preferred[]): readonly Preferred[] {
  const byFile = new Map<string, TextEdit[]>();
  return all.filter(({ fix }) => {
    const clash = fix.edits.some(({ uri, edits }) =>
      edits.some((edit) => byFile.get(uri)?.some((taken) => overlaps(edit, taken) && !isSame(edit, taken))),
    );
    if (clash) return false;
    for (const { uri, edits } of fix.edits) byFile.set(uri, [...(byFile.get(uri) ?? []), ...edits]);
    return true;
  });
}

/** The edits of several fixes in the order of their text, each once. */
function joined(all: readonly Preferred[]): readonly FileEdit[] {
  const byFile = new Map<string, TextEdit[]>();
  for (const { fix } of all)
    for (const { uri, edits } of fix.edits) {
      const taken = byFile.get(uri) ?? [];
      byFile.set(uri, [...taken, ...edits.filter((edit) => !taken.some((one) => isSame(edit, one)))]);
    }
  return [...byFile].map(([uri, edits]) => ({ uri, edits: inOrder(edits) }));
}

/** What two fixes both write, as the programme that a trial keeps, is written once. */
function isSame(one: TextEdit, other: TextEdit): boolean {
  return (
    one.line === other.line &&
    one.start === other.start &&
    one.end === other.end &&
    one.endLine === other.endLine &&
    one.insert === other.insert
  );
}

// Edits that only touch are taken for a clash: in which order they come would decide what is written.
function overlaps(one: TextEdit, other: TextEdit): boolean {
  return !(isBefore(one, other) || isBefore(other, one));
}

function isBefore(one: TextEdit, other: TextEdit): boolean {
  const line = one.endLine ?? one.line;
  return line < other.line || (line === other.line && one.end < other.start);
}
