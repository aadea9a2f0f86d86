import type { SheetPhase } from '../../server/protocol.ts';
import { button, element } from './elements.ts';
import type { TakenReading } from './messages.ts';
import { numberField } from './number-field.ts';
import type { Units } from './units.ts';

/** The states of a dough in the mixer as the notation spells them. */
const stages = ['pick-up', 'clean-up', 'developing', 'developed', 'let-down', 'breakdown'];

export interface ReadingParts {
  readonly phase: SheetPhase;
  /** Minutes from the start of mixing, now; absent at the end of mixing, whose reading has a line of its own. */
  readonly minutes: () => number | undefined;
  readonly units: Units;
  readonly log: (reading: TakenReading) => void;
}

export interface ReadingControls {
  readonly root: HTMLElement;
  /** Writes anew the minute that a reading would be logged at. */
  readonly tick: () => void;
}

/**
 * Logs a reading with two taps: the temperature, then the stage. No temperature is chosen beforehand, so that nothing is
 * ever logged that nobody read.
 */
export function readingControls({ phase, minutes, units, log }: ReadingParts): ReadingControls {
  let read: number | undefined;
  const when = element('p', { class: 'when', text: whenText(minutes(), units) });
  const told = element('p', { class: 'reading-told', attributes: { id: 'reading-told', role: 'status' } });
  const chips = degreesAround(phase.celsius, units).map((degrees) => {
    const chip = button(units.text(degrees), () => choose(degrees), {
      class: 'chip',
      attributes: {
        'aria-pressed': 'false',
        'aria-label': `${units.text(degrees)} ${units.degrees}`,
        'data-key': `chip ${degrees}`,
      },
    });
    return { degrees, chip };
  });
  const other = numberField(
    { id: 'reading-degrees', 'data-key': 'reading degrees', 'aria-describedby': told.id },
    () => units,
    (degrees) => choose(degrees),
  );
  const choose = (degrees: number | undefined) => {
    read = degrees;
    for (const { degrees: one, chip } of chips) chip.setAttribute('aria-pressed', String(one === degrees));
    if (degrees !== undefined && document.activeElement !== other) other.value = units.text(degrees);
    told.textContent = '';
  };
  const take = (stage: string | undefined) => {
    const wrong = problemOf(read, units);
    if (wrong !== undefined || read === undefined) {
      told.textContent = wrong ?? '';
      return;
    }
    const at = minutes();
    log({
      date: today(),
      celsius: units.celsiusOf(read),
      said: `${units.text(read, 1)} ${units.degrees}`,
      ...(at === undefined ? {} : { minutes: at }),
      ...(stage === undefined ? {} : { stage }),
    });
    choose(undefined);
    other.value = '';
  };
  const root = element(
    'section',
    { class: 'reading', attributes: { 'aria-labelledby': 'reading' } },
    element('h2', { text: 'Log a reading', attributes: { id: 'reading' } }),
    when,
    element('p', { class: 'note', text: 'Stop the mixer before a probe or a hand goes in.' }),
    element(
      'div',
      {
        class: 'chips',
        attributes: { role: 'group', 'aria-label': `Temperature of the dough, ${units.degrees}` },
      },
      ...chips.map(({ chip }) => chip),
      element(
        'span',
        { class: 'typed' },
        element('label', { text: `or ${units.degrees}`, attributes: { for: other.id } }),
        other,
      ),
    ),
    element(
      'div',
      { class: 'chips', attributes: { role: 'group', 'aria-label': 'Stage of the dough; logs the reading' } },
      ...stages.map((stage) =>
        button(stage, () => take(stage), { class: 'chip', attributes: { 'data-key': `stage ${stage}` } }),
      ),
      button('no stage', () => take(undefined), { class: 'chip', attributes: { 'data-key': 'stage none' } }),
    ),
    told,
  );
  return {
    root,
    tick() {
      const text = whenText(minutes(), units);
      if (when.textContent !== text) when.textContent = text;
    },
  };
}

/** Doughs are colder and warmer than this nowhere, °C; the core refuses them too. */
const coldestCelsius = -20;
const warmestCelsius = 60;

/** Why this is no reading yet, in words. */
function problemOf(read: number | undefined, units: Units): string | undefined {
  if (read === undefined) return 'First the temperature, then the stage.';
  const celsius = units.celsiusOf(read);
  if (celsius >= coldestCelsius && celsius <= warmestCelsius) return undefined;
  const [least, most] = [coldestCelsius, warmestCelsius].map((end) => units.text(units.degreesOf(end)));
  return `Type what the thermometer says, a number from ${least} to ${most} ${units.degrees}. Nothing is logged yet.`;
}

function whenText(minutes: number | undefined, units: Units): string {
  return minutes === undefined
    ? 'at the end of mixing'
    : `at ${units.text(minutes, 1)} min from the start of mixing`;
}

const chipSteps = [-4, -3, -2, -1, 0, 1, 2, 3, 4];
/** The dough of most breads, °C; common practice, no source. */
const usualCelsius = 24;

/** Half degrees Celsius or whole degrees Fahrenheit around what was worked out, whole ones where nothing was. */
function degreesAround(worked: string | undefined, units: Units): readonly number[] {
  const degrees = units.figureOf(worked?.replace(/\s*°.*$/u, '') ?? '');
  const isFine = units.degrees === '°C';
  if (degrees === undefined || Number.isNaN(degrees)) {
    const usual = Math.round(units.degreesOf(usualCelsius));
    return chipSteps.map((step) => usual + (isFine ? step : 2 * step));
  }
  const size = isFine ? 0.5 : 1;
  return chipSteps.map((step) => (Math.round(degrees / size) + step) * size);
}

/** The day by the clock on the wall, not by Greenwich. */
function today(): string {
  const now = new Date();
  const two = (number: number) => String(number).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
