/** What the suites expect of the extension in words that may change; each suite takes them from here. */

export const extensionId = 'doughwright.doughwright';
export const languageId = 'doughwright';

/** Titles in the command palette, category included. */
export const openBatchSheetTitle = 'Doughwright: Open Batch Sheet';
export const restartServerTitle = 'Doughwright: Restart Language Server';

/** The same commands by their identifiers. */
export const openBatchSheetCommand = 'doughwright.openSheet';
export const restartServerCommand = 'doughwright.restart';

/** Part of the panel's view type, as the editor's tabs tell it. */
export const panelViewType = /doughwright/i;

/** Accessible name of the panel's field for the number of pieces. */
export const piecesFieldLabel = /pieces/i;

export const formulaName = 'Harbour Tin';
export const formulaFile = 'harbour-tin.dough';
export const formulaText = `formula Harbour Tin:
  yield 24 pieces of 880 g
  loss 1.5%

  bread flour        85%
  wholemeal wheat    15%
  water              69%
  salt               2%
  fresh yeast        0.9%
`;

/** Lines of the formula, counted from 1. */
export const yieldLine = 2;
export const waterLine = 7;
export const saltLine = 8;
export const lineAfterLast = 10;

/** A line without its unit, and what the editor makes of it. */
export const unitlessLine = 'salt 2';
export const unitlessMessage = /unit|%|g\b/;
export const writePercentFix = /2\s?%/;
export const unitlessLineFixed = /salt\s+2\s?%/;

/** A line with an ingredient nobody has defined. */
export const unknownIngredientLine = 'nonesuch 3%';
export const unknownIngredient = 'nonesuch';

/**
 * Dough in the bowl, in grams: 24 pieces of 880 g and 1.5 % of the bowl lost (baker's arithmetic, common practice, no source).
 */
export const bowlGrams = (24 * 880) / (1 - 0.015);

/** Water of the formula in grams when it takes the share of flour given; all other lines as written. */
export function waterGrams(waterFractionOfFlour: number): number {
  const sumOfFractions = 1 + waterFractionOfFlour + 0.02 + 0.009;
  return (bowlGrams / sumOfFractions) * waterFractionOfFlour;
}

/** All masses a text names, in grams: "8.606 kg", "8606 g", "8,606 g". */
export function massesIn(text: string): number[] {
  const masses: number[] = [];
  for (const match of text
    .replaceAll('\u00a0', ' ')
    .matchAll(/(\d+(?:[,\u202f]\d{3})*(?:\.\d+)?)\s?(kg|g)\b/g)) {
    const number = Number(match[1]?.replaceAll(/[,\u202f]/g, ''));
    masses.push(match[2] === 'kg' ? number * 1000 : number);
  }
  return masses;
}

/** Whether a text names a mass within a share of the one wanted; by default 0.6 %, which rounding to three digits needs. */
export function namesMass(text: string, wantedGrams: number, tolerance = 0.006): boolean {
  return massesIn(text).some((grams) => Math.abs(grams - wantedGrams) <= wantedGrams * tolerance);
}

/** Whether the rows of water on a sheet weigh so much; the heading of their column has the unit, grams or kilograms. */
export function weighsWater(text: string, wantedGrams: number, tolerance = 0.006): boolean {
  return [...text.matchAll(/\bwater\b\D{0,40}?(\d+(?:\.\d+)?)/g)].some(([, figure]) =>
    [1, 1000].some((unit) => Math.abs(Number(figure) * unit - wantedGrams) <= wantedGrams * tolerance),
  );
}
