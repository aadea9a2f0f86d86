import type { IToken } from 'chevrotain';
import { firstOf, lastOf } from '../text/element.ts';
import { message } from '../words/message.ts';
import { readValue } from './grammar.ts';
import { nameOf } from './name-reading.ts';
import { problem, writeFix } from './problem.ts';
import { readProperty } from './property.ts';
import * as t from './tokens.ts';
import type { LineRead, PropertyStatement, SectionKind } from './tree.ts';
import { findProperty, holdsIngredients } from './vocabulary.ts';

/** A line that other bakers write in other words: how it begins, and what the notation writes in place of that. */
interface OtherWords {
  readonly begins: RegExp;
  readonly meant: string;
}

export const doughTemperature: OtherWords = {
  begins:
    /^(?:ddt|fdt|tdt|dough temp|(?:desired|final|finished|target|wanted) (?:dough )?temp(?:erature)?):?(?= |$)/i,
  meant: 'dough temperature',
};

/** Temperatures of the day, as they are noted beside a thermometer. */
const ofTheDay: readonly OtherWords[] = [
  { begins: /^(?:(?:tap|mains) (?:water )?temp(?:erature)?):?(?= |$)/i, meant: 'tap water' },
  { begins: /^(?:room|air|ambient|kitchen) temp(?:erature)?:?(?= |$)/i, meant: 'room' },
  { begins: /^flour temp(?:erature)?:?(?= |$)/i, meant: 'flour' },
  { begins: /^water temp(?:erature)?:?(?= |$)/i, meant: 'water' },
];

/** What a part takes of the flour of its formula. */
const drawn: OtherWords = {
  begins: /^(?:uses?|using|takes?|contains?|made (?:of|from|with)):?(?= \d)/i,
  meant: 'draws',
};

/** Common practice, no source. */
const otherWords: Partial<Record<SectionKind, readonly OtherWords[]>> = {
  formula: [doughTemperature],
  preferment: [
    doughTemperature,
    drawn,
    {
      begins: /^(?:ripens?|ripe|ripening|mature|prove|proof|rise|stands?|leave|rest)(?: for)?(?= |$)/i,
      meant: 'ferment',
    },
  ],
  soaker: [drawn, { begins: /^(?:stand|leave|rest)(?= |$)/i, meant: 'soak' }],
  scald: [
    drawn,
    { begins: /^(?:keep|stand|leave|rest)(?= |$)/i, meant: 'hold' },
    { begins: /^(?:cook|heat|warm|bring) to(?= |$)/i, meant: 'cook at' },
  ],
  part: [doughTemperature, drawn],
  mix: [
    { begins: /^(?:autoly[sz]e|autolysis|stand|leave|pause|wait)(?= |$)/i, meant: 'rest' },
    { begins: /^(?:slow|low|(?:first|1st|low|slow) speed)(?: for)?(?= |$)/i, meant: 'speed 1 for' },
    { begins: /^(?:fast|high|(?:second|2nd|high|fast) speed)(?: for)?(?= |$)/i, meant: 'speed 2 for' },
    { begins: /^mix (?:on|at|in) speed(?= |$)/i, meant: 'speed' },
    { begins: /^put in(?= |$)/i, meant: 'add' },
  ],
  bakery: [
    ...ofTheDay,
    {
      begins: /^(?:tap|(?:tap|mains|cold|cold tap) water|water(?: temp(?:erature)?)?|mains):?(?= |$)/i,
      meant: 'tap water',
    },
    { begins: /^(?:kitchen|bakery|air|ambient):?(?= |$)/i, meant: 'room' },
    {
      begins: /^(?:fridge|retarder|cold room|cooler|refrigerator)(?: temp(?:erature)?)?:?(?= |$)/i,
      meant: 'cold store',
    },
  ],
  experiment: [
    ...ofTheDay,
    {
      begins:
        /^(?:each|every|all|dough weight|(?:size|weight)(?: of (?:each|a)? ?dough)?|batch size):?(?= |$)/i,
      meant: 'batch',
    },
    { begins: /^(?:tap|tap water):?(?= |$)/i, meant: 'water' },
    { begins: /^(?:formula|variant|bread|recipe):?(?= |$)/i, meant: 'dough' },
    { begins: /^(?:in (?:the )?store|in stock|stock|flour on hand|have):?(?= |$)/i, meant: 'on hand' },
    {
      begins:
        /^(?:(?:read|reading|readings|measure|measured|take|probe|sample|samples)(?: at| after)?|at|after):?(?= |$)/i,
      meant: 'read at',
    },
  ],
  mixer: [{ begins: /^(?:capacity|bowl (?:size|holds|capacity)|holds|takes):?(?= |$)/i, meant: 'bowl' }],
  trial: [
    ...ofTheDay,
    { begins: /^after(?= |$)/i, meant: 'at' },
    {
      begins:
        /^(?:(?:final |finished )?dough(?: temp(?:erature)?)?|(?:desired |final )?temp(?:erature)?|fdt|came)(?: (?:came|comes|went))?(?: (?:out|off|left|ended|finished|was|is))*(?: (?:at|of|with))?:?(?= \d[\d.,]* ?(?:°|deg|C\b|F\b))/i,
      meant: 'end',
    },
    { begins: /^(?:final|finish(?:ed)?)(?: dough)?(?: temp(?:erature)?)?(?= |$)/i, meant: 'end' },
  ],
};

/**
 * Reads a line that says a property in other bakers’ words: as it is meant, with one finding that writes it so. `undefined` where
 * the line would not read as that property, so that no ingredient is taken for one.
 */
