import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blendCurve, type FlourData } from '../../core/calc/flour/flour.ts';
import { restingMinutes } from '../../core/calc/heat/dough-cooling.ts';
import {
  minutesToReach,
  settlingMinutes,
  temperatureAfter,
  temperatureBefore,
} from '../../core/calc/heat/warming.ts';
import type { Known } from '../../core/calc/known.ts';
import { stageOf } from '../../core/calc/mixing/development.ts';
import { developmentRate, type MixerData, warmingRate } from '../../core/calc/mixing/mixer.ts';
import { celsiusAt, type MixingOutcome, simulateMixing } from '../../core/calc/mixing/mixing.ts';
import { mixingBill } from '../../core/calc/mixing/mixing-bill.ts';
import type { MixingInput, MixingPhase } from '../../core/calc/mixing/mixing-programme.ts';
import { temperWater } from '../../core/calc/mixing/mixing-water.ts';
import type { Message } from '../../core/words/message.ts';
import { inWords } from '../words/told.ts';
import {
  butterPortion,
  flourPortion,
  hand,
  planetary,
  programme,
  saltPortion,
  spiral,
  strongWhite,
  temperedWater,
  waterPortion,
  wholemeal13,
} from './mixing-fixture.ts';

const speed = (number: number, minutes: number): MixingPhase => ({
  kind: 'speed',
  number,
  seconds: 60 * minutes,
});
const knead = (minutes: number): MixingPhase => ({ kind: 'knead', seconds: 60 * minutes });
const rest = (minutes: number): MixingPhase => ({ kind: 'rest', seconds: 60 * minutes });

function told<T>(value: Known<T, Message>): T {
  if (!value.known) throw new Error(inWords(value.reason));
  return value.value;
}

describe('warming in closed form', () => {
  test('runs backwards, and tells when a temperature is reached', () => {
    const phase = { celsiusPerMinute: 0.6, aroundCelsius: 21, settlesMinutes: 30 };
    const end = temperatureAfter(phase, 18, 9);
    expect(temperatureBefore(phase, end, 9)).toBeCloseTo(18, 9);
    expect(minutesToReach(phase, 18, end)).toBeCloseTo(9, 9);
    expect(minutesToReach(phase, 18, 21 + 18.1)).toBeUndefined();
  });

  test('grows slower in more dough, by the cube root; no dough is at its equilibrium', () => {
    expect(settlingMinutes(spiral, 5600) / settlingMinutes(spiral, 700)).toBeCloseTo(2, 9);
    expect(settlingMinutes({ ...spiral, settles: { minutes: 20, grams: 10_000 } }, 10_000)).toBeCloseTo(
      20,
      9,
    );
    const nothing = { celsiusPerMinute: 1, aroundCelsius: 21, settlesMinutes: settlingMinutes(spiral, 0) };
    expect(temperatureAfter(nothing, 10, 1)).toBe(21);
  });
});

describe('rates', () => {
  test('of a horizontal mixer have the power of published short processes', () => {
    // Canadian Grain Commission, Canadian short process: 6.6–15.3 Wh/kg in 3.2–5.7 min, 110–170 W/kg on average.
    const mixer: MixerData = { kind: 'horizontal', speeds: [] };
    for (const rpm of [95, 100]) {
      const watts = (told(warmingRate(mixer, { number: 3, rpm })) / 60) * 2815;
      expect(watts).toBeGreaterThan(105);
      expect(watts).toBeLessThan(172);
      const wattHours = (watts * 4.5) / 60;
      expect(wattHours).toBeGreaterThan(6.6);
      expect(wattHours).toBeLessThan(15.3);
    }
  });

  test('are overridden by what the file states', () => {
    const own = { number: 2, rpm: 210, warmsCelsiusPerMinute: 0.7, developsTimes: 1.4 };
    expect(warmingRate(spiral, own)).toEqual({ known: true, value: 0.7, provenance: 'given' });
    expect(developmentRate(spiral, own)).toEqual({ known: true, value: 1.4, provenance: 'given' });
  });

  test('of a speed without rpm are not known, with the cure', () => {
    const rate = developmentRate(spiral, { number: 2 });
    expect(!rate.known && rate.reason.code).toContain('rpm');
  });
});

