import { experimentOf } from '../../analysis/experiment-analysis.ts';
import { planOf } from '../../analysis/plan-analysis.ts';
import { bareAmount } from '../../model/bare-amount.ts';
import { lineId } from '../../model/formula-model.ts';
import { partTakenWhole } from '../../model/taken-part.ts';
import { isVariant, wholeBlock, wholeOf } from '../../model/variant.ts';
import { holdsMergeMarks } from '../../syntax/merge-marks.ts';
import type { LineFix, SyntaxProblem } from '../../syntax/syntax-problem.ts';
import type { Block, ParsedLine } from '../../syntax/tree.ts';
import { elementAt } from '../../text/element.ts';
import { foldName } from '../../text/names.ts';
import { message } from '../../words/message.ts';
import { type AcceptUse, acceptsOf, judgeAccepts } from '../notation/accepts.ts';
import { notesFix } from '../notation/kitchen-notes.ts';
import { keepingTrials } from '../trials/kept-programme.ts';
import type { BlockFinding, RuleContext, RuleFinding, RuleFix } from './rule.ts';
import { rules, rulesByCode } from './rule-catalogue.ts';
import { findingsOfVariant } from './variant-findings.ts';

export type { BlockFinding } from './rule.ts';

export interface BlockFindings {
  /** Sorted by line. */
  readonly findings: readonly BlockFinding[];
  /** Rules that failed, for the log: findings of theirs are missing and nothing else. */
  readonly failures: readonly string[];
}

/**
 * All that is to be said of a block: how its lines are written, then what the rules find on lines that read well. It
 * depends on the block and on what the scope answers, and on nothing else. Never throws.
 */
export function checkBlock(given: RuleContext): BlockFindings {
  const own = given.block;
  const failures: string[] = [];
  const plan = given.plan ?? guarded('the plan', failures, () => planOf(own, given.scope));
  const experiment =
    given.experiment ?? guarded('the experiment', failures, () => experimentOf(own, given.scope));
  const planned = {
    ...given,
    ...(plan === undefined ? {} : { plan }),
    ...(experiment === undefined ? {} : { experiment }),
  };
  const context = asRead(planned);
  const { block } = context;
  const written = guarded('the reading of lines', failures, () => writingOf(planned)) ?? new Map();
  const found: BlockFinding[] = [...written.values()];
  // Where the lines of both sides of a merge stand, what follows from them together is nothing that anybody wrote.
  for (const rule of holdsMergeMarks(own) ? [] : rules) {
    const { check, mendsSlips } = rule;
    if (check === undefined) continue;
    // What mends a slip of writing changes no bread, and so nothing that a trial was run on.
    const kept = (one: RuleFinding): RuleFinding => (mendsSlips === true ? one : keepingTrials(context, one));
    try {
      for (const one of check(context))
        if (!written.has(one.line) && one.line < block.lines.length)
          found.push(findingOf(rule.code, onPlainLines(block, kept(one))));
    } catch (error) {
      failures.push(failureOf(rule.code, error));
    }
  }
  const accepts = acceptsOf(block);
  const here = found.filter((one) => !isAccepted(one, accepts));
  const whole = wholeOf(block);
  const left =
    whole === undefined
      ? here
      : findingsOfVariant(whole, here, given.scope, (base) => checkBlock(base).findings).filter(
          (one) => !isAccepted(one, accepts),
        );
  const ownAccepts = accepts.filter(({ line }) => line < own.lines.length);
  const judged = holdsMergeMarks(own)
    ? []
    : guarded('accepts', failures, () => judgeAccepts(own, ownAccepts));
  for (const one of judged ?? []) {
    if (!written.has(one.line)) left.push(findingOf(one.code, one));
  }
  return { findings: left.sort(byPlace), failures };
}

/**
 * The block as rules see it: a variant with all that it takes of its base. Where that cannot be found, its own lines alone say
 * nothing of the formula, so that one finding tells it and no other follows from it.
 */
function asRead(context: RuleContext): RuleContext {
  const { analysis, ...rest } = context;
  if (!isVariant(context.block)) return analysis?.resolved.unfinishedMerge === true ? rest : context;
  const whole = analysis?.resolved.model.block ?? wholeBlock(context.block, context.scope);
  return analysis === undefined ||
    analysis.resolved.baseProblem !== undefined ||
    analysis.resolved.unfinishedMerge === true
    ? { ...rest, block: whole }
    : { ...rest, analysis, block: whole };
}

