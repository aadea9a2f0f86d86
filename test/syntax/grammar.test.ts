import { expect, it } from 'vitest';
import { checkGrammar } from '../../core/syntax/grammar.ts';

it('the statement grammar is unambiguous: the library finds nothing with all its checks on', () => {
  expect(() => checkGrammar()).not.toThrow();
});
