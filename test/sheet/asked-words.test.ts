import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type AskedWords, askedFromWords, plainSpeaker } from '../../core/index.ts';

describe('what a sheet is asked for in words', () => {
  it.each<[AskedWords, object]>([
    [{ pieces: '24' }, { size: { by: 'pieces', pieces: 24 } }],
    [{ pieces: '24 pieces' }, { size: { by: 'pieces', pieces: 24 } }],
    [{ dough: '20kg' }, { size: { by: 'dough', grams: 20_000 } }],
    [{ baked: ' 12,5 kg ' }, { size: { by: 'baked', grams: 12_500 } }],
    // 10 lb at 0.45359237 kg, NIST Handbook 44, appendix C.
    [{ flour: '10 lb' }, { size: { by: 'flour', grams: 4535.9237 } }],
    [{ bowls: '2' }, { size: { by: 'bowl', batches: 2 } }],
    [{ onHand: 'bread flour = 12kg' }, { size: { by: 'onHand', ingredient: 'bread flour', grams: 12_000 } }],
    [{ onHand: 'a=b=1/2 kg' }, { size: { by: 'onHand', ingredient: 'a=b', grams: 500 } }],
    [{ start: '05:00' }, { clock: { by: 'start', minutes: 300 } }],
    [{ ready: '23:59' }, { clock: { by: 'ready', minutes: 1439 } }],
    [{ room: '26C', tap: '50 °F' }, { today: { roomCelsius: 26, tapCelsius: 10 } }],
    [{ flourTemp: '-2 °C', scaleStep: '5 g' }, { today: { flourCelsius: -2, scaleStepGrams: 5 } }],
    [{ mixer: 'spiral one' }, { today: { mixer: 'spiral one' } }],
    [{}, {}],
  ])('%j is read as a file is', (words, asked) => {
    expect(askedFromWords(words)).toEqual({ asked });
  });

  it.each<[AskedWords, string]>([
    [{ pieces: '0' }, 'write a whole number above 0, for example 24.'],
    [{ pieces: '2.5' }, 'write a whole number above 0, for example 24.'],
    [{ bowls: 'two' }, 'write a whole number above 0, for example 24.'],
    [{ dough: '20' }, 'write a unit behind the number, for example 20 kg or 20 g.'],
    [{ dough: '0 kg' }, 'write a weight above 0 with its unit, for example 20 kg or 850 g.'],
    [{ flour: '20 kg of it' }, 'write a weight above 0 with its unit, for example 20 kg or 850 g.'],
    [{ flour: '3 l' }, 'write a weight above 0 with its unit, for example 20 kg or 850 g.'],
    [{ dough: '1,000 g' }, 'that can be read in more ways than one: write 1000 g or 1 g.'],
    [{ onHand: '12 kg' }, 'write the ingredient and its weight, for example "bread flour=12 kg".'],
    [{ room: '26' }, 'write a unit behind the number, for example 26 °C or 26 °F.'],
    [{ tap: 'cold' }, 'write a temperature with its unit, for example 26 °C.'],
    [{ ready: '24:00' }, 'write a time of day from 00:00 to 23:59, for example 05:00.'],
    [{ start: '5 h' }, 'write a time of day from 00:00 to 23:59, for example 05:00.'],
  ])('%j is told with its cure', (words, cure) => {
    const read = askedFromWords(words);
    if (!('cure' in read)) throw new Error('It can be read.');
    expect(read.word).toBe(Object.keys(words)[0]);
    expect(plainSpeaker.say(read.cure)).toBe(cure);
  });

  it('no text makes it stumble, nor gives a number that is none', () => {
    const words = fc.constantFrom<keyof AskedWords>(
      'pieces',
      'dough',
      'onHand',
      'bowls',
      'start',
      'room',
      'scaleStep',
    );
    const text = fc.oneof(fc.string(), fc.stringMatching(/^[0-9½,./: kgC°=-]{0,9}$/u));
    fc.assert(
      fc.property(words, text, (word, written) => {
        const read = askedFromWords({ [word]: written });
        if ('cure' in read) expect(plainSpeaker.say(read.cure)).toMatch(/\.$/);
        else expect(JSON.stringify(read.asked)).not.toMatch(/null/);
      }),
    );
  });
});
