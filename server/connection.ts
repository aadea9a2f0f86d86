import {
  CodeLensRefreshRequest,
  type Connection,
  type ConnectionOptions,
  type InitializeParams,
  type InitializeResult,
  ResponseError,
} from 'vscode-languageserver';
import type { Message } from '../core/index.ts';
import { version } from '../package.json';
import { type Abilities, readAbilities } from './convert/abilities.ts';
import { capabilities } from './convert/capabilities.ts';
import type { Naming } from './convert/convert.ts';
import type { PositionEncoding } from './convert/convert-encoding.ts';
import {
  openExperimentCommand,
  openMapCommand,
  openPlanCommand,
  openSheetCommand,
  showUsesCommand,
} from './convert/convert-navigation.ts';
import { ProtocolGate, type RefusedRequest } from './convert/protocol-gate.ts';
import { readRulePages } from './convert/rule-pages.ts';
import { followFolders } from './host/folders.ts';
import { guardedWork, type Log } from './host/guard.ts';
import type { Host } from './host/host.ts';
import { canonicalUri } from './host/uris.ts';
import { inProject } from './project/project-precedence.ts';
import { noProject } from './project/project-settings.ts';
import type { ChangedNotification, ChangedParams } from './protocol.ts';
import { answerQuestions } from './requests/features.ts';
import { Diagnostics } from './sync/diagnostics.ts';
import { type DocumentEvents, OpenDocuments } from './sync/documents.ts';
import { WorkspaceFiles } from './sync/files.ts';
import { Progress } from './sync/progress.ts';
import { ProjectFollower } from './sync/project-follower.ts';
import type { Schedule } from './sync/schedule.ts';
import { followSettings, readSettings, type ServerSettings } from './sync/settings.ts';
import { Workspace } from './sync/workspace.ts';

/** What a client may hand over in `initializationOptions`; all of it may be left out. */
interface StartOptions {
  /** The settings under `doughwright`, so that the first findings know them. */
  readonly settings?: unknown;
  /** The URI of the folder that holds a page for each rule, ending in a slash; or such a one by the tag of each language. */
  readonly rulePages?: unknown;
  /**
   * While a line is typed nothing is said of it, and figures that it makes unknown are answered as they were last, in brackets. Answers
   * then hang on what was typed before and not on the text alone, so a client asks for it.
   */
  readonly calmWhileTyping?: boolean;
  /** The commands of the client that a lens may call. */
  readonly commands?: readonly string[];
  /** Images in hovers are shown as images. */
  readonly pictures?: boolean;
}

const changedNotification: ChangedNotification = 'doughwright/changed';

/** What stands for a request that is refused, whatever it was. */
const refusedMethod = 'doughwright/refused';

function refuse({ code, message }: RefusedRequest): never {
  throw new ResponseError(code, message);
}

/** The connection must be made with these options, so that the schedule knows of every message. */
export function connectionOptions(schedule: Schedule, encoding: PositionEncoding): ConnectionOptions {
  const gate = new ProtocolGate();
  return {
    messageStrategy: {
      handleMessage: (message, next) => {
        schedule.messageTaken();
        const refused = gate.refusal(message);
        if (refused === 'drop') return;
        if (refused === undefined) return next(encoding.incoming(message));
        // Only a handler can answer with an error.
        return next({ ...message, method: refusedMethod, params: refused } as typeof message);
      },
    },
  };
}

/**
 * Serves one client until it leaves. Nothing of the core is evaluated before the client has said `initialized`.
 */
