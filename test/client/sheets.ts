import { foundAtNodes } from '../../core/sheet/build/found-at-nodes.ts';
import { labelsOf } from '../../core/sheet/build/sheet-labels.ts';
import { weighColumns } from '../../core/sheet/build/sheet-rows.ts';
import { plainSpeaker } from '../../core/words/speak.ts';
import type {
  Cell,
  Fact,
  Row,
  Section,
  SheetDocument,
  SheetFinding,
  Step,
  TableSection,
  WorkMoment,
} from '../../server/protocol.ts';

// Handwritten sheets of the Quay Lane bakery, which is our own invention. They are what a server might send; what the
// core really computes is tested elsewhere.

const uri = 'file:///quay-lane/harbour-tin.dough';
const labels = labelsOf(plainSpeaker);

/** A sheet of these sections, with what was found at the nodes of its lines. */
export function documentOf(
  formula: string,
  sections: readonly Section[],
  rest: Partial<SheetDocument> = {},
  findings: readonly SheetFinding[] = [],
): SheetDocument {
  const line = rest.line ?? 0;
  const found = foundAtNodes(sections, findings, line);
  return {
    version: 2,
    formula,
    uri,
    line,
    state: 'ready',
    tried: false,
    notDone: [],
    makes: [],
    scaleReading: true,
    size: { asked: { by: 'file' }, ingredients: [] },
    batches: { count: 1 },
    mixers: [],
    moments: momentsOf(sections),
    labels,
    ...rest,
    sections: found.sections,
    findings: found.elsewhere,
  };
}

const facts: readonly Fact[] = [
  fact('hydration', 'Hydration', '69 %', 8, 'effective 70.1 %'),
  fact('salt', 'Salt', '2.0 %', 9),
  fact('prefermented', 'Prefermented', '22 %', 14),
];

export const harbourGlance: Section = {
  kind: 'facts',
  id: 'glance',
  name: 'glance',
  title: '',
  facts: [
    {
      ...fact('dough temperature', 'Leaves the mixer at', '25.4 °C ± 0.8 °C', 4, '25 °C is wanted'),
      id: 'glance/dough temperature',
      verdict: { level: 'good', sign: '✓', word: 'as wanted' },
    },
    {
      ...fact('state', 'When you stop', 'developed', 28, 'best stopped after about 31 min'),
      id: 'glance/state',
      verdict: { level: 'off', sign: '≈', word: 'perhaps too early' },
    },
    {
      ...fact('water', 'Water', '1.2 kg of ice', 8, 'and 4.5 kg from the tap, at 12 °C'),
      id: 'glance/water',
      verdict: { level: 'bad', sign: '!', word: 'not enough' },
    },
  ],
};

const poolish = weighing(
  'before',
  'Night poolish',
  13,
  ['the evening before, 12 h at 18 °C'],
  [
    row('before/Night poolish', 'strong white', 15, 2681, undefined, '100 %'),
    row('before/Night poolish', 'water', 16, 2681, undefined, '100 %'),
    row('before/Night poolish', 'instant yeast', 17, 2.1, undefined, '0.08 %'),
  ],
);
const bowl = weighing(
  'bowl',
  'Into the bowl',
  20,
  ['at the start'],
  [
    row('bowl', 'strong white', 6, 7679, 7679, '63 %'),
    row('bowl', 'wholemeal wheat', 7, 1828, 9507, '15 %'),
    { ...row('bowl', 'water', 8, 5729, 15_236, '47 %'), notes: ['at 9 °C'] },
    row('bowl', 'night poolish', 13, 5364, 20_600),
  ],
);
const later = [
  weighing(
    'later',
    'After the rest',
    24,
    ['at 23 min'],
    [
      row('later/After the rest', 'salt', 9, 244, 20_844, '2 %'),
      row('later/After the rest', 'fresh yeast', 10, 110, 20_954, '0.9 %'),
    ],
  ),
  weighing(
    'later',
    'Later still',
    27,
    ['at 30 min'],
    [{ ...row('later/Later still', 'butter', 11, 488, 21_442, '4 %'), notes: ['at 8 °C'] }],
  ),
];

const mixing: TableSection = {
  kind: 'table',
  id: 'mixing',
  name: 'mixing',
  title: 'Mixing',
  when: ['33 min in big spiral'],
  line: 19,
  head: 'Work',
  columns: [
    { key: 'lasts', title: 'Lasts', figures: true },
    { key: 'until', title: 'Until', figures: true },
    { key: 'celsius', title: 'Dough', figures: true },
    { key: 'stage', title: 'Stage' },
  ],
  rows: [
    phase('slow', 21, 3, 3, '20.6 °C', 'pick-up'),
    phase('rest', 22, 20, 23, '20.3 °C'),
    phase('slow', 25, 4, 27, '21.9 °C', 'clean-up', 2),
    phase('fast', 26, 3, 30, '24.6 °C', 'developing'),
    phase('slow', 28, 3, 33, '25.4 °C', 'developed', 3),
  ],
  times: 1,
  notes: [
    'Developed at the end of mixing, with four slow minutes to spare before it lets down.',
    'Ends at about 25.4 °C.',
  ],
};

