import type { GapMap } from '../../facts/gap-map.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { ChartSection } from '../build/sheet-document.ts';
import { inBothWidths } from './frame.ts';
import { mapDrawing } from './map-drawing.ts';
import { mapSentences, mapTable, mapTitle } from './map-words.ts';

/** The chart of a map. */
export type MapChart = Pick<ChartSection, 'title' | 'description' | 'narrow' | 'wide' | 'table'> & {
  readonly kind: 'map';
};

/** The map of the gap as a chart: two drawings, what they show in a few sentences, and the same as a table. */
export function mapChart(map: GapMap, speaker: Speaker): MapChart {
  const title = speaker.say(mapTitle(map));
  const description = mapSentences(map, speaker).join(' ');
  return {
    kind: 'map',
    title,
    description,
    ...inBothWidths('map', speaker, (frame) => mapDrawing(map, frame, { title, description })),
    table: mapTable(map, speaker),
  };
}
