import type { SheetLabels } from '../../server/protocol.ts';

/** A mixer by its name; hands, which the core names as the notation does, in the words of the sheet. */
export function mixerWords(name: string, { byHand }: SheetLabels): string {
  return name === byHand.name ? byHand.words : name;
}
