import type { Analysis } from '../../analysis/analysis.ts';
import type { FormulaProblem, FormulaProblemKind, LinePlace } from '../../calc/formula/formula-result.ts';
import { lineOfId } from '../../model/formula-model.ts';
import type { Amount, Block, QuantityKind, Section } from '../../syntax/tree.ts';
import type { Span } from '../../text/span.ts';
import type { Message } from '../../words/message.ts';
import type { RelatedLine, RuleContext } from './rule.ts';
import { wordsOf } from './rule-words.ts';

/** A place in a block: a line counted in it and columns of that line. */
export interface BlockPlace {
  readonly line: number;
  readonly span: Span;
}

/**
 * The problems of these kinds that stand in this block. What a formula used as an ingredient has wrong is told in
 * its own file and not here again; such ids begin with `F`.
 */
export function ownProblems(
  analysis: Analysis | undefined,
  ...kinds: readonly FormulaProblemKind[]
): FormulaProblem[] {
  return (analysis?.problems ?? []).filter((one) => kinds.includes(one.kind) && isOwn(one));
}

function isOwn(place: LinePlace): boolean {
  return !(place.lineId ?? place.sectionId).startsWith('F');
}

/** Where a place of the solver stands: the words of its line, or the name on its section's header. */
export function placeOf(block: Block, place: LinePlace): BlockPlace {
  if (place.lineId !== undefined) {
    const line = lineOfId(place.lineId);
    return { line, span: wordsOf(block, line) };
  }
  return headerPlace(block, lineOfId(place.sectionId));
}

/** Where the amount of an ingredient line stands. */
export function amountPlace(
  context: RuleContext,
  lineId: string,
): BlockPlace & { readonly amount: Amount | undefined } {
  const line = lineOfId(lineId);
  const amount = context.analysis?.resolved.statements.get(lineId)?.amount;
  if (amount === undefined || amount.end <= amount.start)
    return { line, span: wordsOf(context.block, line), amount };
  return { line, span: { start: amount.start, end: amount.end }, amount };
}

/** The name on a header, else its word. */
export function headerPlace(block: Block, line: number): BlockPlace {
  const statement = block.lines[line]?.statement;
  if (statement?.kind !== 'header') return { line, span: wordsOf(block, line) };
  const { start, end } = statement.name ?? statement.mixer ?? statement.keyword;
  return { line, span: { start, end } };
}

/** The first line that says a property of the dough's section, else the header of the formula. */
export function propertyPlace(context: RuleContext, word: string, sectionLine = 0): BlockPlace {
  const section = sectionsOf(context.block).find((one) => one.headerLine === sectionLine);
  for (let line = sectionLine + 1; section !== undefined && line < section.endLine; line++) {
    const statement = context.block.lines[line]?.statement;
    if (statement?.kind === 'property' && statement.property === word)
      return { line, span: wordsOf(context.block, line) };
  }
  return headerPlace(context.block, sectionLine);
}

/** All sections of a block, the one it begins with first. */
export function sectionsOf(block: Block): readonly Section[] {
  return block.top === undefined ? block.subs : [block.top, ...block.subs];
}

/** Related lines of this block, the ones of other files left out. */
export function relatedTo(
  block: Block,
  places: readonly LinePlace[] | undefined,
  message: Message,
): RelatedLine[] {
  return (places ?? []).filter(isOwn).map((place) => ({ ...placeOf(block, place), message }));
}

/** Where the first quantity of a kind stands in a line, from a column on. */
export function quantityPlace(block: Block, line: number, kind: QuantityKind, from = 0): Span | undefined {
  const token = block.lines[line]?.tokens.find((one) => one.quantity?.kind === kind && one.start >= from);
  return token === undefined ? undefined : { start: token.start, end: token.end };
}

/** A figure among the values of a problem; undefined where it is none. */
export function numberOf(value: FormulaProblem['values'][string] | undefined): number | undefined {
  return typeof value === 'number' && Number.isFinite(value) ? value : undefined;
}

/** Names among the values of a problem; none where it has none. */
export function namesOf(value: FormulaProblem['values'][string] | undefined): readonly string[] {
  return typeof value === 'object' ? value : [];
}
