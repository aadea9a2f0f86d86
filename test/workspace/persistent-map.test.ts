import fc from 'fast-check';
import { expect, it } from 'vitest';
import { PersistentMap } from '../../core/workspace/persistent-map.ts';

const key = fc.integer({ min: 0, max: 60 }).map(String);
const changes = fc.array(fc.tuple(key, fc.option(fc.nat(5), { nil: undefined, freq: 3 })), { maxLength: 40 });

it('is each of its versions still, and tells where any two differ', () => {
  fc.assert(
    fc.property(fc.array(changes, { maxLength: 30 }), fc.nat(2000), (steps, more) => {
      const first = (PersistentMap.none as PersistentMap<number>).with(
        Array.from({ length: more }, (_, index): [string, number] => [`${index + 100}`, index]),
      );
      const versions: [PersistentMap<number>, Map<string, number>][] = [[first, new Map(first.entries())]];
      for (const step of steps) {
        const [present, map] = versions.at(-1)!;
        const expected = new Map(map);
        for (const [at, value] of step) {
          if (value === undefined) expected.delete(at);
          else expected.set(at, value);
        }
        versions.push([present.with(step), expected]);
      }
      for (const [present, map] of versions) {
        expect(present.size).toBe(map.size);
        expect(new Map(present.entries())).toEqual(map);
        for (const at of ['0', '7', '100', '101']) expect(present.get(at)).toBe(map.get(at));
      }
      const [some, others] = [versions[Math.floor(versions.length / 2)]!, versions.at(-1)!];
      const keys = new Set([...some[1].keys(), ...others[1].keys()]);
      const differing = [...keys].filter((at) => some[1].get(at) !== others[1].get(at));
      expect([...some[0].differing(others[0])].sort()).toEqual(differing.sort());
      expect([...others[0].differing(some[0])].sort()).toEqual(differing);
    }),
    { numRuns: 60 },
  );
});

it('is the very same where nothing changes', () => {
  const some = (PersistentMap.none as PersistentMap<number>).with([['a', 1]]);
  expect(some.with([['a', 1]])).toBe(some);
  expect(some.with([['b', undefined]])).toBe(some);
  expect(some.with([['a', 2]])).not.toBe(some);
});

it('stays as quick however many versions there are', () => {
  let present = PersistentMap.none as PersistentMap<number>;
  for (let index = 0; index < 20_000; index++) present = present.with([[String(index % 5000), index]]);
  expect(present.size).toBe(5000);
  expect(present.get('0')).toBe(15_000);
});
