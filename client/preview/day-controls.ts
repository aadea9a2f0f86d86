import type { ClockRequest, Fact, SheetLabels, ShownSheet, TodayConditions } from '../../server/protocol.ts';
import { timeOfDay } from '../clock.ts';
import { element } from './elements.ts';
import { filled } from './filled.ts';
import { mixerWords } from './mixer-words.ts';
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
  readonly label: 'room' | 'flour' | 'tapWater' | 'scaleStep';
  readonly property: 'roomCelsius' | 'flourCelsius' | 'tapCelsius' | 'scaleStepGrams';
}[] = [
  { key: 'room', label: 'room', property: 'roomCelsius' },
  { key: 'flour', label: 'flour', property: 'flourCelsius' },
  { key: 'tap water', label: 'tapWater', property: 'tapCelsius' },
  { key: 'scale step', label: 'scaleStep', property: 'scaleStepGrams' },
];

/** The day as it is: temperatures, scale, mixer, and when it begins or is to be ready. An emptied field is as in the file. */
export function createDayControls(
  labels: SheetLabels,
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
        if (isWrong) said.textContent = labels.notANumber;
        else change(property, figure === undefined ? undefined : coreFigure(figure, isMass, units));
      },
    );
    const named = element('label', { attributes: { for: id } });
    const field = element('span', { class: 'field' }, named, input, said);
    const show = (condition: Fact | undefined) => {
      named.textContent = `${labels[label]}, ${isMass ? units.light : units.degrees}`;
      field.hidden = condition === undefined;
      if (condition && document.activeElement !== input) {
        input.value = condition.figure === undefined ? '' : shownFigure(condition.figure, isMass, units);
        markWrong(input, false);
      }
      if (input.getAttribute('aria-invalid') === null) said.textContent = sourceWords(condition, labels);
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
    element('label', { text: labels.mixer, attributes: { for: mixer.id } }),
    mixer,
    mixerSaid,
  );

  const by = element('select', { attributes: { id: 'day-clock-by' } });
  offer(by, [
    ['start', labels.mixingStarts],
    ['ready', labels.readyAt],
  ]);
  const time = element('input', {
    attributes: { id: 'day-clock', type: 'time', 'aria-label': labels.timeOfDay },
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
    { class: 'fields', attributes: { role: 'group', 'aria-label': labels.day } },
    ...inputs.map(({ field }) => field),
    mixerField,
    element(
      'span',
      { class: 'field' },
      element('label', { text: labels.clock, attributes: { for: by.id } }),
      element('span', { class: 'pair' }, by, time),
    ),
  );

  return {
    fields,
    update(view, tried) {
      today = tried;
      units = unitsOf(view.shownIn ?? plainDisplay);
      for (const { key, show } of inputs) show(conditionOf(view, key));
      const condition = conditionOf(view, 'mixer');
      mixerField.hidden = condition === undefined || view.mixers.length === 0;
      mixerSaid.textContent = sourceWords(condition, labels);
      if (document.activeElement !== mixer)
        offer(
          mixer,
          view.mixers.map((name) => [name, mixerWords(name, labels)]),
          tried.mixer ?? view.mixers[0],
        );
      const asked = view.clock;
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

/** A condition of the day that the sheet is worked out for. */
function conditionOf({ sections }: ShownSheet, key: string): Fact | undefined {
  const day = sections.find(({ name }) => name === 'day');
  return day?.kind === 'facts' ? day.facts.find((one) => one.key === key) : undefined;
}

function sourceWords(condition: Fact | undefined, labels: SheetLabels): string {
  if (!condition) return '';
  if (condition.source === 'today') return filled(labels.todayInstead, condition.inFile ?? labels.notKnown);
  return condition.source === 'assumed' ? labels.assumed : labels.asInFile;
}
