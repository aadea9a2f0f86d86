import type { Tree } from '@lezer/common';
import { buildParser } from '@lezer/generator';
import { ExternalTokenizer, type LRParser } from '@lezer/lr';
import type { Grammar, Rule } from './tree-sitter-grammar.ts';

/**
 * Makes a parser of a grammar for tree-sitter with another generator of LR parsers, so that its rules are held to be without
 * conflict and are run. Tokens are told apart as tree-sitter's documentation says: of those that may stand here the one of
 * the highest precedence, then the longest, then a word of the grammar before a pattern, then the one that stands first.
 */
export interface BuiltParser {
  readonly parse: (text: string) => Node;
  /** The same, and an error where the text is none of the grammar's. */
  readonly parseWhole: (text: string) => Node;
  readonly warnings: readonly string[];
}

/** A node of the tree: its name after aliases, and where it stands. */
export interface Node {
  readonly name: string;
  readonly start: number;
  readonly end: number;
  readonly text: string;
  readonly children: readonly Node[];
}

interface Terminal {
  readonly id: string;
  readonly pattern: RegExp;
  readonly precedence: number;
  readonly isWord: boolean;
  readonly order: number;
  /** The letter that a word of the grammar begins with, so that most need no look. */
  readonly first?: string;
}

export function buildGrammar(grammar: Grammar): BuiltParser {
  const made = new Converter(grammar);
  const warnings: string[] = [];
  let now = '';
  const parser = buildParser(made.text(), {
    warn: (message) => warnings.push(message),
    externalTokenizer: (_, terms) => tokenizer(made.terminals, terms, () => now),
  });
  const strict = parser.configure({ strict: true });
  const run = (by: LRParser, text: string): Node => {
    now = text;
    return made.nodeOf(by.parse(text), text);
  };
  return { parse: (text) => run(parser, text), parseWhole: (text) => run(strict, text), warnings };
}

function tokenizer(
  terminals: readonly Terminal[],
  terms: { [name: string]: number },
  textNow: () => string,
): ExternalTokenizer {
  return new ExternalTokenizer(
    (input, stack) => {
      const letter = textNow().charAt(input.pos).toLowerCase();
      let best: { readonly terminal: Terminal; readonly length: number } | undefined;
      for (const terminal of terminals) {
        if (terminal.first !== undefined && terminal.first !== letter) continue;
        const term = terms[terminal.id];
        if (term === undefined || !stack.canShift(term)) continue;
        terminal.pattern.lastIndex = input.pos;
        const length = terminal.pattern.exec(textNow())?.[0].length ?? 0;
        if (length === 0) continue;
        const found = { terminal, length };
        if (best === undefined || isBefore(found, best)) best = found;
      }
      if (best !== undefined) input.acceptToken(terms[best.terminal.id]!, best.length);
    },
    { contextual: true },
  );
}

type Found = { readonly terminal: Terminal; readonly length: number };
function isBefore(one: Found, other: Found): boolean {
  const [some, others] = [one.terminal, other.terminal];
  if (some.precedence !== others.precedence) return some.precedence > others.precedence;
  if (one.length !== other.length) return one.length > other.length;
  if (some.isWord !== others.isWord) return some.isWord;
  return some.order < others.order;
}

/** Writes the rules in the other generator's language, and keeps what nodes are called. */
class Converter {
  readonly terminals: Terminal[] = [];
  private readonly grammar: Grammar;
  /** What the hidden rules that only ever stand under another name are called. */
  private readonly aliasOf = new Map<string, string>();
  private readonly literals = new Map<string, string>();
  private readonly tokenNames = new Set<string>();
  private readonly keep = new Map<string, string>();

  constructor(grammar: Grammar) {
    this.grammar = grammar;
    for (const [name, rule] of Object.entries(grammar.rules)) if (isToken(rule)) this.tokenNames.add(name);
    for (const rule of Object.values(grammar.rules)) this.collectAliases(rule);
  }

  private collectAliases(rule: Rule): void {
    if (rule.type === 'ALIAS') {
      for (const inner of choices(rule.content)) {
        if (inner.type !== 'SYMBOL') throw new Error('Only rules have another name.');
        if (this.tokenNames.has(inner.name)) continue;
        const before = this.aliasOf.get(inner.name);
        if (before !== undefined && before !== rule.value) throw new Error(`${inner.name} has two names.`);
        this.aliasOf.set(inner.name, rule.value);
      }
    }
    for (const inner of membersOf(rule)) this.collectAliases(inner);
  }

  text(): string {
    const rules = Object.entries(this.grammar.rules)
      .filter(([name]) => !this.tokenNames.has(name))
      .map(
        ([name, rule]) =>
          `${name === 'source_file' ? '@top ' : ''}${this.nodeId(name)} { ${this.expression(rule)} }`,
      );
    Object.entries(this.grammar.rules).forEach(([name, rule], order) => {
      if (this.tokenNames.has(name)) this.addTerminal(this.tokenId(name), rule, order);
    });
    const skipped = this.grammar.extras.map((rule) =>
      rule.type === 'SYMBOL' ? this.tokenId(rule.name) : this.literal(rule),
    );
    const tokens = this.terminals.map(({ id }) => id).join(', ');
    return `@skip { ${skipped.join(' | ')} }\n${rules.join('\n')}\n@external tokens all from "tokens" { ${tokens} }\n`;
  }

