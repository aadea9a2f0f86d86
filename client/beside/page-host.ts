import type { KeepAbout } from './side-page.ts';

declare function acquireVsCodeApi(): { postMessage(message: unknown): void; setState(state: unknown): void };

/** The extension, as a page beside the editor sees it. */
export interface PageHost<From> {
  post(message: From): void;
}

/** Shows whatever the extension tells this page from now on, keeps what it is about for a reload, and says that the page stands. */
export function hostOf<To, From extends { readonly type: string }>(
  ready: From,
  show: (message: To) => void,
): PageHost<From> {
  const editor = acquireVsCodeApi();
  window.addEventListener('message', ({ data }: MessageEvent<To | KeepAbout<unknown>>) => {
    if (isAbout(data)) editor.setState(data.about);
    else show(data);
  });
  editor.postMessage(ready);
  return { post: (message) => editor.postMessage(message) };
}

function isAbout<To>(data: To | KeepAbout<unknown>): data is KeepAbout<unknown> {
  return (data as { readonly type?: unknown }).type === 'about';
}
