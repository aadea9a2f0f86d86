import { parseLine } from '../syntax/line.ts';
import {
  type Block,
  type LoadItem,
  linesOf,
  type Name,
  type ParsedLine,
  type Section,
} from '../syntax/tree.ts';
import { holdsIngredients } from '../syntax/vocabulary.ts';
import { elementAt, firstOf } from '../text/element.ts';
import type { NameProblem } from './name-problem.ts';
import type { Definition, Scope } from './scope.ts';

/**
 * A variant, made whole: `formula Wet White like Plain White:` takes every line of its base that it neither says itself nor
 * drops. Its own lines come first and keep their numbers; the lines it takes stand behind them, each with the place it comes from.
 */
export interface WholeBlock extends Block {
  readonly top: Section;
  /** The variant as it is written. */
  readonly own: Block;
  /** The nearest base, made whole where it is a variant itself. */
  readonly base: Block;
  /** The base, the base of that, and so on. */
  readonly bases: readonly Definition[];
  /** Where each line behind the own ones comes from. */
  readonly origins: readonly LineOrigin[];
}

/** A line of a definition, counted in its block. */
export interface LineOrigin {
  readonly definition: Definition;
  readonly line: number;
}

/** Longer chains of variants of variants are taken for a circle. */
const mostBases = 20;

interface Chain {
  readonly bases: readonly Definition[];
  readonly problem?: NameProblem;
}

/** Whether a block is a variant of another formula. */
export function isVariant({ top }: Block): boolean {
  return top?.kind === 'formula' && top.header.base !== undefined;
}

/** What is wrong with the base of a variant, as told on its header; `undefined` where there is none or nothing is. */
export function baseProblem(block: Block, scope: Scope): NameProblem | undefined {
  return isVariant(block) ? chainOf(block, scope).problem : undefined;
}

/** The formulas that a block takes its lines of, nearest first; none where one of them cannot be found. */
export function basesOf(block: Block, scope: Scope): readonly Definition[] {
  if (!isVariant(block)) return [];
  const { bases, problem } = chainOf(block, scope);
  return problem === undefined ? bases : [];
}

/** A formula with all that it takes of its base; the block itself where it is no variant, or its base cannot be found. */
export function wholeBlock(block: Block, scope: Scope): Block {
  if (wholeOf(block) !== undefined) return block;
  const bases = basesOf(block, scope);
  return bases.length === 0 ? block : madeWhole(block, bases);
}

/** The block as a variant made whole, where it is one. */
export function wholeOf(block: Block): WholeBlock | undefined {
  return 'origins' in block ? (block as WholeBlock) : undefined;
}

/** Where a line that is not written in the variant itself comes from. */
export function originOf(block: Block, line: number): LineOrigin | undefined {
  const whole = wholeOf(block);
  return whole?.origins[line - whole.own.lines.length];
}

/** A line of the formula as it stands in its own text: the header for one that comes from the base. */
export function ownLine(block: Block, line: number): number {
  return originOf(block, line) === undefined ? line : 0;
}

/** The section of a formula itself; only blocks of formulas are asked for it. */
function topOf({ top }: Block): Section {
  if (top === undefined) throw new RangeError('There is no formula.');
  return top;
}

function chainOf(block: Block, scope: Scope): Chain {
  const bases: Definition[] = [];
  let [at, seen] = [block, scope];
  for (;;) {
    const name = at.top?.kind === 'formula' ? at.top.header.base : undefined;
    if (name === undefined) return { bases };
    const told = { line: 0, name: topOf(block).header.base ?? name };
    const found = seen.find('formula', name.folded)[0];
    if (found === undefined) return { bases, problem: { kind: 'base-unknown', ...told, wanted: name } };
    const [definition] = found;
    if (found.length > 1 || definition === undefined)
      return { bases, problem: { kind: 'several', ...told, definitions: found } };
    const isRound = definition.block === block || bases.some((one) => one.block === definition.block);
    if (isRound || bases.length >= mostBases) {
      const names = [topOf(block).header.name ?? name, ...bases.map((one) => one.name), name].map(
        ({ text }) => text,
      );
      return { bases, problem: { kind: 'base-loop', ...told, names } };
    }
    bases.push(definition);
    seen = seen.from(definition.uri);
    at = definition.block;
  }
}

const made = new WeakMap<Block, { readonly bases: readonly Definition[]; readonly whole: WholeBlock }>();

function madeWhole(own: Block, bases: readonly Definition[]): WholeBlock {
  const before = made.get(own);
  const isSame =
    before !== undefined &&
    before.bases.length === bases.length &&
    before.bases.every(
      ({ block, uri }, at) => block === elementAt(bases, at).block && uri === elementAt(bases, at).uri,
    );
  if (isSame) return before.whole;
  const [base, others] = [firstOf(bases), bases.slice(1)];
  const from = others.length === 0 ? base.block : madeWhole(base.block, others);
  const whole = mergedWith(own, from, base, bases);
  made.set(own, { bases, whole });
  return whole;
}

