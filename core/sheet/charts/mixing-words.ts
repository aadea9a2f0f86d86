import type { CurveBand } from '../../features/programme-curve.ts';
import { minutesBand } from '../../text/figures.ts';

export const noTemperatureWords = (reason: string): string => `No temperature can be told: ${reason}.`;
export const noDevelopmentWords = (reason: string): string => `No development can be told: ${reason}.`;

/** `let-down from about 26–31 min`, and what that supposes where it lies past the end. */
export function bandWords({ kind, lowMinutes, highMinutes, atLastSpeed }: CurveBand): string {
  const when = minutesBand(lowMinutes, highMinutes);
  return `${kind} from about ${when}${atLastSpeed ? ', if the last speed went on' : ''}`;
}