function guarded<T>(what: string, failures: string[], work: () => T): T | undefined {
  try {
    return work();
  } catch (error) {
    failures.push(failureOf(what, error));
    return undefined;
  }
}

function failureOf(what: string, error: unknown): string {
  return `${what}: ${error instanceof Error ? error.message : String(error)}`;
}

function findingOf(code: string, one: RuleFinding): BlockFinding {
  return {
    code,
    level: one.level ?? rulesByCode.get(code)?.level ?? 'error',
    line: one.line,
    span: { start: one.span.start, end: one.span.end },
    message: one.message,
    related: one.related ?? [],
    fixes: one.fixes ?? [],
    ...(one.unused === undefined ? {} : { unused: one.unused }),
  };
}

const rank = new Map(rules.map((rule, index) => [rule.code, index]));

function byPlace(one: BlockFinding, other: BlockFinding): number {
  if (one.line !== other.line) return one.line - other.line;
  const order = (rank.get(one.code) ?? 0) - (rank.get(other.code) ?? 0);
  return order !== 0 ? order : one.span.start - other.span.start;
}

function isAccepted(one: BlockFinding, accepts: readonly AcceptUse[]): boolean {
  let accepted = false;
  for (const accept of accepts) {
    if (accept.target !== one.line || accept.isWritingError || accept.code !== one.code) continue;
    accept.used = true;
    accepted = true;
  }
  return accepted;
}

/** How lines are written: at most one finding a line, by line. */
function writingOf(context: RuleContext): Map<number, BlockFinding> {
  const { block } = context;
  const written = new Map<number, BlockFinding>();
  const add = (line: number, problem: SyntaxProblem): void => {
    if (written.has(line)) return;
    const fixes = [
      ...problem.fixes.map((fix) => fixOf(line, fix)),
      ...joiningAbove(block, line, problem),
      ...movingUp(block, line, problem),
      ...puttingBelowHeader(block, line, problem),
    ];
    if (problem.code === 'outside-section') {
      const fix = notesFix(block, line, context.uri, context.scope);
      if (fix !== undefined) fixes.push(fix);
    }
    written.set(line, findingOf(problem.code, { line, span: problem.span, message: problem.message, fixes }));
  };
  let isOutside = false;
  block.lines.forEach((parsed, line) => {
    for (const problem of parsed.problems) {
      // What stands above the first section is told once, and not at all below a header that only lacks its name.
      if (problem.code === 'outside-section' && isOutside) continue;
      isOutside ||= problem.code === 'outside-section' || problem.code === 'missing-name';
      if (problem.unlessKnown === undefined || !isOtherwise(context, line, parsed, problem.unlessKnown))
        add(line, ofPartTaken(block, parsed, problem) ?? inUnitMeant(block, line, problem));
      else if (parsed.otherwise?.amount.kind === 'unknown') add(line, missingAmount(parsed.otherwise.name));
    }
  });
  for (const problem of block.problems) add(problem.line, problem);
  return written;
}

/** A number without a unit that is what the others of its section are: the fix that says so is then the one offered. */
function inUnitMeant(block: Block, line: number, problem: SyntaxProblem): SyntaxProblem {
  const [percent, grams] = problem.fixes;
  if (problem.code !== 'missing-unit' || percent === undefined || grams === undefined) return problem;
  const meant = bareAmount(block, line);
  if (meant === undefined) return problem;
  if (meant.kind === 'fraction') return { ...problem, fixes: [{ ...percent, preferred: true }, grams] };
  return {
    ...problem,
    fixes: [
      { ...grams, preferred: true },
      { title: percent.title, edits: percent.edits },
    ],
  };
}

/** `biga` without an amount, where a part is called so: all of it goes in, which is written `remaining`. */
function ofPartTaken(
  block: Block,
  { statement, text }: ParsedLine,
  { code }: SyntaxProblem,
): SyntaxProblem | undefined {
  if (code !== 'missing-amount' || statement.kind !== 'ingredient') return undefined;
  const name = partTakenWhole(block, text, statement);
  if (name === undefined) return undefined;
  const span = { start: statement.name.start, end: statement.name.end };
  const meant = `${name.text}  remaining`;
  const edits = [{ ...span, insert: meant }];
  const said = message('missing-amount.part', { name: name.text, example: meant });
  return {
    code,
    message: said,
    span,
    fixes: [{ title: message('fix.write', { meant }), edits, preferred: true }],
  };
}

