import { catalogueNames } from '../../catalogue/catalogue.ts';
import { findIngredient } from '../../model/found-ingredient.ts';
import type { Scope } from '../../model/scope.ts';
import { amountColumn } from '../../syntax/layout.ts';
import { sectionAt } from '../../syntax/line-place.ts';
import { misspelledProperty } from '../../syntax/misspelled.ts';
import type { Block, Name } from '../../syntax/tree.ts';
import { elementAt } from '../../text/element.ts';
import { trimmed } from '../../text/figures.ts';
import { foldName } from '../../text/names.ts';
import { nearestWord } from '../../text/nearest.ts';
import { shortName } from '../../text/short-name.ts';
import { message } from '../../words/message.ts';
import { sectionBehindFix, writeFix } from '../engine/fixes.ts';
import type { Rule, RuleFinding, RuleFix } from '../engine/rule.ts';

export const unknownIngredient: Rule = {
  code: 'unknown-ingredient',
  level: 'warning',
  mendsSlips: true,
  title: 'An ingredient that is not defined',
  explanation:
    'The ingredient is weighed, but counts neither as flour nor as water: what it brings to the dough is not known. ' +
    'Write the name as its section does, choose one of the catalogue, or define it.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  nonesuch  3%\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  linseed  3%\n',
  *check({ analysis, scope, block }) {
    const sections = analysis?.resolved.model.sections.filter(({ name }) => name !== undefined) ?? [];
    const sectionByLine = new Map(
      sections.flatMap((one) => one.lines.map(({ line }) => [line, one] as const)),
    );
    // Asked for only where a name is unknown: whoever asks for all names is stale once any of them changes.
    let all: LookUp | undefined;
    const elsewhere = (): LookUp => {
      all ??= lookUp([...scope.names('ingredient').map((one) => one.name.text), ...catalogueNames()]);
      return all;
    };
    const besides = new Map<object | undefined, LookUp>();
    for (const problem of analysis?.resolved.problems ?? []) {
      if (problem.kind !== 'unknown-ingredient' || problem.name.folded === '') continue;
      const { name, line } = problem;
      const other = otherForm(block, line, name, scope) ?? cultureAlone(block, line, name, scope);
      if (other !== undefined) {
        yield other;
        continue;
      }
      // A part cannot be an ingredient of itself.
      const own = sectionByLine.get(line);
      let known = besides.get(own);
      if (known === undefined) {
        known = lookUp(
          sections.flatMap((one) => (one === own ? [] : [one.name!.text])),
          elsewhere(),
        );
        besides.set(own, known);
      }
      const found = findingOf(block, line, name, known, (one) => isIngredient(one, scope));
      const define = sectionBehindFix(
        message('fix.define-ingredient', { name: shortName(name.text) }),
        block,
        `ingredient ${name.text}:\n  water 0%`,
      );
      yield { ...found, fixes: [...found.fixes, define] };
    }
    if (block.top?.kind !== 'ingredient' && block.top?.kind !== 'flour') return;
    for (const [line, { statement }] of block.lines.entries()) {
      if (statement.kind !== 'property' || statement.value?.form !== 'name' || statement.property !== 'like')
        continue;
      const { name } = statement.value;
      if (findIngredient(name, scope).kind === 'unknown') yield findingOf(block, line, name, elsewhere());
    }
  },
};

const isIngredient = (text: string, scope: Scope): boolean =>
  findIngredient({ text, folded: foldName(text), start: 0, end: 0 }, scope).kind === 'found';

function findingOf(
  block: Block,
  line: number,
  name: Name,
  known: LookUp,
  isIngredient: (name: string) => boolean = () => false,
): RuleFinding & { fixes: RuleFix[] } {
  const written = withoutState(name.folded, isIngredient) ?? meantBy(name.text, known);
  const isLike = block.lines[line]!.statement.kind === 'property';
  const section = sectionAt(block, line)?.kind;
  const property =
    written !== undefined || isLike || section === undefined || section === 'unknown'
      ? undefined
      : misspelledProperty(block.lines[line]!.text, section);
  const guess = written ?? property?.meant;
  const statement = elementAt(block.lines, line).statement;
  const [, degrees] = warmth.exec(name.text) ?? [];
  if (written !== undefined && degrees !== undefined && statement.kind === 'ingredient') {
    const { start, end } = statement.amount;
    const amount = elementAt(block.lines, line).text.slice(start, end);
    const meant = `${written}  ${amount}${statement.celsius === undefined ? `, at ${degrees}` : ''}`;
    return {
      line,
      span: { start: name.start, end: name.end },
      message: message('unknown-ingredient.meant', { name: name.text, otherName: meant }),
      fixes: [writeFix(line, { start: name.start, end }, meant, true)],
    };
  }
  return {
    line,
    span: { start: name.start, end: name.end },
    message:
      guess === undefined
        ? message(isLike ? 'unknown-ingredient.like-none' : 'unknown-ingredient.none', { name: name.text })
        : message(isLike ? 'unknown-ingredient.like-meant' : 'unknown-ingredient.meant', {
            name: name.text,
            otherName: guess,
          }),
    fixes: guess === undefined ? [] : [writeFix(line, property?.span ?? name, guess, true)],
  };
}

