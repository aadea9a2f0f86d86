import {
  commands,
  type Disposable,
  EventEmitter,
  l10n,
  Range,
  ThemeIcon,
  TreeItem,
  TreeItemCollapsibleState,
  Uri,
  window,
} from 'vscode';
import type { OverviewEntry, OverviewKind } from '../../server/protocol.ts';
import type { Guard } from '../guard.ts';
import { filteringContext, listViewId } from '../names.ts';
import type { Wire } from '../wire.ts';
import { fileName, groupKinds, matching, sorted } from './entries.ts';

export interface FormulaList extends Disposable {
  /** Asks anew what the files define. */
  refresh(): void;
  /** Lets a baker type words that an entry must hold; the list follows each key. */
  filter(): void;
  clearFilter(): void;
}

interface Group {
  readonly kind: OverviewKind;
  readonly title: string;
  readonly entries: readonly OverviewEntry[];
}
type Node = Group | OverviewEntry;

const icons: Readonly<Record<OverviewKind, string>> = {
  bakery: 'home',
  formula: 'note',
  flour: 'package',
  mixer: 'sync',
  plan: 'calendar',
  experiment: 'beaker',
};

/** So long the list waits for the next key before it asks again: it hurries nobody. */
const restMilliseconds = 250;

/** The side bar's list of all that the workspace defines, answered by the server in one go. */
export function createFormulaList(wire: Wire, guard: Guard): FormulaList {
  const changed = new EventEmitter<void>();
  let entries: readonly OverviewEntry[] = [];
  let typed = '';
  let asking = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let isStale = true;

  const view = window.createTreeView<Node>(listViewId, {
    treeDataProvider: {
      onDidChangeTreeData: changed.event,
      getChildren: (node) => (node === undefined ? groups() : 'entries' in node ? [...node.entries] : []),
      getTreeItem: (node) => ('entries' in node ? groupItem(node, typed !== '') : entryItem(node)),
    },
    showCollapseAll: true,
  });

  const groups = (): Group[] => {
    const shown = matching(entries, typed);
    const titles = groupTitles();
    return groupKinds
      .map((kind) => ({
        ...{ kind, title: titles[kind] },
        entries: shown.filter((entry) => entry.kind === kind),
      }))
      .filter((group) => group.entries.length > 0);
  };
  const draw = () => {
    const nothing = typed !== '' && entries.length > 0 && matching(entries, typed).length === 0;
    const said = nothing ? l10n.t('Nothing holds “{0}”.', typed) : l10n.t('Only what holds “{0}”', typed);
    view.message = typed === '' ? '' : said;
    changed.fire();
  };
  const ask = guard('list of formulas', async () => {
    isStale = false;
    asking += 1;
    const own = asking;
    const overview = await wire.askOverview();
    if (own !== asking) return;
    entries = sorted(overview?.entries ?? []);
    draw();
  });
  const refresh = () => {
    isStale = true;
    clearTimeout(timer);
    if (view.visible) timer = setTimeout(() => void ask(), restMilliseconds);
  };
  const setFilter = (words: string) => {
    typed = words.trim();
    void commands.executeCommand('setContext', filteringContext, typed !== '');
    draw();
  };

  const subscriptions = [
    view,
    changed,
    view.onDidChangeVisibility(() => {
      if (view.visible && isStale) refresh();
    }),
    wire.onChanged(refresh),
  ];
  refresh();
  return {
    refresh,
    filter() {
      const box = window.createInputBox();
      const before = typed;
      let accepted = false;
      box.title = l10n.t('Filter the List');
      box.placeholder = l10n.t('A part of a name, a file, a grain, a weight');
      box.value = typed;
      box.onDidChangeValue(setFilter);
      box.onDidAccept(() => {
        accepted = true;
        box.hide();
      });
      box.onDidHide(() => {
        if (!accepted) setFilter(before);
        box.dispose();
      });
      box.show();
    },
    clearFilter: () => setFilter(''),
    dispose: () => {
      clearTimeout(timer);
      for (const subscription of subscriptions) subscription.dispose();
    },
  };
}

function groupTitles(): Readonly<Record<OverviewKind, string>> {
  return {
    bakery: l10n.t('Bakery'),
    formula: l10n.t('Formulas'),
    flour: l10n.t('Flours'),
    mixer: l10n.t('Mixers'),
    plan: l10n.t('Plans'),
    experiment: l10n.t('Experiments'),
  };
}

function groupItem({ kind, title, entries }: Group, isFiltered: boolean): TreeItem {
  const open =
    isFiltered || kind === 'formula' || kind === 'bakery' || kind === 'plan' || kind === 'experiment';
  const item = new TreeItem(
    title,
    open ? TreeItemCollapsibleState.Expanded : TreeItemCollapsibleState.Collapsed,
  );
  // A list that is filtered opens its groups; another identity keeps what a baker closed for when it is not.
  item.id = isFiltered ? `filtered ${kind}` : kind;
  item.contextValue = `group.${kind}`;
  item.accessibilityInformation = { label: `${title}, ${entries.length}` };
  return item;
}

function entryItem(entry: OverviewEntry): TreeItem {
  const { kind, name, detail, uri, line } = entry;
  const item = new TreeItem(name, TreeItemCollapsibleState.None);
  // The side bar is narrow: figures alone, and what they are in the tooltip and to a screen reader.
  item.description = entry.brief ?? detail;
  item.iconPath = new ThemeIcon(icons[kind]);
  item.contextValue = kind;
  // Of a resource the editor shows how many findings its file has, and how serious they are.
  item.resourceUri = Uri.parse(uri, true);
  const place = l10n.t('{0}, line {1}', fileName(uri), line + 1);
  item.tooltip = [name, detail, place].filter(Boolean).join('\n');
  item.accessibilityInformation = { label: [name, kind, detail].filter(Boolean).join(', ') };
  item.command = {
    command: 'vscode.open',
    title: l10n.t('Open'),
    arguments: [Uri.parse(uri, true), { selection: new Range(line, 0, line, 0) }],
  };
  return item;
}
