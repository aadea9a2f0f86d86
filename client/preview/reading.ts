import type { SheetLabels } from '../../server/protocol.ts';
import { dayOf } from '../clock.ts';
import { button, element } from './elements.ts';
import { filled } from './filled.ts';
import type { TakenReading } from './messages.ts';
import { markWrong, numberField } from './number-field.ts';
import { minutesText } from './numbers.ts';
import type { Units } from './units.ts';

export interface ReadingParts {
  /** The temperature computed for the end of the line, in words. */
  readonly celsius: string | undefined;
  /** Minutes from the start of mixing, now; absent at the end of mixing, whose reading has a line of its own. */
  readonly minutes: () => number | undefined;
  readonly units: Units;
  readonly labels: SheetLabels;
  readonly log: (reading: TakenReading) => void;
  /** The water as it was drawn, °C, and what is told of it. */
  readonly water: number | undefined;
  readonly setWater: (celsius: number | undefined) => void;
  /** Where a reading has a minute or is none: what is said while there is none. */
  readonly minuteFirst?: string;
}

/** Chosen in place of a temperature: nobody took one. */
const notTaken = 'not taken';

/** A reading that was logged: further words of how the dough feels are added to it. */
interface Logged {
  readonly at: number | undefined;
  /** Absent where nobody took the temperature. */
  readonly degrees: number | undefined;
  readonly stage: string | undefined;
  readonly feel: readonly string[];
}

export interface ReadingControls {
  readonly root: HTMLElement;
  /** Writes anew the minute that a reading would be logged at. */
  readonly tick: () => void;
}

/**
 * Logs a reading with two taps: the temperature, or that none was taken, then the stage or a word of how the dough feels; a third tap adds
 * a word to it. No temperature is chosen beforehand, so that nothing is ever logged that nobody read.
 */
export function readingControls({
  celsius,
  minutes,
  units,
  labels,
  log,
  water,
  setWater,
  minuteFirst,
}: ReadingParts): ReadingControls {
  let waterCelsius = water;
  let read: number | typeof notTaken | undefined;
  let logged: Logged | undefined;
  const whenNow = () => whenText(minutes(), units, labels, minuteFirst);
  const when = element('p', { class: 'when', text: whenNow() });
  const told = element('p', { class: 'reading-told', attributes: { id: 'reading-told', role: 'status' } });
  const chips = degreesAround(celsius, units).map((degrees) => {
    const chip = button(units.text(degrees), () => choose(degrees), {
      class: 'chip',
      attributes: {
        'aria-pressed': 'false',
        'aria-label': `${units.text(degrees)} ${units.degrees}`,
      },
    });
    return { degrees, chip };
  });
  const none = button(labels.noDegrees, () => choose(notTaken), {
    class: 'chip',
    attributes: { 'aria-pressed': 'false' },
  });
  const other = numberField(
    { id: 'reading-degrees', 'aria-describedby': told.id },
    () => units,
    (degrees) => choose(degrees),
  );
  const drawn = waterField(units, told.id, waterCelsius, (celsius) => {
    waterCelsius = celsius;
    setWater(celsius);
  });
  const choose = (degrees: typeof read) => {
    read = degrees;
    for (const { degrees: one, chip } of chips) chip.setAttribute('aria-pressed', String(one === degrees));
    none.setAttribute('aria-pressed', String(degrees === notTaken));
    if (degrees === notTaken) other.value = '';
    else if (degrees !== undefined && document.activeElement !== other) other.value = units.text(degrees);
    told.textContent = '';
    if (degrees !== undefined) setLogged(undefined);
  };
  /** The reading as it would be with this word: what was typed last, or what was logged last with a word more or less. */
  const withWord = ({
    stage,
    feel,
  }: {
    readonly stage?: string;
    readonly feel?: string;
  }): Logged | undefined => {
    if (read !== undefined) {
      const degrees = read === notTaken ? undefined : read;
      return { at: minutes(), degrees, stage, feel: feel === undefined ? [] : [feel] };
    }
    // The dough has moved on where the minute has.
    if (logged === undefined || (minuteFirst !== undefined && logged.at !== minutes())) return undefined;
    if (feel === undefined) return { ...logged, stage };
    const others = logged.feel.filter((one) => one !== feel);
    return { ...logged, feel: others.length < logged.feel.length ? others : [...others, feel] };
  };
  const take = (word: { readonly stage?: string; readonly feel?: string }) => {
    const next = withWord(word);
    const isEarly = minuteFirst !== undefined && minutes() === undefined;
    const wrong = isEarly ? minuteFirst : problemOf(next, units, labels);
    if (wrong !== undefined || next === undefined) {
      told.textContent = wrong ?? '';
      return;
    }
    log(takenOf(next, units, labels, waterCelsius));
    choose(undefined);
    other.value = '';
    setLogged(next);
  };
  const stages = labels.stageNames.map((one) => ({
    word: one.stage,
    made: stageButton(one, () => take({ stage: one.stage })),
  }));
  const feels = labels.feelNames.map(({ word, words }) => ({
    word,
    made: button(words, () => take({ feel: word }), {
      class: 'chip',
      attributes: { 'aria-pressed': 'false' },
    }),
  }));
  const setLogged = (next: Logged | undefined) => {
    logged = next;
    for (const { word, made } of stages) made.setAttribute('aria-pressed', String(next?.stage === word));
    for (const { word, made } of feels)
      made.setAttribute('aria-pressed', String(next?.feel.includes(word) === true));
  };
  const root = readingSection(labels, units, {
    ...{ when, told, drawn, other },
    chips: chips.map(({ chip }) => chip),
    none,
    stages: [...stages.map(({ made }) => made), button(labels.noStage, () => take({}), { class: 'chip' })],
    feels: feels.map(({ made }) => made),
  });
  return {
    root,
    tick() {
      const text = whenNow();
      if (when.textContent !== text) when.textContent = text;
    },
  };
}

