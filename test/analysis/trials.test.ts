import { describe, expect, it } from 'vitest';
import { mixerTrials } from '../../core/analysis/mixer-trials.ts';
import { comparedReadings, type TrialAnalysis, trialsOf } from '../../core/analysis/trials.ts';
import type { Known } from '../../core/calc/known.ts';
import { trialFactsOf } from '../../core/facts/trial-facts.ts';
import { hoverOf } from '../../core/features/hover/hover.ts';
import type { RuleContext } from '../../core/rules/engine/rule.ts';
import type { Message } from '../../core/words/message.ts';
import { plainSpeaker } from '../../core/words/speak.ts';
import { createService } from '../../core/workspace/create-service.ts';
import { applied, contextsOf, findingsOf, firstFix, type GivenFile, workspaceOf } from '../rules/findings.ts';
import { inWords } from '../words/told.ts';

function told<T>(value: Known<T, Message>): T {
  if (!value.known) throw new Error(inWords(value.reason));
  return value.value;
}

const formula = (trial: string, mixer = 'spiral', yields = 'yield 20 kg'): string =>
  `formula Quay Tin:\n  ${yields}\n  bread flour  100%\n  water  65%\n  salt  2%\n\nmix in ${mixer}:\n  load flour, water, salt\n  speed 1 for 6 min\n  speed 2 for 2 min\n\ntrial 2026-03-03, first of the day:\n${trial}`;

function contextOf(files: readonly GivenFile[], path: string, kind: string): RuleContext {
  const found = contextsOf(workspaceOf(files), path).find(({ context }) => context.block.top?.kind === kind);
  return found!.context;
}

function trialIn(text: string, more: readonly GivenFile[] = []): TrialAnalysis {
  const context = contextOf([{ path: 'tin.dough', text }, ...more], 'tin.dough', 'formula');
  return trialsOf(context.analysis!, context.scope)[0]!;
}

const day = '  room 21 °C\n  flour 20 °C\n  water 18 °C\n';

describe('a trial beside its programme', () => {
  it('is predicted under its own temperatures, not those of the bakery', () => {
    const warm = comparedReadings(trialIn(formula(`${day}  at 6 min 22 °C\n  end 24 °C`)));
    const cold = comparedReadings(trialIn(formula(`${day.replace('18', '8')}  at 6 min 22 °C\n  end 24 °C`)));
    expect(warm.map((one) => one.minutes)).toEqual([6, 8]);
    for (const [index, one] of warm.entries())
      expect(told(one.predictedCelsius)).toBeGreaterThan(told(cold[index]!.predictedCelsius) + 3);
    expect(told(warm[1]!.predictedCelsius)).toBeGreaterThan(told(warm[0]!.predictedCelsius));
  });

  it('takes the temperature of a part by its name', () => {
    const with_ = (celsius: number): number => {
      const text = `formula Quay Tin:\n  yield 20 kg\n  bread flour 100%\n  water 65%\n  salt 2%\n\npreferment sponge:\n  draws 40% of flour\n  bread flour 100%\n  water 60%\n\nmix in spiral:\n  load flour, water, salt, sponge\n  speed 1 for 6 min\n\ntrial 2026-03-03:\n${day}  sponge ${celsius} °C\n  end 24 °C`;
      return told(comparedReadings(trialIn(text))[0]!.predictedCelsius);
    };
    expect(with_(30)).toBeGreaterThan(with_(10) + 3);
  });

  it('has no prediction where nobody says how warm the water was, and says so', () => {
    const [reading] = comparedReadings(trialIn(formula('  room 21 °C\n  end 24 °C')));
    expect(reading!.predictedCelsius).toEqual({
      known: false,
      reason: { code: 'trial.no-water', args: {} },
    });
  });

  it('runs on the mixer it names', () => {
    const hook = {
      path: 'mixers.dough',
      text: 'mixer hook:\n  kind spiral\n  speed 1 200 rpm\n  speed 2 300 rpm\n',
    };
    const plain = told(comparedReadings(trialIn(formula(`${day}  end 24 °C`)))[0]!.predictedCelsius);
    const named = trialIn(formula(`${day}  end 24 °C\n  mixer hook`), [hook]);
    expect(told(named.mix).mixer.name).toBe('hook');
    expect(told(comparedReadings(named)[0]!.predictedCelsius)).toBeGreaterThan(plain + 1);
  });

  it('does not run the programme before it is asked', () => {
    const context = contextOf(
      [{ path: 'a.dough', text: formula(`${day}  end 24 °C`) }],
      'a.dough',
      'formula',
    );
    const first = trialsOf(context.analysis!, context.scope);
    expect(trialsOf(context.analysis!, context.scope)).toBe(first);
    expect(first[0]!.predicted()).toBe(first[0]!.predicted());
  });
});

