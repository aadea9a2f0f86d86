import { describe, expect, it } from 'vitest';
import { fermentationOf, partFermentation } from '../../core/analysis/fermentation-course.ts';
import { fermentationTimeline } from '../../core/facts/fermentation-timeline.ts';
import { hoverOf } from '../../core/features/hover/hover.ts';
import type { RuleContext } from '../../core/rules/engine/rule.ts';
import { plainSpeaker } from '../../core/words/speak.ts';
import { contextsOf, workspaceOf } from '../rules/findings.ts';

const tin = ({ yeast = 'fresh yeast  2%', bulk = '1 h at 27 °C', more = '' } = {}): string =>
  `formula Quay Tin:\n  yield 24 pieces of 880 g\n  dough temperature 27 °C\n  bread flour  100%\n  water  65%\n  salt  2%\n  ${yeast}\n\n` +
  `process:\n  bulk ${bulk}\n  divide\n  proof 45 min at 27 °C\n  bake 35 min at 230 °C\n${more}`;

function contextOf(text: string): RuleContext {
  return contextsOf(workspaceOf([{ path: 'a.dough', text }]), 'a.dough')[0]!.context;
}

function told(text: string) {
  const fermentation = fermentationOf(contextOf(text).analysis!);
  if (!fermentation.known) throw new Error(fermentation.reason.code);
  return fermentation.value;
}

describe('a dough in its process', () => {
  it('fills its bulk in an hour at 27 °C with 2 % fresh yeast, and starts anew when divided', () => {
    // Common practice, no source.
    const { steps, bulks, isObserved } = told(tin());
    expect(steps.map((step) => step.words)).toEqual(['bulk', 'proof']);
    expect(steps[0]!.referenceMinutes).toBeCloseTo(60, 6);
    expect(steps[0]!.rise).toBeCloseTo(60 / 67.5, 6);
    expect(steps[1]!.riseBefore).toBe(0);
    expect(bulks).toBeCloseTo(105 / 67.5, 6);
    expect(isObserved).toBe(false);
  });

  it('takes instant yeast for what it is, and salt and sugar into account', () => {
    expect(told(tin({ yeast: 'instant yeast  0.66%' })).bulks).toBeCloseTo(told(tin()).bulks, 6);
    expect(told(tin({ yeast: 'fresh yeast  2%\n  sugar  15%' })).bulks).toBeLessThan(0.7 * told(tin()).bulks);
  });

  it('cools slowly in the cold: pieces sooner than the whole dough', () => {
    const whole = told(tin({ bulk: '12 h at 4 °C' })).steps[0]!;
    expect(whole.endCelsius).toBeGreaterThan(8);
    const pieces = told(tin({ more: '' }).replace('proof 45 min at 27', 'retard 12 h at 4')).steps[1]!;
    expect(pieces.endCelsius).toBeLessThan(6);
    expect(pieces.endCelsius).toBeGreaterThan(4);
    // Worth more than twelve hours at 4 °C from the start would be.
    expect(pieces.referenceMinutes).toBeGreaterThan(72);
  });

  it('goes by a rise that a trial wrote down', () => {
    const seen = told(tin({ more: '\ntrial 2026-03-03:\n  end 27 °C\n  rise 50% at 1 h\n' }));
    expect(seen.isObserved).toBe(true);
    expect(seen.steps[0]!.rise).toBeCloseTo(0.5, 6);
    expect(seen.band).toBeLessThan(told(tin()).band);
  });

  it('is not known where nothing raises it, or nothing is weighed', () => {
    expect(fermentationOf(contextOf(tin({ yeast: 'butter 2%' })).analysis!).known).toBe(false);
    expect(fermentationOf(contextOf('formula Empty:\n').analysis!).known).toBe(false);
  });

  it('rises by levain alone', () => {
    const text =
      `formula Quay Hearth:\n  yield 10 kg\n  dough temperature 25 °C\n  bread flour  100%\n  water  70%\n  salt  2%\n\npreferment levain:\n  draws 20% of flour\n` +
      `  bread flour  100%\n  water  100%\n  ripe culture  20%\n  ferment 8 h at 25 °C\n\nprocess:\n  bulk 4 h at 25 °C\n  bake 40 min at 240 °C\n`;
    const { steps, leavening } = told(text);
    expect(leavening.levainFraction).toBeCloseTo(0.2, 2);
    expect(steps[0]!.rise).toBeGreaterThan(0.9);
    expect(steps[0]!.rise).toBeLessThan(1.1);
    const { analysis } = contextOf(text);
    const levain = analysis!.resolved.model.sections[1]!;
    expect(partFermentation(analysis!, levain.id)!.rise).toBeGreaterThan(0.5);
  });
});