/** What a reading is logged with, in the order of the taps. */
function readingSection(
  labels: SheetLabels,
  units: Units,
  parts: {
    readonly when: HTMLElement;
    readonly told: HTMLElement;
    readonly drawn: HTMLInputElement;
    readonly other: HTMLInputElement;
    readonly chips: readonly HTMLElement[];
    readonly none: HTMLElement;
    readonly stages: readonly HTMLElement[];
    readonly feels: readonly HTMLElement[];
  },
): HTMLElement {
  const { when, told, drawn, other, chips, none, stages, feels } = parts;
  return element(
    'section',
    { class: 'reading', attributes: { 'aria-labelledby': 'reading' } },
    element('h2', { text: labels.log, attributes: { id: 'reading' } }),
    when,
    element('p', { class: 'note', text: labels.stopFirst }),
    labelled(filled(labels.waterDegrees, units.degrees), drawn),
    element(
      'div',
      {
        class: 'chips',
        attributes: { role: 'group', 'aria-label': filled(labels.degrees, units.degrees) },
      },
      ...chips,
      element(
        'span',
        { class: 'typed' },
        element('label', { text: filled(labels.orDegrees, units.degrees), attributes: { for: other.id } }),
        other,
      ),
      none,
    ),
    element('div', { class: 'chips', attributes: { role: 'group', 'aria-label': labels.stages } }, ...stages),
    element('div', { class: 'chips', attributes: { role: 'group', 'aria-label': labels.feels } }, ...feels),
    told,
  );
}

/** A stage by its drawing and its word. */
function stageButton(
  { words, drawing }: SheetLabels['stageNames'][number],
  act: () => void,
): HTMLButtonElement {
  const made = button(words, act, { class: 'chip', attributes: { 'aria-pressed': 'false' } });
  const namespace = 'http://www.w3.org/2000/svg';
  const sign = document.createElementNS(namespace, 'svg');
  for (const [name, value] of Object.entries({
    viewBox: '0 0 24 24',
    class: 'stage-sign',
    'aria-hidden': 'true',
  }))
    sign.setAttribute(name, value);
  const path = document.createElementNS(namespace, 'path');
  path.setAttribute('d', drawing);
  sign.append(path);
  made.prepend(sign);
  return made;
}

