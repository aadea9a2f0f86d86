import { describe, expect, it } from 'vitest';
import { doughBatches, mostBatches } from '../../core/calc/plan/plan-batches.ts';
import type { Job } from '../../core/calc/plan/plan-job.ts';
import { schedule } from '../../core/calc/plan/plan-schedule.ts';

const batch = (index: number, readyMinutes = 420): Job => ({
  id: `0/${index}`,
  mixer: 'big spiral',
  mixMinutes: 12,
  betweenMinutes: 120,
  ovenMinutes: 40,
  afterMinutes: 30,
  readyMinutes,
});

describe('a plan of very many batches', () => {
  it.each([undefined, -1_000])(
    'sets each behind the other in the oven, none at the time of another, begin %s',
    (begin) => {
      const placed = schedule(
        Array.from({ length: mostBatches }, (_, index) => batch(index)),
        begin,
      );
      expect(placed).toHaveLength(mostBatches);
      const ovens = placed.map((one) => one.ovenStartMinutes).sort((one, other) => one - other);
      // The oven is the bottleneck: one load after another, without a gap.
      const late = ovens.map((start, index) => Math.abs(start - ovens[0]! - index * 40));
      expect(Math.max(...late)).toBeLessThan(1e-6);
    },
  );

  it('of two kinds is set without trying every order there is', () => {
    const jobs = Array.from({ length: 200 }, (_, index) => batch(index, index % 2 === 0 ? 420 : 480));
    const placed = schedule(jobs);
    const ovens = placed.map((one) => one.ovenStartMinutes).sort((one, other) => one - other);
    for (const [index, start] of ovens.entries())
      if (index > 0) expect(start - ovens[index - 1]!).toBeGreaterThanOrEqual(40 - 1e-6);
  });

  it('is not worked out beyond what a day can hold, and says how many it would be', () => {
    const dough = { orders: [{ readyMinutes: 0, doughGrams: 1e8, pieces: 100_000 }], dividedPerGram: 1 };
    expect(doughBatches({ ...dough, oven: { measure: 'pieces', count: 12 } })).toEqual({
      batches: [],
      remarks: [],
      tooMany: Math.ceil(100_000 / 12),
    });
    expect(doughBatches({ ...dough, oven: { measure: 'pieces', count: 50 } }).batches).toHaveLength(2000);
  });
});
