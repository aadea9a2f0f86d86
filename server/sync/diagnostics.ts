import {
  type CancellationToken,
  type Connection,
  type DocumentDiagnosticReport,
  DocumentDiagnosticReportKind,
  type WorkspaceDocumentDiagnosticReport,
} from 'vscode-languageserver';
import type { Service, Snapshot } from '../../core/index.ts';
import { firstOf } from '../host/first-of.ts';
import { checkpoint, guardedWork } from '../host/guard.ts';
import type { OpenDocuments } from './documents.ts';
import { longestRead, mayTellFindings } from './first-findings.ts';
import { type Findings, PublishedDiagnostics, type ToldParts } from './published-diagnostics.ts';
import type { Schedule } from './schedule.ts';
import { TypedLines } from './typed-lines.ts';

export interface DiagnosticsParts extends ToldParts {
  readonly connection: Connection;
  readonly documents: OpenDocuments;
  readonly schedule: Schedule;
  /** Nothing is said of a line while it is typed. */
  readonly calmWhileTyping: boolean;
  /** Resolves when the files of the workspace are read, or after so many milliseconds. */
  readonly filesRead: (atMostMilliseconds: number) => Promise<void>;
  /** Told which files' numbers may have changed, once they can be asked for. */
  readonly numbersChanged: (uris: readonly string[]) => void;
  /** Told when the hints of open files other than the edited ones may have changed. */
  readonly hintsChanged: () => void;
}

/**
 * Keeps the client's findings true. A client that pulls is told when to pull again; the others are sent the findings
 * of open documents at once and those of the other files of the workspace behind them.
 */
export class Diagnostics {
  readonly #parts: DiagnosticsParts;
  readonly #told: PublishedDiagnostics;
  readonly typed: TypedLines;
  /** What a client that pulls was told last of each document: the pull for a document and that for the workspace go apart. */
  readonly #pulled = new Map<
    string,
    { readonly id: string; readonly version: number | undefined; askedAnew?: string }
  >();
  /** Files whose text is new. */
  readonly #changed = new Set<string>();
  /** Files whose findings are to be worked out and sent, or compared, when there is time. */
  readonly #stale = new Set<string>();
  #everything = false;
  /** The snapshot up to which changes have been looked through. */
  #toldOf: Snapshot | undefined;
  #working = false;
  #sweepingOpen = false;
  #sweepingClosed = false;
  #began: Promise<void> | undefined;
  #news: (() => void)[] = [];
  /** Grows with each round. */
  #edition = 0;

  constructor(parts: DiagnosticsParts) {
    this.#parts = parts;
    this.#told = new PublishedDiagnostics(parts);
    // A client that pulls and cannot be told to pull again would never hear of what was withheld.
    const isCalm = parts.calmWhileTyping && (!parts.able.pullsFindings || parts.able.refreshesFindings);
    this.typed = new TypedLines(isCalm, (uri) => this.#rested(uri));
  }

  get rulePages(): string | undefined {
    return this.#told.rulePages;
  }

  /** The text of these files is new, or they are gone. */
  textChanged(uris: readonly string[]): void {
    for (const uri of uris) {
      this.#changed.add(uri);
      this.#told.outdate(uri);
    }
    if (uris.length > 0) this.#wake();
  }

  /** The client has closed a document, and no longer asks for it alone. */
  closed(uri: string): void {
    this.typed.closed(uri);
    this.#pulled.delete(uri);
  }

  /** Settings or folders are new: every answer may be another. */
  everythingChanged(): void {
    this.#everything = true;
    this.#wake();
  }

  /** The answer to a client that pulls the findings of one document. */
  async pull(
    uri: string,
    previousId: string | undefined,
    token: CancellationToken,
  ): Promise<DocumentDiagnosticReport> {
    await this.#mayBegin();
    await this.#parts.schedule.quiet();
    checkpoint(token);
    const service = await this.#parts.workspace.service();
    const { told, diagnostics } = this.#told.workOut(service, uri);
    this.#pulled.set(uri, { id: told.id, version: this.#parts.documents.get(uri)?.version });
    const { resultId, items } = this.typed.without(uri, { told, diagnostics });
    if (resultId === previousId) return { kind: DocumentDiagnosticReportKind.Unchanged, resultId };
    return { kind: DocumentDiagnosticReportKind.Full, resultId, items: items() };
  }

  /** The hand rests: what was withheld of the line it wrote is told. */
  #rested(uri: string): void {
    const { able, connection, log } = this.#parts;
    guardedWork(log, 'Findings of a line that was typed', async () => {
      if (able.pullsFindings) await connection.languages.diagnostics.refresh();
      else this.#publish(await this.#parts.workspace.service(), uri, true);
    });
  }

