import { absorptionAt14, peakMinutes, proteinAt14, stabilityMinutes } from '../calc/flour/flour.ts';
import { ashOfDry } from '../calc/flour/flour-mix.ts';
import type { Known } from '../calc/known.ts';
import { type FlourType, flourTypeOf, type TypeCountry } from '../catalogue/flour-types.ts';
import type { Ingredient } from '../model/found-ingredient.ts';
import { type Message, message } from '../words/message.ts';
import { provenanceMessage } from './provenance.ts';

/** What is known of a flour, each figure with where it comes from. */
export function flourFigures(ingredient: Ingredient): Message[] {
  const flour = ingredient.flour!;
  const isRye = flour.grain === 'rye';
  return [
    flourFigure('protein', proteinAt14(flour)),
    flourFigure('absorption', absorptionAt14(flour)),
    ...(isRye ? [] : [minutesFigure('peak', peakMinutes(flour))]),
    ...(isRye ? [] : [minutesFigure('stability', stabilityMinutes(flour))]),
    ashMessage(ingredient),
  ].filter((one) => one !== undefined);
}

/** A share of a flour, and where the figure comes from: protein and absorption at 14% moisture, ash of dry matter. */
export function flourFigure(
  kind: 'protein' | 'absorption' | 'ash',
  share: Known<number, Message>,
): Message | undefined {
  if (!share.known) return undefined;
  return message(`flour-figure.${kind}`, {
    fraction: share.value,
    source: provenanceMessage(share.provenance),
  });
}

function minutesFigure(kind: 'peak' | 'stability', time: Known<number, Message>): Message | undefined {
  if (!time.known) return undefined;
  return message(`flour-figure.${kind}`, { minutes: time.value, source: provenanceMessage(time.provenance) });
}

const countries: readonly TypeCountry[] = ['Germany', 'Austria', 'France', 'Italy'];
const typedGrains: ReadonlySet<string> = new Set(['wheat', 'rye', 'spelt'] satisfies FlourType['grain'][]);

/** The ash of a flour on dry matter, as laws give it, and the types it falls under; undefined where it is not known. */
function ashMessage({ flour }: Ingredient): Message | undefined {
  if (flour === undefined) return undefined;
  const ash = ashOfDry(flour);
  if (!ash.known) return undefined;
  const protein = proteinAt14(flour);
  const ofDry = protein.known ? protein.value / 0.86 : undefined;
  const grain = flour.grain as FlourType['grain'];
  const facts = typedGrains.has(flour.grain)
    ? countries.flatMap((country) => {
        const type = flourTypeOf(country, grain, ash.value, ofDry);
        return type === undefined ? [] : [message(`flour-type.${country}`, { name: type.name })];
      })
    : [];
  const figure = { fraction: ash.value, source: provenanceMessage(ash.provenance) };
  return facts.length === 0
    ? message('flour-figure.ash', figure)
    : message('flour-figure.ash-types', { ...figure, facts });
}
