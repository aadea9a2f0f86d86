import { type Message, message } from '../../words/message.ts';
import { type Known, known, type Provenance, unknown } from '../known.ts';

/** How much of the grain is in the flour. */
export type Milling = 'white' | 'medium' | 'wholemeal';

/** What a miller’s sheet says of a flour. Fractions are 0 to 1 of the flour as it is, unless a basis is told. */
export interface FlourData {
  /** The grain in the trade’s word, lower case: wheat, rye, spelt, durum, khorasan, barley, oats, … */
  readonly grain: string;
  readonly milling?: Milling;
  readonly protein?: number;
  /** Moisture fraction the protein is stated at; absent: as is, at the flour’s own moisture. */
  readonly proteinMoistureBasis?: number;
  readonly moisture?: number;
  readonly ash?: number;
  /** Moisture fraction the ash is stated at, 0 for dry matter as laws and mills give it; absent: as is. */
  readonly ashMoistureBasis?: number;
  /** Farinograph absorption at 500 FU, fraction of flour at 14 % moisture. */
  readonly absorption?: number;
  readonly starchDamage?: number;
  /** Farinograph development time. */
  readonly peakMinutes?: number;
  /** Farinograph stability. */
  readonly stabilityMinutes?: number;
  /** Its type is known, which says nothing of protein: that is the usual one of such flour. */
  readonly isTypeAlone?: true;
  /** Provenance of what is stated above; `given` where absent. */
  readonly provenance?: Provenance;
  /** Figures taken over from another flour, with the provenance they have there; it goes before the one of all. */
  readonly inherited?: Readonly<Partial<Record<FlourFigure, Provenance>>>;
}

/** The figures of a flour that have a provenance of their own. */
export type FlourFigure = 'protein' | 'ash' | 'absorption' | 'peakMinutes' | 'stabilityMinutes';

/** Where a stated figure of a flour comes from. */
export function provenanceOf({ inherited, provenance }: FlourData, figure: FlourFigure): Provenance {
  return inherited?.[figure] ?? provenance ?? 'given';
}

/** What the mixing model needs of a flour or of a blend. */
export interface FlourCurve {
  /** Fraction of flour at 14 % moisture. */
  readonly absorptionAt14: Known<number, Message>;
  /** Fraction of the flour as it is, at its own moisture. */
  readonly absorptionAsIs: Known<number, Message>;
  readonly peakMinutes: Known<number, Message>;
  readonly stabilityMinutes: Known<number, Message>;
  /** Share of rye and of other grain that forms no gluten network, 0 to 0.4. */
  readonly shareWithoutNetwork: number;
  /** Nothing of the flour’s strength was told, so the bands are wide. */
  readonly assumed: boolean;
  /** Half-width of the bands as a fraction: 0.2 by default, 0.3 where a type alone is known, 0.4 where the protein had to be assumed. */
  readonly band: number;
  /** What was assumed or extrapolated, in sentences. */
  readonly notes: readonly Message[];
}

/** The moisture a flour is taken to have when nobody tells it: the farinograph’s own basis. */
export const usualMoisture = 0.14;

// Protein (14 % basis) of a flour nobody described: a plain bakers’ flour. Common practice.
const usualProtein = 0.115;

/** Protein (14 % basis) that the fit of absorption was made on. */
const fittedProtein = { lowFraction: 0.11, highFraction: 0.134 };

/** With more of the flour than this forming no gluten network a dough is mixed until even. Common practice, no source. */
const mostWithoutNetwork = 0.4;

/** A mass fraction of flour restated at another moisture: x₂ = x₁(1 − M₂)/(1 − M₁), equal dry matter. */
export function atMoisture(fraction: number, fromMoisture: number, toMoisture: number): number {
  return (fraction * (1 - toMoisture)) / (1 - fromMoisture);
}

/** Absorption (fraction, 14 % basis) on flour of another moisture: equal dry matter and equal water in all. */
export function absorptionAtMoisture(absorptionAt14: number, moisture: number): number {
  return ((absorptionAt14 + 1) * (1 - moisture)) / 0.86 - 1;
}

/**
 * Absorption from protein (14 % basis), starch damage and the wholemeal fraction, all fractions: 36.48 + 1.004·protein +
 * 2.134·damage + 6·wholemeal in percent. The fit is our own, to flour data of the Canadian Grain Commission (n = 27, standard
 * error 1.03 points), on protein 11–13.4 % and damage 6.3–9.7 %.
 */
export function fittedAbsorption(
  proteinAt14: number,
  starchDamage: number,
  wholemealFraction: number,
): number {
  return (36.48 + 1.004 * proteinAt14 * 100 + 2.134 * starchDamage * 100 + 6 * wholemealFraction) / 100;
}

/** Starch damage (fraction) of a flour nobody measured: 3 % at 8 % protein to 7 % at 11.5 %, clamped. Common practice. */
export function usualStarchDamage(proteinAt14: number): number {
  return 0.03 + 0.04 * clamp((proteinAt14 - 0.08) / 0.035, 0, 1);
}

