import { describe, expect, it } from 'vitest';
import type { MixingOutcome } from '../../core/calc/mixing/mixing.ts';
import { contextsOf, workspaceOf } from '../rules/findings.ts';
import { inWords } from '../words/told.ts';

const formula = (mixer: string, readings: string): string =>
  [
    'formula Quay Tin:',
    '  yield 20 kg',
    '  bread flour  100%',
    '  water  65%',
    '  salt  2%',
    '',
    `mix in ${mixer}:`,
    '  load flour, water, salt',
    '  speed 1 for 4 min',
    '  speed 2 for 4 min',
    '',
    'trial 2026-03-03:',
    '  room 21 °C',
    '  flour 20 °C',
    '  water 16 °C',
    readings,
    '',
  ].join('\n');

function outcomeOf(readings: string, mixer = 'spiral'): MixingOutcome {
  const files = workspaceOf([{ path: 'a.dough', text: formula(mixer, readings) }]);
  const { context } = contextsOf(files, 'a.dough').find((one) => one.context.analysis !== undefined)!;
  const mix = context.analysis!.doughMix;
  if (!mix.known) throw new Error(inWords(mix.reason));
  return mix.value.outcome;
}

const developed = ({ developedAfter }: MixingOutcome) => {
  if (!developedAfter.known) throw new Error(inWords(developedAfter.reason));
  return developedAfter.value;
};

describe('stages seen of one flour on one mixer', () => {
  const plain = developed(outcomeOf('  at 4 min  22 °C'));

  it('that come sooner than worked out widen the band to that side, and move nothing expected', () => {
    const seen = developed(outcomeOf('  at 4 min  22 °C, developed'));
    expect(seen.expected).toBe(plain.expected);
    expect(seen.high).toBe(plain.high);
    // It was developed at four minutes: the band reaches as far.
    expect(seen.low).toBeLessThan(plain.low);
    expect(seen.low).toBeLessThanOrEqual(4 + 1e-6);
  });

  it('that come later widen it to the other side', () => {
    const seen = developed(outcomeOf('  at 7.5 min  25 °C, developing'));
    expect(seen.expected).toBe(plain.expected);
    expect(seen.low).toBe(plain.low);
    expect(seen.high).toBeGreaterThan(Math.max(plain.high, 7.5));
  });

  it('that agree leave it as it is, and so do those on another mixer', () => {
    expect(developed(outcomeOf('  at 4 min  22 °C, developing'))).toEqual(plain);
    expect(developed(outcomeOf('  mixer planetary\n  at 4 min  22 °C, breakdown'))).toEqual(plain);
  });

  it('that cannot be widen it by no more than fourfold', () => {
    const seen = outcomeOf('  at 7.5 min  25 °C, pick-up');
    expect(developed(seen).high).toBeLessThan(40);
    const { developmentBand } = seen;
    expect(developmentBand.known && developmentBand.value.low > 0).toBe(true);
  });
});
