import { inMixer } from '../../features/mixing-words.ts';
import type { CurvePoint, ProgrammeCurve } from '../../features/programme-curve.ts';
import { degrees, duration, figure, minutesBand, percent } from '../../text/figures.ts';
import { inMarks } from '../../words/in-marks.ts';
import type { SheetChart } from '../chart.ts';
import { inBothWidths } from './frame.ts';
import { mixingDrawing } from './mixing-drawing.ts';
import { stagesOf } from './mixing-stages.ts';
import { bandWords, noDevelopmentWords, noTemperatureWords } from './mixing-words.ts';

/** The chart of a mixing programme; undefined where the programme takes no time. */
export function mixingChart(curve: ProgrammeCurve | undefined): SheetChart | undefined {
  if (curve === undefined || !(curve.programmeMinutes > 0)) return undefined;
  const title = 'Temperature and development while it mixes';
  const description = descriptionOf(curve);
  const texts = { title, description };
  return {
    kind: 'mixing',
    title,
    description,
    ...inBothWidths('mixing', (frame) => mixingDrawing(curve, frame, texts)),
    table: tableOf(curve),
  };
}

function descriptionOf(curve: ProgrammeCurve): string {
  const said = [`${duration(curve.programmeMinutes * 60)} ${inMarks(inMixer(curve.mixer))}.`];
  const [first, last] = [curve.points[0], curve.points.at(-1)];
  if (first?.celsius !== undefined && last?.celsius !== undefined)
    said.push(
      `The dough goes from ${degrees(first.celsius)} to ${degrees(last.celsius)}; ${degrees(curve.targetCelsius)} is wanted.`,
    );
  else if (curve.noCelsius !== undefined) said.push(noTemperatureWords(curve.noCelsius));
  const stage = stagesOf(curve).at(-1)?.stage;
  if (stage !== undefined) said.push(`State at the end: ${stage}.`);
  else if (curve.noDevelopment !== undefined) said.push(noDevelopmentWords(curve.noDevelopment));
  said.push(...curve.bands.map((band) => `${capital(bandWords(band))}.`));
  if (curve.readings.length > 0) said.push('What trials measured is marked.');
  return said.join(' ');
}

function tableOf(curve: ProgrammeCurve): SheetChart['table'] {
  const stages = stagesOf(curve);
  const rows: { minutes: number; cells: string[] }[] = [];
  const row = (minutes: number, when: string, ...cells: string[]): void => {
    rows.push({ minutes, cells: [when, ...cells] });
  };
  const start = curve.points[0];
  if (start !== undefined) row(-1, '0', 'start', temperatureWords(start), developmentWords(start), '');
  for (const { kind, label, startMinutes, endMinutes } of curve.phases) {
    if (kind === 'load' || kind === 'add') {
      row(startMinutes, figure(startMinutes, 1), label, '', '', '');
      continue;
    }
    const end = curve.points.findLast(({ minutes }) => Math.abs(minutes - endMinutes) < 1e-6);
    const stage = stages.findLast(({ from, to }) => from < endMinutes && endMinutes <= to + 1e-6)?.stage;
    const told = end === undefined ? ['', ''] : [temperatureWords(end), developmentWords(end)];
    row(endMinutes, figure(endMinutes, 1), `end of ${label}`, ...told, stage ?? '');
  }
  for (const { trial, minutes, celsius, stage } of curve.readings)
    row(minutes, figure(minutes, 1), `measured, ${trial}`, degrees(celsius), '', stage ?? '');
  // A stable sort leaves the programme in its own order where several things happen at once.
  rows.sort((one, other) => one.minutes - other.minutes);
  const bands = curve.bands.map((band) => [
    minutesBand(band.lowMinutes, band.highMinutes),
    band.atLastSpeed ? 'if the last speed went on' : 'about',
    '',
    '',
    band.kind,
  ]);
  return {
    heads: ['Minute', 'What', 'Dough', 'Development', 'Stage'],
    rows: [...rows.map(({ cells }) => cells), ...bands],
  };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function temperatureWords({ celsius, celsiusLow, celsiusHigh }: CurvePoint): string {
  if (celsius === undefined) return '';
  return celsiusLow === undefined || celsiusHigh === undefined || celsiusHigh - celsiusLow < 0.1
    ? degrees(celsius)
    : `${degrees(celsius)} (${degrees(celsiusLow)} to ${degrees(celsiusHigh)})`;
}

function developmentWords({ development }: CurvePoint): string {
  return development === undefined ? '' : percent(development, 0);
}
