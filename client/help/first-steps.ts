import { commands, type Disposable, type Tab, type TextDocument, window, workspace } from 'vscode';
import { hasFolderContext, hasFormulaContext, languageId } from '../names.ts';

/**
 * Tells the first steps what is done already: a folder is open, a formula file has been in front. The editor’s own keys for that do not
 * reach them: the one of the language is known within an editor alone. A key that holds before the page is there ticks nothing any
 * more, so it is told only once the page may be.
 */
export function tickFirstSteps(): Disposable[] {
  const done = new Set<string>();
  const told = new Set<string>();
  const tell = () => {
    for (const key of done) {
      if (told.has(key)) continue;
      told.add(key);
      void commands.executeCommand('setContext', key, true);
    }
  };
  const tellPage = () => {
    if (window.tabGroups.all.some(({ tabs }) => tabs.some(mayBeFirstSteps)))
      setTimeout(tell, pageOpensMilliseconds);
  };
  const note = (key: string, isDone: boolean) => {
    if (!isDone || done.has(key)) return;
    done.add(key);
    tellPage();
  };
  const folder = () => note(hasFolderContext, (workspace.workspaceFolders ?? []).length > 0);
  const formula = (document: TextDocument | undefined) =>
    note(hasFormulaContext, document?.languageId === languageId);
  folder();
  formula(window.activeTextEditor?.document);
  return [
    workspace.onDidChangeWorkspaceFolders(folder),
    window.onDidChangeActiveTextEditor((editor) => formula(editor?.document)),
    window.tabGroups.onDidChangeTabs(tellPage),
  ];
}

/** So long after its tab the page knows its steps. */
const pageOpensMilliseconds = 1500;

/** The editor does not say of its own pages what they are. */
function mayBeFirstSteps({ input }: Tab): boolean {
  return input === undefined;
}