describe('a spiral with 40 kg', () => {
  // 40 kg, 3 min at 100 rpm and 4 min at 200, everything at 21 °C, target 25 °C. Friction factors of 22–28 °F,
  // 12–16 °C, for bread on spirals: Hamelman, from memory. The warming itself is common practice, no source.
  const flourGrams = 40_000 / 1.67;
  const load: MixingPhase = {
    kind: 'load',
    portions: [flourPortion(flourGrams), temperedWater(flourGrams * 0.65), saltPortion(flourGrams * 0.02)],
  };
  const mixing: MixingInput = {
    ...programme(strongWhite, 0.65, spiral, [], {}),
    phases: [load, speed(1, 3), speed(2, 4)],
  };

  test('is worked for the minutes of all its working phases together, and not while it rests', () => {
    const worked = (...phases: MixingPhase[]) =>
      simulateMixing({ ...mixing, phases: [load, ...phases] }).workedMinutes;
    expect(worked(speed(1, 3), speed(2, 4))).toBeCloseTo(7, 9);
    expect(worked(speed(1, 3), rest(20), speed(2, 4), rest(5), speed(1, 0.5))).toBeCloseTo(7.5, 9);
    expect(worked(rest(20))).toBe(0);
  });

  test('warms the dough by 2.5 °C from an equal start, and hydration by 2.4 °C', () => {
    const outcome = simulateMixing(mixing);
    expect(told(outcome.warmedCelsius)).toBeCloseTo(2.5, 1);
    expect(told(outcome.endCelsius) - told(outcome.warmedCelsius) - 21).toBeCloseTo(2.4, 1);
  });

  test('warms it by some 2.7 °C at the target, with a friction factor of 13 to 14.6 °C', () => {
    const tempered = told(temperWater({ mixing, targetCelsius: 25, tapCelsius: 12 }));
    expect(Math.abs(told(tempered.outcome.warmedCelsius) - 2.7)).toBeLessThan(0.1);
    const friction = told(tempered.rule).frictionCelsius;
    expect(friction).toBeGreaterThan(13);
    expect(friction).toBeLessThan(14.6);
  });

  test('is an improved mix at the earliest after 700 to 800 turns', () => {
    // Hamelman baguette, King Arthur professional formulas page: 700–800 turns in first speed, "underdeveloped". The band
    // allows for it; what is expected comes out nearer to the trade’s 1,000 turns of an improved mix.
    const baguette: FlourData = {
      grain: 'wheat',
      milling: 'white',
      protein: 0.117,
      proteinMoistureBasis: 0.14,
    };
    for (const turns of [700, 800]) {
      const outcome = simulateMixing(
        programme(baguette, 0.66, spiral, [speed(1, turns / 100)], { flourGrams: 20_000 }),
      );
      expect(told(outcome.developmentBand).low).toBeLessThan(1);
      expect(told(outcome.developedAfter).high * 100).toBeGreaterThan(turns);
    }
  });

  test('is developed by 1,600 turns, an intensive mix', () => {
    // Suas: improved about 1,000 turns, intensive 1,600 and more; from memory.
    const intensive = simulateMixing(
      programme(strongWhite, 0.65, spiral, [speed(1, 4), speed(2, 6)], { flourGrams: 20_000 }),
    );
    expect(told(intensive.development)).toBeGreaterThan(1);
  });
});

describe('mixing by hand', () => {
  test('has friction factors of 3 to 7 °C within its band for ten minutes of kneading', () => {
    // Cook's Illustrated 5 °F and Hamelman 12 °F by way of doughandmortar: 3–7 °C.
    const mixing: MixingInput = {
      ...programme(strongWhite, 0.65, hand, []),
      phases: [
        { kind: 'load', portions: [flourPortion(1000), temperedWater(650), saltPortion(20)] },
        knead(10),
      ],
    };
    const factor = (hands: MixerData): number =>
      told(told(temperWater({ mixing: { ...mixing, mixer: hands }, targetCelsius: 25, tapCelsius: 12 })).rule)
        .frictionCelsius;
    // Cold hands on stone to warm hands on wood: 1 to 9 °C above the room of 21 °C.
    const cold = factor({ ...hand, warmsTowardsCelsius: 22 });
    const warm = factor({ ...hand, warmsTowardsCelsius: 30 });
    expect(cold).toBeLessThan(7);
    expect(cold).toBeGreaterThan(3);
    expect(factor(hand)).toBeLessThan(warm);
  });

  test('drifts towards the room and 5 °C, never above 33 °C, or towards what the file says', () => {
    const long = simulateMixing(programme(strongWhite, 0.65, hand, [knead(600)]));
    expect(told(long.endCelsius)).toBeCloseTo(26, 3);
    const hot = simulateMixing({ ...programme(strongWhite, 0.65, hand, [knead(600)]), roomCelsius: 31 });
    expect(told(hot.endCelsius)).toBeCloseTo(33, 3);
    const warm = simulateMixing(
      programme(strongWhite, 0.65, { ...hand, warmsTowardsCelsius: 29 }, [knead(600)]),
    );
    expect(told(warm.endCelsius)).toBeCloseTo(29, 3);
  });
});