describe('the timeline', () => {
  it('is plain data without a figure that is none', () => {
    const timeline = fermentationTimeline(contextOf(tin({ bulk: '12 h at 4 °C' })).analysis!)!;
    expect(JSON.parse(JSON.stringify(timeline))).toEqual(timeline);
    const [bulk, proof] = timeline.steps;
    expect(proof!.startMinutes).toBe(bulk!.endMinutes);
    expect(bulk!.points.at(-1)).toEqual({
      minutes: bulk!.endMinutes,
      celsius: bulk!.endCelsius,
      rise: expect.closeTo(bulk!.rise.expected, 9),
    });
    expect(bulk!.rise.low).toBeLessThan(bulk!.rise.expected);
    expect(fermentationTimeline(contextOf(tin({ yeast: 'butter 2%' })).analysis!)).toBeUndefined();
  });
});

describe('the hover of a step', () => {
  const at = (text: string, words: string): string | undefined => {
    const context = contextOf(text);
    const line = text.split('\n').findIndex((one) => one.includes(words));
    return hoverOf(context.block, line, 3, context.scope, context.analysis, plainSpeaker)?.markdown;
  };

  it('says how long it would take at 27 °C and how far the dough has risen', () => {
    const bulk = at(tin(), 'bulk 1 h')!;
    expect(bulk).toContain('**As long as 1 h at 27 °C**');
    expect(bulk).toContain('grown by about 90% (60–135%)');
    expect(at(tin({ bulk: '12 h at 4 °C' }), 'bulk 12 h')).toContain('The dough goes from 27 °C to');
    expect(at(tin(), 'bake 35')).not.toContain('As long as');
  });

  it('counts a preferment as ripe that was fed with one, each flour once', () => {
    // 100 rye, 100 water and 50 of a stage of 100 rye and 60 water: flour (100 + 50 / 1.6) in 250 of sour. 50 % of sour bring
    // 26.25 % of flour, beside the 100 %.
    const { leavening } = told(
      `formula Quay Sour:\n  yield 10 kg\n  dough temperature 28 °C\n  bread flour  100%\n  water  50%\n  salt  2%\n  second stage  50%\n\n` +
        `preferment first stage:\n  medium rye  100%\n  water  60%\n  ripe culture  10%\n  ferment 8 h at 26 °C\n\n` +
        `preferment second stage:\n  medium rye  100%\n  water  100%\n  first stage  50%\n  ferment 3 h at 30 °C\n\nprocess:\n  bulk 1 h at 28 °C\n`,
    );
    const brought = (0.5 * (100 + 50 / 1.6)) / 250;
    expect(leavening.levainFraction).toBeCloseTo(brought / (1 + brought), 9);
  });
});

describe('a preferment of several stages', () => {
  const sour = (second: string): string =>
    `formula Quay Rye:\n  yield 20 kg\n  bread flour  80%\n  water  60%\n  salt  2%\n  second  40%\n\npreferment first:\n  medium rye  100%\n  water  100%\n  ripe culture 20%\n` +
    `  ferment 6 h at 26 °C\n\npreferment second:\n  medium rye  100%\n  water  100%\n${second}  ferment 4 h at 26 °C\n`;
  const stage = (text: string) => {
    const analysis = contextOf(text).analysis!;
    const section = analysis.resolved.model.sections.find(({ name }) => name?.text === 'second')!;
    return partFermentation(analysis, section.id);
  };

  it('is raised by the ripe stage that is fed into it as by as much ripe culture', () => {
    // The first stage is half flour, so 20 % of it brings as much flour as a fifth of culture of the same make.
    const fed = stage(sour('  first  20%\n'))!;
    const cultured = stage(sour('  ripe culture 20%\n'))!;
    expect(fed.leavening.levainFraction).toBeCloseTo(10 / 110, 9);
    expect(fed.rise).toBeCloseTo(cultured.rise, 9);
    expect(stage(sour('  first  10%\n  ripe culture 10%\n'))!.leavening.levainFraction).toBeCloseTo(
      10 / 110,
      9,
    );
    expect(stage(sour(''))).toBeUndefined();
  });
});
