import type { Analysis } from '../../analysis/analysis.ts';
import { fermentationTimeline } from '../../facts/fermentation-timeline.ts';
import { programmeCurve } from '../../facts/programme-curve.ts';
import type { Scope } from '../../model/scope.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { SheetChart } from '../build/chart.ts';
import type { SheetTimeline } from '../build/view.ts';
import { compositionChart } from './composition-chart.ts';
import { mixingChart } from './mixing-chart.ts';
import { timelineChart } from './timeline-chart.ts';

export interface ChartsInput {
  /** All that is made, and what goes into the bowl at once. */
  readonly whole: Analysis;
  readonly batch: Analysis;
  readonly scope: Scope;
  readonly timeline: SheetTimeline;
  readonly firstLine: number;
  readonly speaker: Speaker;
}

/** The charts that can be drawn of a formula, in the order of the work; what is not known has none. */
export function chartsOf({ whole, batch, scope, timeline, firstLine, speaker }: ChartsInput): SheetChart[] {
  return [
    mixingChart(programmeCurve(batch, scope), speaker),
    timelineChart(timeline, fermentationTimeline(whole), firstLine, speaker),
    compositionChart(whole, speaker),
  ].filter((chart) => chart !== undefined);
}
