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
    if (plainEndings.length !== texts.length) {
      const made = new Array<string>(texts.length).fill('\n');
      made[texts.length - 1] = '';
      plainEndings = made;
    }
    return { texts, endings: plainEndings };
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

/** The endings of the last text that has LF alone: a text that is typed in has as many lines again at almost every letter. */
let plainEndings: readonly string[] = [];

/** The same letters in a text of their own, where the piece that was cut out of a text would keep all of that in memory. */
export function ownCopy(piece: string): string {
  if (piece.length > longestCopied) return piece;
  const codes = Array.from({ length: piece.length }, (_, at) => piece.charCodeAt(at));
  return String.fromCharCode(...codes);
}

/** Longer ones are most of their text as a rule. */
const longestCopied = 4000;
