import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { runInNewContext } from 'node:vm';
import { projectFolder } from '../editors/places.ts';

/** A rule as tree-sitter writes it into `grammar.json`, after its documentation. */
export type Rule =
  | { readonly type: 'SYMBOL'; readonly name: string }
  | { readonly type: 'STRING' | 'PATTERN'; readonly value: string }
  | { readonly type: 'SEQ' | 'CHOICE'; readonly members: readonly Rule[] }
  | { readonly type: 'BLANK' }
  | { readonly type: 'REPEAT' | 'REPEAT1' | 'TOKEN'; readonly content: Rule }
  | { readonly type: 'FIELD'; readonly name: string; readonly content: Rule }
  | { readonly type: 'ALIAS'; readonly value: string; readonly named: boolean; readonly content: Rule }
  | { readonly type: 'PREC'; readonly value: number; readonly content: Rule };

export interface Grammar {
  readonly name: string;
  readonly word: string;
  readonly extras: readonly Rule[];
  readonly rules: Readonly<Record<string, Rule>>;
}

/** The folder that `tree-sitter generate` is started in. */
export const grammarFolder = join(projectFolder, 'syntaxes', 'tree-sitter');

/** Reads `grammar.js` with the words of tree-sitter's grammar language, and refuses what is none of them. */
export function readGrammar(): Grammar {
  const module: { exports?: Grammar } = {};
  runInNewContext(readFileSync(join(grammarFolder, 'grammar.js'), 'utf8'), { module, ...language });
  if (module.exports === undefined) throw new Error('The file exports no grammar.');
  return module.exports;
}

type Written = string | RegExp | Rule;
type Symbols = Record<string, Rule>;

const isPattern = (one: object): one is RegExp => Object.prototype.toString.call(one) === '[object RegExp]';

function ruleOf(one: Written | undefined): Rule {
  if (one === undefined) throw new Error('A rule is undefined.');
  if (typeof one === 'string') return { type: 'STRING', value: one };
  if (isPattern(one)) return { type: 'PATTERN', value: one.source };
  return one;
}

const symbols = new Proxy<Symbols>({}, { get: (_, name) => ({ type: 'SYMBOL', name: String(name) }) });
const prec = (value: number, rule: Written): Rule => ({ type: 'PREC', value, content: ruleOf(rule) });

const language = {
  seq: (...all: Written[]): Rule => ({ type: 'SEQ', members: all.map(ruleOf) }),
  choice: (...all: Written[]): Rule => ({ type: 'CHOICE', members: all.map(ruleOf) }),
  optional: (one: Written): Rule => ({ type: 'CHOICE', members: [ruleOf(one), { type: 'BLANK' }] }),
  repeat: (one: Written): Rule => ({ type: 'REPEAT', content: ruleOf(one) }),
  repeat1: (one: Written): Rule => ({ type: 'REPEAT1', content: ruleOf(one) }),
  token: (one: Written): Rule => ({ type: 'TOKEN', content: ruleOf(one) }),
  field: (name: string, one: Written): Rule => ({ type: 'FIELD', name, content: ruleOf(one) }),
  alias: (one: Written, to: Rule): Rule => {
    if (to?.type !== 'SYMBOL') throw new Error('An alias is a symbol here.');
    return { type: 'ALIAS', value: to.name, named: true, content: ruleOf(one) };
  },
  prec,
  grammar: (one: {
    readonly name: string;
    readonly word: (symbols: Symbols) => { readonly name: string };
    readonly extras: (symbols: Symbols) => Written[];
    readonly rules: Readonly<Record<string, (symbols: Symbols) => Written>>;
  }): Grammar => ({
    name: one.name,
    word: one.word(symbols).name,
    extras: one.extras(symbols).map(ruleOf),
    rules: Object.fromEntries(Object.entries(one.rules).map(([name, rule]) => [name, ruleOf(rule(symbols))])),
  }),
};