/** Whether a grain’s flour forms a gluten network that mixing develops. */
export function formsGlutenNetwork(grain: string): boolean {
  return networkGrains.has(grain.trim().toLowerCase());
}

/** Protein, fraction at 14 % moisture; the flour’s own moisture is 14 % where it is not told. */
export function proteinAt14(flour: FlourData): Known<number, Message> {
  const protein = sound(flour.protein);
  if (protein === undefined) return unknown(message('flour.no-protein'));
  const basis = sound(flour.proteinMoistureBasis) ?? moistureOf(flour);
  return known(atMoisture(protein, basis, 0.14), provenanceOf(flour, 'protein'));
}

/**
 * Farinograph absorption, fraction of flour at 14 % moisture: as given, else fitted from protein and starch damage; of spelt the
 * middle of what handbooks give for its flour.
 */
export function absorptionAt14(flour: FlourData): Known<number, Message> {
  const given = sound(flour.absorption, 2);
  if (given !== undefined) return known(given, provenanceOf(flour, 'absorption'));
  if (!formsGlutenNetwork(flour.grain)) return unknown(message('flour.no-network', { name: flour.grain }));
  // The fit is to wheat: spelt takes up far less at the same protein.
  if (isSpelt(flour)) return known(speltAbsorption + 0.06 * wholemealFraction(flour), 'common practice');
  const protein = proteinAt14(flour);
  if (!protein.known) return protein;
  const damage = sound(flour.starchDamage) ?? usualStarchDamage(protein.value);
  return known(fittedAbsorption(protein.value, damage, wholemealFraction(flour)), 'common practice');
}

/** Farinograph development time, minutes: as given, else by grain, milling and protein (common practice). */
export function peakMinutes(flour: FlourData): Known<number, Message> {
  return curveMinutes(flour, 'peakMinutes', [1.5, 4, 6.5], 5.5);
}

/** Farinograph stability, minutes: as given, else by grain, milling and protein (common practice). */
export function stabilityMinutes(flour: FlourData): Known<number, Message> {
  return curveMinutes(flour, 'stabilityMinutes', [2, 8, 15], 5.5);
}

/**
 * What mixing needs of a blend: the mass-weighted mean over the flours that form a gluten network. Unknown when more than 40 % of
 * the flour forms no such network, rye above all: such dough is mixed to evenness and has no curve.
 */
export function blendCurve(
  parts: readonly { readonly grams: number; readonly flour: FlourData }[],
): Known<FlourCurve, Message> {
  const weighed = parts.filter((part) => part.grams > 1e-9 && part.grams < 1e12);
  const total = weighed.reduce((sum, part) => sum + part.grams, 0);
  if (!(total > 0)) return unknown(message('flour.none'));
  const strong = weighed.filter((part) => formsGlutenNetwork(part.flour.grain));
  const strongGrams = strong.reduce((sum, part) => sum + part.grams, 0);
  const shareWithoutNetwork = 1 - strongGrams / total;
  if (shareWithoutNetwork > mostWithoutNetwork + 1e-12) {
    const rye = weighed.some((part) => part.flour.grain.trim().toLowerCase() === 'rye');
    const facts = { fraction: mostWithoutNetwork };
    return unknown(message(rye ? 'flour.mostly-rye' : 'flour.mostly-other', facts));
  }
  const notes: Message[] = [];
  let assumed = false;
  let isTypeAlone = false;
  const told = strong.map((part) => {
    const protein = proteinAt14(part.flour);
    const curve = [part.flour.absorption, part.flour.peakMinutes, part.flour.stabilityMinutes];
    const measured = curve.every((value) => sound(value, 1000) !== undefined);
    if (!protein.known && !measured) {
      assumed = true;
      return {
        grams: part.grams,
        flour: { ...part.flour, protein: usualProtein, proteinMoistureBasis: 0.14 },
      };
    }
    const { peakMinutes: peak, stabilityMinutes: stability } = part.flour;
    const isCurveTold = sound(peak, 1000) !== undefined && sound(stability, 1000) !== undefined;
    if (part.flour.isTypeAlone === true && !isCurveTold) isTypeAlone = true;
    return part;
  });
  if (isTypeAlone) notes.push(message('flour.type-alone'));
  if (assumed) notes.push(message('flour.protein-assumed', { fraction: usualProtein }));
  if (told.some((part) => figuresOf(part.flour).isExtrapolated)) {
    notes.push(message('flour.extrapolated', fittedProtein));
  }
  if (shareWithoutNetwork > 1e-12) notes.push(message('flour.narrows'));
  const mean = (figure: keyof FlourFigures): Known<number, Message> => weightedMean(told, figure, assumed);
  return known(
    {
      absorptionAt14: mean('absorptionAt14'),
      absorptionAsIs: mean('absorptionAsIs'),
      peakMinutes: mean('peakMinutes'),
      stabilityMinutes: mean('stabilityMinutes'),
      shareWithoutNetwork,
      assumed,
      band: assumed ? 0.4 : isTypeAlone ? 0.3 : 0.2,
      notes,
    },
    assumed ? 'common practice' : (told[0]?.flour.provenance ?? 'given'),
  );
}

