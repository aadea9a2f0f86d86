import { type CustomPatternMatcherReturn, createToken, type IToken, Lexer, type TokenType } from 'chevrotain';
import { elementAt, entryOf } from '../text/element.ts';
import { scanQuantity } from './quantity.ts';
import type { Quantity, QuantityKind, Token, TokenKind } from './tree.ts';

/**
 * The tokens of one line. The library's lexer drops the Unicode flag of plain patterns, so letters of any script are
 * matched by functions with sticky patterns of their own.
 */

const sticky = (source: string) => new RegExp(source, 'uy');
const blankPattern = sticky('[ \\t\\u00A0\\u1680\\u2000-\\u200A\\u202F\\u205F\\u3000\\uFEFF]+');
const wordPattern = sticky(
  "[\\p{L}\\p{N}\\p{M}'‘’\\u02BC\\u2032.%&/+\\-\\u2010-\\u2015−\\uFE63\\uFF0D\\u200C\\u200D]+",
);
const unknownPattern = sticky('[\\s\\S]');

const matcher = (pattern: RegExp) => ({
  exec: (text: string, offset: number) => {
    pattern.lastIndex = offset;
    return pattern.exec(text);
  },
  line_breaks: false,
});

interface Custom {
  readonly exec: (
    text: string,
    offset: number,
    matched: IToken[],
  ) => CustomPatternMatcherReturn | RegExpExecArray | null;
  readonly line_breaks: boolean;
  readonly start_chars_hint?: (string | number)[];
}
const token = (name: string, custom: Custom, categories?: TokenType[]): TokenType =>
  createToken({
    name,
    pattern: custom.exec as never,
    line_breaks: custom.line_breaks,
    ...(custom.start_chars_hint ? { start_chars_hint: custom.start_chars_hint } : {}),
    ...(categories ? { categories } : {}),
  });
/** A type that no pattern makes: words and quantities are given it once the whole line is cut. */
const kind = (name: string, ...categories: TokenType[]): TokenType =>
  createToken({ name, pattern: Lexer.NA, categories });

/** What may be part of a name. */
export const NamePart = kind('NamePart');
export const AnyQuantity = kind('AnyQuantity');

export const Blank = token('Blank', matcher(blankPattern));
const isBlank = (text: string, at: number): boolean => {
  blankPattern.lastIndex = at;
  return blankPattern.test(text);
};

export const Comment = token('Comment', {
  exec: (text, offset) => {
    if (text[offset] !== '#' || (offset > 0 && !isBlank(text, offset - 1))) return null;
    return [text.slice(offset)];
  },
  line_breaks: false,
  start_chars_hint: ['#'],
});

export const Quoted = token(
  'Quoted',
  {
    exec: (text, offset) => {
      if (text[offset] !== '"') return null;
      const close = text.indexOf('"', offset + 1);
      return [close < 0 ? text.slice(offset) : text.slice(offset, close + 1)];
    },
    line_breaks: false,
    start_chars_hint: ['"'],
  },
  [NamePart],
);

const beforeQuantity = sticky('[ \\t\\u00A0\\u1680\\u2000-\\u200A\\u202F\\u205F\\u3000\\uFEFF,(:"]');
export const QuantityToken = token('Quantity', {
  exec: (text, offset, matched) => {
    if (offset > 0) {
      beforeQuantity.lastIndex = offset - 1;
      if (!beforeQuantity.test(text)) return null;
    }
    let before = matched.length - 1;
    while (before >= 0 && elementAt(matched, before).tokenType === Blank) before--;
    const afterSpeed = before >= 0 && elementAt(matched, before).image.toLowerCase() === 'speed';
    const quantity = scanQuantity(text, offset, afterSpeed);
    if (quantity === undefined) return null;
    const result: CustomPatternMatcherReturn = [text.slice(offset, quantity.end)];
    result.payload = quantity;
    return result;
  },
  line_breaks: false,
  start_chars_hint: [...'0123456789-−+½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞'],
});

export const Comma = createToken({ name: 'Comma', pattern: ',' });
export const Colon = createToken({ name: 'Colon', pattern: ':' });
export const LeftParen = createToken({ name: 'LeftParen', pattern: '(' });
export const RightParen = createToken({ name: 'RightParen', pattern: ')' });
export const Word = token('Word', matcher(wordPattern), [NamePart]);
/** Last, so that no text is ever dropped: one character that belongs to nothing. */
export const Unknown = token('Unknown', matcher(unknownPattern));
/** The words of a note, taken as they are. */
export const Raw = kind('Raw');

