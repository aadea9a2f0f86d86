import { type Connection, DidChangeConfigurationNotification } from 'vscode-languageserver';
import type { Level, Settings } from '../core/index.ts';
import type { Abilities } from './abilities.ts';
import { guardedWork, type Log } from './guard.ts';

/** What a baker may set under `doughwright` in the editor. */
export interface ServerSettings {
  readonly core: Partial<Settings>;
  /** Whether percent, grams and totals are shown at the ends of lines. */
  readonly hints: boolean;
  /** Whether totals and users are shown above headers. */
  readonly lenses: boolean;
}

export const defaultSettings: ServerSettings = { core: { rules: {} }, hints: true, lenses: true };

const levels: readonly (Level | 'off')[] = ['error', 'warning', 'info', 'hint', 'off'];

/**
 * Reads settings as they come from a client. What makes no sense is left out and told to `complain` in a sentence, so
 * that one slip does not undo the rest.
 */
export function readSettings(value: unknown, complain: (sentence: string) => void): ServerSettings {
  if (!isRecord(value)) return defaultSettings;
  const rules: Record<string, Level | 'off'> = {};
  for (const [code, level] of Object.entries(isRecord(value.rules) ? value.rules : {})) {
    const known = levels.find((name) => name === level);
    if (known) rules[code] = known;
    else
      complain(
        `Setting doughwright.rules, ${code}: ${JSON.stringify(level)} is no level; write one of ${levels.join(', ')}.`,
      );
  }
  const core: { rules: typeof rules; maxFindings?: number } = { rules };
  const most = value.maxFindings;
  if (typeof most === 'number' && Number.isInteger(most) && most > 0) core.maxFindings = most;
  else if (most !== undefined && most !== null)
    complain('Setting doughwright.maxFindings: write a whole number above 0.');
  const hints = !isRecord(value.inlayHints) || value.inlayHints.enabled !== false;
  const lenses = !isRecord(value.codeLens) || value.codeLens.enabled !== false;
  return { core, hints, lenses };
}

/**
 * Fetches the settings from the client, now and whenever it says that they have changed; `taken` is told of those that
 * differ from the last, at first from those `known`. A client that cannot be asked sends them along instead. To be called once the client has
 * initialized.
 */
export function followSettings(
  connection: Connection,
  able: Abilities,
  log: Log,
  known: ServerSettings,
  taken: (settings: ServerSettings) => void,
): void {
  let last = JSON.stringify(known);
  const take = (value: unknown) => {
    const settings = readSettings(value, (sentence) => log.warn(sentence));
    const text = JSON.stringify(settings);
    if (text === last) return;
    last = text;
    taken(settings);
  };
  const pull = () =>
    guardedWork(log, 'Settings', async () =>
      take(await connection.workspace.getConfiguration('doughwright')),
    );
  connection.onDidChangeConfiguration((change) => {
    if (able.configuration) pull();
    else take(isRecord(change.settings) ? change.settings.doughwright : undefined);
  });
  if (able.configuration) pull();
  if (!able.registersConfiguration) return;
  guardedWork(log, 'Settings', () =>
    connection.client.register(DidChangeConfigurationNotification.type, { section: 'doughwright' }),
  );
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
