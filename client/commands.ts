import { commands, type Disposable, type LogOutputChannel, l10n, type Uri, window } from 'vscode';
import type { ChangesPanel } from './changes/changes-panel.ts';
import { convertMixing } from './convert-mixing.ts';
import type { Cursor } from './cursor.ts';
import type { ExperimentPanel } from './experiment/experiment-panel.ts';
import type { ExperimentMode } from './experiment/messages.ts';
import type { SheetExports } from './exports/sheet-exports.ts';
import type { Guard } from './guard.ts';
import { openDemo } from './help/demo.ts';
import { openGuide } from './help/guide.ts';
import type { HistoryPanel } from './history/history-panel.ts';
import type { TableImports } from './imports/formula-from-table.ts';
import { isEntry, showAgain, showChosen } from './list/chosen.ts';
import { deleteEntry, duplicateEntry, renameEntry, revealEntry } from './list/entry-commands.ts';
import type { FormulaList } from './list/formula-list.ts';
import { newFormula } from './list/new-formula.ts';
import { commandIds } from './names.ts';
import type { OverlayPanel } from './overlay/overlay-panel.ts';
import type { PlanPanel } from './plan/plan-panel.ts';
import type { FollowedPlace } from './preview/follower.ts';
import type { Panels } from './preview/panels.ts';
import type { Wire } from './wire.ts';

export interface CommandParts {
  readonly guard: Guard;
  readonly wire: Wire;
  readonly cursor: Cursor;
  readonly panels: Panels;
  readonly list: FormulaList;
  readonly changes: ChangesPanel;
  readonly history: HistoryPanel;
  readonly exports: SheetExports;
  readonly imports: TableImports;
  readonly log: LogOutputChannel;
  readonly restart: () => Promise<void>;
  readonly extensionUri: Uri;
  readonly plan: PlanPanel;
  readonly overlay: OverlayPanel;
  readonly experiment: ExperimentPanel;
}

type CommandRow = readonly [id: string, name: string, run: (chosen?: unknown) => unknown];

/** Everything the palette, the menus and the keys can ask for: the command, what its failure is called in the log, what it does. */
export function registerCommands(parts: CommandParts): Disposable[] {
  const { guard, wire, panels, list, changes, history, exports, imports, log, restart } = parts;
  const { show, placeOf, formulaOf } = chosenPlaces(parts);
  const withFormula = (run: (place: FollowedPlace) => unknown) => async (chosen?: unknown) => {
    const place = await formulaOf(chosen);
    if (place) await run(place);
  };
  const rows: readonly CommandRow[] = [
    [
      commandIds.openSheet,
      'open batch sheet',
      async (chosen) => {
        await show(chosen);
        const at = parts.cursor.place;
        // An experiment has a sheet of its own.
        if (at && (await parts.experiment.standsIn(at))) parts.experiment.open(at);
        else panels.open();
      },
    ],
    [commandIds.openPinnedSheet, 'open a pinned sheet', withFormula((place) => panels.openPinned(place))],
    [
      commandIds.workFromSheet,
      'work from the sheet',
      withFormula((place) => panels.openPinned(place, 'working')),
    ],
    [commandIds.saveSheet, 'save the sheet', withFormula((place) => exports.saveAs(place))],
    [commandIds.printSheet, 'print the sheet', withFormula((place) => exports.print(place))],
    [commandIds.copySheet, 'copy the sheet', withFormula((place) => exports.copy(place))],
    [
      commandIds.showChanges,
      'what changed',
      async (chosen) => {
        const place = await placeOf(chosen);
        if (place) changes.open(place.uri);
      },
    ],
    [commandIds.showHistory, 'history of the formula', withFormula((place) => history.open(place))],
    [commandIds.newFormula, 'new formula', () => newFormula(wire)],
    [commandIds.importClipboard, 'table on the clipboard', () => imports.fromClipboard()],
    [commandIds.importSelection, 'selected table', () => imports.fromSelection()],
    [commandIds.filterList, 'filter the list', () => list.filter()],
    [commandIds.clearListFilter, 'whole list', () => list.clearFilter()],
    [commandIds.refreshList, 'refresh the list', () => list.refresh()],
    [
      commandIds.openMap,
      'open the map of the gap',
      async (chosen) => {
        const place = await formulaOf(chosen);
        if (place) panels.openMap(place);
      },
    ],
    [commandIds.convertMixing, 'convert mixing', convertMixing],
    [
      commandIds.openPlan,
      'open the plan',
      async (chosen) => {
        const place = await placeOf(chosen);
        if (place)
          parts.plan.open({
            uri: place.uri,
            line: place.line,
            ...(place.formula === undefined ? {} : { plan: place.formula }),
          });
      },
    ],
    [
      commandIds.layOver,
      'lay formulas over each other',
      withFormula(async ({ uri, formula }) => {
        if (formula !== undefined) await parts.overlay.choose({ uri, formula });
      }),
    ],
    ...experimentRows(parts, placeOf),
    [commandIds.openGuide, 'open the guide', () => openGuide(parts.extensionUri)],
    [commandIds.openDemo, 'open the demo', () => openDemo(parts.extensionUri)],
    [commandIds.revealEntry, 'reveal an entry', revealEntry],
    [commandIds.renameEntry, 'rename an entry', renameEntry],
    [commandIds.duplicateEntry, 'duplicate an entry', duplicateEntry],
    [commandIds.deleteEntry, 'delete an entry', deleteEntry],
    [commandIds.showLog, 'show log', () => log.show()],
    [commandIds.restart, 'restart', restart],
  ];
  return rows.map(([id, name, run]) => commands.registerCommand(id, guard(name, run)));
}

