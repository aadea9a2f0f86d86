/** The languages of the names, as BCP 47 tags. */
export const tongues = ['de', 'fr', 'it', 'es'] as const;
export type Tongue = (typeof tongues)[number];

/** By a name of the catalogue: what it is called, the usual word first. */
export type NamesAbroad = Readonly<Record<string, Readonly<Partial<Record<Tongue, readonly string[]>>>>>;

/** Builds the names of one ingredient from lists with commas. */
export function said(
  de: string,
  fr: string,
  it: string,
  es: string,
): Partial<Record<Tongue, readonly string[]>> {
  const listed = (words: string): readonly string[] => (words === '' ? [] : words.split(', '));
  return { de: listed(de), fr: listed(fr), it: listed(it), es: listed(es) };
}
