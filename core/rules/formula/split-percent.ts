import type { SectionInput } from '../../calc/formula/formula-input.ts';
import { lineOfId } from '../../model/formula-model.ts';
import { isVariant } from '../../model/variant.ts';
import { amountColumn } from '../../syntax/layout.ts';
import { elementAt } from '../../text/element.ts';
import { trimmed } from '../../text/figures.ts';
import { foldName } from '../../text/names.ts';
import { message } from '../../words/message.ts';
import type { RuleContext, RuleEdit, RuleFix } from '../engine/rule.ts';

/** Off the hundred by less than this the percentages are taken as split. */
const nearHundred = 0.005;

/**
 * A formula whose percentages are all of the whole flour, shared out among the dough and its parts, `flour 70%` here and `flour 30%`
 * in the sponge: the fix that writes the whole formula and what the parts draw of it. Nothing where the lines are not so.
 */
export function splitPercentFix({ analysis, block }: RuleContext): RuleFix | undefined {
  if (analysis === undefined || isVariant(block)) return undefined;
  const { input } = analysis.resolved;
  const [dough, ...parts] = input.sections;
  if (dough === undefined || parts.some(({ draws }) => draws.length > 0)) return undefined;
  const shares = [dough, ...parts].map(sharesOf);
  if (shares.some((one) => one === undefined)) return undefined;
  const [own = [], ...others] = asOneFlour(shares as Share[][]);
  const withFlour = parts.filter((_, index) => flourOf(elementAt(others, index)) > 0);
  const whole = flourOf(own) + others.reduce((sum, one) => sum + flourOf(one), 0);
  if (own.length === 0 || withFlour.length === 0 || Math.abs(whole - 1) > nearHundred) return undefined;
  const edits: RuleEdit[] = [];
  const writeAmount = (line: number, fraction: number): void => {
    const { statement } = elementAt(block.lines, line);
    if (statement.kind !== 'ingredient') return;
    const { start, end } = statement.amount;
    edits.push({ line, start, end, insert: percent(fraction) });
  };
  const inWhole = new Map<string, { readonly name: string; fraction: number }>();
  for (const one of [...own, ...others.flat()]) {
    if (!one.known) continue;
    const sum = inWhole.get(one.key);
    if (sum === undefined) inWhole.set(one.key, { name: one.name, fraction: one.fraction });
    else sum.fraction += one.fraction;
  }
  for (const { line, key } of own) writeAmount(line, inWhole.get(key)?.fraction ?? 0);
  const last = Math.max(...own.map(({ line }) => line));
  const added = [...inWhole].filter(([key]) => !own.some((one) => one.key === key));
  const end = elementAt(block.lines, last).text.length;
  const rows = added.map(
    ([, { name, fraction }]) => `\n${`  ${name}  `.padEnd(amountColumn)}${percent(fraction)}`,
  );
  // The lines that named the parts go: what draws needs none. Those right behind the last go with what is written there.
  const gone = dough.lines.flatMap(({ id, part }) => (part ? [lineOfId(id)] : [])).toSorted((a, b) => a - b);
  let behind = last;
  while (gone.includes(behind + 1)) behind++;
  const to = elementAt(block.lines, behind).text.length;
  edits.push({ line: last, start: end, endLine: behind, end: to, insert: rows.join('') });
  for (const line of gone) {
    if (line > last && line <= behind) continue;
    const before = elementAt(block.lines, line - 1).text.length;
    edits.push({
      line: line - 1,
      start: before,
      endLine: line,
      end: elementAt(block.lines, line).text.length,
      insert: '',
    });
  }
  parts.forEach((part, index) => {
    const lines = elementAt(others, index);
    const flour = flourOf(lines);
    if (flour <= 0) return;
    const header = lineOfId(part.id);
    const behind = elementAt(block.lines, header).text.length;
    edits.push({ line: header, start: behind, end: behind, insert: `\n  draws ${percent(flour)} of flour` });
    for (const { line, fraction, meant } of lines) {
      writeAmount(line, fraction / flour);
      const { statement } = elementAt(block.lines, line);
      if (meant === undefined || statement.kind !== 'ingredient') continue;
      const { start, end: nameEnd } = statement.name;
      edits.push({ line, start, end: nameEnd, insert: meant });
    }
  });
  return { title: message('flour-not-hundred.fix-split'), edits, preferred: true };
}

interface Share {
  readonly line: number;
  readonly key: string;
  readonly name: string;
  readonly fraction: number;
  readonly isFlour: boolean;
  readonly known: boolean;
  /** The flour that a line which only says `flour` means. */
  readonly meant?: string;
}

/** What a part calls `flour` is the flour of the dough, where that has one. */
function asOneFlour([own = [], ...others]: Share[][]): Share[][] {
  const flours = new Map(own.filter(({ isFlour }) => isFlour).map((one) => [one.key, one]));
  const [only] = flours.size === 1 ? flours.values() : [];
  const meantBy = (one: Share): Share =>
    only !== undefined && one.isFlour && foldName(one.name) === 'flour' && one.key !== only.key
      ? { ...one, key: only.key, name: only.name, meant: only.name }
      : one;
  return [own, ...others.map((lines) => lines.map(meantBy))];
}

/** The lines of a section that are ingredients; nothing where one has another amount than a percentage. */
function sharesOf({ lines }: SectionInput): Share[] | undefined {
  const own = lines.filter(({ part }) => !part);
  const shares = own.flatMap(({ id, key, name, isFlour, known, amount }): Share[] =>
    amount.kind === 'fraction'
      ? [{ line: lineOfId(id), key, name, fraction: amount.fraction, isFlour, known }]
      : [],
  );
  return shares.length === own.length && shares.every(({ line }) => line >= 0) ? shares : undefined;
}

const flourOf = (shares: readonly Share[]): number =>
  shares.reduce((sum, { isFlour, fraction }) => sum + (isFlour ? fraction : 0), 0);

const percent = (fraction: number): string => `${trimmed(fraction * 100, 3)}%`;
