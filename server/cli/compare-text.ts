import {
  type Change,
  type ComparedBlock,
  type ComparisonPage,
  columnsOf,
  findingChange,
  padEndTo,
  type Speaker,
} from '../../core/index.ts';
import { styled } from './style.ts';

/** What changed, for a baker to read in a terminal: causes first. */
export function comparisonText(page: ComparisonPage, speaker: Speaker): string {
  const { formulas, definitions, following } = page;
  if (formulas.length === 0 && definitions.length === 0) return `${page.verdict}\n`;
  const blocks = [
    ...definitions.map(definitionLines),
    ...(following === undefined
      ? []
      : [
          [
            styled('bold', following.title),
            ...following.rows.map(
              ({ what, formulas: names }) => `  ${padEndTo(what, followingWidth(following))}  ${names}`,
            ),
          ],
        ]),
    ...formulas.map((one) => formulaLines(one, speaker)),
  ];
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

function formulaLines(one: ComparedBlock, speaker: Speaker): string[] {
  const groups = one.groups.flatMap(({ title, subject, changes }) => [
    `  ${styled('underline', title)}`,
    ...(subject === 'findings'
      ? findingLines(changes, speaker)
      : changes.map((change) => changeLine(change, widthOf(changes), '    '))),
  ]);
  return [heading(one), ...groups];
}

function definitionLines(one: ComparedBlock): string[] {
  const changes = one.groups.flatMap((group) => group.changes);
  return [heading(one), ...changes.map((change) => changeLine(change, widthOf(changes), '  '))];
}

const arrow = '→';

function heading({ name, place, remarks }: ComparedBlock): string {
  const said = remarks.map(({ text, fate }) =>
    fate === 'added' ? styled('green', text) : fate === 'removed' ? styled('red', text) : text,
  );
  return [
    styled('bold', name),
    styled('gray', `${place.file}:${place.line + 1}`),
    ...(said.length > 0 ? [said.join(', ')] : []),
  ].join('  ');
}

function findingLines(changes: readonly Change[], speaker: Speaker): string[] {
  const found = changes.map((change) => ({ name: change.name, ...findingChange(change, speaker) }));
  // What was accepted stands there with its reason, which may be long.
  const width = Math.max(0, ...found.map(({ word }) => [...word].length).filter((one) => one <= 12));
  return found.map(({ name, word, text, isWorse }) => {
    const beside = ' '.repeat(Math.max(0, width - [...word].length));
    return `    ${styled(isWorse ? 'red' : 'green', word)}${beside}  ${text} ${styled('gray', `[${name}]`)}`;
  });
}

function changeLine({ name, before, after, by }: Change, width: number, indent: string): string {
  const label = indent + padEndTo(name, width);
  if (before === undefined) return `${label}  ${styled('green', `+ ${words(after!)}`)}`;
  if (after === undefined) return `${label}  ${styled('red', `− ${words(before)}`)}`;
  if (words(before) === words(after)) return `${label}  ${words(after)}${styled('gray', `  ${by ?? ''}`)}`;
  const change = `${words(before)} ${arrow} ${styled('bold', words(after))}`;
  return `${label}  ${change}${by === undefined ? '' : styled('gray', `  ${by}`)}`;
}

function followingWidth({ rows }: NonNullable<ComparisonPage['following']>): number {
  return Math.max(16, ...rows.map(({ what }) => Math.min(32, columnsOf(what))));
}

function widthOf(changes: readonly Change[]): number {
  return Math.max(16, ...changes.map(({ name }) => Math.min(32, columnsOf(name))));
}

function words({ text, beside }: NonNullable<Change['after']>): string {
  return beside === undefined ? text : `${text} (${beside})`;
}
