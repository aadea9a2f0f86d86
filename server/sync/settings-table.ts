import type { Message } from '../../core/index.ts';
import { said } from './said.ts';

/**
 * The settings under `doughwright`, the levels of the rules aside: the manifest, the guide and what the server accepts are
 * made from here.
 */

interface Named {
  /** Without `doughwright.` in front. */
  readonly key: string;
  /** Markdown. */
  readonly meaning: string;
}

export type Setting = Named &
  (
    | { readonly type: 'switch'; readonly default: boolean }
    | {
        readonly type: 'choice';
        readonly default: string;
        readonly choices: readonly string[];
        readonly choiceMeanings?: readonly string[];
        /** Of the editor alone; the server is told nothing of it. */
        readonly scope?: 'window';
      }
    /** Degrees Celsius; `null` where nobody sets it. */
    | { readonly type: 'celsius'; readonly default: null; readonly least: number; readonly most: number }
    | { readonly type: 'count'; readonly default: number }
  );

const hint = <K extends string>(key: K, meaning: string) => ({
  key: `inlayHints.${key}` as const,
  ...{ type: 'switch' as const, default: true, meaning },
});
const celsius = <K extends string>(key: K, least: number, most: number, meaning: string) => ({
  key: `usual.${key}` as const,
  ...{ type: 'celsius' as const, default: null, least, most, meaning },
});

export const settingsTable = [
  {
    key: 'language',
    type: 'choice',
    default: 'editor',
    choices: ['editor', 'en', 'de', 'fr'],
    choiceMeanings: [
      'That of the editor, where it is one of these, else English.',
      'English',
      'Deutsch',
      'Français',
    ],
    meaning:
      'The language of findings, hovers, totals, the batch sheet and other answers; what French does not have yet is English. The notation is the same in every language.',
  },
  {
    key: 'units.mass',
    type: 'choice',
    default: 'grams',
    choices: ['grams', 'ounces'],
    choiceMeanings: ['Grams and kilograms.', 'Ounces and pounds.'],
    meaning: 'The units in which weights are shown. Files stay as they are written.',
  },
  {
    key: 'units.temperature',
    type: 'choice',
    default: 'celsius',
    choices: ['celsius', 'fahrenheit'],
    choiceMeanings: ['°C', '°F'],
    meaning: 'The unit in which temperatures are shown. Files stay as they are written.',
  },
  {
    key: 'decimalSign',
    type: 'choice',
    default: 'language',
    choices: ['language', 'point', 'comma'],
    choiceMeanings: ['That of the language: a comma in German and French, a point in English.', '1.5', '1,5'],
    meaning:
      'The decimal sign of figures that are shown. Files may hold either, and stay as they are written.',
  },
  celsius(
    'roomCelsius',
    -20,
    60,
    'The room, in °C, where no `bakery` section says it; without either a mild day is taken.',
  ),
  celsius(
    'flourCelsius',
    -20,
    60,
    'The flour, in °C, where no `bakery` section says it; without either it is as warm as the room.',
  ),
  celsius(
    'tapCelsius',
    0,
    60,
    'Water from the tap, in °C, where no `bakery` section says it; without either no ice is worked out.',
  ),
  {
    key: 'label.regime',
    type: 'choice',
    default: 'bakery',
    choices: ['bakery', 'EU', 'US', 'both'],
    choiceMeanings: [
      'As the bakery section says, else as for the EU, with a remark.',
      'Regulation (EU) 1169/2011.',
      '21 CFR 101 of the United States.',
      'One draft in each manner on the batch sheet.',
    ],
    meaning: 'Whose rules the draft of a label follows where no `bakery` section says it.',
  },
  {
    key: 'sheet.scaleReading',
    type: 'switch',
    default: true,
    meaning:
      'Show on the batch sheet, beside each weight, what one scale reads after it. The panel has a switch for it too.',
  },
  {
    key: 'inlayHints.enabled',
    type: 'switch',
    default: true,
    meaning:
      'Show percent, grams and totals at the ends of lines. The editor’s own `#editor.inlayHints.enabled#` must be on too.',
  },
  hint('amounts', 'Among them: what an ingredient line does not say itself, grams or percent.'),
  hint('totals', 'Among them: hydration and weight on the header of a formula.'),
  hint('parts', 'Among them: hydration and weight on the header of a preferment, soaker or other part.'),
  hint(
    'mixing',
    'Among them: minutes, temperature and stage of the dough on each line of a mixing programme.',
  ),
  {
    key: 'codeLens.enabled',
    type: 'switch',
    default: true,
    meaning:
      'Show the totals above each formula, and who uses it above each definition. The editor’s own `#editor.codeLens#` must be on too.',
  },
  {
    key: 'maxFindings',
    type: 'count',
    default: 200,
    meaning: 'The most findings of one file that are shown; the rest is counted in one last finding.',
  },
  {
    key: 'trace.server',
    type: 'choice',
    default: 'off',
    choices: ['off', 'messages', 'verbose'],
    scope: 'window',
    meaning: 'What the log records of the talk between editor and language server.',
  },
] as const satisfies readonly Setting[];

export type SettingKey = (typeof settingsTable)[number]['key'];

/** What was set, by key: the value given, else the default. */
export type SettingValues = {
  readonly [S in (typeof settingsTable)[number] as S['key']]: S extends {
    readonly choices: readonly (infer Choice)[];
  }
    ? Choice
    : S extends { readonly type: 'celsius' }
      ? number | null
      : S extends { readonly type: 'count' }
        ? number
        : boolean;
};

/**
 * Reads what a client has set, as an object of objects. What makes no sense keeps its default and is told to `complain`,
 * so that one slip does not undo the rest.
 */
export function settingValues(settings: unknown, complain: (what: Message) => void): SettingValues {
  const values: Record<string, unknown> = {};
  for (const setting of settingsTable as readonly Setting[]) {
    const given = valueAt(settings, setting.key);
    const isAbsent = given === undefined || given === null;
    const fits = isAbsent || isFitting(setting, given);
    if (!fits) complain(misfit(setting, JSON.stringify(given)));
    values[setting.key] = isAbsent || !fits ? setting.default : given;
  }
  return values as SettingValues;
}

/** Whether a value is one that a setting takes. */
export function isFitting(setting: Setting, given: unknown): boolean {
  switch (setting.type) {
    case 'switch':
      return typeof given === 'boolean';
    case 'choice':
      return typeof given === 'string' && setting.choices.includes(given);
    case 'celsius':
      return typeof given === 'number' && given >= setting.least && given <= setting.most;
    case 'count':
      return typeof given === 'number' && Number.isInteger(given) && given > 0;
  }
}

/** What a setting takes instead of a value that it does not; `name` is how the setting is called where it stands. */
export function misfit(setting: Setting, written: string, name = `doughwright.${setting.key}`): Message {
  const facts = { setting: name, written };
  switch (setting.type) {
    case 'switch':
      return said('session.no-switch', facts);
    case 'choice':
      return said('session.no-choice', { ...facts, choices: setting.choices });
    case 'celsius':
      return said('session.no-celsius', {
        ...facts,
        leastNumber: setting.least,
        mostNumber: setting.most,
      });
    case 'count':
      return said('session.no-count', facts);
  }
}

/** `units.mass` in `{ units: { mass } }`; some clients send it flat. */
function valueAt(settings: unknown, key: string): unknown {
  const within = (value: unknown, name: string): unknown =>
    typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[name] : undefined;
  return key.split('.').reduce(within, settings) ?? within(settings, key);
}
