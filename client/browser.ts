import { type ExtensionContext, Uri, workspace } from 'vscode';
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  LanguageClient,
  type MessageTransports,
} from 'vscode-languageclient/browser';
import { startExtension } from './extension.ts';

/** Entry point in a browser: the language server is a web worker. */
export function activate(context: ExtensionContext): Promise<void> {
  const script = Uri.joinPath(context.extensionUri, 'dist', 'server-worker.js');
  let end = () => {};
  context.subscriptions.push({ dispose: () => end() });
  // The editor puts a Worker of its own in the place of the browser's, which the client library would not know for one:
  // so it is handed the two ends of the talk instead.
  const start = async (): Promise<MessageTransports> => {
    end();
    const started = await startWorker(script);
    end = started.end;
    return {
      reader: new BrowserMessageReader(started.worker),
      writer: new BrowserMessageWriter(started.worker),
    };
  };
  return startExtension(
    context,
    (options) => new LanguageClient('doughwright', 'Doughwright', start, options),
  );
}

/**
 * A worker must come from the page's own origin, and an extension is often served from another. So the script is read
 * by the editor and started from a blob, which has the page's origin wherever the extension lies. The blob stays as
 * long as the worker, for the editor loads it in its own time.
 */
async function startWorker(script: Uri): Promise<{ worker: Worker; end: () => void }> {
  const bytes = await workspace.fs.readFile(script);
  const url = URL.createObjectURL(new Blob([new Uint8Array(bytes)], { type: 'text/javascript' }));
  const worker = new Worker(url, { name: 'Doughwright' });
  return {
    worker,
    end: () => {
      worker.terminate();
      URL.revokeObjectURL(url);
    },
  };
}
