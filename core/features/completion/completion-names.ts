import type { Role } from '../../calc/formula/role.ts';
import { catalogueIngredients, catalogueNamesAbroad, tonguesOfName } from '../../catalogue/catalogue.ts';
import { writtenTypes } from '../../catalogue/flour-types.ts';
import { mixers } from '../../catalogue/mixers.ts';
import { type FormulaModel, formulaOf } from '../../model/formula-model.ts';
import { findIngredient } from '../../model/found-ingredient.ts';
import type { Definition } from '../../model/scope.ts';
import { basesOf, wholeBlock } from '../../model/variant.ts';
import { parseLine } from '../../syntax/line.ts';
import { sectionAt } from '../../syntax/line-place.ts';
import { nameBetween } from '../../syntax/name-reading.ts';
import type { Name } from '../../syntax/tree.ts';
import { allPropertyWords } from '../../syntax/vocabulary.ts';
import { groupOf } from '../../text/element.ts';
import { foldName } from '../../text/names.ts';
import { type Message, message } from '../../words/message.ts';
import type { CompletionKind } from '../answers.ts';
import {
  type Asked,
  type LineCompletion,
  lineStart,
  make,
  wordStart,
  wordsBefore,
} from './completion-place.ts';
import { likelyIngredients } from './likely.ts';

/** Where a name is to be written, as a line that says it. */
const sayings = {
  ingredient: { context: 'formula', line: (name: string) => `${name}  100%` },
  load: { context: 'mix', line: (name: string) => `add ${name}` },
} as const;

/** A formula's name as a header takes it: in quotes where `like` would part it. */
function quotedName(name: string): string {
  return /\slike\s/i.test(` ${name} `) ? `"${name.replaceAll('"', '')}"` : name;
}

const grammarWords = /\b(?:all|at|balance|for|from|of|remaining|to)\b/;

/** A name as it is to be written: in quotes where it would else be read as something other than a name. */
function quoted(name: string, as: keyof typeof sayings): string {
  const { folded } = nameBetween(name, 0, name.length);
  // Most names are words that nobody else uses, and need no reading.
  const isPlain = /^[\p{L}\p{M} ]+$/u.test(folded) && !grammarWords.test(folded);
  if (isPlain && !allPropertyWords.has(folded)) return name;
  const { context, line } = sayings[as];
  const { statement, problems } = parseLine(line(name), { context, afterBlank: false });
  const read =
    statement.kind === 'ingredient'
      ? statement.name
      : statement.kind === 'property' && statement.value?.form === 'load'
        ? statement.value.items[0]?.name
        : undefined;
  return problems.length === 0 && read?.folded === folded ? name : `"${name}"`;
}

/** Names that may stand in a line; each kind with what tells it apart from the others. */

export function ingredients(asked: Asked, at: number, padded: boolean): LineCompletion[] {
  const found: LineCompletion[] = [];
  const seen = new Set<string>();
  const isNew = (name: string): boolean => {
    const folded = nameBetween(name, 0, name.length).folded;
    return !seen.has(folded) && seen.add(folded) !== undefined;
  };
  const insertOf = (name: string): string => (padded ? `${quoted(name, 'ingredient').padEnd(18)} ` : name);
  const { say } = asked.speaker;
  const anotherOf = (name: string): string => say(message('completion.another-name', { name }));
  const push = (name: string, detail: string, sort: string, kind: CompletionKind = 'ingredient'): void => {
    if (!isNew(name)) return;
    found.push(
      make(asked, name, kind, { start: at, detail, insert: insertOf(name), sort: `${sort}${name}` }),
    );
  };
  const likely = likelyIngredients(asked);
  const model = modelOf(asked);
  for (const part of model?.sections.slice(1) ?? [])
    if (part.name !== undefined) push(part.name.text, part.kind, '0', 'part');
  for (const one of asked.scope.names('ingredient')) {
    const found = findIngredient(one.name, asked.scope);
    const role = found.kind === 'found' ? found.ingredient.role : undefined;
    push(one.name.text, detailOf(one, asked), likely.keyOf(role, one.name.text, true));
  }
  const written = wordsBefore(asked).toLowerCase();
  for (const one of catalogueIngredients) {
    const detail = say(compositionMessage(one.role, one.composition.water, one.composition.protein));
    const name = writtenTypes.get(one.name) ?? one.name;
    push(name, detail, likely.keyOf(one.role, name, false));
    // Another name of the same is shown to who begins to write it.
    if (written === '') continue;
    for (const alias of one.aliases)
      if (alias.startsWith(written) && !one.name.startsWith(written))
        push(writtenTypes.get(alias) ?? alias, anotherOf(name), '1');
  }
  if (written === '') return found;
  // In the languages that the formula is written in already; its first line may be in any.
  const names =
    model?.sections.flatMap(({ lines }) => lines.map(({ statement }) => statement.name.folded)) ?? [];
  const others = names.filter((name) => name !== foldName(written));
  const tongues = new Set(others.flatMap(tonguesOfName));
  for (const one of catalogueNamesAbroad())
    if (one.folded.startsWith(foldName(written)) && (others.length === 0 || tongues.has(one.tongue)))
      push(one.written, anotherOf(writtenTypes.get(one.name) ?? one.name), '1');
  return found;
}

