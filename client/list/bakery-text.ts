/** Temperatures of a house as the notation writes them, `21 °C`; what nobody said is left out. */
export interface HouseTemperatures {
  readonly room?: string;
  readonly flour?: string;
  readonly 'tap water'?: string;
}

/** Colder and warmer than any bakery, in degrees Celsius: beyond these somebody meant another unit. */
const leastCelsius = -5;
const mostCelsius = 60;

/** A temperature that was typed, `21`, `21,5 °C` or `70 F`, as the notation writes it; `undefined` for anything else. */
export function readTemperature(typed: string, unit: '°C' | '°F'): string | undefined {
  const found = /^\s*(-?\d+(?:[.,]\d+)?)\s*(?:°?\s*([CF]))?\s*$/i.exec(typed);
  const [, figure, letter] = found ?? [];
  if (figure === undefined) return undefined;
  const written = figure.replace(',', '.');
  const own = letter === undefined ? unit : letter.toUpperCase() === 'F' ? '°F' : '°C';
  const celsius = own === '°F' ? ((Number(written) - 32) * 5) / 9 : Number(written);
  return celsius >= leastCelsius && celsius <= mostCelsius ? `${written} ${own}` : undefined;
}

/** The text of a file that holds for all formulas beside it. A name that would not stand in a header is left out. */
export function bakeryText(folder: string, temperatures: HouseTemperatures, hasIce: boolean): string {
  const name = folder.replace(/[^\p{L}\p{N} '-]+/gu, ' ').trim();
  const rows = (['room', 'flour', 'tap water'] as const).flatMap((key) =>
    temperatures[key] === undefined ? [] : [`  ${key} ${temperatures[key]}`],
  );
  return [
    `bakery ${/\p{L}/u.test(name) ? name : usualName}:`,
    ...rows,
    ...(hasIce ? ['  ice to hand'] : []),
    '',
  ].join('\n');
}

const usualName = 'Our Bakery';
