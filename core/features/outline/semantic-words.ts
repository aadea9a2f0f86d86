import type { Statement, Token } from '../../syntax/tree.ts';
import type { Span } from '../../text/span.ts';

export type SemanticKind =
  /** A bakery or a plan: what gathers others. */
  | 'collection'
  | 'formula'
  | 'part'
  | 'flour'
  | 'ingredient'
  /** A name for all of a kind: `flour` or `fat` in a `load`. */
  | 'role'
  | 'mixer'
  /** A name that nobody has defined, or that several have. */
  | 'unknownName'
  | 'property'
  /** A word for something that is done: a step, or a line of a mixing programme. */
  | 'step'
  /** One of the words that a property allows. */
  | 'choice'
  | 'keyword'
  | 'number'
  | 'unit'
  | 'text'
  | 'comment';

/** `declaration`: the place that gives the name. `catalogue`: known without being defined in a file. */
export type SemanticModifier = 'declaration' | 'catalogue';

/** A stretch that has been given a kind. */
export interface Claim extends Span {
  readonly kind: SemanticKind;
  readonly modifiers?: readonly SemanticModifier[];
}

const no = (): boolean => false;
const among =
  (...words: readonly string[]) =>
  (word: string): boolean =>
    words.includes(word);

const inHeader = among('in', 'by', 'hand');
const inVariant = among('like');
const inProperty = among(
  ...[
    'of',
    'at',
    'for',
    'to',
    'from',
    'all',
    'baked',
    'remaining',
    'flour',
    'warms',
    'develops',
    'moisture',
    'within',
  ],
  ...['but', 'except', 'everything', 'the', 'rest', 'dry', 'matter'],
);
const inAmount = among(
  ...['a', 'piece', 'at', 'to', 'baked', 'balance', 'remaining', 'hydration', 'effective', 'ready'],
  ...['of', 'all', 'flour'],
);
const inStep = among('at', 'for', 'fold', 'folds', 'every', 'and');

/** Which words of a line, names and values aside, are words of its form. */
export function fillWords(statement: Statement): (word: string) => boolean {
  switch (statement.kind) {
    case 'header':
      if (statement.base !== undefined) return inVariant;
      return statement.section === 'unknown' ? no : inHeader;
    case 'property':
      return statement.property === 'mixed' ? inHeader : inProperty;
    case 'ingredient':
    case 'planned':
      return inAmount;
    case 'step':
      return inStep;
    default:
      return no;
  }
}

const numeric = /^[-−+]?[\d½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞][\d½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞.,:/–-]*/;

/** A quantity as its numbers and its units: `1 h 30 min` is two of each. */
export function numbersAndUnits({ text, start }: Token): Claim[] {
  return [...text.matchAll(/[^\s\u00A0\u202F]+/g)].flatMap(({ 0: piece, index }): Claim[] => {
    const from = start + index;
    const number = numeric.exec(piece)?.[0].length ?? 0;
    const end = from + piece.length;
    return [
      ...(number > 0 ? [{ start: from, end: from + number, kind: 'number' as const }] : []),
      ...(number < piece.length ? [{ start: from + number, end, kind: 'unit' as const }] : []),
    ];
  });
}
