import type { SheetFormat } from '../../server/protocol.ts';

/** The endings a saved sheet may have, each with what a save dialog calls it. */
export const savedFormats = {
  html: 'Page to Print',
  md: 'Markdown',
  csv: 'Table (CSV)',
  json: 'JSON',
} as const satisfies Partial<Record<SheetFormat, string>>;

/** What the name of a file asks for; `undefined` where its ending is none of a sheet's. */
export function formatOfFile(path: string): keyof typeof savedFormats | undefined {
  const ending = /.\.([^.]+)$/.exec(nameOfFile(path))?.[1]?.toLowerCase() ?? '';
  if (ending === 'htm') return 'html';
  if (ending === 'markdown') return 'md';
  return Object.hasOwn(savedFormats, ending) ? (ending as keyof typeof savedFormats) : undefined;
}

/** The last part of a path. */
export function nameOfFile(path: string): string {
  return path.slice(path.lastIndexOf('/') + 1);
}
