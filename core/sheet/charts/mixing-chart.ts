import { stageMessage } from '../../analysis/mix-analysis.ts';
import { inMixer } from '../../facts/mixing-words.ts';
import type { CurvePoint, ProgrammeCurve } from '../../facts/programme-curve.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { ChartSection } from '../build/sheet-document.ts';
import { bandSentence, noDevelopment, noTemperature } from './chart-words.ts';
import { chartNamed, inThreeWidths } from './frame.ts';
import { mixingDrawing } from './mixing-drawing.ts';
import { stagesOf } from './mixing-stages.ts';

/** The chart of a mixing programme; undefined where the programme takes no time. */
export function mixingChart(curve: ProgrammeCurve | undefined, speaker: Speaker): ChartSection | undefined {
  if (curve === undefined || !(curve.programmeMinutes > 0)) return undefined;
  const title = speaker.say(message('chart.mixing'));
  const description = descriptionOf(curve).map(speaker.say).join(' ');
  const texts = { title, description };
  return {
    ...chartNamed('mixing-chart'),
    title,
    description,
    ...inThreeWidths('mixing', speaker, (frame) => mixingDrawing(curve, frame, texts)),
    table: tableOf(curve, speaker),
  };
}

function descriptionOf(curve: ProgrammeCurve): Message[] {
  const { programmeMinutes, mixer, points, targetCelsius, noCelsius, noDevelopment: lacking } = curve;
  const said: Message[] = [
    message('chart.programme', { seconds: programmeMinutes * 60, place: inMixer(mixer) }),
  ];
  const [first, last] = [points[0]?.celsius, points.at(-1)?.celsius];
  if (first !== undefined && last !== undefined)
    said.push(message('chart.course', { celsius: first, doughCelsius: last, targetCelsius }));
  else if (noCelsius !== undefined) said.push(noTemperature(noCelsius));
  const stage = stagesOf(curve).at(-1)?.stage;
  if (stage !== undefined) said.push(message('chart.end-stage', { stage: stageMessage(stage) }));
  else if (lacking !== undefined) said.push(noDevelopment(lacking));
  said.push(...curve.bands.map(bandSentence));
  if (curve.readings.length > 0) said.push(message('chart.readings-marked'));
  return said;
}

function tableOf(curve: ProgrammeCurve, speaker: Speaker): ChartSection['table'] {
  const { say } = speaker;
  const stages = stagesOf(curve);
  const stageWords = (stage: string | undefined): string =>
    stage === undefined ? '' : say(stageMessage(stage));
  const rows: { minutes: number; cells: string[] }[] = [];
  const row = (minutes: number, when: number, what: Message, ...cells: string[]): void => {
    rows.push({ minutes, cells: [speaker.number(when, 1), say(what), ...cells] });
  };
  const start = curve.points[0];
  const state = (point: CurvePoint | undefined): string[] =>
    point === undefined ? ['', ''] : [temperatureOf(point, speaker), developmentOf(point, speaker)];
  if (start !== undefined) row(-1, 0, message('chart.start'), ...state(start), '');
  for (const { kind, title, startMinutes, endMinutes } of curve.phases) {
    if (kind === 'load' || kind === 'add') {
      row(startMinutes, startMinutes, title, '', '', '');
      continue;
    }
    const end = curve.points.findLast(({ minutes }) => Math.abs(minutes - endMinutes) < 1e-6);
    const stage = stages.findLast(({ from, to }) => from < endMinutes && endMinutes <= to + 1e-6)?.stage;
    row(endMinutes, endMinutes, message('chart.end-of', { title }), ...state(end), stageWords(stage));
  }
  for (const { trial, minutes, celsius, stage } of curve.readings)
    row(
      minutes,
      minutes,
      message('chart.measured', { written: trial }),
      speaker.celsius(celsius),
      '',
      stageWords(stage),
    );
  // A stable sort leaves the programme in its own order where several things happen at once.
  rows.sort((one, other) => one.minutes - other.minutes);
  const bands = curve.bands.map((band) => [
    speaker.minutesBand(band.lowMinutes, band.highMinutes),
    say(message(band.atLastSpeed ? 'chart.if-last-speed' : 'chart.about')),
    '',
    '',
    stageWords(band.kind),
  ]);
  return {
    heads: [
      message('chart.minute'),
      message('chart.what'),
      message('sheet.dough'),
      message('chart.development'),
      message('sheet.stage'),
    ].map(say),
    rows: [...rows.map(({ cells }) => cells), ...bands],
  };
}

function temperatureOf({ celsius, celsiusLow, celsiusHigh }: CurvePoint, speaker: Speaker): string {
  if (celsius === undefined) return '';
  return celsiusLow === undefined || celsiusHigh === undefined || celsiusHigh - celsiusLow < 0.1
    ? speaker.celsius(celsius)
    : speaker.say(
        message('chart.celsius-between', { celsius, lowCelsius: celsiusLow, highCelsius: celsiusHigh }),
      );
}

function developmentOf({ development }: CurvePoint, speaker: Speaker): string {
  return development === undefined ? '' : speaker.percent(development, 0);
}
