import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Job } from '../../core/calc/plan/plan-job.ts';
import { lateReasons } from '../../core/calc/plan/plan-late.ts';
import { type ScheduledJob, schedule } from '../../core/calc/plan/plan-schedule.ts';
import type { DayLimits } from '../../core/calc/plan/plan-taken.ts';
import { dayWork } from '../../core/calc/plan/plan-work.ts';

/** Mixed for 20 min, stands 100 min, baked for 40 min at 230 °C, cools for 60 min: 220 min in all. */
const job = (id: string, more: Partial<Job> = {}): Job => ({
  id,
  mixer: 'spiral',
  mixMinutes: 20,
  betweenMinutes: 100,
  ovenMinutes: 40,
  afterMinutes: 60,
  readyMinutes: 600,
  bake: '40 at 230',
  fill: 0.4,
  inCelsius: 230,
  outCelsius: 230,
  hands: [{ offset: 0, minutes: 20, what: 'mix' }],
  ...more,
});

const starts = (scheduled: readonly ScheduledJob[]) =>
  Object.fromEntries(scheduled.map(({ job: { id }, startMinutes }) => [id, startMinutes]));

// Each day here was worked out by hand, from what is ready backwards or from the beginning forwards.
describe('a day worked out by hand', () => {
  it('bakes two doughs of the same bake in one load where loads are shared, else one behind the other', () => {
    const jobs = [job('a'), job('b', { mixer: 'planetary' })];
    // Ready at 600: out of the oven at 540, in at 500, mixed from 380 on. The other one load, 40 min, before.
    expect(Object.values(starts(schedule(jobs))).sort()).toEqual([340, 380]);
    expect(Object.values(starts(schedule(jobs, undefined, { sharesLoads: true })))).toEqual([380, 380]);
  });

  it('shares no load that would be more than full, nor one of another bake', () => {
    const full = [job('a', { fill: 0.6 }), job('b', { mixer: 'planetary', fill: 0.5 })];
    expect(Object.values(starts(schedule(full, undefined, { sharesLoads: true }))).sort()).toEqual([
      340, 380,
    ]);
    const other = [
      job('a'),
      job('b', { mixer: 'planetary', bake: '40 at 200', inCelsius: 200, outCelsius: 200 }),
    ];
    expect(Object.values(starts(schedule(other, undefined, { sharesLoads: true }))).sort()).toEqual([
      340, 380,
    ]);
  });

  it('brings a third into the load that has room, though its mixer is busy until then', () => {
    // a and b of one mixer: b cannot be mixed at the time of a, so it cannot go in with it. c of another goes in with one of them.
    const jobs = [job('a'), job('b'), job('c', { mixer: 'planetary' })];
    const placed = schedule(jobs, undefined, { sharesLoads: true });
    const loads = dayWork(placed, {}).sharedLoads;
    expect(loads).toHaveLength(1);
    expect(loads[0]!.jobs).toContain('c');
    expect(Math.min(...placed.map((one) => one.startMinutes))).toBe(340);
  });

  it('leaves time between loads of different temperatures, and none between those of one', () => {
    const jobs = [
      job('hot', { inCelsius: 250, outCelsius: 250 }),
      job('mild', { mixer: 'planetary', inCelsius: 200, outCelsius: 200 }),
    ];
    // One is in from 500 to 540; the other is out 15 min before that, at 485, in at 445 and mixed from 325 on.
    const placed = schedule(jobs, undefined, { changeMinutes: 15 });
    expect(Object.values(starts(placed)).sort()).toEqual([325, 380]);
    expect(dayWork(placed, { changeMinutes: 15 }).ovenTurns).toEqual([
      { kind: 'change', startMinutes: 485, endMinutes: 500, toCelsius: placed.at(-1)!.job.inCelsius },
    ]);
    const alike = [job('a'), job('b', { mixer: 'planetary' })];
    expect(Object.values(starts(schedule(alike, undefined, { changeMinutes: 15 }))).sort()).toEqual([
      340, 380,
    ]);
  });

  it('has the oven hot before the first load, and nothing in it sooner after the beginning', () => {
    // In at 500, so heated from 450 on; were the beginning at 480, hot at 530: in then, ready at 630, mixed from 410 on,
    // which is before the beginning. From 480 on the mixing alone takes it to 600, later than the heat.
    expect(
      dayWork(schedule([job('a')], undefined, { heatMinutes: 50 }), { heatMinutes: 50 }).ovenTurns,
    ).toEqual([{ kind: 'heat', startMinutes: 450, endMinutes: 500, toCelsius: 230 }]);
    // A dough of 10 min before the oven: begun at 480 it could go in at 490, and the oven is hot at 530.
    const quick = job('q', { mixMinutes: 5, betweenMinutes: 5, hands: [], readyMinutes: 600 });
    expect(schedule([quick], 480, { heatMinutes: 50 })).toMatchObject([
      { startMinutes: 520, ovenStartMinutes: 530, endMinutes: 630, lateMinutes: 30 },
    ]);
  });

  it('lets one person mix one dough after the other, and two both at once', () => {
    const jobs = [job('a'), job('b', { mixer: 'planetary' })];
    const shared = { sharesLoads: true };
    // Alone: 20 min of work before 380, so the other is mixed from 360 on and baked a load of its own before: from 340 on.
    expect(Object.values(starts(schedule(jobs, undefined, { ...shared, people: 1 }))).sort()).toEqual([
      340, 380,
    ]);
    const two = schedule(jobs, undefined, { ...shared, people: 2 });
    expect(Object.values(starts(two))).toEqual([380, 380]);
    expect(dayWork(two, {})).toMatchObject({ mostPeople: 2, mostAtMinutes: 380 });
  });

  it('frees whoever mixes while the dough rests', () => {
    // 5 min of work, 10 of rest, 5 of work: another 5 min of work fit into the rest.
    const hands = [
      { offset: 0, minutes: 5, what: 'mix' as const },
      { offset: 15, minutes: 5, what: 'mix' as const },
    ];
    const short = job('short', {
      ...{ mixer: 'planetary', mixMinutes: 5, betweenMinutes: 90, ovenMinutes: 0 },
      ...{ afterMinutes: 0, readyMinutes: 485, hands: [{ offset: 0, minutes: 5, what: 'mix' as const }] },
    });
    const placed = schedule([job('long', { hands }), short], undefined, { people: 1 });
    expect(starts(placed)).toEqual({ long: 380, short: 390 });
  });

  it('says why what is late is late', () => {
    const reasonOf = (jobs: readonly Job[], begin: number, limits: DayLimits, id: string) => {
      const late = new Map(
        schedule(jobs, begin, limits).flatMap((one) =>
          one.lateMinutes > 0.5 ? [[one.job.id, one.lateMinutes] as const] : [],
        ),
      );
      return lateReasons(jobs, late, begin, limits).get(id);
    };
    // 220 min from 400 on are ready at 620, 20 min too late, whatever there is of anything.
    expect(reasonOf([job('a')], 400, {}, 'a')).toBe('alone');
    const quick = job('q', { mixMinutes: 5, betweenMinutes: 5, hands: [] });
    expect(reasonOf([quick], 480, { heatMinutes: 50 }, 'q')).toBe('heating');
    const two = [job('a'), job('b', { mixer: 'planetary' })];
    const late = (jobs: readonly Job[], limits: DayLimits) =>
      reasonOf(jobs, 380, limits, 'a') ?? reasonOf(jobs, 380, limits, 'b');
    expect(late(two, { sharesLoads: true, people: 1 })).toBe('people');
    expect(late(two, {})).toBe('oven');
    expect(late([job('a'), job('b')], { sharesLoads: true })).toBe('mixer');
    const apart = [
      job('a'),
      job('b', { mixer: 'planetary', readyMinutes: 640, inCelsius: 200, outCelsius: 200 }),
    ];
    expect(late(apart, { changeMinutes: 15 })).toBe('change');
    expect(late(two, { sharesLoads: true, people: 2 })).toBeUndefined();
  });
});

