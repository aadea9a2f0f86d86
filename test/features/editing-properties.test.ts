import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createService, type SemanticToken } from '../../core/index.ts';
import { exampleFiles, mixedLines, wildText } from '../syntax/texts.ts';

// What an editor asks while somebody types, of any text whatever: nothing throws, and every answer lies in the text.
const uri = 'file:///quay/any.dough';
const service = createService();
service.setRoots(['file:///quay/']);
for (const { path, text } of exampleFiles()) service.setText(`file:///quay/examples/${path}`, text);

const anyText = fc.oneof(wildText, mixedLines);
const runs = { numRuns: 300 };

function tokensOf(text: string): SemanticToken[] {
  service.setText(uri, text);
  return service
    .semanticTokens(uri)
    .flatMap(({ firstLine, tokens }) => tokens.map((one) => ({ ...one, line: one.line + firstLine })));
}

function expectInOrder(text: string): number {
  const tokens = tokensOf(text);
  const lines = service.lines(uri);
  let before: SemanticToken | undefined;
  for (const one of tokens) {
    const where = `${JSON.stringify(text)}\n${JSON.stringify(one)} behind ${JSON.stringify(before)}`;
    expect(one.length, where).toBeGreaterThan(0);
    expect(one.start, where).toBeGreaterThanOrEqual(0);
    expect(one.start + one.length, where).toBeLessThanOrEqual(lines[one.line]!.length);
    if (before?.line === one.line)
      expect(one.start, where).toBeGreaterThanOrEqual(before.start + before.length);
    else expect(one.line, where).toBeGreaterThan(before?.line ?? -1);
    before = one;
  }
  return tokens.length;
}

describe('what each word is', () => {
  it('is told in order, never twice, and within its line', () => {
    let told = 0;
    fc.assert(
      fc.property(anyText, (text) => {
        told += expectInOrder(text);
      }),
      runs,
    );
    expect(told).toBeGreaterThan(1000);
  });

  it('in the examples too, where no line with words is without any but a step or a remark of one’s own', () => {
    for (const { text } of exampleFiles()) expect(expectInOrder(text)).toBeGreaterThan(5);
  });

  it('of some lines is what it is of the whole', () => {
    fc.assert(
      fc.property(mixedLines, fc.nat(40), fc.nat(10), (text, first, more) => {
        const all = tokensOf(text);
        const inside = ({ line }: { line: number }): boolean => line >= first && line <= first + more;
        const some = service
          .semanticTokens(uri, first, first + more)
          .flatMap(({ firstLine, tokens }) => tokens.map((one) => ({ ...one, line: one.line + firstLine })));
        expect(some.filter(inside)).toEqual(all.filter(inside));
      }),
      { numRuns: 60 },
    );
  });
});

describe('the forms of a line', () => {
  it('have their parameters one after the other within the label, the active one among them', () => {
    let told = 0;
    fc.assert(
      fc.property(mixedLines, fc.nat(60), (text, column) => {
        service.setText(uri, `formula A:\n${text}`);
        const places = service
          .lines(uri)
          .flatMap((words, line) =>
            [Math.min(column, words.length), words.length].map((at) => [line, at] as const),
          );
        for (const [line, at] of places) {
          const answer = service.signatures(uri, line, at);
          if (answer === undefined) continue;
          told++;
          expect(answer.signatures[answer.active]).toBeDefined();
          for (const { label, parameters, active } of answer.signatures) {
            expect(parameters[active]).toBeDefined();
            let end = 0;
            for (const one of parameters) {
              expect(one.start).toBeGreaterThanOrEqual(end);
              expect(one.end).toBeGreaterThan(one.start);
              end = one.end;
            }
            expect(end).toBeLessThanOrEqual(label.length);
          }
        }
      }),
      { numRuns: 100 },
    );
    expect(told).toBeGreaterThan(100);
  });

  it('are asked of wild text, and so are completion and hints, without a word amiss', () => {
    fc.assert(
      fc.property(wildText, fc.nat(8), fc.nat(30), (text, line, column) => {
        service.setText(uri, text);
        const at = service.lines(uri)[line] ?? '';
        service.signatures(uri, line, Math.min(column, at.length));
        service.hintDetail(uri, line);
        for (const { replace } of service.completions(uri, line, Math.min(column, at.length))) {
          expect(replace.start).toBeGreaterThanOrEqual(0);
          expect(replace.start).toBeLessThanOrEqual(replace.end);
        }
      }),
      runs,
    );
  });
});
