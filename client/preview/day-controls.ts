import type { ClockRequest, SheetCondition, SheetView, TodayConditions } from '../../server/protocol.ts';
import { element } from './elements.ts';
import { figureText } from './numbers.ts';
import { offer } from './size-controls.ts';

export interface DayControls {
  readonly fields: HTMLElement;
  update(view: SheetView, today: TodayConditions): void;
}

type Measured = 'room' | 'flour' | 'tap water' | 'scale step';

const measured: readonly {
  readonly key: Measured;
  readonly label: string;
  readonly property: 'roomCelsius' | 'flourCelsius' | 'tapCelsius' | 'scaleStepGrams';
}[] = [
  { key: 'room', label: 'Room, °C', property: 'roomCelsius' },
  { key: 'flour', label: 'Flour, °C', property: 'flourCelsius' },
  { key: 'tap water', label: 'Tap water, °C', property: 'tapCelsius' },
  { key: 'scale step', label: 'Scale step, g', property: 'scaleStepGrams' },
];

/** The day as it is: temperatures, scale, mixer, and when it begins or is to be ready. An emptied field is as in the file. */
export function createDayControls(
  askToday: (today: TodayConditions) => void,
  askClock: (clock: ClockRequest | undefined) => void,
): DayControls {
  let today: TodayConditions = {};
  const change = (property: keyof TodayConditions, value: number | string | undefined) => {
    const { [property]: _, ...others } = today;
    today = value === undefined ? others : { ...others, [property]: value };
    askToday(today);
  };

  const inputs = measured.map(({ key, label, property }) => {
    const id = `day-${key.replace(' ', '-')}`;
    const said = element('span', { class: 'said', attributes: { id: `${id}-said` } });
    const input = element('input', {
      attributes: { id, type: 'number', step: 'any', inputmode: 'decimal', 'aria-describedby': said.id },
    });
    input.addEventListener('input', () => {
      if (input.validity.badInput) return;
      change(property, input.value === '' ? undefined : input.valueAsNumber);
    });
    const field = element(
      'span',
      { class: 'field' },
      element('label', { text: label, attributes: { for: id } }),
      input,
      said,
    );
    return { key, input, said, field };
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
      for (const { key, input, said, field } of inputs) {
        const condition = view.conditions.find((one) => one.key === key);
        field.hidden = condition === undefined;
        said.textContent = sourceWords(condition);
        if (condition && document.activeElement !== input)
          input.value = condition.figure === undefined ? '' : figureText(condition.figure);
      }
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

function sourceWords(condition: SheetCondition | undefined): string {
  if (!condition) return '';
  if (condition.source === 'today') return `today; ${condition.inFile ?? 'not known'} in the file`;
  return condition.source === 'assumed' ? 'assumed' : 'as in the file';
}

function timeOfDay(minutes: number): string {
  const two = (number: number) => String(number).padStart(2, '0');
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}
