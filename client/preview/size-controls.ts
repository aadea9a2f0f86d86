import type { SheetSize, SheetView, SizeRequest } from '../../server/protocol.ts';
import { element } from './elements.ts';
import { countText, gramsOfKilograms, kilogramsText } from './numbers.ts';

export interface SizeControls {
  readonly fields: HTMLElement;
  /** Shows the size of this sheet, except in the field the baker is typing in. */
  update(view: SheetView): void;
  /** Whether this formula can be sized in any way. */
  readonly isUseful: boolean;
}

type Way = Exclude<SizeRequest['by'], 'file'>;

const ways: readonly { readonly way: Way; readonly label: string; readonly unit: string }[] = [
  { way: 'pieces', label: 'Pieces', unit: '' },
  { way: 'dough', label: 'Dough', unit: 'kg' },
  { way: 'baked', label: 'Baked', unit: 'kg' },
  { way: 'flour', label: 'Flour', unit: 'kg' },
  { way: 'onHand', label: 'On hand', unit: 'kg' },
  { way: 'bowl', label: 'Bowls', unit: '' },
];

/** The controls that size the batch. They are made once and live as long as the page, so that typing is never disturbed. */
export function createSizeControls(ask: (size: SizeRequest) => void): SizeControls {
  const select = element('select', { attributes: { id: 'size-by' } });
  const ingredient = element('select', { attributes: { id: 'size-ingredient' } });
  const amount = element('input', {
    attributes: {
      id: 'size-amount',
      type: 'number',
      min: '0',
      step: 'any',
      inputmode: 'decimal',
      'aria-describedby': 'size-wrong',
    },
  });
  const amountLabel = element('label', { attributes: { for: 'size-amount' } });
  const wrong = element('p', { class: 'wrong', attributes: { id: 'size-wrong', role: 'status' } });
  const field = (label: string, control: HTMLElement) =>
    element(
      'span',
      { class: 'field' },
      element('label', { text: label, attributes: { for: control.id } }),
      control,
    );
  const ofWhat = field('Of what', ingredient);
  const fields = element(
    'div',
    { class: 'fields', attributes: { role: 'group', 'aria-label': 'Size of the batch' } },
    field('Size by', select),
    ofWhat,
    element('span', { class: 'field' }, amountLabel, amount),
    wrong,
  );
  let size: SheetSize = { asked: { by: 'file' }, ingredients: [] };
  let formula: string | undefined;
  let useful = false;

  const way = () => ways.find((one) => one.way === select.value) ?? ways[0]!;
  const showAmount = () => {
    ofWhat.hidden = way().way !== 'onHand';
    amountLabel.textContent = way().unit ? `${way().label}, ${way().unit}` : way().label;
    amount.value = figureOf(size, way().way, ingredient.value);
    tellWrong('');
  };
  const tellWrong = (text: string) => {
    wrong.textContent = text;
    if (text) amount.setAttribute('aria-invalid', 'true');
    else amount.removeAttribute('aria-invalid');
  };
  const askForAmount = () => {
    const figure = amount.valueAsNumber;
    if (!(figure > 0)) return tellWrong('Type a number above 0.');
    tellWrong('');
    ask(request(way().way, figure, ingredient.value));
  };

  amount.addEventListener('input', askForAmount);
  amount.addEventListener('keydown', (event) => {
    if (event.key === 'Enter') askForAmount();
  });
  // What was half-typed or wrong gives way to the figure that holds.
  amount.addEventListener('blur', showAmount);
  select.addEventListener('change', showAmount);
  ingredient.addEventListener('change', showAmount);

  return {
    fields,
    get isUseful() {
      return useful;
    },
    update(view) {
      const otherFormula = view.formula !== formula;
      formula = view.formula;
      size = view.size;
      const possible = ways.filter(({ way }) => isPossible(size, way));
      useful = possible.length > 0;
      fields.hidden = !useful;
      const asked = size.asked.by;
      offer(
        select,
        possible.map(({ way, label }) => [way, label]),
        otherFormula && asked !== 'file' ? asked : undefined,
      );
      offer(
        ingredient,
        size.ingredients.map(({ name }) => [name, name]),
        otherFormula && size.asked.by === 'onHand' ? size.asked.ingredient : undefined,
      );
      if (otherFormula || document.activeElement !== amount) showAmount();
      ofWhat.hidden = way().way !== 'onHand';
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

function request(way: Way, figure: number, ingredient: string): SizeRequest {
  switch (way) {
    case 'pieces':
      return { by: way, pieces: figure };
    case 'bowl':
      return { by: way, batches: figure };
    case 'onHand':
      return { by: way, ingredient, grams: gramsOfKilograms(figure) };
    default:
      return { by: way, grams: gramsOfKilograms(figure) };
  }
}

function isPossible(size: SheetSize, way: Way): boolean {
  if (way === 'onHand') return size.ingredients.length > 0;
  if (way === 'bowl') return size.bowl !== undefined;
  return figureOf(size, way, '') !== '';
}

function figureOf(size: SheetSize, way: Way, ingredient: string): string {
  switch (way) {
    case 'pieces':
      return size.pieces === undefined ? '' : countText(size.pieces);
    case 'bowl':
      return size.asked.by === 'bowl' ? countText(size.asked.batches) : '';
    case 'onHand':
      return kilograms(size.ingredients.find(({ name }) => name === ingredient)?.grams);
    case 'dough':
      return kilograms(size.doughGrams);
    case 'baked':
      return kilograms(size.bakedGrams);
    case 'flour':
      return kilograms(size.flourGrams);
  }
}

function kilograms(grams: number | undefined): string {
  return grams === undefined ? '' : kilogramsText(grams);
}
