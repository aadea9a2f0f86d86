import type { Diagnostic } from 'vscode-languageserver';
import type { Finding, Service } from '../../core/index.ts';
import type { Abilities } from '../convert/abilities.ts';
import { type Naming, toDiagnostic } from '../convert/convert.ts';
import { type RulePageFolders, rulePagesIn } from '../convert/rule-pages.ts';
import type { Log } from '../host/guard.ts';
import { said } from './said.ts';
import type { Workspace } from './workspace.ts';

/** What was worked out last for a file; `id` names the list to the client. */
export interface Told {
  readonly findings: readonly Finding[];
  readonly id: string;
}

export interface Findings {
  readonly told: Told;
  readonly diagnostics: () => Diagnostic[];
}

export interface ToldParts {
  readonly workspace: Workspace;
  readonly able: Abilities;
  readonly naming: Naming;
  readonly rulePages: RulePageFolders | undefined;
  readonly log: Log;
}

/** Remembers the last findings of each file, so that the client is not told the same twice. */
export class PublishedDiagnostics {
  readonly #parts: ToldParts;
  readonly #last = new Map<string, Told>();
  /** Files whose findings may be others by now. */
  readonly #outdated = new Set<string>();
  /** Whether every file that may define a name has been read. */
  #allRead = false;
  /** Files of which something is not told before that. */
  readonly #heldBack = new Set<string>();
  #ids = 0;

  constructor(parts: ToldParts) {
    this.#parts = parts;
  }

  /**
   * The findings of a file now; their id is the one of before when the client would see no difference. A file that is not
   * `shown`, for it lies outside the workspace or is gone, has none.
   */
  workOut(service: Service, uri: string, shown = true): Findings {
    const { able, naming } = this.#parts;
    const before = this.#last.get(uri);
    this.#outdated.delete(uri);
    const findings = shown ? this.#findings(service, uri) : none;
    const { rulePages } = this;
    const diagnostics = () => findings.map((finding) => toDiagnostic(finding, able, naming, rulePages));
    const same = before !== undefined && sameFindings(before.findings, findings);
    const told = { findings, id: same ? before.id : String(++this.#ids) };
    this.#last.set(uri, told);
    return { told, diagnostics };
  }

  /** Every file has been read: from now on a name that is not defined is told. Returns the files of which it was not. */
  allRead(): readonly string[] {
    this.#allRead = true;
    const uris = [...this.#heldBack];
    this.#heldBack.clear();
    for (const uri of uris) this.outdate(uri);
    return uris;
  }

  /** The folder of the pages of the rules, in the language that is written at the moment. */
  get rulePages(): string | undefined {
    const { rulePages, workspace } = this.#parts;
    return rulePagesIn(rulePages, workspace.language);
  }

  /** What was worked out is no longer known to be true. */
  outdate(uri: string): void {
    if (this.#last.has(uri)) this.#outdated.add(uri);
  }

  /** What was worked out, where it is still true. */
  current(uri: string): Told | undefined {
    return this.#outdated.has(uri) ? undefined : this.#last.get(uri);
  }

  get(uri: string): Told | undefined {
    return this.#last.get(uri);
  }

  delete(uri: string): void {
    this.#last.delete(uri);
    this.#outdated.delete(uri);
  }

  uris(): Iterable<string> {
    return this.#last.keys();
  }

  /** One file that brings the core down must not take the findings of the others with it. */
  #findings(service: Service, uri: string): readonly Finding[] {
    if (this.#parts.workspace.isTooLarge(uri)) return [tooLarge(this.#parts.workspace)];
    try {
      const findings = service.has(uri) ? service.findings(uri) : none;
      if (this.#allRead || !findings.some(({ code }) => untilRead.has(code))) return findings;
      this.#heldBack.add(uri);
      return findings.filter(({ code }) => !untilRead.has(code));
    } catch (error) {
      this.#parts.log.error(`Findings of ${uri}: ${error instanceof Error ? error.stack : String(error)}`);
      return none;
    }
  }
}

// Most findings are the very objects of before; only those that were worked out anew are compared by what they say.
function sameFindings(before: readonly Finding[], now: readonly Finding[]): boolean {
  if (before.length !== now.length) return false;
  return now.every((finding, index) => {
    const other = before[index]!;
    return finding === other || JSON.stringify(finding) === JSON.stringify(other);
  });
}

const none: readonly Finding[] = [];

/** What is not said before all files are read, for one of those that are left may define the name. */
const untilRead: ReadonlySet<string> = new Set(['unknown-ingredient', 'unknown-mixer', 'unknown-formula']);

function tooLarge(workspace: Workspace): Finding {
  return {
    code: 'file-too-large',
    level: 'warning',
    message: workspace.say(said('file-too-large.whole')),
    place: { line: 0, start: 0, end: 0 },
    related: [],
    fixes: [],
  };
}
