import type { ClockRequest, SheetCondition, ShownSheet, TodayConditions } from '../../server/protocol.ts';
import { element } from './elements.ts';
import { markWrong, numberField } from './number-field.ts';
import { offer } from './size-controls.ts';
import { plainDisplay, type Units, unitsOf } from './units.ts';

export interface DayControls {
  readonly fields: HTMLElement;
  update(view: ShownSheet, today: TodayConditions): void;
}

type Measured = 'room' | 'flour' | 'tap water' | 'scale step';

const measured: readonly {
  readonly key: Measured;
  readonly label: string;
  readonly property: 'roomCelsius' | 'flourCelsius' | 'tapCelsius' | 'scaleStepGrams';
}[] = [
  { key: 'room', label: 'Room', property: 'roomCelsius' },
  { key: 'flour', label: 'Flour', property: 'flourCelsius' },
  { key: 'tap water', label: 'Tap water', property: 'tapCelsius' },
  { key: 'scale step', label: 'Scale step', property: 'scaleStepGrams' },
];

/** The day as it is: temperatures, scale, mixer, and when it begins or is to be ready. An emptied field is as in the file. */
export function createDayControls(
  askToday: (today: TodayConditions) => void,
  askClock: (clock: ClockRequest | undefined) => void,
): DayControls {
  let today: TodayConditions = {};
  let units = unitsOf(plainDisplay);
  const change = (property: keyof TodayConditions, value: number | string | undefined) => {
    const { [property]: _, ...others } = today;
    today = value === undefined ? others : { ...others, [property]: value };
    askToday(today);
  };

  const inputs = measured.map(({ key, label, property }) => {
    const id = `day-${key.replace(' ', '-')}`;
    const said = element('span', { class: 'said', attributes: { id: `${id}-said` } });
    const isMass = property === 'scaleStepGrams';
    const input = numberField(
      { id, 'aria-describedby': said.id },
      () => units,
      (figure) => {
        const isWrong = Number.isNaN(figure);
        markWrong(input, isWrong);
        if (isWrong) said.textContent = 'not a number';
        else change(property, figure === undefined ? undefined : coreFigure(figure, isMass, units));
      },
    );
    const named = element('label', { attributes: { for: id } });
    const field = element('span', { class: 'field' }, named, input, said);
    const show = (condition: SheetCondition | undefined) => {
      named.textContent = `${label}, ${isMass ? units.light : units.degrees}`;
      field.hidden = condition === undefined;
      if (condition && document.activeElement !== input) {
        input.value = condition.figure === undefined ? '' : shownFigure(condition.figure, isMass, units);
        markWrong(input, false);
      }
      if (input.getAttribute('aria-invalid') === null) said.textContent = sourceWords(condition);
    };
    return { key, field, show };
  });

  const mixerSaid = element('span', { class: 'said', attributes: { id: 'day-mixer-said' } });
  const mixer = element('select', { attributes: { id: 'day-mixer', 'aria-describedby': mixerSaid.id } });
  mixer.addEventListener('change', () =>
    change('mixer', mixer.selectedIndex === 0 ? undefined : mixer.value),
  );
  const mixerField = element(
    'span',
    { class: 'field' },
    element('label', { text: 'Mixer', attributes: { for: mixer.id } }),
    mixer,
    mixerSaid,
  );

  const by = element('select', { attributes: { id: 'day-clock-by' } });
  offer(by, [
    ['start', 'Mixing starts at'],
    ['ready', 'Ready at'],
  ]);
  const time = element('input', {
    attributes: { id: 'day-clock', type: 'time', 'aria-label': 'Time of day' },
  });
  const tellClock = () => {
    const [hours, minutes] = time.value.split(':').map(Number);
    if (hours === undefined || minutes === undefined || Number.isNaN(hours)) return askClock(undefined);
    askClock({ by: by.value === 'ready' ? 'ready' : 'start', minutes: hours * 60 + minutes });
  };
  by.addEventListener('change', () => time.value && tellClock());
  time.addEventListener('input', tellClock);

  const fields = element(
    'div',
    { class: 'fields', attributes: { role: 'group', 'aria-label': 'The day' } },
    ...inputs.map(({ field }) => field),
    mixerField,
    element(
      'span',
      { class: 'field' },
      element('label', { text: 'Clock', attributes: { for: by.id } }),
      element('span', { class: 'pair' }, by, time),
    ),
  );

  return {
    fields,
    update(view, tried) {
      today = tried;
      units = unitsOf(view.shownIn ?? plainDisplay);
      for (const { key, show } of inputs) show(view.conditions.find((one) => one.key === key));
      const condition = view.conditions.find((one) => one.key === 'mixer');
      mixerField.hidden = condition === undefined || view.mixers.length === 0;
      mixerSaid.textContent = sourceWords(condition);
      if (document.activeElement !== mixer)
        offer(
          mixer,
          view.mixers.map((name) => [name, name]),
          condition?.value,
        );
      const asked = view.timeline.asked;
      if (asked) by.value = asked.by;
      if (document.activeElement !== time) time.value = asked ? timeOfDay(asked.minutes) : '';
    },
  };
}

/** What was typed, in °C or grams. */
function coreFigure(figure: number, isMass: boolean, units: Units): number {
  return isMass ? units.gramsOfLight(figure) : units.celsiusOf(figure);
}

/** A temperature in °C or a scale step in grams as its field shows it. */
function shownFigure(figure: number, isMass: boolean, units: Units): string {
  return isMass ? units.text(units.lightOf(figure)) : units.text(units.degreesOf(figure), 1);
}

function sourceWords(condition: SheetCondition | undefined): string {
  if (!condition) return '';
  if (condition.source === 'today') return `today; ${condition.inFile ?? 'not known'} in the file`;
  return condition.source === 'assumed' ? 'assumed' : 'as in the file';
}

function timeOfDay(minutes: number): string {
  const two = (number: number) => String(number).padStart(2, '0');
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}
