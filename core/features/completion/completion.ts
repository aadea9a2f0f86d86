import { knownAllergens } from '../../calc/product/allergens.ts';
import type { Scope } from '../../model/scope.ts';
import type { Rule } from '../../rules/engine/rule.ts';
import { rules } from '../../rules/engine/rule-catalogue.ts';
import { longestLine } from '../../syntax/line.ts';
import { type Slot, type SlotName, slots } from '../../syntax/line-forms.ts';
import { sectionAt } from '../../syntax/line-place.ts';
import type { Property } from '../../syntax/shared-properties.ts';
import type { Block, Context, SectionKind } from '../../syntax/tree.ts';
import {
  holdsIngredients,
  properties,
  roleWords,
  subSections,
  topSections,
  wordsOfForm,
} from '../../syntax/vocabulary.ts';
import { groupOf } from '../../text/element.ts';
import { message } from '../../words/message.ts';
import type { RulePage } from '../../words/rule-page-words.ts';
import type { Speaker } from '../../words/speaker.ts';
import { settled } from './completion-fit.ts';
import {
  baseNames,
  doughNames,
  droppableNames,
  experimentNames,
  formulaNames,
  ingredients,
  loadItems,
  mixerNames,
  partNames,
  testedDoughs,
} from './completion-names.ts';
import {
  type Asked,
  type LineCompletion,
  lineStart,
  make,
  type PlaceInLine,
  placeAt,
  wordStart,
  wordsBefore,
} from './completion-place.ts';
import { prices } from './completion-prices.ts';
import { seenWords } from './completion-seen.ts';
import { likelySections, likelySteps } from './likely.ts';
import { subSnippets, topSnippets } from './snippets.ts';

/**
 * What may be written at a column of a line, by the form of the line; nothing inside a comment or a note. `found` gives the
 * codes of the findings on a line of the block, `pageOf` what the page of a rule is called.
 */
export function completionsOf(
  block: Block,
  line: number,
  column: number,
  scope: Scope,
  speaker: Speaker,
  found: (line: number) => readonly string[],
  pageOf: (rule: Rule) => RulePage,
): LineCompletion[] {
  const text = block.lines[line]?.text ?? '';
  // Such a line is not read either.
  if (text.length > longestLine) return [];
  const before = text.slice(0, column);
  const asked: Asked = { block, line, text, before, column, scope, speaker };
  return offered(asked, found, pageOf)
    .filter((one) => !isWhole(asked, one))
    .map((one) => settled(asked, one));
}

/** Whether a completion would write no more than what stands there already, but for blanks behind it. */
function isWhole({ before }: Asked, { insert, replace, snippet }: LineCompletion): boolean {
  const written = before.slice(replace.start).trim();
  return snippet !== true && written !== '' && insert.trim().toLowerCase() === written.toLowerCase();
}

