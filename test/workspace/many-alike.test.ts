import { describe, expect, it } from 'vitest';
import { createService } from '../../core/index.ts';
import { createParseMemo, parseFile } from '../../core/syntax/file.ts';
import { indexFormulas } from '../../core/syntax/header-index.ts';

const uri = 'file:///quay/a.dough';
const opened = (text: string) => {
  const service = createService();
  service.setText(uri, text);
  service.setRoots(['file:///quay']);
  return service;
};

describe('texts that are long on purpose', () => {
  // Each part takes the next twice, so there are 2⁴⁰ ways down: looked into one by one, this test would never end.
  it('nested parts are looked into once, however many ways lead to them', () => {
    const depth = 40;
    const parts = Array.from({ length: depth }, (_, index) => {
      const next =
        index < depth - 1 ? `  p${index + 1}  20%\n  p${index + 1}  20%\n` : '  instant yeast  1%\n';
      return `preferment p${index}:\n  bread flour  100%\n  water  100%\n${next}  ferment 12 h at 24 °C\n`;
    }).join('\n');
    const service = opened(
      `formula Nest:\n  yield 10 kg\n  bread flour  100%\n  water  65%\n  p0  20%\n\n${parts}\nprocess:\n  bulk 2 h\n`,
    );
    const [totals] = service.totals(uri);
    expect(totals!.doughGrams).toBeCloseTo(10_000, 3);
    for (const [line] of service.lines(uri).entries()) service.hover(uri, line, 3);
    expect(service.findings(uri).map(({ code }) => code)).not.toContain('loop');
  });

  it('a long line of signs is no header, and is known to be none at once', () => {
    for (const sign of ['=', '-', '*', ' ', '(', '1', 'a)', '. '])
      expect(
        indexFormulas(`formula A:\n  water 65%\n# ${sign.repeat(80_000)}\n${sign.repeat(80_000)}\n`)?.length,
      ).toBe(1);
    expect(indexFormulas('formula A:\n - flour B:\n')).toBeUndefined();
    expect(indexFormulas('formula A:\n a) flour B:\n')).toBeUndefined();
    expect(indexFormulas('formula A:\n| plan\n')).toBeUndefined();
  });

  it('the findings of each of many formulas stand with it and with no other', () => {
    const bad = 'formula F7:\n  bread flour  100%\n  water  65\n';
    const texts = Array.from({ length: 50 }, (_, index) =>
      index === 7 ? bad : `formula F${index}:\n  bread flour  100%\n  water  65%\n  salt  2%\n`,
    );
    const all = opened(texts.join('\n')).totals(uri);
    expect(all.map(({ formula }) => formula)).toEqual(texts.map((_, index) => `F${index}`));
    expect(all.flatMap(({ formula, findings }) => (findings.length > 0 ? [formula] : []))).toEqual(['F7']);
  });
});

describe('two sections that read alike', () => {
  const one = 'formula A:\n  bread flour  100%\n';
  it('are two blocks, also when the second is pasted', () => {
    const memo = createParseMemo();
    parseFile(`${one}\nformula B:\n  rye  100%\n`, memo);
    for (const text of [
      `${one}\n${one}\n${one}`,
      `\n${one}\n${one}`,
      `flour x:\n\n${one}\n${one}\nformula B:\n`,
    ]) {
      const { blocks } = parseFile(text, memo);
      expect(new Set(blocks.map(({ block }) => block)).size).toBe(blocks.length);
    }
  });
});
