import { entryOf, groupOf } from '../text/element.ts';
import { limitBroken } from './beyond-limit.ts';
import { breadsAt } from './bread-words.ts';
import type { Limit } from './limits.ts';
import type { Per, Quantity } from './tree.ts';
import { longestUnit, type Unit, units } from './units.ts';

const vulgarFractions: Readonly<Record<string, number>> = {
  '½': 1 / 2,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅕': 1 / 5,
  '⅖': 2 / 5,
  '⅗': 3 / 5,
  '⅘': 4 / 5,
  '⅙': 1 / 6,
  '⅚': 5 / 6,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
};

const blank = '[ \\t\\u00A0\\u1680\\u2000-\\u200A\\u202F\\u205F\\u3000]';
const sticky = (source: string): RegExp => new RegExp(source, 'uy');
const datePattern = sticky('(\\d{4})-(\\d{2})-(\\d{2})(?![\\p{L}\\p{N}-])');
const clockPattern = sticky('(\\d{1,2}):(\\d{2})(?![\\p{L}\\p{N}:])');
const groupPattern = sticky(`(\\d{1,3})((?:,\\d{3})+|(?:${blank}\\d{3})+)(?![\\p{N},.]|${blank}+\\d)`);
const numberPattern = sticky(
  `[-−+]?(?:\\d+${blank}?[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]|\\d+${blank}\\d+/\\d+|\\d+/\\d+|\\d+[.,]\\d+|\\d+|[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])`,
);
const rangePattern = sticky(`(\\d+(?:[.,]\\d+)?)(?:[-‐‑–—]|${blank}+[-‐‑–—]${blank}+)(\\d+(?:[.,]\\d+)?)`);
const blankPattern = sticky(`${blank}*`);
const moneyPattern = sticky(`([A-Z]{3})${blank}+per${blank}+`);
const boundary = sticky('(?![\\p{L}\\p{N}\\p{M}°%/])');
const bareBoundary = sticky("(?![\\p{L}\\p{N}\\p{M}°%/'’-]|[.,]\\p{N})");
const degreesPattern = sticky(`${blank}?(?:degrees?|deg|°)(?![\\p{L}\\p{N}\\p{M}°%/])`);

const digits = sticky('\\d+');
/** What stands behind the whole of a mixed number, `1/2` of `3 1/2`. */
const fractionBehind = /\s.*$/u;

const matchAt = (pattern: RegExp, text: string, at: number): RegExpExecArray | null => {
  pattern.lastIndex = at;
  return pattern.exec(text);
};

/** The value of a number as written: decimal point or comma, a fraction, or a whole with a fraction. */
export function readNumber(written: string): number {
  const text = written.replace('−', '-').replace(/\s/g, ' ');
  const vulgar = vulgarFractions[text.charAt(text.length - 1)];
  if (vulgar !== undefined) {
    const size = Number(text.slice(0, -1).replace(/^[-+]/, '').trim() || '0') + vulgar;
    return text.startsWith('-') ? -size : size;
  }
  const slash = /^([-+]?)(?:(\d+) )?(\d+)\/(\d+)$/.exec(text);
  if (slash) {
    const value = Number(slash[2] ?? 0) + Number(slash[3]) / Number(slash[4]);
    return slash[1] === '-' ? -value : value;
  }
  return Number(text.replace(',', '.'));
}

function unitAt(text: string, at: number): { unit: Unit; written: string; end: number } | undefined {
  for (let length = Math.min(longestUnit, text.length - at); length > 0; length--) {
    const written = text.slice(at, at + length);
    const unit = units.get(written);
    if (unit === undefined) continue;
    const end = at + length;
    if (matchAt(boundary, text, end) === null && !goesOnInMinutes(unit, text, end)) continue;
    return { unit, written, end };
  }
  return undefined;
}

/** `1h30min`: a time may run on without a blank, as long as smaller units follow. */
function goesOnInMinutes(unit: Unit, text: string, at: number): boolean {
  if (unit.measure !== 'duration') return false;
  const number = matchAt(digits, text, at);
  const next = number === null ? undefined : unitAt(text, skipBlanks(text, at + number[0].length));
  return next !== undefined && next.unit.measure === 'duration' && next.unit.factor < unit.factor;
}

const skipBlanks = (text: string, at: number): number => {
  blankPattern.lastIndex = at;
  blankPattern.exec(text);
  return blankPattern.lastIndex;
};

/**
 * Reads one quantity that starts exactly at `start`: a number with its unit, a date, a clock time, money, a range or
 * a number that can be read two ways, else a bare number. Longest match; `undefined` when no number stands alone
 * there. `before` is the word before it in lower case: the number of `speed` is never a group of thousands, and a `yield` counts in loaves.
 */
