import { textSize } from './svg.ts';

/**
 * How wide a text may come out, in units of the drawing. Nobody knows here which letters a screen or a printer has, so
 * every letter counts as wide as it is in a generous sans serif.
 */
export function textWidth(text: string, size = textSize): number {
  let width = 0;
  for (const letter of text) {
    const known = widths.get(letter) ?? letterWidth(letter);
    widths.set(letter, known);
    width += known;
  }
  return width * size;
}

/** There are only so many letters in a language. */
const widths = new Map<string, number>();

/** Widths in parts of the type size. */
function letterWidth(letter: string): number {
  if (/[\p{Mn}\p{Cf}]/u.test(letter)) return 0;
  if (/[ .,:;'’!|ijl·]/.test(letter)) return 0.33;
  if (/[frt()]/.test(letter)) return 0.45;
  if (/[a-zà-ÿ0-9]/.test(letter)) return /[mwæœ]/.test(letter) ? 1 : 0.64;
  if (/[A-ZÀ-ß%–—°]/.test(letter)) return letter === 'M' || letter === 'W' || letter === '%' ? 1 : 0.75;
  return /[\u1100-\u11ff\u2e80-\u9fff\uac00-\ud7af\uf900-\ufaff\uff00-\uff60]|\p{Extended_Pictographic}/u.test(
    letter,
  )
    ? 1.1
    : 0.85;
}

/** A name cut to a width, with a sign that it goes on. */
export function fitted(name: string, width: number, size = textSize): string {
  if (textWidth(name, size) <= width) return name;
  const letters = [...name];
  let kept = letters.length;
  while (kept > 0 && textWidth(`${letters.slice(0, kept).join('')}…`, size) > width) kept--;
  return kept === 0 ? '' : `${letters.slice(0, kept).join('').trimEnd()}…`;
}

/** A text in lines no wider than so much; a word that is wider by itself is cut. */
export function wrapped(text: string, width: number, size = textSize): string[] {
  const lines: string[] = [];
  let now = '';
  for (const word of text.split(betweenWords).filter((one) => one !== '')) {
    const longer = now === '' ? word : `${now} ${word}`;
    if (textWidth(longer, size) <= width) now = longer;
    else {
      if (now !== '') lines.push(now);
      now = fitted(word, width, size);
    }
  }
  return now === '' ? lines : [...lines, now];
}

// A unit stays with its figure.
const betweenWords = / +(?!(?:h|min|s|g|kg|oz|lb|°C|°F)(?:[ ,;.)]|$))/;

/** A name that keeps its own direction beside figures, whatever script it is in. */
export function isolated(name: string): string {
  return rightToLeft.test(name) ? `\u2068${name}\u2069` : name;
}

const rightToLeft = /[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}]/u;

/**
 * Where texts of these widths go in one row, each as near to the place it belongs to as its neighbours leave it, in the
 * same order; undefined where the row is too short for them. Gives their middles.
 */
export function spread(
  wanted: readonly { readonly middle: number; readonly width: number }[],
  from: number,
  to: number,
  gap: number,
): number[] | undefined {
  const all = wanted.reduce((sum, { width }) => sum + width, 0) + gap * Math.max(0, wanted.length - 1);
  if (all > to - from) return undefined;
  // Texts that would touch are one run; it stands where its texts want to be on the average.
  const runs: { first: number; left: number; width: number; wantedLeft: number; count: number }[] = [];
  for (const [first, { middle, width }] of wanted.entries()) {
    let run = { first, left: middle - width / 2, width, wantedLeft: middle - width / 2, count: 1 };
    const within = (left: number): number => Math.min(Math.max(left, from), to - run.width);
    run.left = within(run.left);
    for (
      let last = runs.at(-1);
      last !== undefined && last.left + last.width + gap > run.left;
      last = runs.at(-1)
    ) {
      runs.pop();
      const moved = run.wantedLeft - run.count * (last.width + gap);
      const count = last.count + run.count;
      run = {
        first: last.first,
        left: 0,
        width: last.width + gap + run.width,
        wantedLeft: last.wantedLeft + moved,
        count,
      };
      run.left = within(run.wantedLeft / count);
    }
    runs.push(run);
  }
  return runs.flatMap(({ first, left, count }) => {
    let edge = left;
    return wanted.slice(first, first + count).map(({ width }) => {
      edge += width + gap;
      return edge - gap - width / 2;
    });
  });
}
