import { analyseBlock } from '../../analysis/analyse.ts';
import type { Definition, Scope } from '../../model/scope.ts';
import { originOf, type WholeBlock } from '../../model/variant.ts';
import { message } from '../../words/message.ts';
import type { BlockFinding, RelatedLine, RuleContext, RuleFix } from './rule.ts';
import { ownEdits } from './variant-edits.ts';

/**
 * The findings of a variant where its own text has room for them: those on a line of the base stand on the header, at the name
 * of the base, and point to that line. What the base has wrong itself, in the very same words, is told there and not here again.
 */
export function findingsOfVariant(
  whole: WholeBlock,
  found: readonly BlockFinding[],
  scope: Scope,
  check: (context: RuleContext) => readonly BlockFinding[],
): BlockFinding[] {
  const toldIn = new Map<Definition, ReadonlySet<string>>();
  const isTold = (definition: Definition, one: BlockFinding, line: number): boolean => {
    let told = toldIn.get(definition);
    if (told === undefined) {
      told = new Set(baseFindings(definition, scope, check).map((other) => keyOf(other, other.line)));
      toldIn.set(definition, told);
    }
    return told.has(keyOf(one, line));
  };
  return found.flatMap((one): BlockFinding[] => {
    const fixes = one.fixes.flatMap((fix): RuleFix[] => {
      const edits = ownEdits(whole, fix.edits);
      return edits === undefined ? [] : [{ ...fix, edits }];
    });
    const related = one.related.map((other) => placedInBase(whole, other));
    const origin = originOf(whole, one.line);
    if (origin === undefined) return [{ ...one, fixes, related }];
    if (isTold(origin.definition, one, origin.line)) return [];
    const { start, end } = whole.top.header.base ?? whole.top.header.keyword;
    const here = { ...origin, span: one.span, message: message('variant.line-of-base') };
    return [{ ...one, line: 0, span: { start, end }, fixes, related: [here, ...related] }];
  });
}

/** A line of the base that a finding points to, as that line. */
function placedInBase(whole: WholeBlock, related: RelatedLine): RelatedLine {
  if (related.definition !== undefined) return related;
  const origin = originOf(whole, related.line);
  return origin === undefined
    ? related
    : { definition: origin.definition, line: origin.line, span: related.span, message: related.message };
}

function baseFindings(
  { uri, block }: Definition,
  scope: Scope,
  check: (context: RuleContext) => readonly BlockFinding[],
): readonly BlockFinding[] {
  const seen = scope.from(uri);
  const analysis = analyseBlock(block, seen);
  return check({
    uri,
    block,
    scope: seen,
    ...(analysis === undefined ? {} : { analysis }),
  });
}

function keyOf({ code, message: said }: BlockFinding, line: number): string {
  return `${line} ${code} ${JSON.stringify(said)}`;
}
