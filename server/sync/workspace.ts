import type * as core from '../../core/index.ts';
import type { Display, LanguageTag, Said, Service, Speaker } from '../../core/index.ts';
import { largestFileBytes } from '../host/host.ts';
import { isBelow } from '../host/uris.ts';
import type { OpenDocuments } from './documents.ts';
import { type Worded, wordedIn } from './language.ts';
import { defaultSettings, type ServerSettings } from './settings.ts';

/**
 * The one place that gives texts, folders and settings to the core. They are only noted when they come; the core is
 * loaded at the first question, and gets what has changed since the last one before each.
 */
export class Workspace {
  /** As the client asked for when it started: figures that are unknown for a moment are as they were last. */
  keepsLastFigures = false;
  readonly #documents: OpenDocuments;
  readonly #pending = new Map<string, string | undefined>();
  /** Files the core has not heard of yet; they are given to it one by one, for each costs it time. */
  readonly #news = new Map<string, string>();
  /** Open documents whose newest text the core has not been given. */
  readonly #edited = new Set<string>();
  readonly #tooLarge = new Set<string>();
  #service: Service | undefined;
  #loading: Promise<typeof core> | undefined;
  #folders: readonly string[] = [];
  /** Of each open file that lies in no folder of the workspace, the root. */
  readonly #strayRoots = new Map<string, string>();
  #settings = defaultSettings;
  #locale = 'en';
  readonly #warn: (sentence: string) => void;
  #core: typeof core | undefined;
  #speaker: Speaker | undefined;
  /** Languages whose words are not to be had, which was said. */
  readonly #lacking = new Set<LanguageTag>();
  /** The language that the core has been told, or shall be at the next question; English is what it begins with. */
  #tag: LanguageTag = 'en';
  #worded: Worded | undefined;
  #rootsNew = true;
  #settingsNew = true;

  /** `warn` is told in a sentence when a language cannot be had, once. */
  constructor(documents: OpenDocuments, warn: (sentence: string) => void = () => undefined) {
    this.#documents = documents;
    this.#warn = warn;
  }

  get settings(): ServerSettings {
    return this.#settings;
  }

  get folders(): readonly string[] {
    return this.#folders;
  }

  set settings(settings: ServerSettings) {
    this.#settings = settings;
    this.#speaker = undefined;
    this.#settingsNew = true;
  }

