import { type Disposable, Hover, languages, MarkdownString, workspace } from 'vscode';
import { repositoryOf } from '../changes/git.ts';
import { languageId } from '../names.ts';
import type { Wire } from '../wire.ts';

/**
 * Says in a hover since which commit a figure is what it is. It is a provider of its own, so that the hover of the server does
 * not wait for git, and it asks only where the folder is trusted and the editor's git knows the file. The server keeps what it
 * read until there is another commit.
 */
export function registerSinceHover(wire: Wire): Disposable {
  return languages.registerHoverProvider(
    { language: languageId, scheme: 'file' },
    {
      async provideHover({ uri }, { line }, token) {
        if (!workspace.isTrusted || !('repository' in (await repositoryOf(uri)))) return undefined;
        if (token.isCancellationRequested) return undefined;
        const since = await wire
          .askSince({ textDocument: { uri: uri.toString() }, line }, token)
          .catch(() => null);
        return since ? new Hover(new MarkdownString().appendText(since.text)) : undefined;
      },
    },
  );
}
