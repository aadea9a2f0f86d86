import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkBlock } from '../../core/rules/engine/check.ts';
import { contextsOf, workspaceOf } from './findings.ts';

/** What mixing does to a dough, from the mildest word to the hardest, and how warm it leaves the mixer. */
const scales = [['too-warm'], ['under-developed'], ['let-down', 'broken-down'], ['fast-for-stiff']];

interface Dough {
  readonly flour: number;
  readonly water: number;
  readonly waterCelsius: number;
  readonly slow: number;
  readonly fast: number;
  readonly wholemeal: boolean;
}

function told({ flour, water, waterCelsius, slow, fast, wholemeal }: Dough): Map<string, string> {
  const text =
    `formula Quay Tin:\n  dough temperature 25 °C\n  ${wholemeal ? 'wholemeal wheat' : 'bread flour'}  ${flour} g\n  water  ${water} g, at ${waterCelsius} °C\n` +
    `  salt  ${Math.round(flour / 50)} g\n\nmix in planetary:\n  load flour, water, salt\n  speed 1 for ${slow} min\n  speed 4 for ${fast} min\n`;
  const levels = new Map<string, string>();
  for (const { context } of contextsOf(workspaceOf([{ path: 'a.dough', text }]), 'a.dough'))
    for (const { code, level } of checkBlock(context).findings) levels.set(code, level);
  return levels;
}

/** 0: nothing is said; 1: only part of the band lies beyond; 2: so it is. */
function loudness(levels: Map<string, string>, codes: readonly string[]): number {
  return Math.max(...codes.map((code) => (levels.has(code) ? (levels.get(code) === 'warning' ? 2 : 1) : 0)));
}

describe('findings on mixing', () => {
  it('never go from silence to a warning, or back, by one gram', () => {
    const dough = fc.record({
      flour: fc.integer({ min: 400, max: 3000 }),
      ratio: fc.double({ min: 0.42, max: 0.95, noNaN: true }),
      waterCelsius: fc.integer({ min: 5, max: 35 }),
      slow: fc.integer({ min: 1, max: 8 }),
      fast: fc.integer({ min: 0, max: 20 }),
      wholemeal: fc.boolean(),
    });
    fc.assert(
      fc.property(dough, fc.constantFrom('flour', 'water'), ({ ratio, ...rest }, which) => {
        const one: Dough = { ...rest, water: Math.round(rest.flour * ratio) };
        const [before, after] = [told(one), told({ ...one, [which]: one[which as 'flour' | 'water'] + 1 })];
        for (const codes of scales)
          expect(Math.abs(loudness(before, codes) - loudness(after, codes))).toBeLessThan(2);
      }),
      { numRuns: 250 },
    );
  });

  it('pass by the milder word when a dough is mixed longer and longer', () => {
    for (const wholemeal of [false, true])
      for (const codes of scales.slice(0, 3)) {
        const seen: number[] = [];
        for (let fast = 0; fast <= 40; fast += 0.1) {
          const levels = told({
            flour: 1000,
            water: 740,
            waterCelsius: 18,
            slow: 2,
            fast: Number(fast.toFixed(1)),
            wholemeal,
          });
          seen.push(loudness(levels, codes));
        }
        const jumps = seen.filter((now, index) => Math.abs(now - (seen[index - 1] ?? now)) > 1);
        expect(jumps).toEqual([]);
        if (codes[0] === 'too-warm') expect(new Set(seen)).toEqual(new Set([0, 1, 2]));
      }
  });
});
