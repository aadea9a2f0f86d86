import type { Analysis } from '../../analysis/analysis.ts';
import { gapMap, type MapRequest } from '../../facts/gap-map.ts';
import { programmeCurve } from '../../facts/programme-curve.ts';
import type { Scope } from '../../model/scope.ts';
import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { ChartSection, NotesSection } from '../build/sheet-document.ts';
import { compositionChart } from './composition-chart.ts';
import { mapChart } from './map-chart.ts';
import { mixingChart } from './mixing-chart.ts';

export interface ChartsInput {
  /** All that is made, and what goes into the bowl at once. */
  readonly whole: Analysis;
  readonly batch: Analysis;
  /** One batch of the formula as its file has it. */
  readonly inFile: Analysis;
  readonly scope: Scope;
  /** What map of the gap is asked for; absent where none is. */
  readonly map: MapRequest | undefined;
  readonly speaker: Speaker;
}

/** The charts that can be drawn of a formula; what is not known has none. */
export interface Charts {
  readonly mixing: ChartSection | undefined;
  readonly map: ChartSection | NotesSection | undefined;
  readonly composition: ChartSection | undefined;
}

export function chartsOf(input: ChartsInput): Charts {
  const { whole, batch, scope, speaker } = input;
  return {
    mixing: mixingChart(programmeCurve(batch, scope), speaker),
    map: mapOf(input),
    composition: compositionChart(whole, speaker),
  };
}

/** The map, or in its place why there is none. */
function mapOf({ batch, inFile, scope, map: asked, speaker }: ChartsInput): Charts['map'] {
  if (asked === undefined) return undefined;
  const map = gapMap(batch, scope, asked, inFile);
  if (map.known) return mapChart(map.value, speaker);
  const name = batch.resolved.model.name.text;
  return {
    ...{ kind: 'notes', id: 'map-chart', name: 'map-chart' },
    title: speaker.say(message('map.title')),
    notes: [speaker.say(message('map.none', { name, reason: map.reason }))],
  };
}
