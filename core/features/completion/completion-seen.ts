import { feelWords, stageWords } from '../../syntax/vocabulary.ts';
import { groupOf } from '../../text/element.ts';
import { message } from '../../words/message.ts';
import { type Asked, type LineCompletion, make } from './completion-place.ts';

/** What may be said of a dough behind a reading, or of its end alone: a stage, while none is written, and the words of how it feels. */
export function seenWords(asked: Asked, property: string): LineCompletion[] {
  const start = startOfWord(asked, property);
  if (start === undefined) return [];
  const written = asked.text
    .slice(asked.text.length - asked.text.trimStart().length + property.length)
    .split(',')
    .map((word) => word.trim().toLowerCase());
  const { say } = asked.speaker;
  const hasStage = stageWords.some((word) => written.includes(word));
  return [
    ...(hasStage ? [] : stageWords.map((word) => make(asked, word, 'word', { start, sort: `0${word}` }))),
    ...feelWords
      .filter((word) => !written.includes(word))
      .map((word) =>
        make(asked, word, 'word', { start, sort: `1${word}`, detail: say(message(`feel.${word}`)) }),
      ),
  ];
}

/** Behind a comma; at the end of mixing, whose minute nobody writes, also right behind its word. */
function startOfWord({ before }: Asked, property: string): number | undefined {
  const comma = before.lastIndexOf(',');
  if (comma >= 0) return before.length - before.slice(comma + 1).trimStart().length;
  const alone = property === 'end' ? /^\s*end\s+([\p{L} ]*)$/iu.exec(before) : null;
  return alone === null ? undefined : before.length - groupOf(alone, 1).length;
}
