import { createToken, type IToken, type TokenType } from 'chevrotain';
import { scanQuantity } from './quantity.ts';
import type { Quantity, QuantityKind, Token, TokenKind } from './tree.ts';

/**
 * The tokens of one line. It is cut here and not by the library's lexer, which drops the Unicode flag of patterns, and whose
 * tables take longer to make than a file takes to read.
 */

const sticky = (source: string) => new RegExp(source, 'uy');
const blankPattern = sticky('[ \\t\\u00A0\\u1680\\u2000-\\u200A\\u202F\\u205F\\u3000\\uFEFF]+');
const wordPattern = sticky(
  "[\\p{L}\\p{N}\\p{M}'‘’\\u02BC\\u2032.%&/+\\-\\u2010-\\u2015−\\uFE63\\uFF0D\\u200C\\u200D]+",
);
const beforeQuantityPattern = sticky('[ \\t\\u00A0\\u1680\\u2000-\\u200A\\u202F\\u205F\\u3000\\uFEFF,(:"@;]');

/** A type of tokens, and those that it is one of as well. */
const kind = (name: string, ...categories: TokenType[]): TokenType => createToken({ name, categories });

/** What may be part of a name. */
export const NamePart = kind('NamePart');
export const AnyQuantity = kind('AnyQuantity');

export const Blank = kind('Blank');
export const Comment = kind('Comment');
export const Quoted = kind('Quoted', NamePart);
export const QuantityToken = kind('Quantity');
export const Comma = kind('Comma');
export const Colon = kind('Colon');
export const LeftParen = kind('LeftParen');
export const RightParen = kind('RightParen');
export const Word = kind('Word', NamePart);
/** One character that belongs to nothing, so that no text is ever dropped. */
export const Unknown = kind('Unknown');
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
  '@': At,
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

export const vocabulary: TokenType[] = [
  NamePart,
  AnyQuantity,
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
  Raw,
  ...Object.values(keywords),
  ...Object.values(quantityTypes),
];

const marks: ReadonlyMap<string, TokenType> = new Map([
  [',', Comma],
  [':', Colon],
  ['(', LeftParen],
  [')', RightParen],
]);
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
  let before: IToken | undefined;
  for (let at = 0; at < text.length; ) {
    const one = tokenAt(text, at, before);
    const end = at + one.image.length;
    at = end;
    // `yield: 24 loaves` counts as `yield 24 loaves` does.
    if (one.tokenType !== Blank && one.tokenType !== Colon) before = one;
    const base = {
      kind: kinds.get(one.tokenType) ?? 'unknown',
      text: one.image,
      start: one.startOffset,
      end,
    };
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

/** The token that begins at a place; `before` is the one before it that is no blank. */
function tokenAt(text: string, at: number, before: IToken | undefined): IToken {
  const blankEnd = endOfMatch(blankPattern, text, at);
  if (blankEnd !== undefined) return tokenOf(Blank, text, at, blankEnd);
  const first = text.charAt(at);
  if (first === '#' && (at === 0 || endOfMatch(blankPattern, text, at - 1) !== undefined))
    return tokenOf(Comment, text, at, text.length);
  if (first === '"') {
    const close = text.indexOf('"', at + 1);
    return tokenOf(Quoted, text, at, close < 0 ? text.length : close + 1);
  }
  if (at === 0 || endOfMatch(beforeQuantityPattern, text, at - 1) !== undefined) {
    const quantity = scanQuantity(text, at, before?.image.toLowerCase());
    if (quantity !== undefined)
      return { ...tokenOf(QuantityToken, text, at, quantity.end), payload: quantity };
  }
  const mark = marks.get(first);
  if (mark !== undefined) return tokenOf(mark, text, at, at + 1);
  const wordEnd = endOfMatch(wordPattern, text, at);
  if (wordEnd !== undefined) return tokenOf(Word, text, at, wordEnd);
  // `4 h @ 22 °C`: an at sign says what `at` says.
  if (first === '@') return tokenOf(Word, text, at, at + 1);
  return tokenOf(Unknown, text, at, at + ((text.codePointAt(at) ?? 0) > 0xffff ? 2 : 1));
}

function tokenOf(type: TokenType, text: string, start: number, end: number): IToken {
  return {
    image: text.slice(start, end),
    startOffset: start,
    tokenType: type,
    tokenTypeIdx: type.tokenTypeIdx ?? 0,
    isInsertedInRecovery: false,
  } as IToken;
}

function endOfMatch(pattern: RegExp, text: string, at: number): number | undefined {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : undefined;
}

function retype(token: IToken, type: TokenType | undefined): void {
  if (type === undefined) return;
  token.tokenType = type;
  token.tokenTypeIdx = type.tokenTypeIdx ?? 0;
}

export const endOf = (token: IToken): number => token.startOffset + token.image.length;
export const quantityOf = (token: IToken): Quantity => token.payload as Quantity;
