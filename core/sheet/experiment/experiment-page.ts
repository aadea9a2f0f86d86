import { expectedStages } from '../../facts/experiment-words.ts';
import { inMixer } from '../../facts/mixing-words.ts';
import { trimmed } from '../../text/figures.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { doughsDrawing } from '../charts/doughs-drawing.ts';
import type { Page, Table } from '../write/tables.ts';
import type { ExperimentDoughView, ExperimentView } from './experiment-view.ts';
import {
  apartOf,
  besideMessage,
  cellOf,
  doneSentences,
  drawnReading,
  measuredMessage,
  seenFacts,
  unknownSentences,
} from './reading-messages.ts';

/** How the sheet of an experiment is wanted. */
export interface ExperimentPageOptions {
  /** With columns to write in: readings, feel, the loaf. */
  readonly blanks?: boolean;
  /** Without what is expected, so that a class finds it out; the answers are the same sheet without this. */
  readonly hidden?: boolean;
}

/** An experiment as a page of tables, worded by whoever worded the view. */
export function experimentPage(
  view: ExperimentView,
  speaker: Speaker,
  { blanks = false, hidden = false }: ExperimentPageOptions = {},
): Page {
  const { say } = speaker;
  const isToWrite = blanks || hidden;
  const drawing = hidden
    ? undefined
    : doughsDrawing(
        view.doughs.map((dough) => ({
          ...dough,
          measured: dough.measured.map((one) => drawnReading(one, say)),
        })),
        {
          title: message('experiment.drawing'),
          description: (names) => message('experiment.drawing-told', { names }),
        },
        speaker,
      );
  return {
    language: speaker.language,
    title: view.experiment,
    facts: factsOf(view, speaker),
    ...(drawing === undefined ? {} : { drawing }),
    tables: [
      ...(hidden ? [] : [expectedTable(view, speaker)]),
      fetchTable(view, speaker),
      orderTable(view, speaker),
      weighTable(view, speaker),
      ...(isToWrite
        ? [{ ...readingsTable(view, speaker, hidden), ownPage: true as const }, loafTable(view, speaker)]
        : []),
      ...(hidden
        ? []
        : [resultsTable(view, speaker), sentences('experiment.lessons', view.lessons, speaker)]),
      ...(hidden ? [] : [sentences('experiment.next', view.next, speaker)]),
    ],
    tableHead: say(message('csv.table')),
    notes: [
      ...view.cautions,
      ...view.doughs.flatMap(unknownSentences).map(say),
      say(message('experiment.stop-first')),
    ],
  };
}

function factsOf(view: ExperimentView, { say, celsius }: Speaker): [string, string][] {
  const water = view.waterAssumed
    ? say(message('experiment.tap-assumed', { celsius: view.waterCelsius }))
    : celsius(view.waterCelsius);
  const isOfTheDay = view.doughs.some(({ waterCelsius }) => waterCelsius === view.waterCelsius);
  return [
    ...(view.date === undefined ? [] : [[say(message('experiment.date')), view.date] as [string, string]]),
    [say(message('experiment.room')), celsius(view.roomCelsius)],
    [say(message('experiment.flour')), celsius(view.flourCelsius)],
    ...(isOfTheDay ? [[say(message('experiment.water')), water] as [string, string]] : []),
    ...view.notes.map((note): [string, string] => [say(message('experiment.note')), note]),
  ];
}

function expectedTable(view: ExperimentView, { say }: Speaker): Table {
  return {
    title: say(message('experiment.expected')),
    columns: [
      { name: say(message('experiment-column.dough')) },
      ...view.readMinutes.map((minutes) => ({ name: say(message('experiment-column.minute', { minutes })) })),
    ],
    rows: view.doughs.map(({ name, readings }) => [name, ...readings.map((one) => cellOf(one, say))]),
    notes: doneSentences(view).map(say),
    figures: figuresOf(
      view.doughs.flatMap(({ name, readings }) =>
        readings.filter(({ celsius }) => celsius !== undefined).map((one) => ({ name, one })),
      ),
      [
        [message('experiment-column.dough'), ({ name }) => name],
        [message('experiment-column.minutes'), ({ one }) => figure(one.minutes)],
        [message('experiment-column.expected-celsius'), ({ one }) => figure(one.celsius)],
        [message('experiment-column.band-celsius'), ({ one }) => figure(one.bandCelsius)],
        [message('experiment-column.stage'), ({ one }) => wordsOf(expectedStages(one), say)],
      ],
      say,
    ),
  };
}

