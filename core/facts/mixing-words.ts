import { type MixAnalysis, stageMessage, warmthOf } from '../analysis/mix-analysis.ts';
import type { Known } from '../calc/known.ts';
import { hottestDough, type MinutesBand } from '../calc/mixing/mixing.ts';
import { hasLittleWater, type TemperedWater } from '../calc/mixing/mixing-water.ts';
import { byHand } from '../model/found-mixer.ts';
import { type Message, message } from '../words/message.ts';

/** Where it is mixed: `in big spiral`, `by hand`. */
export function inMixer(mixer: string): Message {
  return mixer === byHand.name ? message('place.by-hand') : message('place.in-mixer', { name: mixer });
}

/** The outlook of a mixing programme in sentences, the most important first: warmth, development, then over-mixing. */
export function mixingOutlook(mix: MixAnalysis): Message[] {
  const { outcome } = mix;
  const said = [endOf(mix)];
  if (outcome.development.known && outcome.stage.known) {
    const { programmeMinutes, letDownAfter, breakdownAfter, wishedDevelopment } = outcome;
    const when = (band: Known<MinutesBand, Message>): Message => moment(band, programmeMinutes);
    said.push(message('outlook.stage', { stage: stageMessage(outcome.stage.value), programmeMinutes }));
    if (mix.wish !== undefined && wishedDevelopment !== 1)
      said.push(message('outlook.wished', { meant: mix.wish, when: when(outcome.wishedAfter) }));
    said.push(message('outlook.developed', { when: when(outcome.developedAfter) }));
    said.push(message('outlook.past', { when: when(letDownAfter), otherWhen: when(breakdownAfter) }));
  } else if (!outcome.development.known)
    said.push(message('outlook.no-development', { reason: outcome.development.reason }));
  return [...said, ...outcome.notes];
}

/** How near the end temperature comes to the one wanted, where its band is so wide that it is known only about. */
const widestSure = 2;

/** Whether the band of an end temperature is so wide, °C, that it is known only about. */
export function isAboutOnly(bandCelsius: number): boolean {
  return bandCelsius > widestSure;
}

/** What the three answers at the head of a sheet do not say of a programme: the mix that is wished, and what was assumed. */
export function mixingRemarks(mix: MixAnalysis): Message[] {
  const { outcome, wish } = mix;
  const { development, wishedDevelopment, wishedAfter, programmeMinutes, notes } = outcome;
  const wished =
    wish === undefined || wishedDevelopment === 1 || !development.known
      ? []
      : [message('outlook.wished', { meant: wish, when: moment(wishedAfter, programmeMinutes) })];
  return [...wished, ...notes];
}

function endOf({ outcome, targetCelsius, targetAssumed }: MixAnalysis): Message {
  const { endCelsius, endCelsiusBand: bandCelsius, hotAfterMinutes } = outcome;
  if (hotAfterMinutes !== undefined) {
    const facts = { limitCelsius: hottestDough, minutes: hotAfterMinutes };
    return message(hotAfterMinutes < 0.5 ? 'outlook.hot-from-start' : 'outlook.hot', facts);
  }
  if (!endCelsius.known) return message('outlook.no-end', { reason: endCelsius.reason });
  const celsius = endCelsius.value;
  const over = celsius - targetCelsius;
  const end = { celsius, bandCelsius };
  if (Math.abs(over) < 0.5) {
    const isAbout = isAboutOnly(bandCelsius);
    if (targetAssumed) return message(isAbout ? 'outlook.about-as-usual' : 'outlook.as-usual', end);
    return message(isAbout ? 'outlook.about-as-wanted' : 'outlook.as-wanted', end);
  }
  const facts = { ...end, apartCelsius: Math.abs(over), targetCelsius };
  if (over < 0) return message(targetAssumed ? 'outlook.cooler-usual' : 'outlook.cooler', facts);
  return message(targetAssumed ? 'outlook.warmer-usual' : 'outlook.warmer', {
    ...facts,
    warmth: warmthOf(over),
  });
}

/** So many times the programme on a moment is only far off. */
const farOff = 3;

function moment(band: Known<MinutesBand, Message>, programmeMinutes: number): Message {
  if (!band.known) return message('moment.not-known', { reason: band.reason });
  const { low: lowMinutes, high: highMinutes, atLastSpeed } = band.value;
  const facts = { lowMinutes, highMinutes };
  if (!atLastSpeed) return message('moment.from', facts);
  return lowMinutes > programmeMinutes * farOff
    ? message('moment.far-off')
    : message('moment.last-speed', facts);
}

/** The water to use: temperature and ice in a few words, and what more there is to say of it. */
export interface WaterMessages {
  readonly text: Message;
  /** The same beside the name of what is drawn. */
  readonly beside: Message;
  readonly detail: readonly Message[];
}

/** The water to use; undefined where the file states it. */
export function waterToUse(mix: MixAnalysis): WaterMessages | undefined {
  return mix.water.known ? waterOf(mix.water.value, mix) : undefined;
}

/** Water from this temperature on wants a caution, °C; common practice, no source. */
const hotCelsius = 45;
/** By how much colder water is, to show how little it does, °C. */
const colderCelsius = 10;

function waterOf(water: TemperedWater, mix: MixAnalysis): WaterMessages {
  const { reach, waterCelsius, ice, iceCure, lever, doughCelsius, tapCelsius, tapAssumed } = water;
  const ends = doughCelsius.known ? doughCelsius.value : undefined;
  const caution = waterCelsius !== undefined && waterCelsius > hotCelsius ? [message('water.caution')] : [];
  if (reach === 'reachable' && waterCelsius !== undefined)
    return {
      text: message('water.at', { waterCelsius }),
      beside: message('sheet.water-at', { celsius: waterCelsius }),
      detail: caution,
    };
  if (reach === 'not warm enough' && waterCelsius !== undefined) {
    const warm = ends === undefined ? [] : [message('water.warm-the-rest', { doughCelsius: ends })];
    return {
      text: message('water.no-hotter', { waterCelsius }),
      beside: message('sheet.no-hotter', { celsius: waterCelsius }),
      detail: [...warm, ...caution],
    };
  }
  if (reach === 'no lever') {
    const minutes = mix.outcome.programmeMinutes;
    const facts = { minutes, colderCelsius, apartCelsius: colderCelsius * Math.max(0, lever) };
    const why = hasLittleWater(mix.input) ? 'water.little' : 'water.follows-room';
    const beside = message('glance.from-tap');
    return { text: message('water.from-tap'), beside, detail: [message(why, facts)] };
  }
  if (ice !== undefined) {
    const weights = { iceGrams: ice.iceGrams, tapGrams: ice.tapGrams, tapCelsius };
    const isShort = ends !== undefined && ends > mix.targetCelsius + 0.05;
    const text = message(tapAssumed ? 'water.ice-assumed' : 'water.ice', weights);
    return {
      text,
      beside: text,
      detail: isShort ? [message('water.half-ice', { doughCelsius: ends })] : [],
    };
  }
  const cure =
    iceCure === undefined
      ? message('water.no-colder')
      : message('ice.would-end', {
          iceGrams: iceCure.iceGrams,
          tapGrams: iceCure.tapGrams,
          doughCelsius: iceCure.doughCelsius,
        });
  return {
    text: message(tapAssumed ? 'water.tap-assumed' : 'water.tap-at', { tapCelsius }),
    beside: message(tapAssumed ? 'sheet.from-tap-assumed' : 'sheet.from-tap', { tapCelsius }),
    detail: [cure],
  };
}
