import { findCatalogue } from '../catalogue/catalogue.ts';
import { type Definition, type DefinitionKind, definitionOf, type Scope } from '../model/scope.ts';
import { createParseMemo, type ParseMemo, parseFile } from '../syntax/file.ts';
import type { SourceFile } from '../syntax/tree.ts';

/** One file of the workspace: its text, read when first asked for. */
export interface WorkspaceFile {
  readonly uri: string;
  readonly folder: string;
  text: string;
  memo: ParseMemo;
  source: SourceFile | undefined;
  definitions: readonly Definition[];
}

/**
 * The files of a workspace and who defines what. Names are looked for in a file's own folder, then in each folder
 * above it up to the root, then everywhere else.
 */
export class Files {
  private readonly files = new Map<string, WorkspaceFile>();
  private readonly byKey = new Map<string, Definition[]>();
  private readonly unread = new Set<WorkspaceFile>();
  private roots: readonly string[] = [];
  /** Grows whenever a definition anywhere comes, goes or changes. */
  version = 0;

  setRoots(uris: readonly string[]): void {
    this.roots = uris.map((uri) => (uri.endsWith('/') ? uri : `${uri}/`));
    this.version++;
  }

  get(uri: string): WorkspaceFile | undefined {
    return this.files.get(uri);
  }

  uris(): string[] {
    return [...this.files.keys()];
  }

  setText(uri: string, text: string): void {
    const file = this.files.get(uri);
    if (file === undefined) {
      const made: WorkspaceFile = {
        uri,
        folder: folderOf(uri),
        text,
        memo: createParseMemo(),
        source: undefined,
        definitions: [],
      };
      this.files.set(uri, made);
      this.unread.add(made);
      return;
    }
    if (file.text === text) return;
    file.text = text;
    file.source = undefined;
    this.unread.add(file);
  }

  remove(uri: string): void {
    const file = this.files.get(uri);
    if (file === undefined) return;
    for (const definition of file.definitions) this.forget(definition);
    if (file.definitions.length > 0) this.version++;
    this.files.delete(uri);
    this.unread.delete(file);
  }

  /** The file as read now. */
  read(file: WorkspaceFile): SourceFile {
    if (file.source !== undefined) return file.source;
    const source = parseFile(file.text, file.memo, isInCatalogue);
    file.source = source;
    this.unread.delete(file);
    const made = source.blocks.flatMap(({ block, firstLine }) => {
      const before = file.definitions.find((one) => one.block === block && one.firstLine === firstLine);
      return before ?? definitionOf(file.uri, firstLine, block) ?? [];
    });
    const same =
      made.length === file.definitions.length && made.every((one, index) => one === file.definitions[index]);
    if (same) return source;
    const moved = new Set(file.definitions.map((one) => one.block));
    const changed = made.length !== file.definitions.length || made.some((one) => !moved.has(one.block));
    for (const definition of file.definitions) this.forget(definition);
    for (const definition of made) {
      const key = keyOf(definition.kind, definition.name.folded);
      const list = this.byKey.get(key);
      if (list === undefined) this.byKey.set(key, [definition]);
      else list.push(definition);
    }
    file.definitions = made;
    if (changed) this.version++;
    return source;
  }

  /** Reads whatever has not been read, so that lookups see all definitions. */
  readAll(): void {
    for (const file of [...this.unread]) this.read(file);
  }

  scopeOf(uri: string): Scope {
    const folder = folderOf(uri);
    const root = this.rootOf(folder);
    return {
      find: (kind, folded) => this.levels(this.byKey.get(keyOf(kind, folded)) ?? [], folder, root),
      nearest: (kind) => this.levels(this.all(kind), folder, root)[0]?.[0],
      names: (kind) => this.levels(this.all(kind), folder, root).flat(),
    };
  }

  private all(kind: DefinitionKind): Definition[] {
    const found: Definition[] = [];
    for (const list of this.byKey.values()) if (list[0]?.kind === kind) found.push(...list);
    return found;
  }

  private levels(definitions: readonly Definition[], folder: string, root: string): Definition[][] {
    if (definitions.length === 0) return [];
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

  private rootOf(folder: string): string {
    let best = '';
    for (const root of this.roots) if (folder.startsWith(root) && root.length > best.length) best = root;
    return best === '' ? folder : best;
  }

  private forget(definition: Definition): void {
    const key = keyOf(definition.kind, definition.name.folded);
    const list = this.byKey.get(key);
    const at = list?.indexOf(definition) ?? -1;
    if (list === undefined || at < 0) return;
    list.splice(at, 1);
    if (list.length === 0) this.byKey.delete(key);
  }
}

const isInCatalogue = (folded: string): boolean => findCatalogue(folded) !== undefined;
const keyOf = (kind: DefinitionKind, folded: string): string => `${kind}\n${folded}`;

export function folderOf(uri: string): string {
  return uri.slice(0, uri.lastIndexOf('/') + 1);
}
