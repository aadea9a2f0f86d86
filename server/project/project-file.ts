import { getNodeValue, type Node, type ParseError, parseTree } from 'jsonc-parser';
import { type Level, type Message, message } from '../../core/index.ts';
import { isFitting, misfit, type Setting, settingsTable } from '../sync/settings-table.ts';
import { noProject, type ProjectSettings } from './project-settings.ts';

/** What is wrong with a line of the file; lines and columns count from zero. */
export interface ProjectFinding {
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly message: Message;
}

export interface Project {
  readonly settings: ProjectSettings;
  readonly findings: readonly ProjectFinding[];
}

/** The settings of the table that a project may decide; those of the look of one editor are its reader's alone. */
const ownKeys = [
  ...['language', 'units.mass', 'units.temperature', 'decimalSign'],
  ...['usual.roomCelsius', 'usual.flourCelsius', 'usual.tapCelsius', 'label.regime'],
] as const;
/** Values that only an editor can mean. */
const ofEditor: Readonly<Record<string, string>> = { language: 'editor', 'label.regime': 'bakery' };
export const projectLevels = ['off', 'error', 'warning', 'info', 'hint'] as const;

/** The settings that a project file may hold, by the names that the editor has for them. */
export function projectSettingRows(): readonly Setting[] {
  return (settingsTable as readonly Setting[])
    .filter(({ key }) => (ownKeys as readonly string[]).includes(key))
    .map((row) =>
      row.type === 'choice'
        ? { ...row, choices: row.choices.filter((one) => one !== ofEditor[row.key]) }
        : row,
    );
}

/**
 * Reads a project file: JSON, in which comments and a comma too many do no harm. What makes no sense is left out and told,
 * one finding a line; of a file that is no JSON nothing holds. `codes` are those of the rules.
 */
export function readProject(text: string, codes: ReadonlySet<string>): Project {
  const errors: ParseError[] = [];
  const root = parseTree(text, errors, { allowTrailingComma: true });
  const places = new Places(text);
  const first = errors[0];
  if (first !== undefined || root?.type !== 'object') {
    const at = first?.offset ?? root?.offset ?? 0;
    return {
      settings: noProject,
      findings: [{ ...places.of(at, first?.length ?? 1), message: message('project.not-json') }],
    };
  }
  const reader = new Reader(places, codes);
  reader.section('', root);
  return { settings: reader.settings(), findings: oneForEachLine(reader.findings) };
}

/** Reads the members, section by section, and remembers what is wrong. */
class Reader {
  readonly findings: ProjectFinding[] = [];
  readonly #places: Places;
  readonly #codes: ReadonlySet<string>;
  readonly #rows = new Map(projectSettingRows().map((row) => [row.key, row]));
  readonly #values = new Map<string, unknown>();
  readonly #rules: Record<string, Level | 'off'> = {};

  constructor(places: Places, codes: ReadonlySet<string>) {
    this.#places = places;
    this.#codes = codes;
  }

  settings(): ProjectSettings {
    const value = <T>(key: string): T | undefined => this.#values.get(key) as T | undefined;
    const present = <K extends string>(key: K, from: string) =>
      (this.#values.has(from) ? { [key]: value(from) } : {}) as { [P in K]?: never };
    return {
      rules: this.#rules,
      usual: {
        ...present('roomCelsius', 'usual.roomCelsius'),
        ...present('flourCelsius', 'usual.flourCelsius'),
        ...present('tapCelsius', 'usual.tapCelsius'),
        ...present('label', 'label.regime'),
      },
      ...present('language', 'language'),
      ...present('mass', 'units.mass'),
      ...present('temperature', 'units.temperature'),
      ...present('decimalSign', 'decimalSign'),
    };
  }

  /** The members of an object; `prefix` is the way to it, with a point behind. */
  section(prefix: string, { children = [] }: Node): void {
    const met = new Set<string>();
    for (const { children: [name, value] = [] } of children) {
      if (name === undefined || value === undefined) continue;
      const key = `${prefix}${String(name.value)}`;
      if (met.has(key)) this.#tell(name, message('project.twice', { setting: key }));
      else this.#member(key, name, value);
      met.add(key);
    }
  }

  #member(key: string, name: Node, value: Node): void {
    // What an editor looks up the members by.
    if (key === '$schema') return;
    const inside = `${key}.`;
    const isSection = key === 'rules' || [...this.#rows.keys()].some((one) => one.startsWith(inside));
    if (isSection) {
      if (value.type === 'object') this.section(inside, value);
      else this.#tell(value, message('project.no-section', { setting: key }));
      return;
    }
    if (key.startsWith('rules.')) {
      this.#rule(key.slice('rules.'.length), name, value);
      return;
    }
    const row = this.#rows.get(key);
    if (row === undefined) {
      const names = ['rules', ...this.#rows.keys()];
      this.#tell(name, message('project.no-setting', { setting: key, names }));
      return;
    }
    const given: unknown = getNodeValue(value);
    if (given !== null && isFitting(row, given)) this.#values.set(key, given);
    else this.#tell(value, misfit(row, JSON.stringify(given), key));
  }

  #rule(code: string, name: Node, value: Node): void {
    if (!this.#codes.has(code)) {
      this.#tell(name, message('command-check.no-rule', { code }));
      return;
    }
    const given: unknown = getNodeValue(value);
    const level = projectLevels.find((one) => one === given);
    if (level !== undefined) this.#rules[code] = level;
    else
      this.#tell(
        value,
        message('session.no-level', {
          ...{ setting: 'rules', code, written: JSON.stringify(given) },
          choices: [...projectLevels],
        }),
      );
  }

  #tell({ offset, length }: Node, what: Message): void {
    this.findings.push({ ...this.#places.of(offset, length), message: what });
  }
}

function oneForEachLine(findings: readonly ProjectFinding[]): ProjectFinding[] {
  const lines = new Set<number>();
  return findings.filter(({ line }) => !lines.has(line) && lines.add(line));
}

/** Lines and columns of a text by offset. */
class Places {
  readonly #text: string;

  constructor(text: string) {
    this.#text = text;
  }

  /** A stretch as it stands in its first line. */
  of(
    offset: number,
    length: number,
  ): { readonly line: number; readonly start: number; readonly end: number } {
    const before = this.#text.slice(0, offset);
    const start = offset - (before.lastIndexOf('\n') + 1);
    const rest = this.#text.slice(offset).search(/\r?\n|$/);
    return { line: before.split('\n').length - 1, start, end: start + Math.max(0, Math.min(length, rest)) };
  }
}
