import type { Analysis } from '../../analysis/analysis.ts';
import type { OverallIngredient } from '../../calc/formula-result.ts';
import type { Role } from '../../catalogue/role.ts';
import { mass, percent } from '../../text/figures.ts';
import type { SheetChart } from '../chart.ts';
import { compositionDrawing } from './composition-drawing.ts';
import { inBothWidths } from './frame.ts';
import type { Hatching } from './hatching.ts';

/** A part of the dough as it is drawn: one flour, or everything of one kind. */
export interface Share {
  readonly names: readonly string[];
  /** What a part of several ingredients is called. */
  readonly kind: string;
  readonly fraction: number;
  /** Absent where the formula has no size of its own. */
  readonly grams?: number;
  readonly hatching: Hatching;
}

/** Beside these a flour is too little to be drawn by itself. */
const mostFlours = 5;
const flourHatchings: readonly Hatching[] = ['rising', 'falling', 'crossed', 'rising close', 'falling close'];

/** What is not flour, in the order in which it is drawn. */
const kinds: readonly (readonly [Role, string, Hatching])[] = [
  ['water', 'water', 'level'],
  ['dairy', 'milk', 'level close'],
  ['egg', 'egg', 'dots close'],
  ['fat', 'fat', 'grid'],
  ['sugar', 'sugar', 'dots'],
  ['seeds', 'seeds', 'upright close'],
  ['other', 'other', 'grid close'],
  ['salt', 'salt', 'empty'],
  ['yeast', 'yeast', 'upright'],
];

type Weighed = OverallIngredient & { readonly grams: number };

/** What the dough is made of, preferments and soakers dissolved; undefined while a weight of it is not known. */
export function compositionChart({ solved }: Analysis): SheetChart | undefined {
  const all = (solved?.overall ?? []).filter(({ grams }) => grams !== 0);
  const weighed = all.filter((one): one is Weighed => one.grams !== undefined && one.grams > 0);
  const total = weighed.reduce((sum, { grams }) => sum + grams, 0);
  if (weighed.length < 2 || weighed.length < all.length || !Number.isFinite(total)) return undefined;
  const isSized = solved?.assumedScale === false;
  const shares = sharesOf(weighed, total, isSized);
  const title = 'What the dough is made of';
  const description = `${isSized ? `${mass(total)} of dough: ` : 'The dough: '}${shares
    .map((share) => `${callOf(share)} ${percent(share.fraction)}`)
    .join(', ')}.`;
  const texts = { title, description };
  const weight = ({ grams }: Weighed): string[] => (isSized ? [mass(grams)] : []);
  return {
    kind: 'composition',
    title,
    description,
    ...inBothWidths('composition', (frame) => compositionDrawing(shares, frame, texts)),
    table: {
      heads: ['Ingredient', 'Of the dough', ...(isSized ? ['Weight'] : [])],
      rows: [...weighed]
        .sort((one, other) => other.grams - one.grams)
        .map((one) => [one.name, percent(one.grams / total), ...weight(one)]),
    },
  };
}

/** A part by its name, or by its kind and the names in it. */
export function callOf({ names, kind }: Share): string {
  return names.length === 1 ? names[0]! : `${kind} (${names.join(', ')})`;
}

function sharesOf(weighed: readonly Weighed[], total: number, isSized: boolean): Share[] {
  const share = (of: readonly Weighed[], kind: string, hatching: Hatching): Share[] => {
    if (of.length === 0) return [];
    const grams = of.reduce((sum, one) => sum + one.grams, 0);
    const names = [...of].sort((one, other) => other.grams - one.grams).map(({ name }) => name);
    return [{ names, kind, fraction: grams / total, hatching, ...(isSized ? { grams } : {}) }];
  };
  const flours = weighed.filter(({ isFlour }) => isFlour).sort((one, other) => other.grams - one.grams);
  const [drawn, rest] = [flours.slice(0, mostFlours), flours.slice(mostFlours)];
  return [
    ...drawn.flatMap((one, index) => share([one], 'flour', flourHatchings[index]!)),
    ...share(rest, 'other flours', 'crossed close'),
    ...kinds.flatMap(([role, kind, hatching]) =>
      share(
        weighed.filter(
          (one) => !one.isFlour && (one.role === role || (role === 'other' && one.role === 'flour')),
        ),
        kind,
        hatching,
      ),
    ),
  ];
}
