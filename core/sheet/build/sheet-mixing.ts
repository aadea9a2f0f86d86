import type { Analysis } from '../../analysis/analysis.ts';
import { type MixAnalysis, stageMessage } from '../../analysis/mix-analysis.ts';
import { mixingOutlook } from '../../facts/mixing-words.ts';
import { trimmed } from '../../text/figures.ts';
import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { SheetMixing, SheetPhase } from './view.ts';

/** The mixing programme with the temperature and the stage at the end of each line. */
export function mixingOf(
  mix: MixAnalysis,
  analysis: Analysis,
  firstLine: number,
  speaker: Speaker,
): SheetMixing {
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
      label: speaker.say(
        phase.kind === 'speed'
          ? message('phase.speed', { number: phase.number })
          : message(`phase.${phase.kind}`),
      ),
      kind: phase.kind,
      minutes: end.minutes - before,
      endMinute: Number(trimmed(end.minutes, 1)),
      adds,
      ...(end.celsius === undefined ? {} : { celsius: speaker.celsius(end.celsius) }),
      ...(end.stage === undefined ? {} : { stage: speaker.say(stageMessage(end.stage)) }),
    });
    before = end.minutes;
  }
  return {
    line: firstLine + model.headerLine,
    mixer: mix.mixer.name,
    total: speaker.duration(mix.outcome.programmeMinutes * 60),
    outlook: mixingOutlook(mix).map(speaker.say),
    phases,
  };
}
