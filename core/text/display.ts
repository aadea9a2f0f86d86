/** How figures are shown. The text of files is never written by it. */
export interface Display {
  readonly mass: 'grams' | 'ounces';
  readonly temperature: 'celsius' | 'fahrenheit';
  readonly decimalSign: 'point' | 'comma';
}

export const plainDisplay: Display = { mass: 'grams', temperature: 'celsius', decimalSign: 'point' };
