import type { IToken } from 'chevrotain';
import { firstOf, lastOf } from '../text/element.ts';
import type { Span } from '../text/span.ts';
import { message } from '../words/message.ts';
import { problem, writeFix } from './problem.ts';
import type { SyntaxProblem } from './syntax-problem.ts';
import * as t from './tokens.ts';

/** A time in other words than the notation's, and how the notation writes it. */
interface SpelledTime extends Span {
  readonly meant: string;
}

const hours = String.raw`(?:H|Std\.?|STD|Stunden?|heures?|or[ae]|(?:h|hrs?|hours?)\.)`;
const minutes = String.raw`(?:Mins?\.?|MINS?\.?|mn\.?|m|Minuten?|minut[io]|(?:mins?|minutes?)\.)`;
const figure = String.raw`\d+(?:[.,]\d+)?`;
const counts = 'one two three four five six seven eight nine ten eleven twelve'.split(' ');
const more: Readonly<Record<string, number>> = {
  fifteen: 15,
  twenty: 20,
  thirty: 30,
  forty: 40,
  'forty-five': 45,
};
const countWord = [...Object.keys(more).reverse(), ...counts].join('|');
const countOf = (word: string): number => more[word.toLowerCase()] ?? counts.indexOf(word.toLowerCase()) + 1;

/** The longer ones stand first. Common practice, no source. */
const spellings: readonly (readonly [written: string, meant: (found: readonly string[]) => string])[] = [
  [String.raw`(\d{1,2}):([0-5]\d)\s*(?:h|hrs?|hours?|std\.?)`, ([, h, min]) => `${h} h ${Number(min)} min`],
  [String.raw`(\d+)\s*(?:h|hrs?|${hours})\s*(\d+)\s*${minutes}`, ([, h, min]) => `${h} h ${min} min`],
  [
    String.raw`(\d+)\s*(?:h|hrs?|hours?)\s+and\s+(\d+)\s*(?:min|mins|minutes?)`,
    ([, h, min]) => `${h} h ${min} min`,
  ],
  [String.raw`(${figure})\s+(?:more|further|extra)\s+(?:min|mins|minutes?)`, ([, min]) => `${min} min`],
  [String.raw`(${figure})\s+(?:more|further|extra)\s+(?:h|hrs?|hours?)`, ([, h]) => `${h} h`],
  [
    String.raw`(\d{1,3})\s?\+\s?(\d{1,3})\s*(?:min|mins|minutes?)`,
    ([, one, two]) => `${Number(one) + Number(two)} min`,
  ],
  ['three[ -]quarters of an hour', () => '45 min'],
  ['(?:a )?quarter of an hour', () => '15 min'],
  ['(?:an? )?half (?:an )?hour', () => '30 min'],
  ['(?:an|one) hour and a half', () => '1 h 30 min'],
  [`(${countWord}) and a half hours`, ([, word = '']) => `${countOf(word)} h 30 min`],
  [`(${countWord}) hours?`, ([, word = '']) => `${countOf(word)} h`],
  [`(${countWord}) minutes?`, ([, word = '']) => `${countOf(word)} min`],
  ['an hour', () => '1 h'],
  ['(?<=(?:every|first) )hour', () => '1 h'],
  [`(${figure})\\s*${hours}`, ([, h]) => `${h} h`],
  [`(${figure})\\s*${minutes}`, ([, min]) => `${min} min`],
];
const insensitive = new Set(spellings.slice(6, -2));
const patterns = spellings.map(
  (spelling) =>
    [
      new RegExp(
        `(?<![\\p{L}\\p{N}.,:/+-])${spelling[0]}(?![\\p{L}\\p{N}])`,
        insensitive.has(spelling) ? 'giu' : 'gu',
      ),
      spelling[1],
    ] as const,
);

function spelledIn(text: string): readonly SpelledTime[] {
  const found: SpelledTime[] = [];
  for (const [pattern, meant] of patterns) {
    for (const match of text.matchAll(pattern)) {
      const span = { start: match.index, end: match.index + match[0].length };
      if (found.every((one) => one.end <= span.start || one.start >= span.end))
        found.push({ ...span, meant: meant(match) });
    }
  }
  return found;
}

/** A value with its times as the notation writes them, `speed 1 for 4 Min.`; `undefined` where it holds none in other words. */
export function timesAsUsual(text: string): string | undefined {
  const spelled = [...spelledIn(text)].sort((one, other) => other.start - one.start);
  if (spelled.length === 0) return undefined;
  return spelled.reduce(
    (whole, { start, end, meant }) => whole.slice(0, start) + meant + whole.slice(end),
    text,
  );
}

/**
 * The tokens of a step in which each time that is spelled otherwise, `20 Min`, `1h30m`, `half an hour`, is one token that says how long it is, and
 * the finding for the first of them; its fix writes them all.
 */
export function withSpelledTimes(
  line: string,
  tokens: readonly IToken[],
): { readonly tokens: readonly IToken[]; readonly problem?: SyntaxProblem } {
  const [from, to] = [firstOf(tokens).startOffset, t.endOf(lastOf(tokens))];
  const taken = spelledIn(line.slice(0, to)).flatMap((spelled) => {
    const within = tokens.filter((one) => one.startOffset >= spelled.start && t.endOf(one) <= spelled.end);
    const [first, last] = [within[0], within.at(-1)];
    const isWhole =
      first !== undefined &&
      last !== undefined &&
      first.startOffset === spelled.start &&
      t.endOf(last) === spelled.end;
    const read = t.cutLine(spelled.meant).meaning[0];
    const quantity = read === undefined ? undefined : t.quantityOf(read);
    if (!isWhole || spelled.start < from || quantity === undefined) return [];
    if (within.some(({ tokenType }) => tokenType === t.Quoted)) return [];
    const image = line.slice(spelled.start, spelled.end);
    const payload = { ...quantity, start: spelled.start, end: spelled.end };
    return [{ spelled, token: { ...read!, image, startOffset: spelled.start, payload } }];
  });
  const [first] = [...taken].sort((one, other) => one.spelled.start - other.spelled.start);
  if (first === undefined) return { tokens };
  // `20 m` is on its way to `20 min`, where it would be unread again for a letter.
  const whole = taken.filter(({ token }) => !/^\d+\s*m$/.test(token.image));
  const merged = tokens.flatMap((token) => {
    const within = whole.find(
      ({ spelled }) => token.startOffset >= spelled.start && t.endOf(token) <= spelled.end,
    );
    if (within === undefined) return [token];
    return within.spelled.start === token.startOffset ? [within.token] : [];
  });
  const { spelled, token } = first;
  const said = message('missing-unit.time-in-words', { written: token.image, meant: spelled.meant });
  const fix = writeFix(spelled, spelled.meant, true);
  const edits = taken.map((one) => ({
    start: one.spelled.start,
    end: one.spelled.end,
    insert: one.spelled.meant,
  }));
  return { tokens: merged, problem: problem('missing-unit', said, spelled, { ...fix, edits }) };
}