  /**
   * The answer to a client that pulls the findings of the whole workspace: it comes when there is something new. Files that
   * have no findings, and had none that the client knows of, are passed over. What is found goes to `partial`, where the
   * client takes it piece by piece. A client that takes it in one piece and knows of nothing yet is told at once that there is
   * nothing: it may be asking only once.
   */
  async pullWorkspace(
    previousIds: ReadonlyMap<string, string>,
    token: CancellationToken,
    partial?: (reports: WorkspaceDocumentDiagnosticReport[]) => void,
  ): Promise<WorkspaceDocumentDiagnosticReport[]> {
    const { workspace, schedule, filesRead } = this.#parts;
    await this.#mayBegin();
    await filesRead(longestRead);
    for (;;) {
      checkpoint(token);
      this.#catchUp(await workspace.service());
      const edition = this.#edition;
      const uris = new Set([...workspace.now().uris(), ...previousIds.keys()]);
      const left = uris.values();
      let reports: WorkspaceDocumentDiagnosticReport[] = [];
      let news = 0;
      await schedule.inBackground(() => {
        checkpoint(token);
        const { value: uri } = left.next();
        const report = uri === undefined ? undefined : this.#report(uri, previousIds.get(uri));
        if (report?.kind === DocumentDiagnosticReportKind.Full) news++;
        if (report !== undefined) reports.push(report);
        if (partial !== undefined && news > 0 && (uri === undefined || reports.length >= mostReports)) {
          partial(reports);
          reports = [];
        }
        return uri !== undefined;
      });
      // What was told of a text that has changed meanwhile is no longer true of it; the next question tells it.
      if (news > 0) return reports.filter(({ uri, version }) => this.#parts.naming.version(uri) === version);
      if (partial === undefined && previousIds.size === 0) return [];
      if (edition === this.#edition) await this.#nextNews(token);
    }
  }

  #report(uri: string, known: string | undefined): WorkspaceDocumentDiagnosticReport | undefined {
    const { workspace, documents, naming } = this.#parts;
    const named = { uri: naming.spell(uri), version: naming.version(uri) };
    const current = this.#told.current(uri);
    if (current !== undefined && current.id === known)
      return { kind: DocumentDiagnosticReportKind.Unchanged, resultId: known, ...named };
    const service = workspace.now();
    const shown = documents.has(uri) || (workspace.holds(uri) && service.has(uri));
    const { told, diagnostics: all } = this.#told.workOut(service, uri, shown);
    const { resultId, items: diagnostics } = this.typed.without(uri, { told, diagnostics: all });
    if (this.#isBehind(uri, told.id)) {
      this.#stale.add(uri);
      this.#sweepOpen();
    }
    if (resultId === known) return { kind: DocumentDiagnosticReportKind.Unchanged, resultId, ...named };
    if (known === undefined && told.findings.length === 0) return undefined;
    return { kind: DocumentDiagnosticReportKind.Full, resultId, items: diagnostics(), ...named };
  }

  /** The first findings wait a moment for the files around, or names that stand in those would be unknown in them. */
  #mayBegin(): Promise<void> {
    const { filesRead, log } = this.#parts;
    this.#began ??= mayTellFindings(filesRead, log, () => {
      for (const uri of this.#told.allRead()) this.#stale.add(uri);
      if (this.#stale.size > 0) this.#sweepOpen();
    });
    return this.#began;
  }

  #wake(): void {
    if (this.#working) return;
    this.#working = true;
    const { log, schedule, able } = this.#parts;
    guardedWork(log, 'Findings', async () => {
      await this.#mayBegin();
      // Who pulls is answered first; what else is stale can wait.
      await (able.pullsFindings ? schedule.idle() : schedule.quiet());
      this.#working = false;
      await this.#round();
    });
  }

  /** One round after a change: the changed open documents at once, all that hangs on them behind. */
  async #round(): Promise<void> {
    const { workspace } = this.#parts;
    this.#catchUp(await workspace.service());
    if (this.#stale.size === 0) return;
    this.#sweepOpen();
    this.#sweepClosed();
  }

