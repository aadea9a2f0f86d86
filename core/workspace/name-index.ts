import { mentionsOf } from '../model/mentions.ts';
import type { SourceFile } from '../syntax/tree.ts';
import type { Files } from './files.ts';

/**
 * Which files mention which name. Built when first asked, and brought up to date when asked again: a keystroke costs it
 * nothing.
 */
export class NameIndex {
  private readonly files: Files;
  private readonly seen = new Map<string, { source: SourceFile; names: ReadonlySet<string> }>();
  /** Files that have changed since they were looked at. */
  private readonly behind = new Set<string>();
  private readonly byName = new Map<string, Set<string>>();

  constructor(files: Files) {
    this.files = files;
  }

  mentioning(folded: string): readonly string[] {
    this.catchUp();
    return [...(this.byName.get(folded) ?? [])];
  }

  names(): Iterable<string> {
    this.catchUp();
    return this.byName.keys();
  }

  /** Brings one file up to date. */
  look(uri: string): void {
    this.behind.delete(uri);
    const file = this.files.get(uri);
    if (file === undefined) {
      this.forget(uri);
      return;
    }
    const source = this.files.read(file);
    if (this.seen.get(uri)?.source === source) return;
    this.forget(uri);
    const names = new Set<string>();
    for (const { block } of source.blocks) {
      for (const { name, otherwise } of mentionsOf(block)) {
        names.add(name.folded);
        if (otherwise !== undefined) names.add(otherwise.folded);
      }
    }
    this.seen.set(uri, { source, names });
    for (const name of names) {
      const uris = this.byName.get(name);
      if (uris === undefined) this.byName.set(name, new Set([uri]));
      else uris.add(uri);
    }
  }

  private catchUp(): void {
    for (const uri of this.files.takeTouched()) this.behind.add(uri);
    for (const uri of this.behind) this.look(uri);
  }

  private forget(uri: string): void {
    for (const name of this.seen.get(uri)?.names ?? []) {
      const uris = this.byName.get(name);
      uris?.delete(uri);
      if (uris?.size === 0) this.byName.delete(name);
    }
    this.seen.delete(uri);
  }
}
