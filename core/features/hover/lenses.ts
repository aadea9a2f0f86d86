import type { Analysis } from '../../analysis/analysis.ts';
import type { PlanAnalysis } from '../../analysis/plan-analysis.ts';
import { makesMessages, shortFacts } from '../../facts/formula-words.ts';
import { planTimes } from '../../facts/plan-times.ts';
import { mentionsOf } from '../../model/mentions.ts';
import { propertiesOf } from '../../model/properties.ts';
import type { Block, Name, SourceFile } from '../../syntax/tree.ts';
import type { Place } from '../../text/span.ts';
import type { Steps } from '../../text/steps.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { usesMessage } from '../names/call-hierarchy.ts';
import { type NameBook, nameAt, placeOfUse, usesOf } from '../names/name-book.ts';
import type { Reference } from '../names/references.ts';

/** A line of words above a header. */
export type Lens =
  | { readonly kind: 'totals'; readonly place: Place; readonly text: string }
  /** The doughs of an experiment, which leads to its sheet and its bench. */
  | { readonly kind: 'experiment'; readonly place: Place; readonly text: string }
  /** Over a plan: how late it is, to open it. */
  | { readonly kind: 'plan'; readonly place: Place; readonly text: string }
  /** Who uses what the header defines is counted when the lens is seen. */
  | { readonly kind: 'uses'; readonly place: Place };

/** Who uses a definition. */
export interface Uses {
  readonly text: string;
  readonly references: readonly Reference[];
}

/** What formulas and plans come to. */
export interface WorkedOut {
  readonly analysisOf: (block: Block) => Analysis | undefined;
  readonly planOf: (block: Block) => PlanAnalysis | undefined;
}

/** The totals over each formula, each plan to be opened, and a place for who uses it over each definition that others can use. */
export function lensesOf(
  book: NameBook,
  uri: string,
  file: SourceFile,
  { analysisOf, planOf }: WorkedOut,
  speaker: Speaker,
): Lens[] {
  const namedHere = namedIn(file);
  return file.blocks.flatMap(({ block, firstLine }): Lens[] => {
    const { top } = block;
    const name = top?.header.name;
    if (top === undefined || name === undefined || name.folded === '') return [];
    const place = { line: firstLine + top.headerLine, start: name.start, end: name.end };
    if (top.kind === 'experiment') {
      const count = propertiesOf(block, top).get('dough')?.length ?? 0;
      return count === 0
        ? []
        : [{ kind: 'experiment', place, text: speaker.say(message('experiment.lens', { count })) }];
    }
    // Most formulas are made for themselves, and nothing is said over those.
    const isUsable = ['flour', 'ingredient', 'mixer'].includes(top.kind);
    const isUsed = top.kind === 'formula' && isNamedElsewhere(book, uri, namedHere, name);
    const used: Lens[] = isUsable || isUsed ? [{ kind: 'uses', place }] : [];
    const plan = top.kind === 'plan' ? planOf(block) : undefined;
    if (plan !== undefined)
      return plan.formulas.length === 0
        ? []
        : [{ kind: 'plan', place, text: speaker.say(planMessage(plan)) }];
    const analysis = top.kind === 'formula' ? analysisOf(block) : undefined;
    const totals = analysis === undefined ? undefined : totalsMessage(analysis);
    return totals === undefined ? used : [{ kind: 'totals', place, text: speaker.say(totals) }, ...used];
  });
}

function planMessage(plan: PlanAnalysis): Message {
  const { lateMinutes } = planTimes(plan);
  return lateMinutes === undefined
    ? message('lens.plan')
    : message('lens.plan-late', { seconds: lateMinutes * 60 });
}

function isNamedElsewhere(
  book: NameBook,
  uri: string,
  namedHere: ReadonlySet<string>,
  { folded }: Name,
): boolean {
  return namedHere.has(folded) || book.mentioning(folded).some((other) => other !== uri);
}

/** Every name that lines of a file name from elsewhere. */
function namedIn(file: SourceFile): ReadonlySet<string> {
  const named = new Set<string>();
  for (const { block } of file.blocks)
    for (const { name, use } of mentionsOf(block))
      if (use !== 'definition' && use !== 'part') named.add(name.folded);
  return named;
}

function totalsMessage({ solved }: Analysis): Message | undefined {
  if (solved === undefined || shortFacts(solved).length === 0) return undefined;
  // Hydration and dough stand in the header itself, as its hint.
  const parts: Message[] = [];
  const { flourGrams, prefermentedFlour, pieces } = solved;
  if (flourGrams !== undefined) parts.push(message('totals.flour', { grams: flourGrams }));
  if (prefermentedFlour !== undefined && prefermentedFlour > 0)
    parts.push(message('totals.prefermented', { fraction: prefermentedFlour }));
  const [makes] = pieces === undefined ? [] : makesMessages(solved);
  if (makes !== undefined) parts.push(makes);
  return parts.length === 0 ? message('totals.sheet') : message('totals.line', { parts });
}

/** Who uses what the header at a place defines: by amount, as a base or as a machine. */
export function* usesAt(
  book: NameBook,
  uri: string,
  line: number,
  column: number,
  speaker: Speaker,
): Steps<Uses | undefined> {
  const target = nameAt(book, uri, line, column);
  if (target === undefined || target.mention.use !== 'definition') return undefined;
  const counted = ['line', 'planned', 'like', 'mixer'];
  const uses = (yield* usesOf(book, target)).filter(({ mention }) => counted.includes(mention.use));
  return {
    text: speaker.say(usesMessage(uses)),
    references: uses.map((use) => ({ uri: use.at.uri, place: placeOfUse(book, use) })),
  };
}