function mergedWith(
  own: Block,
  base: Block,
  definition: Definition,
  bases: readonly Definition[],
): WholeBlock {
  const lines: ParsedLine[] = [...own.lines];
  const origins: LineOrigin[] = [];
  const take = (line: number, parsed: ParsedLine): number => {
    origins.push(originOf(base, line) ?? { definition, line });
    return lines.push(parsed) - 1;
  };
  const dropped = droppedBy(own);
  const top = mergedTop(own, base, lines, dropped, take);
  const subs: Section[] = [];
  const replaced = new Set(own.subs.map(keyOf));
  const placed = new Set<Section>();
  for (const section of base.subs) {
    const key = keyOf(section);
    if (replaced.has(key)) {
      for (const one of own.subs.filter((sub) => keyOf(sub) === key && !placed.has(sub))) {
        subs.push(one);
        placed.add(one);
      }
      continue;
    }
    // What was measured on a batch of the base was not measured on this one.
    if (section.kind === 'trial' || isDropped(section, dropped)) continue;
    const headerLine = take(section.headerLine, elementAt(base.lines, section.headerLine));
    for (const line of linesOf(section)) {
      const parsed = withoutDropped(elementAt(base.lines, line), section, dropped);
      if (parsed !== undefined) take(line, parsed);
    }
    subs.push({ kind: section.kind, header: section.header, headerLine, endLine: lines.length });
  }
  subs.push(...own.subs.filter((sub) => !placed.has(sub)));
  return { lines, top, subs, problems: own.problems, own, base, bases, origins };
}

/** The dough's own lines: those of the base in their order, each with what the variant says in its place, then what is new. */
function mergedTop(
  own: Block,
  base: Block,
  lines: ParsedLine[],
  dropped: ReadonlySet<string>,
  take: (line: number, parsed: ParsedLine) => number,
): Section {
  const top = topOf(own);
  const ownByName = new Map<string, number[]>();
  for (const line of linesOf(top))
    for (const about of aboutsOf(elementAt(own.lines, line)))
      ownByName.set(about, [...(ownByName.get(about) ?? []), line]);
  const held: number[] = [];
  const placed = new Set<number>();
  const isOnly = onlyOfTheirName(base);
  // An `# accept` alone on its line goes with the line below it.
  let waiting: number | undefined;
  for (const line of linesOf(topOf(base))) {
    const parsed = elementAt(base.lines, line);
    if (parsed.empty) {
      if (parsed.accept !== undefined) waiting = line;
      continue;
    }
    const accept = waiting;
    waiting = undefined;
    const abouts = aboutsOf(parsed);
    const said = abouts.flatMap((about) => ownByName.get(about) ?? []);
    if (said.length > 0) {
      for (const one of said) {
        if (isOnly(parsed)) lines[one] = withCelsiusOf(parsed, elementAt(lines, one));
        if (!placed.has(one)) held.push(one);
        placed.add(one);
      }
      continue;
    }
    if (parsed.statement.kind === 'ingredient' && abouts.some((about) => dropped.has(about.slice(5))))
      continue;
    if (parsed.statement.kind === 'property' && parsed.statement.property === 'without') continue;
    if (accept !== undefined) held.push(take(accept, elementAt(base.lines, accept)));
    held.push(take(line, parsed));
  }
  held.push(...linesOf(top).filter((line) => !placed.has(line)));
  return { kind: top.kind, header: top.header, headerLine: top.headerLine, endLine: top.endLine, held };
}

/** Tells the ingredient lines whose name no other line of a dough has. */
function onlyOfTheirName(base: Block): (parsed: ParsedLine) => boolean {
  const times = new Map<string, number>();
  for (const line of linesOf(topOf(base)))
    for (const about of aboutsOf(elementAt(base.lines, line))) times.set(about, (times.get(about) ?? 0) + 1);
  return (parsed) => aboutsOf(parsed).every((about) => times.get(about) === 1);
}

/** A line of the variant with the temperature that its base says of the ingredient, where it says none itself. */
function withCelsiusOf({ statement: base }: ParsedLine, own: ParsedLine): ParsedLine {
  const { statement } = own;
  if (statement.kind !== 'ingredient' || statement.celsius !== undefined) return own;
  if (base.kind !== 'ingredient' || base.celsius === undefined) return own;
  return { ...own, statement: { ...statement, celsius: base.celsius } };
}

