/** What a unit measures. The value of a quantity is kept in the base unit of its measure. */
export type Measure =
  | 'mass' // grams
  | 'volume' // millilitres
  | 'duration' // seconds
  | 'temperature' // celsius
  | 'turns' // revolutions per minute
  | 'fraction' // 1 = 100 %
  | 'count' // pieces
  | 'times' // factor
  | 'energy' // kilojoules
  | 'warming' // celsius per minute
  | 'density'; // grams per millilitre

export interface Unit {
  readonly measure: Measure;
  /** How many base units one of this unit is (temperatures in Fahrenheit also shift by 32). */
  readonly factor: number;
  /** The spelling the canonical form uses. */
  readonly canonical: string;
  readonly fahrenheit?: true;
}

const unit = (measure: Measure, factor: number, canonical: string): Unit => ({ measure, factor, canonical });

const celsius = unit('temperature', 1, '°C');
const fahrenheit: Unit = { measure: 'temperature', factor: 5 / 9, canonical: '°F', fahrenheit: true };

/** The default size of a cup in millilitres; a bakery may state its own. Common practice, the metric cup. */
export const metricCupMillilitres = 250;

/** NIST Handbook 44, appendix C: the cup of the United States, half a liquid pint. */
export const customaryCupMillilitres = 236.5882365;

/** `_` stands for a blank within a spelling. */
const rows: readonly (readonly [Unit, string])[] = [
  [unit('mass', 0.001, 'mg'), 'mg'],
  [unit('mass', 1, 'g'), 'g gram grams'],
  [unit('mass', 1000, 'kg'), 'kg KG Kg kilogram kilograms'],
  [unit('mass', 1e6, 'tonne'), 'tonne tonnes'],
  // NIST Handbook 44, appendix C: the avoirdupois pound is 0.45359237 kg exactly.
  [unit('mass', 28.349523125, 'oz'), 'oz ounce ounces'],
  [unit('mass', 453.59237, 'lb'), 'lb lbs pound pounds'],
  [unit('volume', 1, 'ml'), 'ml ML mL'],
  [unit('volume', 10, 'cl'), 'cl cL'],
  [unit('volume', 100, 'dl'), 'dl dL'],
  [unit('volume', 1000, 'l'), 'l L litre litres liter liters'],
  [unit('volume', 5, 'tsp'), 'tsp tsps'],
  [unit('volume', 15, 'tbsp'), 'tbsp tbsps'],
  [unit('volume', metricCupMillilitres, 'cup'), 'cup cups'],
  [unit('duration', 1, 's'), 's sec secs second seconds'],
  [unit('duration', 60, 'min'), 'min mins minute minutes'],
  [unit('duration', 3600, 'h'), 'h hr hrs hour hours'],
  [unit('duration', 86400, 'day'), 'day days'],
  [celsius, '°C ºC ℃ C °c °_C deg_C degree_C degrees_C degrees_Celsius degrees_celsius'],
  [fahrenheit, '°F ºF ℉ F °f °_F deg_F degree_F degrees_F degrees_Fahrenheit degrees_fahrenheit'],
  [unit('turns', 1, 'rpm'), 'rpm'],
  [unit('fraction', 0.01, '%'), '% ％'],
  [unit('count', 1, 'pieces'), 'piece pieces'],
  [unit('times', 1, 'times'), 'times'],
  [unit('energy', 1, 'kJ'), 'kJ kj'],
  [unit('energy', 4.184, 'kcal'), 'kcal'],
  [unit('warming', 1, '°C/min'), '°C/min ºC/min ℃/min C/min'],
  [unit('warming', 5 / 9, '°F/min'), '°F/min ºF/min ℉/min F/min'],
  [unit('density', 1, 'g/ml'), 'g/ml g/mL'],
];

/** Every spelling of every unit. */
export const units: ReadonlyMap<string, Unit> = new Map(
  rows.flatMap(([known, spellings]) =>
    spellings.split(' ').map((spelling) => [spelling.replace('_', ' '), known] as const),
  ),
);

/** The canonical spellings, for completion after a number. */
export const unitNames: readonly string[] = rows.map(([known]) => known.canonical);

export const longestUnit = Math.max(...[...units.keys()].map((spelling) => spelling.length));
