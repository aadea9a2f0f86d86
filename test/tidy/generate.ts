import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { actions } from '../../core/features/actions/action-catalogue.ts';
import { actionsPage } from '../../core/features/actions/action-page.ts';
import { rules } from '../../core/index.ts';
import { allStepWords } from '../../core/syntax/known-step.ts';
import { limits, mostMoney } from '../../core/syntax/limits.ts';
import { patternsOfForm } from '../../core/syntax/line-forms.ts';
import type { Measure } from '../../core/syntax/units.ts';
import { units } from '../../core/syntax/units.ts';
import {
  holdsIngredients,
  properties,
  sectionWords,
  stepWords,
  topSections,
} from '../../core/syntax/vocabulary.ts';
import { rulePages as germanPages } from '../../core/words/de/rule-pages.ts';
import { plainSpeaker } from '../../core/words/speak.ts';
import { addressFields, packerFields, publish } from '../../server/build/publish.ts';
import { kindOf } from '../../server/requests/actions.ts';
import { type Setting, settingsTable } from '../../server/sync/settings-table.ts';
import { canonicalPages } from './canonical-pages.ts';
import { libraryPage } from './library-page.ts';
import { treeSitterDescription, treeSitterGrammar } from './tree-sitter.ts';

/** What is generated from the vocabulary and the table of rules: `node test/tidy/generate.ts` writes it, a test compares. */
const project = fileURLToPath(new URL('../..', import.meta.url));
const read = (name: string): string => readFileSync(join(project, name), 'utf8');

/** Every generated file with the text it should have. */
export function generated(): ReadonlyMap<string, string> {
  return new Map([
    ['syntaxes/doughwright.tmLanguage.json', textMateGrammar()],
    ['syntaxes/vim/syntax/doughwright.vim', vimSyntax()],
    ['syntaxes/tree-sitter/grammar.js', treeSitterGrammar(read('syntaxes/tree-sitter/grammar.js'))],
    [
      'syntaxes/tree-sitter/tree-sitter.json',
      treeSitterDescription(read('syntaxes/tree-sitter/tree-sitter.json'), read('package.json')),
    ],
    ['package.json', manifest()],
    ['package.nls.json', manifestWords('package.nls.json', englishSettings(), (rule) => rule.title)],
    ['package.nls.de.json', manifestWords('package.nls.de.json', {}, ({ code }) => germanPages[code]!.title)],
    ['docs/guide/reference.md', reference()],
    ['docs/guide/actions.md', actionsPage(actions, kindOf)],
    ['docs/library.md', libraryPage()],
    ...canonicalPages(project, read),
    ['docs/guide/settings.md', settingsPage(read('docs/guide/settings.md'))],
  ]);
}

function alternation(words: Iterable<string>): string {
  return [...new Set(words)]
    .sort((one, other) => other.length - one.length || (one < other ? -1 : 1))
    .map((word) => word.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&').replace(/ /g, '[ \\t]+'))
    .join('|');
}

function textMateGrammar(): string {
  const written = new Set(['mix', 'process', 'trial']);
  const wordsOf = (dough: boolean): string[] =>
    sectionWords
      .filter((section) => holdsIngredients(section) === dough)
      .flatMap((section) => properties[section].map((one) => one.word))
      .filter((word) => word !== 'note');
  const parts = sectionWords.filter(
    (word) => !(topSections as readonly string[]).includes(word) && !written.has(word),
  );
  const fill: Record<string, string> = {
    TOP_SECTIONS: alternation(topSections),
    PART_SECTIONS: alternation(parts),
    DOUGH_PROPERTIES: alternation(wordsOf(true)),
    PROPERTIES: alternation(wordsOf(false)),
    STEPS: alternation(stepWords),
    UNITS: alternation(units.keys()),
  };
  const filled = (value: unknown): unknown => {
    if (typeof value === 'string')
      return value.replace(/%([A-Z_]+)%/g, (whole, name: string) => fill[name] ?? whole);
    if (Array.isArray(value)) return value.map(filled);
    if (value !== null && typeof value === 'object') {
      return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, filled(inner)]));
    }
    return value;
  };
  const template = JSON.parse(read('syntaxes/doughwright.tmLanguage.template.json')) as Record<
    string,
    unknown
  >;
  const { information_for_contributors: _notes, ...grammar } = template;
  const note = [
    'Generated from doughwright.tmLanguage.template.json and the vocabulary; npm run generate writes it anew.',
  ];
  return `${JSON.stringify({ information_for_contributors: note, ...(filled(grammar) as object) }, null, 2)}\n`;
}

