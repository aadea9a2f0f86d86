import { Uri, type WebviewPanel } from 'vscode';
import { languageOfAnswers } from '../language.ts';
import { panelHtml } from './html.ts';

/** Gives a webview our icon, our style and one of our scripts, and lets it load nothing else. `title` is of ours, never from a file. */
export function dressWebview(panel: WebviewPanel, extensionUri: Uri, script: string, title: string): void {
  panel.iconPath = {
    light: Uri.joinPath(extensionUri, 'client', 'media', 'file-light.svg'),
    dark: Uri.joinPath(extensionUri, 'client', 'media', 'file-dark.svg'),
  };
  panel.webview.options = {
    enableScripts: true,
    localResourceRoots: [Uri.joinPath(extensionUri, 'dist')],
  };
  const fileOf = (name: string) =>
    panel.webview.asWebviewUri(Uri.joinPath(extensionUri, 'dist', name)).toString();
  panel.webview.html = panelHtml({
    cspSource: panel.webview.cspSource,
    nonce: freshNonce(),
    scriptUri: fileOf(script),
    styleUri: fileOf('preview.css'),
    language: languageOfAnswers(),
    title,
  });
}

function freshNonce(): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) =>
    byte.toString(16).padStart(2, '0'),
  ).join('');
}
