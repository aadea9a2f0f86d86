import type { SheetPhase } from '../../server/protocol.ts';
import { button, element } from './elements.ts';
import type { TakenReading } from './messages.ts';
import { figureText } from './numbers.ts';

/** The states of a dough in the mixer as the notation spells them. */
const stages = ['pick-up', 'clean-up', 'developing', 'developed', 'let-down', 'breakdown'];

export interface ReadingParts {
  readonly phase: SheetPhase;
  /** Minutes from the start of mixing, now; absent at the end of mixing, whose reading has a line of its own. */
  readonly minutes: () => number | undefined;
  readonly log: (reading: TakenReading) => void;
}

/**
 * Logs a reading with two taps: the temperature, then the stage. No temperature is chosen beforehand, so that nothing is
 * ever logged that nobody read.
 */
export function readingControls({ phase, minutes, log }: ReadingParts): HTMLElement {
  let celsius: number | undefined;
  const when = element('p', { class: 'when', text: whenText(minutes()) });
  const told = element('p', { class: 'reading-told', attributes: { role: 'status' } });
  const chips = degreesAround(phase.celsius).map((degrees) => {
    const chip = button(`${figureText(degrees)}`, () => choose(degrees), {
      class: 'chip',
      attributes: {
        'aria-pressed': 'false',
        'aria-label': `${figureText(degrees)} °C`,
        'data-key': `chip ${degrees}`,
      },
    });
    return { degrees, chip };
  });
  const other = element('input', {
    attributes: {
      id: 'reading-celsius',
      type: 'number',
      step: '0.1',
      min: '-20',
      max: '60',
      inputmode: 'decimal',
      'data-key': 'reading celsius',
    },
  });
  other.addEventListener('input', () =>
    choose(Number.isNaN(other.valueAsNumber) ? undefined : other.valueAsNumber),
  );
  const choose = (degrees: number | undefined) => {
    celsius = degrees;
    for (const { degrees: one, chip } of chips) chip.setAttribute('aria-pressed', String(one === degrees));
    if (degrees !== undefined && document.activeElement !== other) other.value = figureText(degrees);
    told.textContent = '';
  };
  const take = (stage: string | undefined) => {
    if (celsius === undefined) {
      told.textContent = 'First the temperature, then the stage.';
      return;
    }
    const at = minutes();
    log({
      date: today(),
      celsius,
      ...(at === undefined ? {} : { minutes: at }),
      ...(stage === undefined ? {} : { stage }),
    });
    choose(undefined);
    other.value = '';
  };
  return element(
    'section',
    { class: 'reading', attributes: { 'aria-labelledby': 'reading' } },
    element('h2', { text: 'Log a reading', attributes: { id: 'reading' } }),
    when,
    element(
      'div',
      { class: 'chips', attributes: { role: 'group', 'aria-label': 'Temperature of the dough, °C' } },
      ...chips.map(({ chip }) => chip),
      element('label', { text: 'or °C', attributes: { for: other.id } }),
      other,
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
}

function whenText(minutes: number | undefined): string {
  return minutes === undefined
    ? 'at the end of mixing'
    : `at ${figureText(minutes)} min from the start of mixing`;
}

/** Half degrees around what was worked out, or whole ones where nothing was. */
function degreesAround(worked: string | undefined): readonly number[] {
  const celsius = worked === undefined ? Number.NaN : Number.parseFloat(worked);
  if (Number.isNaN(celsius)) return [20, 21, 22, 23, 24, 25, 26, 27, 28];
  const middle = Math.round(celsius * 2) / 2;
  return [-2, -1.5, -1, -0.5, 0, 0.5, 1, 1.5, 2].map((step) => middle + step);
}

/** The day by the clock on the wall, not by Greenwich. */
function today(): string {
  const now = new Date();
  const two = (number: number) => String(number).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