// What bakers find at the bench. Common practice, no source.
describe('development in practice', () => {
  const covers = (outcome: MixingOutcome, minutes: number) => {
    const { low, high } = told(outcome.developedAfter);
    expect(minutes).toBeGreaterThan(low);
    expect(minutes).toBeLessThan(high);
  };

  test('strong white at 65 %: developed by about 8 min by hand or slowly, not broken after an hour', () => {
    const byHand = simulateMixing(programme(strongWhite, 0.65, hand, [knead(8)]));
    covers(byHand, 8);
    const hour = simulateMixing(programme(strongWhite, 0.65, planetary, [speed(1, 60)]));
    expect(told(hour.breakdownAfter).high).toBeGreaterThan(60);
    // Warming is the nearer danger: the same hour ends far above the dough temperature of bread, by its band at least.
    expect(told(hour.endCelsius) + hour.endCelsiusBand).toBeGreaterThan(26.5);
  });

  test('the same flour at 75 % after a rest of 30 min: about 15 min by hand', () => {
    const outcome = simulateMixing(programme(strongWhite, 0.75, hand, [knead(15)], { restFirstMinutes: 30 }));
    // Some fifteen minutes: just beyond the band of ±20 %.
    const { low, high } = told(outcome.developedAfter);
    expect(low - 30).toBeGreaterThan(9);
    expect(high - 30).toBeGreaterThan(13.5);
  });

  test('the same dough at a planetary’s third speed: not yet at 15 min, developed at 20, whole after 10 more at high speed', () => {
    const run = (...work: MixingPhase[]) =>
      simulateMixing(programme(strongWhite, 0.75, planetary, work, { restFirstMinutes: 30 }));
    expect(told(run(speed(3, 15)).developmentBand).low).toBeLessThan(1);
    expect(told(run(speed(3, 20)).stage)).toBe('developed');
    const more = run(speed(3, 20), speed(4, 10));
    expect(told(more.stage)).not.toBe('breakdown');
    expect(told(more.breakdownAfter).atLastSpeed).toBe(true);
  });

  test('wholemeal at 80 %: developed by about 15 min, whole at 30, broken a few minutes later, surely at 45', () => {
    const run = (minutes: number) =>
      simulateMixing(programme(wholemeal13, 0.8, planetary, [speed(1, minutes)]));
    covers(run(15), 15);
    expect(told(run(30).stage)).toBe('developed');
    expect(told(run(40).stage)).toBe('breakdown');
    expect(told(run(45).breakdownAfter).high).toBeLessThan(50);
  });

  test('a rest with the salt in, or after kneading, spares no work; one of flour and water does', () => {
    const plain = told(simulateMixing(programme(strongWhite, 0.7, hand, [knead(9)])).development);
    const salted = told(simulateMixing(programme(strongWhite, 0.7, hand, [rest(30), knead(9)])).development);
    const rested = told(
      simulateMixing(programme(strongWhite, 0.7, hand, [knead(9)], { restFirstMinutes: 30 })).development,
    );
    expect(salted).toBeCloseTo(plain, 12);
    expect(rested / plain).toBeCloseTo(1 / 0.8, 9);
  });

  test('fat loaded late does not slow what was mixed before it', () => {
    const base = programme(strongWhite, 0.65, hand, []);
    const [load, add] = base.phases;
    const butter: MixingPhase = { kind: 'add', portions: [butterPortion(250)] };
    const run = (...phases: MixingPhase[]) => simulateMixing({ ...base, phases: [load!, add!, ...phases] });
    const early = told(run(butter, knead(8)).development);
    const late = told(run(knead(8), butter).development);
    const without = told(run(knead(8)).development);
    expect(late).toBeCloseTo(without, 12);
    expect(early).toBeLessThan(without);
  });

  test('water held back makes the first part of the mix faster', () => {
    const base = programme(strongWhite, 0.8, hand, []);
    const portions = [flourPortion(1000), saltPortion(20)];
    const all: MixingPhase[] = [{ kind: 'load', portions: [...portions, waterPortion(800)] }, knead(12)];
    const held: MixingPhase[] = [
      { kind: 'load', portions: [...portions, waterPortion(650)] },
      knead(9),
      { kind: 'add', portions: [waterPortion(150)] },
      knead(3),
    ];
    const development = (phases: MixingPhase[]) => told(simulateMixing({ ...base, phases }).development);
    expect(development(held)).toBeGreaterThan(development(all));
  });

  test('the first five minutes of slack dough in a planetary count a half', () => {
    const slack = simulateMixing(programme(strongWhite, 0.78, planetary, [speed(1, 8)]));
    expect(told(slack.slowMinutes)).toBeCloseTo(2.5 + 3, 9);
    const firm = simulateMixing(programme(strongWhite, 0.65, planetary, [speed(1, 8)]));
    expect(told(firm.slowMinutes)).toBeCloseTo(8, 9);
  });

  test('the stages follow the textbook’s order', () => {
    const seen = [0, 0.2, 0.45, 1].map((development) => stageOf(development, 0));
    expect(seen).toEqual(['pick-up', 'clean-up', 'developing', 'developed']);
    expect(stageOf(2, 0.8)).toBe('let-down');
    expect(stageOf(2, 1)).toBe('breakdown');
  });
});

