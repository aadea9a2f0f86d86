import { findIngredient } from '../../model/found-ingredient.ts';
import { partsOf } from '../../model/mentions.ts';
import type { Scope } from '../../model/scope.ts';
import {
  type AmountForm,
  amountForms,
  besideForms,
  headerForms,
  patternsOfForm,
  plannedForms,
  stepPattern,
} from '../../syntax/line-forms.ts';
import { followPattern, type Match, type Pattern, patternOf } from '../../syntax/line-pattern.ts';
import { sectionAt } from '../../syntax/line-place.ts';
import { nameBetween } from '../../syntax/name-reading.ts';
import type { Property } from '../../syntax/shared-properties.ts';
import type { Block, Name, SectionKind, Token } from '../../syntax/tree.ts';
import { findProperty, holdsIngredients } from '../../syntax/vocabulary.ts';
import { elementAt, firstOf, lastOf } from '../../text/element.ts';
import type { Message } from '../../words/message.ts';

/** One form that a half-typed line may take. */
export interface LineReading {
  readonly pattern: Pattern;
  readonly match: Match | undefined;
  readonly meaning?: Message;
}

/** The line at a cursor as far as it is written: what it begins with, and the forms that what follows may take. */
export interface LineSoFar {
  /** What stands before the forms, as it is to be shown: `water`, `dough temperature`; empty for a header. */
  readonly head: string;
  /** Tokens between the head and the cursor, without blanks. */
  readonly tokens: readonly Token[];
  /** The cursor stands right behind the last of them, which may be half typed. */
  readonly isTouching: boolean;
  readonly readings: readonly LineReading[];
  readonly property?: Property;
}

/** How the line at a cursor may go on; `undefined` in comments, notes and blank lines, and where nobody can tell. */
export function lineSoFar(block: Block, line: number, column: number, scope: Scope): LineSoFar | undefined {
  const parsed = block.lines[line];
  const section = sectionAt(block, line);
  if (parsed === undefined || section === undefined || section.kind === 'unknown') return undefined;
  const { kind } = section;
  const { statement } = parsed;
  const before = parsed.tokens.filter(
    (token) => token.kind !== 'blank' && token.kind !== 'comment' && token.start < column,
  );
  const comment = parsed.tokens.find((token) => token.kind === 'comment');
  if (before.length === 0 || (comment !== undefined && column > comment.start)) return undefined;
  const isTouching = lastOf(before).end >= column;
  const made = (head: string, tokens: readonly Token[], forms: readonly Form[], property?: Property) => ({
    ...{ head, tokens, isTouching },
    readings: forms.map(({ pattern, meaning }) => {
      const read = patternOf(pattern);
      const match = followPattern(read, tokens);
      return { pattern: read, match, ...(meaning === undefined ? {} : { meaning }) };
    }),
    ...(property === undefined ? {} : { property }),
  });
  switch (statement.kind) {
    case 'header': {
      if (statement.section === 'unknown') return undefined;
      const tokens = before.filter((token) => token.kind !== 'colon');
      return tokens.length < before.length
        ? undefined
        : made('', tokens, headerForms[statement.section].map(plain));
    }
    case 'property': {
      const property = findProperty(kind, statement.property);
      if (property === undefined || column <= statement.keyword.end) return undefined;
      const rest = before.filter((token) => token.start >= statement.keyword.end && token.kind !== 'colon');
      const tokens = mayBeginWithFor.has(property.form) && isFor(rest[0]) ? rest.slice(1) : rest;
      return made(property.word, tokens, patternsOfForm[property.form].map(plain), property);
    }
    case 'step': {
      const word = parsed.tokens.find((token) => token.start >= statement.words.start)!;
      // A step nobody knows is words; its first comma, time or temperature ends them.
      const end =
        statement.known === undefined || statement.known === 'enclose' ? statement.words.end : word.end;
      const headEnd = statement.known === 'enclose' ? word.end : end;
      if (column <= headEnd) return undefined;
      const head = parsed.text.slice(word.start, headEnd);
      const tokens = before.filter((token) => token.start >= headEnd && !isFor(token));
      return made(head, tokens, [plain(stepPattern(statement.known ?? ''))]);
    }
    case 'ingredient':
    case 'planned':
    case 'unreadable': {
      const forms = holdsIngredients(kind) ? formsOfAmount : kind === 'plan' ? formsOfPlan : undefined;
      const name =
        forms === undefined
          ? undefined
          : nameBefore(parsed.text.slice(0, column), before, block, scope, kind);
      if (forms === undefined || name === undefined || column <= name.end) return undefined;
      const tokens = before.filter((token) => token.start >= name.end);
      return made(name.text, tokens, forms(kind, name, block, scope));
    }
    default:
      return undefined;
  }
}

interface Form {
  readonly pattern: string;
  readonly meaning?: Message;
}

const plain = (pattern: string): Form => ({ pattern });
const isFor = (token: Token | undefined): boolean => token?.text.toLowerCase() === 'for';
const mayBeginWithFor: ReadonlySet<string> = new Set(['duration', 'heldAt']);

const formsOfPlan = (): readonly AmountForm[] => plannedForms;

/** The amounts that fit what the name is; all of them where nobody knows it. */
function formsOfAmount(kind: SectionKind, name: Name, block: Block, scope: Scope): readonly AmountForm[] {
  if (kind === 'filling' || kind === 'topping' || kind === 'bath') return besideForms;
  if (partsOf(block).has(name.folded))
    return amountForms.filter(({ of, measured }) => !measured && (of === undefined || of === 'part'));
  const found = findIngredient(name, scope);
  if (found.kind !== 'found') return amountForms;
  const { isFlour, role } = found.ingredient;
  return amountForms.filter(
    ({ of }) => of === undefined || (of === 'flour' && isFlour) || (of === 'water' && role === 'water'),
  );
}

/**
 * The name that a line begins with: the longest known one that stands there whole, else all words before a gap of two
 * blanks or before the amount. Nothing while an unknown name may go on.
 */
function nameBefore(
  text: string,
  before: readonly Token[],
  block: Block,
  scope: Scope,
  kind: SectionKind,
): Name | undefined {
  const first = firstOf(before);
  for (let count = before.length; count > 0; count--) {
    const last = elementAt(before, count - 1);
    if (last.kind === 'comma') continue;
    const name = nameBetween(text, first.start, last.end);
    if (isKnown(name, block, scope, kind)) return name;
  }
  const gap = before.findIndex((token, index) => {
    const next = before[index + 1];
    return text.slice(token.end, next?.start ?? text.length).length >= 2 || next?.kind === 'quantity';
  });
  return gap < 0 || elementAt(before, gap).kind === 'quantity'
    ? undefined
    : nameBetween(text, first.start, elementAt(before, gap).end);
}

function isKnown(name: Name, block: Block, scope: Scope, kind: SectionKind): boolean {
  if (name.folded === '') return false;
  if (kind === 'plan') return scope.find('formula', name.folded).length > 0;
  return partsOf(block).has(name.folded) || findIngredient(name, scope).kind !== 'unknown';
}
