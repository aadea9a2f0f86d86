/**
 * What goes to a terminal or into the log of a build. Names and notes are texts that anybody may have written: signs that move a
 * cursor, colour or hide are shown as pictures of themselves, and no line is an order to a build server.
 */

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
const controls = /[\u0000-\u0008\u000b-\u001f\u007f]/g;
/** Of the upper control codes, of what turns the direction of writing and of what breaks lines there are no pictures. */
const others = /[\u0080-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/g;

/** A text with its control characters as pictures (U+2400 and on); tabs and line feeds stay. As long as it was. */
export function visible(text: string): string {
  return text
    .replace(controls, (sign) =>
      sign === '\u007f' ? '\u2421' : String.fromCharCode(0x2400 + sign.charCodeAt(0)),
    )
    .replace(others, '\ufffd');
}

/** The same for what has to stay in one line, as the name of a file. */
export function visibleLine(text: string): string {
  return visible(text).replaceAll('\n', '\u240a').replaceAll('\t', '\u2409');
}

/** Plain data with every text in it made visible, for a writer that colours. */
export function visibleData<T>(data: T): T {
  if (typeof data === 'string') return visible(data) as T;
  if (Array.isArray(data)) return data.map(visibleData) as T;
  if (data === null || typeof data !== 'object') return data;
  return Object.fromEntries(Object.entries(data).map(([key, value]) => [key, visibleData(value)])) as T;
}

/**
 * No line that a build server takes for an order: those begin with two colons, or hold two number signs before a bracket. A
 * backslash parts the signs.
 */
export function noOrders(text: string): string {
  return text.replace(/^([^\S\r\n\u2028\u2029]*:):/gm, '$1\\:').replace(/##(?=[\w-]*\[)/g, '#\\#');
}

/** Writes a text for people to standard output. */
export function tell(text: string): void {
  process.stdout.write(noOrders(text));
}

/** Writes lines about what could not be done to standard error. */
export function complainOf(text: string): void {
  process.stderr.write(noOrders(visible(text)));
}

/** Writes one line to standard error: what it is about, where that is to be named, and what is to be said of it. */
export function complain(...words: readonly string[]): void {
  complainOf(`${['doughwright', ...words].join(': ')}\n`);
}