  /** Takes in what has changed since the last time: what was edited is told, and what hangs on it is stale. */
  #catchUp(service: Service): void {
    if (this.#changed.size === 0 && !this.#everything) return;
    const { documents, able, numbersChanged } = this.#parts;
    this.#edition++;
    const changed = [...this.#changed];
    this.#changed.clear();
    const edited = changed.filter((uri) => documents.has(uri));
    if (!able.pullsFindings) for (const uri of edited) this.#publish(service, uri, true);
    const affected = new Set(changed.filter((uri) => !documents.has(uri)));
    const { snapshot } = service;
    const told = this.#toldOf ?? snapshot;
    for (const uri of service.affectedSince(told)) affected.add(uri);
    // Answers may have been given between the first texts that came, before anything was looked at here.
    if (this.#toldOf === undefined && edited.length > 1) for (const uri of edited) affected.add(uri);
    this.#toldOf = snapshot;
    if (this.#everything)
      for (const uri of [...documents.uris(), ...service.uris(), ...this.#told.uris()]) affected.add(uri);
    this.#everything = false;
    for (const uri of edited) this.#told.outdate(uri);
    for (const uri of affected) {
      this.#stale.add(uri);
      this.#told.outdate(uri);
    }
    numbersChanged([...new Set([...changed, ...affected])]);
    this.#tellNews();
  }

  /** Looks at the stale open documents again, whenever the client asks for nothing. */
  #sweepOpen(): void {
    if (this.#sweepingOpen) return;
    this.#sweepingOpen = true;
    const { connection, log, schedule, workspace, documents, able, hintsChanged } = this.#parts;
    let swept = 0;
    let refresh = false;
    guardedWork(log, 'Findings of open documents', async () => {
      await workspace.service();
      await schedule
        .inBackground(() => {
          const uri = documents.uris().find((open) => this.#stale.has(open));
          if (uri === undefined) return false;
          const service = workspace.now();
          this.#stale.delete(uri);
          swept++;
          if (able.pullsFindings) refresh = this.#differs(service, uri) || refresh;
          else this.#publish(service, uri, false);
          return true;
        })
        .finally(() => {
          this.#sweepingOpen = false;
        });
      if (swept > 0) hintsChanged();
      if (refresh && able.refreshesFindings) await connection.languages.diagnostics.refresh();
    });
  }

  /**
   * Works through the stale files that are not open, once all are read and whenever the client asks for nothing. A client
   * that pulls is told of them when it asks.
   */
  #sweepClosed(): void {
    const { log, schedule, workspace, documents, able, filesRead } = this.#parts;
    if (able.pullsFindings) {
      for (const uri of this.#stale) if (!documents.has(uri)) this.#stale.delete(uri);
      return;
    }
    if (this.#sweepingClosed) return;
    this.#sweepingClosed = true;
    guardedWork(log, 'Findings of other files', async () => {
      await filesRead(longestRead);
      await workspace.service();
      await schedule
        .inBackground(() => {
          const uri = firstOf(this.#stale, (stale) => !documents.has(stale));
          if (uri === undefined) return false;
          this.#stale.delete(uri);
          this.#publish(workspace.now(), uri, false);
          return true;
        })
        .finally(() => {
          this.#sweepingClosed = false;
        });
    });
  }

  /** Whether a client that pulls has other findings of an open document than it has now, and is to ask again. */
  #differs(service: Service, uri: string): boolean {
    const { id } = this.#told.workOut(service, uri).told;
    if (!this.#isBehind(uri, id)) return false;
    this.#pulled.get(uri)!.askedAnew = id;
    return true;
  }

  /** Whether the client has pulled other findings than these of a document, and neither edits nor asks anew by itself. */
  #isBehind(uri: string, id: string): boolean {
    const pulled = this.#pulled.get(uri);
    if (pulled === undefined || pulled.id === id || pulled.askedAnew === id) return false;
    return this.#parts.documents.has(uri) && this.#parts.documents.get(uri)?.version === pulled.version;
  }

  /** Sends the findings of a file; those the client has already only when asked to. */
  #publish(service: Service, uri: string, always: boolean): void {
    const { connection, documents, workspace, naming, log } = this.#parts;
    const before = this.#told.get(uri);
    const shown = documents.has(uri) || (workspace.holds(uri) && service.has(uri));
    let diagnostics: ReturnType<Findings['diagnostics']> = [];
    if (shown) {
      const now = this.#told.workOut(service, uri);
      if (!always && (before ? before.id === now.told.id : now.told.findings.length === 0)) return;
      diagnostics = this.typed.without(uri, now).items();
    } else {
      this.#told.delete(uri);
      if (!before || before.findings.length === 0) return;
    }
    const version = naming.version(uri);
    guardedWork(log, 'Sending findings', () =>
      connection.sendDiagnostics({
        uri: naming.spell(uri),
        ...(version !== null && { version }),
        diagnostics,
      }),
    );
  }

  #nextNews(token: CancellationToken): Promise<void> {
    return new Promise((resolve) => {
      this.#news.push(resolve);
      token.onCancellationRequested(() => resolve());
    });
  }

  #tellNews(): void {
    const news = this.#news;
    this.#news = [];
    for (const resolve of news) resolve();
  }
}

/** So many reports go to the client at a time. */
const mostReports = 100;