/** The water as it was drawn; what is no temperature counts as nothing. */
function waterField(
  units: Units,
  describedBy: string,
  celsius: number | undefined,
  typed: (celsius: number | undefined) => void,
): HTMLInputElement {
  const field = numberField(
    { id: 'reading-water', 'aria-describedby': describedBy },
    () => units,
    (degrees) => {
      const isWrong = Number.isNaN(degrees);
      markWrong(field, isWrong);
      typed(degrees === undefined || isWrong ? undefined : units.celsiusOf(degrees));
    },
  );
  if (celsius !== undefined) field.value = units.text(units.degreesOf(celsius), 1);
  return field;
}

function labelled(text: string, field: HTMLInputElement): HTMLElement {
  const label = element('label', { text, attributes: { for: field.id } });
  return element('p', { class: 'chips' }, label, field);
}

/** Doughs are colder and warmer than this nowhere, °C; the core refuses them too. */
const coldestCelsius = -20;
const warmestCelsius = 60;

/** Why this is no reading yet, in words. */
function problemOf(next: Logged | undefined, units: Units, labels: SheetLabels): string | undefined {
  const isSaid = next !== undefined && (next.stage !== undefined || next.feel.length > 0);
  const read = next?.degrees;
  if (read === undefined) return isSaid ? undefined : labels.temperatureFirst;
  const celsius = units.celsiusOf(read);
  if (celsius >= coldestCelsius && celsius <= warmestCelsius) return undefined;
  const [least, most] = [coldestCelsius, warmestCelsius].map((end) => units.text(units.degreesOf(end)));
  return filled(labels.noReading, least!, `${most} ${units.degrees}`);
}

/** A reading as it is told to the extension. */
function takenOf(
  { at, degrees, stage, feel }: Logged,
  units: Units,
  labels: SheetLabels,
  waterCelsius: number | undefined,
): TakenReading {
  const words = [
    ...labels.stageNames.filter((one) => one.stage === stage),
    ...labels.feelNames.filter(({ word }) => feel.includes(word)),
  ].map((one) => one.words);
  return {
    date: dayOf(new Date()),
    said: [...(degrees === undefined ? [] : [`${units.text(degrees, 1)} ${units.degrees}`]), ...words].join(
      ', ',
    ),
    ...(degrees === undefined ? {} : { celsius: units.celsiusOf(degrees) }),
    ...(at === undefined ? {} : { minutes: at }),
    ...(stage === undefined ? {} : { stage }),
    ...(feel.length === 0 ? {} : { feel }),
    ...(waterCelsius === undefined ? {} : { waterCelsius }),
  };
}

function whenText(
  minutes: number | undefined,
  units: Units,
  labels: SheetLabels,
  minuteFirst: string | undefined,
): string {
  if (minutes === undefined && minuteFirst !== undefined) return minuteFirst;
  return minutes === undefined ? labels.logEnd : filled(labels.logAt, minutesText(minutes, units));
}

const chipSteps = [-4, -3, -2, -1, 0, 1, 2, 3, 4];
/** The dough of most breads, °C; common practice, no source. */
const usualCelsius = 24;

/** Half degrees Celsius or whole degrees Fahrenheit around what was computed, whole ones where nothing was. */
function degreesAround(computed: string | undefined, units: Units): readonly number[] {
  const degrees = units.figureOf(computed?.replace(/\s*°.*$/u, '') ?? '');
  const isFine = units.degrees === '°C';
  if (degrees === undefined || Number.isNaN(degrees)) {
    const usual = Math.round(units.degreesOf(usualCelsius));
    return chipSteps.map((step) => usual + (isFine ? step : 2 * step));
  }
  const size = isFine ? 0.5 : 1;
  return chipSteps.map((step) => (Math.round(degrees / size) + step) * size);
}
