import type { StepsSection, WorkMoment } from './sheet-document.ts';
import type { MixingLine } from './sheet-mixing.ts';
import type { Weighed } from './weighing-sections.ts';

/**
 * The sheet as a row of things to do in the order of time: what is weighed, the lines of the mixing, the steps after it.
 * What begins at one time stands in the order of the work: parts, then the bowl and its programme as their lines follow
 * each other, then the steps.
 */
export function workMoments(
  weighed: readonly Weighed[],
  lines: readonly MixingLine[],
  clock: StepsSection | undefined,
): WorkMoment[] {
  const toWeigh = weighed.map(({ section: { id, name, title, when = [], line = 0 }, startSeconds }) => {
    const rank = name === 'before' || name === 'apart' ? 0 : 1;
    return {
      startSeconds,
      rank,
      line: rank === 0 ? 0 : line,
      moment: { id, of: 'weigh', title, when } as const,
    };
  });
  const toMix = lines.map(({ row, title, startMinutes, minutes, endMinute }, index) => {
    const { celsius, stage } = row.cells;
    const moment: WorkMoment = {
      id: row.id,
      of: 'mix',
      title,
      when: [],
      seconds: minutes * 60,
      ends: {
        minute: endMinute,
        ...(celsius === undefined ? {} : { celsius: celsius.text }),
        ...(stage === undefined ? {} : { stage: stage.text }),
        isLast: index === lines.length - 1,
      },
    };
    return { startSeconds: startMinutes * 60, rank: 1, line: row.line ?? 0, moment };
  });
  const toDo = (clock?.steps ?? []).flatMap(({ id, of, text, when, seconds, startSeconds }) => {
    if (of !== 'step') return [];
    const timer = seconds === undefined ? {} : { seconds };
    return [
      { startSeconds, rank: 2, line: 0, moment: { id, of, title: text, when: [when], ...timer } as const },
    ];
  });
  return [...toWeigh, ...toMix, ...toDo]
    .sort(
      (one, other) =>
        Math.round(one.startSeconds) - Math.round(other.startSeconds) ||
        one.rank - other.rank ||
        one.line - other.line,
    )
    .map(({ moment }) => moment);
}
