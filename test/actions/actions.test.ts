import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { TextRange } from '../../core/index.ts';
import { type Asked, answersOf, readQuestions, rootUri } from '../features/archive.ts';
import { updating } from '../updating.ts';
import { edited, editsOf } from './apply.ts';

// Every case of test/fixtures/actions: what is offered, and the files that an action changes, after it.
const files = readQuestions(join(import.meta.dirname, '..', 'fixtures', 'actions'));

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

/** `offers` lists all that is offered, `offers ID` what one action offers; `after ID ARGUMENT` does it. */
function answer(words: string, asked: Asked): string {
  const { service, uri, texts } = asked;
  const [verb, id, ...rest] = words.split(' ');
  const range: TextRange = {
    line: asked.line,
    start: asked.column,
    endLine: asked.endLine,
    end: asked.endColumn,
  };
  const offered = service.actions(uri, range).filter((one) => id === undefined || one.id === id);
  if (verb === 'offers') {
    const told = offered.map(
      (one) => `${one.kind} ${one.id}: ${one.title}${one.preferred ? ' (preferred)' : ''}`,
    );
    return told.length === 0 ? 'nothing' : told.join('\n');
  }
  if (verb !== 'after') throw new Error(`nobody knows how to ask “${words}”`);
  const chosen = rest.length === 0 ? offered[0] : offered.find((one) => one.argument === rest.join(' '));
  if (chosen === undefined) return 'not offered';
  const edits = service.actionEdits(uri, range, chosen.id, chosen.argument);
  if (edits === undefined) return 'cannot be done';
  return edits
    .map(({ uri: where }) => {
      const text = edited(texts.get(where)!, editsOf(edits, where));
      const shown = text.replace(/\n$/, '').replace(/\r/g, '␍');
      return where === uri ? shown : `file ${where.slice(rootUri.length)}:\n${shown}`;
    })
    .join('\n');
}
