import type { Analysis } from '../analysis/analysis.ts';
import type { ActionContext, TextRange } from '../features/actions/action.ts';
import type { Examine } from '../features/actions/sound-edits.ts';
import type { Scope } from '../model/scope.ts';
import type { Finding } from '../rules/engine/finding.ts';
import { blockAt } from '../syntax/line-place.ts';
import type { Block, SourceFile } from '../syntax/tree.ts';

interface Asked {
  readonly uri: string;
  readonly source: SourceFile;
  readonly range: TextRange;
  readonly scope: Scope;
  readonly analysisOf: (block: Block) => Analysis | undefined;
  readonly findings: () => readonly Finding[];
  readonly examine: Examine;
  readonly fileOf: (uri: string) => SourceFile | undefined;
  readonly failed: (what: string) => void;
}

/** The context of whoever asks what can be done with a range of a file. */
export function actionContext(asked: Asked): ActionContext | undefined {
  const { source, range } = asked;
  const found = blockAt(source, range.line);
  if (found === undefined) return undefined;
  const { block, firstLine } = found;
  const isSelection = range.endLine > range.line || range.end > range.start;
  // An editor that selects whole lines ends the selection at the start of the line behind them.
  const endLine = range.endLine > range.line && range.end === 0 ? range.endLine - 1 : range.endLine;
  let findings: readonly Finding[] | undefined;
  return {
    uri: asked.uri,
    source,
    block,
    firstLine,
    line: range.line - firstLine,
    lastLine: Math.min(endLine - firstLine, block.lines.length - 1),
    column: range.start,
    isSelection,
    range,
    scope: asked.scope,
    analysis: () => asked.analysisOf(block),
    findings: () => {
      findings ??= asked.findings();
      return findings;
    },
    examine: asked.examine,
    fileOf: asked.fileOf,
    failed: asked.failed,
  };
}
