import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createKept, dayMilliseconds, type Store } from '../../client/preview/kept.ts';
import { noWork, type WorkState } from '../../client/preview/messages.ts';
import { createTimers } from '../../client/preview/timers.ts';

const uri = 'file:///quay/tin.dough';
const work: WorkState = {
  ticked: ['a'],
  moment: 'b',
  timers: { b: { label: 'rest', startedAt: 1_000_000, seconds: 1200 } },
};

describe('what the panels keep of a formula', () => {
  it('outlives a reload, each formula for itself', () => {
    const store = paperStore();
    const before = createKept(store, () => 0);
    before.setAsked(uri, 'Tin', { size: { by: 'pieces', pieces: 48 }, today: { roomCelsius: 27 } });
    before.setWork(uri, 'Tin', work);
    const after = createKept(store, () => 1000);
    expect(after.asked(uri, 'Tin')).toEqual({
      size: { by: 'pieces', pieces: 48 },
      today: { roomCelsius: 27 },
    });
    expect(after.work(uri, 'Tin')).toEqual(work);
    expect(after.allWork()).toEqual([{ uri, formula: 'Tin', work }]);
    expect(after.asked(uri, 'Rye')).toEqual({});
    expect(after.work('file:///quay/other.dough', 'Tin')).toEqual(noWork);
  });

  it('lets the day go with the day, and keeps the size', () => {
    let now = 0;
    const kept = createKept(paperStore(), () => now);
    kept.setAsked(uri, 'Tin', { size: { by: 'flour', grams: 9000 }, today: { roomCelsius: 27 } });
    kept.setWork(uri, 'Tin', work);
    now = dayMilliseconds + 1;
    expect(kept.asked(uri, 'Tin')).toEqual({ size: { by: 'flour', grams: 9000 } });
    expect(kept.work(uri, 'Tin')).toEqual(noWork);
    expect(kept.allWork()).toEqual([]);
  });

  it('keeps the hundred formulas that were in hand last', () => {
    const kept = createKept(paperStore(), () => 0);
    for (let number = 0; number < 101; number += 1)
      kept.setAsked(uri, `Tin ${number}`, { size: { by: 'pieces', pieces: number + 1 } });
    expect(kept.asked(uri, 'Tin 0')).toEqual({});
    expect(kept.asked(uri, 'Tin 100').size).toEqual({ by: 'pieces', pieces: 101 });
  });
});

describe('the end of a timer', () => {
  beforeEach(() => void vi.useFakeTimers({ now: 1_000_000 }));
  afterEach(() => void vi.useRealTimers());

  it('is told once, though the work is kept again and again', () => {
    const { timers, told } = ringing();
    timers.set(uri, 'Tin', work);
    vi.advanceTimersByTime(600_000);
    timers.set(uri, 'Tin', { ...work, ticked: ['a', 'c'] });
    expect(told).toEqual([]);
    vi.advanceTimersByTime(600_000);
    timers.set(uri, 'Tin', { ...work, ticked: [] });
    vi.advanceTimersByTime(3_600_000);
    expect(told).toEqual(['Tin rest 0']);
  });

  it('is not told of one that was stopped, and of one that was started anew at its new end', () => {
    const { timers, told } = ringing();
    timers.set(uri, 'Tin', work);
    vi.advanceTimersByTime(60_000);
    timers.set(uri, 'Tin', { ...work, timers: {} });
    timers.set(uri, 'Rye', { ...work, timers: { b: { label: 'rest', startedAt: 1_060_000, seconds: 60 } } });
    vi.advanceTimersByTime(60_000);
    expect(told).toEqual(['Rye rest 0']);
    vi.advanceTimersByTime(3_600_000);
    expect(told).toEqual(['Rye rest 0']);
  });

  it('that came while the window was closed is told late, and after hours not at all', () => {
    const { timers, told } = ringing();
    timers.set(uri, 'Tin', { ...work, timers: { b: { label: 'rest', startedAt: 0, seconds: 940 } } });
    timers.set(uri, 'Rye', { ...work, timers: { b: { label: 'rest', startedAt: -9_000_000, seconds: 1 } } });
    vi.advanceTimersByTime(1);
    expect(told).toEqual(['Tin rest 60000']);
  });
});

function ringing() {
  const told: string[] = [];
  const timers = createTimers((_, formula, label, late) => told.push(`${formula} ${label} ${late}`));
  return { timers, told };
}

/** A store that keeps what a window's own would: plain data, written as JSON. */
function paperStore(): Store {
  const kept = new Map<string, string>();
  return {
    get: (key) => JSON.parse(kept.get(key) ?? 'null') ?? undefined,
    update: async (key, value) => void kept.set(key, JSON.stringify(value)),
  };
}
