import { describe, expect, it } from 'vitest';
import type { Service } from '../../core/index.ts';
import { openedAt } from './opened.ts';

const uri = 'file:///quay-lane/class.dough';

const opened = (text: string): Service => openedAt(uri, text);

const flour = (name: string, protein: number): string =>
  `flour ${name}:\n  grain wheat\n  milling white\n  protein ${protein}%\n\n`;
const kitchen = `bakery Quay Lane:\n  room 23 °C\n  flour 21 °C\n  tap water 14 °C\n\n${flour('white', 12)}`;
const bench = 'mixer bench:\n  kind planetary\n  speed 1 60 rpm\n  speed 2 110 rpm\n\n';
const formula = (mixer: string): string =>
  `formula Plain:\n  yield 1 kg\n  white  100%\n  water  65%\n  salt  2%\n\nmix in ${mixer}:\n  load all\n  speed 1 for 30 min\n\n`;
const trial = (where: string, work: string, readings: readonly string[]): string =>
  `trial 2026-04-11:\n  experiment Week\n  room 23 °C\n  flour 21 °C\n  water 14 °C\n  mixed ${where}\n  load all\n  ${work}\n${readings.map((one) => `  at ${one}\n`).join('')}\n`;
const week = (...doughs: string[]): string =>
  `experiment Week:\n${doughs.map((one) => `  dough ${one}\n`).join('')}  read at 8 min, 16 min, 30 min\n`;

const onBench = (...readings: string[]): Service =>
  opened(
    kitchen +
      bench +
      formula('bench') +
      trial('in bench', 'speed 1 for 30 min', readings) +
      week('Plain', 'Plain, by hand, knead 30 min'),
  );
const lessonsOf = (service: Service): string => service.experiments(uri)[0]!.lessons.join('\n');
const nextOf = (service: Service): string => service.experiments(uri)[0]!.next.join('\n');
const mixerHover = (service: Service): string => {
  const line = service.lines(uri).indexOf('mixer bench:');
  return service.hover(uri, line, 8)?.markdown ?? '';
};

describe('what the readings of an experiment say', () => {
  // Stages that come a little sooner or later are no news, wherever they are told.
  it.each([
    ['on time', ['8 min  24 °C, developing', '16 min  26 °C, developed', '30 min  27 °C, developed']],
    ['a little late', ['6 min  23 °C, clean-up', '16 min  26 °C, developed', '30 min  27 °C, developed']],
    ['much too soon', ['3 min  22 °C, developed', '8 min  24 °C, let-down', '16 min  26 °C, breakdown']],
    ['much too late', ['16 min  26 °C, clean-up', '30 min  27 °C, developing']],
    ['far, and no end is seen', ['3 min  22 °C, breakdown', '8 min  24 °C, breakdown']],
    ['hardly begun, and no beginning is seen', ['16 min  26 °C, pick-up', '30 min  27 °C, pick-up']],
  ])('goes with the hover of the mixer: stages %s', (_, readings) => {
    const service = onBench(...readings);
    const hover = mixerHover(service);
    const figures = /it develops dough (.+? times) as fast/.exec(hover)?.[1];
    expect(figures, hover).toBeDefined();
    const lessons = lessonsOf(service);
    expect(lessons).toContain(`${figures} as fast as believed`);
    expect(lessons).not.toMatch(/\b0 to |at least 0 times/);
    expect(/which agrees/.test(lessons)).toBe(/that agrees/.test(hover));
    expect(/one flour alone/.test(lessons)).toBe(/one flour alone/.test(hover));
    expect(nextOf(service).includes('Whether it is the flour or bench')).toBe(/one flour alone/.test(hover));
  });

  it('tells of stages where nobody took a temperature', () => {
    const service = onBench('3 min, developed', '8 min, let-down', '16 min, breakdown');
    expect(lessonsOf(service)).toContain('no trial of this mixer has a temperature');
    expect(lessonsOf(service)).toMatch(/On bench the dough developed [\d.]+ to [\d.]+ times as fast/);
    expect(nextOf(service)).not.toContain('How fast bench develops dough');
  });

  it('says that stages disagree, and does not ask for a stage once more', () => {
    const service = onBench('8 min  24 °C, breakdown', '16 min  26 °C, pick-up', '30 min  27 °C');
    expect(lessonsOf(service)).toContain('the stages seen do not agree with one another');
    expect(nextOf(service)).not.toContain('How fast bench develops dough');
  });

  it('asks for a stage where none was seen, and not of rye, which goes through none', () => {
    const readings = ['8 min  24 °C', '16 min  26 °C', '30 min  27 °C'];
    const asked = 'How fast bench develops dough';
    expect(nextOf(onBench(...readings))).toContain(asked);
    const rye = formula('bench').replace('  white  100%', '  medium rye  100%');
    const text = kitchen + bench + rye + trial('in bench', 'speed 1 for 30 min', readings) + week('Plain');
    expect(nextOf(opened(text))).not.toContain(asked);
  });

  it('says that a kind of mixer learns nothing, and what does', () => {
    const readings = ['8 min  27 °C, smooth', '16 min  30 °C, smooth', '30 min  33 °C, shiny'];
    const text = (mixer: string, section: string): string =>
      kitchen +
      section +
      formula(mixer) +
      trial(`in ${mixer}`, 'speed 1 for 30 min', readings) +
      week('Plain');
    const alone = opened(text('spiral', ''));
    expect(lessonsOf(alone)).toContain('“mixer my spiral:”');
    expect(lessonsOf(alone)).not.toContain('one standard error');
    const own = opened(text('my spiral', 'mixer my spiral:\n  kind spiral\n\n'));
    expect(lessonsOf(own)).toContain('my spiral, how speed 1 warms');
  });

  it('names each dough of which a reading is wanted, and wants more than one of a mixer that nobody read', () => {
    const service = onBench('8 min  24 °C', '16 min  26 °C', '30 min  27 °C');
    const next = nextOf(service);
    expect(next).toContain('Plain, by hand: no reading yet. Take two or three, one of them at 30 min');
    const both = opened(
      kitchen +
        bench +
        formula('bench') +
        trial('in bench', 'speed 1 for 30 min', ['8 min  24 °C', '16 min  26 °C', '30 min  27 °C']) +
        week('Plain', 'Plain, in bench, speed 2 for 30 min'),
    );
    expect(nextOf(both)).toContain('Plain, in bench, speed 2 for 30 min: no reading yet. The one at 30 min');
  });

  it('says that readings contradict one another, as the hint on the mixer does', () => {
    const contradicting = onBench('8 min  31 °C', '16 min  22 °C', '30 min  33 °C');
    const hint = contradicting.findings(uri).find(({ code }) => code === 'mixer-can-be-calibrated');
    expect(hint?.message).toContain('The readings contradict one another');
    expect(lessonsOf(contradicting)).toContain('The readings contradict one another');
    const agreeing = onBench('8 min  24 °C', '16 min  26 °C', '30 min  27 °C');
    expect(lessonsOf(agreeing)).not.toContain('contradict');
  });
});
