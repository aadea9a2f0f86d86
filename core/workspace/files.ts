import { findCatalogue } from '../catalogue/catalogue.ts';
import {
  type Definition,
  type DefinitionKind,
  definitionOf,
  type Scope,
  type UsualConditions,
} from '../model/scope.ts';
import { createParseMemo, type ParseMemo, parseFile, SharedLines } from '../syntax/file.ts';
import { sketchFormulas } from '../syntax/sketch.ts';
import type { Name, SourceFile } from '../syntax/tree.ts';
import { byPlace, inPlace } from './in-place.ts';
import { folderOf, levelsOf } from './levels.ts';
import { SketchedDefinition } from './sketched-definition.ts';

/** One file of the workspace: its text, read when first asked for. */
export interface WorkspaceFile {
  readonly uri: string;
  readonly folder: string;
  text: string;
  memo: ParseMemo;
  source: SourceFile | undefined;
  definitions: readonly Definition[];
}

/** The definitions of one kind, by folded name; a name that nobody defines has no list. */
interface DefinitionsOfKind {
  readonly byName: Map<string, readonly Definition[]>;
  /** All of them in a row, as long as none comes, goes or moves. */
  all: readonly Definition[] | undefined;
  version: number;
}

export interface FilesOptions {
  /**
   * For one pass over many files: a file that defines nothing but formulas is known by its headers until it is asked for,
   * and given up again after some others. Costs no memory for each file, and reads a file again that is asked for again.
   */
  readonly lean?: boolean;
}

/** A name of which some definition came, went or changed. */
export interface NameChange {
  readonly kind: DefinitionKind;
  readonly folded: string;
}

/** As many files as a lean workspace holds as read. */
const mostHeld = 200;

/**
 * The files of a workspace and who defines what. Names are looked for in a file's own folder, then in each folder
 * above it up to the root, then everywhere else.
 */
export class Files {
  /** Holds few files as read, for one pass over many: see `FilesOptions`. */
  readonly lean: boolean;
  /** In the order last read; only where `lean`. */
  private readonly held = new Set<WorkspaceFile>();
  private readonly files = new Map<string, WorkspaceFile>();
  private readonly kinds = new Map<DefinitionKind, DefinitionsOfKind>();
  private readonly unread = new Set<WorkspaceFile>();
  private readonly lines = new SharedLines();
  private readonly scopes = new Map<string, Scope>();
  private roots: readonly string[] = [];
  private usual: UsualConditions = {};
  private changes: NameChange[] = [];
  private touched = new Set<string>();
  /** Grows whenever a definition anywhere comes, goes or changes. */
  version = 0;

  constructor({ lean = false }: FilesOptions = {}) {
    this.lean = lean;
  }

  setRoots(uris: readonly string[]): void {
    this.roots = uris.map((uri) => (uri.endsWith('/') ? uri : `${uri}/`));
    this.scopes.clear();
    this.version++;
    for (const kind of this.kinds.values()) kind.version++;
  }

  /** Conditions for all files; their scopes carry them. */
  setUsual(usual: UsualConditions): void {
    this.usual = usual;
    this.scopes.clear();
    this.version++;
  }

  get(uri: string): WorkspaceFile | undefined {
    return this.files.get(uri);
  }

