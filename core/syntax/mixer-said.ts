import type { IToken } from 'chevrotain';
import { firstOf, groupOf, lastOf } from '../text/element.ts';
import { foldName } from '../text/names.ts';
import { message } from '../words/message.ts';
import { problem, writeFix } from './problem.ts';
import { readPlainProperty } from './property.ts';
import * as t from './tokens.ts';
import type { LineRead, PropertyStatement } from './tree.ts';
import { mixerKinds } from './word-lists.ts';

/** What bakers call the kinds of mixers. Common practice, no source. */
const otherKinds: Readonly<Record<string, (typeof mixerKinds)[number]>> = {
  stand: 'planetary',
  kitchen: 'planetary',
  bowl: 'planetary',
  'twin-arm': 'twin arm',
  'double arm': 'twin arm',
  'diving arm': 'twin arm',
  'by hand': 'hand',
  hands: 'hand',
};
const kindLine = /^(?:kind|type|mixer type|model)[\s:=]+(\S.*)$/i;
const mixerBehind = /[\s-]mixer$/i;
const rpm = String.raw`(?:rpm|r\/min|turns|u\/min)`;
/** `speeds 120, 240 rpm`: those of the first, of the second and so on. */
const speedsLine = new RegExp(
  String.raw`^(?:speeds|rpm|turns)\s*[:=]?\s*(\d+(?:\s*${rpm})?(?:\s*(?:,|\/|;|and|&|\+)\s*\d+(?:\s*${rpm})?)+)$`,
  'i',
);
const ordinals = 'first|second|third'.split('|');
/** `first speed 100 rpm`, `speed 1: 100 rpm`, `slow 100 rpm`. */
const speedLine = new RegExp(
  String.raw`^(?:speed\s*(\d)(?!\d)|(${ordinals.join('|')}|1st|2nd|3rd|slow|low|fast|high)(?:\s+speed|\s+gear)?)\s*[:=]?\s*(?:at\s+)?(\d+)\s*${rpm}$`,
  'i',
);
const numberOfWord: Readonly<Record<string, number>> = {
  first: 1,
  '1st': 1,
  slow: 1,
  low: 1,
  second: 2,
  '2nd': 2,
  fast: 2,
  high: 2,
  third: 3,
  '3rd': 3,
};

/** Reads a line of a mixer in other words, `type spiral`, `speeds 120, 240 rpm`, as it is meant, with the fix that writes it. */
export function readMixerSaid(line: string, tokens: readonly IToken[]): LineRead | undefined {
  const span = { start: firstOf(tokens).startOffset, end: t.endOf(lastOf(tokens)) };
  const text = line.slice(span.start, span.end);
  const meant = kindMeant(text) ?? speedsMeant(text);
  if (meant === undefined || meant.join('\n') === text) return undefined;
  const statements = meant.map((one) => readPlainProperty(one, 'mixer'));
  if (statements.some((one) => one === undefined)) return undefined;
  const [statement, ...further] = (statements as PropertyStatement[]).map((one) => ({
    ...one,
    keyword: span,
    valueSpan: span,
  }));
  if (statement === undefined) return undefined;
  const indent = line.slice(0, span.start).trim() === '' ? line.slice(0, span.start) : '  ';
  const said = message('unknown-property.said-otherwise', {
    section: 'mixer',
    written: text,
    meant: meant.join(', '),
  });
  const fix = {
    ...writeFix(span, meant.join(`\n${indent}`), true),
    title: message('fix.write', { meant: meant.join(', ') }),
  };
  return {
    statement,
    problems: [problem('unknown-property', said, span, fix)],
    ...(further.length === 0 ? {} : { further }),
  };
}

function kindMeant(text: string): string[] | undefined {
  const word = foldName((kindLine.exec(text)?.[1] ?? '').replace(mixerBehind, ''));
  const kind =
    mixerKinds.find((one) => one === word) ??
    (Object.hasOwn(otherKinds, word) ? otherKinds[word] : undefined);
  return kind === undefined ? undefined : [`kind ${kind}`];
}

function speedsMeant(text: string): string[] | undefined {
  const list = speedsLine.exec(text);
  if (list !== null)
    return [...groupOf(list, 1).matchAll(/\d+/g)].map(([turns], index) => `speed ${index + 1} ${turns} rpm`);
  const one = speedLine.exec(text);
  if (one === null) return undefined;
  const [, figure, word = '', turns] = one;
  return [`speed ${figure ?? numberOfWord[word.toLowerCase()]} ${turns} rpm`];
}
