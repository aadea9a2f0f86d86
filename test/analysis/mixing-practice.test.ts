import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type MixAnalysis, warmthOf } from '../../core/analysis/mix-analysis.ts';
import type { Known } from '../../core/calc/known.ts';
import { celsiusAt, type MinutesBand } from '../../core/calc/mixing/mixing.ts';
import type { Message } from '../../core/words/message.ts';
import { contextsOf, findingsOf, workspaceOf } from '../rules/findings.ts';
import { inWords } from '../words/told.ts';

/** What practice expects of a programme: common practice, no source. The file says what each key means. */
interface Expected {
  readonly stage?: readonly string[];
  readonly silent?: readonly string[];
  readonly speaks?: readonly string[];
  readonly developed?: readonly [number, number];
  readonly letDown?: readonly [number, number];
  readonly water?: readonly [number, number];
  readonly endBandCovers?: readonly [number, number];
}

interface PracticeCase {
  readonly id: string;
  readonly title: string;
  readonly practice: string;
  readonly text: string;
  readonly expect: Expected;
}

const { cases } = JSON.parse(readFileSync(new URL('./mixing-practice.json', import.meta.url), 'utf8')) as {
  readonly cases: readonly PracticeCase[];
};

function told<T>(value: Known<T, Message>): T {
  if (!value.known) throw new Error(inWords(value.reason));
  return value.value;
}

function mixOf(text: string): MixAnalysis {
  const files = workspaceOf([{ path: 'practice.dough', text }]);
  const found = contextsOf(files, 'practice.dough').find(({ context }) => context.analysis !== undefined);
  return told(found!.context.analysis!.doughMix);
}

/** What is found at or above a warning, by its code. */
function warnings(text: string): string[] {
  const findings = findingsOf([{ path: 'practice.dough', text }]);
  return findings.filter(({ level }) => level === 'warning' || level === 'error').map(({ code }) => code);
}

describe('programmes of common practice, no source', () => {
  it.each(cases)('$id $title: $practice', ({ text, expect: expected }) => {
    const { outcome, water } = mixOf(text);
    const within = (
      band: Known<MinutesBand, Message>,
      range: readonly [number, number] | undefined,
    ): void => {
      if (range === undefined) return;
      const at = told(band).expected;
      expect(at).toBeGreaterThanOrEqual(range[0]);
      expect(at).toBeLessThanOrEqual(range[1]);
    };
    if (expected.stage !== undefined) expect(expected.stage).toContain(told(outcome.stage));
    within(outcome.developedAfter, expected.developed);
    within(outcome.letDownAfter, expected.letDown);
    const found = warnings(text);
    for (const code of expected.silent ?? []) expect(found).not.toContain(code);
    if (expected.speaks !== undefined)
      expect(found.filter((code) => expected.speaks!.includes(code))).not.toEqual([]);
    const drawn = water.known ? water.value.waterCelsius : undefined;
    if (expected.water !== undefined && drawn !== undefined) {
      expect(drawn).toBeGreaterThanOrEqual(expected.water[0]);
      expect(drawn).toBeLessThanOrEqual(expected.water[1]);
    }
    if (expected.endBandCovers !== undefined) {
      const end = told(outcome.endCelsius);
      expect(end - outcome.endCelsiusBand).toBeLessThanOrEqual(expected.endBandCovers[1]);
      expect(end + outcome.endCelsiusBand).toBeGreaterThanOrEqual(expected.endBandCovers[0]);
    }
  });
});

// What practitioners tell of small doughs that are worked on purpose far too long: common practice, no source.
describe('small doughs worked for an hour', () => {
  const flour = 'flour white:\n  grain wheat\n  milling white\n  protein 13%\n\n';
  const dough = (
    celsius: number,
    water: string,
    mix: string,
    day = '  room 23 °C\n  flour 21 °C\n',
  ): string =>
    `bakery Quay Lane:\n${day}\n${flour}formula White:\n  dough temperature 25 °C\n  white  400 g\n  water  ${water}, at ${celsius} °C\n  salt  2%\n  instant yeast  1%\n\n${mix}`;
  const load = '  load white, water, salt, instant yeast\n';
  const machine = mixOf(dough(9, '65%', `mix in planetary:\n${load}  speed 1 for 60 min\n`));
  const hands = mixOf(dough(24, '65%', `mix by hand:\n${load}  knead 60 min\n`));

  it.each([
    [
      'machine',
      machine,
      [
        [8, 23.5],
        [16, 26.6],
        [30, 27.3],
        [60, 28.1],
      ],
    ],
    [
      'hands',
      hands,
      [
        [8, 26],
        [16, 29],
        [30, 30],
        [60, 31],
      ],
    ],
  ] as const)('warm as thermometers show, within the band: %s', (_, mix, readings) => {
    for (const [minute, celsius] of readings) {
      const band = mix.outcome.points.findLast(({ minutes }) => minutes <= minute + 1e-9);
      const atEnd = Math.max(band?.celsiusBand ?? 0, mix.outcome.endCelsiusBand);
      expect(Math.abs(told(celsiusAt(mix.outcome, minute)) - celsius)).toBeLessThan(atEnd + 0.3);
    }
  });

  it('are developed after some eight minutes, and baked normally after sixty', () => {
    for (const { outcome } of [machine, hands]) {
      const developed = told(outcome.developedAfter);
      expect(developed.low).toBeLessThan(8);
      expect(developed.high).toBeGreaterThan(8);
    }
    // By hand it is never broken down; by machine the hour lies before the last of the band.
    expect(told(hands.outcome.letDownAfter).low).toBeGreaterThan(60);
    expect(told(machine.outcome.breakdownAfter).low).toBeGreaterThan(45);
  });

  it('take longer when they are wetter', () => {
    const rested = (mix: string): MixAnalysis =>
      mixOf(
        dough(20, '75%', mix.replace('LOAD', 'load white, water\n  rest 30 min\n  add salt, instant yeast')),
      );
    const byHand = rested('mix by hand:\n  LOAD\n  knead 25 min\n');
    expect(told(byHand.outcome.developedAfter).high - 30).toBeGreaterThan(13);
    const fast = rested('mix in planetary:\n  LOAD\n  speed 3 for 20 min\n  speed 4 for 10 min\n');
    const developed = told(fast.outcome.developedAfter);
    expect(developed.high - 30).toBeGreaterThan(15);
    expect(developed.expected - 30).toBeLessThan(20);
    expect(told(fast.outcome.breakdownAfter).expected).toBeGreaterThan(30 + 30);
  });

  it('of wholemeal are whole at thirty minutes and broken at forty-five', () => {
    const meal = mixOf(
      `flour meal:\n  grain wheat\n  milling wholemeal\n  protein 13%\n\nformula Brown:\n  meal  400 g\n  water  80%, at 20 °C\n  salt  2%\n  instant yeast  1%\n\nmix in planetary:\n  load meal, water, salt, instant yeast\n  speed 1 for 60 min\n`,
    );
    const { developedAfter, letDownAfter, breakdownAfter } = meal.outcome;
    expect(Math.abs(told(developedAfter).expected - 15)).toBeLessThan(2);
    expect(told(letDownAfter).expected).toBeGreaterThan(30);
    expect(told(breakdownAfter).expected).toBeGreaterThan(31);
    expect(told(breakdownAfter).expected).toBeLessThan(45);
  });

  it('are slightly warm at 26.6 °C and much too warm at 29 °C', () => {
    expect(inWords(warmthOf(26.6 - 25))).toBe('slightly warm');
    expect(inWords(warmthOf(29 - 25))).toBe('much too warm');
  });
});
