import type { ActionContext } from '../features/actions/action.ts';
import type { CompletionKind } from '../features/answers.ts';
import { completionDetailOf } from '../features/completion/completion-detail.ts';
import { type SignatureAnswer, signaturesOf } from '../features/completion/signatures.ts';
import { type HintDetail, hintDetailOf } from '../features/hover/hint-detail.ts';
import type { SemanticToken } from '../features/outline/semantic-tokens.ts';
import type { Rule } from '../rules/engine/rule.ts';
import { blockAt } from '../syntax/line-place.ts';
import type { SourceFile } from '../syntax/tree.ts';
import type { RulePage } from '../words/rule-page-words.ts';
import type { Speaker } from '../words/speaker.ts';
import type { View } from './snapshot-view.ts';

/** The tokens of a stretch of a file, their lines counted from its first. The same text gives the same object again. */
export interface TokenStretch {
  readonly firstLine: number;
  readonly tokens: readonly SemanticToken[];
}

/** What an editor asks while somebody types. */
export interface Editing {
  /** What every word of a file is, in the order of the text; of the stretches that touch the lines, if any are named. */
  semanticTokens(uri: string, firstLine?: number, lastLine?: number): readonly TokenStretch[];
  /** The forms that the line may take, and what comes at the cursor. */
  signatures(uri: string, line: number, column: number): SignatureAnswer | undefined;
  /** More on a completion offered on a line, as Markdown. */
  completionDetail(uri: string, line: number, kind: CompletionKind, label: string): string | undefined;
  /** What the hint at the end of a line is, and the edits that write its figure into the line. */
  hintDetail(uri: string, line: number): HintDetail | undefined;
}

/**
 * `view` gives the snapshot asked about, `contextAt` what an action at a line may look at, `speaker` whoever words it now,
 * `pageOf` what the page of a rule says in the language of the reader.
 */
export function createEditing(
  view: () => View,
  contextAt: (uri: string, line: number) => ActionContext | undefined,
  speaker: () => Speaker,
  pageOf: (rule: Rule) => RulePage,
): Editing {
  const placedAt = (asked: View, uri: string, line: number) => {
    const found = asked.read(uri);
    return found === undefined ? undefined : blockAt(found.source, line);
  };
  return {
    semanticTokens: (uri, first = 0, last = Number.MAX_SAFE_INTEGER) => {
      const asked = view();
      return (asked.read(uri)?.source.blocks ?? []).flatMap(({ block, firstLine }) =>
        firstLine > last || firstLine + block.lines.length <= first
          ? []
          : [{ firstLine, tokens: asked.tokensOf({ uri, block, firstLine }) }],
      );
    },
    signatures: (uri, line, column) => {
      const asked = view();
      const at = placedAt(asked, uri, line);
      return at === undefined
        ? undefined
        : signaturesOf(at.block, line - at.firstLine, column, asked.scopeOf(uri), speaker());
    },
    completionDetail: (uri, line, kind, label) => {
      const asked = view();
      if (asked.read(uri) === undefined) return undefined;
      const place = {
        ...{ uri, block: placedAt(asked, uri, line)?.block, scope: asked.scopeOf(uri) },
        ...{ speaker: speaker(), pageOf },
        analysisOf: (of: { readonly uri: string; readonly block: SourceFile['blocks'][number]['block'] }) =>
          asked.analysisOf(of.uri, of.block),
      };
      return completionDetailOf(place, kind, label);
    },
    hintDetail: (uri, line) => {
      const context = contextAt(uri, line);
      return context === undefined ? undefined : hintDetailOf(context, speaker());
    },
  };
}
