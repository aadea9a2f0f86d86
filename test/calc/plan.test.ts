import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PlannedDough, planDay } from '../../core/calc/plan/plan.ts';
import { type DoughToMake, doughBatches } from '../../core/calc/plan/plan-batches.ts';
import type { Job } from '../../core/calc/plan/plan-job.ts';
import { schedule } from '../../core/calc/plan/plan-schedule.ts';
import { timeMessage } from '../../core/facts/time-words.ts';
import { clockOf, daysOf, isoOf } from '../../core/text/dates.ts';
import { plainSpeaker } from '../../core/words/speak.ts';

const pieces = (count: number, gramsEach: number, readyMinutes = 0) => ({
  readyMinutes,
  doughGrams: count * gramsEach,
  pieces: count,
});
const dough = (more: Partial<DoughToMake>): DoughToMake => ({ orders: [], dividedPerGram: 1, ...more });

const timeWords = (minutes: number, dated: boolean): string => plainSpeaker.say(timeMessage(minutes, dated));

describe('batches', () => {
  it('are the fewest equal ones that the bowl takes', () => {
    const { batches, remarks } = doughBatches(
      dough({ orders: [pieces(100, 1000)], bowl: { leastGrams: 12_000, mostGrams: 60_000 } }),
    );
    expect(remarks).toEqual([]);
    expect(batches.map(({ doughGrams }) => doughGrams)).toEqual([50_000, 50_000]);
  });

  it('fit the oven too, and keep pieces whole', () => {
    const { batches } = doughBatches(
      dough({
        orders: [pieces(70, 500)],
        bowl: { leastGrams: 5000, mostGrams: 60_000 },
        oven: { measure: 'pieces', count: 30 },
      }),
    );
    expect(batches.map((batch) => batch.pieces)).toEqual([24, 23, 23]);
    expect(batches.every(({ ovenLoads }) => ovenLoads === 1)).toBe(true);
  });

  it('bake in several loads where the bowl wants more than an oven', () => {
    const { batches, remarks } = doughBatches(
      dough({
        orders: [pieces(60, 500)],
        bowl: { leastGrams: 20_000, mostGrams: 60_000 },
        oven: { measure: 'mass', grams: 12_000 },
      }),
    );
    expect(batches.map(({ ovenLoads }) => ovenLoads)).toEqual([3]);
    expect(remarks).toEqual(['several-loads']);
  });

  it('say when the bowl cannot take them', () => {
    const bowl = { leastGrams: 12_000, mostGrams: 20_000 };
    expect(doughBatches(dough({ orders: [pieces(5, 1000)], bowl })).remarks).toEqual(['below-least']);
    const gap = doughBatches(dough({ orders: [pieces(22, 1000)], bowl }));
    expect(gap.remarks).toEqual(['gap']);
    expect(gap.batches).toHaveLength(2);
  });

  it('merge the orders of one dough, those ready first made first', () => {
    const { batches } = doughBatches(
      dough({
        orders: [pieces(20, 1000, 500), pieces(20, 1000, 100)],
        bowl: { leastGrams: 0, mostGrams: 20_000 },
      }),
    );
    expect(batches.map(({ readyMinutes }) => readyMinutes)).toEqual([100, 500]);
  });

  it('lose no dough and no piece, whatever is asked', () => {
    const order = fc.record({
      count: fc.integer({ min: 1, max: 300 }),
      ready: fc.integer({ min: 0, max: 600 }),
    });
    fc.assert(
      fc.property(
        fc.array(order, { minLength: 1, maxLength: 4 }),
        fc.integer({ min: 1000, max: 80_000 }),
        fc.integer({ min: 1, max: 90 }),
        (orders, mostGrams, count) => {
          const all = orders.map((one) => pieces(one.count, 600, one.ready));
          const { batches } = doughBatches(
            dough({ orders: all, bowl: { mostGrams }, oven: { measure: 'pieces', count } }),
          );
          const sum = (figures: number[]) => figures.reduce((total, one) => total + one, 0);
          const wanted = sum(orders.map((one) => one.count));
          expect(sum(batches.map((batch) => batch.pieces!))).toBe(wanted);
          expect(sum(batches.map((batch) => batch.doughGrams))).toBeCloseTo(wanted * 600, 6);
          const sizes = batches.map((batch) => batch.pieces!);
          expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(1);
          // A hair over a full bowl is the one piece that equal batches do not divide.
          for (const { doughGrams } of batches) expect(doughGrams).toBeLessThanOrEqual(mostGrams + 600);
        },
      ),
    );
  });
});

const job = (id: string, more: Partial<Job> = {}): Job => ({
  id,
  mixer: 'spiral',
  mixMinutes: 20,
  betweenMinutes: 120,
  ovenMinutes: 40,
  afterMinutes: 60,
  readyMinutes: 1000,
  ...more,
});