// Kilborn & Tipples, Cereal Chemistry 49 (1972) 34–47, abstract: a dough needs both an intensity above a least one and
// work above a least amount; short of either it is not developed, beyond both little changes, least with strong flour.
describe('the two conditions of development', () => {
  const turns = (rpm: number, minutes: number, flour = strongWhite) => {
    const mixer: MixerData = { kind: 'spiral', speeds: [{ number: 1, rpm }] };
    return simulateMixing(programme(flour, 0.65, mixer, [speed(1, minutes)], { flourGrams: 9000 }));
  };

  test('work enough, too gently, does not develop', () => {
    const gentle = turns(20, 600);
    expect(told(gentle.development)).toBe(0);
    expect(gentle.notes.map(({ code }) => code)).toContain('mixing.gentle-speed');
    expect(gentle.developedAfter.known).toBe(false);
  });

  test('intensity enough, too short, does not develop', () => {
    expect(told(turns(200, 3).stage)).not.toBe('developed');
  });

  test('both develop, and half as much again changes nothing for a strong flour', () => {
    const need = told(turns(200, 3).developedAfter).expected;
    expect(told(turns(200, need * 1.05).stage)).toBe('developed');
    expect(told(turns(200, need * 1.5).stage)).toBe('developed');
  });

  test('a strong flour bears over-mixing longer than a weak one', () => {
    const weak: FlourData = { ...strongWhite, protein: 0.095 };
    const gap = (flour: FlourData) => {
      const { developedAfter, breakdownAfter } = turns(200, 3, flour);
      return told(breakdownAfter).expected - told(developedAfter).expected;
    };
    expect(gap(strongWhite)).toBeGreaterThan(3 * gap(weak));
  });
});

