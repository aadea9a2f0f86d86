import type { Analysis } from '../analysis/analysis.ts';
import { logReading, type ReadingToLog } from '../features/actions/log-reading.ts';
import { formulaOf } from '../model/formula-model.ts';
import type { Scope } from '../model/scope.ts';
import { presentProgramme } from '../rules/trials/kept-programme.ts';
import { applyOptions } from '../sheet/build/apply-options.ts';
import type { SheetOptions } from '../sheet/build/sheet-options.ts';
import type { Block, SourceFile } from '../syntax/tree.ts';
import type { FileEdit, TextEdit } from '../text/edits.ts';
import { message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';

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

/** The edits of a change, with the line ends of each file, or a sentence that says why there are none. */
export function panelEdits(
  formula: ChangedFormula,
  change: PanelChange,
  speaker: Speaker,
): readonly FileEdit[] | string {
  const { uri, block, firstLine, analysis, scope, sourceOf } = formula;
  const model = formulaOf(block);
  if (model === undefined || analysis === undefined) return speaker.say(notThere);
  if (change.kind === 'reading') {
    const logged = logReading(model, change.reading, presentProgramme(analysis, change.reading.mixer));
    if ('code' in logged) return speaker.say(logged);
    const inFile = logged.map((edit) => ({ ...edit, line: edit.line + firstLine }));
    return [{ uri, edits: inFile.map((edit) => withEnding(edit, sourceOf(uri))) }];
  }
  const edits = applyOptions(uri, firstLine, analysis, scope, change.asked);
  if ('code' in edits) return speaker.say(edits);
  const files = [...new Set(edits.map((edit) => edit.uri))];
  return files.map((file) => ({
    uri: file,
    edits: edits
      .filter((edit) => edit.uri === file)
      .map(({ uri: _, ...edit }) => withEnding(edit, sourceOf(file)))
      .sort((one, other) => one.line - other.line || one.start - other.start),
  }));
}

export const notThere = message('panel.formula-removed');

function withEnding(edit: TextEdit, source: SourceFile | undefined): TextEdit {
  return { ...edit, insert: edit.insert.replaceAll('\n', source?.endings[0] || '\n') };
}
