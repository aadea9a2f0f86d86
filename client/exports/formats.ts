import type { SheetFormat } from '../../server/protocol.ts';

/** The endings a saved sheet may have. */
export const savedFormats = ['html', 'md', 'csv', 'json'] as const satisfies readonly SheetFormat[];
export type SavedFormat = (typeof savedFormats)[number];

/** What the name of a file asks for; `undefined` where its ending is none of a sheet's. */
export function formatOfFile(path: string): SavedFormat | undefined {
  const ending = /.\.([^.]+)$/.exec(nameOfFile(path))?.[1]?.toLowerCase() ?? '';
  if (ending === 'htm') return 'html';
  if (ending === 'markdown') return 'md';
  return savedFormats.find((one) => one === ending);
}

/** The last part of a path. */
export function nameOfFile(path: string): string {
  return path.slice(path.lastIndexOf('/') + 1);
}
