import { allStepWords } from '../../core/syntax/known-step.ts';
import { patternsOfForm } from '../../core/syntax/line-forms.ts';
import type { Property } from '../../core/syntax/shared-properties.ts';
import type { SectionKind } from '../../core/syntax/tree.ts';
import { units } from '../../core/syntax/units.ts';
import {
  holdsIngredients,
  properties,
  sectionWords,
  subSections,
  topSections,
} from '../../core/syntax/vocabulary.ts';

/** The words of amounts and headers that the grammar for tree-sitter names itself. */
const ofGrammar = [
  ...['of', 'all', 'flour', 'a', 'piece', 'baked', 'to', 'effective', 'hydration', 'balance', 'remaining'],
  ...['per', 'at', 'in', 'by', 'hand', 'like'],
];
/** What joins the amounts of a value; other small letters in a pattern are words of a name there. */
const joining = new Set([
  'at',
  'baked',
  'develops',
  'for',
  'from',
  'in',
  'moisture',
  'of',
  'to',
  'warms',
  'within',
]);

/** The grammar for tree-sitter with the words of the vocabulary between its two marks. */
export function treeSitterGrammar(grammar: string): string {
  return grammar.replace(
    /(\/\/ <vocabulary>\n)[\s\S]*?(\/\/ <\/vocabulary>\n)/,
    (_, open: string, close: string) => `${open}${vocabulary()}${close}`,
  );
}

/** The description beside the grammar, with the version and the licence of the package. */
export function treeSitterDescription(description: string, manifest: string): string {
  const { version, license } = JSON.parse(manifest) as { readonly version: string; readonly license: string };
  const own = JSON.parse(description) as { readonly metadata: object };
  return `${JSON.stringify({ ...own, metadata: { ...own.metadata, version, license } }, null, 2)}\n`;
}

type Line = readonly [word: string, kind: 'value' | 'note' | 'price' | 'speed', joining: readonly string[]];

function lineOf({ word, form }: Property): Line {
  if (word === 'note') return [word, 'note', []];
  if (form === 'price') return [word, 'price', []];
  const kind = form === 'mixSpeed' || form === 'machineSpeed' ? 'speed' : 'value';
  const said = patternsOfForm[form].join(' ').match(/[a-z]+/g) ?? [];
  return [word, kind, [...new Set(said.filter((one) => joining.has(one)))].sort()];
}

function holdsOf(section: SectionKind): string | undefined {
  if (holdsIngredients(section)) return 'ingredient_line';
  return (
    { process: 'step', plan: 'planned_line', trial: 'part_temperature' } as Partial<
      Record<SectionKind, string>
    >
  )[section];
}

function vocabulary(): string {
  const lines = Object.fromEntries(
    sectionWords.map((section) => [
      section,
      { holds: holdsOf(section), properties: properties[section].map(lineOf) },
    ]),
  );
  const all = Object.values(lines).flatMap((one) => one.properties);
  const variants = [...new Set([[], ['at'], ...all.map(([, , words]) => words)].map((one) => one.join(' ')))];
  const words = new Set([
    ...sectionWords,
    ...all.flatMap(([word, , words]) => [word, ...words]),
    ...allStepWords,
    ...ofGrammar,
  ]);
  const durations = [...units].flatMap(([spelling, { measure }]) =>
    measure === 'duration' ? [spelling] : [],
  );
  const shown: readonly (readonly [string, unknown])[] = [
    ['sections', { top: topSections, below: subSections }],
    ['lines', lines],
    ['steps', allStepWords],
    ['valueVariants', variants.map((one) => one.split(' ').filter((word) => word !== ''))],
    ['words', [...words].sort()],
    ['units', longestFirst([...units.keys()])],
    ['durationUnits', longestFirst(durations)],
  ];
  return shown
    .map(([name, value]) => `const ${name} = ${JSON.stringify(value, null, 1).replace(/\n\s*/g, ' ')};\n`)
    .join('');
}

function longestFirst(words: readonly string[]): readonly string[] {
  return [...words].sort((one, other) => other.length - one.length || (one < other ? -1 : 1));
}
