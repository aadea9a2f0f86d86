import type { MixerTrials } from '../analysis/mixer-trials.ts';
import { calibratedFigure, quantityWords, readingsWords } from '../rules/calibration-words.ts';
import { degreesApart, figure } from '../text/figures.ts';
import { stopFirst } from '../text/stop-first.ts';

/** Before and after of a mixer’s calibration, as Markdown; what cannot be told says so. */
export function calibrationMarkdown(trials: MixerTrials): string[] {
  const stop = trials.mixer.data.kind === 'hand' ? [] : [`_Readings for a trial: ${stopFirst}_`];
  return [...warmingMarkdown(trials), ...developmentWords(trials), ...stop];
}

function warmingMarkdown(trials: MixerTrials): string[] {
  const { calibration } = trials;
  if (!calibration.known) return [`Its trials cannot calibrate it: ${calibration.reason}.`];
  const { parameters, spreadBefore, spreadAfter } = calibration.value;
  const before = spreadBefore.known ? degreesApart(spreadBefore.value) : 'not known';
  const rows = parameters.map((one) => {
    const now = one.before.known
      ? `now ${calibratedFigure(one, one.before.value)} _(${one.before.provenance})_`
      : '';
    const told = one.value.known
      ? `by the trials **${calibratedFigure(one, one.value.value)}** ± ${calibratedFigure(one, one.standardError ?? 0, true)}`
      : `the trials cannot tell: ${one.value.reason}`;
    return `- ${quantityWords(one.quantity)}: ${[now, told].filter((part) => part !== '').join('; ')}`;
  });
  return [
    `**Calibration** from ${readingsWords(trials)}. Misses of the readings, as it is: ${before}; calibrated: ${degreesApart(spreadAfter)}.`,
    rows.join('\n'),
    '_± is one standard error._',
  ];
}

function developmentWords({ development }: MixerTrials): string[] {
  const factor = development();
  if (!factor.known) return [`How fast it develops dough: ${factor.reason}.`];
  const { least, most, readings } = factor.value;
  const seen = readings === 1 ? 'the stage' : `the ${readings} stages`;
  const band =
    most === undefined
      ? `at least ${figure(least, 2)} times`
      : least > 0
        ? `${figure(least, 2)} to ${figure(most, 2)} times`
        : `at most ${figure(most, 2)} times`;
  // Flours alone make a prediction of development uncertain by a fifth.
  const agrees = least <= 1.2 && (most === undefined || most >= 0.8);
  return [
    `By ${seen} seen it develops dough ${band} as fast as worked out: ${agrees ? 'that agrees, flours being as different as they are' : 'write `develops` on its speeds'}.`,
  ];
}
