import { createService, type Service } from '../../core/index.ts';
import {
  type FixtureFile,
  type FixturePart,
  fileOf,
  isFile,
  linesOf,
  readFixtures,
  textOf,
  writeFixture,
} from '../fixture.ts';
import { failed } from '../rules/failed.ts';
import { updating } from '../updating.ts';

/** A case whose files are given, and what is asked of them: the questions are the heads of its other parts. */
export interface QuestionCase {
  readonly title: string;
  readonly files: readonly FixturePart[];
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

export interface QuestionFile extends Omit<FixtureFile, 'cases'> {
  readonly cases: readonly QuestionCase[];
}

export function readQuestions(folder: string): QuestionFile[] {
  return readFixtures(folder).map((file) => ({
    ...file,
    cases: file.cases.map(({ title, parts }) => ({
      title,
      files: parts.filter(isFile),
      questions: parts
        .filter((part) => !isFile(part))
        .map(({ head, body }) => ({ words: head, answer: body })),
    })),
  }));
}

/** A service that holds the files of a case, and where the cursor stands in the last file that has one. */
export function serviceOf({ files }: QuestionCase): Asked {
  const service = createService({ failed });
  service.setRoots([rootUri]);
  let at = { uri: '', line: 0, column: 0, lineText: '', endLine: 0, endColumn: 0 };
  const texts = new Map<string, string>();
  for (const part of files) {
    const { name, bom: hasBom } = fileOf(part.head);
    const uri = rootUri + name;
    const marked = linesOf(part.body)
      .map(({ text }) => text)
      .join('\n');
    const before = marked.indexOf(cursor);
    if (before >= 0 || at.uri === '') {
      const above = marked.slice(0, Math.max(0, before)).split('\n');
      const line = above.length - 1;
      const bom = hasBom && line === 0 ? '\uFEFF' : '';
      const lineText = bom + marked.replaceAll(cursor, '').split('\n')[line]!;
      const column = above[line]!.length + bom.length;
      const end = marked.indexOf(cursor, before + 1);
      const selected = end < 0 ? above : marked.slice(0, end).replace(cursor, '').split('\n');
      const endLine = selected.length - 1;
      const endColumn = end < 0 ? column : selected[endLine]!.length + (endLine === 0 ? bom.length : 0);
      at = { uri, line, column, lineText, endLine, endColumn };
    }
    const whole = textOf(part).replaceAll(cursor, '');
    service.setText(uri, whole);
    texts.set(uri, whole);
  }
  return { service, ...at, texts };
}

/** Asks every question of every case; when updating, writes the answers into the file. */
export function answersOf(file: QuestionFile, answer: (words: string, asked: Asked) => string): string[][] {
  const told = file.cases.map((one) =>
    one.questions.map(({ words }) => answer(words, serviceOf(one)).trimEnd()),
  );
  if (updating)
    writeFixture(
      file,
      file.cases.map(({ title, files, questions }, index) => ({
        title,
        parts: [...files, ...questions.map(({ words }, at) => ({ head: words, body: told[index]![at]! }))],
      })),
    );
  return told;
}