export const Of = kind('Of', Word, NamePart);
export const From = kind('From', Word, NamePart);
export const At = kind('At', Word, NamePart);
export const For = kind('For', Word, NamePart);
export const To = kind('To', Word, NamePart);
export const All = kind('All', Word, NamePart);
export const Baked = kind('Baked', Word, NamePart);
export const Remaining = kind('Remaining', Word, NamePart);
export const Balance = kind('Balance', Word, NamePart);
export const Hydration = kind('Hydration', Word, NamePart);
export const Effective = kind('Effective', Word, NamePart);
export const Flour = kind('Flour', Word, NamePart);
export const Warms = kind('Warms', Word, NamePart);
export const Develops = kind('Develops', Word, NamePart);
export const Moisture = kind('Moisture', Word, NamePart);
export const Within = kind('Within', Word, NamePart);
export const A = kind('A', Word, NamePart);
export const In = kind('In', Word, NamePart);
export const By = kind('By', Word, NamePart);
export const Hand = kind('Hand', Word, NamePart);
const keywords: Readonly<Record<string, TokenType>> = {
  of: Of,
  from: From,
  at: At,
  for: For,
  to: To,
  all: All,
  baked: Baked,
  remaining: Remaining,
  balance: Balance,
  hydration: Hydration,
  effective: Effective,
  flour: Flour,
  warms: Warms,
  develops: Develops,
  moisture: Moisture,
  within: Within,
  a: A,
  in: In,
  by: By,
  hand: Hand,
};

export const Mass = kind('Mass', AnyQuantity);
export const Volume = kind('Volume', AnyQuantity);
export const Percent = kind('Percent', AnyQuantity);
export const Count = kind('Count', AnyQuantity);
export const Duration = kind('Duration', AnyQuantity);
export const Temperature = kind('Temperature', AnyQuantity);
export const Turns = kind('Turns', AnyQuantity);
export const Times = kind('Times', AnyQuantity);
export const Energy = kind('Energy', AnyQuantity);
export const Warming = kind('Warming', AnyQuantity);
export const Density = kind('Density', AnyQuantity);
export const Money = kind('Money', AnyQuantity);
export const DateToken = kind('Date', AnyQuantity);
export const Clock = kind('Clock', AnyQuantity);
export const Bare = kind('Bare', AnyQuantity, NamePart);
export const Range = kind('Range', AnyQuantity);
export const Grouped = kind('Grouped', AnyQuantity);
export const Beyond = kind('Beyond', AnyQuantity);
const quantityTypes: Readonly<Record<QuantityKind, TokenType>> = {
  mass: Mass,
  volume: Volume,
  fraction: Percent,
  count: Count,
  duration: Duration,
  temperature: Temperature,
  turns: Turns,
  times: Times,
  energy: Energy,
  warming: Warming,
  density: Density,
  money: Money,
  date: DateToken,
  clock: Clock,
  bare: Bare,
  range: Range,
  grouped: Grouped,
  beyond: Beyond,
};

const cut: readonly TokenType[] = [
  Blank,
  Comment,
  Quoted,
  QuantityToken,
  Comma,
  Colon,
  LeftParen,
  RightParen,
  Word,
  Unknown,
];
export const vocabulary: TokenType[] = [
  NamePart,
  AnyQuantity,
  ...cut,
  Raw,
  ...Object.values(keywords),
  ...Object.values(quantityTypes),
];

const lexer = new Lexer([...cut], {
  positionTracking: 'onlyOffset',
  ensureOptimizations: false,
  skipValidations: true,
});
const kinds = new Map<TokenType, TokenKind>([
  [Blank, 'blank'],
  [Comment, 'comment'],
  [Quoted, 'quoted'],
  [QuantityToken, 'quantity'],
  [Comma, 'comma'],
  [Colon, 'colon'],
  [LeftParen, 'leftParen'],
  [RightParen, 'rightParen'],
  [Word, 'word'],
  [Unknown, 'unknown'],
]);

/** A line cut into tokens: all of them for the tree, and those with a meaning for the grammar. */
export interface CutLine {
  readonly tokens: Token[];
  readonly meaning: IToken[];
  readonly comment?: Token;
}

/** Cuts one line. Every character of the line is in exactly one token. */
export function cutLine(text: string): CutLine {
  const tokens: Token[] = [];
  const meaning: IToken[] = [];
  let comment: Token | undefined;
  for (const one of lexer.tokenize(text).tokens) {
    const end = one.startOffset + one.image.length;
    const base = { kind: entryOf(kinds, one.tokenType), text: one.image, start: one.startOffset, end };
    const made: Token = one.payload === undefined ? base : { ...base, quantity: one.payload as Quantity };
    tokens.push(made);
    if (one.tokenType === Comment) comment = made;
    if (one.tokenType === Blank || one.tokenType === Comment) continue;
    meaning.push(one);
    if (one.tokenType === Word) retype(one, keywords[one.image.toLowerCase()]);
    else if (one.tokenType === QuantityToken) retype(one, quantityTypes[(one.payload as Quantity).kind]);
  }
  return comment === undefined ? { tokens, meaning } : { tokens, meaning, comment };
}

function retype(token: IToken, type: TokenType | undefined): void {
  if (type === undefined) return;
  token.tokenType = type;
  token.tokenTypeIdx = type.tokenTypeIdx!;
}

export const endOf = (token: IToken): number => token.startOffset + token.image.length;
export const quantityOf = (token: IToken): Quantity => token.payload as Quantity;
