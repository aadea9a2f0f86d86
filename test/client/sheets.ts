import { labelsOf } from '../../core/sheet/build/sheet-labels.ts';
import { plainSpeaker } from '../../core/words/speak.ts';
import type { SheetBlock, SheetFigure, SheetFinding, SheetRow, SheetView } from '../../server/protocol.ts';

// Handwritten sheets of the Quay Lane bakery, which is our own invention. They are what a server might send; what the
// core really computes is tested elsewhere.

/** What a sheet holds beside its bands, where nothing is tried. */
const asInFile = {
  tried: false,
  notDone: [],
  batches: { count: 1 },
  conditions: [],
  mixers: [],
  timeline: { moments: [], endSeconds: 0, notes: [] },
  yields: [],
  trials: [],
  charts: [],
  labels: labelsOf(plainSpeaker),
} satisfies Partial<SheetView>;

/** A whole sheet with a preferment, three additions to the bowl, water, mixing, steps and a finding at each kind of thing. */
export const harbourTin: SheetView = {
  ...asInFile,
  formula: 'Harbour Tin',
  uri: 'file:///quay-lane/harbour-tin.dough',
  line: 0,
  state: 'ready',
  makes: ['24 pieces of 880 g', '21.4 kg in the bowl'],
  facts: [
    {
      key: 'hydration',
      label: 'Hydration',
      value: '69 %',
      note: 'effective 70.1 %',
      line: 8,
      source: 'file',
    },
    { key: 'salt', label: 'Salt', value: '2.0 %', line: 9, source: 'file' },
    { key: 'prefermented', label: 'Prefermented', value: '22 %', line: 14, source: 'file' },
    { key: 'temperature', label: 'Dough', value: '25 °C', line: 4, source: 'file' },
  ],
  size: {
    asked: { by: 'file' },
    pieces: 24,
    doughGrams: 21_442,
    flourGrams: 12_188,
    bakedGrams: 18_797,
    ingredients: [],
  },
  blocks: [
    {
      title: 'Night poolish',
      when: 'the evening before, 12 h at 18 °C',
      kind: 'before',
      times: 1,
      line: 13,
      rows: [
        row('strong white', 15, 2681, undefined, '100 %'),
        row('water', 16, 2681, undefined, '100 %'),
        row('instant yeast', 17, 2.1, undefined, '0.08 %'),
      ],
      total: figure(5364),
    },
    {
      title: 'Into the bowl',
      when: 'at the start',
      kind: 'bowl',
      times: 1,
      line: 20,
      rows: [
        row('strong white', 6, 7679, 7679, '63 %'),
        row('wholemeal wheat', 7, 1828, 9507, '15 %'),
        { ...row('water', 8, 5729, 15_236, '47 %'), note: 'at 9 °C' },
        row('night poolish', 13, 5364, 20_600),
      ],
      total: figure(20_600),
    },
    {
      title: 'After the rest',
      when: 'at 23 min',
      kind: 'later',
      times: 1,
      line: 24,
      rows: [row('salt', 9, 244, 20_844, '2 %'), row('fresh yeast', 10, 110, 20_954, '0.9 %')],
      total: figure(354),
    },
    {
      title: 'Later still',
      when: 'at 30 min',
      kind: 'later',
      times: 1,
      line: 27,
      rows: [{ ...row('butter', 11, 488, 21_442, '4 %'), note: 'at 8 °C' }],
      total: figure(488),
    },
  ],
  water: {
    line: 8,
    celsius: 9,
    text: 'Water at 9 °C: 4.5 kg from the tap and 1.2 kg of ice',
    detail: [
      'The dough is to end at 25 °C.',
      'Flour 19 °C, room 21 °C, poolish 18 °C.',
      'Mixing warms the dough by 6 °C.',
    ],
  },
  mixing: {
    line: 19,
    mixer: 'big spiral',
    total: '33 min',
    outlook: [
      'Developed at the end of mixing, with four slow minutes to spare before it lets down.',
      'Ends at about 25.4 °C.',
    ],
    phases: [
      {
        line: 21,
        label: 'slow',
        kind: 'speed',
        adds: [],
        minutes: 3,
        endMinute: 3,
        celsius: '20.6 °C',
        stage: 'pick-up',
      },
      { line: 22, label: 'rest', kind: 'rest', adds: [], minutes: 20, endMinute: 23, celsius: '20.3 °C' },
      {
        line: 25,
        label: 'slow',
        kind: 'speed',
        adds: [],
        minutes: 4,
        endMinute: 27,
        celsius: '21.9 °C',
        stage: 'clean-up',
      },
      {
        line: 26,
        label: 'fast',
        kind: 'speed',
        adds: [],
        minutes: 3,
        endMinute: 30,
        celsius: '24.6 °C',
        stage: 'developing',
      },
      {
        line: 28,
        label: 'slow',
        kind: 'speed',
        adds: [],
        minutes: 3,
        endMinute: 33,
        celsius: '25.4 °C',
        stage: 'developed',
      },
    ],
  },
  steps: [
    { line: 31, text: 'bulk 1 h 30 min at 25 °C, fold at 45 min' },
    { line: 32, text: 'divide' },
    { line: 33, text: 'rest 15 min' },
    { line: 34, text: 'shape' },
    { line: 35, text: 'proof 55 min at 28 °C' },
    { line: 36, text: 'bake 34 min at 230 °C, steam' },
    { line: 37, text: 'cool 2 h' },
  ],
  findings: [],
  cautions: ['Hands stay out of a running bowl.', 'Contains wheat and milk.'],
};