describe('what cannot be told', () => {
  test('a rye dough has a temperature but no curve', () => {
    const input = programme(strongWhite, 0.8, spiral, [speed(1, 6)]);
    const rye = simulateMixing({ ...input, curve: blendCurve([{ grams: 1, flour: { grain: 'rye' } }]) });
    expect(rye.endCelsius.known).toBe(true);
    for (const one of [rye.development, rye.stage, rye.letDownAfter, rye.breakdownAfter]) {
      expect(!one.known && one.reason.code).toContain('flour.mostly-');
    }
  });

  test('a speed without rpm leaves both unknown, with the cure', () => {
    const outcome = simulateMixing(
      programme(strongWhite, 0.65, { kind: 'spiral', speeds: [] }, [speed(1, 6)]),
    );
    expect(!outcome.endCelsius.known && outcome.endCelsius.reason.code).toContain('rpm');
    expect(!outcome.development.known && outcome.development.reason.code).toContain('rpm');
  });

  test('flour that nobody described still has an answer, with wide bands and the reason', () => {
    const outcome = simulateMixing(programme({ grain: 'wheat' }, 0.65, spiral, [speed(1, 6)]));
    const { low, expected, high } = told(outcome.developedAfter);
    expect(low).toBeCloseTo(expected * 0.6, 9);
    expect(high).toBeCloseTo(expected * 1.4, 9);
    expect(outcome.notes.map(({ code }) => code)).toContain('flour.protein-assumed');
  });

  test('an empty programme, or one without water, is told so', () => {
    const empty = simulateMixing({ ...programme(strongWhite, 0.65, spiral, []), phases: [] });
    expect(empty.endCelsius.known).toBe(false);
    expect(empty.developedAfter.known).toBe(false);
    const dry = simulateMixing({
      ...programme(strongWhite, 0.65, spiral, []),
      phases: [{ kind: 'load', portions: [flourPortion(1000)] }, speed(1, 5)],
    });
    expect(dry.development.known).toBe(false);
    expect(dry.notes.map(({ code }) => code)).toContain('mixing.works-too-early');
    // Dry flour gives off no heat of hydration.
    expect(told(dry.endCelsius) - told(dry.warmedCelsius)).toBeCloseTo(21, 9);
  });

  test('nothing is NaN whatever the numbers', () => {
    const number = fc.oneof(fc.double(), between(-50, 500));
    fc.assert(
      fc.property(number, number, number, number, number, (grams, temperature, seconds, rpm, moisture) => {
        const mixer: MixerData = {
          kind: 'spiral',
          speeds: [{ number: 1, rpm }],
          frictionCelsius: temperature,
        };
        const outcome = simulateMixing({
          phases: [
            { kind: 'load', portions: [flourPortion(grams, temperature, moisture), waterPortion(650, 10)] },
            { kind: 'speed', number: 1, seconds },
            { kind: 'rest', seconds },
          ],
          mixer,
          curve: blendCurve([{ grams, flour: { grain: 'wheat', moisture } }]),
          roomCelsius: temperature,
          limitCelsius: 30,
        });
        const numbers: number[] = [outcome.programmeMinutes, outcome.workedMinutes];
        for (const one of [outcome.slowMinutes, outcome.endCelsius, outcome.development]) {
          if (one.known) numbers.push(one.value);
          else expect(inWords(one.reason)).not.toBe('');
        }
        for (const point of outcome.points)
          numbers.push(point.minutes, point.celsius ?? 0, point.development ?? 0);
        expect(numbers.filter(Number.isNaN)).toEqual([]);
      }),
    );
  });
});

