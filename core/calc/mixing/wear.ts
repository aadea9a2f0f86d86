import { temperatureAfter, type WarmingPhase } from '../heat/warming.ts';

/** The temperature at which a minute of wear counts as one, °C, and by how many degrees it doubles. Common practice, our own fit. */
const usualCelsius = 27;
const doublingCelsius = 10;
/** Least and most that warmth makes of a minute. */
const leastFactor = 0.5;
const mostFactor = 4;
/** The temperatures at which those are reached, °C. */
const coldest = usualCelsius + doublingCelsius * Math.log2(leastFactor);
const hottest = usualCelsius + doublingCelsius * Math.log2(mostFactor);

/**
 * How much faster than at 27 °C a developed dough of this temperature (°C) wears: 2^((T − 27)/10), from a half to four times. That
 * warm dough wears faster is published, the size is our own fit (common practice).
 */
export function warmthFactor(celsius: number): number {
  return Math.min(mostFactor, Math.max(leastFactor, 2 ** ((celsius - usualCelsius) / doublingCelsius)));
}

/**
 * The integral of `warmthFactor` over some minutes of a phase that starts at `startCelsius`, minutes; the dough warms in
 * closed form meanwhile. To 1e-9 of its size.
 */
export function wearMinutes(phase: WarmingPhase, startCelsius: number, minutes: number): number {
  let sum = 0;
  eachPiece(phase, startCelsius, minutes, (piece) => {
    sum += over(piece, piece.minutes);
    return false;
  });
  return sum;
}

/** The minutes of a phase until `wearMinutes` comes to `wanted`; undefined where it does not within `most` minutes. */
export function minutesToWear(
  phase: WarmingPhase,
  startCelsius: number,
  wanted: number,
  most: number,
): number | undefined {
  if (!(wanted > 0)) return 0;
  let [clock, left] = [0, wanted];
  let found: number | undefined;
  eachPiece(phase, startCelsius, most, (piece) => {
    const whole = over(piece, piece.minutes);
    if (left <= whole) {
      found = clock + (piece.flat === undefined ? within(piece, left) : left / piece.flat);
      return true;
    }
    left -= whole;
    clock += piece.minutes;
    return false;
  });
  return found;
}

/** A stretch in which the factor is the same throughout (`flat`), or smooth. */
interface Piece {
  readonly phase: WarmingPhase;
  readonly startCelsius: number;
  readonly minutes: number;
  readonly flat?: number;
}

/** So many time constants on nothing of a difference is left that a sum could show. */
const settledAfter = 25;
/** No smooth piece changes the dough by more than this, °C, where it has no time constant to go by. */
const widestCelsius = 10;

/**
 * The pieces of some minutes of a phase in their order, each given to `take`, up to the first that answers true. Every keystroke in a
 * programme comes here some hundred times: a generator would leave more behind than all else that mixing computes.
 */
function eachPiece(
  phase: WarmingPhase,
  startCelsius: number,
  minutes: number,
  take: (piece: Piece) => boolean,
): void {
  const { aroundCelsius, celsiusPerMinute, settlesMinutes } = phase;
  if (!(minutes > 0)) return;
  if (!(settlesMinutes > 0)) {
    take({ phase, startCelsius, minutes, flat: warmthFactor(aroundCelsius) });
    return;
  }
  const isLinear = !Number.isFinite(settlesMinutes);
  const step = isLinear ? widestCelsius / Math.max(1e-9, Math.abs(celsiusPerMinute)) : settlesMinutes;
  const settled = isLinear ? Number.POSITIVE_INFINITY : settledAfter * settlesMinutes;
  const cold = minutesUntil(phase, startCelsius, coldest) ?? 0;
  const hot = minutesUntil(phase, startCelsius, hottest) ?? 0;
  let clock = 0;
  while (clock < minutes) {
    const celsius = temperatureAfter(phase, startCelsius, clock);
    const least = clock + 1e-12;
    const turn = Math.min(cold > least ? cold : minutes, hot > least ? hot : minutes, minutes);
    const middle = temperatureAfter(phase, startCelsius, Math.min(turn, clock + 1e-6 + (turn - clock) / 2));
    const isClamped = middle <= coldest || middle >= hottest;
    const isSettled = clock >= settled;
    if (isClamped || isSettled) {
      const flat = isClamped ? (middle <= coldest ? leastFactor : mostFactor) : warmthFactor(celsius);
      if (take({ phase, startCelsius: celsius, minutes: turn - clock, flat })) return;
      clock = turn;
      continue;
    }
    const until = Math.min(turn, clock + step);
    if (take({ phase, startCelsius: celsius, minutes: until - clock })) return;
    clock = until;
  }
}

/** When a phase takes the dough through a temperature, up or down, minutes. */
function minutesUntil(phase: WarmingPhase, startCelsius: number, celsius: number): number | undefined {
  const { celsiusPerMinute, aroundCelsius, settlesMinutes } = phase;
  if (startCelsius < 0) {
    // Ice melts at 0 °C first.
    const melting = celsiusPerMinute + (Number.isFinite(settlesMinutes) ? aroundCelsius / settlesMinutes : 0);
    if (!(melting > 0)) return undefined;
    const later = minutesUntil(phase, 0, celsius);
    return later === undefined ? undefined : later - startCelsius / melting;
  }
  if (!Number.isFinite(settlesMinutes))
    return celsiusPerMinute === 0 ? undefined : (celsius - startCelsius) / celsiusPerMinute;
  const equilibrium = aroundCelsius + celsiusPerMinute * settlesMinutes;
  const part = (startCelsius - equilibrium) / (celsius - equilibrium);
  return part > 1 ? settlesMinutes * Math.log(part) : undefined;
}

// Gauss and Legendre, eight points: abscissae and weights on −1 to 1 (Abramowitz & Stegun, table 25.4).
const nodes = [
  { abscissa: 0.18343464249565, weight: 0.362683783378362 },
  { abscissa: 0.525532409916329, weight: 0.313706645877887 },
  { abscissa: 0.796666477413627, weight: 0.222381034453374 },
  { abscissa: 0.960289856497536, weight: 0.101228536290376 },
];

function over({ phase, startCelsius, flat }: Piece, minutes: number): number {
  if (flat !== undefined) return flat * minutes;
  const half = minutes / 2;
  let sum = 0;
  for (const { abscissa, weight } of nodes) {
    const away = half * abscissa;
    sum +=
      weight *
      (warmthFactor(temperatureAfter(phase, startCelsius, half - away)) +
        warmthFactor(temperatureAfter(phase, startCelsius, half + away)));
  }
  return half * sum;
}

/** The minute within a smooth piece at which it comes to `wanted`, by Newton’s method; its slope is the factor itself. */
function within(piece: Piece, wanted: number): number {
  let minutes = wanted / warmthFactor(piece.startCelsius);
  for (let step = 0; step < 20; step++) {
    const miss = over(piece, minutes) - wanted;
    const move = miss / warmthFactor(temperatureAfter(piece.phase, piece.startCelsius, minutes));
    minutes = Math.min(piece.minutes, Math.max(0, minutes - move));
    if (Math.abs(move) < 1e-12) break;
  }
  return minutes;
}
