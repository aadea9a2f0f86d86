import type {
  Change,
  ChangeGroup,
  Comparison,
  DefinitionComparison,
  FormulaComparison,
  Told,
} from '../../core/index.ts';
import { followingSummary, worthASummary } from './compare-text.ts';

/** What changed as Markdown, for the text of a review: causes first, a table for each formula. */
export function comparisonMarkdown({ verdict, formulas, definitions }: Comparison): string {
  if (formulas.length === 0 && definitions.length === 0)
    return verdict === 'same' ? 'Nothing differs.\n' : 'Only lines outside of any section differ.\n';
  const following = formulas.filter(({ follows }) => follows);
  const blocks = [
    ...definitions.map(definitionBlock),
    ...(following.length < worthASummary ? [] : [summaryBlock(following, definitions.length)]),
    ...formulas.filter(({ follows }) => !follows).map(formulaBlock),
    ...following.map(formulaBlock),
  ];
  return `${blocks.join('\n\n')}\n`;
}

function definitionBlock(one: DefinitionComparison): string {
  return block(`${one.kind} ${one.name}`, one, [{ subject: 'wording', title: 'line', changes: one.changes }]);
}

function formulaBlock(one: FormulaComparison): string {
  const name = one.renamedFrom === undefined ? one.formula : `${one.renamedFrom} → ${one.formula}, renamed`;
  return block(name, one, one.groups);
}

function summaryBlock(following: readonly FormulaComparison[], causes: number): string {
  const { title, rows } = followingSummary(following, causes);
  return [`**${title}**`, '', ...rows.map(([what, names]) => `- ${cell(what)}: ${cell(names)}`)].join('\n');
}

function block(
  name: string,
  { fate, verdict, movedFrom, before, after }: FormulaComparison | DefinitionComparison,
  groups: readonly ChangeGroup[],
): string {
  const place = (after ?? before)!;
  const said = [
    fate === 'added' ? 'new' : fate === 'removed' ? 'gone' : '',
    movedFrom === undefined ? '' : `moved from ${movedFrom}`,
    verdict === 'layout' ? 'only layout and comments differ' : '',
    verdict === 'wording' ? 'written differently, the same figures' : '',
  ].filter(Boolean);
  const rows = groups.flatMap(({ title, changes }) => changes.map((change) => row(title, change)));
  return [
    `### ${cell(name)}`,
    '',
    [`${cell(place.file)}, line ${place.line + 1}`, ...said.map(cell)].join(' · '),
    ...(rows.length === 0
      ? []
      : ['', '| | what | before | after | by |', '| --- | --- | --- | --- | --- |', ...rows]),
  ].join('\n');
}

function row(title: string, { name, before, after, by }: Change): string {
  const told = (value: Told | undefined): string =>
    value === undefined
      ? '–'
      : value.beside === undefined
        ? cell(value.text)
        : `${cell(value.text)} (${cell(value.beside)})`;
  return `| ${cell(title)} | ${cell(name)} | ${told(before)} | ${told(after)} | ${cell(by ?? '')} |`;
}

/** Words of a file as they are, none of them taken for a mark of Markdown or of HTML. */
function cell(text: string): string {
  return text.replace(/[\\`*_{}[\]<>#|~&]/g, (sign) => `\\${sign}`).replace(/[\r\n]+/g, ' ');
}
