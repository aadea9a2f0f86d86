import type { Role } from '../calc/formula/role.ts';
import type { IcePlan, WaterReach } from '../calc/mixing/mixing-water.ts';
import type { HeatFacts } from './heat-of.ts';
import type { TotalsCost, TotalsLabel } from './totals-product.ts';

/**
 * The totals of one formula, with the unit in each name; what is not known is absent, never zero. What is said of them is
 * messages until somebody words them.
 */
export interface FormulaTotals<Words = string> {
  file: string;
  formula: string;
  flourGrams?: number;
  /** What goes into the bowl, parts among it. */
  doughGrams?: number;
  /** What is folded in after mixing, on top of the dough; absent where nothing is. */
  enclosedGrams?: number;
  bakedGrams?: number;
  pieces?: number;
  pieceGrams?: number;
  hydration?: number;
  effectiveHydration?: number;
  prefermentedFlour?: number;
  /** Of all flour. */
  saltFraction?: number;
  /** All flour together; a figure that one flour lacks is absent. */
  flourMix?: TotalsFlourMix;
  overall: TotalsLine[];
  parts: TotalsPart[];
  water?: TotalsWater;
  /** Where the heat of the dough comes from, and the rule of thumb beside the balance of heat. */
  heat?: TotalsHeat<Words>;
  mixing?: TotalsMixing<Words>;
  /** A draft: the producer answers for what is printed. */
  label?: TotalsLabel<Words>;
  /** Absent where no ingredient has a price. */
  cost?: TotalsCost<Words>;
  findings: { code: string; level: string; line: number; message: Words }[];
  /** False when something of the formula could not be worked out. */
  resolved: boolean;
}

/** The water whose temperature is chosen. */
export interface TotalsWater {
  reach: WaterReach;
  /** Of the water to draw, 0 to 60; absent where no water makes a difference. */
  celsius?: number;
  tapCelsius: number;
  /** Nobody said how cold the tap is. */
  tapAssumed?: true;
  iceGrams?: number;
  tapGrams?: number;
  /** What ice would do, where none is planned. */
  withIce?: IcePlan;
  ruleOfThumbCelsius?: number;
  /** The factor that the rule of thumb used. */
  frictionCelsius?: number;
}

/** Fractions, each on the basis that its name tells. */
export interface TotalsFlourMix {
  proteinAt14PercentMoisture?: number;
  ashOfDryMatter?: number;
  absorptionAt14PercentMoisture?: number;
}

export interface TotalsLine {
  name: string;
  role?: Role | 'part';
  fraction?: number;
  grams?: number;
}

export interface TotalsPart {
  name: string;
  /** `dough`, else the word of its section. */
  kind: string;
  /** Folded into the dough: in every piece, never in the bowl. */
  enclosed?: true;
  flourGrams?: number;
  totalGrams?: number;
  hydration?: number;
  lines: TotalsLine[];
}

export interface TotalsMixing<Words = string> {
  /** What the programme does to the dough, in sentences, the most important first. */
  outlook: Words[];
  slowMinutes?: number;
  developedAfterMinutes?: [number, number];
  letDownAfterMinutes?: [number, number];
  breakdownAfterMinutes?: [number, number];
  development?: number;
  stage?: string;
  endCelsius?: number;
  curve: { minutes: number; celsius?: number; development?: number; stage?: string }[];
}

/** The heat of a dough, each source in its bill by what it is called. */
export type TotalsHeat<Words = string> = Omit<HeatFacts, 'bill'> & {
  readonly bill: readonly (Omit<HeatFacts['bill'][number], 'name'> & { readonly label: Words | string })[];
};
