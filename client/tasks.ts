import {
  type Disposable,
  type ExtensionContext,
  l10n,
  ProcessExecution,
  Task,
  type TaskDefinition,
  TaskGroup,
  TaskScope,
  tasks,
  Uri,
  type WorkspaceFolder,
  workspace,
} from 'vscode';
import { languageOfAnswers } from './language.ts';
import { taskType } from './names.ts';

/** Of the Node that the extension host runs on; the other build of the extension has none. */
declare const process: { readonly execPath: string };

/** A task as `tasks.json` may have it. */
interface CheckTask extends TaskDefinition {
  readonly task: 'check';
  /** A file or folder in the workspace folder; without it all of the folder. */
  readonly path?: string;
  readonly level?: (typeof levels)[number];
}

const levels = ['error', 'warning', 'info'] as const;

/**
 * Offers a check of each folder as a task. It runs the command line that is bundled with the server in the editor’s own
 * Node, on the machine where the files are, so that nobody need install anything: an editor on the desktop becomes
 * plain Node by `ELECTRON_RUN_AS_NODE`; where the extension runs on plain Node, as on a remote machine, that says nothing.
 */
export function offerTasks(context: ExtensionContext): Disposable {
  const program = Uri.joinPath(context.extensionUri, 'dist', 'server.cjs').fsPath;
  const taskFor = (definition: CheckTask, folder: WorkspaceFolder | undefined): Task => {
    const level = levels.find((one) => one === definition.level) ?? 'warning';
    // Behind the two dashes a path is a path, however it begins.
    const words = [
      'check',
      '--level',
      level,
      '--language',
      languageOfAnswers(),
      '--',
      String(definition.path ?? '.'),
    ];
    const execution = new ProcessExecution(process.execPath, [program, ...words], {
      ...(folder ? { cwd: folder.uri.fsPath } : {}),
      env: { ELECTRON_RUN_AS_NODE: '1' },
    });
    const scope = folder ?? TaskScope.Workspace;
    // The server tells the findings of every file itself: a matcher would have each of them listed twice.
    const task = new Task(definition, scope, 'check', 'Doughwright', execution, []);
    task.group = TaskGroup.Test;
    task.detail = l10n.t('Shows what is wrong with the formulas of the folder.');
    return task;
  };
  return tasks.registerTaskProvider(taskType, {
    provideTasks: () =>
      (workspace.isTrusted ? (workspace.workspaceFolders ?? []) : [])
        .filter(({ uri }) => uri.scheme === 'file')
        .map((folder) => taskFor({ type: taskType, task: 'check' }, folder)),
    resolveTask: ({ definition, scope }) =>
      workspace.isTrusted && definition.task === 'check'
        ? taskFor(
            definition as CheckTask,
            typeof scope === 'object' ? scope : workspace.workspaceFolders?.[0],
          )
        : undefined,
  });
}
