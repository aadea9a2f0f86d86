import type { FlourData, FlourFigure, Milling } from '../calc/flour/flour.ts';
import type { Provenance } from '../calc/known.ts';
import { fractionOf, type SaidProperties, saidValue } from './properties.ts';

const millings = new Set<string>(['white', 'medium', 'wholemeal']);

/** The flour a section describes, over what it is like. */
export function flourOf(said: SaidProperties, before: FlourData | undefined): FlourData {
  const word = saidValue(said, 'milling', 'word')?.word;
  const milling = word !== undefined && millings.has(word) ? (word as Milling) : before?.milling;
  const moisture = fractionOf(said, 'moisture') ?? fractionOf(said, 'water');
  const protein = saidValue(said, 'protein', 'fraction');
  const minutes = (property: string): number | undefined => {
    const seconds = saidValue(said, property, 'duration')?.seconds;
    return seconds === undefined ? undefined : seconds / 60;
  };
  const pick = <K extends keyof FlourData>(key: K, value: FlourData[K] | undefined): Partial<FlourData> => {
    const chosen = value ?? before?.[key];
    return chosen === undefined ? {} : { [key]: chosen };
  };
  const proteinParts: Partial<FlourData> =
    protein === undefined
      ? { ...pick('protein', undefined), ...basisOf(before, moisture) }
      : {
          protein: protein.fraction,
          ...(protein.atMoisture === undefined ? {} : { proteinMoistureBasis: protein.atMoisture }),
        };
  const ash = saidValue(said, 'ash', 'fraction');
  // A plain figure of a type is of the dry matter, as the type’s own is.
  const ashBasis = ash?.atMoisture ?? before?.ashMoistureBasis;
  const inherited = inheritedOf(said, before);
  const stated = [...said.keys()].some((one) => one !== 'note' && one !== 'price');
  return {
    grain: saidValue(said, 'grain', 'word')?.word ?? before?.grain ?? 'wheat',
    ...(milling === undefined ? {} : { milling }),
    ...proteinParts,
    ...(protein === undefined && before?.isTypeAlone === true ? { isTypeAlone: true as const } : {}),
    ...pick('moisture', moisture),
    ...pick('ash', ash?.fraction),
    ...(ashBasis === undefined ? {} : { ashMoistureBasis: ashBasis }),
    ...pick('absorption', fractionOf(said, 'absorption')),
    ...pick('starchDamage', fractionOf(said, 'starch damage')),
    ...pick('peakMinutes', minutes('peak')),
    ...pick('stabilityMinutes', minutes('stability')),
    ...(stated || before?.provenance === undefined
      ? { provenance: 'given' as const }
      : { provenance: before.provenance }),
    ...(stated && inherited !== undefined ? { inherited } : {}),
  };
}

/** The basis of a protein taken over: it stays that of the other flour when the section states a moisture of its own. */
function basisOf(
  before: FlourData | undefined,
  moisture: number | undefined,
): Pick<FlourData, 'proteinMoistureBasis'> {
  const stated = before?.proteinMoistureBasis;
  if (stated !== undefined) return { proteinMoistureBasis: stated };
  const own = before?.moisture;
  return own === undefined || moisture === undefined ? {} : { proteinMoistureBasis: own };
}

const figures: readonly (readonly [FlourFigure, word: string])[] = [
  ['protein', 'protein'],
  ['ash', 'ash'],
  ['absorption', 'absorption'],
  ['peakMinutes', 'peak'],
  ['stabilityMinutes', 'stability'],
];

/** Where the figures come from that the section leaves to what it is like. */
function inheritedOf(said: SaidProperties, before: FlourData | undefined): FlourData['inherited'] {
  if (before === undefined) return undefined;
  const taken: Partial<Record<FlourFigure, Provenance>> = {};
  for (const [figure, word] of figures)
    if (!said.has(word) && before[figure] !== undefined)
      taken[figure] = before.inherited?.[figure] ?? before.provenance ?? 'given';
  return Object.keys(taken).length === 0 ? undefined : taken;
}
