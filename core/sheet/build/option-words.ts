import type { ToldLimit } from '../../syntax/limits.ts';
import { scanQuantity } from '../../syntax/quantity.ts';
import type { Quantity } from '../../syntax/tree.ts';
import { type Message, message } from '../../words/message.ts';
import type { SheetOptions, SizeRequest } from './sheet-options.ts';

/** What a sheet is asked for in words, each as a baker writes it: `24`, `20 kg`, `bread flour = 12 kg`, `26 °C`, `05:00`. */
export interface AskedWords {
  readonly pieces?: string;
  readonly dough?: string;
  readonly baked?: string;
  readonly flour?: string;
  readonly onHand?: string;
  readonly bowls?: string;
  readonly start?: string;
  readonly ready?: string;
  readonly room?: string;
  readonly flourTemp?: string;
  readonly tap?: string;
  readonly scaleStep?: string;
  readonly mixer?: string;
}

/** The asking, or which of its words cannot be read and what cures it. Amounts are read as in a file. */
export function askedFromWords(
  words: AskedWords,
): { readonly asked: SheetOptions } | { readonly word: keyof AskedWords; readonly cure: Message } {
  try {
    const size = sizeOf(words);
    const clock = clockOf(words);
    const today = {
      ...read(words, 'room', 'roomCelsius', celsius),
      ...read(words, 'flourTemp', 'flourCelsius', celsius),
      ...read(words, 'tap', 'tapCelsius', celsius),
      ...read(words, 'scaleStep', 'scaleStepGrams', grams),
      ...(words.mixer === undefined ? {} : { mixer: words.mixer }),
    };
    return {
      asked: {
        ...(size === undefined ? {} : { size }),
        ...(clock === undefined ? {} : { clock }),
        ...(Object.keys(today).length === 0 ? {} : { today }),
      },
    };
  } catch (problem) {
    if (problem instanceof Unread) return { word: problem.word, cure: problem.cure };
    throw problem;
  }
}

class Unread extends Error {
  readonly word: keyof AskedWords;
  readonly cure: Message;

  constructor(word: keyof AskedWords, cure: Message) {
    super(cure.code);
    this.word = word;
    this.cure = cure;
  }
}

function sizeOf(words: AskedWords): SizeRequest | undefined {
  if (words.pieces !== undefined) return { by: 'pieces', pieces: count('pieces', words.pieces) };
  if (words.bowls !== undefined) return { by: 'bowl', batches: count('bowls', words.bowls) };
  for (const by of ['dough', 'baked', 'flour'] as const)
    if (words[by] !== undefined) return { by, grams: grams(by, words[by]) };
  if (words.onHand === undefined) return undefined;
  const at = words.onHand.lastIndexOf('=');
  const ingredient = words.onHand.slice(0, Math.max(0, at)).trim();
  if (ingredient === '') throw new Unread('onHand', message('asked.write-ingredient'));
  return { by: 'onHand', ingredient, grams: grams('onHand', words.onHand.slice(at + 1)) };
}

function clockOf(words: AskedWords): SheetOptions['clock'] {
  for (const by of ['start', 'ready'] as const) {
    const text = words[by];
    if (text === undefined) continue;
    const quantity = whole(by, text);
    if (quantity?.kind !== 'clock') throw new Unread(by, message('asked.write-clock'));
    return { by, minutes: quantity.minutes };
  }
  return undefined;
}

function read<Key extends string>(
  words: AskedWords,
  word: keyof AskedWords,
  key: Key,
  reader: (word: keyof AskedWords, text: string) => number,
): Partial<Record<Key, number>> {
  const text = words[word];
  return text === undefined ? {} : ({ [key]: reader(word, text) } as Partial<Record<Key, number>>);
}

function count(word: keyof AskedWords, text: string): number {
  const quantity = whole(word, text);
  const value =
    quantity?.kind === 'bare' ? quantity.value : quantity?.kind === 'count' ? quantity.count : Number.NaN;
  if (!Number.isInteger(value) || value < 1) throw new Unread(word, message('asked.write-count'));
  return value;
}

function grams(word: keyof AskedWords, text: string): number {
  const quantity = whole(word, text);
  if (quantity?.kind === 'bare')
    throw new Unread(
      word,
      message('asked.write-unit', { choices: [`${quantity.number} kg`, `${quantity.number} g`] }),
    );
  if (quantity?.kind !== 'mass' || !(quantity.grams > 0))
    throw new Unread(word, message('asked.write-weight'));
  return quantity.grams;
}

function celsius(word: keyof AskedWords, text: string): number {
  const quantity = whole(word, text);
  if (quantity?.kind === 'bare')
    throw new Unread(
      word,
      message('asked.write-unit', { choices: [`${quantity.number} °C`, `${quantity.number} °F`] }),
    );
  if (quantity?.kind !== 'temperature') throw new Unread(word, message('asked.write-temperature'));
  return quantity.celsius;
}

const beyond = ({ least, most }: ToldLimit): Message =>
  least === undefined
    ? message('asked.beyond', { meant: most })
    : message('asked.beyond-both', { meant: least, otherMeant: most });

/** The one quantity that a text is; `undefined` where it is none, or something stands beside it. */
function whole(word: keyof AskedWords, text: string): Quantity | undefined {
  const written = text.trim();
  const quantity = scanQuantity(written, 0, 'yield');
  if (quantity === undefined || quantity.end !== written.length) return undefined;
  if (quantity.kind === 'grouped')
    throw new Unread(word, message('asked.two-readings', { choices: quantity.readings }));
  if (quantity.kind === 'beyond') throw new Unread(word, beyond(quantity.limit));
  return quantity;
}