/** A table as rows of figures for a spreadsheet: a column by its heading and what stands in it. */
function figuresOf<Row>(
  rows: readonly Row[],
  columns: readonly (readonly [heading: Message, cell: (row: Row) => string])[],
  say: Speaker['say'],
): NonNullable<Table['figures']> {
  return {
    columns: columns.map(([heading]) => say(heading)),
    rows: rows.map((row) => columns.map(([, cell]) => cell(row))),
  };
}

const figure = (value: number | undefined): string => (value === undefined ? '' : trimmed(value, 1));
const wordsOf = (said: Message | undefined, say: Speaker['say']): string =>
  said === undefined ? '' : say(said);

function fetchTable({ flours, waterGrams }: ExperimentView, { say, mass }: Speaker): Table {
  return {
    title: say(message('experiment.to-fetch')),
    columns: [
      { name: say(message('experiment-column.ingredient')) },
      { name: say(message('experiment-column.weight')), figures: true },
    ],
    rows: [
      ...flours.map(({ name, grams }) => [name, mass(grams)]),
      ...(waterGrams > 0 ? [[say(message('experiment.water')), mass(waterGrams)]] : []),
    ],
    figures: figuresOf(
      [...flours, ...(waterGrams > 0 ? [{ name: say(message('experiment.water')), grams: waterGrams }] : [])],
      [
        [message('experiment-column.ingredient'), ({ name }) => name],
        [message('experiment-column.grams'), ({ grams }) => figure(grams)],
      ],
      say,
    ),
  };
}

function orderTable({ order }: ExperimentView, { say }: Speaker): Table {
  return {
    title: say(message('experiment.order')),
    columns: [
      { name: say(message('experiment-column.dough')) },
      { name: say(message('experiment-column.mixed')) },
      { name: say(message('experiment-column.begins')), figures: true },
      { name: say(message('experiment-column.stops')), figures: true },
      { name: say(message('experiment-column.ends')), figures: true },
    ],
    rows: order.map((turn) => [
      turn.dough,
      say(inMixer(turn.mixer)),
      clockOf(turn.beginsMinutes),
      turn.readsMinutes.map(clockOf).join('  '),
      clockOf(turn.endsMinutes),
    ]),
    notes: order.length > 1 ? [say(message('experiment.order-note'))] : [],
  };
}

/** Hours and minutes from the beginning of the first dough, as a stopwatch shows them. */
function clockOf(minutes: number): string {
  const whole = Math.round(minutes);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}

/** One row an ingredient, one column a dough. */
function weighTable({ doughs }: ExperimentView, { say, mass, celsius }: Speaker): Table {
  const names = [...new Set(doughs.flatMap(({ weights }) => weights.map(({ name }) => name)))];
  const gramsOf = ({ weights }: ExperimentDoughView, name: string): number =>
    weights.reduce((sum, one) => sum + (one.name === name ? one.grams : 0), 0);
  const row = (title: string, grams: (dough: ExperimentDoughView) => number | undefined): string[] => [
    title,
    ...doughs.map((dough) => {
      const weight = grams(dough);
      return weight === undefined || weight === 0 ? '' : mass(weight);
    }),
  ];
  return {
    title: say(message('experiment.weigh')),
    columns: [
      { name: say(message('experiment-column.ingredient')) },
      ...doughs.map(({ name }) => ({ name, figures: true as const })),
    ],
    rows: [
      ...names.map((name) => row(name, (dough) => gramsOf(dough, name))),
      row(say(message('experiment.total')), ({ doughGrams }) => doughGrams),
      [
        say(message('experiment.water-is')),
        ...doughs.map(({ waterCelsius }) => (waterCelsius === undefined ? '' : celsius(waterCelsius))),
      ],
    ],
    figures: figuresOf(
      doughs.flatMap((dough) => dough.weights.map(({ name, grams }) => ({ dough: dough.name, name, grams }))),
      [
        [message('experiment-column.dough'), ({ dough }) => dough],
        [message('experiment-column.ingredient'), ({ name }) => name],
        [message('experiment-column.grams'), ({ grams }) => figure(grams)],
      ],
      say,
    ),
  };
}

