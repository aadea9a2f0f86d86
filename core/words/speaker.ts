/** A message as one speaker passes it on: which it is, and its figures and names. `Message` is the closed form of it. */
export interface Said {
  readonly code: string;
  readonly args: object;
}

/** The forms of a counted thing: a language gives those it has, and `other` always. `#` stands for the number. */
export type Plural = { readonly other: string } & Readonly<
  Partial<Record<'zero' | 'one' | 'two' | 'few' | 'many', string>>
>;

/** Writes figures, lists and messages in one language, as one reader has asked for them. The only place that does. */
export interface Speaker {
  /** BCP 47: `en`, `de`. */
  readonly language: string;
  /** A number with at most so many places. */
  number(value: number, places: number): string;
  /** A number with exactly so many places, as a label prints it. */
  printed(value: number, places: number): string;
  /** A share as a percent: two places below 10%, one above, or as many as are asked for. */
  percent(fraction: number, places?: number): string;
  /** A difference of two shares in points, without a sign of percent. */
  points(fraction: number): string;
  /** Grams up to a kilogram, then kilograms; or ounces and pounds. */
  mass(grams: number): string;
  /** A weight as it is weighed: the figure with the places of the scale, and its unit. */
  weighed(grams: number, stepGrams: number): { readonly figure: string; readonly unit: string };
  /** A weight in the unit of the heavy ones that it stands among: kilograms or pounds with three places. */
  weighedHeavy(grams: number): { readonly figure: string; readonly unit: string };
  /** The step of a scale, with as many places as it has. */
  scaleStep(stepGrams: number): string;
  /** A temperature with one place. */
  celsius(celsius: number): string;
  /** A temperature and its band, `27.3 °C ± 0.8 °C`: in whole degrees where the band is wide, and alone where it is too narrow to see. */
  celsiusBand(celsius: number, bandCelsius: number): string;
  /** By how much two temperatures differ, with one place. */
  celsiusApart(celsius: number): string;
  celsiusPerMinute(celsiusPerMinute: number, places: number): string;
  /** Whole minutes from ten up, halves below. */
  minutes(minutes: number): string;
  /** `26–31 min`, or one figure where both ends read alike. */
  minutesBand(low: number, high: number): string;
  /** Hours and minutes. */
  duration(seconds: number): string;
  /** Minutes of a day as a clock shows them: `06:30`. */
  clock(minutes: number): string;
  /**
   * An amount of money to the cent, `4.85 EUR`; what is below a cent, and not nothing, is `less than 0.01 EUR`. `currency` by its
   * three letters.
   */
  money(amount: number, currency: string): string;
  /** By how much two amounts differ as they are shown, so that the three figures agree; undefined where they are shown alike. */
  moneyApart(before: number, after: number, currency: string): string | undefined;
  /** A figure that something stays below: `less than 0.5 g`. */
  lessThan(figure: string): string;
  /** `one, another and a third`. */
  list(words: readonly string[]): string;
  /** `one, another or a third`. */
  anyOf(words: readonly string[]): string;
  /** A number of things, in the form that the number takes. */
  count(count: number, forms: Plural): string;
  /** A message within this one. */
  say(said: Said): string;
}