/** Names that are known at a place, and what was asked of them: a name that stands in a thousand lines is compared once. */
interface LookUp {
  readonly byFolded: ReadonlyMap<string, string>;
  readonly asked: Map<string, string | undefined>;
}

function lookUp(names: readonly string[], others?: LookUp): LookUp {
  const byFolded = new Map(names.map((one) => [one.toLowerCase(), one]));
  // Where two differ in their capitals alone, those from elsewhere are written.
  for (const [folded, one] of others?.byFolded ?? []) byFolded.set(folded, one);
  return { byFolded, asked: new Map() };
}

/** The known name that was most likely meant. */
function meantBy(name: string, { byFolded, asked }: LookUp): string | undefined {
  const folded = name.toLowerCase();
  if (!asked.has(folded)) {
    const near = nearestWord(folded, byFolded.keys());
    const meant =
      (near !== undefined && isSlipOf(folded, near) ? near : undefined) ??
      withoutState(folded, (one) => byFolded.has(one));
    asked.set(folded, meant === undefined ? undefined : byFolded.get(meant)!);
  }
  return asked.get(folded);
}

/** Whether each word of a name is a slip of the one in its place: `dark ale` is another thing than `dark rye`. */
function isSlipOf(folded: string, near: string): boolean {
  const [own, others] = [folded.split(' '), near.split(' ')];
  if (own.length !== others.length) return true;
  return own.every((word, at) => word === others[at] || nearestWord(word, [others[at] ?? '']) !== undefined);
}

const states =
  'cold|ice-cold|chilled|iced|ice(?= water)|warm|tepid|hot|lukewarm|icy|soft|softened|melted|cubed|diced|chopped|toasted|roasted|sifted|fine|coarse|fresh|organic|about|approx|circa|ca';
/** How warm something is said to be in its name: `water (105 F)`. */
const warmth = /\((?:about |at |approx\.? )?(-?[\d.,]+ ?°?[CF])\)/iu;
const stateBefore = new RegExp(String.raw`^(?:${states})\.? `, 'u');
const stateBehind = new RegExp(String.raw`,? (?:(?:${states})\.?|\([^()]*\)|[\d.,]+%?|%)$`, 'u');

/** A pattern taken from a name as often as it stands there. */
function without(name: string, pattern: RegExp): string {
  const less = name.replace(pattern, '');
  return less === name ? name : without(less, pattern);
}

/** `water (cold)`, `softened butter`, `bread flour 90%`: the name without the state it is in, where that is known. */
function withoutState(folded: string, isKnown: (name: string) => boolean): string | undefined {
  // `oats (rolled)`
  const [, head, inside] = /^([^()]+) \(([^()]+)\)$/.exec(folded) ?? [];
  const turned = head === undefined ? '' : `${inside} ${head}`;
  if (isKnown(turned)) return turned;
  // `yeast dry`, `spelt wholemeal`
  const swapped = folded.split(' ').reverse().join(' ');
  if (swapped.split(' ').length === 2 && isKnown(swapped)) return swapped;
  const plain = without(without(folded, stateBefore), stateBehind);
  return plain !== folded && isKnown(plain) ? plain : undefined;
}

const cultures = new Set([
  'starter',
  'sourdough starter',
  'ripe starter',
  'rye starter',
  'rye sour',
  'wheat starter',
  'levain',
  'ripe levain',
  'culture',
  'sourdough culture',
  'mother',
  'chef',
]);

