import type { Analysis } from '../analysis/analysis.ts';
import { asLongAt, type Fermenting, fermentationOf, partFermentation } from '../analysis/fermentation.ts';
import { referenceCelsius } from '../calc/fermentation.ts';
import { degrees, duration } from '../text/figures.ts';

/** What a step of the process does to the rise of the dough, in sentences; empty for a step that takes no time before the oven. */
export function stepWords(analysis: Analysis, line: number): string[] {
  const fermentation = fermentationOf(analysis);
  if (!fermentation.known) return [];
  const { steps, band, isObserved } = fermentation.value;
  const step = steps.find((one) => one.line === line);
  return step === undefined
    ? []
    : standingWords(
        step,
        band,
        isObserved ? 'By the rise of your own trials' : 'Common practice, until a trial tells a `rise`',
      );
}

/** The same of the `ferment` line of a part. */
export function partWords(analysis: Analysis, sectionId: string, line: number): string[] {
  const step = partFermentation(analysis, sectionId);
  // A part is ripe by its look; how its culture was fed before says more than any figure here.
  return step?.line !== line ? [] : standingWords(step, partBand, 'Common practice');
}

/** Preferments differ more than doughs do. Our own choice. */
const partBand = 2;

function standingWords(step: Fermenting, band: number, source: string): string[] {
  const at27 = asLongAt(step, referenceCelsius);
  const long =
    at27 === undefined
      ? 'Nothing moves in it.'
      : `**As long as ${duration(60 * roundedMinutes(at27))} at ${degrees(referenceCelsius)}**.`;
  const said = [`${long} ${riseWords(step.rise, band)}`];
  if (Math.abs(step.endCelsius - step.startCelsius) >= 0.5)
    said.push(`The dough goes from ${degrees(step.startCelsius)} to ${degrees(step.endCelsius)} on the way.`);
  said.push(`_${source}; trust the dough before the clock._`);
  return said;
}

/** How far a dough has grown by the end of a step, with its band; `rise` is a fraction, 1 is doubled. */
export function riseWords(rise: number, band: number): string {
  const percent = (value: number): number => Math.round(value * 20) * 5;
  if (rise / band > 2.5) return 'By then it is far past doubled.';
  return `By its end grown by about ${percent(rise)}% (${percent(rise / band)}–${percent(rise * band)}%).`;
}

/** Minutes as a baker would say them: to five from an hour on. */
function roundedMinutes(minutes: number): number {
  return minutes >= 60 ? Math.round(minutes / 5) * 5 : Math.round(minutes);
}
