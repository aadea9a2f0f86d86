/** A text of the sheet's own labels with what the page fills in, in the place of `{0}` and `{1}`. */
export function filled(label: string, ...values: readonly string[]): string {
  return label.replace(/\{([01])\}/g, (whole, index: string) => values[Number(index)] ?? whole);
}
