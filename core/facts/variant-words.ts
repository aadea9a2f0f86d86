import { droppedNames, replacedBy, takenCelsius, type WholeBlock, wholeOf } from '../model/variant.ts';
import { type Block, linesOf, type ParsedLine } from '../syntax/tree.ts';
import { elementAt } from '../text/element.ts';
import { type Message, message } from '../words/message.ts';
import { escapeMarkdown } from './formula-words.ts';

/** What a line of a variant replaces in its base, or the header of one all that it changes; nothing for any other line. */
export function baseMessages(block: Block, line: number): readonly Message[] {
  const whole = wholeOf(block);
  if (whole === undefined) return [];
  if (line === whole.top.headerLine) return changesOf(whole);
  const replaced = replacedBy(block, line);
  if (replaced === undefined) return [];
  const name = escapeMarkdown(replaced.base.name.text);
  const celsius = takenCelsius(whole, line);
  return [
    replaced.parsed === undefined
      ? message('variant.added', { name })
      : message('variant.in-base', { name, written: escapeMarkdown(valueText(replaced.parsed)) }),
    ...(celsius === undefined ? [] : [message('variant.taken-celsius', { celsius, name })]),
  ];
}

function changesOf(whole: WholeBlock): readonly Message[] {
  const { own, bases } = whole;
  const names = bases.map((one) => escapeMarkdown(one.name.text));
  const changed = linesOf(own.top!).flatMap((line) => {
    const replaced = replacedBy(whole, line);
    if (replaced === undefined) return [];
    const { statement, text } = elementAt(own.lines, line);
    const about = statement.kind === 'ingredient' ? statement.name.text : keywordOf(text, statement);
    const now = escapeMarkdown(valueText(elementAt(own.lines, line)));
    return [
      replaced.parsed === undefined
        ? message('variant.new-line', { name: escapeMarkdown(about), written: now })
        : message('variant.changed-line', {
            name: escapeMarkdown(about),
            written: now,
            otherWritten: escapeMarkdown(valueText(replaced.parsed)),
          }),
    ];
  });
  const dropped = droppedNames(own).map(({ name: one }) =>
    message('variant.dropped', { name: escapeMarkdown(one.text) }),
  );
  const sections = own.subs
    .filter(({ kind }) => kind !== 'trial')
    .map(({ headerLine }) =>
      message('variant.own-section', { written: escapeMarkdown(headOf(elementAt(own.lines, headerLine))) }),
    );
  const parts = [...changed, ...dropped, ...sections];
  return parts.length === 0
    ? [message('variant.same', { names })]
    : [message('variant.of', { names }), message('totals.line', { parts })];
}

/** A header as it is written, without its colon. */
function headOf({ text, tokens }: ParsedLine): string {
  const said = tokens.filter(({ kind }) => kind !== 'blank' && kind !== 'comment' && kind !== 'colon');
  return text.slice(said[0]?.start, said.at(-1)?.end);
}

function keywordOf(text: string, statement: ParsedLine['statement']): string {
  return statement.kind === 'property' ? text.slice(statement.keyword.start, statement.keyword.end) : '';
}

/** What a line says behind its name or its property, as written. */
function valueText({ statement, text }: ParsedLine): string {
  const start =
    statement.kind === 'ingredient'
      ? statement.name.end
      : statement.kind === 'property'
        ? statement.keyword.end
        : 0;
  return text
    .slice(start)
    .replace(/\s#.*$/, '')
    .replace(/\s+/g, ' ')
    .trim();
}
