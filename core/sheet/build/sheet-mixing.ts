import type { Analysis } from '../../analysis/analysis.ts';
import { type MixAnalysis, stageMessage } from '../../analysis/mix-analysis.ts';
import { inMixer, mixingRemarks } from '../../facts/mixing-words.ts';
import { trimmed } from '../../text/figures.ts';
import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { nodeIds } from './node-ids.ts';
import type { Row, TableSection } from './sheet-document.ts';

/** One line of the programme that takes time, and the dough at its end. */
export interface MixingLine {
  readonly row: Row;
  /** `speed 1`, without what goes in before. */
  readonly title: string;
  /** From the start of mixing to its start, its own, and to its end as shown. */
  readonly startMinutes: number;
  readonly minutes: number;
  readonly endMinute: number;
}

/** The mixing programme with the temperature and the stage at the end of each line. */
export function mixingSection(
  mix: MixAnalysis,
  lines: readonly MixingLine[],
  { model, times, firstLine }: { model: Analysis['resolved']['model']; times: number; firstLine: number },
  speaker: Speaker,
): TableSection {
  const { say } = speaker;
  const total = speaker.duration(mix.outcome.programmeMinutes * 60);
  return {
    kind: 'table',
    id: 'mixing',
    name: 'mixing',
    title: say(message('sheet.mixing')),
    when: [say(message('sheet.mixing-in', { written: total, place: inMixer(mix.mixer.name) }))],
    line: firstLine + model.mixes[mix.index]!.headerLine,
    head: say(message('sheet.work')),
    columns: [
      { key: 'lasts', title: say(message('sheet.lasts')), figures: true },
      { key: 'until', title: say(message('sheet.until')), figures: true },
      { key: 'celsius', title: say(message('sheet.dough')), figures: true },
      { key: 'stage', title: say(message('sheet.stage')) },
    ],
    rows: lines.map(({ row }) => row),
    times,
    notes: mixingRemarks(mix).map(say),
  };
}

/** The lines of a programme that take time, in its order. */
export function mixingLines(mix: MixAnalysis, firstLine: number, speaker: Speaker): MixingLine[] {
  const { say } = speaker;
  const idOf = nodeIds();
  let before = 0;
  let looked = 0;
  const lines: MixingLine[] = [];
  for (const end of mix.outcome.phaseEnds) {
    const line = mix.phaseLines[end.phase];
    const phase = mix.input.phases[end.phase];
    if (line === undefined || phase === undefined || 'portions' in phase) continue;
    // What is in the bowl at the beginning stands above, where it is weighed.
    const names = mix.input.phases
      .slice(looked, end.phase)
      .filter((one) => one !== mix.input.phases[0])
      .flatMap((one) => ('portions' in one ? one.portions.map((portion) => portion.label) : []));
    looked = end.phase + 1;
    const isSpeed = phase.kind === 'speed';
    const title = say(
      isSpeed ? message('phase.speed', { number: phase.number }) : message(`phase.${phase.kind}`),
    );
    const minutes = end.minutes - before;
    const endMinute = Number(trimmed(end.minutes, 1));
    const row: Row = {
      id: idOf('mixing', isSpeed ? `speed ${phase.number}` : phase.kind),
      line: firstLine + line,
      name: names.length === 0 ? title : say(message('phase.first-in', { written: title, names })),
      cells: {
        lasts: { text: speaker.duration(minutes * 60), minutes },
        until: { text: speaker.duration(endMinute * 60), minutes: endMinute },
        ...(end.celsius === undefined ? {} : { celsius: { text: speaker.celsius(end.celsius) } }),
        ...(end.stage === undefined ? {} : { stage: { text: say(stageMessage(end.stage)) } }),
      },
    };
    lines.push({ row, title, startMinutes: before, minutes, endMinute });
    before = end.minutes;
  }
  return lines;
}
