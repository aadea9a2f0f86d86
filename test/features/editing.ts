import type { CompletionKind } from '../../core/index.ts';
import type { Asked } from './archive.ts';

/** The answer to a question that an editor asks while somebody types; `undefined` when the words ask for none. */
export function editingAnswer(words: string, asked: Asked): string[] | undefined {
  const { service, uri, line, column } = asked;
  const [, first, rest = ''] = /^(\S+)\s*(.*)$/.exec(words) ?? [];
  switch (first) {
    case 'tokens':
      return tellTokens(asked);
    case 'signature':
      return tellSignatures(asked);
    case 'hint-detail': {
      const detail = service.hintDetail(uri, line);
      if (detail === undefined) return [];
      const edits = (detail.edits ?? []).map(
        (edit) => `→ ${edit.line}:${edit.start}–${edit.end} ${JSON.stringify(edit.insert)}`,
      );
      return [...detail.tooltip.split('\n'), ...edits];
    }
    case 'detail': {
      const [, kind, label] = /^(\S+)\s+(.*)$/.exec(rest)!;
      return service.completionDetail(uri, line, kind as CompletionKind, label!)?.split('\n') ?? [];
    }
    case 'completion-at': {
      // All that is offered of one kind, in the order told.
      const all = service.completions(uri, line, column).filter(({ kind }) => kind === rest);
      return all.map(({ label, detail }) => `${label}${detail === undefined ? '' : ` (${detail})`}`);
    }
    default:
      return undefined;
  }
}

/** Every word with what it is; one line for each line of the file with words in it. */
function tellTokens({ service, uri }: Asked): string[] {
  const lines = service.lines(uri);
  const told = new Map<number, string[]>();
  for (const { firstLine, tokens } of service.semanticTokens(uri))
    for (const { line, start, length, kind, modifiers } of tokens) {
      const at = firstLine + line;
      const words = lines[at]!.slice(start, start + length);
      told.set(at, [...(told.get(at) ?? []), `${[kind, ...modifiers].join('.')} «${words}»`]);
    }
  return [...told].map(([line, said]) => `${line}: ${said.join('  ')}`);
}

/** The forms with the parameter at the cursor in guillemets; a star before the one that fits. */
function tellSignatures({ service, uri, line, column }: Asked): string[] {
  const answer = service.signatures(uri, line, column);
  return (answer?.signatures ?? []).map(({ label, parameters, active, documentation }, index) => {
    const at = parameters[active];
    const shown =
      at === undefined
        ? label
        : `${label.slice(0, at.start)}«${label.slice(at.start, at.end)}»${label.slice(at.end)}`;
    const said = [documentation, at?.documentation].filter((one) => one !== undefined).join(' | ');
    return `${index === answer!.active ? '*' : '-'} ${shown}${said === '' ? '' : ` — ${said}`}`;
  });
}