export function scanQuantity(text: string, start: number, before?: string): Quantity | undefined {
  const date = matchAt(datePattern, text, start);
  if (date !== null && isDate(Number(date[1]), Number(date[2]), Number(date[3]))) {
    return { kind: 'date', iso: date[0], start, end: start + date[0].length, number: date[0], unit: '' };
  }
  const clock = matchAt(clockPattern, text, start);
  if (clock !== null && Number(clock[1]) < 24 && Number(clock[2]) < 60) {
    const minutes = Number(clock[1]) * 60 + Number(clock[2]);
    return { kind: 'clock', minutes, start, end: start + clock[0].length, number: clock[0], unit: '' };
  }
  const breads = before === 'yield' || before === 'makes' ? breadsAt(text, start) : undefined;
  if (breads !== undefined)
    return withinLimits({ kind: 'count', count: readNumber(breads.number), start, ...breads });
  const read =
    scanRange(text, start) ??
    (before === 'speed' ? undefined : scanGrouped(text, start)) ??
    scanNumber(text, start);
  return read === undefined ? undefined : withinLimits(read);
}

/** What is beyond its limit has no value: a range where one end is, a number of several readings where all are. */
function withinLimits(read: Quantity): Quantity {
  let limit: Limit | undefined;
  if (read.kind === 'range') limit = limitOf(read.low) ?? limitOf(read.high);
  else if (read.kind === 'grouped') {
    const limitsOfAll = read.readings.map(limitOf);
    limit = limitsOfAll.includes(undefined) ? undefined : limitsOfAll[0];
  } else limit = limitBroken(read);
  if (limit === undefined) return read;
  const { start, end, number, unit } = read;
  return { kind: 'beyond', limit: limit.told, start, end, number, unit };
}

function limitOf(reading: string): Limit | undefined {
  const read = scanNumber(reading, 0);
  return read === undefined ? undefined : limitBroken(read);
}

/** Whether the calendar has a day; months and days from 1. */
export function isDate(year: number, month: number, day: number): boolean {
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1];
  return days !== undefined && day >= 1 && day <= days;
}

function scanRange(text: string, start: number): Quantity | undefined {
  const range = matchAt(rangePattern, text, start);
  if (range === null) return undefined;
  const at = skipBlanks(text, start + range[0].length);
  const found = unitAt(text, at);
  if (found === undefined) return undefined;
  const end = found.end;
  const canonical = found.written;
  const glue = text.slice(start + range[0].length, at);
  return {
    kind: 'range',
    low: groupOf(range, 1) + glue + canonical,
    high: groupOf(range, 2) + glue + canonical,
    start,
    end,
    number: range[0],
    unit: canonical,
  };
}

/** `1,000 g` and `1 000 g`: a thousand, or one and a decimal; or the last number of a name before an amount. */
function scanGrouped(text: string, start: number): Quantity | undefined {
  const group = matchAt(groupPattern, text, start);
  if (group === null) return undefined;
  const [first, others] = [groupOf(group, 1), groupOf(group, 2)];
  if (first.startsWith('0')) return undefined;
  const afterNumber = start + group[0].length;
  const at = skipBlanks(text, afterNumber);
  const found = unitAt(text, at);
  const byBlank = !others.startsWith(',');
  // `type 550 500` ends in a name's number and a bare one; only a group that starts with 0 can be no number of its own.
  const zero = /^.0/.test(others);
  // Nobody writes a thousand percent with a blank in it: `W 300 100%` is a name and its share.
  if (byBlank && !zero && found?.unit.measure === 'fraction') return undefined;
  if (found === undefined && byBlank && !zero) return undefined;
  const digits = group[0].replace(/[^0-9]/g, '');
  const tail = found === undefined ? '' : text.slice(afterNumber, found.end);
  const single = others.length === 4;
  const decimal = `${Number(`${first}.${others.slice(1)}`)}${tail}`;
  const readings = single
    ? byBlank
      ? zero
        ? [`${digits}${tail}`]
        : [`${digits}${tail}`, `${others.slice(1)}${tail}`]
      : [`${digits}${tail}`, decimal]
    : [`${digits}${tail}`];
  return {
    kind: 'grouped',
    readings,
    first,
    rest: text.slice(start + first.length + 1, found?.end ?? afterNumber),
    start,
    end: found?.end ?? afterNumber,
    number: group[0],
    unit: found?.written ?? '',
  };
}