  /**
   * The same files, to be changed without these seeing it. What is read is shared, so it costs a look at each file and
   * each definition.
   */
  fork(): Files {
    const forked = new Files();
    for (const file of this.files.values()) {
      const copy = { ...file, memo: { ...file.memo } };
      forked.files.set(file.uri, copy);
      if (this.unread.has(file)) forked.unread.add(copy);
    }
    for (const [kind, ofKind] of this.kinds)
      forked.kinds.set(kind, { ...ofKind, byName: new Map(ofKind.byName) });
    forked.roots = this.roots;
    forked.usual = this.usual;
    forked.version = this.version;
    return forked;
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
        memo: createParseMemo(this.lines),
        source: undefined,
        definitions: [],
      };
      this.files.set(uri, made);
      this.unread.add(made);
      this.touched.add(uri);
      return;
    }
    if (file.text === text) return;
    file.text = text;
    file.source = undefined;
    this.unread.add(file);
    this.touched.add(uri);
  }

  remove(uri: string): void {
    const file = this.files.get(uri);
    if (file === undefined) return;
    for (const definition of file.definitions) this.replace(definition, undefined);
    this.files.delete(uri);
    this.unread.delete(file);
    this.touched.add(uri);
  }

  /** The names whose definitions came, went or changed since this was last asked. */
  takeChanges(): readonly NameChange[] {
    const { changes } = this;
    this.changes = [];
    return changes;
  }

  /** The files that came, went or changed since this was last asked. */
  takeTouched(): Iterable<string> {
    const { touched } = this;
    this.touched = new Set();
    return touched;
  }

  /** The file as read now. */
  read(file: WorkspaceFile): SourceFile {
    if (file.source !== undefined) return file.source;
    const source = parseFile(file.text, file.memo, isInCatalogue);
    file.source = source;
    this.unread.delete(file);
    const held = file.definitions;
    const made: Definition[] = [];
    let byLine: ReadonlyMap<number, Definition> | undefined;
    for (const { block, firstLine } of source.blocks) {
      // Almost always the one at the same place in the row.
      let one = held[made.length];
      if (one?.block !== block || one.firstLine !== firstLine) {
        byLine ??= new Map(held.map((before) => [before.firstLine, before]));
        one = byLine.get(firstLine);
        if (one?.block !== block) one = definitionOf(file.uri, firstLine, block);
      }
      if (one !== undefined) made.push(one);
    }
    file.definitions = made;
    this.exchange(held, made);
    if (this.lean) this.hold(file);
    return source;
  }

  /** Keeps a file as read, and gives up the one that was read longest ago. */
  private hold(file: WorkspaceFile): void {
    if (file.definitions.some((one) => !(one instanceof SketchedDefinition))) return;
    this.held.delete(file);
    this.held.add(file);
    if (this.held.size <= mostHeld) return;
    const [oldest] = this.held;
    this.held.delete(oldest!);
    oldest!.source = undefined;
    oldest!.memo = createParseMemo(this.lines);
  }

  /** Makes the definitions of a file known, by its headers where that is enough. */
  private sketch(file: WorkspaceFile): void {
    const formulas = file.definitions.length > 0 ? undefined : sketchFormulas(file.text);
    if (formulas === undefined) {
      this.read(file);
      return;
    }
    this.unread.delete(file);
    file.definitions = formulas.map(
      (formula) => new SketchedDefinition(formula, file.uri, () => this.read(file)),
    );
    this.exchange([], file.definitions);
  }

  /** Reads whatever has not been read, so that lookups see all definitions. */
  readAll(): void {
    for (const file of [...this.unread]) {
      if (this.lean) this.sketch(file);
      else this.read(file);
    }
  }

  scopeOf(uri: string): Scope {
    const folder = folderOf(uri);
    const before = this.scopes.get(folder);
    if (before !== undefined) return before;
    const root = this.rootOf(folder);
    // A list of definitions is another one once any of them is.
    const known = new WeakMap<readonly Definition[], readonly (readonly Definition[])[]>();
    const levels = (definitions: readonly Definition[]): readonly (readonly Definition[])[] => {
      if (definitions.length <= 1) return levelsOf(definitions, folder, root);
      let parted = known.get(definitions);
      if (parted === undefined) {
        parted = levelsOf(definitions, folder, root);
        known.set(definitions, parted);
      }
      return parted;
    };
    const scope: Scope = {
      usual: this.usual,
      find: (kind, folded) => levels(this.kinds.get(kind)?.byName.get(folded) ?? none),
      nearest: (kind) => levels(this.all(kind))[0]?.[0],
      names: (kind) => levels(this.all(kind)).flat(),
    };
    this.scopes.set(folder, scope);
    return scope;
  }

  /** The scope of a file if a definition had another name: what a rename would come to. */
  scopeIf(uri: string, definition: Definition, name: Name): Scope {
    const now = this.scopeOf(uri);
    const folder = folderOf(uri);
    const root = this.rootOf(folder);
    const isIt = (one: Definition): boolean =>
      one.uri === definition.uri && one.firstLine === definition.firstLine;
    return {
      ...now,
      find: (kind, folded) => {
        if (kind !== definition.kind) return now.find(kind, folded);
        const others = (this.kinds.get(kind)?.byName.get(folded) ?? none).filter((one) => !isIt(one));
        const all = folded === name.folded ? [...others, { ...definition, name }] : others;
        return levelsOf(all, folder, root);
      },
    };
  }

  /** Every definition of the workspace. */
  *definitions(): Iterable<Definition> {
    for (const [kind, { byName }] of this.kinds) {
      if (kind !== 'tried') for (const list of byName.values()) yield* list;
    }
  }

  /** Grows whenever a definition of the kind comes, goes or changes; one that only moves is the same still. */
  versionOf(kind: DefinitionKind): number {
    return this.kinds.get(kind)?.version ?? 0;
  }

  private all(kind: DefinitionKind): readonly Definition[] {
    const definitions = this.kinds.get(kind);
    if (definitions === undefined) return none;
    definitions.all ??= [...definitions.byName.values()].flat().sort(byPlace);
    return definitions.all;
  }

  private rootOf(folder: string): string {
    let best = '';
    for (const root of this.roots) if (folder.startsWith(root) && root.length > best.length) best = root;
    return best === '' ? folder : best;
  }

  /** Puts new definitions of a file in the place of those it had. */
  private exchange(held: readonly Definition[], made: readonly Definition[]): void {
    const isAligned =
      held.length === made.length &&
      made.every(({ kind, name }, index) => {
        const before = held[index]!;
        return before.kind === kind && before.name.folded === name.folded;
      });
    if (!isAligned) {
      // Definitions of one name are held in the order of their lines, so all of the file go and come.
      for (const one of held) this.replace(one, undefined);
      for (const one of made) this.replace(undefined, one);
      return;
    }
    for (const [index, one] of made.entries()) if (one !== held[index]) this.replace(held[index], one);
  }

  private replace(before: Definition | undefined, after: Definition | undefined): void {
    const { kind } = (before ?? after)!;
    this.replaceIn(kind, before, after);
    if (before?.tried || after?.tried)
      this.replaceIn('tried', before?.tried ? before : undefined, after?.tried ? after : undefined);
  }

  private replaceIn(
    kind: DefinitionKind,
    before: Definition | undefined,
    after: Definition | undefined,
  ): void {
    const { name } = (before ?? after)!;
    let ofKind = this.kinds.get(kind);
    if (ofKind === undefined) {
      ofKind = { byName: new Map(), all: undefined, version: 0 };
      this.kinds.set(kind, ofKind);
    }
    ofKind.all = undefined;
    if (before === undefined || after === undefined || before.block !== after.block) {
      ofKind.version++;
      this.version++;
      this.changes.push({ kind, folded: name.folded });
    }
    const left = inPlace(ofKind.byName.get(name.folded) ?? [], before, after);
    if (left.length === 0) ofKind.byName.delete(name.folded);
    else ofKind.byName.set(name.folded, left);
  }
}

const none: readonly never[] = [];
const isInCatalogue = (folded: string): boolean => findCatalogue(folded) !== undefined;
