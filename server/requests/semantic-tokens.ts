import {
  SemanticTokenModifiers as Modifier,
  type SemanticTokens,
  type SemanticTokensDelta,
  type SemanticTokensEdit,
  type SemanticTokensLegend,
  SemanticTokenTypes as Type,
} from 'vscode-languageserver';
import type { SemanticKind, SemanticModifier, TokenStretch } from '../../core/index.ts';
import { toRange } from '../convert/convert.ts';
import type { About, QuestionParts } from './about.ts';

/** The one kind that no standard type fits; the manifest tells editors of it. */
export const unknownNameType = 'unknownName';

/** The standard types, so that themes know their colours. */
const types: Readonly<Record<SemanticKind, string>> = {
  collection: Type.namespace,
  formula: Type.class,
  part: Type.struct,
  flour: Type.type,
  ingredient: Type.variable,
  role: Type.interface,
  mixer: Type.function,
  unknownName: unknownNameType,
  property: Type.property,
  step: Type.method,
  choice: Type.enumMember,
  keyword: Type.keyword,
  number: Type.number,
  unit: Type.number,
  text: Type.string,
  comment: Type.comment,
};
const modifiers: Readonly<Record<SemanticModifier, string>> = {
  declaration: Modifier.declaration,
  catalogue: Modifier.defaultLibrary,
};

const typeNames = [...new Set(Object.values(types))];
const typeIndex = new Map(Object.entries(types).map(([kind, name]) => [kind, typeNames.indexOf(name)]));
const modifierNames = Object.keys(modifiers) as SemanticModifier[];
const modifierBit = new Map(modifierNames.map((name, index) => [name, 1 << index]));

export const legend: SemanticTokensLegend = {
  tokenTypes: typeNames,
  tokenModifiers: modifierNames.map((name) => modifiers[name]),
};

interface Result {
  readonly id: string;
  readonly data: number[];
}

/** Answers what every word of a document is, and keeps the last answer for each so that the next tells but what changed. */
export function answerSemanticTokens({ connection, documents }: QuestionParts, about: About): void {
  const last = new Map<string, Result>();
  let count = 0;

  const keep = (uri: string, data: number[]): Result => {
    for (const kept of last.keys()) if (!documents.has(kept)) last.delete(kept);
    const result = { id: String(++count), data };
    last.set(uri, result);
    return result;
  };

  connection.languages.semanticTokens.on(
    about<{ textDocument: { uri: string } }, SemanticTokens>(
      'Colours',
      { data: [] },
      'quiet',
      (service, uri) => {
        const { id, data } = keep(uri, encoded(service.semanticTokens(uri)));
        return { resultId: id, data };
      },
    ),
  );
  connection.languages.semanticTokens.onDelta(
    about<{ textDocument: { uri: string }; previousResultId: string }, SemanticTokens | SemanticTokensDelta>(
      'Colours',
      { data: [] },
      'quiet',
      (service, uri, { previousResultId }) => {
        const before = last.get(uri);
        const { id, data } = keep(uri, encoded(service.semanticTokens(uri)));
        if (before === undefined || before.id !== previousResultId) return { resultId: id, data };
        return { resultId: id, edits: editsBetween(before.data, data) };
      },
    ),
  );
  connection.languages.semanticTokens.onRange(
    about('Colours', { data: [] }, 'quiet', (service, uri, { range }) => {
      const [first, end] = [range.start.line, range.end.line];
      return { data: encoded(service.semanticTokens(uri, first, end), first, end) };
    }),
  );
}

/** Tokens as the protocol wants them: five numbers each, places told from the token before. */
export function encoded(
  stretches: readonly TokenStretch[],
  first = 0,
  last = Number.MAX_SAFE_INTEGER,
): number[] {
  const data: number[] = [];
  let lineBefore = 0;
  let columnBefore = 0;
  for (const { firstLine, tokens } of stretches)
    for (const token of tokens) {
      const line = firstLine + token.line;
      if (line < first || line > last) continue;
      const { start, end } = toRange({ line, start: token.start, end: token.start + token.length });
      const bits = token.modifiers.reduce((sum, name) => sum | modifierBit.get(name)!, 0);
      data.push(
        line - lineBefore,
        line === lineBefore ? start.character - columnBefore : start.character,
        end.character - start.character,
        typeIndex.get(token.kind)!,
        bits,
      );
      lineBefore = line;
      columnBefore = start.character;
    }
  return data;
}

/** What turns one list into another as one replacement between the numbers that both begin and end with. */
export function editsBetween(before: readonly number[], after: readonly number[]): SemanticTokensEdit[] {
  const most = Math.min(before.length, after.length);
  let start = 0;
  while (start < most && before[start] === after[start]) start++;
  if (start === before.length && start === after.length) return [];
  let same = 0;
  while (same < most - start && before[before.length - 1 - same] === after[after.length - 1 - same]) same++;
  const data = after.slice(start, after.length - same);
  return [{ start, deleteCount: before.length - same - start, ...(data.length > 0 && { data }) }];
}
