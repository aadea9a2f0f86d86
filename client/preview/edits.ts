import { l10n, type WorkspaceEdit, workspace } from 'vscode';
import type { EditParams } from '../../server/protocol.ts';
import type { Wire } from '../wire.ts';
import type { Kept } from './kept.ts';
import type { TakenReading } from './messages.ts';

/** Writing into the file what was asked for in a panel. Each answers with one sentence that says what came of it. */
export interface Edits {
  applyOptions(uri: string, formula: string, line: number): Promise<string>;
  /** Writes into a mixer what the trial at `trialLine` says. */
  teachMixer(uri: string, formula: string, line: number, trialLine: number): Promise<string>;
  logReading(uri: string, formula: string, line: number, reading: TakenReading): Promise<string>;
}

/** The edits come from the core; the editor makes them, so that each can be undone in one go. */
export function createEdits(wire: Wire, kept: Kept): Edits {
  const make = async (
    params: EditParams,
    words: (files: string) => string,
    done?: () => void,
  ): Promise<string> => {
    const answer = await wire.askEdit(params);
    if (typeof answer === 'string') return answer;
    if (!(await workspace.applyEdit(answer)))
      return l10n.t('The editor refused the edit; nothing was written.');
    done?.();
    return words(filesOf(answer));
  };
  const written = (files: string): string =>
    l10n.t('Written into {0}. Undo takes it back; save keeps it.', files);
  return {
    teachMixer: (uri, formula, line, trialLine) =>
      make({ textDocument: { uri }, line, formula, change: { kind: 'teach', line: trialLine } }, written),
    applyOptions(uri, formula, line) {
      const { clock, map, ...tried } = kept.asked(uri, formula);
      return make(
        { textDocument: { uri }, line, formula, change: { kind: 'keep', asked: tried } },
        written,
        // What is in the file now is tried no more.
        () => kept.setAsked(uri, formula, { ...(clock && { clock }), ...(map && { map }) }),
      );
    },
    logReading(uri, formula, line, { said, ...reading }) {
      const { today } = kept.asked(uri, formula);
      const conditions = {
        ...(today?.roomCelsius === undefined ? {} : { roomCelsius: today.roomCelsius }),
        ...(today?.flourCelsius === undefined ? {} : { flourCelsius: today.flourCelsius }),
        ...(today?.mixer === undefined ? {} : { mixer: today.mixer }),
      };
      return make(
        {
          textDocument: { uri },
          line,
          formula,
          change: { kind: 'reading', reading: { ...reading, ...conditions } },
        },
        () =>
          l10n.t('Logged {0} into the trial of {1}. Undo takes it back; save keeps it.', said, reading.date),
      );
    },
  };
}

/** The day's temperatures go into the bakery, which may be another file: a baker is told which are to be saved. */
function filesOf(edit: WorkspaceEdit): string {
  const names = edit.entries().map(([{ path }]) => path.slice(path.lastIndexOf('/') + 1));
  return [...new Set(names)].join(', ');
}
