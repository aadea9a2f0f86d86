import { type Connection, DidChangeConfigurationNotification } from 'vscode-languageserver';
import type { Display, HintKind, Level, Message, Settings } from '../../core/index.ts';
import type { Abilities } from '../convert/abilities.ts';
import { guardedWork, type Log } from '../host/guard.ts';
import { said } from './said.ts';
import { type SettingValues, settingValues } from './settings-table.ts';

/** What a baker may set under `doughwright` in the editor. */
export interface ServerSettings {
  readonly core: Partial<Omit<Settings, 'display'>>;
  /** How figures are shown; the decimal sign may be that of the language. */
  readonly display: Omit<Display, 'decimalSign'> & {
    readonly decimalSign: SettingValues['decimalSign'];
  };
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
 * Reads settings as they come from a client. What makes no sense is left out and told to `complain`, so
 * that one slip does not undo the rest.
 */
export function readSettings(value: unknown, complain: (what: Message) => void): ServerSettings {
  if (!isRecord(value)) return defaultSettings;
  const rules: Record<string, Level | 'off'> = {};
  for (const [code, level] of Object.entries(isRecord(value.rules) ? value.rules : {})) {
    const known = levels.find((name) => name === level);
    if (known) rules[code] = known;
    else
      complain(
        said('session.no-level', {
          setting: 'doughwright.rules',
          ...{ code, written: JSON.stringify(level), choices: levels },
        }),
      );
  }
  return settingsOf(rules, value, complain);
}

function settingsOf(
  rules: Settings['rules'],
  given: unknown,
  complain: (what: Message) => void = () => undefined,
): ServerSettings {
  const set = settingValues(given, complain);
  const [room, flour, tap] = [set['usual.roomCelsius'], set['usual.flourCelsius'], set['usual.tapCelsius']];
  const regime = set['label.regime'];
  const hinted = set['inlayHints.enabled'];
  return {
    core: {
      rules,
      maxFindings: set.maxFindings,
      scaleReading: set['sheet.scaleReading'],
      usual: {
        ...(regime !== 'bakery' && { label: regime }),
        ...(room !== null && { roomCelsius: room }),
        ...(flour !== null && { flourCelsius: flour }),
        ...(tap !== null && { tapCelsius: tap }),
      },
    },
    display: {
      mass: set['units.mass'],
      temperature: set['units.temperature'],
      decimalSign: set.decimalSign,
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

export interface Following {
  readonly connection: Connection;
  readonly able: Abilities;
  readonly log: Log;
  readonly known: ServerSettings;
  readonly taken: (settings: ServerSettings) => void;
  readonly complain: (what: Message) => void;
}

/**
 * Fetches the settings from the client, now and whenever it says that they have changed; `taken` is told of those that
 * differ from the last, at first from those `known`, and `complain` of each that makes no sense, once. A client that cannot be
 * asked sends them along instead. To be called once the client has initialized.
 */
export function followSettings({ connection, able, log, known, taken, complain }: Following): void {
  let last = JSON.stringify(known);
  let told: readonly string[] = [];
  const take = (value: unknown) => {
    const complaints: Message[] = [];
    const settings = readSettings(value, (what) => complaints.push(what));
    const text = JSON.stringify(settings);
    // A client may send the same settings many times over.
    const isNew = text !== last;
    last = text;
    if (isNew) taken(settings);
    const before = told;
    told = complaints.map((what) => JSON.stringify(what));
    for (const [index, what] of complaints.entries()) if (!before.includes(told[index]!)) complain(what);
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
