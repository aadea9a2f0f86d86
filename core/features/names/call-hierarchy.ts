import type { Meaning, PlacedBlock } from '../../model/meaning.ts';
import { isSameMeaning, meaningOf } from '../../model/meaning.ts';
import { type Mention, mentionsOf } from '../../model/mentions.ts';
import { propertiesOf } from '../../model/properties.ts';
import { sectionAt } from '../../syntax/line-place.ts';
import type { Section } from '../../syntax/tree.ts';
import { holdsIngredients } from '../../syntax/vocabulary.ts';
import { elementAt } from '../../text/element.ts';
import type { Place } from '../../text/span.ts';
import type { Steps } from '../../text/steps.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { SymbolKind } from '../answers.ts';
import { type Destination, destinationOf } from './definitions.ts';
import {
  type NameBook,
  type NameTarget,
  type NameUse,
  nameAt,
  placedBlockAt,
  placeOfUse,
  usesOf,
} from './name-book.ts';

/** Something that goes into something, or that something goes into: a formula, a part, an ingredient, a mixer, a plan. */
export interface GoesItem extends Destination {
  readonly label: string;
  readonly kind: SymbolKind;
  readonly detail: string;
}

export interface GoesLink {
  readonly item: GoesItem;
  /** Where it is said, in the file of the one that takes it. */
  readonly places: readonly Place[];
}

/** The thing at a column: what its name means, else the section it stands in. */
export function goesItemAt(
  book: NameBook,
  uri: string,
  line: number,
  column: number,
  speaker: Speaker,
): GoesItem | undefined {
  const target = nameAt(book, uri, line, column);
  if (target !== undefined) return itemOf(book, target, undefined, speaker);
  const at = placedBlockAt(book, uri, line);
  const section = at === undefined ? undefined : sectionAt(at.block, line - at.firstLine);
  if (at === undefined || section === undefined) return undefined;
  const holder = holdsIngredients(section.kind) && section.header.name !== undefined ? section : at.block.top;
  return holder?.header.name === undefined ? undefined : sectionItem(at, holder, undefined, speaker);
}

/** The formulas, parts and plans that use what stands at a column. */
export function* usersOf(
  book: NameBook,
  uri: string,
  line: number,
  column: number,
  speaker: Speaker,
): Steps<GoesLink[]> {
  const target = nameAt(book, uri, line, column);
  if (target === undefined) return [];
  const links = new Map<string, { item: GoesItem; places: Place[] }>();
  const add = (at: PlacedBlock, section: Section, place: Place): void => {
    const key = `${at.firstLine + section.headerLine} ${at.uri}`;
    const before = links.get(key);
    if (before === undefined) {
      const item = sectionItem(at, section, undefined, speaker);
      links.set(key, { item, places: [place] });
    } else before.places.push(place);
  };
  const taking = new Set<Mention['use']>(['line', 'planned', 'like', 'base', 'mixer']);
  for (const use of yield* usesOf(book, target)) {
    if (!taking.has(use.mention.use)) continue;
    const section = sectionAt(use.at.block, use.mention.line);
    const holder = section !== undefined && holdsIngredients(section.kind) ? section : use.at.block.top;
    if (holder !== undefined) add(use.at, holder, placeOfUse(book, use));
  }
  if (target.meaning.is === 'part' && draws(target.meaning.at, target.meaning.headerLine)) {
    const { at, headerLine } = target.meaning;
    // What draws from the formula goes into it without a line that says so; its mix may.
    const loads = mentionsOf(at.block)
      .filter(({ use }) => use === 'load' || use === 'load all')
      .map((mention): NameTarget => ({ at, mention, meaning: meaningOf(at, mention, book.scopeOf(at.uri)) }))
      .filter(({ meaning }) => isSameMeaning(meaning, target.meaning))
      .map((use) => placeOfUse(book, use));
    for (const place of loads.length > 0 ? loads : [destinationOf(at, headerLine).name])
      add(at, at.block.top!, place);
  }
  return [...links.values()];
}

/** What goes into the thing at a column: the lines of a formula or part, its drawing parts, the formulas of a plan. */
export function goesIntoAt(
  book: NameBook,
  uri: string,
  line: number,
  column: number,
  speaker: Speaker,
): GoesLink[] {
  const target = nameAt(book, uri, line, column);
  const holder = target === undefined ? undefined : holderOf(book, target.meaning);
  if (holder === undefined) return [];
  const { at, section } = holder;
  const links: { meaning: Meaning; item: GoesItem; places: Place[] }[] = [];
  const scope = book.scopeOf(at.uri);
  const add = (use: NameTarget, how: Message | string | undefined): void => {
    const place = placeOfUse(book, use);
    const before = links.find((link) => isSameMeaning(link.meaning, use.meaning));
    if (before !== undefined) before.places.push(place);
    else links.push({ meaning: use.meaning, item: itemOf(book, use, how, speaker), places: [place] });
  };
  for (const mention of mentionsOf(at.block)) {
    if (sectionAt(at.block, mention.line) !== section || mention.use === 'definition') continue;
    if (['draw', 'role', 'without'].includes(mention.use)) continue;
    add({ at, mention, meaning: meaningOf(at, mention, scope) }, writtenAmount(at, mention.line));
  }
  if (section !== at.block.top) return links.map(({ item, places }) => ({ item, places }));
  for (const part of at.block.subs) {
    if (part.header.name === undefined || !draws(at, part.headerLine)) continue;
    const mention: Mention = { line: part.headerLine, name: part.header.name, use: 'definition' };
    const meaning: Meaning = { is: 'part', at, headerLine: part.headerLine };
    if (!links.some((link) => isSameMeaning(link.meaning, meaning)))
      add({ at, mention, meaning }, message('goes-into.drawn'));
  }
  return links.map(({ item, places }) => ({ item, places }));
}

