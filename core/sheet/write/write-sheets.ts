import { plainSpeaker } from '../../words/speak.ts';
import type { Speaker } from '../../words/speaker.ts';
import { sheetsAsCsv, sheetsAsTabbed } from './sheet-csv.ts';
import { sheetsAsHtml } from './sheet-html.ts';
import { type FiledSheet, sheetsAsJson } from './sheet-json.ts';
import { sheetPage } from './sheet-page.ts';
import { pageAsMarkdown, pageAsText } from './tables.ts';

/** `tabbed` is for the clipboard: what a spreadsheet takes as a table. */
export type SheetFormat = 'text' | 'md' | 'csv' | 'html' | 'json' | 'tabbed';

/**
 * Batch sheets as text, one after another. `speaker` is whoever worded the views. HTML is one page that needs nothing
 * else; CSV is one table.
 */
export function writeSheets(
  sheets: readonly FiledSheet[],
  format: SheetFormat,
  speaker: Speaker = plainSpeaker,
): string {
  const views = sheets.map(({ view }) => view);
  const pages = () => sheets.map(({ view, origin }) => sheetPage(view, origin, speaker));
  switch (format) {
    case 'html':
      return sheetsAsHtml(sheets, speaker);
    case 'json':
      return sheetsAsJson(sheets);
    case 'csv':
      return sheetsAsCsv(views, speaker);
    case 'tabbed':
      return sheetsAsTabbed(views, speaker);
    case 'md':
      return pages().map(pageAsMarkdown).join('\n');
    case 'text':
      return pages().map(pageAsText).join('\n');
  }
}
