import { type DevelopmentFactor, developmentFactor } from '../calc/calibration/calibration-development.ts';
import type { CalibrationTrial } from '../calc/calibration/calibration-quantities.ts';
import type { Definition, Scope } from '../model/scope.ts';
import type { Block, Name } from '../syntax/tree.ts';
import { firstOf } from '../text/element.ts';
import { newestTrials } from './mixer-trials.ts';
import type { MixerKey } from './trial-evidence.ts';

/** What trials on several mixers show of how fast the doughs of one flour develop. */
export interface FlourTrials {
  /** How many times as fast as worked out: in all of them. */
  readonly least: number;
  readonly most: number;
  /** Different mixers, hands among them, that each show it by themselves. */
  readonly mixers: number;
  readonly readings: number;
  /** Peak of the flour as it is taken now, farinograph minutes. */
  readonly peakMinutes: number;
  readonly formulas: readonly Definition[];
}

/**
 * What the newest trials of doughs of this flour alone show of their development, where it repeats over mixers: then it is the
 * flour’s. Undefined where one mixer alone shows it, where they do not agree, or where they agree with what is worked out.
 */
export function flourTrials(block: Block, name: Name, scope: Scope): FlourTrials | undefined {
  const defined = scope.find('ingredient', name.folded)[0];
  if (defined?.length !== 1 || firstOf(defined).block !== block) return undefined;
  const byMixer = new Map<MixerKey, CalibrationTrial[]>();
  const ofOthers = new Map<MixerKey, CalibrationTrial[]>();
  const formulas = new Set<Definition>();
  for (const { told, definition } of newestTrials(scope)) {
    const { trial, mixer } = told;
    if (!trial.readings.some(({ stages }) => stages !== undefined)) continue;
    const group = trial.flours === name.folded ? byMixer : ofOthers;
    group.set(mixer, [...(group.get(mixer) ?? []), trial]);
    if (group === byMixer) formulas.add(definition);
  }
  if (byMixer.size < 2) return undefined;
  // What a mixer does to other flours too is the mixer’s, and is written there.
  const isMixers = [...byMixer.keys()].some((mixer) => {
    const others = ofOthers.get(mixer) ?? [];
    const factor = others.length === 0 ? undefined : developmentFactor(firstOf(others).mixing.mixer, others);
    return factor?.known === true && isOff(factor.value);
  });
  if (isMixers) return undefined;
  let [least, most, readings, mixers] = [0, Number.POSITIVE_INFINITY, 0, 0];
  for (const trials of byMixer.values()) {
    const factor = developmentFactor(firstOf(trials).mixing.mixer, trials);
    if (!factor.known) return undefined;
    least = Math.max(least, factor.value.least);
    most = Math.min(most, factor.value.most ?? Number.POSITIVE_INFINITY);
    readings += factor.value.readings;
    mixers += isOff(factor.value) ? 1 : 0;
  }
  const curve = firstOf(firstOf([...byMixer.values()])).mixing.curve;
  const peak = curve.known ? curve.value.peakMinutes : curve;
  const isShown = mixers >= 2 && least > 0 && Number.isFinite(most) && least <= most;
  return isShown && peak.known
    ? { least, most, mixers, readings, peakMinutes: peak.value, formulas: [...formulas] }
    : undefined;
}

function isOff({ least, most }: DevelopmentFactor): boolean {
  return least > 1 || (most !== undefined && most < 1);
}