  /** How figures are shown now. */
  get display(): Display {
    const { display } = this.#settings;
    const { decimalSign } = display;
    return {
      ...display,
      decimalSign: decimalSign === 'language' ? (this.#worded?.language.decimalSign ?? 'point') : decimalSign,
    };
  }

  /** The language of the client’s own words, as BCP 47 writes it; the setting stands above it. */
  set locale(locale: string) {
    this.#locale = locale;
  }

  /** The language of the answers of the moment. */
  get language(): LanguageTag {
    return this.#tag;
  }

  set folders(uris: readonly string[]) {
    this.#folders = uris;
    this.#rootsNew = true;
  }

  /** The core, knowing all that has happened so far. */
  async service(): Promise<Service> {
    await this.#ready();
    return this.now();
  }

  /** A message in the words that are asked for, with the core loaded for it where it was not. */
  async words(said: Said): Promise<string> {
    await this.#ready();
    return this.say(said);
  }

  /** A message in the words that are asked for; by its code before the core is there. */
  say(said: Said): string {
    if (this.#core !== undefined) {
      const { language, grammar } = this.#worded ?? { language: this.#core.english };
      this.#speaker ??= this.#core.speakerOf(language, this.display, grammar);
    }
    return this.#speaker?.say(said) ?? said.code;
  }

  async #ready(): Promise<void> {
    // The import is what keeps the core from being evaluated before the client has its answer to `initialize`.
    this.#loading ??= import('../../core/index.ts');
    this.#core = await this.#loading;
    this.#service ??= this.#core.createService({
      failed: (what) => this.#warn(`A rule or an action failed; its findings are missing: ${what}`),
    });
    // Other settings may come while a language is loaded.
    while (this.#tagWanted() !== this.#tag) await this.#word(this.#tagWanted());
  }

  /** The core, knowing all that has happened so far; only once `service` has answered. */
  now(): Service {
    if (!this.#service) throw new Error('The core is not loaded yet.');
    this.#tell(this.#service);
    return this.#service;
  }

  noteEdit(uri: string): void {
    this.#edited.add(uri);
  }

  /** The text of a file on the disk, `undefined` when it is gone. An open document wins over the disk. */
  noteDiskText(uri: string, text: string | undefined): void {
    if (this.#documents.has(uri)) return;
    if (text !== undefined) this.#tooLarge.delete(uri);
    this.#pending.delete(uri);
    this.#news.delete(uri);
    if (text !== undefined && !this.#service?.has(uri)) {
      this.#news.set(uri, text);
      return;
    }
    this.#pending.set(uri, text);
  }

  /** Whether the core is still to hear of a file. */
  awaits(uri: string): boolean {
    return this.#news.has(uri);
  }

  /** The lines of a file as the core has it. */
  lines(uri: string): readonly string[] | undefined {
    return this.#service?.has(uri) ? this.#service.lines(uri) : undefined;
  }

  /** How many files the core is still to hear of. */
  get left(): number {
    return this.#news.size;
  }

  /** Makes one more file known to the core, which it reads at once; its URI, or `undefined` when none is left. */
  takeIn(service: Service): string | undefined {
    const [next] = this.#news;
    if (next === undefined) return undefined;
    const [uri, text] = next;
    this.#news.delete(uri);
    if (this.#documents.has(uri)) return uri;
    this.#give(service, uri, text);
    service.index(uri);
    return uri;
  }

  /** Whether the root of a file is known or not needed. */
  hasRoot(uri: string): boolean {
    return this.#strayRoots.has(uri) || this.holds(uri);
  }

  /** Notes the root of an open file that lies in no folder of the workspace; whether it is to be read. */
  noteStrayRoot(uri: string, root: string): boolean {
    if (this.hasRoot(uri) || !this.#documents.has(uri)) return false;
    const isNew = !this.roots.includes(root);
    this.#strayRoots.set(uri, root);
    if (!isNew) return false;
    this.#rootsNew = true;
    return true;
  }

  /** Gives up the roots that no open file needs any more; whether there were any. */
  reviewStrayRoots(): boolean {
    const before = this.#strayRoots.size;
    for (const uri of this.#strayRoots.keys())
      if (!this.#documents.has(uri) || this.holds(uri)) this.#strayRoots.delete(uri);
    if (this.#strayRoots.size === before) return false;
    this.#rootsNew = true;
    return true;
  }

  /** Whether a file lies in a folder of the workspace. */
  holds(uri: string): boolean {
    return this.#folders.some((folder) => isBelow(uri, folder));
  }

  /** The folders whose files are read. */
  get roots(): readonly string[] {
    return [...new Set([...this.#folders, ...this.#strayRoots.values()])];
  }

  /** Whether a file lies in a folder whose files are read, of the workspace or around an open file. */
  reads(uri: string): boolean {
    return this.roots.some((root) => isBelow(uri, root));
  }

  isTooLarge(uri: string): boolean {
    return this.#tooLarge.has(uri);
  }

  #tagWanted(): LanguageTag {
    const { language } = this.#settings;
    return language === 'editor' ? this.#core!.languageTagOf(this.#locale) : language;
  }

  async #word(tag: LanguageTag): Promise<void> {
    let trouble: string | undefined;
    const worded = await wordedIn(tag, (sentence) => {
      trouble = sentence;
    });
    // Whoever asked at the same time has had it loaded as well.
    if (this.#tag === tag || this.#tagWanted() !== tag) return;
    this.#tag = tag;
    this.#worded = worded;
    this.#speaker = undefined;
    if (trouble !== undefined && !this.#lacking.has(tag)) this.#warn(trouble);
    if (trouble !== undefined) this.#lacking.add(tag);
    this.#settingsNew = true;
  }

  // An editor also opens a file as it was in an older revision, under a scheme of its own. Its names would clash with
  // those of the file itself.
  #isOfWorkspace(uri: string): boolean {
    const scheme = schemeOf(uri);
    if (scheme === 'file' || scheme === 'untitled' || this.#folders.length === 0) return true;
    return this.#folders.some((folder) => schemeOf(folder) === scheme);
  }

  #tell(service: Service): void {
    if (this.#settingsNew) {
      this.#settingsNew = false;
      service.setSettings({
        ...this.#settings.core,
        ...this.#worded,
        display: this.display,
        keepsLastFigures: this.keepsLastFigures,
      });
    }
    if (this.#rootsNew) {
      this.#rootsNew = false;
      service.setRoots(this.roots);
    }
    for (const uri of this.#edited) {
      const text = this.#documents.get(uri)?.getText();
      if (text !== undefined && this.#isOfWorkspace(uri)) this.#give(service, uri, text);
    }
    this.#edited.clear();
    for (const [uri, text] of this.#pending) {
      if (this.#documents.has(uri)) continue;
      if (text === undefined) service.remove(uri);
      else this.#give(service, uri, text);
    }
    this.#pending.clear();
  }

  #give(service: Service, uri: string, text: string): void {
    if (text.length <= largestFileBytes) {
      this.#tooLarge.delete(uri);
      service.setText(uri, text);
      return;
    }
    this.#tooLarge.add(uri);
    service.remove(uri);
  }
}

function schemeOf(uri: string): string {
  return uri.slice(0, uri.indexOf(':'));
}
