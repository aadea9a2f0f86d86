import { describe, expect, it } from 'vitest';
import { stagesFelt, stagesSeen } from '../../core/analysis/feel.ts';
import { seenDevelopment } from '../../core/analysis/observed-development.ts';
import { createService } from '../../core/index.ts';
import { feelWords } from '../../core/syntax/vocabulary.ts';
import { emptySnapshot, withRoots, withText } from '../../core/workspace/snapshot.ts';
import { Cache } from '../../core/workspace/snapshot-view.ts';

// What feel tells of a stage is common practice, no source: a dough that clears the bowl is past picking up and not let down, a
// smooth one nears its development or has it, a shiny one has it or has just passed it.

describe('the feel of a dough', () => {
  it.each([
    [['smooth'], { earliest: 'developing', latest: 'developed' }],
    [['clears the bowl'], { earliest: 'clean-up', latest: 'developed' }],
    [['smooth', 'shiny'], { earliest: 'developed', latest: 'developed' }],
    [['shiny', 'sticky'], { earliest: 'let-down', latest: 'let-down' }],
    [['tears'], { earliest: 'pick-up', latest: 'developing' }],
    [['tears', 'window'], { earliest: 'pick-up', latest: 'developing' }],
    [['sticky'], 'both-ends'],
    [['wet', 'sticks to the bowl'], 'both-ends'],
    [['window'], 'any'],
    [['rough', 'shiny'], 'contradict'],
  ])('%j', (words, stages) => {
    expect(stagesFelt(words)).toEqual(stages);
  });

  it('decides nothing where a stage is written, and a word never widens what others tell', () => {
    expect(stagesSeen({ stage: 'developed', feel: ['rough'] })).toEqual({
      earliest: 'developed',
      latest: 'developed',
    });
    const places = ['pick-up', 'clean-up', 'developing', 'developed', 'let-down', 'breakdown'];
    const width = (words: readonly string[]): number => {
      const felt = stagesFelt(words);
      return typeof felt === 'string'
        ? places.length
        : places.indexOf(felt.latest) - places.indexOf(felt.earliest);
    };
    for (const one of feelWords)
      for (const other of feelWords) {
        const [alone, both] = [stagesFelt([one]), stagesFelt([one, other])];
        if (typeof alone !== 'string' && typeof both !== 'string')
          expect(width([one, other])).toBeLessThanOrEqual(width([one]));
      }
  });
});

const uri = 'file:///quay-lane/a.dough';
const formula = (reading: string): string =>
  `formula Plain White:\n  yield 10 kg\n  bread flour  100%\n  water  62%\n  salt  2%\n\nmix in spiral:\n  load all\n  speed 1 for 12 min\n\n` +
  `trial 2026-03-14:\n  room 21 °C\n  flour 20 °C\n  water 15 °C\n  mixed in spiral\n  speed 1 for 12 min\n  ${reading}\n`;

describe('a reading with feel', () => {
  it('teaches the mixer as a stage does, with a wider band', () => {
    const seenIn = (reading: string) => {
      const snapshot = withText(withRoots(emptySnapshot, ['file:///quay-lane/']), uri, formula(reading));
      const view = new Cache().at(snapshot);
      const { block } = view.read(uri)!.source.blocks[0]!;
      return seenDevelopment(view.analysisOf(uri, block)!, view.scopeOf(uri));
    };
    const stage = seenIn('at 2 min 20 °C, developed');
    const felt = seenIn('at 2 min 20 °C, smooth');
    expect(stage!.least).toBeGreaterThan(1);
    // Smooth may be a dough that is nearly developed: less follows from it.
    expect(felt!.least).toBeGreaterThan(1);
    expect(felt!.least).toBeLessThan(stage!.least);
    expect(felt!.most ?? 10).toBeCloseTo(stage!.most ?? 10, 6);
    expect(seenIn('at 2 min 20 °C, window')).toBeUndefined();
    expect(seenIn('at 2 min 20 °C, sticky')).toBeUndefined();
    expect(seenIn('at 2 min 20 °C, pick-up, smooth')).toEqual(seenIn('at 2 min 20 °C, pick-up'));
  });

  it('is said beside what was measured, and why a window decides nothing', () => {
    const service = createService();
    service.setText(uri, formula('at 6 min 20 °C, window, stretches'));
    expect(service.hover(uri, 16, 4)!.markdown).toContain('stretches and a window can be pulled');
    service.setText(uri, formula('at 6 min 20 °C, window'));
    expect(service.hover(uri, 16, 4)!.markdown).toContain('A window tells no stage by itself');
    service.setText(uri, formula('at 6 min 20 °C, developing, smooth'));
    expect(service.hover(uri, 16, 4)!.markdown).toContain('The stage that is written counts');
    expect(service.findings(uri).filter(({ level }) => level === 'error')).toEqual([]);
  });
});