const anyJob = fc
  .record({
    mixer: fc.option(fc.constantFrom('spiral', 'planetary'), { nil: undefined }),
    mix: fc.integer({ min: 4, max: 30 }),
    between: fc.integer({ min: 0, max: 120 }),
    shape: fc.integer({ min: 0, max: 20 }),
    bake: fc.constantFrom('30 at 200', '30 at 240', '40 at 240'),
    fill: fc.constantFrom(0.2, 0.5, 0.8, 1),
    ready: fc.integer({ min: 300, max: 700 }),
  })
  .map(({ mixer, mix, between, shape, bake, fill, ready }): Omit<Job, 'id'> => {
    const [minutes, celsius] = bake.split(' at ').map(Number);
    return {
      ...(mixer === undefined ? {} : { mixer }),
      mixMinutes: mix,
      betweenMinutes: between + shape,
      ovenMinutes: minutes!,
      afterMinutes: 30,
      readyMinutes: ready,
      hands: [
        { offset: 0, minutes: mix, what: 'mix' },
        ...(shape === 0
          ? []
          : [{ offset: mix + between, minutes: shape, what: 'step' as const, name: 'shape' }]),
      ],
      ...{ bake, fill, inCelsius: celsius!, outCelsius: celsius! },
    };
  });

describe('whatever the day', () => {
  const days = fc.record({
    jobs: fc
      .array(anyJob, { minLength: 1, maxLength: 5 })
      .map((all) => all.map((one, index): Job => ({ id: String(index), ...one }))),
    begin: fc.option(fc.integer({ min: -200, max: 400 }), { nil: undefined }),
    people: fc.option(fc.integer({ min: 1, max: 3 }), { nil: undefined }),
    heat: fc.integer({ min: 0, max: 60 }),
    change: fc.integer({ min: 0, max: 20 }),
    sharesLoads: fc.boolean(),
  });

  it('no mixer has two doughs, nobody is in two places, no load is more than full, and the oven is hot and as it should be', () => {
    fc.assert(
      fc.property(days, ({ jobs, begin, people, heat, change, sharesLoads }) => {
        const limits: DayLimits = {
          ...(people === undefined ? {} : { people }),
          ...{ heatMinutes: heat, changeMinutes: change, sharesLoads },
        };
        const placed = schedule(jobs, begin, limits);
        expect(placed.map(({ job: { id } }) => id).sort()).toEqual(jobs.map(({ id }) => id).sort());
        const apart = (one: readonly [number, number], other: readonly [number, number]) =>
          one[1] <= other[0] + 1e-6 || other[1] <= one[0] + 1e-6;
        for (const [index, one] of placed.entries())
          for (const other of placed.slice(index + 1)) {
            if (one.job.mixer !== undefined && one.job.mixer === other.job.mixer)
              expect(
                apart(
                  [one.startMinutes, one.startMinutes + one.job.mixMinutes],
                  [other.startMinutes, other.startMinutes + other.job.mixMinutes],
                ),
              ).toBe(true);
            const [first, second] = [one, other].toSorted((a, b) => a.ovenStartMinutes - b.ovenStartMinutes);
            if (Math.abs(first!.ovenStartMinutes - second!.ovenStartMinutes) < 1e-6) {
              expect(sharesLoads && first!.job.bake === second!.job.bake).toBe(true);
            } else {
              const gap = first!.job.outCelsius === second!.job.inCelsius ? 0 : change;
              const out = first!.ovenStartMinutes + first!.job.ovenMinutes;
              expect(second!.ovenStartMinutes).toBeGreaterThanOrEqual(out + gap - 1e-6);
            }
          }
        for (const { ovenStartMinutes, startMinutes } of placed) {
          const fill = placed
            .filter((other) => Math.abs(other.ovenStartMinutes - ovenStartMinutes) < 1e-6)
            .reduce((sum, { job: { fill: part = 1 } }) => sum + part, 0);
          expect(fill).toBeLessThanOrEqual(1 + 1e-9);
          if (begin === undefined) continue;
          expect(startMinutes).toBeGreaterThanOrEqual(begin - 1e-6);
          expect(ovenStartMinutes).toBeGreaterThanOrEqual(begin + heat - 1e-6);
        }
        const { people: work, mostPeople } = dayWork(placed, limits);
        if (people !== undefined) expect(mostPeople).toBeLessThanOrEqual(people);
        for (const [index, one] of work.entries())
          for (const other of work.slice(index + 1))
            if (one.person === other.person)
              expect(apart([one.startMinutes, one.endMinutes], [other.startMinutes, other.endMinutes])).toBe(
                true,
              );
      }),
      { numRuns: 300 },
    );
  });

  it('a day on which nothing of people and oven is stated is as it was', () => {
    fc.assert(
      fc.property(days, ({ jobs, begin }) => {
        const plain = jobs.map(
          ({ hands: _h, bake: _b, fill: _f, inCelsius: _i, outCelsius: _o, ...one }): Job => one,
        );
        expect(starts(schedule(jobs, begin))).toEqual(starts(schedule(plain, begin)));
      }),
      { numRuns: 100 },
    );
  });

  it('more hands never make anything later', () => {
    fc.assert(
      fc.property(days, ({ jobs, begin }) => {
        const few = jobs.slice(0, 3);
        const late = (people: number) =>
          Math.max(...schedule(few, begin ?? 0, { people }).map((one) => one.lateMinutes));
        expect(late(3)).toBeLessThanOrEqual(late(1) + 1e-6);
      }),
      { numRuns: 100 },
    );
  });
});
