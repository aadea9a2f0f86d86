import type { MixerTrials } from '../analysis/mixer-trials.ts';
import { agreesWithBelieved } from '../calc/calibration/calibration-development.ts';
import type { CalibratedParameter } from '../calc/calibration/calibration-quantities.ts';
import { quantityMessage, readingsMessage } from '../rules/trials/calibration-words.ts';
import { type Message, message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';
import { provenanceMessage } from './provenance.ts';

/** Before and after of a mixer’s calibration, as Markdown; what the trials do not show says so. */
export function calibrationMarkdown(trials: MixerTrials, speaker: Speaker): string[] {
  const rows = rowsOf(trials);
  return [
    speaker.say(titleOf(trials)),
    ...(rows.length === 0 ? [] : [rows.map((row) => `- ${speaker.say(row)}`).join('\n')]),
    ...notesOf(trials).map(speaker.say),
  ];
}

function titleOf(trials: MixerTrials): Message {
  const { calibration } = trials;
  if (!calibration.known) return message('calibration.not-yet', { reason: calibration.reason });
  const { spreadBefore, spreadAfter: laterCelsius } = calibration.value;
  const source = readingsMessage(trials);
  return spreadBefore.known
    ? message('calibration.title', { source, apartCelsius: spreadBefore.value, laterCelsius })
    : message('calibration.title-before-not-known', { source, laterCelsius });
}

function rowsOf({ calibration }: MixerTrials): Message[] {
  if (!calibration.known) return [];
  return calibration.value.parameters.map((one) => {
    const { before, value } = one;
    const now = before.known
      ? [
          message('calibration.now', {
            figures: figureOf(one, before.value),
            source: provenanceMessage(before.provenance),
          }),
        ]
      : [];
    const shown = value.known
      ? message('calibration.by-trials', {
          figures: figureOf(one, value.value),
          difference: figureOf(one, one.standardError ?? 0, true),
        })
      : message('calibration.not-shown', { reason: value.reason });
    return message('calibration.row', { title: quantityMessage(one.quantity), parts: [...now, shown] });
  });
}

function notesOf(trials: MixerTrials): Message[] {
  const isHand = trials.mixer.data.kind === 'hand';
  return [
    ...(trials.calibration.known ? [message('calibration.standard-error')] : []),
    developmentMessage(trials),
    ...(isHand ? [] : [message('calibration.stop-first')]),
  ];
}

function developmentMessage({ development }: MixerTrials): Message {
  const factor = development();
  if (!factor.known) return message('calibration.development-not-known', { reason: factor.reason });
  const { least, most, readings, flours } = factor.value;
  const seen = { count: readings, figures: factorsMessage(least, most) };
  if (agreesWithBelieved(factor.value)) return message('calibration.develops-agrees', seen);
  return message(flours < 2 ? 'calibration.develops-one-flour' : 'calibration.develops-mixer', seen);
}

/** A band of factors on how fast dough develops: `0.8 to 1.1 times`. */
export function factorsMessage(lowFactor: number, highFactor: number | undefined): Message {
  if (highFactor === undefined) return message('calibration.least-factor', { lowFactor });
  return lowFactor > 0
    ? message('calibration.factors', { lowFactor, highFactor })
    : message('calibration.most-factor', { highFactor });
}

/** A figure of a calibration in its unit; `apart` for one that tells how far others lie apart. */
export function figureOf({ quantity }: CalibratedParameter, value: number, apart = false): Message {
  switch (quantity.kind) {
    case 'warms':
      return message('calibration.celsius-per-minute', { celsiusPerMinute: value });
    case 'warms towards':
      return apart
        ? message('calibration.celsius-apart', { apartCelsius: value })
        : message('calibration.celsius', { celsius: value });
    case 'settles':
      return message('calibration.minutes', { minutes: value });
    case 'friction':
      return message('calibration.celsius-apart', { apartCelsius: value });
  }
}