export function readSaidOtherwise(
  line: string,
  tokens: readonly IToken[],
  section: SectionKind,
  byHand = false,
): LineRead | undefined {
  const start = firstOf(tokens).startOffset;
  const bare = readWithoutWord(line, tokens, section);
  if (bare !== undefined) return bare;
  for (const { begins, meant } of otherWords[section] ?? []) {
    const found = begins.exec(line.slice(start).replace(/\s/g, ' '));
    // Hands have no speeds.
    if (found === null || (byHand && meant.startsWith('speed'))) continue;
    const end = start + found[0].length;
    const rest = tokens.filter((token) => token.startOffset >= end);
    const [word, ...more] = t.cutLine(meant).meaning;
    const property = findProperty(section, meant) ?? findProperty(section, word!.image);
    if (property === undefined) continue;
    const written = property.word === meant ? '' : `${more.map(({ image }) => image).join(' ')} `;
    const value = written + line.slice(end).trimStart();
    // Names in a value stand where the line has them.
    const turned = property.form === 'heldAt' ? timeFirst(value) : undefined;
    const asMeant = turned ?? value;
    const read =
      written === '' && turned === undefined
        ? readValue(line, rest as IToken[], property.form)
        : readValue(asMeant, t.cutLine(asMeant).meaning, property.form);
    const bare = property.form === 'temperature' && rest.length === 1 ? degreesMeant(rest[0]!) : undefined;
    if (bare !== undefined && meant === doughTemperature.meant) {
      const whole = { start, end: t.endOf(lastOf(rest)) };
      const written = `${meant} ${bare}`;
      const said = message('unknown-property.said-otherwise', {
        section,
        written: line.slice(whole.start, whole.end),
        meant: written,
      });
      const value = readValue(bare, t.cutLine(bare).meaning, 'temperature');
      if ('value' in value)
        return {
          statement: {
            kind: 'property',
            property: property.word,
            keyword: { start, end },
            valueSpan: { start: firstOf(rest).startOffset, end: whole.end },
            value: value.value,
          },
          problems: [problem('unknown-property', said, whole, writeFix(whole, written, true))],
        };
    }
    if (!('value' in read)) {
      // Among ingredients a name may begin so; elsewhere the line is a slip that says what it lacks.
      if (holdsIngredients(section) || written !== '' || rest.length === 0) continue;
      return readProperty(line, tokens, property, tokens.length - rest.length);
    }
    const span = { start, end };
    const last = lastOf(rest);
    const statement: PropertyStatement = {
      kind: 'property',
      property: property.word,
      keyword: span,
      valueSpan: { start: firstOf(rest).startOffset, end: t.endOf(last) },
      value: read.value,
    };
    if (turned !== undefined) {
      const whole = { start, end: t.endOf(last) };
      const said = message('unknown-property.said-otherwise', {
        section,
        written: line.slice(whole.start, whole.end),
        meant: `${meant} ${turned}`,
      });
      const fix = writeFix(whole, `${meant} ${turned}`, true);
      return { statement, problems: [problem('unknown-property', said, whole, fix)] };
    }
    const begun = nameOf(line, tokens.slice(0, tokens.length - rest.length))!.text;
    const said = message('unknown-property.said-otherwise', { section, written: begun, meant });
    return {
      statement,
      problems: [problem('unknown-property', said, span, writeFix(span, meant, true))],
    };
  }
  return undefined;
}

/** Warmer than any dough is in degrees Celsius. */
const warmestDough = 45;

/** `24`, `76`: degrees of a dough without their unit. */
function degreesMeant(token: IToken): string | undefined {
  const quantity = t.quantityOf(token);
  if (quantity?.kind !== 'bare' || quantity.value < 10 || quantity.value > 110) return undefined;
  return `${quantity.number} ${quantity.value <= warmestDough ? '°C' : '°F'}`;
}

/** `at 65 °C for 3 h`, with its time first. */
function timeFirst(value: string): string | undefined {
  const [, warm, time] = /^(?:at\s+)?(\d[\d.,]*\s*°?\s*[CF])\s+(?:for\s+)?(\d.*)$/i.exec(value) ?? [];
  return time === undefined ? undefined : `${time} at ${warm}`;
}

const timeAt = /^\d[\d.,]*\s*(?:h|hours?|hrs?|min|minutes?)\b\s*(?:at|@)/iu;
const shareOf = /^\d[\d.,]*\s*%\s+of\s/iu;

/** What lines that lack their word say: `12 h at 22 °C` of a part, `35% of the rye`. */
const wordless: Partial<Record<SectionKind, readonly (readonly [begins: RegExp, word: string])[]>> = {
  preferment: [
    [timeAt, 'ferment'],
    [shareOf, 'draws'],
  ],
  soaker: [
    [timeAt, 'soak'],
    [shareOf, 'draws'],
  ],
  scald: [[shareOf, 'draws']],
};

/** Reads a line that is a property but for its word, where it is nothing else. */
function readWithoutWord(
  line: string,
  tokens: readonly IToken[],
  section: SectionKind,
): LineRead | undefined {
  const start = firstOf(tokens).startOffset;
  const span = { start, end: t.endOf(lastOf(tokens)) };
  const text = line.slice(span.start, span.end);
  const word = wordless[section]?.find(([begins]) => begins.test(text))?.[1];
  const property = word === undefined ? undefined : findProperty(section, word);
  if (property === undefined) return undefined;
  const read = readValue(line, tokens as IToken[], property.form);
  if (!('value' in read)) return undefined;
  const meant = `${property.word} ${text}`;
  const said = message('unknown-property.said-otherwise', { section, written: text, meant });
  return {
    statement: {
      kind: 'property',
      property: property.word,
      keyword: { start, end: start },
      valueSpan: span,
      value: read.value,
    },
    problems: [problem('unknown-property', said, span, writeFix(span, meant, true))],
  };
}
