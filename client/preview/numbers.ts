import type { Units } from './units.ts';

/** Minutes as shown: `3 min`, `2.5 min`. */
export function minutesText(minutes: number, units: Units): string {
  return `${units.text(minutes, 1)} min`;
}

/** Time that runs, as a kitchen clock shows it: `2:05`, `1:15:00`; what is over counts up from `0:00`. */
export function clockText(seconds: number): string {
  const whole = Math.floor(Math.abs(seconds));
  const two = (number: number) => String(number).padStart(2, '0');
  const hours = Math.floor(whole / 3600);
  const minutes = Math.floor((whole % 3600) / 60);
  return hours > 0 ? `${hours}:${two(minutes)}:${two(whole % 60)}` : `${minutes}:${two(whole % 60)}`;
}
