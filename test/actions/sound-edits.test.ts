import { describe, expect, it } from 'vitest';
import { createService } from '../../core/index.ts';

const uri = 'file:///quay/a.dough';
const everywhere = { line: 0, start: 0, endLine: 99, end: 0 };

function fixesOf(text: string): string[] {
  const service = createService();
  service.setText(uri, text);
  return service.findingsAt(uri, everywhere).flatMap(({ code, fixes }) => fixes.map(() => code));
}

describe('a fix that would make an error', () => {
  it('is not offered: the word it writes stands there already', () => {
    const once = 'formula A:\n  yeild 10 pieces of 900 g\n  bread flour 100%\n  water 65%\n  salt 2%\n';
    expect(fixesOf(once)).toContain('unknown-property');
    expect(fixesOf(once.replace('\n', '\n  yield 12 pieces of 900 g\n'))).not.toContain('unknown-property');
  });

  it('is offered on a header, whatever stands below it, for nobody has looked at that yet', () => {
    expect(fixesOf('fromula A:\n  bread flour 100%\n  water 65\n  salt 2%\n')).toContain('unknown-section');
  });
});
