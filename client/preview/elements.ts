export interface ElementParts {
  readonly class?: string | undefined;
  /** Always set as text, never as markup: names come from the baker's file. */
  readonly text?: string | undefined;
  readonly attributes?: Readonly<Record<string, string>>;
}

/** Makes an element with its class, text, attributes and children. */
export function element<Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  parts: ElementParts = {},
  ...children: readonly (Node | undefined)[]
): HTMLElementTagNameMap[Name] {
  const made = document.createElement(name);
  if (parts.class) made.className = parts.class;
  if (parts.text !== undefined) made.textContent = parts.text;
  for (const [attribute, value] of Object.entries(parts.attributes ?? {}))
    made.setAttribute(attribute, value);
  for (const child of children) if (child) made.append(child);
  return made;
}

/** Shows a zero-based line in the editor; what a button that does so says of itself. */
export interface Reveal {
  readonly show: (line: number) => void;
  readonly hint: string;
}

/**
 * A name that shows its line in the editor when pressed. The name may be in any script, so its direction is its own;
 * the key tells the page which button had the focus when the sheet is drawn anew.
 */
export function lineButton(name: string, line: number, key: string, reveal: Reveal): HTMLButtonElement {
  const attributes = {
    type: 'button',
    dir: 'auto',
    'data-key': key,
    'data-line': String(line),
    title: reveal.hint,
  };
  const button = element('button', { class: 'name', text: name, attributes });
  button.addEventListener('click', () => reveal.show(line));
  return button;
}

/** People count lines from one. */
export function lineNumber(line: number): string {
  return String(line + 1);
}

/** A button that does something here, named by its words. */
export function button(
  text: string,
  act: () => void,
  parts: Omit<ElementParts, 'text'> = {},
): HTMLButtonElement {
  const made = element('button', { ...parts, text, attributes: { type: 'button', ...parts.attributes } });
  made.addEventListener('click', act);
  return made;
}