/** The colours of Vim, line by line as the notation is: what a line begins with says what it is. */
function vimSyntax(): string {
  // Of Vim's own patterns, very magic: letters stand for themselves, and a blank of a word for any blanks.
  const any = (words: Iterable<string>): string =>
    [...new Set(words)]
      .sort((one, other) => other.length - one.length || (one < other ? -1 : 1))
      .map((word) => word.replace(/[%@{}()|<>=+*?~&/.\\^$[\]]/g, '\\$&').replace(/ /g, '\\s+'))
      .join('|');
  const words = sectionWords.flatMap((section) => properties[section].map((one) => one.word));
  return String.raw`" Colours of bread formulas in Vim and Neovim.
" Generated from the vocabulary; npm run generate writes it anew.
if exists('b:current_syntax')
  finish
endif
syntax case ignore
syntax match doughwrightComment /#.*$/
syntax match doughwrightNumber /\v<\d+%([.,]\d+)*>/
syntax match doughwrightUnit /\v\d\s*\zs%(${any(units.keys())})%(\a)@!/
syntax match doughwrightProperty /\v^\s+%(${any(words)})%(\k)@!/
syntax match doughwrightStep /\v^\s+%(${any(allStepWords)})%(\k)@!/
syntax match doughwrightSection /\v^\s*%(${any(sectionWords)})%(\k)@!\ze[^#]*:\s*%(#.*)?$/ nextgroup=doughwrightName
syntax match doughwrightName /\v[^:#]+/ contained
highlight default link doughwrightComment Comment
highlight default link doughwrightNumber Number
highlight default link doughwrightUnit Type
highlight default link doughwrightProperty Identifier
highlight default link doughwrightStep Statement
highlight default link doughwrightSection Keyword
highlight default link doughwrightName Title
let b:current_syntax = 'doughwright'
`;
}

function manifest(): string {
  const json = JSON.parse(read('package.json')) as {
    contributes: {
      configuration: { properties: Record<string, { properties?: Record<string, unknown> }> }[];
    };
  };
  json.contributes.configuration[0]!.properties = settingsSchema();
  for (const group of json.contributes.configuration) {
    const setting = group.properties['doughwright.rules'];
    if (setting === undefined) continue;
    setting.properties = Object.fromEntries(
      [...rules]
        .sort((one, other) => (one.code < other.code ? -1 : 1))
        .map((rule) => [
          rule.code,
          {
            type: 'string',
            enum: ['off', 'error', 'warning', 'info', 'hint'],
            default: rule.level,
            description: `%rule.${rule.code}%`,
          },
        ]),
    );
  }
  return `${JSON.stringify(withAddresses(json), null, 2)}\n`;
}

/** The manifest with what `publish` says of places, behind its licence; nothing is kept that it does not say. */
function withAddresses(manifest: object): object {
  const own = Object.entries(manifest).filter(
    ([key]) => !['repository', 'bugs', 'homepage', 'vsce'].includes(key),
  );
  const behind = own.findIndex(([key]) => key === 'license') + 1;
  const added = Object.entries({ ...addressFields(publish), vsce: packerFields(publish) });
  return Object.fromEntries([...own.slice(0, behind), ...added, ...own.slice(behind)]);
}

function settingsSchema(): Record<string, object> {
  return Object.fromEntries(
    (settingsTable as readonly Setting[]).map((setting) => [
      `doughwright.${setting.key}`,
      { ...schemaOf(setting), default: setting.default, markdownDescription: `%setting.${setting.key}%` },
    ]),
  );
}

function schemaOf(setting: Setting): object {
  switch (setting.type) {
    case 'switch':
      return { type: 'boolean' };
    case 'choice':
      return {
        type: 'string',
        ...(setting.scope && { scope: setting.scope }),
        enum: setting.choices,
        ...(setting.choiceMeanings && {
          enumDescriptions: setting.choices.map((choice) => `%setting.${setting.key}.${choice}%`),
        }),
      };
    case 'celsius':
      return { type: ['number', 'null'], minimum: setting.least, maximum: setting.most };
    case 'count':
      return { type: 'integer', minimum: 1 };
  }
}

