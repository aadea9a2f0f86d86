import { commands, type Disposable, type LogOutputChannel, l10n, window } from 'vscode';
import type { ChangesPanel } from './changes/changes-panel.ts';
import { convertMixing } from './convert-mixing.ts';
import type { Cursor } from './cursor.ts';
import type { SheetExports } from './exports/sheet-exports.ts';
import type { Guard } from './guard.ts';
import type { TableImports } from './imports/formula-from-table.ts';
import { isEntry, showAgain, showChosen } from './list/chosen.ts';
import type { FormulaList } from './list/formula-list.ts';
import { newFormula } from './list/new-formula.ts';
import { commandIds } from './names.ts';
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
  readonly exports: SheetExports;
  readonly imports: TableImports;
  readonly log: LogOutputChannel;
  readonly restart: () => Promise<void>;
}

/** Everything the palette, the menus and the keys can ask for. */
export function registerCommands(parts: CommandParts): Disposable[] {
  const { guard, wire, cursor, panels, list, changes, exports, imports, log, restart } = parts;
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

  return [
    commands.registerCommand(
      commandIds.openSheet,
      guard('open batch sheet', async (chosen?: unknown) => {
        await show(chosen);
        panels.open();
      }),
    ),
    commands.registerCommand(
      commandIds.openPinnedSheet,
      guard('open a pinned sheet', async (chosen?: unknown) => {
        const place = await formulaOf(chosen);
        if (place) panels.openPinned(place);
      }),
    ),
    commands.registerCommand(
      commandIds.workFromSheet,
      guard('work from the sheet', async (chosen?: unknown) => {
        const place = await formulaOf(chosen);
        if (place) panels.openPinned(place, 'working');
      }),
    ),
    commands.registerCommand(
      commandIds.saveSheet,
      guard('save the sheet', async (chosen?: unknown) => {
        const place = await formulaOf(chosen);
        if (place) await exports.saveAs(place);
      }),
    ),
    commands.registerCommand(
      commandIds.printSheet,
      guard('print the sheet', async (chosen?: unknown) => {
        const place = await formulaOf(chosen);
        if (place) await exports.print(place);
      }),
    ),
    commands.registerCommand(
      commandIds.copySheet,
      guard('copy the sheet', async (chosen?: unknown) => {
        const place = await formulaOf(chosen);
        if (place) await exports.copy(place);
      }),
    ),
    commands.registerCommand(
      commandIds.showChanges,
      guard('what changed', async (chosen?: unknown) => {
        const place = await placeOf(chosen);
        if (place) changes.open(place.uri);
      }),
    ),
    commands.registerCommand(
      commandIds.newFormula,
      guard('new formula', () => newFormula(wire)),
    ),
    commands.registerCommand(
      commandIds.importClipboard,
      guard('table on the clipboard', () => imports.fromClipboard()),
    ),
    commands.registerCommand(
      commandIds.importSelection,
      guard('selected table', () => imports.fromSelection()),
    ),
    commands.registerCommand(
      commandIds.filterList,
      guard('filter the list', () => list.filter()),
    ),
    commands.registerCommand(
      commandIds.clearListFilter,
      guard('whole list', () => list.clearFilter()),
    ),
    commands.registerCommand(
      commandIds.refreshList,
      guard('refresh the list', () => list.refresh()),
    ),
    commands.registerCommand(commandIds.convertMixing, guard('convert mixing', convertMixing)),
    commands.registerCommand(
      commandIds.showLog,
      guard('show log', () => log.show()),
    ),
    commands.registerCommand(commandIds.restart, guard('restart', restart)),
  ];
}
