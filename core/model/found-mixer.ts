import type { MixerData, MixerKind, MixerSpeed } from '../calc/mixing/mixer.ts';
import { findCatalogueMixer } from '../catalogue/mixers.ts';
import type { Name } from '../syntax/tree.ts';
import { propertiesOf, saidValue } from './properties.ts';
import type { Definition, Scope } from './scope.ts';

/** A mixer with its bowl. */
export interface Mixer {
  readonly name: string;
  readonly data: MixerData;
  readonly leastGrams?: number;
  readonly mostGrams?: number;
  readonly definition?: Definition;
  /** Its section does not say of what kind it is; a spiral is assumed. */
  readonly kindAssumed?: true;
}

export type MixerFound =
  | { readonly kind: 'found'; readonly mixer: Mixer }
  | { readonly kind: 'several'; readonly definitions: readonly Definition[] }
  | { readonly kind: 'unknown' };

/** Dough that a pair of hands kneads at a time, at most; common practice, no source. */
export const mostByHandGrams = 10_000;

/** Mixing by hand, as hands commonly do. */
export const byHand: Mixer = { name: 'by hand', data: { kind: 'hand', speeds: [] } };

/** What `mix by hand` means: the bakery’s own hands where a section `mixer by hand` tells of them. */
export function findHands(scope: Scope): Mixer {
  const level = scope.find('mixer', byHand.name)[0];
  const own = level?.length === 1 ? builtOnce(level[0]!) : undefined;
  return own?.data.kind === 'hand' ? own : byHand;
}

/** `the spiral`, `a stand mixer`: the name without the word that only leads to it. */
export function withoutArticle(folded: string): string {
  return folded.replace(/^(?:the|an?|my|our) (?=.)/, '');
}

/** Looks a mixer up; a kind of mixer stands for a usual one of its kind. */
export function findMixer(name: Name, scope: Scope): MixerFound {
  const level = scope.find('mixer', name.folded)[0];
  if (level !== undefined) {
    if (level.length > 1) return { kind: 'several', definitions: level };
    return { kind: 'found', mixer: builtOnce(level[0]!) };
  }
  const usual = findCatalogueMixer(name.folded) ?? findCatalogueMixer(withoutArticle(name.folded));
  return usual === undefined
    ? { kind: 'unknown' }
    : { kind: 'found', mixer: { name: name.text, data: usual.mixer } };
}

const built = new WeakMap<Definition, Mixer>();

function builtOnce(definition: Definition): Mixer {
  const before = built.get(definition);
  if (before !== undefined) return before;
  const made = build(definition);
  built.set(definition, made);
  return made;
}

function build(definition: Definition): Mixer {
  const said = propertiesOf(definition.block, definition.block.top!);
  const word = saidValue(said, 'kind', 'word')?.word as MixerKind | undefined;
  const isHands = definition.name.folded === byHand.name;
  const kind = word ?? (isHands ? 'hand' : 'spiral');
  const speeds: MixerSpeed[] = (said.get('speed') ?? []).flatMap(({ statement: { value } }) =>
    value?.form === 'machineSpeed'
      ? [
          {
            number: value.number,
            rpm: value.rpm,
            ...(value.celsiusPerMinute === undefined
              ? {}
              : { warmsCelsiusPerMinute: value.celsiusPerMinute }),
            ...(value.withinPerMinute === undefined ? {} : { warmsWithinPerMinute: value.withinPerMinute }),
            ...(value.develops === undefined ? {} : { developsTimes: value.develops }),
            ...(value.developsWithin === undefined ? {} : { developsWithinTimes: value.developsWithin }),
          },
        ]
      : [],
  );
  const stated = new Set(speeds.map((speed) => speed.number));
  const bowl = saidValue(said, 'bowl', 'massRange');
  const towards = saidValue(said, 'warms towards', 'temperature');
  const settles = saidValue(said, 'settles', 'duration');
  const friction = saidValue(said, 'friction', 'difference')?.celsius;
  const jacket = saidValue(said, 'jacket takes', 'fraction')?.fraction;
  const data: MixerData = {
    kind,
    speeds: [
      ...speeds,
      ...(findCatalogueMixer(kind)?.mixer.speeds ?? []).filter((speed) => !stated.has(speed.number)),
    ],
    ...(towards === undefined ? {} : { warmsTowardsCelsius: towards.celsius }),
    ...(towards?.withinCelsius === undefined ? {} : { warmsTowardsWithinCelsius: towards.withinCelsius }),
    ...(settles === undefined
      ? {}
      : { settles: { minutes: settles.seconds / 60, grams: settles.atGrams ?? 1000 } }),
    ...(friction === undefined ? {} : { frictionCelsius: friction }),
    ...(jacket === undefined ? {} : { jacketFraction: jacket }),
  };
  return {
    name: definition.name.text,
    data,
    definition,
    ...(bowl?.leastGrams === undefined ? {} : { leastGrams: bowl.leastGrams }),
    ...(bowl === undefined ? {} : { mostGrams: bowl.mostGrams }),
    ...(word === undefined && !isHands ? { kindAssumed: true as const } : {}),
  };
}
