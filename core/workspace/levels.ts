import type { Definition } from '../model/scope.ts';

/**
 * Definitions of one name or kind as seen from a folder: its own first, then those of each folder above up to the root, then all
 * others. Only levels with a hit are listed.
 */
export function levelsOf(
  definitions: readonly Definition[],
  folder: string,
  root: string,
): readonly (readonly Definition[])[] {
  if (definitions.length <= 1) return definitions.length === 0 ? none : [definitions];
  const byLevel = new Map<number, Definition[]>();
  for (const definition of definitions) {
    const where = folderOf(definition.uri);
    const above = folder.startsWith(where) && where.length >= root.length;
    const level = above ? folder.length - where.length : Number.MAX_SAFE_INTEGER;
    const list = byLevel.get(level);
    if (list === undefined) byLevel.set(level, [definition]);
    else list.push(definition);
  }
  return [...byLevel.entries()].sort(([one], [other]) => one - other).map(([, list]) => list);
}

const none: readonly never[] = [];

export function folderOf(uri: string): string {
  return uri.slice(0, uri.lastIndexOf('/') + 1);
}
