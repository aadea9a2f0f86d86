import { expect, it, vi } from 'vitest';
import { createService } from '../../core/index.ts';

vi.mock('../../core/rules/formula/no-salt.ts', async (original) => {
  const { noSalt } = await original<typeof import('../../core/rules/formula/no-salt.ts')>();
  const check = () => {
    throw new Error('no salt at all');
  };
  return { noSalt: { ...noSalt, check } };
});

const uri = 'file:///quay-lane/a.dough';

it('a rule that fails is heard of once, and takes no other finding with it', () => {
  const heard: string[] = [];
  const service = createService({ failed: (what) => heard.push(what) });
  service.setText(
    uri,
    'formula Quay Plain:\n  yield 1 kg\n  wheat flour  100%\n  water  65%\n  no such thing  2%\n',
  );
  expect(service.findings(uri).map(({ code }) => code)).toContain('unknown-ingredient');
  service.findings(uri);
  expect(heard).toEqual(['no-salt: no salt at all']);
});

it('without anybody to hear of it, too', () => {
  const service = createService();
  service.setText(uri, 'formula Quay Plain:\n  yield 1 kg\n  wheat flour  100%\n  water  65%\n');
  expect(() => service.findings(uri)).not.toThrow();
});
