/** Days since 1 January 1970 of a date as `2026-12-05`; `undefined` where there is no such day. Gregorian, no time zone. */
export function daysOf(iso: string): number | undefined {
  const found = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso);
  if (found === null) return undefined;
  const [year, month, day] = [Number(found[1]), Number(found[2]), Number(found[3])];
  const days = daysBefore(year, month) + day - 1;
  return isoOf(days) === iso ? days : undefined;
}

/** The date of so many days since 1 January 1970. */
export function isoOf(days: number): string {
  let year = 1970 + Math.floor(days / 365.2425);
  while (daysBefore(year, 1) > days) year--;
  while (daysBefore(year + 1, 1) <= days) year++;
  let month = 1;
  while (month < 12 && daysBefore(year, month + 1) <= days) month++;
  const day = days - daysBefore(year, month) + 1;
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}`;
}

/** Minutes of a day as a clock shows them: `06:30`. */
export function clockOf(minutes: number): string {
  const inDay = ((Math.round(minutes) % 1440) + 1440) % 1440;
  return `${two(Math.floor(inDay / 60))}:${two(inDay % 60)}`;
}

/** Days from 1 January 1970 to the first of a month. */
function daysBefore(year: number, month: number): number {
  const lengths = [31, isLeap(year) ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  const before = lengths.slice(0, month - 1).reduce((sum, length) => sum + length, 0);
  const years = year - 1;
  const leaps = Math.floor(years / 4) - Math.floor(years / 100) + Math.floor(years / 400);
  // 719162 days from 1 January of the year 1 to 1 January 1970.
  return years * 365 + leaps - 719_162 + before;
}

function isLeap(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

function two(number: number): string {
  return String(number).padStart(2, '0');
}
