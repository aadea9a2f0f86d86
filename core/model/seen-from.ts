import type { Definition, Scope } from './scope.ts';

/**
 * The names as another file sees them, told from what this scope sees: a scope lists every definition of the workspace,
 * only their order from near to far belongs to its file.
 */
export function seenFrom(scope: Scope, uri: string): Scope {
  const folder = folderOf(uri);
  const levels = (definitions: readonly Definition[]): Definition[][] => {
    const byLevel = new Map<number, Definition[]>();
    for (const definition of definitions) {
      const where = folderOf(definition.uri);
      const level = folder.startsWith(where) ? folder.length - where.length : Number.MAX_SAFE_INTEGER;
      const list = byLevel.get(level);
      if (list === undefined) byLevel.set(level, [definition]);
      else list.push(definition);
    }
    return [...byLevel.entries()].sort(([one], [other]) => one - other).map(([, list]) => list);
  };
  return {
    find: (kind, folded) => levels(scope.find(kind, folded).flat()),
    nearest: (kind) => levels(scope.names(kind))[0]?.[0],
    names: (kind) => levels(scope.names(kind)).flat(),
    ...(scope.usual === undefined ? {} : { usual: scope.usual }),
  };
}

function folderOf(uri: string): string {
  return uri.slice(0, uri.lastIndexOf('/') + 1);
}
