import type { Definition } from '../model/scope.ts';
import type { IndexedFormula } from '../syntax/header-index.ts';
import type { Block, Name, SourceFile } from '../syntax/tree.ts';

/** A formula known by its header; its block is read when somebody asks for it. */
export class IndexedDefinition implements Definition {
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
