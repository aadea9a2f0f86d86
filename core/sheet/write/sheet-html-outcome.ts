import { labelsOf, labelTitle, type Told, trialHeads, trialRows, trialTitle } from '../build/sheet-words.ts';
import type { SheetLabel } from '../build/view-product.ts';
import { type Child, element, type Markup } from './markup.ts';
import { findingsList, section } from './sheet-html-blocks.ts';

/** What comes of the work: the yield, the cost and the label. */
export function outcomeSections(told: Told, id: string): Child[] {
  const { word } = told;
  const { yields, cost } = told.view;
  return [
    yields.length === 0
      ? undefined
      : section(`${id}-yield`, 'yield', word('sheet.yield'), [], yieldTable(told, `${id}-yield`)),
    cost === undefined
      ? undefined
      : section(
          `${id}-cost`,
          'cost',
          word('sheet.cost'),
          [],
          element('p', { dir: 'auto' }, cost.text),
          cost.rows.length === 0
            ? undefined
            : plainTable(
                `${id}-cost`,
                [word('sheet.ingredient'), word('sheet.cost')],
                cost.rows.map(({ name, value, missing }) => [name, missing ?? value]),
              ),
        ),
    ...labelsOf(told.view).map((label, index) =>
      labelSection(label, told, index === 0 ? `${id}-label` : `${id}-other-label`),
    ),
  ];
}

function labelSection(label: SheetLabel, { speaker }: Told, id: string): Child {
  return section(
    id,
    'label',
    labelTitle(label, speaker),
    [],
    element(
      'p',
      { dir: 'auto' },
      ...label.ingredients.map(({ text, allergen }) => (allergen ? element('strong', {}, text) : text)),
    ),
    ...label.allergens.map((one) => element('p', { dir: 'auto' }, one)),
    label.nutrition.rows.length === 0
      ? undefined
      : plainTable(
          id,
          ['', ...label.nutrition.heads],
          label.nutrition.rows.map(({ name, cells }) => [name, ...cells]),
        ),
    ...label.notes.map((one) => element('p', { class: 'small', dir: 'auto' }, one)),
  );
}

/** What trials of the formula measured, beside what is computed. */
export function trialSections(told: Told, id: string): Markup[] {
  return told.view.trials.map((trial, t) =>
    section(
      `${id}-trial-${t + 1}`,
      'trial',
      trialTitle(trial, told.speaker),
      [],
      findingsList(told.findings(`trial ${t}`)),
      trial.readings.length === 0
        ? undefined
        : plainTable(`${id}-trial-${t + 1}`, trialHeads.map(told.word), trialRows(trial)),
      ...trial.notes.map((one) => element('p', { class: 'small', dir: 'auto' }, one)),
    ),
  );
}

/** The usual cautions, at the end of the sheet. */
export function cautionsSection({ view: { cautions }, word }: Told, id: string): Child {
  if (cautions.length === 0) return undefined;
  const items = cautions.map((one) => element('li', { dir: 'auto' }, one));
  return section(id, 'cautions', word('sheet.cautions'), [], element('ul', {}, ...items));
}

/** A small table whose columns after the first are figures. */
export function plainTable(
  labelledBy: string,
  heads: readonly string[],
  rows: readonly (readonly string[])[],
): Markup {
  const side = (index: number) => ({ class: index === 0 ? undefined : 'figures' });
  const head = heads.map((text, index) =>
    text === '' ? element('td', {}) : element('th', { scope: 'col', ...side(index) }, text),
  );
  const lines = rows.map(([name = '', ...cells]) =>
    element(
      'tr',
      {},
      element('th', { scope: 'row', dir: 'auto' }, name),
      ...cells.map((text) => element('td', { class: 'figures' }, text)),
    ),
  );
  return element(
    'table',
    { class: 'plain', 'aria-labelledby': labelledBy },
    element('thead', {}, element('tr', {}, ...head)),
    element('tbody', {}, ...lines),
  );
}

function yieldTable(told: Told, labelledBy: string): Markup {
  const rows = told.view.yields.map(({ key, label, value, note }) =>
    element(
      'tr',
      {},
      element('th', { scope: 'row' }, label),
      element('td', { class: 'figures' }, value),
      element('td', {}, note, findingsList(told.findings(`yield ${key}`))),
    ),
  );
  return element('table', { class: 'plain', 'aria-labelledby': labelledBy }, element('tbody', {}, ...rows));
}
