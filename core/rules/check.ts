import { rules } from './catalogue.ts';
import type { RelatedLine, RuleContext, RuleFinding, RuleFix, RuleLevel } from './rule.ts';

/** One finding of a block; lines are counted in the block. */
export interface BlockFinding extends RuleFinding {
  readonly code: string;
  readonly level: RuleLevel;
  readonly related: readonly RelatedLine[];
  readonly fixes: readonly RuleFix[];
}

export interface BlockFindings {
  readonly findings: readonly BlockFinding[];
  /** What went wrong inside a rule, for the log. */
  readonly failures: readonly string[];
}

export function checkBlock(context: RuleContext): BlockFindings {
  const findings: BlockFinding[] = [];
  context.block.lines.forEach((parsed, line) => {
    for (const one of parsed.problems) {
      findings.push({
        code: one.code,
        level: 'error',
        line,
        span: one.span,
        message: one.message,
        related: [],
        fixes: one.fixes.map((fix) => ({ ...fix, edits: fix.edits.map((edit) => ({ ...edit, line })) })),
      });
    }
  });
  for (const rule of rules) {
    for (const finding of rule.check?.(context) ?? []) {
      findings.push({ related: [], fixes: [], ...finding, code: rule.code, level: rule.level });
    }
  }
  return { findings: findings.sort((one, other) => one.line - other.line), failures: [] };
}
