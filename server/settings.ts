import { type Connection, DidChangeConfigurationNotification } from 'vscode-languageserver';
import type { HintKind, Level, Settings } from '../core/index.ts';
import type { Abilities } from './abilities.ts';
import { guardedWork, type Log } from './guard.ts';
import { type SettingValues, settingValues } from './settings-table.ts';

/** What a baker may set under `doughwright` in the editor. */
export interface ServerSettings {
  readonly core: Partial<Settings>;
  /** The language of answers; `editor` is that of the client. */
  readonly language: SettingValues['language'];
  /** Which figures are shown at the ends of lines. */
  readonly hints: Readonly<Record<HintKind, boolean>>;
  /** Whether totals and users are shown above headers. */
  readonly lenses: boolean;
}

export const defaultSettings: ServerSettings = settingsOf({}, {});

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
  return settingsOf(rules, value, complain);
}

function settingsOf(
  rules: Settings['rules'],
  given: unknown,
  complain: (sentence: string) => void = () => undefined,
): ServerSettings {
  const set = settingValues(given, complain);
  const [room, flour, tap] = [set['usual.roomCelsius'], set['usual.flourCelsius'], set['usual.tapCelsius']];
  const regime = set['label.regime'];
  const hinted = set['inlayHints.enabled'];
  return {
    core: {
      rules,
      maxFindings: set.maxFindings,
      display: {
        mass: set['units.mass'],
        temperature: set['units.temperature'],
        decimalSign: set.decimalSign,
      },
      usual: {
        ...(regime !== 'bakery' && { label: regime }),
        ...(room !== null && { roomCelsius: room }),
        ...(flour !== null && { flourCelsius: flour }),
        ...(tap !== null && { tapCelsius: tap }),
      },
    },
    language: set.language,
    hints: {
      amount: hinted && set['inlayHints.amounts'],
      totals: hinted && set['inlayHints.totals'],
      part: hinted && set['inlayHints.parts'],
      mixing: hinted && set['inlayHints.mixing'],
    },
    lenses: set['codeLens.enabled'],
  };
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
  let told: readonly string[] = [];
  const take = (value: unknown) => {
    const complaints: string[] = [];
    const settings = readSettings(value, (sentence) => complaints.push(sentence));
    // A client may send the same settings many times over.
    for (const sentence of complaints) if (!told.includes(sentence)) log.warn(sentence);
    told = complaints;
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
