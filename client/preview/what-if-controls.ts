import type { SheetLabels, SheetOptions, ShownSheet, WhatIf } from '../../server/protocol.ts';
import { button, element } from './elements.ts';
import { filled } from './filled.ts';
import { markWrong, numberField } from './number-field.ts';
import { offer } from './size-controls.ts';
import { plainDisplay, type Units, unitsOf } from './units.ts';

export interface WhatIfControls {
  readonly fields: HTMLElement;
  update(view: ShownSheet, asked: SheetOptions): void;
}

type Fields = NonNullable<ShownSheet['whatIf']>;
type MapRequest = NonNullable<SheetOptions['map']>;

/** By how much one press of a stepper changes minutes, percent, and a weight in grams. */
const minuteStep = 0.5;
const percentStep = 1;
const gramStep = 100;
const axes = ['water', 'flour', 'speed'] as const;

/** One figure with a button on either side; the figure can be typed too. */
interface Stepper {
  readonly field: HTMLElement;
  show(name: string, figure: number): void;
}

/** What can be tried of the formula itself: the minutes of each line of its programme, its water, its flours; and which map is shown. */
export function createWhatIfControls(
  labels: SheetLabels,
  askWhatIf: (whatIf: WhatIf) => void,
  askMap: (map: MapRequest | undefined) => void,
): WhatIfControls {
  let units = unitsOf(plainDisplay);
  let [of, tried]: [of: string, tried: WhatIf] = ['', {}];
  let inFile: Fields = { lines: [], flours: [] };
  const steppers = new Map<string, Stepper>();
  const [place, flours] = [element('span', { class: 'fields' }), element('span', { class: 'fields' })];
  const [feel, feelField] = feelSwitch(labels);
  const askFlour = (flour: WhatIf['flour']) => {
    const { flour: _, water, ...rest } = tried;
    const own = water === undefined ? rest : { ...rest, water };
    if (flour === undefined) return askWhatIf(own);
    askWhatIf(feel.checked ? { ...rest, flour: { ...flour, sameFeel: true } } : { ...own, flour });
  };
  feel.addEventListener('change', () => {
    if (tried.flour !== undefined) askFlour({ from: tried.flour.from, to: tried.flour.to });
  });
  const map = mapChoice(askMap);

  const tryMinutes = (index: number, minutes: number) => {
    const from = inFile.lines.find((line) => line.index === index)?.minutes;
    const others = (tried.lines ?? []).filter((line) => line.index !== index);
    const isAsInFile = from !== undefined && Math.abs(minutes - from) < 1e-6;
    const line = { index, minutes, ...(from === undefined ? {} : { from }) };
    const lines = isAsInFile ? others : [...others, line];
    const { lines: _, ...rest } = tried;
    askWhatIf(lines.length === 0 ? rest : { ...rest, lines });
  };
  const tryWater = (amount: number) => {
    const { water: _, flour, ...others } = tried;
    const rest = flour === undefined ? others : { ...others, flour: { from: flour.from, to: flour.to } };
    const isAsInFile = inFile.water !== undefined && Math.abs(amount - inFile.water.amount) < 1e-9;
    askWhatIf(isAsInFile ? rest : { ...rest, water: amount });
  };
  const stepperOf = (key: string, step: number, act: (figure: number) => void): Stepper => {
    const found = steppers.get(key);
    if (found !== undefined) return found;
    const made = createStepper({ id: `what-if-${key}`, step, labels, units: () => units }, act);
    steppers.set(key, made);
    return made;
  };

  return {
    fields: element(
      'div',
      { class: 'fields what-if', attributes: { role: 'group', 'aria-label': labels.whatIf } },
      place,
      flours,
      feelField,
      element(
        'span',
        { class: 'field' },
        element('label', { text: labels.map, attributes: { for: map.id } }),
        map,
      ),
    ),
    update(view, asked) {
      units = unitsOf(view.shownIn ?? plainDisplay);
      tried = asked.whatIf ?? {};
      inFile = view.whatIf ?? { lines: [], flours: [] };
      const shown: HTMLElement[] = [];
      for (const { index, name, minutes } of inFile.lines) {
        const stepper = stepperOf(`line-${index}`, minuteStep, (figure) => tryMinutes(index, figure));
        const now = tried.lines?.find((line) => line.index === index)?.minutes ?? minutes;
        stepper.show(filled(labels.minutes, name), now);
        shown.push(stepper.field);
      }
      const { water } = inFile;
      if (water !== undefined) {
        const isWeight = water.measure === 'grams';
        const stepper = stepperOf(`water-${water.measure}`, isWeight ? gramStep : percentStep, (figure) =>
          tryWater(isWeight ? units.gramsOfLight(figure) : figure / 100),
        );
        const amount = tried.water ?? water.tried ?? water.amount;
        stepper.show(
          `${water.name}, ${isWeight ? units.light : '%'}`,
          isWeight ? units.lightOf(amount) : amount * 100,
        );
        shown.push(stepper.field);
      }
      replaceWhereChanged(place, shown);
      showFlours(flours, inFile, tried, askFlour);
      feelField.hidden = water === undefined || inFile.flours.length === 0;
      // What is ticked for one formula is nothing to the next.
      if (tried.flour !== undefined || of !== view.formula)
        feel.checked = tried.flour?.sameFeel === true && tried.water === undefined;
      of = view.formula;
      offer(
        map,
        [['', labels.noMap], ...axes.map((axis) => [axis, labels.maps[axis]] as const)],
        asked.map?.against ?? (asked.map ? 'water' : ''),
      );
    },
  };
}

