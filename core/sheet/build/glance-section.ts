import type { Analysis } from '../../analysis/analysis.ts';
import { limitOf, type MixAnalysis, stageMessage, warmthOf } from '../../analysis/mix-analysis.ts';
import { hottestDough } from '../../calc/mixing/mixing.ts';
import { isAboutOnly, waterToUse } from '../../facts/mixing-words.ts';
import { enoughMinutes } from '../../rules/mixing/mixed-past-need.ts';
import { doughMixes } from '../../rules/mixing/mixes.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { roleLine, saidLine } from './fact-sections.ts';
import type { Fact, FactsSection, Verdict } from './sheet-document.ts';

/** One answer before it is worded; what is not known has its reason among the notes and is never as wanted. */
interface Answer {
  readonly value: string;
  readonly level: Verdict['level'];
  readonly word?: Message;
  readonly notes: readonly (Message | undefined)[];
}

const signs: Readonly<Record<Verdict['level'], string>> = {
  good: '✓',
  off: '≈',
  bad: '!',
  given: '=',
  unknown: '?',
};

/**
 * The three answers of the job at a glance: how warm the dough leaves the mixer, its state when the programme stops, and the
 * water to draw. Each has a sign, a word and a figure, and leads to its line.
 *
 * @param batch what goes into the bowl at once; `firstLine` is where its block begins in the file
 */
export function glanceSection(batch: Analysis, firstLine: number, speaker: Speaker): FactsSection {
  const { doughMix, resolved } = batch;
  const mix = doughMix.known ? doughMix.value : undefined;
  const header = mix === undefined ? undefined : resolved.model.mixes[mix.index]?.headerLine;
  const mixLine = header === undefined ? undefined : firstLine + header;
  const lastLine = mix?.phaseLines.at(-1);
  const notKnown = speaker.say(message('glance.not-known'));
  const unknown = (...notes: readonly Message[]): Answer => ({ value: notKnown, level: 'unknown', notes });
  const wish =
    resolved.doughCelsius === undefined
      ? []
      : [message('glance.wanted', { targetCelsius: resolved.doughCelsius })];
  const reason = doughMix.known ? [] : [doughMix.reason];
  const fact = (
    key: string,
    label: Message,
    line: number | undefined,
    { value, level, word, notes }: Answer,
  ): Fact => ({
    id: `glance/${key}`,
    key,
    label: speaker.say(label),
    value,
    verdict: {
      level,
      sign: signs[level],
      word: word === undefined ? '' : speaker.say(word),
    },
    notes: notes.filter((note) => note !== undefined).map(speaker.say),
    source: 'file',
    ...(line === undefined ? {} : { line }),
  });
  return {
    kind: 'facts',
    id: 'glance',
    name: 'glance',
    title: '',
    facts: [
      fact(
        'dough temperature',
        message('glance.leaves'),
        saidLine(batch, 'dough temperature', firstLine) ?? mixLine,
        mix === undefined ? unknown(...reason, ...wish) : warmthAnswer(mix, speaker, unknown),
      ),
      fact(
        'state',
        message('glance.stop'),
        lastLine === undefined ? mixLine : firstLine + lastLine,
        // The reason stands at the first of them.
        mix === undefined ? unknown() : stateAnswer(mix, batch, speaker, unknown),
      ),
      fact(
        'water',
        message('glance.water'),
        roleLine(batch, 'water', firstLine),
        mix === undefined ? unknown() : waterAnswer(mix, batch, speaker, unknown),
      ),
    ],
  };
}

type Unknown = (...notes: readonly Message[]) => Answer;

function warmthAnswer(mix: MixAnalysis, speaker: Speaker, unknown: Unknown): Answer {
  const { outcome, targetCelsius, targetAssumed } = mix;
  const { endCelsius, endCelsiusBand, hotAfterMinutes, limitAfter } = outcome;
  const wish = message(targetAssumed ? 'glance.usual' : 'glance.wanted', { targetCelsius });
  const limitCelsius = limitOf(mix);
  const passed =
    limitAfter.known && !(limitAfter.value.atLastSpeed && limitAfter.value.minutes > farOff(mix))
      ? message(limitAfter.value.atLastSpeed ? 'glance.too-warm-if' : 'glance.too-warm-from', {
          limitCelsius,
          minutes: limitAfter.value.minutes,
        })
      : undefined;
  if (hotAfterMinutes !== undefined)
    return {
      value: speaker.say(message('glance.above', { limitCelsius: hottestDough })),
      level: 'bad',
      word: message('glance.much-too-warm'),
      notes: [wish, passed],
    };
  if (!endCelsius.known) return unknown(endCelsius.reason, wish);
  const value = speaker.celsiusBand(endCelsius.value, endCelsiusBand);
  const over = endCelsius.value - targetCelsius;
  const apartCelsius = Math.abs(over);
  if (apartCelsius < 0.5) {
    const manner = targetAssumed ? 'usual' : 'wanted';
    const isAbout = isAboutOnly(endCelsiusBand);
    return {
      value,
      level: isAbout ? 'off' : 'good',
      word: message(isAbout ? `glance.about-as-${manner}` : `glance.as-${manner}`),
      notes: [wish, passed],
    };
  }
  return {
    value,
    level: over >= 2 ? 'bad' : 'off',
    word:
      over < 0
        ? message('glance.cooler', { apartCelsius })
        : message('glance.warmer', { warmth: warmthOf(over), apartCelsius }),
    notes: [wish, passed],
  };
}

