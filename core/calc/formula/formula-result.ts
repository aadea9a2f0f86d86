import type { Role, SectionKind } from './formula-input.ts';

/**
 * A formula with every number that could be computed. A number that is not known is absent; `unsolved`
 * on the same object then says why. Fractions are of flour (1 = 100 % baker's percent), masses in grams.
 */
export interface SolvedFormula {
  /** Nothing in the formula fixes a scale, so the weights are those for 1000 g of flour. */
  readonly assumedScale: boolean;
  /** In the order of the input; the first is the dough, its lines and totals are the overall formula. */
  readonly sections: readonly SolvedSection[];
  readonly finalMix: FinalMix;
  /** Everything in the bowl, one row an ingredient, preferments and soakers dissolved. */
  readonly overall: readonly OverallIngredient[];
  readonly flourGrams?: number;
  readonly waterGrams?: number;
  /** Dough weighed into the bowl, before any loss. */
  readonly doughGrams?: number;
  /** What is enclosed in the dough before it is divided; absent where nothing is. */
  readonly enclosedGrams?: number;
  /** Dough that reaches the divider: what was mixed, less what is kept back, with what is enclosed, less the loss. */
  readonly yieldDoughGrams?: number;
  readonly bakedGrams?: number;
  readonly pieces?: number;
  readonly pieceGrams?: number;
  readonly bakedPieceGrams?: number;
  /** Water lines of every section in the bowl, by all flour in the bowl. */
  readonly hydration?: number;
  /** As `hydration`, with the water inside the other ingredients (never the flour's own moisture). */
  readonly effectiveHydration?: number;
  /** Names of ingredients in the bowl whose water is not known; effective hydration counts them as dry. */
  readonly waterUnknown: readonly string[];
  /** Flour inside preferments by all flour. */
  readonly prefermentedFlour?: number;
  readonly saltFraction?: number;
  readonly fractionByRole: Readonly<Partial<Record<Role, number>>>;
  /** Dough weight by flour weight; 1.685 is 168.5 %. */
  readonly totalFraction?: number;
  /** 100 · (flour + water lines) / flour, the net dough yield of German practice. */
  readonly netDoughYield?: number;
  /** 100 · dough / flour. */
  readonly grossDoughYield?: number;
  readonly unsolved?: Unsolved;
}

export interface SolvedSection {
  readonly id: string;
  readonly name: string;
  readonly kind: SectionKind;
  /** False for fillings, toppings and baths. */
  readonly inBowl: boolean;
  /** Folded into the mixed dough before it is divided. */
  readonly enclosed?: true;
  /** Taken out of the formula's lines (`draws`). */
  readonly drawn: boolean;
  readonly lines: readonly SolvedLine[];
  /** What 100 % weighs in this section. */
  readonly baseGrams?: number;
  /** All flour: fed, in the culture, and inside nested parts. */
  readonly flourGrams?: number;
  readonly waterGrams?: number;
  /** Made in all: lines, nested parts and culture, less what steams away; kept back and used together. */
  readonly totalGrams?: number;
  /** What of it goes on, less what is kept back. */
  readonly usedGrams?: number;
  readonly keepBackGrams?: number;
  readonly cultureGrams?: number;
  /** What steams away of all that is weighed in. */
  readonly steamGrams?: number;
  readonly gramsPerPiece?: number;
  readonly hydration?: number;
  readonly effectiveHydration?: number;
  readonly waterUnknown: readonly string[];
  readonly unsolved?: Unsolved;
}

export interface SolvedLine {
  readonly id: string;
  readonly key: string;
  readonly name: string;
  readonly part: boolean;
  readonly role: Role;
  readonly isFlour: boolean;
  /** Of what is 100 % in the section: as written where a percentage is written. */
  readonly fraction?: number;
  /** As weighed in. */
  readonly grams?: number;
  /** What of it steams away while its section is cooked. */
  readonly steamGrams?: number;
  readonly unsolved?: Unsolved;
}

/** What is left to weigh into the bowl, and the parts that go in with it. */
export interface FinalMix {
  readonly lines: readonly FinalMixLine[];
  readonly flourGrams?: number;
  readonly waterGrams?: number;
  readonly totalGrams?: number;
}

export interface FinalMixLine {
  readonly kind: 'ingredient' | 'part';
  /** The dough's line; absent for a drawn part, which has none. */
  readonly lineId?: string;
  /** The part's section; absent for an ingredient. */
  readonly sectionId?: string;
  readonly key: string;
  readonly name: string;
  readonly role: Role;
  readonly isFlour: boolean;
  readonly grams?: number;
  /** Of all flour in the bowl. */
  readonly fraction?: number;
  /** Of the flour weighed into the final mix. */
  readonly fractionOfFinalFlour?: number;
  /** What drawn parts bring of this line's amount. */
  readonly drawnGrams?: number;
  readonly unsolved?: Unsolved;
}

