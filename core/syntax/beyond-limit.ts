import { type Limit, limits, mostMoney } from './limits.ts';
import type { Quantity } from './tree.ts';

/** The limit that a quantity is beyond; `undefined` where it is within its own, or has none. */
export function limitBroken(read: Quantity): Limit | undefined {
  const held = measured(read);
  if (held === undefined) return undefined;
  const [limit, value] = held;
  return value >= limit.least && value <= limit.most ? undefined : limit;
}

function measured(read: Quantity): [Limit, number] | undefined {
  switch (read.kind) {
    case 'mass':
      return [limits.mass, read.grams];
    case 'volume':
      return [limits.volume, read.millilitres];
    case 'duration':
      return [limits.duration, read.seconds];
    case 'temperature':
      return [limits.temperature, read.celsius];
    case 'turns':
      return [limits.turns, read.rpm];
    case 'fraction':
      return [limits.fraction, read.fraction];
    case 'count':
      return [limits.count, read.count];
    case 'times':
      return [limits.times, read.factor];
    case 'energy':
      return [limits.energy, read.kilojoules];
    case 'warming':
      return [limits.warming, read.celsiusPerMinute];
    case 'density':
      return [limits.density, read.gramsPerMillilitre];
    case 'money':
      return [mostMoney, read.amount];
    default:
      return undefined;
  }
}
