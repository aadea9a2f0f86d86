import type { PlanAnalysis } from '../../analysis/plan-analysis.ts';
import { timeMessage } from '../../facts/time-words.ts';
import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { PlanBar, PlanLane } from './plan-view.ts';

/** The lanes of a plan: what stands before the doughs, each mixer, bench and proof, the oven; a lane with nothing in it is left out. */
export function lanesOf({ day, dated, limits }: PlanAnalysis, speaker: Speaker): PlanLane[] {
  const { say } = speaker;
  const bar = (name: string, startMinutes: number, endMinutes: number, late = false): PlanBar => ({
    ...{ name, startMinutes, endMinutes, late },
    start: say(timeMessage(startMinutes, dated)),
    end: say(timeMessage(endMinutes, dated)),
  });
  const parts = day.parts.map((part) => bar(part.name, part.startMinutes, part.neededMinutes));
  const mixers = new Map<string, PlanBar[]>();
  const between: PlanBar[] = [];
  const oven = day.work.ovenTurns.map(({ kind, toCelsius: celsius, startMinutes, endMinutes }): PlanBar => {
    const to = celsius === undefined ? undefined : say(message('plan.to-degrees', { celsius }));
    const words = kind === 'heat' ? [say(message('plan.heating')), to] : [to];
    return {
      ...bar(words.filter((one) => one !== undefined).join(' '), startMinutes, endMinutes),
      empty: true,
    };
  });
  const names = new Map<string, { readonly name: string; readonly late: boolean }>();
  for (const { dough, batches } of day.doughs)
    for (const [index, batch] of batches.entries()) {
      const batchOf = { name: dough.name, number: index + 1, count: batches.length };
      const name = batches.length > 1 ? say(message('plan.dough-batch', batchOf)) : dough.name;
      const late = batch.lateMinutes > 0.5;
      names.set(batch.id, { name, late });
      const mixed = batch.startMinutes + dough.mixMinutes;
      const mixer = dough.mixer ?? say(message('plan.by-hand'));
      const lane = mixers.get(mixer) ?? [];
      mixers.set(mixer, [...lane, bar(name, batch.startMinutes, mixed, late)]);
      const baked = batch.ovenMinutes > 0;
      const worked = baked ? batch.ovenStartMinutes : batch.endMinutes;
      if (worked > mixed) between.push(bar(name, mixed, worked, late));
      if (baked)
        oven.push(bar(name, batch.ovenStartMinutes, batch.ovenStartMinutes + batch.ovenMinutes, late));
    }
  const lanes: PlanLane[] = [
    { kind: 'parts', name: say(message('plan.before-doughs')), bars: parts },
    ...[...mixers].map(([name, bars]): PlanLane => ({ kind: 'mixer', name, bars })),
    { kind: 'bench', name: say(message('plan.bench')), bars: between },
    { kind: 'oven', name: say(message('plan.oven')), bars: oven },
    // Who does what is only told where somebody says how many there are.
    ...Array.from(
      { length: limits.people === undefined ? 0 : day.work.mostPeople },
      (_, person): PlanLane => ({
        kind: 'person',
        name: say(message('plan.person', { number: person + 1 })),
        bars: day.work.people
          .filter((one) => one.person === person)
          .map((one) => {
            const of = names.get(one.job);
            const title = one.name ?? say(message('moment.mix'));
            const words = say(message('plan.work-of', { name: of?.name ?? '', written: title }));
            return bar(words, one.startMinutes, one.endMinutes, of?.late ?? false);
          }),
      }),
    ),
  ];
  return lanes
    .filter(({ bars }) => bars.length > 0)
    .map((lane) => ({
      ...lane,
      bars: lane.bars.toSorted((one, other) => one.startMinutes - other.startMinutes),
    }));
}