export interface OverallIngredient {
  readonly key: string;
  readonly name: string;
  readonly role: Role;
  readonly isFlour: boolean;
  /** Of all flour in the bowl. */
  readonly fraction?: number;
  readonly grams?: number;
  readonly unsolved?: Unsolved;
}

export type UnsolvedCode =
  | 'unknown-amount'
  | 'unknown-ingredient'
  | 'impossible-amount'
  | 'loop'
  | 'no-flour'
  | 'no-pieces'
  | 'no-scale'
  | 'no-piece-weight'
  | 'bake-loss-unknown'
  | 'nothing-there'
  | 'reported';

/** Why a number is absent and the place that causes it; `reported` when a problem says it in full. */
export interface Unsolved {
  readonly code: UnsolvedCode;
  readonly sectionId: string;
  readonly lineId?: string;
}

/**
 * - `no-flour`: percentages of nothing (no flour and no line of 100 %, or flour of zero).
 * - `flour-not-hundred`: `sumFraction` of the flour lines, and `gramsOnTop` beside a full 100 %.
 * - `two-balances`, `two-hydrations`, `two-remaining`: on the second line, the first is related.
 * - `balance-not-flour`, `hydration-not-water`, `remaining-not-part`: an amount on a line that cannot have it.
 * - `nothing-left-for-balance`: the other flours make `sumFraction` (and `sumGrams`) already.
 * - `below-own-water`: `fraction` wanted; what is there makes `ownFraction` without this line.
 * - `negative-remainder`: drawn parts bring more than the formula's line has.
 * - `drawn-and-added`: a part that draws is named in a line as well.
 * - `drawn-not-in-formula`, `drawn-not-in-part`: a draw (`values.drawId`) of what is not there.
 * - `added-by-part`: a hint; a drawn part's own ingredient that the formula's lines lack.
 * - `part-amounts-differ`: a part of fixed weight is made as `madeGrams` and taken as `takenGrams`.
 * - `contradiction`: a draw (`values.drawId`) does not fit what fixes the part already.
 * - `two-scales`: no lineId, the place is the yield; related are the flour lines in grams.
 * - `grams-exceed-total`: lines in grams outweigh what the section may weigh.
 * - `under-determined`: nothing says how much of this section is made.
 * - `keep-back-exceeds-made`: solved as if nothing were kept back.
 * - `unused-part`: no line takes the part and it draws nothing.
 * - `loop`: `values.loop` names what goes round, in order.
 * - `no-pieces`: grams a piece without a number of pieces.
 * - `no-piece-weight`, `bake-loss-unknown`, `impossible-yield`, `impossible-loss`: the yield cannot be used.
 * - `impossible-amount`: negative, infinite or not a number; with `values.property` when no line is meant.
 */
export type FormulaProblemKind =
  | 'no-flour'
  | 'flour-not-hundred'
  | 'two-balances'
  | 'two-hydrations'
  | 'two-remaining'
  | 'balance-not-flour'
  | 'hydration-not-water'
  | 'remaining-not-part'
  | 'nothing-left-for-balance'
  | 'below-own-water'
  | 'negative-remainder'
  | 'drawn-and-added'
  | 'drawn-not-in-formula'
  | 'drawn-not-in-part'
  | 'added-by-part'
  | 'part-amounts-differ'
  | 'contradiction'
  | 'two-scales'
  | 'grams-exceed-total'
  | 'under-determined'
  | 'unused-part'
  | 'keep-back-exceeds-made'
  | 'loop'
  | 'no-pieces'
  | 'no-piece-weight'
  | 'bake-loss-unknown'
  | 'impossible-yield'
  | 'impossible-loss'
  | 'impossible-amount';

export interface LinePlace {
  readonly sectionId: string;
  readonly lineId?: string;
}

/** One cause, as plain data: the words for the baker are written by whoever shows it. */
export interface FormulaProblem {
  readonly kind: FormulaProblemKind;
  readonly sectionId: string;
  readonly lineId?: string;
  readonly related?: readonly LinePlace[];
  readonly values: Readonly<Record<string, number | string | readonly string[]>>;
}

/** A formula solved, and what stood in the way. */
export interface FormulaSolution {
  /** Absent when the dough has no lines. */
  readonly solved: SolvedFormula | undefined;
  readonly problems: readonly FormulaProblem[];
}
