import type { SolvedFormula } from '../../calc/formula/formula-result.ts';
import { factsOf, type LineFacts, sectionOf } from '../../facts/line-facts.ts';
import { lineId } from '../../model/formula-model.ts';
import type { TextEdit } from '../../text/edits.ts';
import { elementAt } from '../../text/element.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { ActionContext } from '../actions/action.ts';
import { lineAt } from '../actions/action-places.ts';
import { editsKeeping } from '../actions/after.ts';
import {
  exactMass,
  exactPercent,
  roundedCloseness,
  roundedMass,
  roundedPercent,
} from '../actions/exact-figures.ts';
import { LineChanges } from '../actions/line-changes.ts';
import { writeAmount } from '../actions/rewriting.ts';
import { amountMessages, mixingHintMessages, partTotalsMessages, totalsMessages } from './hint-words.ts';

/** What there is to say of the hint of a line, and what writes its figure into the line. */
export interface HintDetail {
  /** Markdown. */
  readonly tooltip: string;
  /** Absent where the line says the figure already, or the formula would not stay what it is. */
  readonly edits?: readonly TextEdit[];
}

/** What the hint at the end of a line is and what it stands on; `undefined` where the line has no hint. */
export function hintDetailOf(context: ActionContext, speaker: Speaker): HintDetail | undefined {
  const said = tooltipOf(context)?.map(speaker.say) ?? [];
  if (said.length === 0) return undefined;
  const written = insertionOf(context);
  if (written === undefined) return { tooltip: said.join('\n\n') };
  const words = speaker.say(message('hint.written-in', { meant: written.text }));
  return { tooltip: [...said, words].join('\n\n'), edits: written.edits };
}

function tooltipOf({ analysis, line }: ActionContext): readonly Message[] | undefined {
  const all = analysis();
  if (all === undefined) return undefined;
  const { model, statements } = all.resolved;
  const statement = statements.get(lineId(line));
  const facts = factsOf(all, lineId(line));
  if (statement !== undefined && facts !== undefined) return amountMessages(all, facts, statement);
  const section = model.sections.find(({ headerLine }) => headerLine === line);
  if (section !== undefined) {
    if (section === model.sections[0]) return totalsMessages(all);
    const solved = sectionOf(all, section.id);
    return solved === undefined ? undefined : partTotalsMessages(all, solved.inBowl);
  }
  const index = model.mixes.findIndex(({ phases }) => phases.some((phase) => phase.line === line));
  const mix = index < 0 ? undefined : all.mixes[index];
  return mix?.known ? mixingHintMessages(all, mix.value) : undefined;
}

/**
 * The line with the figure of its hint as the amount, rounded as a baker writes it where that leaves the formula what it is
 * but for the rounding, else with ten digits. What is written is read and solved again: it is refused where anything would be
 * wrong with it, or any section would weigh anything else.
 */
function insertionOf(
  context: ActionContext,
): { readonly text: string; readonly edits: readonly TextEdit[] } | undefined {
  const all = context.analysis();
  const line = lineAt(context);
  const facts = all === undefined ? undefined : factsOf(all, lineId(context.line));
  // Where the other reading of a line holds, its amount stands elsewhere than this one says.
  if (all === undefined || line === undefined || all.resolved.statements.get(line.id) !== line.statement)
    return undefined;
  if (facts === undefined) return undefined;
  // Flour in weight beside a yield is a second scale: it would agree with the yield only until somebody changes one.
  const hasYield = all.resolved.input.yield !== undefined;
  if (hasYield && facts.line.isFlour && line.statement.amount.kind === 'fraction') return undefined;
  for (const { percent, mass, closeness } of ways) {
    const text = figureToWrite(line.statement.amount, facts, percent, mass);
    if (text === undefined) continue;
    const changes = new LineChanges(context);
    writeAmount(changes, line, text);
    const isKept = (before: SolvedFormula, after: SolvedFormula) => isSame(before, after, closeness);
    const edits = editsKeeping(context, changes, isKept)?.[0]?.edits;
    if (edits !== undefined) return { text, edits };
  }
  return undefined;
}

/** How a figure may be written, the best first, and how far the formula may then be from what it was. */
const ways = [
  { percent: roundedPercent, mass: roundedMass, closeness: roundedCloseness },
  { percent: exactPercent, mass: exactMass, closeness: 1e-9 },
];

type Amount = NonNullable<ReturnType<typeof lineAt>>['statement']['amount'];

function figureToWrite(
  amount: Amount,
  { line: { fraction, grams } }: LineFacts,
  percent: (fraction: number) => string | undefined,
  mass: (grams: number) => string | undefined,
): string | undefined {
  if ('aPiece' in amount || !(grams === undefined || grams > 0)) return undefined;
  const asPercent = fraction === undefined || !(fraction > 0) ? undefined : percent(fraction);
  const asMass = grams === undefined ? undefined : mass(grams);
  switch (amount.kind) {
    case 'fraction':
    case 'volume':
    case 'count':
      return asMass;
    case 'mass':
    case 'balance':
    case 'hydration':
    case 'remaining':
      return asPercent;
    case 'unknown':
      return undefined;
  }
}

/** Whether every line of every section weighs the same, within a share of its section's flour or of itself. */
function isSame(before: SolvedFormula, after: SolvedFormula, closeness: number): boolean {
  if (before.overall.length !== after.overall.length || before.sections.length !== after.sections.length)
    return false;
  return before.sections.every(({ lines }, index) =>
    lines.every(({ grams, fraction }, at) => {
      const now = elementAt(after.sections, index).lines[at];
      return before.assumedScale
        ? isWithin(fraction, now?.fraction, closeness)
        : isWithin(grams, now?.grams, closeness);
    }),
  );
}

function isWithin(one: number | undefined, other: number | undefined, closeness: number): boolean {
  if (one === undefined || other === undefined) return one === other;
  return Math.abs(one - other) <= closeness * Math.max(Math.abs(one), 1e-6);
}
