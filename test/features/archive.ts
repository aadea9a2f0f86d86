import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createService, type Service } from '../../core/index.ts';
import { failed } from '../rules/failed.ts';
import { updating } from '../updating.ts';

/**
 * Archives of questions and answers. A case starts with `=== title`; its files follow, each under `--- file NAME` with
 * `crlf` or `bom` behind the name where wanted; `‸` in one of them is the cursor. Every other `--- WORDS` asks what
 * its words say, and its lines are the answer expected. A second `‸` ends a selection. `<<5000*a>>` in a file stands for five thousand letters.
 */
export interface QuestionCase {
  readonly title: string;
  readonly files: readonly { readonly head: string; readonly body: string }[];
  readonly questions: readonly { readonly words: string; readonly answer: string }[];
}

export interface Asked {
  readonly service: Service;
  readonly uri: string;
  readonly line: number;
  readonly column: number;
  readonly lineText: string;
  /** Where the selection ends; the cursor itself where there is none. */
  readonly endLine: number;
  readonly endColumn: number;
  /** The text of each file, by URI. */
  readonly texts: ReadonlyMap<string, string>;
}

export const rootUri = 'file:///quay-lane/';
const cursor = '‸';

export function readQuestions(
  folder: string,
): { path: string; name: string; head: string; cases: QuestionCase[] }[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.txt'))
    .sort()
    .map((name) => {
      const path = join(folder, name);
      const [head, ...parts] = readFileSync(path, 'utf8').split(/^=== /m);
      return { path, name: name.replace('.txt', ''), head: head!, cases: parts.map(readCase) };
    });
}

function readCase(part: string): QuestionCase {
  const [title, ...sections] = part.split(/^--- |\n--- /);
  const cut = sections.map((section) => {
    const end = section.indexOf('\n');
    return end < 0
      ? { head: section.trim(), body: '' }
      : { head: section.slice(0, end).trim(), body: section.slice(end + 1).replace(/\n+$/, '') };
  });
  return {
    title: title!.trim(),
    files: cut.filter(({ head }) => head.startsWith('file ')),
    questions: cut
      .filter(({ head }) => !head.startsWith('file '))
      .map(({ head, body }) => ({ words: head, answer: body })),
  };
}

/** A service that holds the files of a case, and where the cursor stands in the last file that has one. */
export function serviceOf({ files }: QuestionCase): Asked {
  const service = createService({ failed });
  service.setRoots([rootUri]);
  let at = { uri: '', line: 0, column: 0, lineText: '', endLine: 0, endColumn: 0 };
  const texts = new Map<string, string>();
  for (const { head, body } of files) {
    const [, name, ...options] = head.split(/\s+/);
    const uri = rootUri + name!;
    const marked = body.replace(/<<(\d+)\*(.+?)>>/g, (_, count: string, text: string) =>
      text.repeat(Number(count)),
    );
    const before = marked.indexOf(cursor);
    if (before >= 0 || at.uri === '') {
      const above = marked.slice(0, Math.max(0, before)).split('\n');
      const line = above.length - 1;
      const bom = options.includes('bom') && line === 0 ? '\uFEFF' : '';
      const lineText = bom + marked.replaceAll(cursor, '').split('\n')[line]!;
      const column = above[line]!.length + bom.length;
      const end = marked.indexOf(cursor, before + 1);
      const selected = end < 0 ? above : marked.slice(0, end).replace(cursor, '').split('\n');
      const endLine = selected.length - 1;
      const endColumn = end < 0 ? column : selected[endLine]!.length + (endLine === 0 ? bom.length : 0);
      at = { uri, line, column, lineText, endLine, endColumn };
    }
    const text = marked.replaceAll(cursor, '');
    const ended = options.includes('crlf') ? text.replace(/\n/g, '\r\n') : text;
    const whole = options.includes('bom') ? `\uFEFF${ended}` : ended;
    service.setText(uri, whole);
    texts.set(uri, whole);
  }
  return { service, ...at, texts };
}

/** Asks every question of every case; when updating, writes the answers into the file. */
export function answersOf(
  file: { path: string; head: string; cases: readonly QuestionCase[] },
  answer: (words: string, asked: Asked) => string,
): string[][] {
  const told = file.cases.map((one) =>
    one.questions.map(({ words }) => answer(words, serviceOf(one)).trimEnd()),
  );
  if (updating) {
    const parts = file.cases.map((one, index) => {
      const files = one.files.map(({ head, body }) => `--- ${head}\n${body}\n`);
      const questions = one.questions.map(({ words }, at) => `--- ${words}\n${told[index]![at]}\n`);
      return `=== ${one.title}\n${files.join('')}${questions.join('')}`;
    });
    const head = file.head.trim();
    writeFileSync(file.path, `${head}${head === '' ? '' : '\n\n'}${parts.join('\n')}`);
  }
  return told;
}
