import type { ActionKind, OfferedAction, TextRange } from '../features/actions/action.ts';
import { touches } from '../features/actions/action-places.ts';
import { formatEdits, formatTyped, type LineRange } from '../features/actions/format.ts';
import { editsAt, offersAt } from '../features/actions/offers.ts';
import { areSound, type Examine } from '../features/actions/sound-edits.ts';
import type { Completion, Fold, Hint, HoverAnswer, SymbolNode } from '../features/answers.ts';
import { completionsOf } from '../features/completion/completion.ts';
import { hintsOf } from '../features/hover/hints.ts';
import { hoverOf } from '../features/hover/hover.ts';
import { statusOf } from '../features/hover/status.ts';
import { foldsOf } from '../features/outline/folding-ranges.ts';
import { symbolsOf } from '../features/outline/symbols.ts';
import type { Finding } from '../rules/engine/finding.ts';
import { blockAt } from '../syntax/line-place.ts';
import type { FileEdit, TextEdit } from '../text/edits.ts';
import {
  actionsAround,
  examining,
  findingsOfFile,
  formulaAt,
  type Present,
  pageOf,
  readFile,
} from './present.ts';

/** What an editor asks about one file as it stands. */
export interface FileAnswers {
  findings(uri: string): readonly Finding[];
  /** The findings that a range touches, each with those of its fixes alone after which it is gone and no error is new. */
  findingsAt(uri: string, range: TextRange): readonly Finding[];
  hover(uri: string, line: number, column: number): HoverAnswer | undefined;
  hints(uri: string, firstLine: number, lastLine: number): readonly Hint[];
  symbols(uri: string): readonly SymbolNode[];
  completions(uri: string, line: number, column: number): readonly Completion[];
  folds(uri: string): readonly Fold[];
  /** What can be done at a range of a file, of the kinds asked for; what it writes is told by `actionEdits`. */
  actions(uri: string, range: TextRange, only?: readonly ActionKind[]): readonly OfferedAction[];
  /** What an action offered at the same range of the same text writes; `undefined` when it cannot be done. */
  actionEdits(uri: string, range: TextRange, id: string, argument?: string): readonly FileEdit[] | undefined;
  /** What brings a file, or some of its lines, into the canonical form; in order, none over another. */
  format(uri: string, range?: LineRange): readonly TextEdit[];
  /** What is put right behind somebody who types: `typed` is a line break or a colon, just before the column. */
  formatTyped(uri: string, line: number, column: number, typed: string): readonly TextEdit[];
  status(uri: string, line: number): { formula: string; text: string; tooltip: string } | undefined;
}

export function createFileAnswers(present: Present): FileAnswers {
  return {
    findings: (uri) => findingsOfFile(present, uri),
    findingsAt: (uri, range) => {
      const found = readFile(present, uri);
      if (found === undefined) return [];
      const examine = examining(found, uri);
      return findingsOfFile(present, uri)
        .filter(({ place }) => touches(place, range))
        .map((finding) => withSoundFixes(uri, finding, examine));
    },
    hover: (uri, line, column) => hover(present, uri, line, column),
    hints: (uri, first, last) => hints(present, uri, first, last),
    symbols: (uri) => {
      const found = readFile(present, uri);
      return found === undefined
        ? []
        : symbolsOf(found.source, (block) => found.view.analysisOf(uri, block), present.speaker());
    },
    completions: (uri, line, column) => completions(present, uri, line, column),
    folds: (uri) => {
      const found = readFile(present, uri);
      return found === undefined ? [] : foldsOf(found.source);
    },
    actions: (uri, range, only) => {
      const context = actionsAround(present, uri, range);
      return context === undefined ? [] : offersAt(context, present.speaker(), only);
    },
    actionEdits: (uri, range, id, argument) => {
      const context = actionsAround(present, uri, range);
      return context === undefined ? undefined : editsAt(context, id, argument);
    },
    format: (uri, range) => {
      const found = readFile(present, uri);
      return found === undefined ? [] : formatEdits(found.source, range);
    },
    formatTyped: (uri, line, column, typed) => {
      const found = readFile(present, uri);
      return found === undefined ? [] : formatTyped(found.source, line, column, typed);
    },
    status: (uri, line) => status(present, uri, line),
  };
}

/** A finding with those of its fixes alone after which it is gone and no error is new. */
function withSoundFixes(uri: string, finding: Finding, examine: Examine): Finding {
  const fixes = finding.fixes.filter(({ edits }) => areSound(uri, edits, [finding], examine));
  return fixes.length === finding.fixes.length ? finding : { ...finding, fixes };
}

function hover(present: Present, uri: string, line: number, column: number): HoverAnswer | undefined {
  const found = readFile(present, uri);
  const at = found === undefined ? undefined : blockAt(found.source, line);
  if (found === undefined || at === undefined) return undefined;
  const { block, firstLine } = at;
  const answer = hoverOf(
    block,
    line - firstLine,
    column,
    found.view.scopeOf(uri),
    found.view.analysisOf(uri, block),
    present.speaker(),
    () => found.view.planOf(uri, block),
  );
  if (answer === undefined) return undefined;
  const { span, ...said } = answer;
  return { place: { line, ...span }, ...said };
}

function hints(present: Present, uri: string, first: number, last: number): readonly Hint[] {
  const found = readFile(present, uri);
  if (found === undefined) return [];
  return found.source.blocks.flatMap(({ block, firstLine }) => {
    if (firstLine > last || firstLine + block.lines.length <= first) return [];
    const analysis = found.view.analysisOf(uri, block);
    const made = hintsOf(block, analysis, present.speaker());
    const shown = present.settings().keepsLastFigures
      ? present.lastWhole().hints(uri, block, analysis, made)
      : made;
    return shown
      .map((hint) => ({ ...hint, line: hint.line + firstLine }))
      .filter((hint) => hint.line >= first && hint.line <= last);
  });
}

function completions(present: Present, uri: string, line: number, column: number): readonly Completion[] {
  const found = readFile(present, uri);
  const at = found === undefined ? undefined : blockAt(found.source, line);
  if (found === undefined || at === undefined) return [];
  const foundOn = (lineOfBlock: number) =>
    findingsOfFile(present, uri).flatMap(({ code, place }) =>
      place.line === at.firstLine + lineOfBlock ? [code] : [],
    );
  const scope = found.view.scopeOf(uri);
  return completionsOf(at.block, line - at.firstLine, column, scope, present.speaker(), foundOn, (rule) =>
    pageOf(present, rule),
  ).map((one) => ({
    ...one,
    replace: { line, ...one.replace },
    ...(one.outdent === undefined ? {} : { outdent: { ...one.outdent, line } }),
  }));
}

function status(present: Present, uri: string, line: number): ReturnType<FileAnswers['status']> {
  const found = readFile(present, uri);
  const at = found === undefined ? undefined : formulaAt(found.source, line);
  const analysis = found === undefined || at === undefined ? undefined : found.view.analysisOf(uri, at.block);
  if (at === undefined || analysis === undefined) return undefined;
  const made = statusOf(analysis, present.speaker());
  return present.settings().keepsLastFigures
    ? present.lastWhole().status(uri, at.block, analysis, made, present.speaker())
    : made;
}
