import type {
  Change,
  ChangeGroup,
  Comparison,
  DefinitionComparison,
  FormulaComparison,
  Told,
} from '../../core/index.ts';
import { styled } from './style.ts';

/** What changed, for a baker to read in a terminal. */
export function comparisonText(comparison: Comparison): string {
  const { formulas, definitions, verdict } = comparison;
  if (formulas.length === 0 && definitions.length === 0) {
    return verdict === 'same' ? 'Nothing differs.\n' : 'Only lines outside of any section differ.\n';
  }
  const following = formulas.filter(({ follows }) => follows);
  const blocks = [
    ...definitions.map(definitionLines),
    ...(following.length < worthASummary ? [] : [followingLines(following, definitions.length)]),
    ...formulas.filter(({ follows }) => !follows).map(formulaLines),
    ...following.map(formulaLines),
  ];
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

/** So many formulas that changed without being written differently are summed up before they are told one by one. */
export const worthASummary = 2;

/** What a cause did to formulas that nobody touched, in a few lines: first whose label changed, for that is told to eaters. */
export function followingSummary(
  following: readonly FormulaComparison[],
  causes: number,
): { title: string; rows: (readonly [what: string, formulas: string])[] } {
  const from =
    causes === 0 ? 'something outside them' : causes === 1 ? 'the change above' : 'the changes above';
  const bySubject = new Map<string, string[]>();
  for (const { formula, groups } of following)
    for (const title of new Set(groups.map(({ subject }) => subject)))
      bySubject.set(title, [...(bySubject.get(title) ?? []), formula]);
  const rows = [...bySubject].map(([what, names]): readonly [string, string] => [
    what,
    names.length === following.length ? `all ${names.length}` : names.join(', '),
  ]);
  const label = rows.filter(([what]) => what === 'label');
  return {
    title: `${following.length} formulas that nobody edited follow from ${from}`,
    rows: [...label, ...rows.filter(([what]) => what !== 'label')],
  };
}

function followingLines(following: readonly FormulaComparison[], causes: number): string[] {
  const { title, rows } = followingSummary(following, causes);
  return [styled('bold', title), ...rows.map(([what, names]) => `  ${what.padEnd(16)}  ${names}`)];
}

function formulaLines(one: FormulaComparison): string[] {
  const name =
    one.renamedFrom === undefined ? one.formula : `${one.renamedFrom} ${arrow} ${one.formula}, renamed`;
  return [heading(name, one, one.groups.length > 0), ...one.groups.flatMap(groupLines)];
}

function definitionLines(one: DefinitionComparison): string[] {
  return [
    heading(`${one.kind} ${one.name}`, one, one.changes.length > 0),
    ...one.changes.map((change) => changeLine(change, widthOf(one.changes), '  ')),
  ];
}

const arrow = '→';

function heading(
  name: string,
  { fate, verdict, movedFrom, before, after }: FormulaComparison | DefinitionComparison,
  hasChanges: boolean,
): string {
  const place = (after ?? before)!;
  const said = [
    fate === 'added' ? styled('green', 'new') : fate === 'removed' ? styled('red', 'gone') : '',
    movedFrom === undefined ? '' : `moved from ${movedFrom}`,
    verdict === 'layout' ? 'only layout and comments differ' : '',
    verdict === 'wording'
      ? hasChanges
        ? 'written differently, the same figures'
        : 'the same lines in another order'
      : '',
  ].filter(Boolean);
  return [
    styled('bold', name),
    styled('gray', `${place.file}:${place.line + 1}`),
    ...(said.length > 0 ? [said.join(', ')] : []),
  ].join('  ');
}

function groupLines({ title, subject, changes }: ChangeGroup): string[] {
  const rows =
    subject === 'findings'
      ? changes.map(findingLine)
      : changes.map((change) => changeLine(change, widthOf(changes), '    '));
  return [`  ${styled('underline', title)}`, ...rows];
}

function findingLine({ name, before, after }: Change): string {
  const code = styled('gray', `[${name}]`);
  if (before !== undefined && after !== undefined) {
    return after.accepted
      ? `    ${styled('green', after.text)}  ${before.text} ${code}`
      : `    ${styled('red', 'now')}   ${after.text} (was ${levelName(before.level)}) ${code}`;
  }
  return after === undefined
    ? `    ${styled('green', 'gone')}  ${before!.text} ${code}`
    : `    ${styled('red', 'new')}   ${after.text} ${code}`;
}

function levelName(level: string | undefined): string {
  return level === undefined || level === 'info' ? 'information' : level;
}

function changeLine({ name, before, after, by }: Change, width: number, indent: string): string {
  const label = indent + name + ' '.repeat(Math.max(0, width - [...name].length));
  if (before === undefined) return `${label}  ${styled('green', `+ ${words(after!)}`)}`;
  if (after === undefined) return `${label}  ${styled('red', `− ${words(before)}`)}`;
  if (words(before) === words(after)) return `${label}  ${words(after)}${styled('gray', `  ${by ?? ''}`)}`;
  const change = `${words(before)} ${arrow} ${styled('bold', words(after))}`;
  return `${label}  ${change}${by === undefined ? '' : styled('gray', `  ${by}`)}`;
}

function widthOf(changes: readonly Change[]): number {
  return Math.max(16, ...changes.map(({ name }) => Math.min(32, [...name].length)));
}

function words({ text, beside }: Told): string {
  return beside === undefined ? text : `${text} (${beside})`;
}
