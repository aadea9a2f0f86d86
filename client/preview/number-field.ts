import { element } from './elements.ts';
import type { Units } from './units.ts';

/**
 * A field for one figure, with a decimal point or comma. It is no field of type `number`: such a one swallows the
 * decimal sign of another language, and 12,5 becomes 125. Arrow keys count up and down by one.
 *
 * @param typed is told what stands there after every key: nothing, a figure, or NaN
 */
export function numberField(
  attributes: Readonly<Record<string, string>>,
  units: () => Units,
  typed: (figure: number | undefined) => void,
): HTMLInputElement {
  const field = element('input', {
    attributes: {
      type: 'text',
      inputmode: 'decimal',
      autocomplete: 'off',
      spellcheck: 'false',
      ...attributes,
    },
  });
  const tell = () => typed(units().figureOf(field.value));
  field.addEventListener('input', tell);
  field.addEventListener('keydown', (event) => {
    const by = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : undefined;
    const now = units().figureOf(field.value);
    if (by === undefined || now === undefined || Number.isNaN(now)) return;
    event.preventDefault();
    field.value = units().text(now + by);
    tell();
  });
  return field;
}

/** Marks a field whose text is no figure, for eyes and screen readers. */
export function markWrong(field: HTMLInputElement, isWrong: boolean): void {
  if (isWrong) field.setAttribute('aria-invalid', 'true');
  else field.removeAttribute('aria-invalid');
}
