import type { SheetLabels, SheetView } from '../../server/protocol.ts';
import { chartSection } from './charts.ts';
import { element, type Reveal } from './elements.ts';
import { filled } from './filled.ts';
import { factsList } from './heading.ts';
import type { PlacedFindings } from './place-findings.ts';

/** The last band: what comes of it, what it costs, what a label would say, and the cautions. */
export function outcomeBands(
  view: SheetView,
  placed: PlacedFindings,
  reveal: Reveal,
): HTMLElement | undefined {
  const bands = [
    yieldBand(view, placed, reveal),
    chartSection(view, 'composition'),
    costBand(view),
    ...labelBands(view),
    cautionsBand(view),
  ].filter((band) => band !== undefined);
  return bands.length > 0 ? element('div', { class: 'outcome' }, ...bands) : undefined;
}

function yieldBand(view: SheetView, placed: PlacedFindings, reveal: Reveal): HTMLElement | undefined {
  if (view.yields.length === 0) return undefined;
  return band('yield', view.labels.yield, factsList(view, 'yield', placed, reveal));
}

function costBand({ cost, labels }: SheetView): HTMLElement | undefined {
  if (!cost) return undefined;
  const rows = cost.rows.map(({ name, value, missing }) => [name, missing ?? value]);
  return band(
    'cost',
    labels.cost,
    element('p', { text: cost.text, attributes: { dir: 'auto' } }),
    rows.length > 0
      ? fold('cost rows', labels.byIngredient, plainTable([labels.ingredient, labels.cost], rows))
      : undefined,
  );
}

function labelBands({ label, labels }: SheetView): HTMLElement[] {
  if (!label) return [];
  return [label, label.other].flatMap((one, index) =>
    one ? [labelBand(one, labels, index === 0 ? '' : 'other-')] : [],
  );
}

function labelBand(label: NonNullable<SheetView['label']>, labels: SheetLabels, which: string): HTMLElement {
  const list = element(
    'p',
    { attributes: { dir: 'auto' } },
    ...label.ingredients.map(({ text, allergen }) => element(allergen ? 'strong' : 'span', { text })),
  );
  return band(
    `${which}label`,
    filled(labels.label, label.regime),
    list,
    ...label.allergens.map((text) => element('p', { text, attributes: { dir: 'auto' } })),
    label.nutrition.rows.length > 0
      ? fold(
          `${which}nutrition`,
          labels.nutrition,
          plainTable(
            ['', ...label.nutrition.heads],
            label.nutrition.rows.map(({ name, cells }) => [name, ...cells]),
          ),
        )
      : undefined,
    ...label.notes.map((text) => element('p', { class: 'note', text, attributes: { dir: 'auto' } })),
  );
}

function cautionsBand({ cautions, labels }: SheetView): HTMLElement | undefined {
  if (cautions.length === 0) return undefined;
  const items = cautions.map((text) => element('li', { text, attributes: { dir: 'auto' } }));
  return band('cautions', labels.cautions, element('ul', {}, ...items));
}

function band(name: string, title: string, ...parts: readonly (Node | undefined)[]): HTMLElement {
  return element(
    'section',
    { class: name, attributes: { 'aria-labelledby': name } },
    element('h2', { text: title, attributes: { id: name } }),
    ...parts,
  );
}

function fold(key: string, summary: string, inside: Node): HTMLElement {
  return element(
    'details',
    { class: 'fold', attributes: { 'data-key': key } },
    element('summary', { text: summary, attributes: { 'data-key': `${key} summary` } }),
    inside,
  );
}

function plainTable(heads: readonly string[], rows: readonly (readonly string[])[]): HTMLElement {
  const head = heads.map((text, index) =>
    text === '' && index === 0 ? element('td') : element('th', { text, attributes: { scope: 'col' } }),
  );
  const lines = rows.map(([name, ...cells]) =>
    element(
      'tr',
      {},
      element('th', { text: name ?? '', attributes: { scope: 'row', dir: 'auto' } }),
      ...cells.map((text) => element('td', { text })),
    ),
  );
  return element(
    'table',
    { class: 'plain' },
    element('thead', {}, element('tr', {}, ...head)),
    element('tbody', {}, ...lines),
  );
}
