import type { Analysis } from '../analysis/analysis.ts';
import {
  asLongAt,
  type Fermenting,
  fermentationOf,
  partFermentation,
} from '../analysis/fermentation-course.ts';
import { referenceCelsius } from '../calc/fermentation/fermentation.ts';
import { type Message, message } from '../words/message.ts';

/** What a step of the process does to the rise of the dough; empty for a step that takes no time before the oven. */
export function stepMessages(analysis: Analysis, line: number): Message[] {
  const fermentation = fermentationOf(analysis);
  if (!fermentation.known) return [];
  const { steps, band, isObserved } = fermentation.value;
  const step = steps.find((one) => one.line === line);
  return step === undefined
    ? []
    : standingMessages(step, band, message(isObserved ? 'rise.by-trials' : 'rise.until-trial'));
}

/** The same of the `ferment` line of a part. */
export function partMessages(analysis: Analysis, sectionId: string, line: number): Message[] {
  const step = partFermentation(analysis, sectionId);
  // A part is ripe by its look; how its culture was fed before says more than any figure here.
  return step?.line !== line ? [] : standingMessages(step, partBand, message('rise.common-practice'));
}

/** Preferments differ more than doughs do. Our own choice. */
const partBand = 2;

function standingMessages(step: Fermenting, band: number, source: Message): Message[] {
  const at27 = asLongAt(step, referenceCelsius);
  const long =
    at27 === undefined
      ? message('rise.nothing-moves')
      : message('rise.as-long', { seconds: 60 * roundedMinutes(at27), celsius: referenceCelsius });
  const { startCelsius: fromCelsius, endCelsius: toCelsius } = step;
  return [
    message('paragraph.of', { parts: [long, riseMessage(step.rise, band)] }),
    ...(Math.abs(toCelsius - fromCelsius) >= 0.5 ? [message('rise.warmth', { fromCelsius, toCelsius })] : []),
    source,
  ];
}

/** How far a dough has grown by the end of a step, with its band; `rise` is a fraction, 1 is doubled. */
export function riseMessage(rise: number, band: number): Message {
  if (rise / band > 2.5) return message('rise.far');
  const rounded = (value: number): number => Math.round(value * 20) / 20;
  return message('rise.grown', {
    fraction: rounded(rise),
    lowFraction: rounded(rise / band),
    highFraction: rounded(rise * band),
  });
}

/** Minutes as a baker would say them: to five from an hour on. */
function roundedMinutes(minutes: number): number {
  return minutes >= 60 ? Math.round(minutes / 5) * 5 : Math.round(minutes);
}
