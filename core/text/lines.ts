/** The lines of a text without their endings, and the endings apart, so that joining both gives the text back. */
export interface Lines {
  readonly texts: readonly string[];
  readonly endings: readonly string[];
}

/**
 * Splits a text at LF, CRLF and CR. The last line has an empty ending; an empty text has one empty line.
 */
export function splitLines(text: string): Lines {
  if (!text.includes('\r')) {
    const texts = text.split('\n');
    const endings = new Array<string>(texts.length).fill('\n');
    endings[texts.length - 1] = '';
    return { texts, endings };
  }
  const texts: string[] = [];
  const endings: string[] = [];
  let start = 0;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code !== 10 && code !== 13) continue;
    const ending = code === 10 ? '\n' : text.charCodeAt(at + 1) === 10 ? '\r\n' : '\r';
    texts.push(text.slice(start, at));
    endings.push(ending);
    at += ending.length - 1;
    start = at + 1;
  }
  texts.push(text.slice(start));
  endings.push('');
  return { texts, endings };
}
