import type { MixerTrials } from '../analysis/mixer-trials.ts';
import type { CalibratedParameter } from '../calc/calibration.ts';
import { quantityMessage, readingsMessage } from '../rules/calibration-words.ts';
import { degrees, degreesApart, degreesPerMinute, figure } from '../text/figures.ts';
import { stopFirst } from '../text/stop-first.ts';
import { inMarks } from '../words/in-marks.ts';

/** Before and after of a mixer’s calibration, as Markdown; what cannot be told says so. */
export function calibrationMarkdown(trials: MixerTrials): string[] {
  const stop = trials.mixer.data.kind === 'hand' ? [] : [`_Readings for a trial: ${stopFirst}_`];
  return [...warmingMarkdown(trials), ...developmentWords(trials), ...stop];
}

function warmingMarkdown(trials: MixerTrials): string[] {
  const { calibration } = trials;
  if (!calibration.known)
    return [`Its trials cannot tell yet how it warms dough: ${inMarks(calibration.reason)}.`];
  const { parameters, spreadBefore, spreadAfter } = calibration.value;
  const before = spreadBefore.known ? degreesApart(spreadBefore.value) : 'not known';
  const rows = parameters.map((one) => {
    const now = one.before.known
      ? `now ${calibratedFigure(one, one.before.value)} _(${one.before.provenance})_`
      : '';
    const told = one.value.known
      ? `by the trials **${calibratedFigure(one, one.value.value)}** ± ${calibratedFigure(one, one.standardError ?? 0, true)}`
      : `the trials cannot tell: ${inMarks(one.value.reason)}`;
    return `- ${inMarks(quantityMessage(one.quantity))}: ${[now, told].filter((part) => part !== '').join('; ')}`;
  });
  return [
    `**Calibration** from ${inMarks(readingsMessage(trials))}. Misses of the readings, as it is: ${before}; calibrated: ${degreesApart(spreadAfter)}.`,
    rows.join('\n'),
    '_± is one standard error._',
  ];
}

function developmentWords({ development }: MixerTrials): string[] {
  const factor = development();
  if (!factor.known) return [`How fast it develops dough: ${inMarks(factor.reason)}.`];
  const { least, most, readings, flours } = factor.value;
  const seen = readings === 1 ? 'the stage' : `the ${readings} stages`;
  const band =
    most === undefined
      ? `at least ${figure(least, 2)} times`
      : least > 0
        ? `${figure(least, 2)} to ${figure(most, 2)} times`
        : `at most ${figure(most, 2)} times`;
  const seenWith = (told: string): string =>
    `By ${seen} seen it develops dough ${band} as fast as worked out: ${told}.`;
  // Flours alone make a prediction of development uncertain by a fifth.
  const agrees = least <= 1.2 && (most === undefined || most >= 0.8);
  if (agrees) return [seenWith('that agrees, flours being as different as they are')];
  return flours < 2
    ? [
        seenWith(
          'one flour alone shows it, so it may be the flour’s as well as the mixer’s, and it is written into neither',
        ),
      ]
    : [seenWith('several flours show it, so it is the mixer’s: write `develops` on its speeds')];
}

/** A figure of a calibration in its unit; `apart` for one that tells how far others lie apart. */
function calibratedFigure({ quantity }: CalibratedParameter, value: number, apart = false): string {
  switch (quantity.kind) {
    case 'warms':
      return degreesPerMinute(value, 2);
    case 'warms towards':
      return apart ? degreesApart(value) : degrees(value);
    case 'settles':
      return `${figure(value, value < 10 ? 1 : 0)} min`;
    case 'friction':
      return degreesApart(value);
  }
}