export function serve(
  connection: Connection,
  schedule: Schedule,
  encoding: PositionEncoding,
  host: Host,
): void {
  const log = logOf(connection);
  const documents = new OpenDocuments();
  const workspace = new Workspace(documents, log.warn);
  /** What a client has set and makes no sense; told once the core may be loaded, which words it. */
  let complaints: Message[] | undefined = [];
  const complain = (what: Message): void => {
    if (complaints !== undefined) complaints.push(what);
    else guardedWork(log, 'Settings', async () => log.warn(await workspace.words(what)));
  };
  const naming: Naming = {
    spell: (uri) => documents.spell(uri),
    version: (uri) => documents.get(uri)?.version ?? null,
  };
  let diagnostics: Diagnostics | undefined;
  let progress: Progress | undefined;
  const files = new WorkspaceFiles({
    ...{ host, workspace, schedule, log },
    changed: (uris) => diagnostics?.textChanged(uris),
    rootsChanged: () => diagnostics?.everythingChanged(),
    progress: (known, found) => progress?.tell(known, found),
  });
  let able: Abilities = readAbilities({});
  /** Only a client of ours asks for sheets; others are not told what they do not know. */
  let knowsSheets = false;

  connection.onInitialize((params: InitializeParams): InitializeResult => {
    able = readAbilities(params.capabilities);
    encoding.choose(params.capabilities.general?.positionEncodings, {
      document: (uri) => documents.get(canonicalUri(uri)),
      lines: (uri) => workspace.lines(canonicalUri(uri)),
    });
    const options = (params.initializationOptions ?? {}) as StartOptions;
    workspace.folders = foldersOf(params);
    if (params.locale !== undefined) workspace.locale = params.locale;
    if (able.progress) progress = new Progress(connection, log, (said) => workspace.words(said));
    diagnostics = new Diagnostics({
      connection,
      documents,
      workspace,
      schedule,
      log,
      naming,
      able,
      calmWhileTyping: options.calmWhileTyping === true,
      rulePages: readRulePages(options.rulePages) ?? host.rulePages,
      filesRead: (atMost) => files.settled(atMost),
      ...refreshes({ connection, log, naming, able, knowsSheets: () => knowsSheets }),
    });
    answerQuestions({
      lensCommands: lensCommandsOf(options),
      showsPictures: options.pictures === true && able.markdownHover,
      revisions: host.revisions,
      ...{ connection, documents, workspace, schedule, log, naming, able, diagnostics },
      filesRead: (atMost) => files.settled(atMost),
      asked: () => {
        knowsSheets = true;
      },
    });
    workspace.keepsLastFigures = options.calmWhileTyping === true;
    workspace.settings = readSettings(options.settings, complain);
    return {
      capabilities: capabilities(able, host.files !== undefined, encoding.kind),
      serverInfo: { name: 'doughwright', version },
    };
  });

  connection.onInitialized(() => {
    const early = complaints ?? [];
    complaints = undefined;
    for (const what of early) complain(what);
    const everythingChanged = () => diagnostics?.everythingChanged();
    const follower = followChoices({
      connection,
      able,
      log,
      workspace,
      host,
      complain,
      changed: everythingChanged,
    });
    files.readFolders(workspace.folders);
    followFolders(connection, able, log, workspace, files, documents, everythingChanged, () =>
      follower.read(),
    );
    // Loaded now, the core is there when the first document comes.
    guardedWork(log, 'Loading', async () => {
      await schedule.quiet();
      await workspace.service();
    });
  });

  const atRest = onceAnswered(schedule, log, host);
  documents.listen(connection, {
    ...textEvents({ files, workspace, diagnostics: () => diagnostics, atRest }),
    saved: () => {
      if (!able.registersWatchers) files.rereadAll();
    },
  });

  connection.onRequest(refusedMethod, refuse);
  connection.onShutdown(() => undefined);
  connection.listen();
}

/** What follows from what the client does to its texts. */
function textEvents(parts: {
  readonly files: WorkspaceFiles;
  readonly workspace: Workspace;
  readonly diagnostics: () => Diagnostics | undefined;
  readonly atRest: () => void;
}): Omit<DocumentEvents, 'saved'> {
  const { files, workspace, diagnostics, atRest } = parts;
  return {
    edited: (uri, changes) => diagnostics()?.typed.edited(uri, changes),
    changed: (uri) => {
      workspace.noteEdit(uri);
      files.readAround(uri);
      diagnostics()?.textChanged([uri]);
      atRest();
    },
    closed: (uri) => {
      files.closed(uri);
      diagnostics()?.closed(uri);
      diagnostics()?.textChanged([uri]);
    },
  };
}

