import type { Analysis } from '../analysis/analysis.ts';
import type { MixAnalysis } from '../analysis/mixing.ts';
import { mixingOutlook } from '../features/mixing-words.ts';
import { degrees, duration, trimmed } from '../text/figures.ts';
import { inMarks } from '../words/in-marks.ts';
import type { SheetMixing, SheetPhase } from './view.ts';

/** The mixing programme with the temperature and the stage at the end of each line. */
export function mixingOf(mix: MixAnalysis, analysis: Analysis, firstLine: number): SheetMixing {
  const model = analysis.resolved.model.mixes[mix.index]!;
  let before = 0;
  let looked = 0;
  const phases: SheetPhase[] = [];
  for (const end of mix.outcome.phaseEnds) {
    const line = mix.phaseLines[end.phase];
    const phase = mix.input.phases[end.phase];
    if (line === undefined || phase === undefined || 'portions' in phase) continue;
    const adds = mix.input.phases
      .slice(looked, end.phase)
      .flatMap((one) => ('portions' in one ? one.portions.map((portion) => portion.label) : []));
    looked = end.phase + 1;
    phases.push({
      line: firstLine + line,
      label: phase.kind === 'speed' ? `speed ${phase.number}` : phase.kind,
      kind: phase.kind,
      minutes: end.minutes - before,
      endMinute: Number(trimmed(end.minutes, 1)),
      adds,
      ...(end.celsius === undefined ? {} : { celsius: degrees(end.celsius) }),
      ...(end.stage === undefined ? {} : { stage: end.stage }),
    });
    before = end.minutes;
  }
  return {
    line: firstLine + model.headerLine,
    mixer: mix.mixer.name,
    total: duration(mix.outcome.programmeMinutes * 60),
    outlook: mixingOutlook(mix).map(inMarks),
    phases,
  };
}
