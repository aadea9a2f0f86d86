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
  return field.includes(sign) || /["\r\n]/.test(field) ? `"${field.replaceAll('"', '""')}"` : field;
}

/** A spreadsheet would compute a text that begins as a formula of its own; an apostrophe keeps it a text. */
function harmless(text: string): string {
  return /^[=+@\t\r]|^-(?![\d.])/.test(text) ? `'${text}` : text;
}