describe('water for a programme', () => {
  const work = [speed(1, 3), speed(2, 4)];
  const mixing = (waterGrams: number, mixer: MixerData = spiral, room = 21): MixingInput => ({
    ...programme(strongWhite, 0.65, mixer, []),
    roomCelsius: room,
    phases: [
      { kind: 'load', portions: [flourPortion(10_000, room), temperedWater(waterGrams)] },
      rest(20),
      { kind: 'add', portions: [saltPortion(200, room)] },
      ...work,
      { kind: 'add', portions: [butterPortion(500)] },
      speed(1, 2),
    ],
  });

  test('brings the dough to its target to 1e-6, and the bill of heat closes', () => {
    fc.assert(
      fc.property(between(5000, 9000), between(20, 30), between(10, 35), (grams, target, room) => {
        const found = temperWater({ mixing: mixing(grams, spiral, room), targetCelsius: target });
        const tempered = told(found);
        const bill = told(mixingBill(mixing(grams, spiral, room), { celsius: tempered.effectiveCelsius }));
        expect(Math.abs(bill.lines.reduce((sum, line) => sum + line.celsius, 0))).toBeLessThan(1e-6);
        const end = told(tempered.outcome.endCelsius);
        if (tempered.reach === 'reachable') expect(Math.abs(end - target)).toBeLessThan(1e-6);
        else if (tempered.reach === 'tap too warm') expect(end).toBeGreaterThan(target);
        else expect(end).toBeLessThan(target);
      }),
      { numRuns: 40 },
    );
  });

  test('is never hotter than 60 °C, by hand than 40, and says so where that is not warm enough', () => {
    const little = told(temperWater({ mixing: mixing(2500, spiral, 10), targetCelsius: 29 }));
    expect(little).toMatchObject({ reach: 'not warm enough', waterCelsius: 60 });
    expect(told(little.doughCelsius)).toBeLessThan(29);
    const load: MixingPhase = { kind: 'load', portions: [flourPortion(400), temperedWater(260)] };
    const long = told(
      temperWater({
        mixing: { ...programme(strongWhite, 0.65, hand, []), phases: [load, knead(60)] },
        targetCelsius: 29,
      }),
    );
    expect(long.reach).toBe('no lever');
    expect(long.waterCelsius).toBeUndefined();
    const short = told(
      temperWater({
        mixing: { ...programme(strongWhite, 0.65, hand, []), roomCelsius: 12, phases: [load, knead(8)] },
        targetCelsius: 29,
      }),
    );
    expect(short).toMatchObject({ reach: 'not warm enough', waterCelsius: 40 });
    fc.assert(
      fc.property(between(20, 40), between(10, 35), (target, room) => {
        const found = temperWater({ mixing: mixing(6500, spiral, room), targetCelsius: target });
        const { waterCelsius, tapCelsius } = told(found);
        expect(waterCelsius ?? 20).toBeLessThanOrEqual(60);
        expect(waterCelsius ?? 20).toBeGreaterThanOrEqual(tapCelsius);
      }),
      { numRuns: 30 },
    );
  });

  test('a rest brings the dough nearer to the room no faster than bulk does', () => {
    for (const mixer of [spiral, planetary, hand]) {
      const [grams, minutes] = [10_000, 40];
      const input = (room: number): MixingInput => ({
        ...programme(strongWhite, 0.65, mixer, []),
        roomCelsius: room,
        phases: [
          { kind: 'load', portions: [flourPortion(grams, 20), waterPortion(0.65 * grams, 20)] },
          rest(minutes),
        ],
      });
      const end = (room: number) => told(simulateMixing(input(room)).endCelsius);
      const followed = (end(30) - end(10)) / 20;
      expect(followed).toBeCloseTo(1 - Math.exp(-minutes / restingMinutes(1.65 * grams)), 9);
      // 16 kg of dough in a bowl keeps its warmth: under a tenth in forty minutes (common practice, no source).
      expect(followed).toBeLessThan(0.1);
    }
  });

  test('needs no ice when the tap is cool enough, and less of it the warmer the target', () => {
    const iceAt = (targetCelsius: number, tapCelsius: number) =>
      told(temperWater({ mixing: mixing(6500), targetCelsius, tapCelsius, hasIce: true })).ice?.iceGrams ?? 0;
    expect(iceAt(25, 8)).toBe(0);
    expect(iceAt(20, 25)).toBeGreaterThan(iceAt(23, 25));
  });

  test('is the tap’s where that is too warm: ice is a cure, planned only where there is ice, and never above half', () => {
    const input = { mixing: mixing(6500, spiral, 25), targetCelsius: 22, tapCelsius: 18 };
    const plain = told(temperWater(input));
    expect(plain).toMatchObject({ reach: 'tap too warm', waterCelsius: 18 });
    expect(plain.ice).toBeUndefined();
    const cure = plain.iceCure!;
    expect(cure.doughCelsius).toBeCloseTo(22, 6);
    expect(told(plain.doughCelsius)).toBeCloseTo(22 + cure.gainedCelsius, 6);
    const planned = told(temperWater({ ...input, hasIce: true }));
    expect(planned.ice).toEqual(cure);
    expect(told(planned.doughCelsius)).toBeCloseTo(22, 6);
    const hot = told(
      temperWater({ mixing: mixing(3500, spiral, 38), targetCelsius: 1, tapCelsius: 30, hasIce: true }),
    );
    expect(hot.ice!.iceGrams).toBeCloseTo(1750, 6);
    expect(hot.ice!.doughCelsius).toBeCloseTo(told(hot.outcome.endCelsius), 9);
    // A tap that is hardly too warm is not worth the weighing of ice.
    const nearly = told(
      temperWater({ ...input, targetCelsius: told(plain.doughCelsius) - 0.3, hasIce: true }),
    );
    expect(nearly.ice).toBeUndefined();
  });

  test('follows a measured friction factor where no speed has its own warming', () => {
    const simple: MixingInput = {
      ...programme(strongWhite, 0.65, { ...spiral, frictionCelsius: 20 }, []),
      phases: [{ kind: 'load', portions: [flourPortion(20_000), temperedWater(13_000)] }, ...work],
      friction: {
        doughCelsius: 25,
        roomCelsius: 21,
        flourCelsius: 21,
        shares: { flour: 0.42, water: 0.58, salt: 0 },
      },
    };
    const tempered = told(temperWater({ mixing: simple, targetCelsius: 25, tapCelsius: 12 }));
    // The factor beside the rule is the one that the rule used.
    expect(told(tempered.rule).frictionCelsius).toBe(20);
    expect(told(tempered.rule).waterCelsius).toBeCloseTo(13, 9);
    expect(Math.abs(tempered.waterCelsius! - 13)).toBeLessThan(0.3);
    const measured: MixerData = {
      ...spiral,
      speeds: spiral.speeds.map((one) => ({ ...one, warmsCelsiusPerMinute: 0.5 })),
    };
    const without = told(
      temperWater({ mixing: { ...simple, mixer: measured }, targetCelsius: 25, tapCelsius: 5 }),
    );
    const factored = { ...measured, frictionCelsius: 20 };
    const withFactor = told(
      temperWater({ mixing: { ...simple, mixer: factored }, targetCelsius: 25, tapCelsius: 5 }),
    );
    expect(withFactor.waterCelsius).toBeCloseTo(without.waterCelsius!, 9);
  });

  test('of a dough kneaded by hand follows a measured friction factor too', () => {
    const byHand: MixingInput = {
      ...programme(strongWhite, 0.65, { ...hand, frictionCelsius: 9 }, []),
      phases: [{ kind: 'load', portions: [flourPortion(1000), temperedWater(650)] }, knead(10)],
      friction: {
        doughCelsius: 25,
        roomCelsius: 21,
        flourCelsius: 21,
        shares: { flour: 0.42, water: 0.58, salt: 0 },
      },
    };
    const tempered = told(temperWater({ mixing: byHand, targetCelsius: 25, tapCelsius: 8 }));
    expect(told(tempered.rule).frictionCelsius).toBe(9);
    expect(Math.abs(tempered.waterCelsius! - told(tempered.rule).waterCelsius)).toBeLessThan(0.5);
  });

  test('is unknown with its reason without water, and no figure where it can change nothing', () => {
    const none = temperWater({ mixing: programme(strongWhite, 0.65, spiral, work), targetCelsius: 25 });
    expect(!none.known && none.reason.code).toContain('no-water');
    const long: MixingInput = {
      ...programme(strongWhite, 0.65, hand, []),
      phases: [{ kind: 'load', portions: [flourPortion(100), temperedWater(65)] }, rest(6000)],
    };
    expect(told(temperWater({ mixing: long, targetCelsius: 25 })).waterCelsius).toBeUndefined();
  });
});

