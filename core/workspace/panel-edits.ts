import type { Analysis } from '../analysis/analysis.ts';
import type { ActionContext } from '../features/actions/action.ts';
import { LineChanges } from '../features/actions/line-changes.ts';
import { logReading, type ReadingToLog } from '../features/actions/log-reading.ts';
import type { Scope } from '../model/scope.ts';
import { presentProgramme, programmeEdits, trialsToKeep } from '../rules/trials/kept-programme.ts';
import { applyOptions, type KeepEdit } from '../sheet/build/apply-options.ts';
import type { SheetOptions } from '../sheet/build/sheet-options.ts';
import type { Block, SourceFile } from '../syntax/tree.ts';
import { type FileEdit, type TextEdit, withEdits } from '../text/edits.ts';
import { type Message, message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';
import { isWhatIf, triedFormula } from './what-if.ts';

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
  /** Whoever asks for an action at the header of the formula. */
  readonly context: () => ActionContext | undefined;
}

/** The edits of a change, with the line ends of each file, or a sentence that says why there are none. */
export function panelEdits(
  formula: ChangedFormula,
  change: PanelChange,
  speaker: Speaker,
): readonly FileEdit[] | string {
  const { uri, block, firstLine, analysis, sourceOf } = formula;
  if (analysis === undefined) return speaker.say(notThere);
  // A reading is written into the formula's own text, be it a variant.
  const model = { ...analysis.resolved.model, block };
  if (change.kind === 'reading') {
    const edit = logReading(model, change.reading, presentProgramme(analysis, change.reading.mixer));
    if ('code' in edit) return speaker.say(edit);
    return [{ uri, edits: [withEnding({ ...edit, line: edit.line + firstLine }, sourceOf(uri))] }];
  }
  const edits = isWhatIf(change.asked)
    ? whatIfEdits(formula, analysis, change.asked)
    : keptEdits(formula, analysis, change.asked);
  return 'code' in edits ? speaker.say(edits) : edits;
}

function keptEdits(
  { uri, firstLine, scope, sourceOf }: ChangedFormula,
  analysis: Analysis,
  asked: SheetOptions,
): readonly FileEdit[] | Message {
  const edits = applyOptions(uri, firstLine, analysis, scope, asked);
  return 'code' in edits ? edits : byFile(edits, sourceOf);
}

/**
 * What is tried of the formula itself, and on top of it all else that is asked for: the edits of the second are made in the texts that
 * the first leave, and both come out as one change of each line. Trials that keep no programme keep the one that they ran.
 */
function whatIfEdits(
  formula: ChangedFormula,
  analysis: Analysis,
  asked: SheetOptions,
): readonly FileEdit[] | Message {
  const { uri, firstLine, scope, sourceOf } = formula;
  const source = sourceOf(uri);
  const context = formula.context();
  const tried = context === undefined ? undefined : triedFormula(context, asked.whatIf ?? {});
  if (source === undefined || tried === undefined) return notThere;
  if (tried.notDone.length > 0) return message('paragraph.of', { parts: tried.notDone });
  const rest = applyOptions(uri, firstLine, tried.analysis, scope, asked, analysis);
  if ('code' in rest && rest.code !== 'asked.stands-already') return rest;
  const later: KeepEdit[] = 'code' in rest ? [] : [...rest];
  if (tried.runsOtherwise && asked.today?.mixer === undefined)
    for (const edit of programmeEdits(analysis, trialsToKeep(analysis, scope)))
      later.push({ ...edit, uri, line: edit.line + firstLine });
  const changes = new LineChanges({ uri, source, firstLine: 0 });
  const own = later.filter((edit) => edit.uri === uri);
  const touched = new Set([
    ...[...tried.texts.keys()].map((line) => line + firstLine),
    ...own.map(({ line }) => line),
  ]);
  for (const line of touched) {
    const text = tried.texts.get(line - firstLine) ?? changes.text(line);
    const edits = own.filter((edit) => edit.line === line).map((edit) => ({ ...edit, line: 0 }));
    changes.replace(line, ...withEdits(text, inOrder(edits)).split('\n'));
  }
  const made = changes.edits();
  const others = later.filter((edit) => edit.uri !== uri);
  if (made === undefined && others.length === 0) return message('asked.stands-already');
  return [...(made ?? []), ...byFile(others, sourceOf)];
}

function byFile(edits: readonly KeepEdit[], sourceOf: ChangedFormula['sourceOf']): FileEdit[] {
  return [...new Set(edits.map((edit) => edit.uri))].map((file) => ({
    uri: file,
    edits: inOrder(
      edits
        .filter((edit) => edit.uri === file)
        .map(({ uri: _, ...edit }) => withEnding(edit, sourceOf(file))),
    ),
  }));
}

function inOrder<T extends TextEdit>(edits: readonly T[]): T[] {
  return [...edits].sort((one, other) => one.line - other.line || one.start - other.start);
}

export const notThere = message('panel.formula-removed');

function withEnding(edit: TextEdit, source: SourceFile | undefined): TextEdit {
  return { ...edit, insert: edit.insert.replaceAll('\n', source?.endings[0] || '\n') };
}
