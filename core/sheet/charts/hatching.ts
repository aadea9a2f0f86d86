import { tag } from './svg.ts';

/** The grounds that tell stretches apart, each with its own lines; none leans on colour. */
export const hatchings = [
  'empty',
  'rising',
  'falling',
  'level',
  'upright',
  'dots',
  'crossed',
  'rising close',
  'grid',
  'level close',
  'falling close',
  'dots close',
  'upright close',
  'crossed close',
  'grid close',
] as const;

export type Hatching = (typeof hatchings)[number];

/** What a shape takes as its fill. `of` makes the names of one drawing its own, for several stand on one page. */
export function filledWith(hatching: Hatching, of: string): string {
  return hatching === 'empty' ? 'none' : `url(#${nameOf(hatching, of)})`;
}

/** The definitions of the hatchings that a drawing uses. */
export function hatchingDefinitions(used: Iterable<Hatching>, of: string): string {
  const patterns = [...new Set(used)].filter((one) => one !== 'empty').map((one) => patternOf(one, of));
  return patterns.length === 0 ? '' : tag('defs', {}, ...patterns);
}

function nameOf(hatching: Hatching, of: string): string {
  return `${of}-${hatching.replace(' ', '-')}`;
}

function patternOf(hatching: Hatching, of: string): string {
  const [kind, close] = hatching.split(' ');
  const size = close === undefined ? 8 : 4.5;
  const stroke = { stroke: 'currentColor', 'stroke-width': 1, fill: 'none' };
  const path = (d: string): string => tag('path', { d, ...stroke });
  // A slanted line goes on in the corners of its neighbours, or the hatching would have gaps.
  const rising = `M-1,1 l2,-2 M0,${size} L${size},0 M${size - 1},${size + 1} l2,-2`;
  const falling = `M-1,${size - 1} l2,2 M0,0 L${size},${size} M${size - 1},-1 l2,2`;
  const middle = size / 2;
  const level = `M0,${middle} H${size}`;
  const upright = `M${middle},0 V${size}`;
  const inside: Record<string, string> = {
    rising: path(rising),
    falling: path(falling),
    level: path(level),
    upright: path(upright),
    crossed: path(`${rising} ${falling}`),
    grid: path(`${level} ${upright}`),
    dots: tag('circle', { cx: middle, cy: middle, r: 1.3, fill: 'currentColor' }),
  };
  return tag(
    'pattern',
    { id: nameOf(hatching, of), width: size, height: size, patternUnits: 'userSpaceOnUse' },
    inside[kind!]!,
  );
}
