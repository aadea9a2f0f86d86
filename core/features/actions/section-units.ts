import { assumedFlourGrams } from '../../facts/formula-words.ts';
import type { SectionModel } from '../../model/formula-model.ts';
import { elementAt, entryOf } from '../../text/element.ts';
import { message } from '../../words/message.ts';
import type { Action, ActionContext } from './action.ts';
import { sectionAt, solvedLines } from './action-places.ts';
import { editsKeeping, type WholeFormula, wholeFormula } from './after.ts';
import { exactMass, exactPercent } from './exact-figures.ts';
import { LineChanges } from './line-changes.ts';
import { layoutOf } from './line-layout.ts';
import { writeAmount } from './rewriting.ts';

export const inGrams: Action = {
  id: 'section-in-grams',
  kind: 'rewrite',
  name: 'Write a section in grams',
  explanation:
    'Every percent, `balance` and `to N% hydration` of the section at the cursor becomes the weight it has in this batch. A yield ' +
    'stays: it says the same. Without one the weights are those for 1 kg of flour.',
  example: 'formula Quay Tin:\n  yield 10 kg\n  bread flour        100%\n  ‸water              65%\n',
  *offers(context) {
    const at = wholeSection(context);
    if (at === undefined || at.section.lines.every(({ statement }) => !isShare(statement.amount.kind)))
      return;
    const name = nameOf(at);
    yield {
      title: at.solved.assumedScale
        ? message('section-units.grams-for', { name, grams: assumedFlourGrams })
        : message('section-units.grams', { name }),
      edits: () => {
        const changes = new LineChanges(context);
        for (const line of at.section.lines) {
          const { kind } = line.statement.amount;
          if (isShare(kind)) writeAmount(changes, line, exactMass(entryOf(at.lines, line.id).grams!));
        }
        return editsKeeping(context, changes);
      },
    };
  },
};

export const inPercent: Action = {
  id: 'section-in-percent',
  kind: 'rewrite',
  name: 'Write a section in percent',
  explanation:
    'Every mass, volume and number of pieces of the section at the cursor becomes percent of its flour, or of its heaviest line ' +
    'where it has no flour. Where nothing else says how much is made, a `yield from` so much flour keeps the batch as large as ' +
    'it was.',
  example: 'formula Quay Tin:\n  bread flour        500 g\n  ‸water              325 g\n',
  *offers(context) {
    const at = wholeSection(context);
    if (at === undefined || at.section.lines.every(({ statement }) => !isMeasured(statement.amount.kind)))
      return;
    yield {
      title: message('section-units.percent', { name: nameOf(at) }),
      edits: () => percentEdits(context, at),
    };
  },
};

interface WholeSection extends WholeFormula {
  readonly section: SectionModel;
  readonly lines: ReturnType<typeof solvedLines>;
}

function wholeSection(context: ActionContext): WholeSection | undefined {
  const section = sectionAt(context);
  const whole = section === undefined ? undefined : wholeFormula(context);
  if (section === undefined || whole === undefined || section.lines.length === 0) return undefined;
  const lines = solvedLines(context, section);
  const isWhole = section.lines.every(
    ({ id, statement }) => lines.get(id)?.grams !== undefined && !('aPiece' in statement.amount),
  );
  return isWhole ? { ...whole, section, lines } : undefined;
}

function percentEdits(context: ActionContext, { section, lines, solved, analysis }: WholeSection) {
  const changes = new LineChanges(context);
  const grams = section.lines.map(({ id }) => entryOf(lines, id).grams!);
  const flour = section.lines.reduce(
    (sum, { id }, index) => sum + (entryOf(lines, id).isFlour ? elementAt(grams, index) : 0),
    0,
  );
  const base = flour > 0 ? flour : Math.max(...grams);
  if (!(base > 0)) return undefined;
  for (const [index, line] of section.lines.entries()) {
    const { amount } = line.statement;
    if (amount.kind === 'balance' || amount.kind === 'hydration' || amount.kind === 'remaining') continue;
    const fraction = elementAt(grams, index) / base;
    if (amount.kind !== 'fraction' || Math.abs(amount.fraction - fraction) > 1e-12)
      writeAmount(changes, line, exactPercent(fraction));
  }
  const isDough = section.kind === 'formula';
  if (isDough && analysis.resolved.input.yield === undefined && solved.flourGrams !== undefined)
    changes.addBelow(
      section.headerLine,
      `${layoutOf(section).indent}yield from ${exactMass(solved.flourGrams)} flour`,
    );
  return editsKeeping(context, changes);
}

const nameOf = ({ section, analysis }: WholeSection): string =>
  section.name?.text ?? analysis.resolved.model.name.text;

const isShare = (kind: string): boolean => ['fraction', 'balance', 'hydration'].includes(kind);
const isMeasured = (kind: string): boolean => ['mass', 'volume', 'count'].includes(kind);
