import { findIngredient } from '../../model/found-ingredient.ts';
import { chosenName, type Meaning, meaningOf, type PlacedBlock } from '../../model/meaning.ts';
import { type Mention, mentionsOf } from '../../model/mentions.ts';
import type { Definition, Scope } from '../../model/scope.ts';
import { sectionAt } from '../../syntax/line-place.ts';
import { isReadingValue } from '../../syntax/reading-value.ts';
import type { Name, ParsedLine, SectionKind, Statement, Token } from '../../syntax/tree.ts';
import { programmeWords } from '../../syntax/vocabulary.ts';
import { elementAt } from '../../text/element.ts';
import type { Span } from '../../text/span.ts';
import type { Claim, SemanticKind, SemanticModifier } from './semantic-words.ts';
import { fillWords, numbersAndUnits } from './semantic-words.ts';

/** What a stretch of a line is; a server gives each its name in the protocol. */
/** What a stretch of a line is; a server gives each its name in the protocol. */
/** A stretch of one line, in UTF-16 columns. Tokens are in the order of the text, and none lies over another. */
export interface SemanticToken {
  readonly line: number;
  readonly start: number;
  readonly length: number;
  readonly kind: SemanticKind;
  readonly modifiers: readonly SemanticModifier[];
}

/** What every stretch of a block is, with lines counted in the block: names by what they mean, the rest by its words. */
export function semanticTokensOf(at: PlacedBlock, scope: Scope): readonly SemanticToken[] {
  const names = new Map<number, Claim[]>();
  for (const mention of mentionsOf(at.block)) {
    const { start, end } = chosenName(at, mention, scope);
    const claim: Claim = { start, end, ...kindOfName(at, mention, scope) };
    names.set(mention.line, [...(names.get(mention.line) ?? []), claim]);
  }
  // A trial keeps a programme too, among what it measured.
  const isMixed = (line: number): boolean => {
    const statement = at.block.lines[line]?.statement;
    if (statement?.kind !== 'property' || !programmeWords.has(statement.property)) return false;
    return ['mix', 'trial'].includes(sectionAt(at.block, line)?.kind ?? '');
  };
  return at.block.lines.flatMap((parsed, line) =>
    claimsOf(parsed, names.get(line) ?? [], isMixed(line)).map(({ start, end, kind, modifiers }) => ({
      ...{ line, start, length: end - start, kind },
      modifiers: modifiers ?? [],
    })),
  );
}

/** The claims on a line: names win over the words of its form, and those over single tokens. */
function claimsOf(parsed: ParsedLine, names: readonly Claim[], isMixed: boolean): Claim[] {
  const taken: Claim[] = [];
  const isFree = ({ start, end }: Span): boolean =>
    start < end && taken.every((one) => end <= one.start || one.end <= start);
  for (const claim of [...names, ...formClaims(parsed, isMixed)]) if (isFree(claim)) taken.push(claim);
  const isWord = fillWords(parsed.statement);
  for (const token of parsed.tokens) {
    if (taken.some((one) => token.start < one.end && one.start < token.end)) continue;
    taken.push(...tokenClaims(parsed, token, isWord));
  }
  return taken.sort((one, other) => one.start - other.start);
}

function formClaims({ statement, text, tokens }: ParsedLine, isMixed: boolean): Claim[] {
  switch (statement.kind) {
    case 'header':
      return statement.section === 'unknown'
        ? []
        : [{ ...statement.keyword, kind: 'keyword' }, ...trialWords(tokens)];
    case 'property': {
      const { keyword, value } = statement;
      const said: Claim[] = [{ ...keyword, kind: isMixed ? 'step' : 'property' }];
      if (value?.form === 'word') said.push({ ...value.span, kind: 'choice' });
      if (value?.form === 'names') said.push(...value.names.map((name) => choice(name)));
      if (isReadingValue(value)) {
        if (value.stage !== undefined) said.push(choice(value.stage));
        said.push(...(value.feel ?? []).map(choice));
      }
      return said;
    }
    case 'step': {
      if (statement.known === undefined) return [];
      const { start } = statement.words;
      const word = /^\S*/.exec(text.slice(start))![0].length;
      return [{ start, end: start + word, kind: 'step' }];
    }
    default:
      return [];
  }
}

const choice = ({ start, end }: Name): Claim => ({ start, end, kind: 'choice' });

/** The words of one's own behind the date of a trial. */
function trialWords(tokens: readonly Token[]): Claim[] {
  const comma = tokens.findIndex(({ kind }) => kind === 'comma');
  const own = comma < 0 ? [] : tokens.slice(comma + 1).filter(({ kind }) => ownKinds.has(kind));
  const [first, last] = [own[0], own.at(-1)];
  return first === undefined || last === undefined
    ? []
    : [{ start: first.start, end: last.end, kind: 'text' }];
}