const steps: readonly Step[] = [
  'bulk 1 h 30 min at 25 °C, fold at 45 min',
  'divide',
  'rest 15 min',
  'shape',
  'proof 55 min at 28 °C',
  'bake 34 min at 230 °C, steam',
  'cool 2 h',
].map((text, index) => ({
  id: `clock/${text}`,
  of: 'step',
  line: 31 + index,
  when: `after ${index} h`,
  text,
  along: { from: index / 7, to: index / 7 },
  startSeconds: index * 3600,
}));
const clock: Section = {
  kind: 'steps',
  id: 'clock',
  name: 'clock',
  title: 'Clock',
  heads: ['At', 'Work', 'Lasts'],
  steps,
};
const cautions: Section = {
  kind: 'notes',
  id: 'cautions',
  name: 'cautions',
  title: 'Cautions',
  notes: ['Hands stay out of a running bowl.', 'Contains wheat and milk.'],
};
export const harbourFacts: Section = { kind: 'facts', id: 'facts', name: 'facts', title: '', facts };

export const harbourSections: readonly Section[] = [
  harbourGlance,
  harbourFacts,
  poolish,
  bowl,
  ...later,
  mixing,
  clock,
  cautions,
];
const harbourRest: Partial<SheetDocument> = {
  makes: ['24 pieces of 880 g', '21.4 kg in the bowl'],
  size: {
    asked: { by: 'file' },
    ...{ pieces: 24, doughGrams: 21_442, flourGrams: 12_188, bakedGrams: 18_797 },
    ingredients: [],
  },
};

/** Harbour Tin with these sections or findings instead of its own. */
export function harbourWith(
  findings: readonly SheetFinding[],
  sections: readonly Section[] = harbourSections,
  rest: Partial<SheetDocument> = {},
): SheetDocument {
  return documentOf('Harbour Tin', sections, { ...harbourRest, ...rest }, findings);
}

/** A whole sheet with a preferment, three additions to the bowl, water, mixing and steps. */
export const harbourTin: SheetDocument = harbourWith([]);

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
export const withFindings: SheetDocument = harbourWith([
  findingAtWater,
  findingAtPhase,
  findingAtStep,
  findingAtNothing,
]);

/** What comes while a new line above the ingredients is half-typed: no figure is known, every line is one further down. */
export const harbourTinHeld: SheetDocument = harbourWith(
  [
    { ...findingAtWater, line: 9 },
    {
      line: 5,
      level: 'error',
      code: 'no-amount',
      message: 'Write the amount of barley malt extract with its unit.',
    },
  ],
  [
    ...[poolish, bowl, ...later].map(
      ({ sum: _, ...section }): TableSection => ({
        ...section,
        line: section.line! + 1,
        rows: section.rows.map(({ id, name, line }) => ({ id, name, line: line! + 1, cells: {} })),
      }),
    ),
    { ...clock, steps: steps.map((step) => ({ ...step, line: step.line! + 1 })) },
    cautions,
  ],
  {
    state: 'held',
    heldBy: { line: 5, message: 'Write the amount of barley malt extract with its unit.' },
    makes: [],
    size: { asked: { by: 'file' }, ingredients: [] },
  },
);

export const emptyFormula: SheetDocument = documentOf('Pilot Boat', [], { line: 40, state: 'empty' });

/** Forty ingredients, each with a name of sixty characters, and one of sixty without a blank to break at. */
export const crowdedSheet: SheetDocument = documentOf(
  'A loaf with everything on the shelf of the Quay Lane bakery!',
  [
    harbourFacts,
    {
      ...bowl,
      rows: Array.from({ length: 40 }, (_, index) => {
        const blanks = `number ${index + 1} of the long-named seeds from the upper shelf of the store`;
        const name = index === 20 ? 'x'.repeat(60) : blanks.slice(0, 60);
        return row('bowl', name, 50 + index, 12_500.5, 12_500.5 * (index + 1), '2.5 %');
      }),
    },
    mixing,
    clock,
    cautions,
  ],
  harbourRest,
);

/** Names in Hebrew and Arabic, one with a figure in it, between names in Latin letters. */
export const rightToLeftSheet: SheetDocument = documentOf(
  'לחם המזח',
  [
    harbourFacts,
    {
      ...bowl,
      title: 'לתוך הקערה',
      rows: [
        row('bowl', 'קמח לבן 550', 6, 7679, 7679, '63 %'),
        row('bowl', 'دقيق القمح الكامل', 7, 1828, 9507, '15 %'),
        { ...row('bowl', 'water', 8, 5729, 15_236, '47 %'), notes: ['at 9 °C'] },
      ],
    },
    mixing,
    clock,
    cautions,
  ],
  harbourRest,
);