/** The flour’s own moisture, fraction; 14 % where it is not told, or is what no flour can have. */
export function moistureOf(flour: FlourData): number {
  const moisture = sound(flour.moisture);
  return moisture === undefined || moisture > wettestFlour ? usualMoisture : moisture;
}

/** Flour of this moisture is none, and would take up less than no water. */
const wettestFlour = 0.3;

const networkGrains: ReadonlySet<string> = new Set([
  'wheat',
  'common wheat',
  'soft wheat',
  'hard wheat',
  'spelt',
  'durum',
  'durum wheat',
  'khorasan',
  'khorasan wheat',
  'emmer',
  'einkorn',
]);

/** White spelt takes up 54–60 % (handbook range, from memory); wholemeal six points more, as of wheat. */
const speltAbsorption = 0.57;

function isSpelt(flour: FlourData): boolean {
  return flour.grain.trim().toLowerCase() === 'spelt';
}

function wholemealFraction(flour: FlourData): number {
  if (flour.milling === 'wholemeal') return 1;
  return flour.milling === 'medium' ? 0.5 : 0;
}

// White wheat by protein at 9, 11.5 and 13 %; wholemeal its own value, medium halfway between; spelt 3 minutes.
function curveMinutes(
  flour: FlourData,
  figure: 'peakMinutes' | 'stabilityMinutes',
  white: readonly [number, number, number],
  wholemeal: number,
): Known<number, Message> {
  const stated = sound(flour[figure], 1000);
  if (stated !== undefined) return known(stated, provenanceOf(flour, figure));
  if (!formsGlutenNetwork(flour.grain)) return unknown(message('flour.no-network', { name: flour.grain }));
  if (isSpelt(flour)) return known(3, 'common practice');
  const whole = wholemealFraction(flour);
  if (whole === 1) return known(wholemeal, 'common practice');
  const protein = proteinAt14(flour);
  if (!protein.known) return protein;
  const percent = protein.value * 100;
  const [weak, medium, strong] = white;
  const minutes =
    percent < 11.5
      ? weak + (medium - weak) * clamp((percent - 9) / 2.5, 0, 1)
      : medium + (strong - medium) * clamp((percent - 11.5) / 1.5, 0, 1);
  return known(minutes * (1 - whole) + wholemeal * whole, 'common practice');
}

/** What a flour brings to the curve of a blend. */
interface FlourFigures {
  readonly absorptionAt14: Known<number, Message>;
  readonly absorptionAsIs: Known<number, Message>;
  readonly peakMinutes: Known<number, Message>;
  readonly stabilityMinutes: Known<number, Message>;
}

const figures = new WeakMap<FlourData, FlourFigures & { readonly isExtrapolated: boolean }>();

// A flour stays the same object from one keystroke to the next, so its figures are worked out once.
function figuresOf(flour: FlourData): FlourFigures & { readonly isExtrapolated: boolean } {
  const before = figures.get(flour);
  if (before !== undefined) return before;
  const at14 = absorptionAt14(flour);
  const made = {
    absorptionAt14: at14,
    absorptionAsIs: at14.known
      ? { ...at14, value: absorptionAtMoisture(at14.value, moistureOf(flour)) }
      : at14,
    peakMinutes: peakMinutes(flour),
    stabilityMinutes: stabilityMinutes(flour),
    isExtrapolated: isExtrapolated(flour),
  };
  figures.set(flour, made);
  return made;
}

function isExtrapolated(flour: FlourData): boolean {
  if (sound(flour.absorption, 2) !== undefined || isSpelt(flour)) return false;
  const protein = proteinAt14(flour);
  if (!protein.known) return false;
  return protein.value < fittedProtein.lowFraction || protein.value > fittedProtein.highFraction;
}

function weightedMean(
  parts: readonly { readonly grams: number; readonly flour: FlourData }[],
  figure: keyof FlourFigures,
  assumed: boolean,
): Known<number, Message> {
  let sum = 0;
  let grams = 0;
  let weakest: Provenance = 'measured';
  for (const part of parts) {
    const one = figuresOf(part.flour)[figure];
    if (!one.known) return one;
    sum += one.value * part.grams;
    grams += part.grams;
    if (rank[one.provenance] >= rank[weakest]) weakest = one.provenance;
  }
  return known(sum / grams, assumed ? 'common practice' : weakest);
}

const rank: Readonly<Record<Provenance, number>> = {
  measured: 0,
  given: 1,
  published: 2,
  'common practice': 3,
};

function sound(value: number | undefined, most = 1): number | undefined {
  return value !== undefined && Number.isFinite(value) && value >= 0 && value < most ? value : undefined;
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}
