import type { Units } from './units.ts';

/** Minutes as shown: `3 min`, `2.5 min`. */
export function minutesText(minutes: number, units: Units): string {
  return `${units.text(minutes, 1)} min`;
}
