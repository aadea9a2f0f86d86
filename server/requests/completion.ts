import type { CompletionItem } from 'vscode-languageserver';
import type { CompletionKind } from '../../core/index.ts';
import { toCompletionItem, toDocumentation } from '../convert/convert.ts';
import type { About, QuestionParts } from './about.ts';

/** What an item carries so that more can be told of it once it is looked at. */
interface CompletionData {
  readonly uri: string;
  readonly line: number;
  readonly kind: CompletionKind;
}

/** The kinds of which there is more to tell than the list shows. */
const told: ReadonlySet<CompletionKind> = new Set([
  'ingredient',
  'part',
  'formula',
  'mixer',
  'rule',
  'section',
]);

/** Answers what may be written at the cursor; what an item is made of is worked out when it is looked at. */
export function answerCompletion({ connection, able }: QuestionParts, about: About): void {
  connection.onCompletion(
    about('Completion', null, 'now', (service, uri, { position, textDocument }) => ({
      isIncomplete: false,
      items: service.completions(uri, position.line, position.character).map((completion) => {
        const { kind } = completion;
        const data: CompletionData = { uri: textDocument.uri, line: position.line, kind };
        return { ...toCompletionItem(completion, able), ...(told.has(kind) && { data }) };
      }),
    })),
  );

  connection.onCompletionResolve((item, token) => {
    const { uri, line, kind } = (item.data ?? {}) as Partial<CompletionData>;
    if (uri === undefined || line === undefined || kind === undefined) return item;
    const resolve = about<{ textDocument: { uri: string } }, CompletionItem>(
      'Completion',
      item,
      'now',
      (service, of) => {
        const detail = service.completionDetail(of, line, kind, item.label);
        return detail === undefined ? item : { ...item, documentation: toDocumentation(detail, able) };
      },
    );
    return resolve({ textDocument: { uri } }, token);
  });
}
