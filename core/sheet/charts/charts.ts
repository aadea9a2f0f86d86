import type { Analysis } from '../../analysis/analysis.ts';
import { fermentationTimeline } from '../../facts/fermentation-timeline.ts';
import { programmeCurve } from '../../facts/programme-curve.ts';
import type { Scope } from '../../model/scope.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { ChartSection } from '../build/sheet-document.ts';
import type { WorkTimeline } from '../build/timeline.ts';
import { compositionChart } from './composition-chart.ts';
import { mixingChart } from './mixing-chart.ts';
import { timelineChart } from './timeline-chart.ts';

export interface ChartsInput {
  /** All that is made, and what goes into the bowl at once. */
  readonly whole: Analysis;
  readonly batch: Analysis;
  readonly scope: Scope;
  readonly timeline: WorkTimeline;
  readonly firstLine: number;
  readonly speaker: Speaker;
}

/** The charts that can be drawn of a formula; what is not known has none. */
export interface Charts {
  readonly mixing: ChartSection | undefined;
  readonly timeline: ChartSection | undefined;
  readonly composition: ChartSection | undefined;
}

export function chartsOf({ whole, batch, scope, timeline, firstLine, speaker }: ChartsInput): Charts {
  return {
    mixing: mixingChart(programmeCurve(batch, scope), speaker),
    timeline: timelineChart(timeline, fermentationTimeline(whole), firstLine, speaker),
    composition: compositionChart(whole, speaker),
  };
}
