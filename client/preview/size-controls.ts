import type { SheetLabels, SheetSize, ShownSheet, SizeRequest } from '../../server/protocol.ts';
import { element } from './elements.ts';
import { markWrong, numberField } from './number-field.ts';
import { plainDisplay, type Units, unitsOf } from './units.ts';

export interface SizeControls {
  readonly fields: HTMLElement;
  /** Shows the size of this sheet, except in the field the baker is typing in. */
  update(view: ShownSheet): void;
}

type Way = Exclude<SizeRequest['by'], 'file'>;

const ways: readonly Way[] = ['pieces', 'dough', 'baked', 'flour', 'onHand', 'bowl'];
const weighed: readonly Way[] = ['dough', 'baked', 'flour', 'onHand'];

/** The controls that size the batch. They are made once and live as long as the page, so that typing is never disturbed. */
export function createSizeControls(labels: SheetLabels, ask: (size: SizeRequest) => void): SizeControls {
  const wayWords: Readonly<Record<Way, string>> = { ...labels, bowl: labels.bowls };
  const select = element('select', { attributes: { id: 'size-by' } });
  const ingredient = element('select', { attributes: { id: 'size-ingredient' } });
  let units = unitsOf(plainDisplay);
  const amount = numberField(
    { id: 'size-amount', 'aria-describedby': 'size-wrong' },
    () => units,
    (figure) => askFor(figure),
  );
  // The choice before it says what the figure is of; only its unit stands behind it.
  const amountLabel = element('label', { class: 'unseen', attributes: { for: 'size-amount' } });
  const unit = element('span', { attributes: { 'aria-hidden': 'true' } });
  const wrong = element('p', { class: 'wrong', attributes: { id: 'size-wrong', role: 'status' } });
  const field = (label: string, control: HTMLElement) =>
    element(
      'span',
      { class: 'field' },
      element('label', { text: label, attributes: { for: control.id } }),
      control,
    );
  const ofWhat = field(labels.ofWhat, ingredient);
  const fields = element(
    'div',
    { class: 'fields size', attributes: { role: 'group', 'aria-label': labels.size } },
    field(labels.sizeBy, select),
    ofWhat,
    element('span', { class: 'field' }, amountLabel, amount, unit),
    wrong,
  );
  let size: SheetSize = { asked: { by: 'file' }, ingredients: [] };
  let formula: string | undefined;

  const way = () => ways.find((one) => one === select.value) ?? ways[0]!;
  const showAmount = () => {
    ofWhat.hidden = way() !== 'onHand';
    const words = wayWords[way()];
    amountLabel.textContent = weighed.includes(way()) ? `${words}, ${units.heavy}` : words;
    unit.textContent = weighed.includes(way()) ? units.heavy : '';
    amount.value = figureOf(size, way(), ingredient.value, units);
    tellWrong('');
  };
  const tellWrong = (text: string) => {
    wrong.textContent = text;
    markWrong(amount, text !== '');
  };
  const askFor = (figure: number | undefined) => {
    if (figure === undefined || !(figure > 0)) return tellWrong(labels.aboveZero);
    tellWrong('');
    ask(request(way(), figure, ingredient.value, units));
  };

  amount.addEventListener('keydown', (event) => {
    if (event.key === 'Enter') askFor(units.figureOf(amount.value));
  });
  // What was half-typed or wrong gives way to the figure that holds.
  amount.addEventListener('blur', showAmount);
  select.addEventListener('change', showAmount);
  ingredient.addEventListener('change', showAmount);

  return {
    fields,
    update(view) {
      const otherFormula = `${view.uri}\n${view.formula}` !== formula;
      const otherUnits = view.shownIn !== undefined && unitsOf(view.shownIn).heavy !== units.heavy;
      units = unitsOf(view.shownIn ?? plainDisplay);
      formula = `${view.uri}\n${view.formula}`;
      size = view.size;
      const possible = ways.filter((one) => isPossible(size, one));
      fields.hidden = possible.length === 0;
      const asked = size.asked.by;
      offer(
        select,
        possible.map((one) => [one, wayWords[one]]),
        // What the formula before was sized by says nothing of this one.
        otherFormula ? (asked === 'file' ? possible[0] : asked) : undefined,
      );
      offer(
        ingredient,
        size.ingredients.map(({ name }) => [name, name]),
        otherFormula
          ? size.asked.by === 'onHand'
            ? size.asked.ingredient
            : size.ingredients[0]?.name
          : undefined,
      );
      if (otherFormula || otherUnits || document.activeElement !== amount) showAmount();
      ofWhat.hidden = way() !== 'onHand';
    },
  };
}

/** Fills a choice anew only where its words changed, and keeps what is chosen unless told otherwise. */
export function offer(
  select: HTMLSelectElement,
  options: readonly (readonly [value: string, label: string])[],
  chosen?: string,
): void {
  const before = chosen ?? select.value;
  const there = Array.from(select.options, ({ value, text }) => `${value}\n${text}`).join('\n');
  if (there !== options.map(([value, label]) => `${value}\n${label}`).join('\n')) {
    select.replaceChildren(
      ...options.map(([value, label]) => element('option', { text: label, attributes: { value } })),
    );
  }
  select.value = options.some(([value]) => value === before) ? before : (options[0]?.[0] ?? '');
}

function request(way: Way, figure: number, ingredient: string, units: Units): SizeRequest {
  switch (way) {
    case 'pieces':
      return { by: way, pieces: figure };
    case 'bowl':
      return { by: way, batches: figure };
    case 'onHand':
      return { by: way, ingredient, grams: units.gramsOfHeavy(figure) };
    default:
      return { by: way, grams: units.gramsOfHeavy(figure) };
  }
}

function isPossible(size: SheetSize, way: Way): boolean {
  if (way === 'onHand') return size.ingredients.length > 0;
  if (way === 'bowl') return size.bowl !== undefined;
  return figureOf(size, way, '', unitsOf(plainDisplay)) !== '';
}

function figureOf(size: SheetSize, way: Way, ingredient: string, units: Units): string {
  const heavy = (grams: number | undefined) => (grams === undefined ? '' : units.text(units.heavyOf(grams)));
  switch (way) {
    case 'pieces':
      return size.pieces === undefined ? '' : units.text(size.pieces);
    case 'bowl':
      return size.asked.by === 'bowl' ? units.text(size.asked.batches) : '';
    case 'onHand':
      return heavy(size.ingredients.find(({ name }) => name === ingredient)?.grams);
    case 'dough':
      return heavy(size.doughGrams);
    case 'baked':
      return heavy(size.bakedGrams);
    case 'flour':
      return heavy(size.flourGrams);
  }
}
