import { type ExtensionContext, Uri } from 'vscode';
import { LanguageClient, type NodeModule, TransportKind } from 'vscode-languageclient/node';
import { startExtension } from './extension.ts';
import { offerTasks } from './tasks.ts';

/** Entry point on a desktop or a remote machine: the language server is a Node process of its own. */
export function activate(context: ExtensionContext): Promise<void> {
  const server: NodeModule = {
    module: Uri.joinPath(context.extensionUri, 'dist', 'server.cjs').fsPath,
    transport: TransportKind.ipc,
  };
  const debug: NodeModule = { ...server, options: { execArgv: ['--nolazy', '--inspect=6009'] } };
  context.subscriptions.push(offerTasks(context));
  return startExtension(
    context,
    (options) => new LanguageClient('doughwright', 'Doughwright', { run: server, debug }, options),
  );
}