describe('weight that is gone', () => {
  // Common practice, no source: an hour on the table loses about 50 g of a dough of 400 g of flour; as water, 12.5 points.
  const byHand = `formula Table:\n  yield 668 g\n  bread flour 100%\n  water 65%\n  salt 2%\n\nmix by hand:\n  load flour, water, salt\n  knead 60 min\n\ntrial 2026-03-03:\n  dough 618 g`;

  it('is read as water, at most', () => {
    const loss = told(trialIn(byHand).loss);
    expect(loss.lostGrams).toBeCloseTo(50, 6);
    expect(loss.hydrationBefore).toBeCloseTo(0.65, 9);
    expect(loss.hydrationBefore - loss.hydrationIfWater).toBeCloseTo(0.125, 9);
  });

  it('counts the water that was really used', () => {
    const loss = told(trialIn(byHand.replace('dough 618 g', 'water 280 g\n  dough 618 g')).loss);
    expect(loss.lostGrams).toBeCloseTo(70, 6);
    expect(loss.hydrationBefore).toBeCloseTo(0.7, 9);
  });

  it('is not known of another size of batch, or without a yield', () => {
    expect(trialIn(byHand.replace('618 g', '6 kg')).loss.known).toBe(false);
    expect(trialIn(byHand.replace('  yield 668 g\n', '')).loss.known).toBe(false);
  });
});

describe('a loss that the formula counts with', () => {
  const table = (loss: string, dough = 600): string =>
    `formula Table:\n  yield 650 g\n  loss ${loss}\n  bread flour 100%\n  water 65%\n  salt 2%\n\nmix by hand:\n  load flour, water, salt\n  knead 60 min\n\ntrial 2026-03-03:\n  dough ${dough} g`;

  it('is taken for dough left behind, and only the rest for water', () => {
    const loss = told(trialIn(table('2%')).loss);
    expect(loss.stuckGrams! / loss.pouredGrams).toBeCloseTo(0.02, 6);
    expect(loss.hydrationAfter).toBeGreaterThan(loss.hydrationIfWater);
    expect(loss.hydrationAfter).toBeLessThan(loss.hydrationBefore);
    const all = told(trialIn(table('10%', 660)).loss);
    expect(all.hydrationAfter).toBeCloseTo(all.hydrationBefore, 9);
  });
});

