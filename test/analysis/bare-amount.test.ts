import { describe, expect, it } from 'vitest';
import { createService } from '../../core/index.ts';

const uri = 'file:///quay/bare.dough';

function totalsOf(lines: string) {
  const service = createService();
  service.setText(uri, `formula Quay Tin:\n  yield 10 kg\n${lines}`);
  const [totals] = service.totals(uri);
  const codes = service.findings(uri).filter(({ level }) => level === 'error');
  return { hydration: totals?.hydration, salt: totals?.saltFraction, codes: codes.map(({ code }) => code) };
}

describe('numbers without a unit', () => {
  it.each([
    ['flour as 100', '  bread flour 100\n  water 65\n  salt 2\n'],
    ['two flours that come to 100', '  bread flour 80\n  rye flour 20\n  water 65\n  salt 2\n'],
    ['several beside percent', '  bread flour 100%\n  water 65\n  salt 2\n'],
  ])('are percent: %s; each line is still told', (_, lines) => {
    const { hydration, salt, codes } = totalsOf(lines);
    expect(hydration).toBeCloseTo(0.65, 9);
    expect(salt).toBeCloseTo(0.02, 9);
    expect(new Set(codes)).toEqual(new Set(['missing-unit']));
    expect(codes).toHaveLength(lines.split('\n').filter((line) => /\d$/.test(line)).length);
  });

  it('are percent of eggs too where all are numbers', () => {
    const eggs = (amount: string): unknown => {
      const service = createService();
      service.setText(
        uri,
        `formula Quay Bun:\n  yield 10 kg\n  bread flour 100${amount}\n  eggs 45${amount}\n  salt 2${amount}\n`,
      );
      return service.totals(uri)[0]?.overall.map(({ name, grams }) => [name, Math.round(grams ?? 0)]);
    };
    expect(eggs('')).toEqual(eggs('%'));
  });

  it.each([
    ['one alone, which may be half typed', '  bread flour 100%\n  water 6\n  salt 2%\n'],
    ['flour that comes to no 100', '  bread flour 90\n  water 60\n  salt 2\n'],
  ])('stay unknown: %s', (_, lines) => {
    expect(totalsOf(lines).hydration).toBeUndefined();
  });

  it('are grams beside grams', () => {
    const service = createService();
    service.setText(uri, 'formula Quay Tin:\n  bread flour 1000 g\n  water 650\n  salt 20\n');
    expect(service.totals(uri)[0]?.hydration).toBeCloseTo(0.65, 9);
  });
});
