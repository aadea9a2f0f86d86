import { type Connection, type Diagnostic, DiagnosticSeverity } from 'vscode-languageserver';
import { guardedWork, type Log } from '../host/guard.ts';
import type { Host } from '../host/host.ts';
import { noProject, type ProjectSettings, projectFileName } from '../project/project-settings.ts';
import type { Workspace } from './workspace.ts';

interface Parts {
  readonly connection: Connection;
  readonly host: Host;
  readonly workspace: Workspace;
  readonly log: Log;
  /** Told of what the project has decided, whenever that is something else. */
  readonly taken: (project: ProjectSettings) => void;
}

/**
 * Reads the project file of the workspace, and again whenever it changes: of the first folder that has one, in it or in the root of its
 * repository. What is wrong with it is shown at its lines.
 */
export class ProjectFollower {
  readonly #parts: Parts;
  #last = JSON.stringify(noProject);
  /** The file that findings were shown of. */
  #shown: string | undefined;
  #newest = 0;

  constructor(parts: Parts) {
    this.#parts = parts;
  }

  /** Whether a file is one of those that may hold the settings of a project. */
  static isProject(uri: string): boolean {
    return uri.endsWith(`/${projectFileName}`);
  }

  read(): void {
    guardedWork(this.#parts.log, 'Project', () => this.#read());
  }

  async #read(): Promise<void> {
    this.#newest += 1;
    const own = this.#newest;
    const found = await this.#find();
    const [{ readProject }, { rules }] = await Promise.all([
      import('../project/project-file.ts'),
      import('../../core/index.ts'),
    ]);
    const project =
      found === undefined ? undefined : readProject(found.text, new Set(rules.map(({ code }) => code)));
    if (own !== this.#newest) return;
    const settings = project?.settings ?? noProject;
    const text = JSON.stringify(settings);
    if (text !== this.#last) {
      this.#last = text;
      this.#parts.taken(settings);
    }
    await this.#show(found?.uri, project?.findings ?? []);
  }

  async #show(
    uri: string | undefined,
    findings: readonly {
      readonly line: number;
      readonly start: number;
      readonly end: number;
      readonly message: Parameters<Workspace['words']>[0];
    }[],
  ): Promise<void> {
    const { connection, workspace } = this.#parts;
    const before = this.#shown;
    if (before !== undefined && before !== uri)
      await connection.sendDiagnostics({ uri: before, diagnostics: [] });
    this.#shown = findings.length > 0 ? uri : undefined;
    if (uri === undefined || (findings.length === 0 && before !== uri)) return;
    const diagnostics: Diagnostic[] = [];
    for (const { line, start, end, message } of findings)
      diagnostics.push({
        range: { start: { line, character: start }, end: { line, character: end } },
        severity: DiagnosticSeverity.Error,
        source: 'doughwright',
        message: await workspace.words(message),
      });
    await connection.sendDiagnostics({ uri, diagnostics });
  }

  async #find(): Promise<{ readonly uri: string; readonly text: string } | undefined> {
    const { host, workspace } = this.#parts;
    if (host.files === undefined) return undefined;
    for (const folder of workspace.folders.filter((one) => one.startsWith('file:'))) {
      const own = `${folder.replace(/\/$/, '')}/${projectFileName}`;
      const root = (await host.files.rootOf(own)).replace(/\/$/, '');
      for (const uri of new Set([own, `${root}/${projectFileName}`])) {
        const text = await host.files.read(uri);
        if (text !== undefined) return { uri, text };
      }
    }
    return undefined;
  }
}
