import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';

/** Where a written sheet comes from. The core knows no clock and no git: whoever asks for the sheet says it. */
export interface SheetOrigin {
  /** The file as its reader knows it: `formulas/harbour-tin.dough`. */
  readonly file: string;
  /** The commit that git is at; absent where there is none. */
  readonly commit?: string;
  /** Formulas differ from that commit, on disk or in an editor. */
  readonly changed?: boolean;
  /** The day of writing: `2026-03-14`. */
  readonly date?: string;
}

/** The state of the files in words: `revision 8eaa6f2, with changes since`; `undefined` where git knows none. */
export function revisionWords({ commit, changed }: SheetOrigin, speaker: Speaker): string | undefined {
  if (commit === undefined) return undefined;
  return speaker.say(message(changed ? 'sheet.revision-changed' : 'sheet.revision', { code: commit }));
}

/** `harbour-tin.dough · revision 8eaa6f2 · 2026-03-14`. */
export function originWords(origin: SheetOrigin, speaker: Speaker): string {
  return [origin.file, revisionWords(origin, speaker), origin.date]
    .filter((part) => part !== undefined)
    .join(' · ');
}
