import { describe, expect, it } from 'vitest';
import { createServerLife, type ServerTrouble } from '../../client/server-life.ts';

/** Clients as the library has them: one that is coming up cannot be ended. */
function bench(milliseconds: readonly (number | 'never' | 'fails')[]) {
  const running = new Set<number>();
  const made: { up: () => void }[] = [];
  const warnings: ServerTrouble[] = [];
  let most = 0;
  const make = () => {
    const own = made.length;
    let isUp = false;
    let up = () => {};
    const started = new Promise<void>((resolve, reject) => {
      up = () => {
        isUp = true;
        running.add(own);
        most = Math.max(most, running.size);
        resolve();
      };
      const after = milliseconds[own] ?? 1;
      if (after === 'fails') setTimeout(() => reject(new Error('no such file')), 1);
      else if (after !== 'never') setTimeout(up, after);
    });
    made.push({ up });
    return {
      start: () => started,
      dispose: async () => {
        if (!isUp) throw new Error('cannot be stopped');
        await new Promise((resolve) => setTimeout(resolve, 5));
        running.delete(own);
      },
    };
  };
  const life = createServerLife(make, (trouble) => warnings.push(trouble), 50);
  return { life, running, made, warnings, most: () => most };
}

describe('the life of the language server', () => {
  it('is one server, however often and soon a restart is asked for', async () => {
    const { life, running, most } = bench([20, 20, 1, 10]);
    const first = life.start();
    await Promise.all([first, life.restart(), life.restart(), life.restart()]);
    expect([...running]).toEqual([3]);
    expect(most()).toBe(1);
    await life.stop();
    expect(running.size).toBe(0);
    expect(life.current).toBeUndefined();
  });

  it('ends with a server that was just coming up', async () => {
    const { life, running } = bench([20]);
    void life.start();
    await life.stop();
    expect(running.size).toBe(0);
  });

  it('goes on after one that fails to start', async () => {
    const { life, running } = bench(['fails', 1]);
    await expect(life.start()).rejects.toThrow('no such file');
    await life.restart();
    expect([...running]).toEqual([1]);
  });

  it('goes on after one that hangs, which is ended should it come up after all', async () => {
    const { life, running, made, warnings } = bench(['never', 1]);
    void life.start();
    await life.restart();
    expect([...running]).toEqual([1]);
    expect(warnings).toEqual([{ kind: 'slow' }]);
    made[0]!.up();
    await expect.poll(() => [...running]).toEqual([1]);
  });
});
