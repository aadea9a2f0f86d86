import { catalogueIngredients } from '../catalogue/catalogue.ts';
import { mixers } from '../catalogue/mixers.ts';
import { formulaOf } from '../model/formula-model.ts';
import { findIngredient } from '../model/ingredient.ts';
import type { Definition, Scope } from '../model/scope.ts';
import { rules } from '../rules/catalogue.ts';
import { nameBetween } from '../syntax/names.ts';
import type { Block, Context, SectionKind } from '../syntax/tree.ts';
import {
  type Form,
  findProperty,
  holdsIngredients,
  type Property,
  properties,
  roleWords,
  stageWords,
  stepWords,
  subSections,
  topSections,
  wordsOfForm,
} from '../syntax/vocabulary.ts';
import { percent } from '../text/figures.ts';
import type { Completion, CompletionKind } from './answers.ts';
import { subSnippets, topSnippets } from './snippets.ts';

/** A completion whose place is a stretch of the line asked about. */
export type LineCompletion = Omit<Completion, 'replace'> & {
  readonly replace: { readonly start: number; readonly end: number };
};

interface Asked {
  readonly block: Block;
  readonly line: number;
  readonly text: string;
  /** What stands before the cursor on the line. */
  readonly before: string;
  readonly column: number;
  readonly scope: Scope;
}

