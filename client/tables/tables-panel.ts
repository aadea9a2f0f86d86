import { type Disposable, l10n, type Uri } from 'vscode';
import type { TablesPage } from '../../server/protocol.ts';
import { saveToPrint } from '../beside/save-to-print.ts';
import { createSidePage, type SidePage } from '../beside/side-page.ts';
import type { Guard } from '../guard.ts';
import { noServerWords } from '../nothing-words.ts';
import type { Wire } from '../wire.ts';
import type { FromTables, ToTables } from './messages.ts';

/** What the server answers: a page of tables and the same to print, or why there is none; `null` where it does not run. */
export type TablesAnswer =
  | { readonly page: TablesPage; readonly html: string }
  | { readonly cannot: string }
  | null;

export interface TablesPanelParts<About> {
  readonly wire: Wire;
  readonly guard: Guard;
  readonly extensionUri: Uri;
  readonly viewType: string;
  readonly title: string;
  readonly ask: (about: About) => Promise<TablesAnswer>;
  /** What it is about once it is shown: a name stays while lines above it are typed. */
  readonly settled?: (about: About, page: TablesPage) => About;
  /** Where a page to print is saved, and by what name. */
  readonly printed: (about: About, page: TablesPage) => { readonly uri: string; readonly name: string };
  /** What is so where there is none. */
  readonly none: string;
}

export interface TablesPanel<About> extends Disposable {
  show(about: About): void;
  /** Asks anew, for instance once the server runs again. */
  refresh(): void;
}

/** A page of tables beside its text. It follows every change of its files and comes back after the window is loaded anew. */
export function createTablesPanel<About>(parts: TablesPanelParts<About>): TablesPanel<About> {
  const { wire, guard, extensionUri, viewType, title } = parts;
  let about: About | undefined;
  const page: SidePage<ToTables, About> = createSidePage<ToTables, FromTables, About>({
    ...{ guard, extensionUri, viewType, title, script: 'tables.js' },
    answer: ({ type }) => (type === 'print' ? print() : refresh()),
    restored: (before) => {
      about = before;
    },
  });
  const refresh = guard(viewType, async () => {
    if (!page.isOpen || about === undefined) return;
    const isWanted = page.asking();
    const answer = await parts.ask(about);
    if (!isWanted()) return;
    if (!answer) return page.post({ type: 'none', ...noServerWords() }, about);
    if (!('page' in answer)) return page.post({ type: 'none', what: parts.none, cure: answer.cannot }, about);
    about = parts.settled?.(about, answer.page) ?? about;
    page.post({ type: 'tables', page: answer.page, print: l10n.t('Save as a Page to Print…') }, about);
  });
  const print = async (): Promise<void> => {
    const answer = about === undefined ? null : await parts.ask(about);
    if (about === undefined || !answer || !('page' in answer)) return;
    const { uri, name } = parts.printed(about, answer.page);
    await saveToPrint(uri, name, answer.html);
  };
  const following = wire.onChanged(() => void refresh());
  return {
    refresh: () => void refresh(),
    show(next) {
      about = next;
      if (page.show()) void refresh();
    },
    dispose() {
      page.dispose();
      following.dispose();
    },
  };
}
