import type { GapMap } from '../../facts/gap-map.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { ChartSection } from '../build/sheet-document.ts';
import { chartNamed, inBothWidths } from './frame.ts';
import { mapDrawing } from './map-drawing.ts';
import { mapSentences, mapTable, mapTitle } from './map-words.ts';

/** The map of the gap as a chart: two drawings, what they show in a few sentences, and the same as a table. */
export function mapChart(map: GapMap, speaker: Speaker): ChartSection {
  const title = speaker.say(mapTitle(map));
  const description = mapSentences(map, speaker).join(' ');
  return {
    ...chartNamed('map-chart'),
    title,
    description,
    ...inBothWidths('map', speaker, (frame) => mapDrawing(map, frame, { title, description })),
    table: mapTable(map, speaker),
  };
}
