import type { CurveBand } from '../../features/programme-curve.ts';
import { minutesBand } from '../../text/figures.ts';
import { inMarks, type Saying } from '../../words/in-marks.ts';

export const noTemperatureWords = (reason: Saying): string =>
  `No temperature can be computed: ${inMarks(reason)}.`;
export const noDevelopmentWords = (reason: Saying): string =>
  `No development can be computed: ${inMarks(reason)}.`;

/** `let-down from about 26–31 min`, and what that supposes where it lies past the end. */
export function bandWords({ kind, lowMinutes, highMinutes, atLastSpeed }: CurveBand): string {
  const when = minutesBand(lowMinutes, highMinutes);
  return `${kind} from about ${when}${atLastSpeed ? ', if the last speed went on' : ''}`;
}
