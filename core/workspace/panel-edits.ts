import type { Analysis } from '../analysis/analysis.ts';
import type { ActionContext } from '../features/actions/action.ts';
import { LineChanges } from '../features/actions/line-changes.ts';
import { logReading, type ReadingToLog } from '../features/actions/log-reading.ts';
import { editsAt } from '../features/actions/offers.ts';
import { taughtMixer, teachMixer } from '../features/actions/teach-mixer.ts';
import type { Scope } from '../model/scope.ts';
import { presentProgramme } from '../rules/trials/kept-programme.ts';
import { applyOptions, type KeepEdit } from '../sheet/build/apply-options.ts';
import type { SheetOptions } from '../sheet/build/sheet-options.ts';
import type { Block, SourceFile } from '../syntax/tree.ts';
import { type FileEdit, inOrder, type TextEdit, withEdits } from '../text/edits.ts';
import { message } from '../words/message.ts';
import { isRefusal, type Refusal } from '../words/refusal.ts';
import { isWhatIf, triedFormula } from './what-if.ts';

/** A change of the files that is asked for on a batch sheet. */
export type PanelChange =
  | { readonly kind: 'reading'; readonly reading: ReadingToLog }
  | { readonly kind: 'keep'; readonly asked: SheetOptions }
  /** What the trial at this line of the file says is written into its mixer. */
  | { readonly kind: 'teach'; readonly line: number };

export interface ChangedFormula {
  readonly uri: string;
  readonly block: Block;
  readonly firstLine: number;
  readonly analysis: Analysis | undefined;
  readonly scope: Scope;
  readonly sourceOf: (uri: string) => SourceFile | undefined;
  /** Whoever asks for an action at a line of the file, else at the header of the formula. */
  readonly context: (line?: number) => ActionContext | undefined;
}

/** The edits of a change, with the line ends of each file, or why there are none. */
export function panelEdits(formula: ChangedFormula, change: PanelChange): readonly FileEdit[] | Refusal {
  const { uri, block, firstLine, analysis, sourceOf } = formula;
  if (analysis === undefined) return notThere;
  // A reading is written into the formula's own text, be it a variant.
  const model = { ...analysis.resolved.model, block };
  if (change.kind === 'reading') {
    const logged = logReading(model, change.reading, presentProgramme(analysis, change.reading.mixer));
    if (isRefusal(logged)) return logged;
    const inFile = logged.map((edit) => ({ ...edit, line: edit.line + firstLine }));
    return [{ uri, edits: inFile.map((edit) => withEnding(edit, sourceOf(uri))) }];
  }
  if (change.kind === 'teach') return taughtEdits(formula, change.line);
  return isWhatIf(change.asked)
    ? whatIfEdits(formula, analysis, change.asked)
    : keptEdits(formula, analysis, change.asked);
}

/** The same as the action at the trial writes. */
function taughtEdits({ context, sourceOf }: ChangedFormula, line: number): readonly FileEdit[] | Refusal {
  const there = context(line);
  const files =
    there === undefined ? undefined : editsAt(there, teachMixer.id, taughtMixer(there)?.name.folded);
  if (files === undefined) return { refused: message('teach-mixer.nothing') };
  return files.map(({ uri, edits }) => ({
    uri,
    edits: edits.map((edit) => withEnding(edit, sourceOf(uri))),
  }));
}

function keptEdits(
  { uri, firstLine, scope, sourceOf }: ChangedFormula,
  analysis: Analysis,
  asked: SheetOptions,
): readonly FileEdit[] | Refusal {
  const edits = applyOptions(uri, firstLine, analysis, scope, asked);
  return isRefusal(edits) ? edits : byFile(edits, sourceOf);
}

/**
 * What is tried of the formula itself, and on top of it all else that is asked for: what the second writes into the lines that the
 * first leave comes out as one change of each line.
 */
function whatIfEdits(
  formula: ChangedFormula,
  analysis: Analysis,
  asked: SheetOptions,
): readonly FileEdit[] | Refusal {
  const { uri, firstLine, scope, sourceOf } = formula;
  const source = sourceOf(uri);
  const context = formula.context();
  const { mixer, ...day } = asked.today ?? {};
  const tried =
    context === undefined
      ? undefined
      : triedFormula(context, asked.whatIf ?? {}, { inOtherMixer: mixer !== undefined });
  if (source === undefined || tried === undefined) return notThere;
  if (tried.notDone.length > 0) return { refused: message('paragraph.of', { parts: tried.notDone }) };
  const inFormula = applyOptions(uri, firstLine, tried.analysis, scope, {
    ...(asked.size === undefined ? {} : { size: asked.size }),
    ...(mixer === undefined ? {} : { today: { mixer } }),
  });
  const inBakery = applyOptions(uri, firstLine, analysis, scope, { today: day });
  const changes = new LineChanges({ uri, source, firstLine: 0 });
  const lines = tried.lines.map((texts) => [...texts]);
  for (const refusal of [inFormula, inBakery])
    if (isRefusal(refusal) && refusal.refused.code !== 'asked.stands-already') return refusal;
  // Where each line stands in what the formula has become.
  const places = lines.flatMap((texts, line) => texts.map((_, index) => ({ line, index })));
  for (const edit of lastFirst(isRefusal(inFormula) ? [] : inFormula)) {
    const place = places[edit.line - firstLine];
    const texts = place === undefined ? undefined : lines[place.line];
    const text = place === undefined ? undefined : texts?.[place.index];
    if (place === undefined || texts === undefined || text === undefined) return notThere;
    texts[place.index] = withEdits(text, [{ ...edit, line: 0 }]);
  }
  for (const [line, texts] of lines.entries())
    if (texts.length !== 1 || texts[0] !== changes.text(firstLine + line))
      changes.replace(firstLine + line, ...texts.flatMap((text) => text.split('\n')));
  const others: KeepEdit[] = [];
  for (const edit of lastFirst(isRefusal(inBakery) ? [] : inBakery)) {
    if (edit.uri !== uri) others.push(edit);
    else changes.editBelow(edit);
  }
  const made = changes.edits();
  if (made === undefined && others.length === 0) return { refused: message('asked.stands-already') };
  return [...(made ?? []), ...byFile(others, sourceOf)];
}

function lastFirst<T extends TextEdit>(edits: readonly T[]): T[] {
  return inOrder(edits).reverse();
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

export const notThere: Refusal = { refused: message('panel.formula-removed') };

/** An edit with the line ends of its file. */
export function withEnding(edit: TextEdit, source: SourceFile | undefined): TextEdit {
  return { ...edit, insert: edit.insert.replaceAll('\n', source?.endings[0] || '\n') };
}
