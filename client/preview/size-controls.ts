import type { SheetSize, SheetView, SizeRequest } from '../../server/protocol.ts';
import { element } from './elements.ts';
import { countText, gramsOfKilograms, kilogramsText } from './numbers.ts';

export interface SizeControls {
  readonly form: HTMLFormElement;
  /** Shows the size of this sheet, except in the field the baker is typing in. */
  update(view: SheetView): void;
  /** Hides the controls where there is nothing to size. */
  hide(): void;
}

type Way = 'pieces' | 'dough' | 'flour';

const ways: readonly { readonly way: Way; readonly label: string; readonly unit: string }[] = [
  { way: 'pieces', label: 'Pieces', unit: '' },
  { way: 'dough', label: 'Dough', unit: 'kg' },
  { way: 'flour', label: 'Flour', unit: 'kg' },
];

/** The controls that size the batch. They are made once and live as long as the page, so that typing is never disturbed. */
export function createSizeControls(ask: (size: SizeRequest) => void): SizeControls {
  const select = element('select', { attributes: { id: 'size-by' } });
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
  const asInFile = element('button', {
    class: 'as-in-file',
    text: 'As in the file',
    attributes: { type: 'button' },
  });
  const wrong = element('p', { class: 'wrong', attributes: { id: 'size-wrong', role: 'status' } });
  const form = element(
    'form',
    { class: 'size', attributes: { 'aria-label': 'Size of the batch' } },
    element(
      'span',
      { class: 'field' },
      element('label', { text: 'Size by', attributes: { for: 'size-by' } }),
      select,
    ),
    element('span', { class: 'field' }, amountLabel, amount),
    asInFile,
    wrong,
  );
  let size: SheetSize = { asked: { by: 'file' }, ingredients: [] };
  let formula: string | undefined;

  const way = () => ways.find((one) => one.way === select.value) ?? ways[0]!;
  const showAmount = () => {
    amountLabel.textContent = way().unit ? `${way().label}, ${way().unit}` : way().label;
    amount.value = figureOf(size, way().way);
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
    const by = way().way;
    ask(by === 'pieces' ? { by, pieces: figure } : { by, grams: gramsOfKilograms(figure) });
  };

  form.addEventListener('submit', (event) => {
    event.preventDefault();
    askForAmount();
  });
  amount.addEventListener('input', askForAmount);
  // What was half-typed or wrong gives way to the figure that holds.
  amount.addEventListener('blur', showAmount);
  select.addEventListener('change', showAmount);
  asInFile.addEventListener('click', () => ask({ by: 'file' }));

  form.hidden = true;
  return {
    form,
    hide() {
      form.hidden = true;
    },
    update(view) {
      const otherFormula = view.formula !== formula;
      formula = view.formula;
      size = view.size;
      form.hidden = ways.every(({ way }) => figureOf(size, way) === '');
      offerWays(select, size, otherFormula);
      asInFile.setAttribute('aria-pressed', String(size.asked.by === 'file'));
      if (otherFormula || document.activeElement !== amount) showAmount();
    },
  };
}

function offerWays(select: HTMLSelectElement, size: SheetSize, otherFormula: boolean): void {
  const possible = ways.filter(({ way }) => figureOf(size, way) !== '');
  const asked = size.asked.by;
  const before = otherFormula && asked !== 'file' ? asked : select.value;
  if (
    select.options.length !== possible.length ||
    possible.some(({ way }, i) => select.options[i]?.value !== way)
  ) {
    select.replaceChildren(
      ...possible.map(({ way, label }) => element('option', { text: label, attributes: { value: way } })),
    );
  }
  select.value = possible.some(({ way }) => way === before) ? before : (possible[0]?.way ?? '');
}

function figureOf(size: SheetSize, way: Way): string {
  if (way === 'pieces') return size.pieces === undefined ? '' : countText(size.pieces);
  const grams = way === 'dough' ? size.doughGrams : size.flourGrams;
  return grams === undefined ? '' : kilogramsText(grams);
}
