import { findCatalogue } from '../catalogue/catalogue.ts';
import { type Definition, definitionOf } from '../model/scope.ts';
import { createParseMemo, type ParseMemo, parseFile, SharedLines } from '../syntax/file.ts';
import { type IndexedFormula, indexFormulas } from '../syntax/header-index.ts';
import type { Block, Name, SourceFile } from '../syntax/tree.ts';
import type { FileText } from './snapshot.ts';

/** A formula known by its header; its block is read when somebody asks for it. */
class IndexedDefinition implements Definition {
  readonly kind = 'formula';
  readonly name: Name;
  readonly firstLine: number;
  readonly uri: string;
  readonly tried: boolean;
  private readonly read: () => SourceFile;

  constructor({ name, firstLine, tried }: IndexedFormula, uri: string, read: () => SourceFile) {
    this.name = name;
    this.firstLine = firstLine;
    this.tried = tried;
    this.uri = uri;
    this.read = read;
  }

  get block(): Block {
    const found = this.read().blocks.find(({ firstLine }) => firstLine === this.firstLine);
    return found?.block ?? nothing;
  }
}

const nothing: Block = { lines: [], subs: [], problems: [] };

/** As many files as are held as read where few shall be. */
const mostHeld = 200;

/** How a file was read last, so that the next text of it costs the lines that differ. */
interface FileMemo {
  readonly parse: ParseMemo;
  definitions: readonly Definition[];
}

/** What texts read as and what they define, kept as long as the text is. */
export class Readings {
  readonly #isLean: boolean;
  readonly #lines = new SharedLines();
  readonly #memos = new Map<string, FileMemo>();
  readonly #sources = new WeakMap<FileText, SourceFile>();
  readonly #definitions = new WeakMap<FileText, readonly Definition[]>();
  /** In the order last read; only where few are held. */
  readonly #held = new Set<FileText>();

  constructor(isLean: boolean) {
    this.#isLean = isLean;
  }

  /** The file as read. */
  of(file: FileText): SourceFile {
    const known = this.#sources.get(file);
    if (known !== undefined) return known;
    const memo = this.#memos.get(file.uri) ?? { parse: createParseMemo(this.#lines), definitions: [] };
    const source = parseFile(file.text, memo.parse, isInCatalogue);
    this.#sources.set(file, source);
    if (!this.#definitions.has(file)) {
      memo.definitions = definedIn(file.uri, source, memo.definitions);
      this.#definitions.set(file, memo.definitions);
    }
    if (this.#isLean && this.#definitions.get(file)!.every((one) => one instanceof IndexedDefinition))
      this.#hold(file);
    else this.#memos.set(file.uri, memo);
    return source;
  }

  /** What the file defines, known by its headers where that is enough. */
  definitionsOf(file: FileText): readonly Definition[] {
    const known = this.#definitions.get(file);
    if (known !== undefined) return known;
    const formulas = this.#isLean ? indexFormulas(file.text) : undefined;
    if (formulas === undefined) {
      this.of(file);
      return this.#definitions.get(file)!;
    }
    const made = formulas.map((one) => new IndexedDefinition(one, file.uri, () => this.of(file)));
    this.#definitions.set(file, made);
    return made;
  }

  /** Gives up how a file was read, which is there no more. */
  forget(uri: string): void {
    this.#memos.delete(uri);
  }

  /** Keeps a file as read, and gives up the one that was read longest ago. */
  #hold(file: FileText): void {
    this.#held.add(file);
    if (this.#held.size <= mostHeld) return;
    const [oldest] = this.#held;
    this.#held.delete(oldest!);
    this.#sources.delete(oldest!);
  }
}

/** What a file defines; what stands where it stood before, as it was, is the same object. */
function definedIn(uri: string, source: SourceFile, before: readonly Definition[]): readonly Definition[] {
  const made: Definition[] = [];
  let byLine: ReadonlyMap<number, Definition> | undefined;
  for (const { block, firstLine } of source.blocks) {
    // Almost always the one at the same place in the row.
    let one = before[made.length];
    if (one?.block !== block || one.firstLine !== firstLine) {
      byLine ??= new Map(before.map((former) => [former.firstLine, former]));
      one = byLine.get(firstLine);
      if (one?.block !== block) one = definitionOf(uri, firstLine, block);
    }
    if (one !== undefined) made.push(one);
  }
  return made;
}

const isInCatalogue = (folded: string): boolean => findCatalogue(folded) !== undefined;