function offered(
  asked: Asked,
  found: (line: number) => readonly string[],
  pageOf: (rule: Rule) => RulePage,
): LineCompletion[] {
  const { block, line, text, before, column } = asked;
  const comment = /(?:^|\s)#(.*)$/.exec(before);
  if (comment !== null) return inComment(asked, groupOf(comment, 1), found, pageOf);
  const context = contextAt(block, line);
  if (/^\s*note\s/i.test(before)) return [];
  const amount = /(?:^|\s)(\d+(?:[.,]\d+)?)\s?([^\s\d,]*)$/.exec(before);
  if (amount !== null && context !== 'none') {
    const numberStart = amount.index + amount[0].indexOf(groupOf(amount, 1));
    const units = unitsAfter(asked, context, numberStart, groupOf(amount, 2));
    // Where the number goes on or has its unit, another would be one too many.
    const isWritten =
      amount[2] === '' &&
      (/^[\d.,]*\d/.test(text.slice(column)) ||
        units.some(({ label }) => hasUnit(text.slice(column), label)));
    if (isWritten) return [];
    if (units.length > 0) return [...namesWithNumbers(asked, context), ...units];
  }
  if (/^\s*$/.test(before) || /^\s*[^\s\d"]+$/.test(before)) return atLineStart(asked, context);
  return inLine(asked, context);
}

function contextAt(block: Block, line: number): Context {
  const found = sectionAt(block, line);
  return found === undefined || found.headerLine === line ? 'none' : found.kind;
}

function inComment(
  asked: Asked,
  words: string,
  found: (line: number) => readonly string[],
  pageOf: (rule: Rule) => RulePage,
): LineCompletion[] {
  if (/^\s*accept\s+(?:[a-z0-9-]+\s*,\s*)*[a-z0-9-]*$/.test(words)) {
    const start = asked.before.length - /[a-z0-9-]*$/.exec(asked.before)![0].length;
    // Alone on its line it is about the line below.
    const isAlone = /^\s*#/.test(asked.before);
    const here = new Set(found(asked.line + (isAlone ? 1 : 0)));
    return rules
      .filter((rule) => rule.check !== undefined)
      .map((rule) =>
        make(asked, rule.code, 'rule', {
          start,
          detail: pageOf(rule).title,
          insert: `${rule.code}: `,
          sort: `${here.has(rule.code) ? '0' : '1'}${rule.code}`,
        }),
      );
  }
  if (!/^\s*[a-z]*$/.test(words) || !'accept'.startsWith(words.trim())) return [];
  const start = asked.before.length - words.trimStart().length;
  return [
    make(asked, 'accept', 'word', {
      start,
      detail: asked.speaker.say(message('completion.accept')),
      insert: 'accept ',
    }),
  ];
}

/** The units of what may stand where a number was begun. */
function unitsAfter(asked: Asked, context: Context, numberStart: number, begun: string): LineCompletion[] {
  const { slots: wanted } = placeAt(asked, numberStart);
  const names: readonly SlotName[] =
    wanted.length > 0 ? wanted : holdsIngredients(context) ? ['PERCENT', 'MASS', 'VOLUME', 'PIECES'] : [];
  const longer = /\d\s?(h|min)\s+$/.exec(asked.before.slice(0, numberStart))?.[1];
  const units =
    longer === undefined
      ? [...new Set(names.flatMap((name) => (slots[name] as Slot).units ?? []))]
      : longer === 'h'
        ? ['min']
        : ['s'];
  const start = asked.before.length - begun.length;
  const glued = /\d$/.test(asked.before.slice(0, start));
  return units.map((unit, index) =>
    make(asked, unit, 'unit', {
      start,
      insert: glued && unit !== '%' ? ` ${unit}` : unit,
      sort: String(index).padStart(2, '0'),
    }),
  );
}

/** Names such as `type 550` of which a number is written, where it may also be the amount. */
function namesWithNumbers(asked: Asked, context: Context): LineCompletion[] {
  const written = wordsBefore(asked).toLowerCase();
  if (!/\d/.test(written)) return [];
  const names = holdsIngredients(context)
    ? ingredients(asked, lineStart(asked), true)
    : context === 'plan'
      ? formulaNames(asked)
      : [];
  return names.filter(({ label }) => label.toLowerCase().startsWith(written));
}

function hasUnit(behind: string, unit: string): boolean {
  const text = behind.trimStart();
  return text.startsWith(unit) && !/^\p{L}/u.test(text.slice(unit.length));
}

/** Properties of several words whose first ones are written: `dough`, then a blank. */
function goingOn(asked: Asked, context: Context): LineCompletion[] {
  if (context === 'none' || context === 'unknown') return [];
  const written = wordsBefore(asked).toLowerCase();
  if (!written.includes(' ')) return [];
  return properties[context]
    .filter(({ word }) => word.startsWith(written))
    .map((property) => propertyItem(asked, property));
}

function propertyItem(asked: Asked, { word, example, meaning }: Property): LineCompletion {
  return make(asked, word, 'property', {
    start: lineStart(asked),
    detail: example,
    documentation: asked.speaker.say(meaning),
    insert: `${word} `,
    sort: `2${word}`,
  });
}

function propertyOf(asked: Asked, context: Context): Property | undefined {
  if (context === 'none' || context === 'unknown') return undefined;
  const words = asked.text.trim().toLowerCase();
  return properties[context].find((one) => words === one.word || words.startsWith(`${one.word} `));
}

function atLineStart(asked: Asked, context: Context): LineCompletion[] {
  const found: LineCompletion[] = [];
  const formula = asked.block.top?.kind === 'formula';
  const { say } = asked.speaker;
  const inSection = context !== 'none' && context !== 'unknown';
  if (inSection) {
    for (const property of properties[context as SectionKind]) found.push(propertyItem(asked, property));
    if (holdsIngredients(context)) found.push(...ingredients(asked, lineStart(asked), true));
    if (context === 'process') {
      // Without a blank behind it: a step may end here, and Enter is then to end the line and not to choose from the list.
      for (const [index, word] of likelySteps(asked).entries())
        found.push(
          make(asked, word, 'word', {
            detail: say(message('completion.step')),
            sort: `1${String(index).padStart(2, '0')}`,
          }),
        );
    }
    if (context === 'plan') found.push(...formulaNames(asked));
    if (context === 'trial')
      for (const part of partNames(asked, lineStart(asked)))
        found.push({
          ...part,
          detail: say(message('completion.part-temperature')),
          insert: `${part.label} `,
        });
  }
  for (const word of topSections) found.push(section(asked, word, topSnippets[word]));
  if (!formula) return found;
  const likely = likelySections(asked);
  for (const word of subSections) {
    const item = section(asked, word, subSnippets[word]);
    const sort = likely.get(word);
    found.push(sort === undefined ? item : { ...item, sort });
  }
  return found;
}

function section(asked: Asked, word: string, snippet: string | undefined): LineCompletion {
  return make(asked, word, 'section', {
    start: /^\s*$/.test(asked.before) ? asked.column : lineStart(asked),
    detail: asked.speaker.say(message('completion.section')),
    insert: snippet ?? `${word} `,
    sort: `3${word}`,
    ...(snippet === undefined ? {} : { snippet: true as const }),
  });
}

/** Where the words behind the last `in` or `like` of a line begin. */
function behindLast(word: RegExp, text: string): number | undefined {
  const last = [...text.matchAll(word)].at(-1);
  return last === undefined
    ? undefined
    : text.length - text.slice(last.index + last[0].length).trimStart().length;
}

function inLine(asked: Asked, context: Context): LineCompletion[] {
  const mixer = /^\s*mix\s/i.test(asked.before) ? behindLast(/(?<=\s)in\s/gi, asked.before) : undefined;
  if (mixer !== undefined && context !== 'process')
    return mixerNames(asked, mixer, asked.text.trimEnd().endsWith(':') ? '' : ':');
  const base = /^\s*formula\s/i.test(asked.before) ? behindLast(/(?<=\s)like\s/gi, asked.before) : undefined;
  if (base !== undefined) return baseNames(asked, base, asked.text.trimEnd().endsWith(':') ? '' : ':');
  const place = placeAt(asked, wordStart(asked));
  const words = place.words.map((word) => make(asked, word, 'word'));
  const longer = goingOn(asked, context);
  const property = propertyOf(asked, context);
  if (property === undefined) return [...longer, ...withoutProperty(asked, context, place), ...words];
  if (longer.length > 0) return [...longer, ...exampleOf(asked, property), ...words];
  const allowed = wordsOfForm[property.form];
  if (allowed !== undefined) return allowed.map((word) => make(asked, word, 'word'));
  const from = place.nameStart === undefined ? {} : { start: place.nameStart };
  if (property.form === 'price') return [...exampleOf(asked, property), ...prices(asked)];
  if (property.word === 'default mixer' || property.word === 'mixer')
    return mixerNames(asked, place.nameStart ?? wordStart(asked), '');
  if (property.form === 'mixedIn' && place.slots.includes('MIXER'))
    return mixerNames(asked, place.nameStart ?? wordStart(asked), '');
  if (property.form === 'load') return [...loadItems(asked), ...words.filter(({ label }) => label === 'at')];
  if (property.form === 'testedDough') return testedDoughs(asked);
  if (property.form === 'stock') return ingredients(asked, place.nameStart ?? wordStart(asked), false);
  if (property.word === 'experiment') return experimentNames(asked, place.nameStart ?? wordStart(asked));
  if (property.form === 'reading' || property.form === 'endReading') {
    const seen = seenWords(asked, property.word);
    if (seen.length > 0) return [...exampleOf(asked, property), ...seen];
  }
  if (property.word === 'without') return droppableNames(asked, from);
  if (property.word === 'contains') return knownAllergens.map((word) => make(asked, word, 'word', from));
  if (property.form === 'draws' && place.slots.includes('NAME'))
    return [...roleWords.map((word) => make(asked, word, 'word', from)), ...doughNames(asked, from)];
  if (property.word === 'like') return ingredients(asked, place.nameStart ?? wordStart(asked), false);
  return [...exampleOf(asked, property), ...words];
}

function exampleOf(asked: Asked, { word, example }: Property): LineCompletion[] {
  if (!/\s$/.test(asked.before) || wordsBefore(asked).toLowerCase() !== `${word} `) return [];
  return [
    make(asked, example.slice(word.length + 1), 'word', {
      detail: asked.speaker.say(message('completion.example')),
      sort: '0',
    }),
  ];
}

/** What may stand in a line that no property begins: the rest of a name, an amount, a part. */
function withoutProperty(asked: Asked, context: Context, place: PlaceInLine): LineCompletion[] {
  if (place.slots.includes('PART')) return partNames(asked, place.nameStart ?? wordStart(asked));
  const header = /^\s*(mix|process)\s+([^:]*)$/i.exec(asked.before);
  if (header !== null && asked.block.top?.kind === 'formula' && context !== 'process') {
    const parts = partNames(asked, asked.before.length - groupOf(header, 2).length);
    return groupOf(header, 1).toLowerCase() === 'process'
      ? parts
      : [...['in', 'by hand:'].map((word) => make(asked, word, 'word')), ...parts];
  }
  const isOnlyWords = /^\s*[^\d,]*$/.test(asked.before);
  if (!isOnlyWords) return namesWithNumbers(asked, context);
  if (context === 'plan') return formulaNames(asked);
  if (!holdsIngredients(context)) return [];
  const amounts = place.amounts.map((amount) => make(asked, amount, 'word', { sort: `0${amount}` }));
  const mayGoOn = !/\s{2,}\S*$/.test(asked.before.trimStart());
  return mayGoOn ? [...amounts, ...ingredients(asked, lineStart(asked), true)] : amounts;
}