function detailOf(definition: Definition, { scope, speaker }: Asked): string {
  const found = findIngredient(definition.name, scope);
  if (found.kind !== 'found') return '';
  const { role, composition, flour } = found.ingredient;
  return speaker.say(compositionMessage(role, composition.water, flour?.protein ?? composition.protein));
}

/** What tells an ingredient apart: the protein of a flour, the water of another. */
function compositionMessage(role: Role, water: number | undefined, protein: number | undefined): Message {
  const said = message(`role.${role}`);
  if (role === 'flour')
    return protein === undefined ? said : message('completion.flour-protein', { fraction: protein });
  return water === undefined || water < 0.005
    ? said
    : message('completion.with-water', { role: said, fraction: water });
}

/** The mixers that are defined, then the kinds of the catalogue; `end` is written behind the name. */
export function mixerNames(asked: Asked, start: number, end: string): LineCompletion[] {
  const own = asked.scope.names('mixer').map((one) =>
    make(asked, one.name.text, 'mixer', {
      start,
      detail: asked.speaker.say(message('completion.mixer')),
      insert: one.name.text + end,
      sort: '0',
    }),
  );
  const kinds = mixers
    .filter((one) => one.name !== 'hand')
    .map((one) =>
      make(asked, one.name, 'mixer', {
        start,
        detail: asked.speaker.say(message('completion.usual-mixer')),
        insert: one.name + end,
        sort: '1',
      }),
    );
  return [...own, ...kinds];
}

/** The formula asked about, a variant with all that it takes of its base. */
function modelOf({ block, scope }: Asked): FormulaModel | undefined {
  return formulaOf(wholeBlock(block, scope));
}

/** The ingredients of the dough of this formula. */
export function doughNames(asked: Asked, from: { start?: number }): LineCompletion[] {
  const model = modelOf(asked);
  const names = new Set(model?.sections[0]?.lines.map((line) => line.statement.name.text) ?? []);
  return [...names].map((name) => make(asked, name, 'ingredient', from));
}

/** The parts of this formula. */
export function partNames(asked: Asked, start: number): LineCompletion[] {
  const parts = modelOf(asked)?.sections.slice(1) ?? [];
  return parts.flatMap(({ name, kind }) =>
    name === undefined ? [] : [make(asked, name.text, 'part', { start, detail: kind })],
  );
}

/** The formulas that a plan may name. */
export function formulaNames(asked: Asked): LineCompletion[] {
  return asked.scope.names('formula').map(({ name }) =>
    make(asked, name.text, 'formula', {
      start: lineStart(asked),
      detail: asked.speaker.say(message('completion.formula')),
      insert: `${name.text}  `,
    }),
  );
}

/** The experiments that a trial may belong to. */
export function experimentNames(asked: Asked, start: number): LineCompletion[] {
  return asked.scope.names('experiment').map(({ name }) => make(asked, name.text, 'formula', { start }));
}