/** Minutes from which on a moment at the last speed is no longer told. */
function farOff({ outcome }: MixAnalysis): number {
  return 3 * outcome.programmeMinutes;
}

function stateAnswer(mix: MixAnalysis, batch: Analysis, speaker: Speaker, unknown: Unknown): Answer {
  const { development, stage, wishedAfter, letDownAfter, programmeMinutes } = mix.outcome;
  if (!development.known) return unknown(development.reason);
  if (!stage.known) return unknown(stage.reason);
  const value = speaker.say(stageMessage(stage.value));
  const best = wishedAfter.known
    ? message(wishedAfter.value.atLastSpeed ? 'glance.best-stop-if' : 'glance.best-stop', {
        minutes: wishedAfter.value.expected,
      })
    : undefined;
  const notes = [message('glance.stop-after', { programmeMinutes }), best, untilLetDown(mix)];
  if (stage.value === 'let-down' || stage.value === 'breakdown')
    return { value, level: 'bad', word: message('glance.too-late'), notes };
  const wished = wishedAfter.known ? wishedAfter.value : undefined;
  if (wished === undefined || programmeMinutes < wished.low - roundingMinutes)
    return { value, level: 'off', word: message('glance.too-early'), notes };
  if (programmeMinutes < wished.high - roundingMinutes)
    return { value, level: 'off', word: message('glance.perhaps-too-early'), notes };
  if (letDownAfter.known && letDownAfter.value.low <= programmeMinutes + 1e-9)
    return { value, level: 'off', word: message('glance.perhaps-too-late'), notes };
  const run = doughMixes(batch).find((one) => one.mix === mix);
  if (run !== undefined && enoughMinutes(run) !== undefined)
    return { value, level: 'off', word: message('glance.longer-than-needed'), notes };
  return { value, level: 'good', word: message('glance.as-wanted'), notes };
}

/** Less than this is not told apart: minutes are shown in halves. */
const roundingMinutes = 0.25;

function untilLetDown(mix: MixAnalysis): Message | undefined {
  const { letDownAfter, programmeMinutes } = mix.outcome;
  if (!letDownAfter.known) return undefined;
  const { low, high, atLastSpeed } = letDownAfter.value;
  if (!atLastSpeed) return message('glance.let-down-from', { lowMinutes: low, highMinutes: high });
  if (low > farOff(mix)) return message('glance.let-down-far');
  return message('glance.until-let-down', {
    lowMinutes: Math.max(0, low - programmeMinutes),
    highMinutes: Math.max(0, high - programmeMinutes),
  });
}

function waterAnswer(mix: MixAnalysis, batch: Analysis, speaker: Speaker, unknown: Unknown): Answer {
  const takes = flourTakes(mix, batch);
  if (!mix.water.known) {
    const { givenWaterCelsius: given } = mix;
    if (given === undefined) return unknown(mix.water.reason);
    const word = message('glance.as-stated');
    return { value: speaker.celsius(given), level: 'given', word, notes: [takes] };
  }
  const { reach, waterCelsius, ice, tapCelsius, tapAssumed, doughCelsius } = mix.water.value;
  const notes = [...(waterToUse(mix)?.detail ?? []), takes];
  if (reach === 'no lever')
    return {
      value: speaker.celsius(tapCelsius),
      level: 'given',
      word: message('glance.little-effect'),
      notes,
    };
  if (reach === 'tap too warm' && ice !== undefined) {
    const ends = doughCelsius.known ? doughCelsius.value : Number.POSITIVE_INFINITY;
    const isEnough = ends <= mix.targetCelsius + 0.05;
    return {
      value: speaker.say(message('glance.of-ice', { iceGrams: ice.iceGrams })),
      level: isEnough ? 'good' : 'off',
      word: message(isEnough ? 'glance.ice-enough' : 'glance.not-enough'),
      notes: [message('glance.with-tap', { tapGrams: ice.tapGrams, tapCelsius }), ...notes],
    };
  }
  if (waterCelsius === undefined || reach === 'tap too warm') {
    const isNear = doughCelsius.known && Math.abs(doughCelsius.value - mix.targetCelsius) < 0.5;
    const word = message(
      isNear ? (tapAssumed ? 'glance.tap-assumed' : 'glance.from-tap') : 'glance.tap-too-warm',
    );
    const level = isNear ? (tapAssumed ? 'off' : 'good') : 'bad';
    return { value: speaker.celsius(tapCelsius), level, word, notes: isNear ? [takes] : notes };
  }
  const isReached = reach === 'reachable';
  return {
    value: speaker.celsius(waterCelsius),
    level: isReached ? 'good' : 'off',
    word: message(isReached ? 'glance.to-draw' : 'glance.no-hotter'),
    notes,
  };
}

/** The water that the flour of the dough takes, beside what is in it; nothing where either is not known. */
function flourTakes({ input }: MixAnalysis, { solved }: Analysis): Message | undefined {
  if (!input.curve.known || !input.curve.value.absorptionAsIs.known) return undefined;
  if (solved?.effectiveHydration === undefined || solved.waterUnknown.length > 0) return undefined;
  const { assumed, absorptionAsIs } = input.curve.value;
  const shares = { fraction: absorptionAsIs.value, heldFraction: solved.effectiveHydration };
  return message(assumed ? 'glance.flour-takes-assumed' : 'glance.flour-takes', shares);
}
