import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Completion, SymbolNode } from '../../core/index.ts';
import { updating } from '../updating.ts';
import { type Asked, answersOf, readQuestions } from './archive.ts';
import { editingAnswer } from './editing.ts';
import { navigationAnswer } from './navigation.ts';

// Every case of test/fixtures/features; `UPDATE=1` writes the answers anew.
const files = readQuestions(join(import.meta.dirname, '..', 'fixtures', 'features'));

for (const file of files) {
  const told = answersOf(file, answer);
  describe(file.name, () => {
    file.cases.forEach((one, index) => {
      it(one.title, () => {
        expect(one.questions.length).toBeGreaterThan(0);
        const expected = updating ? told[index] : one.questions.map((question) => question.answer);
        expect(told[index]).toEqual(expected);
      });
    });
  });
}

function answer(words: string, asked: Asked): string {
  const { service, uri, line, column } = asked;
  switch (words) {
    case 'hover': {
      const hover = service.hover(uri, line, column);
      if (hover === undefined) return 'nothing';
      const { place } = hover;
      return `[${place.line}:${place.start}–${place.end}]\n${hover.markdown}`;
    }
    case 'hints':
      return listed(service.hints(uri, 0, 1e6).map((hint) => `${hint.line}:${hint.column} ${hint.label}`));
    case 'status': {
      const status = service.status(uri, line);
      return status === undefined ? 'nothing' : `${status.formula} | ${status.text} | ${status.tooltip}`;
    }
    case 'symbols':
      return listed(service.symbols(uri).flatMap((node) => tellSymbol(node, '')));
    case 'folds':
      return listed(
        service
          .folds(uri)
          .map((fold) => `${fold.firstLine}–${fold.lastLine}${fold.comment ? ' comment' : ''}`),
      );
    case 'completion':
      return listed(chosen(service.completions(uri, line, column), asked).map(tellCompletion));
    default: {
      const told = navigationAnswer(words, asked) ?? editingAnswer(words, asked);
      if (told === undefined) throw new Error(`nobody knows how to ask “${words}”`);
      return listed(told);
    }
  }
}

function listed(lines: readonly string[]): string {
  return lines.length === 0 ? 'nothing' : lines.join('\n');
}

function tellSymbol(node: SymbolNode, indent: string): string[] {
  const { name, kind, detail, place, firstLine, lastLine, lastColumn } = node;
  const where = `${firstLine}–${lastLine}:${lastColumn} [${place.line}:${place.start}–${place.end}]`;
  return [
    `${indent}${kind} ${JSON.stringify(name)} ${where} ${detail}`.trimEnd(),
    ...node.children.flatMap((child) => tellSymbol(child, `${indent}  `)),
  ];
}

/** What an editor would list: those whose label begins with what the completion replaces, in their order, twelve at most. */
function chosen(all: readonly Completion[], { lineText }: Asked): Completion[] {
  const order = (one: Completion): string => one.sort ?? one.label;
  const typed = (one: Completion): string => lineText.slice(one.replace.start, one.replace.end);
  return all
    .filter((one) => one.label.toLowerCase().startsWith(typed(one).trim().toLowerCase()))
    .sort((one, other) => (order(one) < order(other) ? -1 : order(one) > order(other) ? 1 : 0))
    .slice(0, 12);
}

function tellCompletion(one: Completion): string {
  const { label, kind, detail, insert, snippet, replace, wordEnd, outdent } = one;
  const end = wordEnd === undefined ? replace.end : `${replace.end} or ${wordEnd}`;
  const margin = outdent === undefined ? '' : ` without ${outdent.line}:${outdent.start}–${outdent.end}`;
  return `${label} (${kind}) ${detail ?? ''} → ${replace.start}–${end} ${JSON.stringify(insert)}${snippet ? ' snippet' : ''}${margin}`;
}