/** A dough of an experiment: the formulas, then where it is mixed and how it is worked. */
export function testedDoughs(asked: Asked): LineCompletion[] {
  const comma = asked.before.lastIndexOf(',');
  const start = (comma < 0 ? /^\s*dough\s*/i.exec(asked.before)?.[0].length : comma + 1) ?? asked.column;
  const from = start + /^\s*/.exec(asked.before.slice(start))![0].length;
  if (comma < 0)
    return asked.scope.names('formula').map(({ name }) => make(asked, name.text, 'formula', { start: from }));
  if (/^in\s/i.test(asked.before.slice(from))) {
    const behind = asked.before.slice(from);
    return mixerNames(asked, from + /^in\s+/i.exec(behind)![0].length, '');
  }
  return ['by hand', 'in ', 'speed 1 for ', 'knead ', 'rest '].map((words) =>
    make(asked, words.trim(), 'word', { start: from, insert: words }),
  );
}

/** The formulas that a variant may be of: all but itself. */
export function baseNames(asked: Asked, start: number, end: string): LineCompletion[] {
  const own = asked.block.top?.header.name?.folded;
  return asked.scope
    .names('formula')
    .filter(({ name }) => name.folded !== own)
    .map(({ name }) =>
      make(asked, name.text, 'formula', {
        start,
        detail: asked.speaker.say(message('completion.formula')),
        insert: quotedName(name.text) + end,
      }),
    );
}

/** What a variant may leave out: the lines and parts of its base. */
export function droppableNames(asked: Asked, from: { start?: number }): LineCompletion[] {
  const [base] = basesOf(asked.block, asked.scope);
  const model =
    base === undefined ? undefined : formulaOf(wholeBlock(base.block, asked.scope.from(base.uri)));
  const lines = model?.sections[0]?.lines.map(({ statement }) => statement.name.text) ?? [];
  const parts = model?.sections.slice(1).flatMap(({ name }) => (name === undefined ? [] : [name.text])) ?? [];
  return [
    ...[...new Set(lines)].map((name) => make(asked, name, 'ingredient', from)),
    ...parts.map((name) => make(asked, name, 'part', from)),
  ];
}

/** What a mix may load: ingredients and parts of the formula, and the words that stand for several. */
export function loadItems(asked: Asked): LineCompletion[] {
  const model = modelOf(asked);
  const item = /(?:^\s*\S+\s+|,\s*)([^,]*)$/.exec(asked.before);
  const start =
    item === null ? wordStart(asked) : asked.before.length - withoutPortion(groupOf(item, 1)).length;
  const found = new Map<string, LineCompletion>();
  const push = (name: string, kind: CompletionKind, sort: string): void => {
    const folded = nameBetween(name, 0, name.length).folded;
    if (!found.has(folded))
      found.set(
        folded,
        make(asked, name, kind, { start, sort, insert: kind === 'word' ? name : quoted(name, 'load') }),
      );
  };
  const loaded = loadedElsewhere(asked);
  const sort = (name: Name, first: string): string => (loaded.has(name.folded) ? '3' : first);
  for (const { name } of model?.sections.slice(1) ?? [])
    if (name !== undefined) push(name.text, 'part', sort(name, '0'));
  for (const { statement } of model?.sections[0]?.lines ?? [])
    push(statement.name.text, 'ingredient', sort(statement.name, '1'));
  for (const words of ['all', 'all but', 'the rest', 'flour', 'remaining water', 'all fat'])
    push(words, 'word', '2');
  return [...found.values()];
}

/** An item short of the portion that it begins with: `90% of the`, `1300 g`, `half the`. */
function withoutPortion(item: string): string {
  const portion = /^(?:\S.*\sof\s+(?:the\s+)?|half\s+(?:the\s+)?|[\d.]+\s*(?:g|kg|oz|lb)\s+)/i.exec(item);
  return portion === null ? item : item.slice(portion[0].length);
}

/** What the lines of the programme name already, but for the item at the cursor; more of it may still go in. */
function loadedElsewhere({ block, line, column }: Asked): Set<string> {
  const section = sectionAt(block, line);
  const names = new Set<string>();
  if (section === undefined) return names;
  for (let at = section.headerLine + 1; at < section.endLine; at++) {
    const statement = block.lines[at]?.statement;
    if (statement?.kind !== 'property' || statement.value?.form !== 'load') continue;
    for (const { name } of statement.value.items)
      if (name !== undefined && !(at === line && name.start <= column && column <= name.end))
        names.add(name.folded);
  }
  return names;
}
