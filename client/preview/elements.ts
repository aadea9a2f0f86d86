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