function readingsTable({ doughs }: ExperimentView, { say, number }: Speaker, hidden: boolean): Table {
  return {
    title: say(message('experiment.readings')),
    columns: [
      { name: say(message('experiment-column.dough')) },
      { name: say(message('experiment-column.minutes')), figures: true },
      ...(hidden ? [] : [{ name: say(message('experiment-column.expected')) }]),
      { name: say(message('experiment-column.celsius')), blank: true },
      { name: say(message('experiment-column.feel')), blank: true },
    ],
    rows: doughs.flatMap(({ name, readings, programmeMinutes = Number.POSITIVE_INFINITY }) =>
      readings
        .filter(({ minutes }) => minutes <= programmeMinutes + 1e-6)
        .map((one) => [name, number(one.minutes, 1), ...(hidden ? [] : [cellOf(one, say)]), '', '']),
    ),
  };
}

function loafTable({ doughs }: ExperimentView, { say }: Speaker): Table {
  return {
    title: say(message('experiment.loaf')),
    columns: [
      { name: say(message('experiment-column.dough')) },
      { name: say(message('experiment-column.height')), blank: true },
      { name: say(message('experiment-column.score')), blank: true },
    ],
    rows: doughs.map(({ name }) => [name, '', '']),
  };
}

function resultsTable({ doughs }: ExperimentView, { say, number }: Speaker): Table {
  return {
    title: say(message('experiment.results')),
    columns: [
      { name: say(message('experiment-column.dough')) },
      { name: say(message('experiment-column.trial')) },
      { name: say(message('experiment-column.minutes')), figures: true },
      { name: say(message('experiment-column.measured')) },
      { name: say(message('experiment-column.expected')) },
      { name: say(message('experiment-column.apart')) },
    ],
    rows: doughs.flatMap(({ name, measured }) =>
      measured.map((one) => [
        name,
        one.trial,
        number(one.minutes, 1),
        say(measuredMessage(one)),
        one.reason ?? wordsOf(besideMessage(one), say),
        apartOf(one, say),
      ]),
    ),
    figures: figuresOf(
      doughs.flatMap(({ name, measured }) => measured.map((one) => ({ name, one }))),
      [
        [message('experiment-column.dough'), ({ name }) => name],
        [message('experiment-column.trial'), ({ one }) => one.trial],
        [message('experiment-column.minutes'), ({ one }) => figure(one.minutes)],
        [message('experiment-column.celsius'), ({ one }) => figure(one.measuredCelsius)],
        [message('experiment-column.feel'), ({ one }) => seenFacts(one).map(say).join(', ')],
        [message('experiment-column.expected-celsius'), ({ one }) => figure(one.celsius)],
        [message('experiment-column.band-celsius'), ({ one }) => figure(one.bandCelsius)],
        [message('experiment-column.stage'), ({ one }) => wordsOf(expectedStages(one), say)],
        [message('experiment-column.apart-celsius'), ({ one }) => figure(one.apartCelsius)],
        [message('experiment-column.apart'), ({ one }) => one.reason ?? apartOf(one, say)],
      ],
      say,
    ),
  };
}

function sentences(
  code: 'experiment.lessons' | 'experiment.next',
  notes: readonly string[],
  { say }: Speaker,
): Table {
  return { title: say(message(code)), columns: [], rows: [], notes };
}
