import { nameOf } from '../facts/experiment-words.ts';
import { logTestedReading, type TestedReading } from '../features/actions/log-tested-reading.ts';
import type { FileEdit } from '../text/edits.ts';
import { foldName } from '../text/names.ts';
import { message } from '../words/message.ts';
import { isRefusal, type Refusal } from '../words/refusal.ts';
import { withEnding } from './panel-edits.ts';
import { type Present, readFile } from './present.ts';

/** A reading of a dough of an experiment, the two by their names as its sheet has them. */
export interface ReadingOfExperiment {
  readonly experiment: string;
  readonly dough: string;
  readonly reading: TestedReading;
}

/** The edits that log it in the file of its formula, which may be another, or why there are none. */
export function testedEdits(
  present: Present,
  uri: string,
  { experiment, dough, reading }: ReadingOfExperiment,
): readonly FileEdit[] | Refusal {
  const found = readFile(present, uri);
  const speaker = present.speaker();
  const wanted = foldName(experiment);
  const placed = found?.source.blocks.find(
    ({ block: { top } }) => top?.kind === 'experiment' && top.header.name?.folded === wanted,
  );
  const made = placed === undefined ? undefined : found?.view.experimentOf(uri, placed.block);
  if (found === undefined || made === undefined) return { refused: message('log-reading.no-experiment') };
  const one = made.doughs.find((other) => nameOf(other, made.doughs, speaker) === dough);
  const { definition } = one ?? {};
  if (one === undefined || definition === undefined) return { refused: message('panel.formula-removed') };
  const written = found.view.analysisOf(definition.uri, definition.block);
  if (written === undefined) return { refused: message('panel.formula-removed') };
  const edits = logTestedReading(made, one, written, reading);
  if (isRefusal(edits)) return edits;
  const source = found.view.read(definition.uri)?.source;
  // What was worked out before stays while lines above are typed: where the formula stands now is asked of its file.
  const stands = source?.blocks.find(({ block }) => block === definition.block);
  if (stands === undefined) return { refused: message('panel.formula-removed') };
  const inFile = edits.map((edit) => ({ ...edit, line: edit.line + stands.firstLine }));
  return [{ uri: definition.uri, edits: inFile.map((edit) => withEnding(edit, source)) }];
}
