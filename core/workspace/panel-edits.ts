import type { Analysis } from '../analysis/analysis.ts';
import { logReading, type ReadingToLog } from '../features/actions/log-reading.ts';
import type { Scope } from '../model/scope.ts';
import { presentProgramme } from '../rules/trials/kept-programme.ts';
import { applyOptions } from '../sheet/build/apply-options.ts';
import type { SheetOptions } from '../sheet/build/sheet-options.ts';
import type { Block, SourceFile } from '../syntax/tree.ts';
import type { FileEdit, TextEdit } from '../text/edits.ts';
import { message } from '../words/message.ts';
import { isRefusal, type Refusal } from '../words/refusal.ts';

/** A change of the files that is asked for on a batch sheet. */
export type PanelChange =
  | { readonly kind: 'reading'; readonly reading: ReadingToLog }
  | { readonly kind: 'keep'; readonly asked: SheetOptions };

export interface ChangedFormula {
  readonly uri: string;
  readonly block: Block;
  readonly firstLine: number;
  readonly analysis: Analysis | undefined;
  readonly scope: Scope;
  readonly sourceOf: (uri: string) => SourceFile | undefined;
}

/** The edits of a change, with the line ends of each file, or why there are none. */
export function panelEdits(formula: ChangedFormula, change: PanelChange): readonly FileEdit[] | Refusal {
  const { uri, block, firstLine, analysis, scope, sourceOf } = formula;
  if (analysis === undefined) return notThere;
  // A reading is written into the formula's own text, be it a variant.
  const model = { ...analysis.resolved.model, block };
  if (change.kind === 'reading') {
    const edit = logReading(model, change.reading, presentProgramme(analysis, change.reading.mixer));
    if (isRefusal(edit)) return edit;
    return [{ uri, edits: [withEnding({ ...edit, line: edit.line + firstLine }, sourceOf(uri))] }];
  }
  const edits = applyOptions(uri, firstLine, analysis, scope, change.asked);
  if (isRefusal(edits)) return edits;
  const files = [...new Set(edits.map((edit) => edit.uri))];
  return files.map((file) => ({
    uri: file,
    edits: edits
      .filter((edit) => edit.uri === file)
      .map(({ uri: _, ...edit }) => withEnding(edit, sourceOf(file)))
      .sort((one, other) => one.line - other.line || one.start - other.start),
  }));
}

export const notThere: Refusal = { refused: message('panel.formula-removed') };

function withEnding(edit: TextEdit, source: SourceFile | undefined): TextEdit {
  return { ...edit, insert: edit.insert.replaceAll('\n', source?.endings[0] || '\n') };
}