describe('the outcome', () => {
  test('has a point for the end of each line and tells the temperature in between', () => {
    const outcome = simulateMixing(
      programme(strongWhite, 0.65, spiral, [speed(1, 4), rest(10), speed(2, 4)]),
    );
    expect(outcome.phaseEnds.map((one) => [one.phase, one.minutes])).toEqual([
      [0, 0],
      [1, 0],
      [2, 4],
      [3, 14],
      [4, 18],
    ]);
    expect(outcome.workedMinutes).toBe(8);
    expect(outcome.programmeMinutes).toBe(18);
    const midway = told(celsiusAt(outcome, 16));
    expect(midway).toBeGreaterThan(outcome.phaseEnds[3]!.celsius!);
    expect(midway).toBeLessThan(told(outcome.endCelsius));
    expect(told(celsiusAt(outcome, 18))).toBeCloseTo(told(outcome.endCelsius), 9);
  });

  test('tells when the dough passes a temperature, also past the end at the last speed', () => {
    const input = programme(strongWhite, 0.65, planetary, [speed(4, 5)]);
    const inside = told(simulateMixing({ ...input, limitCelsius: 24 }).limitAfter);
    expect(inside.atLastSpeed).toBe(false);
    const outcome = simulateMixing({ ...input, limitCelsius: told(simulateMixing(input).endCelsius) + 1 });
    const beyond = told(outcome.limitAfter);
    expect(beyond.atLastSpeed).toBe(true);
    expect(beyond.minutes).toBeGreaterThan(5);
    const longer = simulateMixing(programme(strongWhite, 0.65, planetary, [speed(4, beyond.minutes)]));
    expect(told(longer.endCelsius) - told(simulateMixing(input).endCelsius)).toBeCloseTo(1, 6);
  });

  test('more minutes never develop or, in a room as warm as the dough, warm it less', () => {
    fc.assert(
      fc.property(between(0, 40), between(0.1, 20), (minutes, more) => {
        const short = simulateMixing(
          programme(strongWhite, 0.68, spiral, [speed(2, minutes)], { flourGrams: 9000 }),
        );
        const long = simulateMixing(
          programme(strongWhite, 0.68, spiral, [speed(2, minutes + more)], { flourGrams: 9000 }),
        );
        if (short.development.known) expect(told(long.development)).toBeGreaterThan(short.development.value);
        expect(told(long.endCelsius)).toBeGreaterThanOrEqual(told(short.endCelsius));
      }),
    );
  });

  test('a mixer that states how fast it develops narrows the bands, and leaves what is expected', () => {
    const input = programme(strongWhite, 0.65, spiral, [speed(1, 4)]);
    const wide = told(simulateMixing(input).developedAfter);
    const stated: MixerData = { ...spiral, speeds: [{ number: 1, rpm: 100, developsTimes: 1 }] };
    const narrow = told(simulateMixing({ ...input, mixer: stated }).developedAfter);
    expect(narrow.expected).toBe(wide.expected);
    expect((narrow.high - narrow.low) / (wide.high - wide.low)).toBeCloseTo(Math.SQRT1_2, 6);
  });

  test('flour and water that are wet only until all of the flour is in have no wider band', () => {
    const usual = programme(strongWhite, 0.65, spiral, [speed(1, 4)]);
    const late: MixingInput = {
      ...usual,
      phases: [
        { kind: 'load', portions: [flourPortion(700), waterPortion(650, 20)] },
        speed(1, 1),
        { kind: 'add', portions: [flourPortion(300)] },
        speed(1, 4),
      ],
    };
    expect(simulateMixing(late).band).toBe(simulateMixing(usual).band);
    const wet = programme(strongWhite, 0.95, spiral, [speed(1, 4)]);
    expect(simulateMixing(wet).band).toBeGreaterThan(0.25);
  });

  test('is the surer of its temperature the more of the mixer is measured', () => {
    const work = [speed(1, 4), rest(30), speed(2, 6)];
    const byKind = simulateMixing(programme(strongWhite, 0.65, spiral, work, { flourGrams: 20_000 }));
    const speeds = [
      { number: 1, rpm: 100, warmsCelsiusPerMinute: 0.25 },
      { number: 2, rpm: 200, warmsCelsiusPerMinute: 0.6 },
    ];
    const measured = simulateMixing(
      programme(strongWhite, 0.65, { kind: 'spiral', speeds }, work, { flourGrams: 20_000 }),
    );
    // A fifth of what mixing brings, less what the room takes back of it.
    expect(byKind.endCelsiusBand).toBeGreaterThan(0.6);
    expect(byKind.endCelsiusBand).toBeLessThan(0.2 * (4 * 0.25 + 6 * 0.6));
    expect(measured.endCelsiusBand).toBeCloseTo(byKind.endCelsiusBand / 4, 1);
    const none = simulateMixing(programme(strongWhite, 0.65, spiral, [rest(30)]));
    expect(none.endCelsiusBand).toBe(0);
  });

  test('cold butter added late cools the dough by its heat', () => {
    const base = programme(strongWhite, 0.65, spiral, [speed(1, 3)]);
    const before = told(simulateMixing(base).endCelsius);
    const after = told(
      simulateMixing({
        ...base,
        phases: [...base.phases, { kind: 'add', portions: [butterPortion(170, 8)] }],
      }).endCelsius,
    );
    // 170 g of butter at 2.35 kJ/(kg·K) in 1.67 kg of dough at 2.86, by the specific heats of Choi & Okos.
    const share = (0.17 * 2.35) / (0.17 * 2.35 + 1.67 * 2.86);
    expect(before - after).toBeCloseTo(share * (before - 8), 1);
  });
});

function between(min: number, max: number) {
  return fc.double({ min, max, noNaN: true });
}
