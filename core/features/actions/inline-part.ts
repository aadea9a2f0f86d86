import { elementAt, lastOf } from '../../text/element.ts';
import { message } from '../../words/message.ts';
import type { Action, ActionContext } from './action.ts';
import { editsKeeping } from './after.ts';
import { exactPercent } from './exact-figures.ts';
import { LineChanges } from './line-changes.ts';
import { commentOf, ingredientLine, layoutOf } from './line-layout.ts';
import { doughLoads, itemText, writeLoads } from './loads.ts';
import { type PartAt, partAt } from './part-forms.ts';
import { flourOfLines, withContents, writeDraws, writeLines } from './rewriting.ts';

export const inlinePart: Action = {
  id: 'inline-part',
  kind: 'inline',
  variants: 'whole',
  name: 'Take a part back into the dough',
  explanation:
    'The part at the cursor goes, with the programme and the process that are about it alone, and what is in it goes into the lines of ' +
    'the formula; what no line has becomes one. The overall formula stays. Its notes and comments stay too, below the lines ' +
    'of the formula, and how warm it was in a trial becomes a note. Not offered for a part that keeps some back or that other parts hold.',
  example:
    'formula Quay Tin:\n  yield 10 kg\n  bread flour        100%\n  water              65%\n\n‸preferment poolish:\n  draws 20% of flour\n  bread flour        100%\n  water              100%\n',
  *offers(context) {
    const at = partAt(context);
    if (at === undefined || at.solvedPart.keepBackGrams !== undefined) return;
    yield {
      title: message('inline-part.take', { part: at.part.name!.text }),
      edits: () => editsOf(context, at),
    };
  },
};

function editsOf(context: ActionContext, at: PartAt) {
  const { analysis, solvedPart, part, dough, solvedDough, doughLines, contents, use } = at;
  const changes = new LineChanges(context);
  const { wanted, lacking } = withContents(solvedDough.lines, solvedPart.drawn ? [] : contents);
  const own = new Set(solvedDough.lines.filter((line) => !line.part).map(({ key }) => key));
  const isLacking = (key: string): boolean => (solvedPart.drawn ? !own.has(key) : lacking.includes(key));
  const { ingredients } = analysis.resolved;
  const added = contents.flatMap((one) =>
    isLacking(one.key) && one.grams > 0
      ? [
          {
            ...one,
            role: ingredients.get(one.key)?.role ?? 'other',
            isFlour: ingredients.get(one.key)?.isFlour === true,
          },
        ]
      : [],
  );
  const flour =
    flourOfLines(solvedDough.lines, wanted) +
    added.reduce((sum, one) => sum + (one.isFlour ? one.grams : 0), 0);
  if (!(flour > 0) || writeLines(changes, dough, doughLines, wanted, flour) === undefined) return undefined;
  if (!solvedPart.drawn && writeDraws(changes, at, part.id, wanted, added) === undefined) return undefined;
  const layout = layoutOf(dough);
  const lines = added.map((one) => ingredientLine(one.name, exactPercent(one.grams / flour), layout));
  const kept = takeOut(context, changes, at);
  if (use === undefined) {
    const last = lastOf(dough.lines).line;
    changes.addBelow(last, ...lines, ...kept);
  } else {
    const comment = commentOf(use.parsed);
    const [first, ...rest] = lines;
    const below =
      first === undefined ? (comment === '' ? [] : [layout.indent + comment.trim()]) : [first + comment];
    changes.replace(use.line, ...below, ...rest, ...kept);
  }
  loadContents(changes, context, at);
  noteReadings(changes, context, at);
  return editsKeeping(context, changes);
}

/** Takes the part’s own sections out and gives back the words in them that are the baker’s. */
function takeOut({ block }: ActionContext, changes: LineChanges, { part }: PartAt): string[] {
  const { folded } = part.name!;
  const kept: string[] = [];
  const own = block.subs.filter(
    ({ header, headerLine }) => headerLine === part.headerLine || header.part?.folded === folded,
  );
  for (const { headerLine, endLine } of own) {
    let end = endLine;
    // Comments right above the next header are about what it begins.
    while (end < block.lines.length && end - 1 > headerLine && isCommentLine(elementAt(block.lines, end - 1)))
      end--;
    for (let line = headerLine; line < end; line++) {
      const parsed = elementAt(block.lines, line);
      const comment = parsed.accept === undefined ? commentOf(parsed).trim() : '';
      if (parsed.statement.kind === 'note') kept.push(parsed.text);
      else if (comment !== '') kept.push(`  ${comment}`);
      changes.remove(line);
    }
    const isLast = endLine >= block.lines.length;
    if (isLast) removeBlankAbove(block.lines, changes, headerLine);
  }
  return kept;
}

/** How warm the part was in a trial stays as words, for what was measured is not to be lost. */
function noteReadings(changes: LineChanges, { block }: ActionContext, { part }: PartAt): void {
  for (const [line, { statement }] of block.lines.entries()) {
    if (statement.kind !== 'property' || statement.value?.form !== 'partTemperature') continue;
    if (statement.value.name.folded !== part.name!.folded) continue;
    const { start } = statement.keyword;
    changes.edit(line, { start, end: start, insert: 'note ' });
  }
}

function removeBlankAbove(
  lines: ActionContext['block']['lines'],
  changes: LineChanges,
  headerLine: number,
): void {
  for (let line = headerLine - 1; line > 0 && elementAt(lines, line).text.trim() === ''; line--)
    changes.remove(line);
}

const isCommentLine = ({ empty, text }: { empty: boolean; text: string }): boolean =>
  empty && text.trim() !== '';

/** What the part brought is loaded where the part was, as far as no other word of the programme loads it. */
function loadContents(changes: LineChanges, context: ActionContext, at: PartAt): void {
  const { part, contents } = at;
  const loads = doughLoads(at);
  const covered = new Set([...loads.values()].flat().flatMap(({ keys }) => keys));
  for (const [line, items] of loads) {
    if (!items.some(({ keys }) => keys.includes(part.id))) continue;
    const texts = items.flatMap((load) => {
      if (!load.keys.includes(part.id) || load.item.allBut !== undefined) return [itemText(context, load)];
      return contents.filter(({ key, grams }) => grams > 0 && !covered.has(key)).map(({ name }) => name);
    });
    writeLoads(changes, context, line, texts);
  }
}