const ownKinds: ReadonlySet<Token['kind']> = new Set(['word', 'quoted', 'quantity']);

function tokenClaims(
  { statement, accept }: ParsedLine,
  token: Token,
  isWord: (word: string) => boolean,
): Claim[] {
  switch (token.kind) {
    case 'comment':
      return accept === undefined ? [trimmedClaim(token, 'comment')] : acceptClaims(token, accept.codes);
    case 'quantity':
      return isRead(statement) ? numbersAndUnits(token) : [];
    case 'quoted':
      return isRead(statement) ? [trimmedClaim(token, 'text')] : [];
    case 'raw':
      return token.text.trim() === '' ? [] : [trimmedClaim(token, 'text')];
    case 'word':
      if (statement.kind === 'note') return [{ ...spanOf(token), kind: 'property' }];
      return isWord(token.text.toLowerCase()) ? [{ ...spanOf(token), kind: 'keyword' }] : [];
    default:
      return [];
  }
}

const spanOf = ({ start, end }: Span): Span => ({ start, end });

/** The lines of a section nobody knows are kept and mean nothing. */
const isRead = ({ kind }: Statement): boolean => kind !== 'silent';

/** A token without the blanks at its ends. */
function trimmedClaim({ start, text }: Token, kind: SemanticKind): Claim {
  const from = start + text.length - text.trimStart().length;
  return { start: from, end: Math.max(from, start + text.trimEnd().length), kind };
}

/** `# accept CODE: reason`: the word and the codes stand out of the comment. */
function acceptClaims(comment: Token, codes: readonly { readonly span: Span }[]): Claim[] {
  const word = comment.start + comment.text.toLowerCase().indexOf('accept');
  const within: Claim[] = [
    { start: word, end: word + 'accept'.length, kind: 'keyword' },
    ...codes.map(({ span }): Claim => ({ ...span, kind: 'choice' })),
  ];
  const claims: Claim[] = [];
  let from = comment.start;
  for (const claim of within) {
    claims.push(...commentBetween(comment, from, claim.start), claim);
    from = claim.end;
  }
  return [...claims, ...commentBetween(comment, from, comment.end)];
}

function commentBetween({ text, start: at }: Token, from: number, to: number): Claim[] {
  const words = text.slice(from - at, to - at);
  const start = from + words.length - words.trimStart().length;
  const end = from + words.trimEnd().length;
  return start < end ? [{ start, end, kind: 'comment' }] : [];
}

const kindOfSection: Readonly<Record<SectionKind, SemanticKind>> = {
  ...{
    formula: 'formula',
    mixer: 'mixer',
    bakery: 'collection',
    plan: 'collection',
    experiment: 'collection',
  },
  ...{ flour: 'flour', ingredient: 'ingredient', mix: 'step', process: 'step', trial: 'text' },
  ...{
    preferment: 'part',
    soaker: 'part',
    scald: 'part',
    part: 'part',
    filling: 'part',
    topping: 'part',
    bath: 'part',
  },
};

function kindOfName(at: PlacedBlock, mention: Mention, scope: Scope): Omit<Claim, 'start' | 'end'> {
  if (mention.use === 'definition') {
    const header = elementAt(at.block.lines, mention.line).statement;
    const section = header.kind === 'header' && header.section !== 'unknown' ? header.section : 'part';
    return { kind: ingredientKind(kindOfSection[section], mention.name, scope), modifiers: ['declaration'] };
  }
  return kindOfMeaning(meaningOf(at, mention, scope), chosenName(at, mention, scope), scope);
}

function kindOfMeaning(meaning: Meaning, name: Name, scope: Scope): Omit<Claim, 'start' | 'end'> {
  switch (meaning.is) {
    case 'definition':
      return { kind: ingredientKind(kindOfDefinition(meaning.definition), name, scope) };
    case 'part':
      return { kind: 'part' };
    case 'role':
      return { kind: 'role', modifiers: ['catalogue'] };
    case 'catalogue': {
      const kind = meaning.what === 'mixer' ? 'mixer' : ingredientKind('ingredient', name, scope);
      return { kind, modifiers: ['catalogue'] };
    }
    case 'several':
    case 'unknown':
      return { kind: 'unknownName' };
  }
}

function kindOfDefinition({ kind, block }: Definition): SemanticKind {
  if (kind === 'ingredient') return block.top?.kind === 'flour' ? 'flour' : 'ingredient';
  return kindOfSection[kind];
}

/** An ingredient that counts as flour is one, whatever its section is called. */
function ingredientKind(kind: SemanticKind, name: Name, scope: Scope): SemanticKind {
  if (kind !== 'ingredient' && kind !== 'flour') return kind;
  const found = findIngredient(name, scope);
  if (found.kind !== 'found') return kind;
  return found.ingredient.isFlour ? 'flour' : 'ingredient';
}
