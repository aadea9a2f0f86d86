import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { WorkState } from '../../client/preview/messages.ts';
import { createTimers } from '../../client/preview/timers.ts';

const day = 24 * 60 * 60 * 1000;

beforeEach(() => void vi.useFakeTimers({ now: 0 }));
afterEach(() => void vi.useRealTimers());

/** The ends that are told, each with its time, of one timer of so many days. */
function toldOf(days: number) {
  const told: [label: string, at: number][] = [];
  const timers = createTimers((_uri, _formula, label) => told.push([label, Date.now()]));
  const timer = { label: 'keep cold', startedAt: 0, seconds: (days * day) / 1000 };
  timers.set('file:///quay/a.dough', 'Quay Tin', { timers: { one: timer } } as unknown as WorkState);
  return { told, timers };
}

it.each([0.5, 24, 25, 60])('a timer of %d days ends then, and once', (days) => {
  const { told } = toldOf(days);
  vi.advanceTimersByTime(days * day - 1);
  expect(told).toEqual([]);
  vi.advanceTimersByTime(1);
  expect(told).toEqual([['keep cold', days * day]]);
  vi.advanceTimersByTime(90 * day);
  expect(told).toHaveLength(1);
});

it('a timer beyond 24.8 days is stopped also once it waits anew', () => {
  const { told, timers } = toldOf(60);
  vi.advanceTimersByTime(30 * day);
  timers.dispose();
  vi.advanceTimersByTime(60 * day);
  expect(told).toEqual([]);
});