/** The lines of a `dough:` behind the parts, put where a formula has them: below its own header. */
function movingUp({ lines, top, subs }: Block, line: number, { movesUp }: SyntaxProblem): RuleFix[] {
  if (movesUp !== true || top?.kind !== 'formula') return [];
  const sub = subs.find(({ headerLine }) => headerLine === line);
  if (sub === undefined) return [];
  const isBlank = (at: number): boolean => elementAt(lines, at).text.trim() === '';
  let last = sub.endLine - 1;
  while (last > line && isBlank(last)) last--;
  let end = top.endLine - 1;
  while (end > top.headerLine && isBlank(end)) end--;
  const moved = lines.slice(line + 1, last + 1).map(({ text }) => `\n${text}`);
  const at = elementAt(lines, end).text.length;
  const before = elementAt(lines, line - 1).text.length;
  const edits = [
    { line: end, start: at, end: at, insert: moved.join('') },
    { line: line - 1, start: before, endLine: last, end: elementAt(lines, last).text.length, insert: '' },
  ];
  return [{ title: message('fix.move-below-formula'), edits, preferred: true }];
}

/** What a line of a section says of its formula, put below the formula’s header; a note where that says it already. */
function puttingBelowHeader(
  block: Block,
  line: number,
  { ofFormula: meant, span }: SyntaxProblem,
): RuleFix[] {
  const { lines, top } = block;
  if (meant === undefined || top?.kind !== 'formula') return [];
  const own = lines.slice(top.headerLine + 1, top.endLine);
  const isSaid = own.some(
    ({ statement }) => statement.kind === 'property' && meant.startsWith(`${statement.property} `),
  );
  const here = { line, start: span.start, end: span.start, insert: 'note ' };
  if (isSaid) return [{ title: message('fix.make-note'), edits: [here], preferred: true }];
  const at = elementAt(lines, top.headerLine).text.length;
  const before = elementAt(lines, line - 1).text.length;
  const edits = [
    { line: top.headerLine, start: at, end: at, insert: `\n  ${meant}` },
    { line: line - 1, start: before, endLine: line, end: elementAt(lines, line).text.length, insert: '' },
  ];
  return [{ title: message('fix.write-below-formula', { meant }), edits, preferred: true }];
}

/** A finding without the fixes that would write into a line which says several in other words. */
function onPlainLines(block: Block, one: RuleFinding): RuleFinding {
  const touches = (line: number): boolean => block.lines[line]?.further !== undefined;
  const fixes = one.fixes?.filter(({ edits }) => !edits.some(({ line }) => touches(line)));
  return fixes === undefined || fixes.length === one.fixes?.length ? one : { ...one, fixes };
}

/** What belongs to a step, put behind the one above where that takes a time and so can hold it. */
function joiningAbove(block: Block, line: number, { joinsAbove: start }: SyntaxProblem): RuleFix[] {
  const above = block.lines[line - 1];
  if (start === undefined || above?.statement.kind !== 'step' || above.statement.seconds === undefined)
    return [];
  if (above.tokens.some(({ kind }) => kind === 'comment')) return [];
  const edit = {
    line: line - 1,
    start: above.text.trimEnd().length,
    endLine: line,
    end: start,
    insert: ', ',
  };
  return [{ title: message('fix.put-behind-step-above'), edits: [edit], preferred: true }];
}

/** Whether the other reading of a line holds, as the resolved formula takes it. */
function isOtherwise(
  { analysis, scope, block }: RuleContext,
  line: number,
  parsed: ParsedLine,
  name: string,
): boolean {
  if (parsed.otherwise?.kind === 'ingredient')
    return analysis?.resolved.statements.get(lineId(line)) === parsed.otherwise;
  return block.top?.kind === 'plan' && scope.find('formula', foldName(name)).length > 0;
}

function missingAmount(name: { text: string; start: number; end: number }): SyntaxProblem {
  const said = message('missing-amount.none', { name: name.text, example: `${name.text}  4%` });
  return { code: 'missing-amount', message: said, span: { start: name.start, end: name.end }, fixes: [] };
}

function fixOf(line: number, fix: LineFix): RuleFix {
  const edits = fix.edits.map((edit) => ({ line, start: edit.start, end: edit.end, insert: edit.insert }));
  return fix.preferred === undefined
    ? { title: fix.title, edits }
    : { title: fix.title, edits, preferred: fix.preferred };
}