/** An experiment as its sheet, and at the bench. */
function experimentRows(
  { experiment }: CommandParts,
  placeOf: (chosen: unknown) => Promise<FollowedPlace | undefined>,
): CommandRow[] {
  const open = (mode: ExperimentMode) => async (chosen: unknown) => {
    const place = await placeOf(chosen);
    if (!place) return;
    const { uri, line, formula: name } = place;
    experiment.open({ uri, line, ...(name === undefined ? {} : { experiment: name }) }, mode);
  };
  return [
    [commandIds.openExperiment, 'open the experiment', open('sheet')],
    [commandIds.runExperiment, 'run the experiment', open('bench')],
  ];
}

/** What a menu handed over, or what the cursor stands in. */
function chosenPlaces({ wire, cursor, panels }: CommandParts) {
  /** Shows what a menu handed over; from a page that has no cursor, as the first steps are, the formula worked on last. */
  const show = async (chosen: unknown): Promise<void> => {
    const isAtHand = chosen !== undefined || window.activeTextEditor || panels.placeAtHand();
    await (isAtHand ? showChosen(chosen) : showAgain(cursor.last));
  };
  /** The formula that a command is about; what a menu hands over is shown in the editor first. */
  const placeOf = async (chosen: unknown): Promise<FollowedPlace | undefined> => {
    if (isEntry(chosen)) return { uri: chosen.uri, line: chosen.line, formula: chosen.name };
    await show(chosen);
    const place = panels.placeAtHand();
    if (!place)
      void window.showInformationMessage(l10n.t('Put the cursor into a formula of a .dough file first.'));
    return place;
  };
  /** The place with the name of its formula, so that it stays with it when lines move; without one says what to do. */
  const formulaOf = async (chosen: unknown): Promise<FollowedPlace | undefined> => {
    const place = await placeOf(chosen);
    if (!place || place.formula !== undefined) return place;
    const status = await wire.askStatus({ textDocument: { uri: place.uri }, line: place.line });
    if (status) return { ...place, formula: status.formula };
    void window.showInformationMessage(
      l10n.t(
        'There is no formula at the cursor: put it into one; “Doughwright: Restart Language Server” helps where nothing is computed.',
      ),
    );
    return undefined;
  };
  return { show, placeOf, formulaOf };
}
