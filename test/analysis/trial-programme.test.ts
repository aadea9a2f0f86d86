import { describe, expect, it } from 'vitest';
import { mixerTrials } from '../../core/analysis/mixer-trials.ts';
import { sharedMinutes } from '../../core/analysis/trial-programme.ts';
import { comparedReadings, type TrialAnalysis, trialsOf } from '../../core/analysis/trials.ts';
import type { Known } from '../../core/calc/known.ts';
import type { MixingPhase } from '../../core/calc/mixing/mixing-programme.ts';
import { programmeCurve } from '../../core/facts/programme-curve.ts';
import type { Message } from '../../core/words/message.ts';
import { createService } from '../../core/workspace/create-service.ts';
import { contextsOf, type GivenFile, workspaceOf } from '../rules/findings.ts';
import { inWords } from '../words/told.ts';

// Invented formulas. That a record does not change when the recipe does is the notation's own rule.

function told<T>(value: Known<T, Message>): T {
  if (!value.known) throw new Error(inWords(value.reason));
  return value.value;
}

function contextOf(text: string, kind = 'formula') {
  const files: GivenFile[] = [{ path: 'a.dough', text }];
  return contextsOf(workspaceOf(files), 'a.dough').find(({ context }) => context.block.top?.kind === kind)!
    .context;
}

function trialsIn(text: string): readonly TrialAnalysis[] {
  const { analysis, scope } = contextOf(text);
  return trialsOf(analysis!, scope);
}

const hook = 'mixer hook:\n  kind spiral\n  speed 1 100 rpm\n  speed 2 200 rpm\n\n';
const head =
  'formula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n  butter  4%\n\n';
const mix =
  'mix in hook:\n  load flour, water at 14 °C\n  speed 1 for 4 min\n  rest 20 min\n  add salt, butter\n  speed 2 for 5 min\n\n';
const day = '  room 21 °C\n  flour 20 °C\n  water 14 °C\n';
const ran =
  '  mixed in hook\n  load flour, water at 14 °C\n  speed 1 for 4 min\n  rest 20 min\n  add salt, butter\n  speed 2 for 5 min\n';
const read = '  at 4 min  19.5 °C, pick-up\n  at 27 min  22 °C, developing\n  end  24.5 °C, developed\n';
const trial = (programme: string, readings = read): string =>
  `trial 2026-03-03:\n${day}${programme}${readings}\n`;

/** What goes in and what runs, in order: `flour, water | speed 1 4 | …`. */
function shape({ mix }: TrialAnalysis): string {
  return told(mix)
    .input.phases.map((phase) =>
      'portions' in phase
        ? [...new Set(phase.portions.map(({ label }) => label))].join(', ')
        : `${phase.kind === 'speed' ? `speed ${phase.number}` : phase.kind} ${phase.seconds / 60}`,
    )
    .join(' | ');
}

describe('a trial that keeps its programme', () => {
  const before = hook + head + mix + trial(ran);
  const after = before.replace('speed 2 for 5 min\n\ntrial', 'speed 2 for 12 min\n\ntrial');

  it('is compared as before when the programme of the formula is given other minutes', () => {
    expect(after).not.toBe(before);
    const [one] = trialsIn(before);
    const [other] = trialsIn(after);
    expect(comparedReadings(other!)).toEqual(comparedReadings(one!));
    expect(comparedReadings(one!).every(({ predictedCelsius }) => predictedCelsius.known)).toBe(true);
    // Without its lines it is read under the programme as it is now, and changes with it.
    const without = before.replace(ran, '');
    const changed = after.replace(ran, '');
    expect(comparedReadings(trialsIn(changed)[0]!)).not.toEqual(comparedReadings(trialsIn(without)[0]!));
  });

  it('calibrates the mixer as before', () => {
    const fitted = (text: string) => {
      const { block, scope } = contextOf(text, 'mixer');
      const trials = mixerTrials(block, block.top!.header.name!, scope)!;
      return [trials.readings, told(trials.calibration), trials.development()];
    };
    expect(fitted(after)).toEqual(fitted(before));
    expect(fitted(after.replace(ran, ''))).not.toEqual(fitted(before.replace(ran, '')));
  });

  it('is a trial of the mixer it says, whatever the formula is mixed in now', () => {
    const moved = before.replace('mix in hook', 'mix by hand').replace(/speed (\d) for/g, (all) => all);
    const { block, scope } = contextOf(moved, 'mixer');
    expect(mixerTrials(block, block.top!.header.name!, scope)!.readings).toBe(3);
    expect(told(trialsIn(moved)[0]!.mix).mixer.name).toBe('hook');
  });

  it('reads the stage at the end, beside what is worked out for its own last minute', () => {
    const end = comparedReadings(trialsIn(after)[0]!).at(-1)!;
    expect(end).toMatchObject({ minutes: 29, isEnd: true, stage: 'developed' });
    expect(end.predictedStage).toBeDefined();
  });

  it('by hand needs no mixer, and a formula without any programme can have trials', () => {
    const [one] = trialsIn(
      head + trial('  mixed by hand\n  load flour, water, salt, butter\n  knead 9 min\n', '  end  24 °C\n'),
    );
    expect(told(one!.mix)).toMatchObject({ programmeMinutes: 9, isKept: true });
    expect(told(one!.mix).mixer.data.kind).toBe('hand');
    expect(comparedReadings(one!)[0]!.predictedCelsius.known).toBe(true);
  });

  it('says why it cannot be worked out while one of its lines is not finished, and holds nothing else up', () => {
    const text = before.replace('speed 2 for 5 min\n  at', 'speed 2 for\n  at');
    const [one] = trialsIn(text);
    expect(one!.mix).toEqual({
      known: false,
      reason: { code: 'trial.line-unfinished', args: {} },
    });
    const service = createService();
    service.setText('file:///a.dough', text);
    expect(service.findings('file:///a.dough').map(({ code }) => code)).toContain('missing-value');
    expect(service.sheet('file:///a.dough', 6, {})!.state).toBe('ready');
    expect(service.totals('file:///a.dough')[0]!.resolved).toBe(true);
    // The same slip in the formula does hold it up.
    service.setText('file:///a.dough', before.replace('speed 2 for 5 min\n\ntrial', 'speed 2 for\n\ntrial'));
    expect(service.sheet('file:///a.dough', 6, {})!.state).toBe('held');
  });
});