describe('the order of the day', () => {
  it('sets one job as late as it may be', () => {
    const [only] = schedule([job('a')]);
    expect(only).toMatchObject({
      startMinutes: 760,
      ovenStartMinutes: 900,
      endMinutes: 1000,
      lateMinutes: 0,
    });
  });

  it('has one dough in the oven after another', () => {
    const all = schedule([job('a'), job('b'), job('c')]);
    expect(all.map((one) => one.ovenStartMinutes).sort((a, b) => a - b)).toEqual([820, 860, 900]);
  });

  it('says how late it gets where nobody may begin earlier', () => {
    // Three batches through one oven: with the first mixed at 740 the last leaves it at 740 + 140 + 3 · 40.
    const all = schedule([job('a'), job('b'), job('c')], 740);
    expect(Math.min(...all.map((one) => one.startMinutes))).toBeGreaterThanOrEqual(740);
    expect(Math.max(...all.map((one) => one.lateMinutes))).toBe(60);
  });

  const anyJob = fc.record({
    mixer: fc.constantFrom('spiral', 'planetary'),
    mixMinutes: fc.integer({ min: 0, max: 45 }),
    betweenMinutes: fc.integer({ min: 0, max: 300 }),
    ovenMinutes: fc.integer({ min: 0, max: 90 }),
    afterMinutes: fc.integer({ min: 0, max: 120 }),
    readyMinutes: fc.integer({ min: 0, max: 400 }),
  });

  it('never mixes two in one bowl nor bakes two in one oven, and each has its own time', () => {
    fc.assert(
      fc.property(
        fc.array(anyJob, { minLength: 1, maxLength: 9 }),
        fc.option(fc.integer({ min: -1500, max: 0 })),
        (some, begin) => {
          const jobs = some.map((one, index) => ({ ...one, id: String(index) }));
          const all = schedule(jobs, begin ?? undefined);
          expect(all.map((one) => one.job.id).sort()).toEqual(jobs.map((one) => one.id).sort());
          for (const one of all) {
            const { mixMinutes, betweenMinutes, ovenMinutes, afterMinutes, readyMinutes } = one.job;
            expect(one.ovenStartMinutes).toBe(one.startMinutes + mixMinutes + betweenMinutes);
            expect(one.endMinutes).toBe(one.ovenStartMinutes + ovenMinutes + afterMinutes);
            expect(one.lateMinutes).toBe(Math.max(0, one.endMinutes - readyMinutes));
            if (begin === null) expect(one.lateMinutes).toBe(0);
            else if (one.lateMinutes > 0) expect(one.startMinutes).toBeGreaterThanOrEqual(begin);
          }
          const apart = (spans: readonly (readonly [number, number])[]): void => {
            const sorted = [...spans].filter(([from, to]) => to > from).sort(([one], [other]) => one - other);
            for (let i = 1; i < sorted.length; i++)
              expect(sorted[i]![0]).toBeGreaterThanOrEqual(sorted[i - 1]![1] - 1e-9);
          };
          apart(all.map((one) => [one.ovenStartMinutes, one.ovenStartMinutes + one.job.ovenMinutes]));
          for (const mixer of ['spiral', 'planetary']) {
            const own = all.filter((one) => one.job.mixer === mixer);
            apart(own.map((one) => [one.startMinutes, one.startMinutes + one.job.mixMinutes]));
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('what is made before', () => {
  const bread = (more: Partial<PlannedDough>): PlannedDough => ({
    key: 'a',
    name: 'A',
    orders: [pieces(10, 1000, 1000)],
    dividedPerGram: 1,
    mixer: 'spiral',
    mixMinutes: 20,
    betweenMinutes: 100,
    bakeMinutes: 40,
    afterMinutes: 60,
    parts: [],
    ...more,
  });

  it('starts backwards, parts inside parts still earlier', () => {
    const { parts } = planDay([
      bread({
        parts: [
          { key: 'sour', name: 'sour', grams: 2000, standsMinutes: 840 },
          { key: 'starter', name: 'starter', grams: 200, standsMinutes: 480, takenBy: 'sour' },
        ],
      }),
    ]);
    expect(parts.map((part) => [part.name, part.startMinutes])).toEqual([
      ['starter', 780 - 840 - 480],
      ['sour', 780 - 840],
    ]);
  });

  it('is made once for all that share it, for the first of them', () => {
    const levain = { key: 'levain:', name: 'levain', grams: 1000, standsMinutes: 240 };
    const { parts } = planDay([
      bread({ parts: [levain] }),
      bread({ key: 'b', name: 'B', orders: [pieces(10, 1000, 600)], parts: [levain] }),
    ]);
    expect(parts).toHaveLength(1);
    expect(parts[0]).toMatchObject({
      grams: 2000,
      doughs: ['A', 'B'],
      neededMinutes: 380,
      lastNeededMinutes: 780,
    });
  });
});

describe('dates', () => {
  it('count days as the calendar does', () => {
    expect(daysOf('1970-01-01')).toBe(0);
    // 2000 was a leap year, 1900 and 2100 are none.
    expect(daysOf('2000-02-29')).toBe(11_016);
    expect(daysOf('2100-02-29')).toBeUndefined();
    expect(daysOf('2026-13-01')).toBeUndefined();
    fc.assert(
      fc.property(fc.integer({ min: -100_000, max: 200_000 }), (days) => {
        // The runtime's own calendar is the reference.
        expect(isoOf(days)).toBe(new Date(days * 86_400_000).toISOString().slice(0, 10));
        expect(daysOf(isoOf(days))).toBe(days);
      }),
    );
  });

  it('are told with the time', () => {
    expect(timeWords(daysOf('2026-05-16')! * 1440 + 390, true)).toBe('2026-05-16 06:30');
    expect([timeWords(390, false), timeWords(-120, false), clockOf(1440)]).toEqual([
      '06:30',
      'day -1 22:00',
      '00:00',
    ]);
  });
});
