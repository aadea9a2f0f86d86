import { type ExtensionContext, l10n, Uri, window, workspace } from 'vscode';
import { type BaseLanguageClient, type LanguageClientOptions, State } from 'vscode-languageclient';
import { createChangesPanel } from './changes/changes-panel.ts';
import { registerCommands } from './commands.ts';
import { watchCursor } from './cursor.ts';
import { createExperimentPanel } from './experiment/experiment-panel.ts';
import { createSheetExports } from './exports/sheet-exports.ts';
import { guardWith } from './guard.ts';
import { tickFirstSteps } from './help/first-steps.ts';
import { createHistoryPanel } from './history/history-panel.ts';
import { registerSinceHover } from './history/since-hover.ts';
import { createTableImports } from './imports/formula-from-table.ts';
import { registerTablePaste } from './imports/table-paste.ts';
import { createFormulaList } from './list/formula-list.ts';
import { commandIds, languageId } from './names.ts';
import { createOverlayPanel } from './overlay/overlay-panel.ts';
import { createPlanPanel } from './plan/plan-panel.ts';
import { createPanels } from './preview/panels.ts';
import { createServerLife, type ServerLife, type ServerTrouble } from './server-life.ts';
import { registerShowUses, showUsesCommand } from './show-uses.ts';
import { createStatusBar } from './status-bar.ts';
import { createWire } from './wire.ts';

/** Makes a client for one kind of machine; it is not started yet. */
export type CreateClient = (options: LanguageClientOptions) => BaseLanguageClient;

/** What both builds do alike: the commands, the status bar, the batch sheet, and the language server behind them. */
export async function startExtension(context: ExtensionContext, createClient: CreateClient): Promise<void> {
  const log = window.createOutputChannel('Doughwright', { log: true });
  const guard = guardWith(log);
  const wire = createWire();
  const cursor = watchCursor();
  const statusBar = createStatusBar(wire, cursor, guard);
  const panels = createPanels({
    ...{ wire, cursor, guard, extensionUri: context.extensionUri, store: context.workspaceState },
  });
  const list = createFormulaList(wire, guard);
  const plan = createPlanPanel(wire, guard, context.extensionUri);
  const overlay = createOverlayPanel(wire, guard, context.extensionUri);
  const experiment = createExperimentPanel({
    ...{ wire, cursor, guard, extensionUri: context.extensionUri, store: context.workspaceState },
  });
  const changes = createChangesPanel(wire, guard, context.extensionUri);
  const history = createHistoryPanel(wire, guard, context.extensionUri);
  const pages = [changes, plan, experiment, overlay, history];
  const exports = createSheetExports({ wire, kept: panels.kept, storage: context.globalStorageUri });
  const imports = createTableImports(wire, log);
  const makeClient = () => {
    const fresh = createClient({
      documentSelector: [{ language: languageId }],
      outputChannel: log,
      // A hover may open the map of the gap, and nothing else.
      markdown: { isTrusted: { enabledCommands: [commandIds.openMap] } },
      initializationOptions: () => ({
        settings: plainSettings(),
        rulePages: rulePagesOf(context),
        commands: [
          showUsesCommand,
          commandIds.openSheet,
          commandIds.openPlan,
          commandIds.openExperiment,
          commandIds.openMap,
        ],
        calmWhileTyping: true,
        pictures: true,
      }),
    });
    wire.attach(fresh);
    fresh.onDidChangeState(({ newState }) => {
      if (server.current !== fresh || newState === State.Starting) return;
      panels.serverRuns(newState === State.Running);
      statusBar.refresh();
      list.refresh();
      for (const page of pages) page.refresh();
    });
    return fresh;
  };
  const server: ServerLife<BaseLanguageClient> = createServerLife(makeClient, (trouble) =>
    log.warn(troubleWords(trouble)),
  );
  const restart = async () => {
    log.info(l10n.t('Restarting the language server.'));
    await server.restart();
  };

  context.subscriptions.push(
    log,
    wire,
    cursor,
    statusBar,
    panels,
    list,
    ...pages,
    ...tickFirstSteps(),
    registerSinceHover(wire),
    registerShowUses(),
    ...registerTablePaste(imports),
    ...registerCommands({
      ...{
        guard,
        wire,
        cursor,
        panels,
        list,
        changes,
        history,
        plan,
        experiment,
        overlay,
        exports,
        imports,
        log,
        restart,
      },
      extensionUri: context.extensionUri,
    }),
    { dispose: () => void server.stop() },
  );
  await guard('start', server.start)();
}

function troubleWords(trouble: ServerTrouble): string {
  switch (trouble.kind) {
    case 'slow':
      return l10n.t('The language server takes long to start.');
    case 'not-started':
      return l10n.t('The language server could not be started: {0}', trouble.why);
    case 'not-stopped':
      return l10n.t('The language server could not be stopped: {0}', trouble.why);
  }
}

/** The settings as plain data: the editor's own object has functions on it, which cannot be sent to a worker. */
function plainSettings(): unknown {
  return JSON.parse(JSON.stringify(workspace.getConfiguration(languageId)));
}

/** The folders of the pages that findings link to, by language; they ship with the extension. */
function rulePagesOf(context: ExtensionContext): Readonly<Record<string, string>> {
  const folder = (...path: string[]) => `${Uri.joinPath(context.extensionUri, 'docs', ...path).toString()}/`;
  return { en: folder('rules'), de: folder('de', 'rules') };
}
