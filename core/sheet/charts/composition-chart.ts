import type { Analysis } from '../../analysis/analysis.ts';
import type { OverallIngredient } from '../../calc/formula/formula-result.ts';
import type { Role } from '../../calc/formula/role.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { ChartSection } from '../build/sheet-document.ts';
import { compositionDrawing, type Share } from './composition-drawing.ts';
import { chartNamed, inBothWidths } from './frame.ts';
import type { Hatching } from './hatching.ts';

/** Beside these a flour is too little to be drawn by itself. */
const mostFlours = 5;
const flourHatchings: readonly Hatching[] = ['rising', 'falling', 'crossed', 'rising close', 'falling close'];

/** What is not flour, in the order in which it is drawn. */
const kinds = [
  ['water', 'level'],
  ['dairy', 'level close'],
  ['egg', 'dots close'],
  ['fat', 'grid'],
  ['sugar', 'dots'],
  ['seeds', 'upright close'],
  ['other', 'grid close'],
  ['salt', 'empty'],
  ['yeast', 'upright'],
] as const satisfies readonly (readonly [Role, Hatching])[];

type Weighed = OverallIngredient & { readonly grams: number };

/** What the dough is made of, preferments and soakers dissolved; undefined while a weight of it is not known. */
export function compositionChart({ solved }: Analysis, speaker: Speaker): ChartSection | undefined {
  const all = (solved?.overall ?? []).filter(({ grams }) => grams !== 0);
  const weighed = all.filter((one): one is Weighed => one.grams !== undefined && one.grams > 0);
  const total = weighed.reduce((sum, { grams }) => sum + grams, 0);
  if (weighed.length < 2 || weighed.length < all.length || !Number.isFinite(total)) return undefined;
  const isSized = solved?.assumedScale === false;
  const shares = sharesOf(weighed, total, isSized, speaker);
  const title = speaker.say(message('chart.composition'));
  const facts = shares.map(({ called, fraction }) => message('chart.share', { name: called, fraction }));
  const description = speaker.say(
    isSized ? message('chart.dough-of', { grams: total, facts }) : message('chart.the-dough', { facts }),
  );
  const texts = { title, description };
  const weight = ({ grams }: Weighed): string[] => (isSized ? [speaker.mass(grams)] : []);
  return {
    ...chartNamed('composition-chart'),
    title,
    description,
    ...inBothWidths('composition', speaker, (frame) => compositionDrawing(shares, frame, texts)),
    table: {
      heads: [
        message('sheet.ingredient'),
        message('chart.of-dough'),
        ...(isSized ? [message('chart.weight')] : []),
      ].map(speaker.say),
      rows: [...weighed]
        .sort((one, other) => other.grams - one.grams)
        .map((one) => [one.name, speaker.percent(one.grams / total), ...weight(one)]),
    },
  };
}

function sharesOf(weighed: readonly Weighed[], total: number, isSized: boolean, speaker: Speaker): Share[] {
  const share = (of: readonly Weighed[], title: Message, hatching: Hatching): Share[] => {
    if (of.length === 0) return [];
    const grams = of.reduce((sum, one) => sum + one.grams, 0);
    const names = [...of].sort((one, other) => other.grams - one.grams).map(({ name }) => name);
    const called = names.length === 1 ? names[0]! : speaker.say(message('chart.kind-of', { title, names }));
    return [{ called, fraction: grams / total, hatching, ...(isSized ? { grams } : {}) }];
  };
  const flours = weighed.filter(({ isFlour }) => isFlour).sort((one, other) => other.grams - one.grams);
  const [drawn, rest] = [flours.slice(0, mostFlours), flours.slice(mostFlours)];
  return [
    ...drawn.flatMap((one, index) => share([one], message('chart-kind.flour'), flourHatchings[index]!)),
    ...share(rest, message('chart-kind.other-flours'), 'crossed close'),
    ...kinds.flatMap(([role, hatching]) =>
      share(
        weighed.filter(
          (one) => !one.isFlour && (one.role === role || (role === 'other' && one.role === 'flour')),
        ),
        message(`chart-kind.${role}`),
        hatching,
      ),
    ),
  ];
}
