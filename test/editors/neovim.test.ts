import { beforeAll, describe, expect, it } from 'vitest';
import {
  lineAfterLast,
  namesMass,
  saltLine,
  unitlessMessage,
  unknownIngredient,
  waterGrams,
  waterLine,
} from './expectations.ts';
import { runInNeovim, type SeenByNeovim } from './neovim.ts';

const neovimError = 1;
const neovimWarning = 2;

describe('the server over stdio in Neovim', () => {
  let seen: SeenByNeovim;
  beforeAll(async () => {
    seen = await runInNeovim();
  });

  it('answers everything in time', () => {
    expect(seen.problems).toEqual([]);
  });

  it('tells a number without a unit and an unknown ingredient, each on its line', () => {
    const found = (seen.diagnostics ?? []).map(({ line, severity }) => ({ line, severity }));
    expect(found).toEqual([
      { line: saltLine, severity: neovimError },
      { line: lineAfterLast, severity: neovimWarning },
    ]);
    expect(seen.diagnostics?.[0]?.message).toMatch(unitlessMessage);
    expect(seen.diagnostics?.[1]?.message).toContain(unknownIngredient);
    expect(seen.diagnostics?.every(({ code }) => code)).toBe(true);
  });

  it('takes the findings back when the lines are cured', () => {
    expect(seen.diagnostics?.length).toBeGreaterThan(0);
    expect(seen.diagnostics_after_cure).toEqual([]);
  });

  it('tells the mass of the water in a hover', () => {
    const text = JSON.stringify(seen.hover_after_cure?.contents ?? 'nothing');
    expect(namesMass(text, waterGrams(0.69)), `${text} does not name ${waterGrams(0.69)} g`).toBe(true);
  });

  it('tells what the words are: the name of the formula first after its keyword, and one name that nobody knows', () => {
    const types = (seen.tokens?.data ?? []).flatMap((number, at) =>
      at % 5 === 3 ? [seen.legend!.tokenTypes[number]] : [],
    );
    expect(types.slice(0, 2)).toEqual(['keyword', 'class']);
    // A name that nobody knows, and the line without its unit, which reads as a name.
    expect(types).toContain('unknownName');
    expect(types).toContain('type');
  });

  it('tells the forms of the line at the cursor', () => {
    const { signatures = [], activeSignature = -1 } = seen.signature ?? {};
    expect(signatures[activeSignature]?.label).toBe('yield  PIECES of MASS [baked]');
  });

  it('tells what a hint stands on, as Neovim cannot ask for it later', () => {
    const header = seen.hints?.find(({ position }) => position.line === 0);
    expect(header?.label).toMatch(/hydration|dough/);
    expect(header?.tooltip?.value).toContain('yield 24 pieces of 880 g');
  });

  it('offers a catalogue name on a half-typed line', () => {
    const answer = seen.completion;
    const items = answer && 'items' in answer ? answer.items : (answer ?? []);
    expect(items.map(({ label }) => label)).toContain('butter');
  });

  it('takes an action of the refactor menu: the water is in grams then', () => {
    expect(seen.action).toContain('in grams');
    const line = seen.lines_after_action?.[waterLine - 1] ?? '';
    expect(namesMass(line, waterGrams(0.69)), line).toBe(true);
    expect(line).not.toContain('%');
  });

  it('ends with code 0 when the client stops it', () => {
    expect(seen.exit_code).toBe(0);
  });
});
