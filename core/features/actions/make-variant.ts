import type { Definition } from '../../model/scope.ts';
import { basesOf, isVariant, wholeBlock } from '../../model/variant.ts';
import { saidBy } from '../../model/variant-text.ts';
import { parseFile } from '../../syntax/file.ts';
import { meaning } from '../../syntax/print.ts';
import { type Block, linesOf, type Name, type Section } from '../../syntax/tree.ts';
import { holdsIngredients } from '../../syntax/vocabulary.ts';
import { elementAt, firstOf } from '../../text/element.ts';
import { message } from '../../words/message.ts';
import type { Action, ActionContext } from './action.ts';
import { blockReplaced } from './line-changes.ts';

export const makeVariant: Action = {
  id: 'make-variant',
  kind: 'rewrite',
  name: 'Write a copy as a variant',
  explanation:
    'Offered on the header of a formula that says most of what another formula of the file says: it becomes a variant of that one and ' +
    'keeps the lines that differ. What it comes to stays the same to the last line, else it is not offered.',
  example:
    'formula Plain White:\n  bread flour        100%\n  water              65%\n  salt               2%\n  fresh yeast        1%\n\n' +
    'formula Wet ‸White:\n  bread flour        100%\n  water              75%\n  salt               2%\n  fresh yeast        1%\n',
  *offers(context) {
    const { block, line } = context;
    if (line !== 0 || block.top?.kind !== 'formula' || block.top.header.name === undefined) return;
    if (isVariant(block)) return;
    let best: { readonly name: Name; readonly texts: readonly string[] } | undefined;
    for (const base of basesAround(context)) {
      const texts = variantOf(context, base);
      if (texts !== undefined && (best === undefined || texts.length < best.texts.length))
        best = { name: base.name, texts };
    }
    if (best === undefined) return;
    const { name, texts } = best;
    yield {
      title: message('make-variant.write', { name: name.text }),
      edits: () => blockReplaced(context, texts),
    };
  },
};

/** The other formulas of the file that a variant could name. */
function basesAround({ source, block, scope }: ActionContext): readonly Definition[] {
  return source.blocks.flatMap(({ block: other }) => {
    const name = other.top?.kind === 'formula' ? other.top.header.name : undefined;
    if (name === undefined || other === block) return [];
    const found = scope.find('formula', name.folded)[0];
    const isRound = basesOf(other, scope).some((one) => one.block === block);
    return found?.length === 1 && firstOf(found).block === other && !isRound ? [firstOf(found)] : [];
  });
}

/** The least that lines are to become fewer by; what changes half of a formula is no variant of it. */
const mostLeft = 0.6;

/** The formula as a variant of another, line by line; `undefined` where it would say something else or save nothing. */
function variantOf({ block, scope }: ActionContext, base: Definition): readonly string[] | undefined {
  const whole = wholeBlock(base.block, scope.from(base.uri));
  const [top, from] = [block.top!, whole.top!];
  const texts = [headOf(block, base.name)];
  const inBase = new Set(saidBy(whole, from));
  const own = linesOf(top).filter((line) => !elementAt(block.lines, line).empty);
  const shared = own.filter((line) => inBase.has(meaning(elementAt(block.lines, line))));
  if (shared.length === 0) return undefined;
  for (const line of own) if (!shared.includes(line)) texts.push(elementAt(block.lines, line).text);
  const names = new Set(own.flatMap((line) => namesOf(block, line)));
  const parts = new Set(block.subs.map(keyOf));
  const dropped = [
    ...linesOf(from).flatMap((line) => namesOf(whole, line).filter((name) => !names.has(name))),
    ...whole.subs.flatMap((section) =>
      isPart(section) && !parts.has(keyOf(section)) ? [section.header.name?.text ?? ''] : [],
    ),
  ];
  for (const name of dropped) texts.push(`  without ${name}`);
  for (const section of block.subs) {
    const same = whole.subs.find((one) => keyOf(one) === keyOf(section));
    if (same !== undefined && section.kind !== 'trial' && isSame(block, section, whole, same)) continue;
    const lines = [section.headerLine, ...linesOf(section)].map((line) => elementAt(block.lines, line).text);
    while (lines.at(-1)?.trim() === '') lines.pop();
    texts.push('', ...lines);
  }
  const before = block.lines.filter(({ text }) => text.trim() !== '').length;
  const after = texts.filter((text) => text.trim() !== '').length;
  if (after > before * mostLeft) return undefined;
  return saysTheSame(texts, block, scope) ? texts : undefined;
}

function headOf({ lines, top }: Block, base: Name): string {
  const { text } = elementAt(lines, top!.headerLine);
  const { end } = top!.header.name!;
  const isPlain =
    /^[\p{L}\p{M}\d][\p{L}\p{M}\d'’ -]*$/u.test(base.text) && !/\slike\s/i.test(` ${base.text} `);
  return `${text.slice(0, end)} like ${isPlain ? base.text : `"${base.text.replaceAll('"', '')}"`}${text.slice(end)}`;
}

function namesOf({ lines }: Block, line: number): string[] {
  const { statement } = elementAt(lines, line);
  return statement.kind === 'ingredient' ? [statement.name.text] : [];
}

const isPart = ({ kind }: Section): boolean => kind !== 'unknown' && holdsIngredients(kind);

const keyOf = (section: Section): string => {
  const { kind, header } = section;
  return `${isPart(section) ? 'part' : kind} ${(header.name ?? header.part)?.folded ?? header.date ?? ''} ${header.words ?? ''}`;
};

function isSame(block: Block, section: Section, other: Block, same: Section): boolean {
  const said = (of: Block, at: Section): string =>
    [meaning(elementAt(of.lines, at.headerLine)), ...saidBy(of, at)].join('\n');
  return said(block, section) === said(other, same);
}

/** Whether lines read as a variant come to the very lines of the formula, each section in its own order. */
function saysTheSame(texts: readonly string[], block: Block, scope: ActionContext['scope']): boolean {
  const [read, ...others] = parseFile(texts.join('\n')).blocks;
  if (read === undefined || others.length > 0) return false;
  const whole = wholeBlock(read.block, scope);
  if (whole === read.block || whole.subs.length !== block.subs.length) return false;
  const sorted = (of: Block): string => [...saidBy(of, of.top!)].sort().join('\n');
  if (sorted(whole) !== sorted(block)) return false;
  return block.subs.every((section) =>
    whole.subs.some((one) => keyOf(one) === keyOf(section) && isSame(block, section, whole, one)),
  );
}
