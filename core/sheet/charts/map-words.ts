import { stageMessage } from '../../analysis/mix-analysis.ts';
import type { DoughZone } from '../../calc/mixing/dough-zone.ts';
import type { MinutesBand } from '../../calc/mixing/mixing.ts';
import type { GapMap, GapRow } from '../../facts/gap-map.ts';
import { inMixer } from '../../facts/mixing-words.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { ChartSection } from '../build/sheet-document.ts';

/** What a map is of. */
export function mapTitle({ formula, mixer }: GapMap): Message {
  return message('map.heading', { name: formula, place: inMixer(mixer) });
}

/** What a zone is called. */
export function zoneMessage(zone: DoughZone): Message {
  return zone === 'not-yet' ? message('map.not-yet') : stageMessage(zone);
}

/** What the rows stand for. */
export function axisMessage({ against, flours }: GapMap): Message {
  if (against === 'flour' && flours !== undefined)
    return message('map.axis-flour', { name: flours[0], otherName: flours[1] });
  return message(against === 'speed' ? 'map.axis-speed' : 'map.axis-water');
}

/** The value of a row as it is shown: `67%`, `speed 2`. */
export function rowWords({ against }: Pick<GapMap, 'against'>, value: number, speaker: Speaker): string {
  return against === 'speed'
    ? speaker.say(message('phase.speed', { number: value }))
    : speaker.percent(value, 1);
}

/** The map in sentences: what runs where, the formula itself, its gap, its warmth, and how the gap changes over the rows. */
export function mapSentences(map: GapMap, speaker: Speaker): string[] {
  const { mark, limitCelsius, programmeMinutes, flours, against } = map;
  const own = ownRow(map);
  const across =
    against === 'flour' && flours !== undefined
      ? message('map.across-flour', { name: flours[0], otherName: flours[1] })
      : message(against === 'speed' ? 'map.across-speed' : 'map.across-water');
  const parts: Message[] = [stageMessage(mark.stage)];
  if (mark.celsius !== undefined) parts.push(message('programme.celsius', { celsius: mark.celsius }));
  const warm = own?.tooWarmMinutes;
  const facts = { limitCelsius, minutes: warm ?? 0 };
  const warmth =
    warm === undefined
      ? message('map.never-too-warm', { limitCelsius })
      : message(warm > programmeMinutes ? 'map.too-warm-if' : 'map.too-warm', facts);
  return [
    across,
    message('map.minutes-run'),
    message('map.mark', { minutes: mark.minutes, state: message('programme.state', { parts }) }),
    ...wishOf(map, own),
    gapOf(map, own),
    warmth,
    ...rangeOf(map, speaker),
    ...map.notes,
  ].map(speaker.say);
}

function wishOf({ wish }: GapMap, own: GapRow | undefined): Message[] {
  const wished = own?.wished;
  if (wish === undefined || wished === undefined) return [];
  const { low: lowMinutes, high: highMinutes } = wished;
  return [message('map.wished', { degree: message(`degree.${wish}`), lowMinutes, highMinutes })];
}

function gapOf(map: GapMap, own: GapRow | undefined): Message {
  if (own?.gapMinutes === undefined) return message('map.no-let-down');
  return isFar(map, own) ? message('map.gap-far') : message('map.gap', { minutes: own.gapMinutes });
}

/** So many times the programme on a moment is only far off, as in the outlook of a programme. */
const farOff = 3;

function isFar({ programmeMinutes }: GapMap, { letDown }: GapRow): boolean {
  return letDown !== undefined && letDown.low > programmeMinutes * farOff;
}

/** Where the gap is narrowest and where widest; nothing where all rows are alike. */
function rangeOf(map: GapMap, speaker: Speaker): Message[] {
  const known = map.rows.flatMap((row) =>
    row.gapMinutes === undefined ? [] : [{ row, gapMinutes: row.gapMinutes }],
  );
  const sorted = known.sort((one, other) => one.gapMinutes - other.gapMinutes);
  const [narrow, wide] = [sorted[0], sorted.at(-1)];
  if (narrow === undefined || wide === undefined || wide.gapMinutes - narrow.gapMinutes < 1) return [];
  if (isFar(map, narrow.row)) return [];
  const facts = {
    lowMinutes: narrow.gapMinutes,
    written: rowWords(map, narrow.row.value, speaker),
    otherWritten: rowWords(map, wide.row.value, speaker),
  };
  return isFar(map, wide.row)
    ? [message('map.gap-narrow', facts)]
    : [message('map.gap-between', { ...facts, highMinutes: wide.gapMinutes })];
}

/** The row of the formula itself. */
export function ownRow({ rows }: GapMap): GapRow | undefined {
  return rows.find(({ isOwn }) => isOwn);
}

/** So many rows tell a map in words. */
const mostTold = 9;

/** Some of the rows, the highest first, always the formula's own and both ends. */
export function mapTable(map: GapMap, speaker: Speaker): ChartSection['table'] {
  const { rows, programmeMinutes } = map;
  const each = Math.max(1, Math.ceil((rows.length - 1) / (mostTold - 1)));
  const told = rows.filter(({ isOwn }, index) => isOwn || index % each === 0 || index === rows.length - 1);
  const { say } = speaker;
  const when = (band: MinutesBand | undefined): string => {
    if (band === undefined) return say(message('map.never'));
    return band.low > programmeMinutes * farOff
      ? say(message('moment.far-off'))
      : speaker.minutesBand(band.low, band.high);
  };
  const minutes = (figure: number | undefined): string => {
    if (figure === undefined) return say(message('map.never'));
    return figure > programmeMinutes * farOff ? say(message('moment.far-off')) : speaker.minutes(figure);
  };
  const cells = (row: GapRow): string[] => [
    row.isOwn
      ? `${rowWords(map, row.value, speaker)} (${say(message('map.this-formula'))})`
      : rowWords(map, row.value, speaker),
    when(row.developed),
    when(row.letDown),
    when(row.breakdown),
    isFar(map, row) ? say(message('moment.far-off')) : minutes(row.gapMinutes),
    minutes(row.tooWarmMinutes),
  ];
  return {
    heads: [
      axisMessage(map),
      message('map.developed-from'),
      message('map.let-down-from'),
      message('map.breakdown-from'),
      message('map.gap-head'),
      message('map.too-warm-from'),
    ].map(say),
    rows: told.reverse().map(cells),
  };
}
