import type { Page } from 'playwright-core';

export type SquiggleLevel = 'error' | 'warning' | 'info' | 'hint';

/** One line as the first text editor draws it; only lines in view are drawn. */
export interface WrittenLine {
  /** What the file says, without inlay hints. */
  readonly text: string;
  /** The line's inlay hints, joined. */
  readonly hint: string;
  readonly squiggles: readonly SquiggleLevel[];
}

/** Reads text, inlay hints and squiggles of the first text editor, in order from top to bottom. */
export async function readEditor(page: Page): Promise<WrittenLine[]> {
  return (await page.evaluate(readEditorInPage)) as WrittenLine[];
}

/** What the editor drew from a moment on, until it drew something else. */
export interface Drawn {
  readonly lines: readonly WrittenLine[];
  /** The longer one of the pauses before the last key and since it, milliseconds; infinite before the first. */
  readonly paused: number;
  /** Colour of the words on the tab of the file, as the page computes it. */
  readonly tabColour: string;
}

/**
 * Looks at the first text editor twenty times a second from now on, which is as often as a person sees something flash.
 *
 * @returns what ends it and tells all that was drawn meanwhile, in the order of time
 */
export async function watchEditor(page: Page): Promise<() => Promise<readonly Drawn[]>> {
  await page.evaluate(`(() => {
    const drawn = [];
    const look = () => {
      const lines = ${readEditorInPage};
      const tabColour = ${tabColourInPage};
      const last = drawn.at(-1);
      if (last?.tabColour === tabColour && JSON.stringify(last.lines) === JSON.stringify(lines)) return;
      drawn.push({ paused: Math.max(Date.now() - lastKey, before), lines, tabColour });
    };
    let [lastKey, before] = [-Infinity, 0];
    const press = () => { [lastKey, before] = [Date.now(), Date.now() - lastKey]; };
    addEventListener('keydown', press, true);
    look();
    const timer = setInterval(look, 50);
    window.watched = () => {
      clearInterval(timer);
      removeEventListener('keydown', press, true);
      return drawn;
    };
  })()`);
  return async () => (await page.evaluate('window.watched()')) as Drawn[];
}

/** Colour of the words on the tab of the file in front, as the page computes it. */
export async function tabColour(page: Page): Promise<string> {
  return (await page.evaluate(tabColourInPage)) as string;
}

/** The point in the middle of a word's drawing, in pixels of the page; undefined where the line is not in view. */
export async function wordPoint(
  page: Page,
  lineText: string,
  word: string,
): Promise<{ x: number; y: number } | undefined> {
  const found = await page.evaluate(
    `(${wordPointInPage})(${JSON.stringify(lineText)}, ${JSON.stringify(word)})`,
  );
  return (found as { x: number; y: number } | null) ?? undefined;
}

// These run in the page. They are texts because the test's own types know no page: its code runs in Node.

const tabColourInPage = `(() => {
  const words = document.querySelector('.part.editor .tab.active .label-name');
  return words ? getComputedStyle(words).color : '';
})()`;

// Lines and the overlays that hold squiggles are drawn apart and out of order; equal tops make them one line.
// Inlay hints are drawn with a class of their own, made up by the editor as `dyn-rule-…`.
const readEditorInPage = `(() => {
  const editor = document.querySelector('.part.editor .editor-instance .monaco-editor');
  if (!editor) return [];
  const plain = (text) => text.replaceAll('\\u00a0', ' ').replaceAll(/[\\u200b\\u200c]/g, '');
  const levels = ['error', 'warning', 'info', 'hint'];
  const squiggles = new Map();
  for (const row of editor.querySelectorAll('.view-overlays > div')) {
    squiggles.set(row.style.top, levels.filter((level) => row.querySelector('.squiggly-' + level)));
  }
  const lines = [...editor.querySelectorAll('.view-lines > .view-line')];
  lines.sort((a, b) => parseFloat(a.style.top) - parseFloat(b.style.top));
  return lines.map((line) => {
    let text = '';
    let hint = '';
    for (const span of line.querySelectorAll(':scope > span > span')) {
      if (/\\bdyn-rule-/.test(span.className)) hint += span.textContent;
      else text += span.textContent;
    }
    return { text: plain(text), hint: plain(hint).trim(), squiggles: squiggles.get(line.style.top) ?? [] };
  });
})()`;

const wordPointInPage = `(lineText, word) => {
  const editor = document.querySelector('.part.editor .editor-instance .monaco-editor');
  const plain = (text) => text.replaceAll('\\u00a0', ' ');
  for (const line of editor?.querySelectorAll('.view-lines > .view-line') ?? []) {
    if (!plain(line.textContent).includes(lineText)) continue;
    const walker = document.createTreeWalker(line, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const at = plain(node.data).indexOf(word);
      if (at < 0) continue;
      const range = document.createRange();
      range.setStart(node, at);
      range.setEnd(node, at + word.length);
      const box = range.getBoundingClientRect();
      return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    }
  }
  return null;
}`;