/** Tells the host, the first time a text is given, when an editor has had its answers and nobody waits. */
function onceAnswered(schedule: Schedule, log: Log, host: Host): () => void {
  let { atRest } = host;
  return () => {
    const run = atRest;
    if (run === undefined) return;
    atRest = undefined;
    const timer = setTimeout(
      () => guardedWork(log, 'At rest', () => schedule.idle().then(run)),
      restMilliseconds,
    );
    // A server with nothing else to do may end meanwhile.
    (timer as { unref?: () => void }).unref?.();
  };
}

/** In this time an editor has asked all that it asks when a document is opened. */
const restMilliseconds = 1500;

/** Keeps up with what the editor and the project have chosen; answers who reads the project anew. */
function followChoices(parts: {
  readonly connection: Connection;
  readonly able: Abilities;
  readonly log: Log;
  readonly workspace: Workspace;
  readonly host: Host;
  readonly complain: (what: Message) => void;
  /** Told when something is chosen otherwise. */
  readonly changed: () => void;
}): ProjectFollower {
  const { connection, able, log, workspace, host, complain, changed } = parts;
  let [settings, project] = [workspace.settings, noProject];
  const apply = () => {
    workspace.settings = inProject(settings, project);
    changed();
  };
  const taken = (next: ServerSettings) => {
    settings = next;
    apply();
  };
  followSettings({ connection, able, log, known: settings, taken, complain });
  const follower = new ProjectFollower({
    ...{ connection, host, workspace, log },
    taken: (next) => {
      project = next;
      apply();
    },
  });
  follower.read();
  return follower;
}

/** Tells the client, where it can be told, that what it has been answered may be another by now. */
function refreshes(parts: {
  readonly connection: Connection;
  readonly log: Log;
  readonly naming: Naming;
  readonly able: Abilities;
  readonly knowsSheets: () => boolean;
}) {
  const { connection, log, naming, able, knowsSheets } = parts;
  const { inlayHint, semanticTokens } = connection.languages;
  return {
    numbersChanged(uris: readonly string[]): void {
      if (!knowsSheets() || uris.length === 0) return;
      const changed: ChangedParams = { uris: uris.map(naming.spell) };
      guardedWork(log, changedNotification, () => connection.sendNotification(changedNotification, changed));
    },
    hintsChanged(): void {
      if (able.refreshesHints) guardedWork(log, 'Refreshing hints', () => inlayHint.refresh());
      if (able.refreshesTokens) guardedWork(log, 'Refreshing colours', () => semanticTokens.refresh());
      if (able.refreshesLenses)
        guardedWork(log, 'Refreshing lenses', () => connection.sendRequest(CodeLensRefreshRequest.type));
    },
  };
}

function logOf({ console, tracer }: Connection): Log {
  return {
    error: (message) => console.error(message),
    warn: (message) => console.warn(message),
    info: (message) => console.info(message),
    took: (name, milliseconds) => tracer.log(name, `It took ${milliseconds.toFixed(1)} ms.`),
  };
}

/** Which commands of the client a lens may call. */
function lensCommandsOf({ commands }: StartOptions) {
  const known = Array.isArray(commands) ? commands : [];
  return {
    openSheet: known.includes(openSheetCommand),
    openExperiment: known.includes(openExperimentCommand),
    openPlan: known.includes(openPlanCommand),
    openMap: known.includes(openMapCommand),
    showUses: known.includes(showUsesCommand),
  };
}

function foldersOf(params: InitializeParams): string[] {
  if (params.workspaceFolders) return params.workspaceFolders.map((folder) => canonicalUri(folder.uri));
  // Clients of before workspace folders say it this way.
  return params.rootUri ? [canonicalUri(params.rootUri)] : [];
}