function scanNumber(text: string, start: number): Quantity | undefined {
  const match = matchAt(numberPattern, text, start);
  if (match === null) return undefined;
  let number = match[0];
  const slashed = /^(\d+)\s\d+\/0+$|\/0+$/.exec(number);
  if (slashed !== null) return undefined;
  let numberEnd = start + number.length;
  let at = skipBlanks(text, numberEnd);
  let found = unitAt(text, at);
  // `3 1/2` without a unit after it is more likely a name's number and something else; keep the first number only.
  if (found === undefined && /\s/.test(number)) {
    number = number.replace(fractionBehind, '');
    numberEnd = start + number.length;
    at = skipBlanks(text, numberEnd);
    found = unitAt(text, at);
  }
  const value = readNumber(number);
  if (Number.isNaN(value)) return undefined;
  if (found !== undefined) return withUnit(text, start, number, value, found);
  const money = matchAt(moneyPattern, text, at);
  if (money !== null) {
    const per = readPer(text, at + money[0].length);
    if (per !== undefined) {
      const end = per.end;
      return {
        kind: 'money',
        amount: value,
        currency: groupOf(money, 1),
        per: per.per,
        start,
        end,
        number,
        unit: text.slice(at, end),
      };
    }
  }
  // `200 degrees` lacks whose degrees.
  const degrees = matchAt(degreesPattern, text, numberEnd)?.[0] ?? '';
  if (!Number.isFinite(value)) return undefined;
  if (degrees === '' && matchAt(bareBoundary, text, numberEnd) === null) return undefined;
  return { kind: 'bare', value, start, end: numberEnd + degrees.length, number, unit: degrees.trim() };
}

function readPer(text: string, at: number): { per: Per; end: number } | undefined {
  const counted = matchAt(numberPattern, text, at);
  const value = counted === null ? 1 : readNumber(counted[0]);
  const found = unitAt(text, skipBlanks(text, at + (counted?.[0].length ?? 0)));
  if (found === undefined || !(value > 0)) return undefined;
  const amount = value * found.unit.factor;
  if (found.unit.measure === 'mass') return { per: { measure: 'mass', grams: amount }, end: found.end };
  if (found.unit.measure === 'volume')
    return { per: { measure: 'volume', millilitres: amount }, end: found.end };
  if (found.unit.measure === 'count') return { per: { measure: 'count', count: amount }, end: found.end };
  return undefined;
}

function withUnit(
  text: string,
  start: number,
  number: string,
  value: number,
  found: { unit: Unit; written: string; end: number },
): Quantity {
  const { unit, written, end } = found;
  const at = { start, end, number, unit: written };
  const amount = value * unit.factor;
  switch (unit.measure) {
    case 'mass':
      return { kind: 'mass', grams: amount, ...at };
    case 'volume':
      return {
        kind: 'volume',
        millilitres: amount,
        ...(unit.canonical === 'cup' ? { cups: value } : {}),
        ...at,
      };
    case 'fraction':
      // Dividing keeps 70 % at exactly 0.7, where multiplying by 0.01 would not.
      return { kind: 'fraction', fraction: value / 100, ...at };
    case 'count':
      return { kind: 'count', count: amount, ...at };
    case 'temperature':
      return {
        kind: 'temperature',
        celsius: unit.fahrenheit ? (value - 32) / 1.8 : value,
        degrees: amount,
        ...at,
      };
    case 'turns':
      return { kind: 'turns', rpm: amount, ...at };
    case 'times':
      return { kind: 'times', factor: amount, ...at };
    case 'energy':
      return { kind: 'energy', kilojoules: amount, ...at };
    case 'warming':
      return { kind: 'warming', celsiusPerMinute: amount, ...at };
    case 'density':
      return { kind: 'density', gramsPerMillilitre: amount, ...at };
    case 'duration':
      return moreOfDuration(text, { kind: 'duration', seconds: amount, ...at });
  }
}

/** `1 h 30 min` is one duration: smaller and smaller units in a row. */
function moreOfDuration(text: string, first: Extract<Quantity, { kind: 'duration' }>): Quantity {
  let whole = first;
  let smallest = entryOf(units, first.unit).factor;
  for (;;) {
    const at = skipBlanks(text, whole.end);
    const match = matchAt(numberPattern, text, at);
    if (match === null || /[-−+\s]/.test(match[0])) return whole;
    const found = unitAt(text, skipBlanks(text, at + match[0].length));
    if (found === undefined || found.unit.measure !== 'duration' || found.unit.factor >= smallest)
      return whole;
    smallest = found.unit.factor;
    whole = { ...whole, seconds: whole.seconds + readNumber(match[0]) * smallest, end: found.end };
  }
}
