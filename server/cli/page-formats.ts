import { pageAsCsv, pageAsHtml, pageAsMarkdown, pageAsText } from '../../core/index.ts';
import type { FileFormat } from './write-out.ts';

type Page = Parameters<typeof pageAsText>[0];

/** Pages of tables one after another, as a format for readers has them; text where it is none of those. */
export function writtenPages(pages: readonly Page[], format: FileFormat | 'text'): string {
  switch (format) {
    case 'csv':
      return pages.map(pageAsCsv).join('');
    case 'html':
      return pages.map(pageAsHtml).join('');
    case 'md':
      return pages.map(pageAsMarkdown).join('\n');
    default:
      return pages.map(pageAsText).join('\n');
  }
}
