import { namesIn } from '../model/mentions.ts';
import type { SourceFile } from '../syntax/tree.ts';
import { Multimap } from './multimap.ts';
import { PersistentMap } from './persistent-map.ts';
import type { FileText } from './snapshot.ts';

/**
 * Which files mention which name. Brought to the texts that are asked about, from those asked about last: a keystroke costs
 * it nothing.
 */
export class NameIndex {
  readonly #read: (file: FileText) => SourceFile;
  #texts: PersistentMap<FileText> = PersistentMap.none;
  readonly #names = new Map<string, { readonly file: FileText; readonly names: readonly string[] }>();
  /** Files looked at ahead, perhaps as another text than that asked about next. */
  readonly #ahead = new Set<string>();
  readonly #byName = new Multimap<string, string>();

  constructor(read: (file: FileText) => SourceFile) {
    this.#read = read;
  }

  mentioning(texts: PersistentMap<FileText>, folded: string): readonly string[] {
    this.#bringTo(texts);
    return [...this.#byName.get(folded)];
  }

  names(texts: PersistentMap<FileText>): Iterable<string> {
    this.#bringTo(texts);
    return this.#byName.keys();
  }

  /** Gathers the names of one file ahead of the question. */
  look(file: FileText): void {
    this.#ahead.add(file.uri);
    this.#gather(file);
  }

  #gather(file: FileText): void {
    const { uri } = file;
    if (this.#names.get(uri)?.file === file) return;
    this.#forget(uri);
    const names = new Set<string>();
    for (const { block } of this.#read(file).blocks) {
      for (const { folded } of namesIn(block)) names.add(folded);
    }
    this.#names.set(uri, { file, names: [...names] });
    for (const name of names) this.#byName.add(name, uri);
  }

  #bringTo(texts: PersistentMap<FileText>): void {
    if (texts === this.#texts && this.#ahead.size === 0) return;
    for (const uri of [...texts.differing(this.#texts), ...this.#ahead]) {
      const file = texts.get(uri);
      if (file === undefined) this.#forget(uri);
      else this.#gather(file);
    }
    this.#ahead.clear();
    this.#texts = texts;
  }

  #forget(uri: string): void {
    for (const name of this.#names.get(uri)?.names ?? []) this.#byName.delete(name, uri);
    this.#names.delete(uri);
  }
}