export const markupName = '<img src=x onerror="document.title=1">';

/** A sheet in which every text that comes from the file is markup. */
export const markupSheet: SheetDocument = documentOf(
  markupName,
  [
    { ...harbourFacts, facts: [fact('hydration', 'Hydration', markupName, 8, markupName)] } as Section,
    ...[bowl, ...later].map(
      (section): TableSection => ({
        ...section,
        title: markupName,
        lead: [markupName],
        rows: section.rows.map((one) => ({ ...one, name: markupName, notes: [markupName] })),
      }),
    ),
    mixing,
    { ...clock, steps: [{ ...steps[0]!, text: markupName }] } as Section,
    { ...cautions, notes: [markupName] },
  ],
  { makes: [markupName] },
  [{ line: 2, level: 'warning', code: 'any', message: markupName }],
);

function fact(key: string, label: string, value: string, line: number, note?: string): Fact {
  return {
    ...{ id: `facts/${key}`, key, label, value, line, source: 'file' },
    notes: note === undefined ? [] : [note],
  };
}

function weighing(
  name: 'before' | 'bowl' | 'later',
  title: string,
  line: number,
  when: readonly string[],
  rows: readonly Row[],
): TableSection {
  const grams = rows.reduce((sum, { cells }) => sum + (cells.weigh?.grams ?? 0), 0);
  const id = name === 'bowl' ? name : `${name}/${title}`;
  return {
    kind: 'table',
    ...{ id, name, title, line, when, rows },
    head: 'Ingredient',
    columns: weighColumns(plainSpeaker),
    ...(rows.length < 2 ? {} : { sum: { id: `${id}/=`, name: 'Together', cells: { weigh: figure(grams) } } }),
    times: 1,
  };
}

function row(
  section: string,
  name: string,
  line: number,
  grams: number,
  reads: number | undefined,
  percent?: string,
): Row {
  return {
    id: `${section}/${name}`,
    name,
    line,
    cells: {
      weigh: figure(grams),
      ...(reads === undefined ? {} : { reads: figure(reads) }),
      ...(percent === undefined ? {} : { percent: { text: percent } }),
    },
  };
}

function phase(
  name: string,
  line: number,
  minutes: number,
  endMinute: number,
  celsius: string,
  stage?: string,
  occurrence = 1,
): Row {
  return {
    id: occurrence === 1 ? `mixing/${name}` : `mixing/${name} ${occurrence}`,
    name,
    line,
    cells: {
      lasts: { text: `${minutes} min`, minutes },
      until: { text: `${endMinute} min`, minutes: endMinute },
      celsius: { text: celsius },
      ...(stage === undefined ? {} : { stage: { text: stage } }),
    },
  };
}

function figure(grams: number): Cell {
  if (grams >= 1000) return { grams, text: (grams / 1000).toFixed(3), unit: 'kg' };
  return { grams, text: grams < 10 ? grams.toFixed(1) : grams.toFixed(0), unit: 'g' };
}

/** The work of a handwritten sheet: the bowl and its programme as their lines follow each other. */
function momentsOf(sections: readonly Section[]): WorkMoment[] {
  const found = (wanted: (section: Section) => boolean): { line: number; moment: WorkMoment }[] =>
    sections.filter(wanted).flatMap((section) => {
      const { id, title, when = [], line = 0, name } = section;
      if (section.kind === 'table' && name === 'mixing')
        return section.rows.map((one, index) => ({ line: one.line ?? 0, moment: mixMoment(one, index) }));
      if (section.kind === 'steps')
        return section.steps.map((step) => ({
          line: step.line ?? 0,
          moment: { id: step.id, of: 'step', title: step.text, when: [] },
        }));
      return [{ line, moment: { id, of: 'weigh', title, when } }];
    });
  const byLine = found(({ name }) => ['bowl', 'later', 'mixing'].includes(name)).sort(
    (one, other) => one.line - other.line,
  );
  return [...found(({ name }) => name === 'before'), ...byLine, ...found(({ name }) => name === 'clock')].map(
    ({ moment }) => moment,
  );
}

function mixMoment({ id, name, cells }: Row, index: number): WorkMoment {
  return {
    ...{ id, of: 'mix', title: name, when: [], seconds: cells.lasts!.minutes! * 60 },
    ends: {
      minute: cells.until!.minutes!,
      celsius: cells.celsius!.text,
      ...(cells.stage === undefined ? {} : { stage: cells.stage.text }),
      isLast: index === 4,
    },
  };
}
