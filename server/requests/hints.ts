import { type InlayHint, MarkupKind } from 'vscode-languageserver';
import type { Hint, Service } from '../../core/index.ts';
import { toInlayHint, toTextEdit } from '../convert/convert.ts';
import type { About, QuestionParts } from './about.ts';

/** What a hint carries so that more can be told of it when somebody points at it. */
interface HintData {
  readonly uri: string;
}

/**
 * Answers the figures at the ends of lines. What they stand on, and the edits that write them into the line, are worked out
 * when the client asks for them; a client that cannot ask is told what they stand on at once.
 */
export function answerHints({ connection, workspace, able }: QuestionParts, about: About): void {
  const shown = ({ kind }: Hint): boolean => workspace.settings.hints[kind];

  connection.languages.inlayHint.on(
    about('Hints', [], 'quiet', (service, uri, { range, textDocument }) =>
      service
        .hints(uri, range.start.line, range.end.line)
        .filter(shown)
        .map((hint): InlayHint => {
          const made = toInlayHint(hint);
          if (able.resolvesHints) return { ...made, data: { uri: textDocument.uri } satisfies HintData };
          return { ...made, ...tooltipOf(service.hintDetail(uri, hint.line)?.tooltip) };
        }),
    ),
  );

  connection.languages.inlayHint.resolve((hint, token) => {
    const { uri } = (hint.data ?? {}) as Partial<HintData>;
    if (uri === undefined) return hint;
    const resolve = about<{ textDocument: { uri: string } }, InlayHint>('Hint', hint, 'now', (service, of) =>
      resolved(service, of, hint),
    );
    return resolve({ textDocument: { uri } }, token);
  });
}

/** The hint with all there is to say of it; as it was where the text has moved on and has another in its place. */
function resolved(service: Service, uri: string, hint: InlayHint): InlayHint {
  const { line } = hint.position;
  const same = service.hints(uri, line, line).some(({ label }) => label === hint.label);
  const detail = same ? service.hintDetail(uri, line) : undefined;
  if (detail === undefined) return hint;
  return {
    ...hint,
    ...tooltipOf(detail.tooltip),
    ...(detail.edits && { textEdits: detail.edits.map(toTextEdit) }),
  };
}

function tooltipOf(value: string | undefined): Pick<InlayHint, 'tooltip'> {
  return value === undefined ? {} : { tooltip: { kind: MarkupKind.Markdown, value } };
}
