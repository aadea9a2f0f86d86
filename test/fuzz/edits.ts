import { expect } from 'vitest';
import type { Service } from '../../core/index.ts';
import { finish } from '../../core/index.ts';

/** Everything that is asked of a file, at a place; what hangs on the order in which files came is put in order. */
export function everything(service: Service, uri: string, line: number, column: number): unknown {
  return {
    findings: service.findings(uri).map((one) => ({ ...one, related: sorted(one.related) })),
    hints: service.hints(uri, 0, Number.MAX_SAFE_INTEGER),
    symbols: service.symbols(uri),
    folds: service.folds(uri),
    tokens: service.semanticTokens(uri),
    totals: service.totals(uri),
    lenses: service.lenses(uri),
    format: service.format(uri),
    status: service.status(uri, line),
    hover: service.hover(uri, line, column),
    completions: sorted(service.completions(uri, line, column)),
    definition: service.definition(uri, line, column),
    references: sorted(finish(service.references(uri, line, column, true))),
    signatures: service.signatures(uri, line, column),
    sheet: service.sheet(uri, line, {}),
  };
}

const sorted = (all: readonly unknown[]): unknown[] =>
  [...all].sort((one, other) => (JSON.stringify(one) < JSON.stringify(other) ? -1 : 1));

export function expectSame(now: unknown, anew: unknown): void {
  // Nearly always they are, and telling that costs little.
  if (JSON.stringify(now) !== JSON.stringify(anew)) expect(now).toEqual(anew);
}

/** A place as shares of lines and columns, in a text. */
export function placeIn(
  lines: readonly string[],
  { line, column }: { readonly line: number; readonly column: number },
): { line: number; column: number } {
  const at = Math.floor(line * lines.length);
  return { line: at, column: Math.floor(column * ((lines[at]?.length ?? 0) + 0.999)) };
}
