import type { Analysis } from '../analysis/analysis.ts';
import type { ExperimentAnalysis } from '../analysis/experiment-analysis.ts';
import type { PlanAnalysis } from '../analysis/plan-analysis.ts';
import type { SemanticToken } from '../features/outline/semantic-tokens.ts';
import type { PlacedBlock } from '../model/meaning.ts';
import type { Definition, Scope } from '../model/scope.ts';
import type { BlockFindings } from '../rules/engine/check.ts';
import type { Block, Name, SourceFile } from '../syntax/tree.ts';
import { folderOf } from '../text/folder.ts';
import { AnalysisCache, type Moment, type ShortTotals } from './analysis-cache.ts';
import { type DefinitionIndex, emptyIndex, indexFrom } from './definition-index.ts';
import { NameIndex } from './name-index.ts';
import type { PersistentMap } from './persistent-map.ts';
import { Readings } from './readings.ts';
import { type PartedLists, scopeFrom, scopeIf } from './scopes.ts';
import { type FileText, type Snapshot, withText } from './snapshot.ts';

export interface CacheOptions {
  /**
   * For one pass over many files: a file that defines nothing but formulas is known by its headers until it is asked for,
   * and given up again after some others. Costs no memory for each file, and reads a file again that is asked for again.
   */
  readonly lean?: boolean;
  /** Hears of a rule or an action that failed, which no input should make it: its findings or offers are missing, the others are there. */
  readonly failed?: (what: string) => void;
}

/** A file of a snapshot, read. */
export interface ReadFile {
  readonly file: FileText;
  readonly source: SourceFile;
}

/**
 * The one place where answers are kept: what texts read as, who defines what, and what each block comes to with all that it
 * looked up. It makes answers quicker and never others.
 */
export class Cache {
  readonly readings: Readings;
  readonly answers: AnalysisCache;
  readonly mentions = new NameIndex((file) => this.readings.of(file));
  readonly #views = new WeakMap<Snapshot, View>();
  readonly #indexes = new WeakMap<PersistentMap<FileText>, DefinitionIndex>();
  #lastIndex = emptyIndex;
  readonly #parted = new Map<string, PartedLists>();

  constructor({ lean = false, failed = () => undefined }: CacheOptions = {}) {
    this.readings = new Readings(lean);
    this.answers = new AnalysisCache(lean, failed);
  }

  /** The answers of a snapshot. */
  at(snapshot: Snapshot): View {
    let view = this.#views.get(snapshot);
    if (view === undefined) {
      view = new View(snapshot, this);
      this.#views.set(snapshot, view);
    }
    return view;
  }

  /** Who defines what among texts; from those asked about last, so that a keystroke costs the file that it is in. */
  indexOf(texts: PersistentMap<FileText>): DefinitionIndex {
    let index = this.#indexes.get(texts);
    if (index === undefined) {
      index = indexFrom(this.#lastIndex, texts, (file) => this.readings.definitionsOf(file));
      this.#indexes.set(texts, index);
    }
    this.#lastIndex = index;
    return index;
  }

  partedFor(folder: string, root: string): PartedLists {
    const key = `${root}\n${folder}`;
    let parted = this.#parted.get(key);
    if (parted === undefined) {
      parted = new WeakMap();
      this.#parted.set(key, parted);
    }
    return parted;
  }
}

/** A snapshot to be asked: each answer is a function of it, whatever has changed since. */
export class View implements Moment {
  readonly snapshot: Snapshot;
  readonly #cache: Cache;
  readonly #scopes = new Map<string, Scope>();
  #index: DefinitionIndex | undefined;

  constructor(snapshot: Snapshot, cache: Cache) {
    this.snapshot = snapshot;
    this.#cache = cache;
  }

  /** The same with a file as another text. */
  with(uri: string, text: string): View {
    return this.#cache.at(withText(this.snapshot, uri, text));
  }

  uris(): string[] {
    return [...this.snapshot.texts.keys()];
  }

  read(uri: string): ReadFile | undefined {
    const file = this.snapshot.texts.get(uri);
    return file === undefined ? undefined : { file, source: this.#cache.readings.of(file) };
  }

  /** What a file defines, where it stands in this snapshot. */
  definitionsOf(uri: string): readonly Definition[] {
    const file = this.snapshot.texts.get(uri);
    return file === undefined ? [] : this.#cache.readings.definitionsOf(file);
  }

  /** Every definition of the workspace. */
  *definitions(): Iterable<Definition> {
    for (const [kind, { byName }] of this.index.kinds)
      if (kind !== 'tried') for (const [, list] of byName.entries()) yield* list;
  }

  get index(): DefinitionIndex {
    this.#index ??= this.#cache.indexOf(this.snapshot.texts);
    return this.#index;
  }

  scopeOf(uri: string): Scope {
    const folder = folderOf(uri);
    let scope = this.#scopes.get(folder);
    if (scope === undefined) {
      scope = scopeFrom(this.index, this.#surroundings, uri, (of, root) => this.#cache.partedFor(of, root));
      this.#scopes.set(folder, scope);
    }
    return scope;
  }

  /** The scope of a file if a definition had another name. */
  scopeIf(uri: string, definition: Definition, name: Name): Scope {
    return scopeIf(this.scopeOf(uri), this.index, this.#surroundings, uri, definition, name);
  }

  analysisOf(uri: string, block: Block): Analysis | undefined {
    return this.#cache.answers.analysisOf(this, uri, block);
  }

  findingsOf(uri: string, block: Block): BlockFindings {
    return this.#cache.answers.findingsOf(this, uri, block);
  }

  experimentOf(uri: string, block: Block): ExperimentAnalysis | undefined {
    return this.#cache.answers.experimentOf(this, uri, block);
  }

  planOf(uri: string, block: Block): PlanAnalysis | undefined {
    return this.#cache.answers.planOf(this, uri, block);
  }

  totalsOf(uri: string, block: Block): ShortTotals {
    return this.#cache.answers.totalsOf(this, uri, block);
  }

  tokensOf(at: PlacedBlock): readonly SemanticToken[] {
    return this.#cache.answers.tokensOf(this, at);
  }

  /** The files that mention a name, folded. */
  mentioning(folded: string): readonly string[] {
    return this.#cache.mentions.mentioning(this.snapshot.texts, folded);
  }

  /** All names that are mentioned, folded. */
  names(): Iterable<string> {
    return this.#cache.mentions.names(this.snapshot.texts);
  }

  /** The files whose answers are others than in an earlier snapshot by what they look up; see `AnalysisCache.affected`. */
  affectedSince(before: View): Set<string> {
    return this.#cache.answers.affected(before, this, () => this.#blocks());
  }

  *#blocks(): Iterable<Block> {
    for (const uri of this.snapshot.texts.keys())
      for (const { block } of this.read(uri)!.source.blocks) yield block;
  }

  get #surroundings() {
    const { roots, settings } = this.snapshot;
    return { roots, usual: settings.usual };
  }
}
