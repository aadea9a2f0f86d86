import { describe, expect, it } from 'vitest';
import { createService } from '../../core/index.ts';

const uri = 'file:///quay/tin.dough';
const tin = (last = ''): string =>
  `formula Quay Tin:\n  yield 24 pieces of 880 g\n  bread flour  100%\n  water  65%\n  salt  2%\n${last}`;

function serviceWith(keepsLastFigures: boolean) {
  const service = createService();
  service.setSettings({ keepsLastFigures });
  const labels = (text: string): Record<number, string> => {
    service.setText(uri, text);
    return Object.fromEntries(service.hints(uri, 0, 100).map(({ line, label }) => [line, label]));
  };
  return { service, labels };
}

describe('the figures of a formula with a half-typed line', () => {
  it('stay as they were last, in brackets, at every letter of a new line', () => {
    const { labels } = serviceWith(true);
    const whole = labels(tin());
    expect(Object.keys(whole)).toEqual(['0', '2', '3', '4']);
    const half = labels(tin('  butter'));
    for (const line of [0, 2, 3, 4]) expect(half[line]).toBe(`(${whole[line]})`);
    const typed = '  butter  4%\n';
    for (let length = 3; length < typed.length; length++) {
      const now = labels(tin(typed.slice(0, length)));
      for (const line of [0, 2, 3, 4]) expect(now[line], typed.slice(0, length)).toMatch(/\S/);
      // An amount that is not there yet is not made up for the line that is typed.
      if (!typed.slice(0, length).includes('%')) expect(now[5]).toBeUndefined();
    }
    const done = labels(tin(typed));
    expect(done[5]).toBeDefined();
    for (const line of [0, 2, 3, 4, 5]) expect(done[line]).not.toMatch(/^\(/);
    expect(done[2]).not.toBe(whole[2]);
  });

  it('go with their line, wherever it moves, and not to a line that says something else', () => {
    const { labels } = serviceWith(true);
    const whole = labels(tin());
    const moved = labels(tin('').replace('  water', '  butter\n  water'));
    expect(moved[4]).toBe(`(${whole[3]})`);
    const changed = labels(tin('  butter\n').replace('65%', '66%'));
    expect(changed[3]).toBeUndefined();
  });

  it('are those of the text alone where nobody asks for more', () => {
    const { labels } = serviceWith(false);
    labels(tin());
    expect(labels(tin('  butter'))[2]).toBeUndefined();
  });

  it('stay in the status too', () => {
    const { service, labels } = serviceWith(true);
    labels(tin());
    const whole = service.status(uri, 1)!;
    labels(tin('  butter'));
    expect(service.status(uri, 1)!.text).toBe(`(${whole.text})`);
    expect(service.status(uri, 1)!.tooltip).toMatch(/As it was last/);
  });
});