  private nodeId(name: string): string {
    const shown = this.aliasOf.get(name) ?? (name.startsWith('_') ? undefined : name);
    const id = shown === undefined ? `hidden${name}` : `R_${name}`;
    if (shown !== undefined) this.keep.set(id, shown);
    return id;
  }

  private tokenId(name: string): string {
    // Which name a hidden word has is said where it stands; they are all shown here and told apart by what holds them.
    const isBlank = name === '_newline' || name === '_indent';
    const id = isBlank ? `blank${name}` : `T_${name}`;
    if (id.startsWith('T_')) this.keep.set(id, name);
    return id;
  }

  private literal(rule: Rule): string {
    if (rule.type !== 'STRING' && rule.type !== 'PATTERN') throw new Error(`No token: ${rule.type}`);
    const known = this.literals.get(rule.value);
    if (known !== undefined) return known;
    const id = `literal${this.literals.size}`;
    this.literals.set(rule.value, id);
    this.addTerminal(id, rule, 1000 + this.literals.size);
    return id;
  }

  private addTerminal(id: string, rule: Rule, order: number): void {
    const { source, precedence } = tokenOf(rule);
    const pattern = new RegExp(source, 'uy');
    const first = id.startsWith('T__word_') ? { first: id.charAt('T__word_'.length) } : {};
    this.terminals.push({
      id,
      pattern,
      precedence,
      isWord: 'first' in first || rule.type === 'STRING',
      order,
      ...first,
    });
  }

  private expression(rule: Rule): string {
    switch (rule.type) {
      case 'SYMBOL':
        if (this.grammar.rules[rule.name] === undefined) throw new Error(`No rule is called ${rule.name}.`);
        return this.tokenNames.has(rule.name) ? this.tokenId(rule.name) : this.nodeId(rule.name);
      case 'STRING':
      case 'PATTERN':
        return this.literal(rule);
      case 'SEQ':
        return rule.members.map((one) => this.expression(one)).join(' ');
      case 'CHOICE': {
        const some = rule.members.filter(({ type }) => type !== 'BLANK').map((one) => this.expression(one));
        return `(${some.join(' | ')})${some.length < rule.members.length ? '?' : ''}`;
      }
      case 'REPEAT':
        return `(${this.expression(rule.content)})*`;
      case 'REPEAT1':
        return `(${this.expression(rule.content)})+`;
      case 'FIELD':
      case 'ALIAS':
        return this.expression(rule.content);
      default:
        throw new Error(`${rule.type} stands where only rules do.`);
    }
  }

  nodeOf(tree: Tree, text: string): Node {
    const at = (node: { name: string; from: number; to: number }, children: readonly Node[]): Node => ({
      name: node.name === '⚠' ? 'ERROR' : (this.keep.get(node.name) ?? node.name),
      start: node.from,
      end: node.to,
      text: text.slice(node.from, node.to),
      children,
    });
    const made = (cursor: ReturnType<Tree['cursor']>): Node => {
      const { name, from, to } = cursor;
      const children: Node[] = [];
      if (cursor.firstChild()) {
        do {
          const inner = made(cursor);
          // A rule that begins with itself is one node.
          if (cursor.name === name) children.push(...inner.children);
          else children.push(inner);
        } while (cursor.nextSibling());
        cursor.parent();
      }
      return at({ name, from, to }, children);
    };
    return made(tree.cursor());
  }
}

export function membersOf(rule: Rule): readonly Rule[] {
  if ('members' in rule) return rule.members;
  return 'content' in rule ? [rule.content] : [];
}

const choices = (rule: Rule): readonly Rule[] =>
  rule.type === 'CHOICE' ? rule.members.flatMap(choices) : [rule];

const isToken = (rule: Rule): boolean =>
  rule.type === 'TOKEN' || rule.type === 'PATTERN' || rule.type === 'STRING';

/** A token as one regular expression, longest of its choices first. */
function tokenOf(rule: Rule): { readonly source: string; readonly precedence: number } {
  switch (rule.type) {
    case 'TOKEN':
      return tokenOf(rule.content);
    case 'PREC':
      return { source: tokenOf(rule.content).source, precedence: rule.value };
    case 'STRING':
      return { source: rule.value.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&'), precedence: 0 };
    case 'PATTERN':
      return { source: `(?:${rule.value})`, precedence: 0 };
    case 'SEQ':
      return { source: rule.members.map((one) => tokenOf(one).source).join(''), precedence: 0 };
    case 'CHOICE': {
      const some = rule.members.filter(({ type }) => type !== 'BLANK').map((one) => tokenOf(one).source);
      return {
        source: `(?:${some.join('|')})${some.length < rule.members.length ? '?' : ''}`,
        precedence: 0,
      };
    }
    default:
      throw new Error(`${rule.type} stands in a token.`);
  }
}
