import type { Finding, Fix } from '../../rules/engine/finding.ts';
import { rulesByCode } from '../../rules/engine/rule-catalogue.ts';
import type { FileEdit, TextEdit } from '../../text/edits.ts';
import { message } from '../../words/message.ts';
import type { Action, ActionContext } from './action.ts';
import { touchedFindings } from './action-places.ts';

export const fixAllOfRule: Action = {
  id: 'fix-all-of-rule',
  kind: 'fix',
  name: 'Fix all findings of one rule',
  explanation:
    'Takes the preferred fix of every finding of the rule at the cursor, in the whole file. Offered where there are several.',
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
        edits: () => together(alike),
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
    'words the first is taken. What a fix would change of the bread itself, weights or minutes, is left to the baker. Editors can ask for it when a file is saved.',
  example: 'formula Quay Tin:\n  bread flour        100%\n  ‸water              65\n  salt               2\n',
  variants: true,
  *offers(context) {
    const slips = preferredOf(context).filter(
      ({ finding }) => rulesByCode.get(finding.code)?.mendsSlips === true,
    );
    if (slips.length > 0) yield { title: message('fix-all.slips'), edits: () => together(slips) };
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

/** The edits of several fixes as one, without those that would touch what another has changed. */
function together(all: readonly Preferred[]): readonly FileEdit[] | undefined {
  const byFile = new Map<string, TextEdit[]>();
  for (const { fix } of all) {
    const clash = fix.edits.some(({ uri, edits }) =>
      edits.some((edit) => byFile.get(uri)?.some((taken) => overlaps(edit, taken) && !isSame(edit, taken))),
    );
    if (clash) continue;
    for (const { uri, edits } of fix.edits) {
      const taken = byFile.get(uri) ?? [];
      byFile.set(uri, [...taken, ...edits.filter((edit) => !taken.some((one) => isSame(edit, one)))]);
    }
  }
  const files = [...byFile].map(([uri, edits]) => ({ uri, edits }));
  return files.length === 0 ? undefined : files;
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
