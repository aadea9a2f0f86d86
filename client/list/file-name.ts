/** A file name, without its ending, for a formula of any name: letters and digits of any script, joined by hyphens. */
export function fileNameFor(formula: string): string {
  const name = formula
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60)
    .replace(/-+$/, '');
  // Windows keeps these names for its devices.
  return name === '' || /^(con|prn|aux|nul|com\d|lpt\d)$/.test(name) ? `formula${name && `-${name}`}` : name;
}