/** The temperature, in °C, that a line takes of the base of where it is written; `undefined` where it takes none. */
export function takenCelsius(whole: WholeBlock, line: number): number | undefined {
  const origin = originOf(whole, line);
  const written = origin === undefined ? whole.own.lines[line] : origin.definition.block.lines[origin.line];
  const { statement } = elementAt(whole.lines, line);
  if (written?.statement.kind !== 'ingredient' || statement.kind !== 'ingredient') return undefined;
  return written.statement.celsius === undefined ? statement.celsius : undefined;
}

/** What a line of the dough is about: its property, or the names it may be read by. */
function aboutsOf({ statement, otherwise }: ParsedLine): string[] {
  if (statement.kind === 'property')
    return statement.property === 'without' ? [] : [`says ${statement.property}`];
  if (statement.kind !== 'ingredient') return [];
  const other = otherwise?.kind === 'ingredient' ? [`name ${otherwise.name.folded}`] : [];
  return [`name ${statement.name.folded}`, ...other];
}

/** The folded names that a variant drops of its base. */
export function droppedBy(block: Block): ReadonlySet<string> {
  const names = new Set<string>();
  for (const { name } of droppedNames(block)) names.add(name.folded);
  return names;
}

/** The names after `without`, each with its line. */
export function droppedNames(block: Block): readonly { readonly line: number; readonly name: Name }[] {
  if (block.top === undefined) return [];
  return linesOf(block.top).flatMap((line) => {
    const { statement } = elementAt(block.lines, line);
    const isDrop = statement.kind === 'property' && statement.property === 'without';
    return isDrop && statement.value?.form === 'names'
      ? statement.value.names.map((name) => ({ line, name }))
      : [];
  });
}

/** What a section of the base is replaced by: a part of the name, the mixing of the same dough, the process of the same. */
function keyOf({ kind, header }: Section): string {
  if (kind === 'mix' || kind === 'process') return `${kind} ${header.part?.folded ?? ''}`;
  if (kind === 'trial') return `trial ${header.date ?? ''} ${header.words ?? ''}`;
  return `part ${header.name?.folded ?? ''}`;
}

function isDropped({ kind, header }: Section, dropped: ReadonlySet<string>): boolean {
  const name = holdsIngredients(kind === 'unknown' ? 'none' : kind) ? header.name : header.part;
  return name !== undefined && dropped.has(name.folded);
}

/** A line of a section taken over, short of the names that the variant drops; `undefined` where nothing is left of it. */
function withoutDropped(
  parsed: ParsedLine,
  { kind }: Section,
  dropped: ReadonlySet<string>,
): ParsedLine | undefined {
  const { statement, text } = parsed;
  if (dropped.size === 0) return parsed;
  if (statement.kind === 'step' && statement.known === 'enclose')
    return dropped.has(statement.words.folded.replace(/^enclose\s+/, '')) ? undefined : parsed;
  if (kind !== 'mix' || statement.kind !== 'property' || statement.value?.form !== 'load') return parsed;
  const { items } = statement.value;
  const isTouched = items.some(({ name, allBut }) =>
    (allBut ?? [name]).some(({ folded }) => dropped.has(folded)),
  );
  if (!isTouched) return parsed;
  const left = items.flatMap((item) => leftOf(text, item, dropped));
  if (left.length === 0) return undefined;
  return parseLine(`  ${statement.property} ${left.join(', ')}`, { context: 'mix', afterBlank: false });
}

function leftOf(text: string, item: LoadItem, dropped: ReadonlySet<string>): string[] {
  const { start, end, name, allBut } = item;
  if (allBut === undefined) return dropped.has(name.folded) ? [] : [text.slice(start, end)];
  const names = allBut.filter(({ folded }) => !dropped.has(folded));
  if (names.length === allBut.length) return [text.slice(start, end)];
  const head = text
    .slice(start, elementAt(allBut, 0).start)
    .trimEnd()
    .replace(/\s+but$/i, '');
  return [
    names.length === 0
      ? head
      : `${head} but ${names.map((one) => text.slice(one.start, one.end)).join(', ')}`,
  ];
}

/** A line of the base that a line of the variant's own dough stands in the place of. */
export interface ReplacedLine {
  readonly base: Definition;
  /** Absent where the base says nothing of the kind. */
  readonly parsed?: ParsedLine;
}

/** What a line of a variant's own dough replaces; `undefined` for any other line. */
export function replacedBy(block: Block, line: number): ReplacedLine | undefined {
  const whole = wholeOf(block);
  const top = whole?.own.top;
  if (whole === undefined || top === undefined || !linesOf(top).includes(line)) return undefined;
  const abouts = aboutsOf(elementAt(whole.lines, line));
  if (abouts.length === 0) return undefined;
  const base = elementAt(whole.bases, 0);
  const replaced = linesOf(topOf(whole.base))
    .map((at) => elementAt(whole.base.lines, at))
    .find((parsed) => aboutsOf(parsed).some((about) => abouts.includes(about)));
  return replaced === undefined ? { base } : { base, parsed: replaced };
}