export const findingAtWater: SheetFinding = {
  line: 8,
  level: 'warning',
  code: 'hydration-high',
  message:
    'This flour takes about 66 % water; 69 % will be soft. Hold back some of the water and add it at the end.',
};
export const findingAtPhase: SheetFinding = {
  line: 26,
  level: 'error',
  code: 'mixed-past-breakdown',
  message: 'This phase runs past breakdown; stop it two minutes earlier.',
};
export const findingAtStep: SheetFinding = {
  line: 35,
  level: 'hint',
  code: 'proof-long',
  message: 'A long proof for this much yeast.',
};
export const findingAtNothing: SheetFinding = {
  line: 2,
  level: 'info',
  code: 'loss-high',
  message: 'More dough than usual stays in the bowl.',
};

/** The same sheet with a finding of each level. */
export const withFindings: SheetView = {
  ...harbourTin,
  findings: [findingAtWater, findingAtPhase, findingAtStep, findingAtNothing],
};

/** What comes while a new line above the ingredients is half-typed: no figure is known, every line is one further down. */
export const harbourTinHeld: SheetView = {
  ...harbourTin,
  state: 'held',
  heldBy: { line: 5, message: 'Write the amount of barley malt extract with its unit.' },
  makes: [],
  facts: [],
  size: { asked: { by: 'file' }, ingredients: [] },
  blocks: harbourTin.blocks.map((block) => ({
    ...block,
    line: block.line + 1,
    rows: block.rows.map((one) => ({ name: one.name, line: one.line + 1 })),
    total: figure(0),
  })),
  findings: [
    { ...findingAtWater, line: 9 },
    {
      line: 5,
      level: 'error',
      code: 'no-amount',
      message: 'Write the amount of barley malt extract with its unit.',
    },
  ],
};
delete (harbourTinHeld as { water?: unknown }).water;
delete (harbourTinHeld as { mixing?: unknown }).mixing;

export const emptyFormula: SheetView = {
  ...asInFile,
  formula: 'Pilot Boat',
  uri: harbourTin.uri,
  line: 40,
  state: 'empty',
  makes: [],
  facts: [],
  size: { asked: { by: 'file' }, ingredients: [] },
  blocks: [],
  steps: [],
  findings: [],
  cautions: [],
};

/** Forty ingredients, each with a name of sixty characters, and one of sixty without a blank to break at. */
export const crowdedSheet: SheetView = {
  ...harbourTin,
  formula: 'A loaf with everything on the shelf of the Quay Lane bakery!',
  blocks: [
    {
      ...harbourTin.blocks[1]!,
      rows: Array.from({ length: 40 }, (_, index) => {
        const blanks = `number ${index + 1} of the long-named seeds from the upper shelf of the store`;
        const name = index === 20 ? 'x'.repeat(60) : blanks.slice(0, 60);
        return row(name, 50 + index, 12_500.5, 12_500.5 * (index + 1), '2.5 %');
      }),
    },
  ],
};

/** Names in Hebrew and Arabic, one with a figure in it, between names in Latin letters. */
export const rightToLeftSheet: SheetView = {
  ...harbourTin,
  formula: 'לחם המזח',
  blocks: [
    {
      ...harbourTin.blocks[1]!,
      title: 'לתוך הקערה',
      rows: [
        row('קמח לבן 550', 6, 7679, 7679, '63 %'),
        row('دقيق القمح الكامل', 7, 1828, 9507, '15 %'),
        { ...row('water', 8, 5729, 15_236, '47 %'), note: 'at 9 °C' },
      ],
    },
  ],
};

export const markupName = '<img src=x onerror="document.title=1">';

/** A sheet in which every text that comes from the file is markup. */
export const markupSheet: SheetView = {
  ...harbourTin,
  formula: markupName,
  makes: [markupName],
  facts: [{ key: 'hydration', label: 'Hydration', value: markupName, note: markupName, source: 'file' }],
  blocks: harbourTin.blocks.map(
    (block): SheetBlock => ({
      ...block,
      title: markupName,
      note: markupName,
      rows: block.rows.map((one) => ({ ...one, name: markupName, note: markupName })),
    }),
  ),
  steps: [{ line: 30, text: markupName }],
  findings: [{ line: 2, level: 'warning', code: 'any', message: markupName }],
  cautions: [markupName],
};

function row(
  name: string,
  line: number,
  grams: number,
  reads: number | undefined,
  percent?: string,
): SheetRow {
  return {
    name,
    line,
    weigh: figure(grams),
    ...(reads === undefined ? {} : { scaleReads: figure(reads) }),
    ...(percent === undefined ? {} : { percent }),
  };
}

function figure(grams: number): SheetFigure {
  if (grams >= 1000) return { grams, figure: (grams / 1000).toFixed(3), unit: 'kg' };
  return { grams, figure: grams < 10 ? grams.toFixed(1) : grams.toFixed(0), unit: 'g' };
}