describe('a trial that says only how long what ran', () => {
  const onlyTimes = (...lines: readonly string[]): string =>
    shape(
      trialsIn(hook + head + mix + trial(lines.map((line) => `  ${line}\n`).join(''), '  end  24 °C\n'))[0]!,
    );

  it('takes all at the start where it ran otherwise than the formula', () => {
    expect(onlyTimes('mixed in hook', 'speed 1 for 60 min')).toBe(
      'bread flour, water | salt, butter | speed 1 60',
    );
    expect(onlyTimes('mixed by hand', 'rest 20 min', 'knead 9 min')).toBe(
      'bread flour, water | salt, butter | rest 20 | knead 9',
    );
  });

  it('takes what is added where the formula adds it, where it ran in that order', () => {
    expect(
      onlyTimes('speed 1 for 4 min', 'rest 40 min', 'speed 2 for 7 min', 'rest 5 min', 'speed 1 for 1 min'),
    ).toBe('bread flour, water | speed 1 4 | rest 40 | salt, butter | speed 2 7 | rest 5 | speed 1 1');
    // Nothing was worked after the rest, so the salt cannot have gone in behind it.
    expect(onlyTimes('speed 1 for 4 min', 'rest 40 min')).toBe(
      'bread flour, water | salt, butter | speed 1 4 | rest 40',
    );
  });

  it('takes what its own lines load, and the rest of the dough at the start', () => {
    expect(onlyTimes('load flour, water', 'speed 1 for 4 min', 'add salt', 'speed 2 for 3 min')).toBe(
      'bread flour, water, butter | speed 1 4 | salt | speed 2 3',
    );
  });

  it('is not changed by other minutes of the formula', () => {
    const text =
      hook + head + mix + trial('  mixed in hook\n  speed 1 for 4 min\n  rest 20 min\n  speed 2 for 5 min\n');
    const longer = text.replace('speed 2 for 5 min\n\ntrial', 'speed 2 for 12 min\n\ntrial');
    expect(comparedReadings(trialsIn(longer)[0]!)).toEqual(comparedReadings(trialsIn(text)[0]!));
  });
});

describe('the chart of the programme as it is now', () => {
  const shown = (text: string): number[] => {
    const { analysis, scope } = contextOf(text);
    return programmeCurve(analysis!, scope)!.readings.map(({ minutes }) => minutes);
  };

  it('shows the readings of a trial as far as it ran the same', () => {
    expect(shown(hook + head + mix + trial(ran))).toEqual([4, 27, 29]);
    const shorter = hook + head + mix.replace('rest 20', 'rest 10') + trial(ran);
    expect(shown(shorter)).toEqual([4]);
    expect(shown(hook + head + mix.replace('in hook', 'in spiral') + trial(ran))).toEqual([]);
  });

  it('by the shorter of two lines of one kind', () => {
    const speed = (number: number, minutes: number): MixingPhase => ({
      kind: 'speed',
      number,
      seconds: 60 * minutes,
    });
    const rest = (minutes: number): MixingPhase => ({ kind: 'rest', seconds: 60 * minutes });
    const load: MixingPhase = { kind: 'load', portions: [] };
    expect(sharedMinutes([load, speed(1, 4), rest(5)], [speed(1, 4), load, rest(8), speed(2, 2)])).toBe(9);
    expect(sharedMinutes([speed(1, 4), speed(2, 2)], [speed(1, 6), speed(2, 2)])).toBe(4);
    expect(sharedMinutes([speed(1, 4)], [speed(2, 4)])).toBe(0);
    expect(sharedMinutes([], [speed(2, 4)])).toBe(0);
  });
});