function draws({ block }: PlacedBlock, headerLine: number): boolean {
  const section = block.subs.find((one) => one.headerLine === headerLine);
  return section !== undefined && propertiesOf(block, section).has('draws');
}

function holderOf(book: NameBook, meaning: Meaning): { at: PlacedBlock; section: Section } | undefined {
  if (meaning.is === 'part') {
    const section = meaning.at.block.subs.find((one) => one.headerLine === meaning.headerLine);
    return section === undefined ? undefined : { at: meaning.at, section };
  }
  if (meaning.is !== 'definition') return undefined;
  const at = placedBlockAt(book, meaning.definition.uri, meaning.definition.firstLine);
  return at?.block.top === undefined ? undefined : { at, section: at.block.top };
}

/** `how` is how much of it there is: in words, or as it is written. */
function itemOf(
  book: NameBook,
  use: NameTarget,
  how: Message | string | undefined,
  speaker: Speaker,
): GoesItem {
  const holder = holderOf(book, use.meaning);
  if (holder !== undefined) return sectionItem(holder.at, holder.section, how, speaker);
  const name = placeOfUse(book, use);
  const { length } = elementAt(use.at.block.lines, use.mention.line).text;
  return {
    uri: use.at.uri,
    name,
    firstLine: name.line,
    lastLine: name.line,
    lastColumn: length,
    label: use.mention.name.text,
    kind: use.mention.use === 'mixer' ? 'mixer' : 'ingredient',
    detail: detailOf([how, settledMessage(use)], speaker),
  };
}

function settledMessage({ meaning }: NameTarget): Message {
  switch (meaning.is) {
    case 'catalogue':
      return message('goes-into.catalogue');
    case 'role':
      return message('goes-into.role', { written: meaning.role });
    case 'several':
      return message('goes-into.several', { count: meaning.definitions.length });
    default:
      return message('goes-into.not-defined');
  }
}

function sectionItem(
  at: PlacedBlock,
  section: Section,
  how: Message | string | undefined,
  speaker: Speaker,
): GoesItem {
  const { top } = at.block;
  const label = section.header.name?.text ?? section.kind;
  const isPart = section !== top;
  const kind: SymbolKind = isPart
    ? 'part'
    : section.kind === 'unknown'
      ? 'line'
      : (section.kind as SymbolKind);
  const what = isPart ? partMessage(section.kind, top?.header.name?.text) : section.kind;
  const detail = detailOf([how, what], speaker);
  return { ...destinationOf(at, section.headerLine), label, kind, detail };
}

function partMessage(section: string, name: string | undefined): Message {
  return name === undefined
    ? message('goes-into.part', { section })
    : message('goes-into.part-of', { section, name });
}

/** A message is worded; what a file writes, and a word of the notation, stands as it is. */
function detailOf(parts: readonly (Message | string | undefined)[], speaker: Speaker): string {
  return parts
    .map((one) => (typeof one === 'object' ? speaker.say(one) : one))
    .filter((one) => one !== undefined)
    .join(' · ');
}

/** The amount of a line as it is written. */
function writtenAmount({ block }: PlacedBlock, line: number): string | undefined {
  const { text, statement } = elementAt(block.lines, line);
  if (statement.kind !== 'ingredient' && statement.kind !== 'planned') return undefined;
  return text.slice(statement.amount.start, statement.amount.end) || undefined;
}

/** Who uses something for its amount or as a base: `used by 3 formulas and 1 plan`. */
export function usesMessage(uses: readonly NameUse[]): Message {
  const blocks = new Map<string, Set<string>>();
  for (const { at } of uses) {
    const kind = at.block.top?.kind ?? 'formula';
    const places = blocks.get(kind) ?? new Set();
    blocks.set(kind, places.add(`${at.firstLine} ${at.uri}`));
  }
  if (blocks.size === 0) return message('uses.none');
  return message('uses.by', { facts: [...blocks].map(([kind, { size }]) => usersMessage(kind, size)) });
}

function usersMessage(kind: string, count: number): Message {
  switch (kind) {
    case 'flour':
    case 'ingredient':
    case 'mixer':
    case 'plan':
    case 'experiment':
      return message(`uses.${kind}s`, { count });
    case 'bakery':
      return message('uses.bakeries', { count });
    default:
      return message('uses.formulas', { count });
  }
}