/** Which map of the gap is shown, or none. */
function mapChoice(ask: (map: MapRequest | undefined) => void): HTMLSelectElement {
  const map = element('select', { attributes: { id: 'map-against' } });
  map.addEventListener('change', () => {
    const against = axes.find((axis) => axis === map.value);
    ask(against === undefined ? undefined : { against });
  });
  return map;
}

/** Whether the water goes with another flour. */
function feelSwitch(labels: SheetLabels): readonly [box: HTMLInputElement, field: HTMLElement] {
  const box = element('input', { attributes: { id: 'what-if-feel', type: 'checkbox' } });
  const words = element('label', { class: 'switch' }, box, document.createTextNode(labels.sameFeel));
  return [box, element('span', { class: 'field' }, words)];
}

/** Taken out for a moment a field would lose what is typed. */
function replaceWhereChanged(place: HTMLElement, shown: readonly HTMLElement[]): void {
  const isSame =
    place.children.length === shown.length && shown.every((one, at) => place.children[at] === one);
  if (!isSame) place.replaceChildren(...shown);
}

function createStepper(
  parts: {
    readonly id: string;
    readonly step: number;
    readonly labels: SheetLabels;
    readonly units: () => Units;
  },
  act: (figure: number) => void,
): Stepper {
  const { id, step, labels, units } = parts;
  const label = element('label', { attributes: { for: id } });
  let figure = 0;
  const input = numberField({ id }, units, (typed) => {
    const isWrong = typed === undefined || !(typed > 0);
    markWrong(input, isWrong);
    if (!isWrong) act(typed);
  });
  const press = (by: number) => () => {
    // Steps stand on multiples of themselves, so that two presses back and forth end where they began.
    const next = Math.round((figure + by) * 1e6) / 1e6;
    if (next > 0) act(next);
  };
  const less = button('−', press(-step), { class: 'step' });
  const more = button('+', press(step), { class: 'step' });
  const field = element(
    'span',
    { class: 'field stepper' },
    label,
    element('span', { class: 'pair' }, less, input, more),
  );
  input.addEventListener('blur', () => {
    input.value = units().text(figure, 2);
    markWrong(input, false);
  });
  return {
    field,
    show(name, now) {
      figure = now;
      label.textContent = name;
      less.setAttribute('aria-label', filled(labels.less, name));
      more.setAttribute('aria-label', filled(labels.more, name));
      if (document.activeElement !== input) input.value = units().text(now, 2);
    },
  };
}

/** One choice for each flour: itself, or one of its kind. Only one of them can be another at a time. */
function showFlours(
  place: HTMLElement,
  { flours }: Fields,
  tried: WhatIf,
  ask: (flour: WhatIf['flour']) => void,
): void {
  const names = flours.map(({ name }) => name).join('\n');
  if (place.dataset.names !== names) {
    place.dataset.names = names;
    place.replaceChildren(
      ...flours.map(({ name }, index) => {
        const id = `what-if-flour-${index}`;
        return element(
          'span',
          { class: 'field' },
          element('label', { text: name, attributes: { for: id, dir: 'auto' } }),
          element('select', { attributes: { id } }),
        );
      }),
    );
  }
  for (const [index, { name, others }] of flours.entries()) {
    const select = place.querySelector<HTMLSelectElement>(`#what-if-flour-${index}`);
    if (select === null) continue;
    const chosen = tried.flour?.from === name ? tried.flour.to : name;
    if (document.activeElement !== select)
      offer(
        select,
        [name, ...others].map((one) => [one, one]),
        chosen,
      );
    select.onchange = () => {
      ask(select.value === name ? undefined : { from: name, to: select.value });
    };
  }
}