/**
 * The words of the manifest in a language: those of its own, which are written there, those of the settings where they are
 * made from the table, and the titles of the rules.
 */
function manifestWords(
  name: string,
  settings: Readonly<Record<string, string>>,
  title: (rule: (typeof rules)[number]) => string,
): string {
  const there = Object.entries(JSON.parse(read(name)) as Record<string, string>);
  const own = there.filter(([key]) => !key.startsWith('rule.') && !(key in settings));
  const kept = Object.keys(settings).length === 0 ? own : own.filter(([key]) => !key.startsWith('setting.'));
  const titles = [...rules]
    .sort((one, other) => (one.code < other.code ? -1 : 1))
    .map((rule) => [`rule.${rule.code}`, `${title(rule)}.`]);
  return `${JSON.stringify(Object.fromEntries([...kept, ...Object.entries(settings), ...titles]), null, 2)}\n`;
}

/** What the settings and their choices do, by the keys that the manifest has for them. */
function englishSettings(): Record<string, string> {
  return Object.fromEntries(
    (settingsTable as readonly Setting[]).flatMap((setting) => [
      [`setting.${setting.key}`, setting.meaning],
      ...(setting.type === 'choice' && setting.choiceMeanings
        ? setting.choices.map((choice, index) => [
            `setting.${setting.key}.${choice}`,
            setting.choiceMeanings![index]!,
          ])
        : []),
    ]),
  );
}

/** The guide's page of settings: its own words, and the table in them made anew. */
function settingsPage(page: string): string {
  const rows = (settingsTable as readonly Setting[]).map((setting) => {
    const values =
      setting.type === 'choice'
        ? setting.choices.map((one) => `\`${one}\``).join(', ')
        : valueWords[setting.type];
    const meaning = setting.meaning.replace(/`#([^#]+)#`/g, '`$1`');
    return `| \`doughwright.${setting.key}\` | ${values} | \`${JSON.stringify(setting.default)}\` | ${meaning} |`;
  });
  const table = ['| setting | values | default | what it does |', '| --- | --- | --- | --- |', ...rows].join(
    '\n',
  );
  return page.replace(/\| setting \|[\s\S]*?\n(?=\n)/, `${table}\n`);
}

const valueWords = { switch: '`true`, `false`', celsius: 'degrees Celsius, `null`', count: 'a whole number' };

function reference(): string {
  const lines = [
    '# Reference of sections and properties',
    '',
    'What each section may say, and how a line of it reads. A star marks what may be said more than once. In the forms capitals',
    'stand for what you fill in, and brackets hold what may be left out. Made from the vocabulary itself.',
  ];
  for (const section of sectionWords) {
    lines.push('', `## ${section}`, '');
    if (holdsIngredients(section)) lines.push('Holds ingredient lines, and:', '');
    lines.push('| property | reads like | forms | meaning |', '| --- | --- | --- | --- |');
    for (const one of properties[section]) {
      const forms =
        one.word === 'note' ? '' : patternsOfForm[one.form].map((form) => `\`${form}\``).join('<br>');
      lines.push(
        `| ${one.word}${one.repeatable ? ' *' : ''} | \`${one.example}\` | ${forms} | ${plainSpeaker.say(one.meaning)} |`,
      );
    }
  }
  lines.push(
    '',
    '## Limits',
    '',
    'A number beyond what a bakery can mean is a slip: it is told on its place, and nothing is worked out from it. A price is at',
    `most ${mostMoney.told.most}.`,
    '',
    '| kind | from | to |',
    '| --- | --- | --- |',
    ...Object.entries(limits).map(
      ([measure, { told }]) => `| ${measureWords[measure as Measure]} | ${told.least ?? ''} | ${told.most} |`,
    ),
  );
  return `${lines.join('\n')}\n`;
}

const measureWords: Readonly<Record<Measure, string>> = {
  mass: 'mass',
  volume: 'volume',
  duration: 'time',
  temperature: 'temperature',
  turns: 'turns',
  fraction: 'share',
  count: 'count',
  times: 'factor',
  energy: 'energy',
  warming: 'warming',
  density: 'density',
};

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const [name, text] of generated()) writeFileSync(join(project, name), text);
}
