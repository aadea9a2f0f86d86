/** Records as RFC 4180 has them: fields between commas, or another sign, quoted where they must be, each record ended by CR LF. */
export function asCsv(records: readonly (readonly string[])[], sign: ',' | ';' = ','): string {
  return records.map((record) => `${record.map((text) => csvField(text, sign)).join(sign)}\r\n`).join('');
}

/** Records as a spreadsheet takes them from the clipboard: a field holds no tab and no line break. */
export function asTabbed(records: readonly (readonly string[])[]): string {
  return records
    .map((record) => `${record.map((text) => harmless(text).replace(/\s+/g, ' ')).join('\t')}\n`)
    .join('');
}

function csvField(text: string, sign: string): string {
  const field = harmless(text);
  // Where a build server reads along, a line that begins so is an order to it; in quotes it is the same field and none.
  const isOrder = /^\s*(?:::|##)/.test(field);
  return isOrder || field.includes(sign) || /["\r\n]/.test(field)
    ? `"${field.replaceAll('"', '""')}"`
    : field;
}

/**
 * A spreadsheet would compute a text that begins as a formula of its own, also behind blanks or a quote, and also where it
 * begins as a negative number does (`-1+cmd`); an apostrophe keeps it a text. What is a negative number, its unit behind it or
 * not, stays as it is.
 */
function harmless(text: string): string {
  if (/^-\d+(?:[.,]\d+)?(?:\s?(?:%|°[CF]|[a-z]{1,8}))?$/i.test(text)) return text;
  return /^[\s"']*[=+@\uFF1D\uFF0B\uFF20\uFF0D-]|^[\t\r\n]/.test(text) ? `'${text}` : text;
}