/** What is no ingredient at all but has a line of its own in the notation. */
function otherForm(block: Block, line: number, name: Name, scope: Scope): RuleFinding | undefined {
  const statement = elementAt(block.lines, line).statement;
  if (statement.kind !== 'ingredient') return undefined;
  const { text } = elementAt(block.lines, line);
  const span = { start: name.start, end: name.end };
  const written = text.slice(statement.amount.start, statement.amount.end);
  if (name.folded === 'hydration' || name.folded === 'effective hydration') {
    if (statement.amount.kind !== 'fraction') return undefined;
    const example = `water  to ${written} ${name.folded}`;
    return { line, span, message: message('unknown-ingredient.hydration', { example }), fixes: [] };
  }
  if (!cultures.has(name.folded) || sectionOf(block, line) !== 'preferment') return undefined;
  const share = shareOfFed(block, line, scope);
  const amount =
    statement.amount.kind === 'fraction' ? written : share === undefined ? undefined : percentOf(share);
  if (amount === undefined) return undefined;
  const said = message('unknown-ingredient.culture', { name: name.text, example: `ripe culture ${amount}` });
  const isPercent = statement.amount.kind === 'fraction';
  const fix = isPercent
    ? writeFix(line, name, 'ripe culture', true)
    : writeFix(line, { start: name.start, end: statement.amount.end }, `ripe culture ${amount}`, true);
  return { line, span, message: said, fixes: [fix] };
}

const percentOf = (fraction: number): string => `${trimmed(fraction * 100, 2)}%`;

/** How much of the flour that a preferment is fed, in grams as its lines say, the weight of a line is. */
function shareOfFed(block: Block, line: number, scope: Scope): number | undefined {
  const section = sectionAt(block, line);
  const { statement } = elementAt(block.lines, line);
  if (section === undefined || statement.kind !== 'ingredient' || statement.amount.kind !== 'mass')
    return undefined;
  let flour = 0;
  for (let at = section.headerLine + 1; at < section.endLine; at++) {
    const other = elementAt(block.lines, at).statement;
    if (other.kind !== 'ingredient') continue;
    const found = findIngredient(other.name, scope);
    if (found.kind !== 'found' || !found.ingredient.isFlour) continue;
    if (other.amount.kind !== 'mass') return undefined;
    flour += other.amount.grams;
  }
  return flour > 0 ? statement.amount.grams / flour : undefined;
}

/**
 * `levain 20%` or `starter (100%) 150 g` in a dough that has no such part: it is flour and water, which the fix writes as a part of
 * the first flour of the dough. A stiff one has half as much water as flour, any other as much; common practice, no source.
 */
function cultureAlone(block: Block, line: number, name: Name, scope: Scope): RuleFinding | undefined {
  const share = /[ (]*(\d{2,3}) ?%/.exec(name.folded);
  const plain = name.folded.slice(0, share?.index);
  const said = share?.[1];
  const own = plain.replace(/^(?:stiff|liquid|active|wheat|white|firm|mature|fed) /, '');
  if (!cultures.has(own) || sectionOf(block, line) !== 'formula') return undefined;
  const comment = /#.*?(\d{2,3}) ?% ?hydration/i.exec(elementAt(block.lines, line).text)?.[1];
  const hydration = Number(said ?? comment ?? (/^(?:stiff|firm) /.test(plain) ? 50 : 100)) / 100;
  const flour = firstFlour(block, scope);
  if (flour === undefined) return undefined;
  const text = name.text.slice(0, plain.length);
  const row = (what: string, amount: string): string => `\n${`  ${what}  `.padEnd(amountColumn)}${amount}`;
  const part = `preferment ${text}:${row(flour, '100%')}${row('water', percentOf(hydration))}`;
  const title = message('unknown-ingredient.fix-culture', { name: text, fraction: hydration });
  const behind = sectionBehindFix(title, block, part);
  const renamed = { line, start: name.start, end: name.end, insert: text };
  const edits = text === name.text ? behind.edits : [renamed, ...behind.edits];
  return {
    line,
    span: { start: name.start, end: name.end },
    message: message('unknown-ingredient.culture-alone', { name: name.text }),
    fixes: [{ ...behind, edits, preferred: true }],
  };
}

function firstFlour(block: Block, scope: Scope): string | undefined {
  for (let line = 0; line < (block.top?.endLine ?? 0); line++) {
    const { statement } = elementAt(block.lines, line);
    if (statement.kind !== 'ingredient') continue;
    const found = findIngredient(statement.name, scope);
    if (found.kind === 'found' && found.ingredient.isFlour) return statement.name.text;
  }
  return undefined;
}

function sectionOf(block: Block, line: number): string | undefined {
  for (let above = line; above >= 0; above--) {
    const statement = block.lines[above]!.statement;
    if (statement.kind === 'header') return statement.section;
  }
  return undefined;
}
