import fc from 'fast-check';
import type { Arg } from '../../core/words/args.ts';
import { type Message, message } from '../../core/words/message.ts';

/**
 * What may stand for each argument of a message: the value of the sentences in the fixture, and any value that may come.
 * An argument is known by its name alone, so a new name wants its row here and nothing else.
 */
type Sample<T> = { readonly usual: T; readonly any: fc.Arbitrary<T> };

/** What a sentence holds where a figure or a name is lacking, or is not written out. */
export const broken = /undefined|NaN|Infinity|\[object|[\uE000-\uF8FF]/;

const extreme = fc.oneof(
  fc.constantFrom(0, 1, 2, 5, 0.005, -1, 1e9, -1e-9, 0.1 + 0.2),
  fc.double({ min: -1e6, max: 1e9, noNaN: true }),
);
const number = (usual: number): Sample<number> => ({ usual, any: extreme });
const whole = (usual: number): Sample<number> => ({
  usual,
  any: fc.oneof(fc.constantFrom(0, 1, 2, 5), fc.nat()),
});
const text = (usual: string): Sample<string> => ({
  usual,
  // What no sentence may hold of its own, no name holds here.
  any: fc.oneof(
    fc.string({ maxLength: 40 }).filter((one) => !broken.test(one)),
    fc.constantFrom('', '–5 °C', '$&', '#', '“', '`', '<b>'),
  ),
});
const texts = (...usual: string[]): Sample<readonly string[]> => ({
  usual,
  any: fc.array(text('').any, { maxLength: 12 }),
});

const nested = message('fix.take-out');
const other = message('fix.write', { meant: '2%' });
const said = (usual: Message): Sample<Message> => ({ usual, any: fc.constantFrom(nested, other, usual) });

export const samples: { readonly [N in keyof Arg]: Sample<Arg[N]> } = {
  count: whole(2),
  otherCount: whole(3),
  trialCount: whole(40),
  fraction: number(0.2),
  lowFraction: number(0.015),
  highFraction: number(0.025),
  usualFraction: number(0.05),
  heldFraction: number(0.12),
  laterFraction: number(0.1),
  targetFraction: number(0.3),
  limitFraction: number(0.155),
  lowFactor: number(1.3),
  highFactor: number(1.6),
  apartFraction: number(0.255),
  withinFraction: number(0.255),
  grams: number(1250),
  otherGrams: number(5000),
  doughGrams: number(20000),
  pouredGrams: number(20400),
  bakedGrams: number(20100),
  lostGrams: number(400),
  stuckGrams: number(150),
  iceGrams: number(1200),
  tapGrams: number(5100),
  leastGrams: number(12000),
  mostGrams: number(15000),
  gramsPerMillilitre: number(1.03),
  waterPerHundred: number(47),
  softPerHundred: number(49),
  microgramsPerKilogram: number(50),
  hours: number(12),
  minutes: number(8),
  lowMinutes: number(26),
  highMinutes: number(31),
  programmeMinutes: number(36),
  seconds: number(1200),
  otherSeconds: number(900),
  usualSeconds: number(7200),
  lowSeconds: number(3600),
  highSeconds: number(10800),
  celsius: number(27.3),
  lowCelsius: number(26.5),
  highCelsius: number(28.1),
  bandCelsius: number(0.8),
  targetCelsius: number(24),
  limitCelsius: number(26),
  doughCelsius: number(25.2),
  waterCelsius: number(13.5),
  tapCelsius: number(15),
  overCelsius: number(3.3),
  apartCelsius: number(1.2),
  laterCelsius: number(0.2),
  partCelsius: number(0.9),
  colderCelsius: number(10),
  fromCelsius: number(25),
  toCelsius: number(21),
  kilojoules: number(1520),
  amount: number(4.85),
  currency: text('EUR'),
  otherCurrency: text('USD'),
  celsiusPerMinute: number(0.46),
  rpm: number(12000),
  number: whole(3),
  otherNumber: whole(2),
  slowestNumber: whole(1),
  leastNumber: number(5),
  mostNumber: number(60),

  name: text('linsed'),
  otherName: text('linseed'),
  part: text('poolish'),
  names: texts('poolish', 'soaker', 'levain'),
  section: text('mixer'),
  otherSection: text('flour'),
  property: text('kind'),
  otherProperty: text('capacity'),
  unit: text('g'),
  code: text('U+200B'),
  words: texts('spiral', 'fork', 'planetary'),
  written: text('1.000 g'),
  otherWritten: text('62-66%'),
  meant: text('1 g'),
  otherMeant: text('1000 g'),
  choices: texts('1 g', '1000 g'),
  sentence: text('Salt is 4% of flour.'),
  example: text('water  65%'),

  file: text('flours.dough'),
  otherFile: text('quay-round.dough'),
  files: texts('bakery.dough', 'harbour-tin.dough'),
  revision: text('HEAD~1'),
  commit: text('0a1b2c3d'),
  option: text('--since'),
  command: text('git fsck'),
  setting: text('diff.doughwright.command'),

  reason: { usual: nested, any: fc.constantFrom(nested, other) },
  title: said(other),
  warmth: said(message('warmth.too')),
  stage: said(message('stage.developed')),
  otherStage: said(message('stage.clean-up')),
  degree: said(message('degree.improved')),
  state: said(message('programme.celsius', { celsius: 27.3 })),
  measured: said(message('reading.state', { celsius: 24 })),
  computed: said(message('reading.state', { celsius: 23.4 })),
  difference: said(message('reading.warmer', { apartCelsius: 0.6 })),
  figures: said(message('hint.both', { fraction: 0.2, grams: 1250 })),
  source: said(message('provenance.common-practice')),
  place: said(message('place.in-mixer', { name: 'big spiral' })),
  otherSource: said(message('provenance.published')),
  remark: said(message('food-remark.raw-with-skin')),
  water: said(message('water.at', { waterCelsius: 13.5 })),
  role: said(message('role.flour')),
  meaning: said(message('role.flour')),
  when: said(message('moment.from', { lowMinutes: 6, highMinutes: 8 })),
  otherWhen: said(message('moment.far-off')),
  parts: {
    usual: [nested, other],
    any: fc.array(fc.constantFrom(nested, other), { minLength: 1, maxLength: 6 }),
  },
  facts: { usual: [nested, other], any: fc.array(fc.constantFrom(nested, other), { maxLength: 6 }) },
};

/** Arguments for any message: each has what its name stands for. `taken` notes the names that were asked for. */
export function argsFrom(values: Readonly<Record<string, unknown>>, taken = new Set<string>()): object {
  return new Proxy(values, {
    get: (all, name) => {
      if (typeof name !== 'string' || !Object.hasOwn(all, name))
        throw new Error(`no argument of a message is called “${String(name)}”`);
      taken.add(name);
      return all[name];
    },
  });
}

export const usualArgs: Readonly<Record<string, unknown>> = Object.fromEntries(
  Object.entries(samples).map(([name, { usual }]) => [name, usual]),
);

export const anyArgs: fc.Arbitrary<Readonly<Record<string, unknown>>> = fc.record(
  Object.fromEntries(Object.entries(samples).map(([name, { any }]) => [name, any as fc.Arbitrary<unknown>])),
);