/** What may be written at a column of a line, by the form of the line; nothing inside a comment or a note. */
export function completionsOf(block: Block, line: number, column: number, scope: Scope): LineCompletion[] {
  const text = block.lines[line]?.text ?? '';
  const before = text.slice(0, column);
  const asked: Asked = { block, line, text, before, column, scope };
  const comment = /(?:^|\s)#(.*)$/.exec(before);
  if (comment !== null) return inComment(asked, comment[1]!);
  const context = contextAt(block, line);
  if (/^\s*note\s/i.test(before)) return [];
  const amount = /(?:^|\s)(\d+(?:[.,]\d+)?)\s?([^\s\d,]*)$/.exec(before);
  if (amount !== null && context !== 'none') return unitsAfter(asked, context, amount[2]!);
  if (/^\s*$/.test(before) || /^\s*[^\s\d"]+$/.test(before)) return atLineStart(asked, context);
  return inLine(asked, context);
}

function contextAt(block: Block, line: number): Context {
  const all = block.top === undefined ? block.subs : [block.top, ...block.subs];
  const found = all.findLast((section) => section.headerLine < line && line < section.endLine);
  return found?.kind ?? 'none';
}

function wordStart(asked: Asked): number {
  return asked.before.length - /[^\s,]*$/.exec(asked.before)![0].length;
}

function make(
  asked: Asked,
  label: string,
  kind: CompletionKind,
  more: Partial<LineCompletion> & { start?: number } = {},
): LineCompletion {
  const { start, ...rest } = more;
  return {
    label,
    kind,
    insert: label,
    replace: { start: start ?? wordStart(asked), end: asked.column },
    ...rest,
  };
}

function inComment(asked: Asked, words: string): LineCompletion[] {
  if (/^\s*accept\s+(?:[a-z0-9-]+\s*,\s*)*[a-z0-9-]*$/.test(words)) {
    const start = asked.before.length - /[a-z0-9-]*$/.exec(asked.before)![0].length;
    return rules
      .filter((rule) => rule.check !== undefined)
      .map((rule) => make(asked, rule.code, 'rule', { start, detail: rule.title, insert: `${rule.code}: ` }));
  }
  if (!/^\s*[a-z]*$/.test(words) || !'accept'.startsWith(words.trim())) return [];
  const start = asked.before.length - words.trimStart().length;
  return [
    make(asked, 'accept', 'word', {
      start,
      detail: 'silences one finding on this line, with a reason',
      insert: 'accept ',
    }),
  ];
}

const unitsOfForm: Partial<Record<Form, readonly string[]>> = {
  temperature: ['°C', '°F'],
  difference: ['°C', '°F'],
  mass: ['g', 'kg'],
  volume: ['ml', 'l'],
  percent: ['%'],
  protein: ['%'],
  pieces: ['pieces'],
  ovenLoad: ['pieces', 'kg'],
  duration: ['min', 'h', 's'],
  heldAt: ['h', 'min', '°C'],
  settles: ['min', 'g'],
  times: ['times'],
  energy: ['kJ', 'kcal'],
  density: ['g/ml'],
  massRange: ['kg', 'g'],
  machineSpeed: ['rpm', '°C/min', 'times'],
  mixSpeed: ['min', 's'],
  yield: ['pieces', 'g', 'kg'],
  draws: ['%'],
  reading: ['min', '°C'],
  rise: ['%', 'min', 'h'],
  trialWater: ['°C', 'kg'],
  load: ['%', '°C'],
};

function unitsAfter(asked: Asked, context: Context, begun: string): LineCompletion[] {
  const property = propertyOf(asked, context);
  const units =
    property !== undefined
      ? (unitsOfForm[property.form] ?? [])
      : context === 'process'
        ? ['min', 'h', '°C']
        : context === 'plan'
          ? ['pieces', 'kg']
          : ['%', 'g', 'kg', 'ml', 'pieces', 'tsp', 'tbsp', 'cup'];
  const start = asked.before.length - begun.length;
  const glued = /\d$/.test(asked.before.slice(0, start));
  return units.map((unit, index) =>
    make(asked, unit, 'unit', {
      start,
      insert: glued && unit !== '%' ? ` ${unit}` : unit,
      sort: String(index),
    }),
  );
}

function propertyOf(asked: Asked, context: Context): Property | undefined {
  if (context === 'none' || context === 'unknown') return undefined;
  const words = asked.text.trim().toLowerCase();
  return properties[context].find((one) => words === one.word || words.startsWith(`${one.word} `));
}

function atLineStart(asked: Asked, context: Context): LineCompletion[] {
  const found: LineCompletion[] = [];
  const formula = asked.block.top?.kind === 'formula';
  const inSection = context !== 'none' && context !== 'unknown';
  if (inSection) {
    for (const property of properties[context as SectionKind]) {
      found.push(
        make(asked, property.word, 'property', {
          detail: property.example,
          documentation: property.meaning,
          insert: `${property.word} `,
          sort: `2${property.word}`,
        }),
      );
    }
    if (holdsIngredients(context)) found.push(...ingredients(asked, true));
    if (context === 'process') {
      for (const word of stepWords)
        found.push(make(asked, word, 'word', { detail: 'a step', insert: `${word} `, sort: `1${word}` }));
    }
    if (context === 'plan') {
      for (const one of asked.scope.names('formula'))
        found.push(
          make(asked, one.name.text, 'ingredient', { detail: 'formula', insert: `${one.name.text}  ` }),
        );
    }
  }
  for (const word of topSections) found.push(section(asked, word, topSnippets[word]));
  if (formula) for (const word of subSections) found.push(section(asked, word, subSnippets[word]));
  return found;
}

function section(asked: Asked, word: string, snippet: string | undefined): LineCompletion {
  const start = asked.before.length - asked.before.trimStart().length;
  return make(asked, word, 'section', {
    start: /^\s*$/.test(asked.before) ? asked.column : start,
    detail: 'starts a section',
    insert: snippet ?? `${word} `,
    sort: `3${word}`,
    ...(snippet === undefined ? {} : { snippet: true as const }),
  });
}

function ingredients(asked: Asked, padded: boolean): LineCompletion[] {
  const start = asked.before.length - asked.before.trimStart().length;
  const at = padded ? start : wordStart(asked);
  const found: LineCompletion[] = [];
  const seen = new Set<string>();
  const insertOf = (name: string): string => (padded ? `${name.padEnd(18)} ` : name);
  const push = (name: string, detail: string, sort: string, kind: CompletionKind = 'ingredient'): void => {
    if (seen.has(name)) return;
    seen.add(name);
    found.push(
      make(asked, name, kind, { start: at, detail, insert: insertOf(name), sort: `${sort}${name}` }),
    );
  };
  const model = formulaOf(asked.block);
  for (const part of model?.sections.slice(1) ?? [])
    if (part.name !== undefined) push(part.name.text, part.kind, '0', 'part');
  for (const one of asked.scope.names('ingredient')) push(one.name.text, detailOf(one, asked.scope), '0');
  for (const one of catalogueIngredients)
    push(one.name, compositionDetail(one.role, one.composition.water, one.composition.protein), '1');
  return found;
}

function detailOf(definition: Definition, scope: Scope): string {
  const found = findIngredient(definition.name, scope);
  if (found.kind !== 'found') return '';
  return compositionDetail(
    found.ingredient.role,
    found.ingredient.composition.water,
    found.ingredient.flour?.protein ?? found.ingredient.composition.protein,
  );
}

function compositionDetail(role: string, water: number | undefined, protein: number | undefined): string {
  if (role === 'flour') return protein === undefined ? 'flour' : `flour, ${percent(protein)} protein`;
  return water === undefined || water < 0.005 ? role : `${role}, ${percent(water)} water`;
}

function inLine(asked: Asked, context: Context): LineCompletion[] {
  const header = /^\s*mix\s+(?:.*\s)?in\s+(.*)$/i.exec(asked.before);
  if (header !== null && context !== 'process')
    return mixerNames(
      asked,
      asked.before.length - header[1]!.length,
      asked.text.trimEnd().endsWith(':') ? '' : ':',
    );
  const property = propertyOf(asked, context);
  if (property === undefined) {
    if (holdsIngredients(context) && /^\s*[^\d,]*$/.test(asked.before)) {
      const atAmount = /\s{2,}\S*$/.test(asked.before.trimStart());
      const words = ['balance', 'to 70% hydration', 'to 70% effective hydration'];
      return [
        ...(atAmount ? words.map((word) => make(asked, word, 'word')) : []),
        ...(atAmount ? [] : ingredients(asked, true)),
      ];
    }
    return [];
  }
  const words = wordsOfForm[property.form];
  if (words !== undefined) return words.map((word) => make(asked, word, 'word'));
  if (property.word === 'default mixer' || property.word === 'mixer') {
    const start = asked.before.length - asked.before.trimStart().length + property.word.length + 1;
    return mixerNames(asked, Math.min(start, asked.column), '');
  }
  if (property.form === 'load') return loadItems(asked);
  if (property.form === 'reading' && /,\s*\S*$/.test(asked.before))
    return stageWords.map((word) => make(asked, word, 'word'));
  if (property.form === 'draws')
    return [...roleWords.map((word) => make(asked, word, 'word')), ...doughNames(asked)];
  if (property.word === 'like') return ingredients(asked, false);
  const found =
    context === 'none' || context === 'unknown' ? undefined : findProperty(context, property.word);
  return found === undefined || asked.before.trim() !== property.word
    ? []
    : [make(asked, found.example.slice(found.word.length + 1), 'word', { detail: 'example' })];
}

function mixerNames(asked: Asked, start: number, end: string): LineCompletion[] {
  const own = asked.scope
    .names('mixer')
    .map((one) =>
      make(asked, one.name.text, 'mixer', { start, detail: 'mixer', insert: one.name.text + end, sort: '0' }),
    );
  const kinds = mixers
    .filter((one) => one.name !== 'hand')
    .map((one) =>
      make(asked, one.name, 'mixer', {
        start,
        detail: 'a usual one of this kind',
        insert: one.name + end,
        sort: '1',
      }),
    );
  return [...own, ...kinds];
}

function doughNames(asked: Asked): LineCompletion[] {
  const model = formulaOf(asked.block);
  const names = new Set(model?.sections[0]?.lines.map((line) => line.statement.name.text) ?? []);
  return [...names].map((name) => make(asked, name, 'ingredient'));
}

function loadItems(asked: Asked): LineCompletion[] {
  const model = formulaOf(asked.block);
  const item = /(?:^\s*\S+\s+|,\s*)([^,]*)$/.exec(asked.before);
  const start = item === null ? wordStart(asked) : asked.before.length - item[1]!.length;
  const found = new Map<string, LineCompletion>();
  const push = (name: string, kind: CompletionKind, sort: string): void => {
    const folded = nameBetween(name, 0, name.length).folded;
    if (!found.has(folded)) found.set(folded, make(asked, name, kind, { start, sort }));
  };
  for (const section of model?.sections.slice(1) ?? [])
    if (section.name !== undefined) push(section.name.text, 'part', '0');
  for (const line of model?.sections[0]?.lines ?? []) push(line.statement.name.text, 'ingredient', '1');
  for (const role of ['flour', 'remaining water', 'all fat']) push(role, 'word', '2');
  return [...found.values()];
}
