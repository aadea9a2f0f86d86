/** The day by the clock on the wall of this machine, not by Greenwich: `2026-03-14`. */
export function dayOf(now: Date): string {
  return `${now.getFullYear()}-${twoDigits(now.getMonth() + 1)}-${twoDigits(now.getDate())}`;
}

/** Minutes from midnight as a time of day: `05:07`. */
export function timeOfDay(minutes: number): string {
  return `${twoDigits(Math.floor(minutes / 60))}:${twoDigits(minutes % 60)}`;
}

/** Time that runs, as a kitchen clock shows it: `2:05`, `1:15:00`; what is over counts up from `0:00`. */
export function clockText(seconds: number): string {
  const whole = Math.floor(Math.abs(seconds));
  const hours = Math.floor(whole / 3600);
  const minutes = Math.floor((whole % 3600) / 60);
  const rest = twoDigits(whole % 60);
  return hours > 0 ? `${hours}:${twoDigits(minutes)}:${rest}` : `${minutes}:${rest}`;
}

function twoDigits(number: number): string {
  return String(number).padStart(2, '0');
}
