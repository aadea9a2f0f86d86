import type { Analysis } from '../../analysis/analysis.ts';
import { type GapCell, gridOf } from '../../facts/gap-grid.ts';
import { type GapMap, type GapRow, gapMap, type MapRequest } from '../../facts/gap-map.ts';
import type { Scope } from '../../model/scope.ts';
import { ownLine } from '../../model/variant.ts';
import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { mapChart } from '../charts/map-chart.ts';
import { mapSentences } from '../charts/map-words.ts';
import { inBatches, sized } from './batch-size.ts';
import { underToday } from './day-conditions.ts';
import type { ChartSection } from './sheet-document.ts';
import type { SheetOptions } from './sheet-options.ts';

/** The map of the gap of one formula, in the words it is shown in. Lines are counted in the file. */
export interface MapView {
  readonly formula: string;
  readonly uri: string;
  readonly line: number;
  /** Why there is no map, as a sentence; then there is nothing else. */
  readonly none?: string;
  readonly chart?: ChartSection;
  /** What the map says, a sentence each. */
  readonly sentences: readonly string[];
  readonly data?: MapData;
}

/** A map as figures alone. */
export type MapData = Omit<GapMap, 'rows' | 'notes' | 'formula' | 'line' | 'phases'> & {
  readonly rows: readonly MapDataRow[];
};

/** One row with its grid; what never comes, or is not known, is absent. */
export type MapDataRow = Omit<GapRow, 'outcome'> & { readonly cells: readonly GapCell[] };

/** What a map is asked for: its rows, and what is tried on the sheet beside it. */
export interface MapOptions extends MapRequest, Pick<SheetOptions, 'size' | 'today'> {}

/** The map of a formula as it is made in one bowl, as the mixing chart of its sheet is. */
export function mapView(
  { uri, firstLine, analysis, scope }: MapSource,
  asked: MapOptions,
  speaker: Speaker,
): MapView {
  const formula = analysis.resolved.model.name.text;
  const today = underToday(analysis, asked.today ?? {}, scope);
  const made = sized(today.analysis, asked.size ?? { by: 'file' });
  const map = gapMap(inBatches(made.analysis).each, scope, asked, inBatches(analysis).each);
  if (!map.known) {
    const none = speaker.say(message('map.none', { name: formula, reason: map.reason }));
    return { formula, uri, line: firstLine, none, sentences: [none] };
  }
  return {
    formula,
    uri,
    line: firstLine + ownLine(made.analysis.resolved.model.block, map.value.line),
    chart: mapChart(map.value, speaker),
    sentences: mapSentences(map.value, speaker),
    data: dataOf(map.value),
  };
}

/** The formula that a map is of, and where it stands. */
export interface MapSource {
  readonly uri: string;
  readonly firstLine: number;
  readonly analysis: Analysis;
  readonly scope: Scope;
}

function dataOf(map: GapMap): MapData {
  const { rows, notes: _, formula: _name, line: _line, phases: _phases, ...rest } = map;
  return {
    ...rest,
    rows: rows.map((row): MapDataRow => {
      const { outcome: _outcome, ...moments } = row;
      return { ...moments, cells: gridOf(map, row) };
    }),
  };
}