describe('the friction factor of a trial', () => {
  it('is three times the dough less room, flour and water', () => {
    expect(told(trialIn(formula(`${day}  end 24 °C`)).friction())).toBeCloseTo(3 * 24 - 21 - 20 - 18, 9);
  });

  it('is that of a straight dough where a preferment of the dough’s own temperature takes part', () => {
    const plain = formula(`${day}  end 24 °C`);
    const ripe = plain
      .replace(
        '\nmix in',
        '\npreferment sponge:\n  draws 30% of flour\n  bread flour 100%\n  water 65%\n\nmix in',
      )
      .replace('load flour', 'load sponge, flour')
      .replace('end 24', 'sponge 21 °C\n  end 24');
    // A sponge as warm as flour and water together is as if it were not there, but for what its flour wetted before.
    const mixed = 0.42 * 20 + 0.57 * 18;
    const at = told(trialIn(ripe.replace('sponge 21', `sponge ${mixed / 0.99}`)).friction());
    expect(Math.abs(at - told(trialIn(plain).friction()))).toBeLessThan(0.5);
  });

  it('is that of a straight dough where ice was weighed in', () => {
    const text = (water: string, end: string): string =>
      `mixer hook:\n  kind spiral\n  speed 1 100 rpm\n\nformula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n${water}  salt  2%\n\nmix in hook:\n  load flour, water, salt\n` +
      `  speed 1 for 8 min\n\ntrial 2026-03-03:\n  room 21 °C\n  flour 21 °C\n  water 21 °C\n  end ${end} °C\n`;
    // Each is read at just the end that its heat makes, so that both were warmed alike.
    const factor = (water: string): number => {
      const end = told(told(trialIn(text(water, '24')).predicted()).endCelsius);
      return told(trialIn(text(water, end.toFixed(6))).friction());
    };
    const plain = factor('  water  65%\n');
    expect(plain).toBeGreaterThan(5);
    // The cooler dough takes more from the room.
    expect(Math.abs(factor('  water  55%\n  ice  10%\n') - plain)).toBeLessThan(5);
  });

  it('needs the end and the water', () => {
    expect(trialIn(formula(`${day}`)).friction().known).toBe(false);
    expect(trialIn(formula('  room 21 °C\n  end 24 °C')).friction().known).toBe(false);
  });
});

describe('the facts of a trial', () => {
  it('are plain data', () => {
    const text = formula(`${day}  at 6 min 22 °C, developing\n  end 24 °C\n  dough 19.8 kg`);
    const context = contextOf([{ path: 'a.dough', text }], 'a.dough', 'formula');
    const [facts] = trialFactsOf(context.analysis!, context.scope);
    expect(JSON.parse(JSON.stringify(facts))).toEqual(facts);
    expect(facts).toMatchObject({ title: '2026-03-03, first of the day', frictionCelsius: 13 });
    expect(facts!.readings.map((one) => [one.minutes, one.isEnd, one.measuredStage])).toEqual([
      [6, false, 'developing'],
      [8, true, undefined],
    ]);
    expect(facts!.readings.every((one) => Number.isFinite(one.predictedCelsius))).toBe(true);
    expect(facts!.spreadCelsius).toBeGreaterThan(0);
    expect(facts!.loss!.lostGrams).toBeCloseTo(200, 6);
  });
});

describe('the hover', () => {
  const text = formula(`${day}  at 6 min 24 °C, developed\n  end 25 °C\n  dough 19.8 kg`);
  const context = contextOf([{ path: 'a.dough', text }], 'a.dough', 'formula');
  const at = (words: string): string => {
    const line = text.split('\n').findIndex((one) => one.includes(words));
    const hover = hoverOf(context.block, line, 4, context.scope, context.analysis, plainSpeaker);
    return hover?.markdown ?? '';
  };

  it('on a reading sets measured beside computed', () => {
    expect(at('at 6 min')).toMatch(
      /^\*\*Measured 24 °C, developed\*\* — computed \d\d(\.\d)? °C, [a-z-]+: \d(\.\d)? °C warmer than that, and another stage\./,
    );
    expect(at('end 25')).toMatch(/^\*\*Measured 25 °C\*\* — computed /);
  });

  it('on the header tells all readings and the weight', () => {
    const markdown = at('trial 2026');
    expect(markdown).toContain('**Trial 2026\\-03\\-03, first of the day**');
    expect(markdown.match(/^\| (6 min|end) \|/gm)).toHaveLength(2);
    expect(markdown).toContain('200 g of 20 kg were missing');
    expect(markdown).toContain('Stop the mixer before a probe or a hand goes in.');
    expect(markdown).not.toMatch(/NaN|undefined/);
  });
});

