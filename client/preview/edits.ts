import { workspace } from 'vscode';
import type { EditParams } from '../../server/protocol.ts';
import type { Wire } from '../wire.ts';
import type { Kept } from './kept.ts';
import type { TakenReading } from './messages.ts';

/** Writing into the file what was asked for in a panel. Each answers with one sentence that says what came of it. */
export interface Edits {
  keepTried(uri: string, formula: string, line: number): Promise<string>;
  logReading(uri: string, formula: string, line: number, reading: TakenReading): Promise<string>;
}

/** The edits come from the core; the editor makes them, so that each can be undone in one go. */
export function createEdits(wire: Wire, kept: Kept): Edits {
  const make = async (params: EditParams, done: string): Promise<string> => {
    const answer = await wire.askEdit(params);
    if (typeof answer === 'string') return answer;
    return (await workspace.applyEdit(answer)) ? done : 'The editor refused the edit; nothing was written.';
  };
  return {
    async keepTried(uri, formula, line) {
      const { clock, ...tried } = kept.asked(uri, formula);
      const said = await make(
        { textDocument: { uri }, line, formula, change: { kind: 'keep', asked: tried } },
        written,
      );
      // What is in the file now is tried no more.
      if (said === written) kept.setAsked(uri, formula, clock ? { clock } : {});
      return said;
    },
    logReading(uri, formula, line, reading) {
      const { today } = kept.asked(uri, formula);
      const conditions = {
        ...(today?.roomCelsius === undefined ? {} : { roomCelsius: today.roomCelsius }),
        ...(today?.flourCelsius === undefined ? {} : { flourCelsius: today.flourCelsius }),
      };
      const what = [`${reading.celsius} °C`, reading.stage].filter(Boolean).join(', ');
      return make(
        {
          textDocument: { uri },
          line,
          formula,
          change: { kind: 'reading', reading: { ...reading, ...conditions } },
        },
        `Logged ${what} into the trial of ${reading.date}. Undo takes it back; save keeps it.`,
      );
    },
  };
}

const written = 'Written into the file. Undo takes it back; save keeps it.';