describe('a mixer and its trials', () => {
  const readings = `${day.replace('18', '14')}  at 3 min 20.5 °C\n  at 6 min 22.2 °C\n  end 24.5 °C\n`;
  const mixer = 'mixer hook:\n  kind spiral\n  speed 1 100 rpm\n  speed 2 200 rpm, develops 1.4 times\n';
  const files: GivenFile[] = [
    { path: 'mixers.dough', text: mixer },
    { path: 'loaves/one.dough', text: formula(readings, 'hook') },
    { path: 'loaves/two.dough', text: formula(readings, 'hook').replace('Quay Tin', 'Quay Bloomer') },
    { path: 'other/mixers.dough', text: mixer },
    { path: 'other/three.dough', text: formula(readings, 'hook').replace('Quay Tin', 'Quay Batch') },
  ];

  it('are those of the formulas that mean this mixer, and no other of its name', () => {
    const here = contextOf(files, 'mixers.dough', 'mixer');
    const trials = mixerTrials(here.block, here.block.top!.header.name!, here.scope)!;
    expect(trials.formulas.map((one) => one.name.text)).toEqual(['Quay Tin', 'Quay Bloomer']);
    expect(trials.readings).toBe(6);
    const there = contextOf(files, 'other/mixers.dough', 'mixer');
    expect(mixerTrials(there.block, there.block.top!.header.name!, there.scope)!.readings).toBe(3);
  });

  it('calibrate it by a fix after which the predictions agree and nothing more is said', () => {
    const own = findingsOf(files).find(
      (one) => one.code === 'mixer-can-be-calibrated' && one.path === 'mixers.dough',
    )!;
    const text = applied(mixer, own.firstLine, firstFix(own)!);
    expect(text).toMatch(
      /speed 2 200 rpm, warms 1\.\d\d? °C\/min within 0\.\d\d? °C\/min, develops 1\.4 times/,
    );
    const after = [{ path: 'mixers.dough', text }, ...files.slice(1)];
    expect(findingsOf(after).filter((one) => one.path === 'mixers.dough')).toEqual([]);
    const context = contextOf(after, 'loaves/one.dough', 'formula');
    for (const one of comparedReadings(trialsOf(context.analysis!, context.scope)[0]!))
      expect(Math.abs(told(one.predictedCelsius) - one.celsius!)).toBeLessThan(0.5);
  });

  it('are told again when a formula, a flour or the mixer changes', () => {
    const service = createService();
    service.setRoots(['file:///quay/']);
    for (const { path, text } of files.slice(0, 2)) service.setText(`file:///quay/${path}`, text);
    const told_ = () =>
      service
        .findings('file:///quay/mixers.dough')
        .filter((one) => one.code === 'mixer-can-be-calibrated')
        .map((one) => one.message);
    const first = told_();
    expect(first).toHaveLength(1);
    const one = files[1]!;
    service.setText(`file:///quay/${one.path}`, one.text.replace('24.5 °C', '26.5 °C'));
    const second = told_();
    expect(second).not.toEqual(first);
    service.setText(`file:///quay/flours.dough`, 'flour bread flour:\n  like strong white\n  water 30%\n');
    expect(told_()).not.toEqual(second);
    service.setText(`file:///quay/${one.path}`, one.text.replace(/trial[\s\S]*/, ''));
    expect(told_()).toEqual([]);
  });

  it('stand in the hover of the mixer, before and after', () => {
    const { block, scope } = contextOf(files, 'mixers.dough', 'mixer');
    const { markdown } = hoverOf(block, 0, 7, scope, undefined, plainSpeaker)!;
    expect(markdown).toContain('6 readings of 2 formulas');
    expect(markdown).toMatch(
      /how speed 1 warms: now 0\.25 °C\/min _\(common practice\)_; by the trials \*\*0\.4\d? °C/,
    );
    expect(markdown).toContain('how slowly the dough follows the room');
    expect(markdown).toContain('Stop the mixer before a probe or a hand goes in.');
  });
});
