import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { SheetOptions, SizeRequest } from '../../core/index.ts';
import { type Asked, answersOf, readQuestions } from '../features/archive.ts';
import { updating } from '../updating.ts';
import { partsOf } from './parts.ts';

type Sheet = ReturnType<typeof partsOf>;

// Every case of test/fixtures/sheet; `UPDATE=1` writes the answers anew. What the rules find is theirs to test.
const files = readQuestions(join(import.meta.dirname, '..', 'fixtures', 'sheet'));

for (const file of files) {
  const told = answersOf(file, answer);
  describe(file.name, () => {
    file.cases.forEach((one, index) => {
      it(one.title, () => {
        expect(one.questions.length).toBeGreaterThan(0);
        const expected = updating ? told[index] : one.questions.map((question) => question.answer);
        expect(told[index]).toEqual(expected);
      });
    });
  });
}

/**
 * The part of the sheet asked for (`sheet`, `times`, `product`, `conditions`), then after `for` what is tried, between
 * commas: `12 pieces`, `5000 g dough`, `2 bowls`, `900 g of butter`, `room 28`, `step 10`, `mixer spiral`,
 * `ready 11:40`, `start 05:00`. `sheet of NAME` asks by name.
 */
function answer(words: string, { service, uri, line }: Asked): string {
  const formula = /^sheet of (.+)$/.exec(words)?.[1];
  const [, part, tries] = /^(\w+)(?: for (.+))?$/.exec(formula === undefined ? words : 'sheet') ?? [];
  const view = service.sheet(uri, line, askedOf(tries), formula);
  if (view === undefined) return 'nothing';
  const parts = { sheet: tell, times: tellTimes, product: tellProduct, conditions: tellConditions };
  return parts[part as keyof typeof parts](partsOf(view)).join('\n');
}

function askedOf(words: string | undefined): SheetOptions {
  const asked: { -readonly [Key in keyof SheetOptions]: SheetOptions[Key] } = {};
  for (const one of words?.split(/, */) ?? []) {
    const size = sizeOf(one);
    if (size !== undefined) {
      asked.size = size;
      continue;
    }
    const [, key, value] = /^(\w+) (.+)$/.exec(one) ?? [];
    if (key === 'ready' || key === 'start') {
      const [hours, minutes] = value!.split(':').map(Number);
      asked.clock = { by: key, minutes: hours! * 60 + minutes! };
    } else if (key === 'mixer') asked.today = { ...asked.today, mixer: value! };
    else if (key === 'step') asked.today = { ...asked.today, scaleStepGrams: Number(value) };
    else asked.today = { ...asked.today, [`${key}Celsius`]: Number(value) };
  }
  return asked;
}

function sizeOf(words: string): SizeRequest | undefined {
  const [, figure, what] = /^([\d.]+) (.+)$/.exec(words) ?? [];
  const amount = Number(figure);
  switch (what) {
    case 'pieces':
      return { by: 'pieces', pieces: amount };
    case 'bowls':
      return { by: 'bowl', batches: amount };
    case 'g dough':
    case 'g baked':
    case 'g flour':
      return { by: what.slice(2) as 'dough', grams: amount };
    default:
      return what?.startsWith('g of ')
        ? { by: 'onHand', ingredient: what.slice(5), grams: amount }
        : undefined;
  }
}

function tellTimes({ moments, clock, blocks }: Sheet): string[] {
  return [
    ...moments.map(
      ({ of, text, when, seconds, line }) =>
        `${when} [${of}] ${text}${seconds === undefined ? '' : ` (${seconds / 60} min)`} @${line}`,
    ),
    ...(clock?.notes ?? []),
    ...blocks.map(({ title, when }) => [title, ...when].join(': ')),
  ];
}

function tellProduct({ yields, cost, labels }: Sheet): string[] {
  const plain = (one: NonNullable<(typeof labels)[number]['lead']>[number]): string =>
    typeof one === 'string'
      ? one
      : one.map(({ text, strong }) => (strong === true ? text.toUpperCase() : text)).join('');
  return [
    ...yields.map(
      ({ label: name, value, notes, source }) =>
        `${name} ${value}${notes.length === 0 ? '' : ` (${notes.join(', ')})`} [${source}]`,
    ),
    ...(cost === undefined
      ? ['no cost']
      : [
          ...(cost.lead ?? []).map(plain),
          ...cost.rows.map(({ name, cells }) => `  ${name} ${cells.cost!.text}`),
        ]),
    ...(labels.length === 0 ? ['no label'] : []),
    ...labels.flatMap(({ lead = [], columns, rows, notes = [] }) => [
      ...lead.map(plain),
      `| ${columns.map(({ title }) => title).join(' | ')}`,
      ...rows.map(({ name, cells }) => [name, ...columns.map(({ key }) => cells[key]!.text)].join(' | ')),
      ...notes,
    ]),
  ];
}

function answer3({ label, value, verdict, notes, line }: Sheet['glance'][number]): string {
  const told = [`${verdict!.sign} ${value}`, verdict!.word, ...notes].filter((one) => one !== '');
  return `${label}: ${told.join(' · ')}${line === undefined ? '' : ` @${line}`}`;
}

function tellConditions(sheet: Sheet): string[] {
  const { conditions, mixers, size, notDone, tried, findings, glance } = sheet;
  return [
    tried ? 'tried' : 'as in the file',
    ...conditions.map(
      ({ label, value, source, inFile }) =>
        `${label} ${value} [${source}]${inFile === undefined ? '' : ` file: ${inFile}`}`,
    ),
    `mixers: ${mixers.join(', ')}`,
    `bowl: ${JSON.stringify(size.bowl ?? null)}`,
    `on hand: ${size.ingredients.map(({ name, grams }) => `${name} ${grams.toFixed(0)}`).join(', ')}`,
    ...glance.map(answer3),
    ...notDone.map((one) => `not done: ${one}`),
    ...findings.map(({ level, code, line }) => `${level} ${code} @${line}`),
  ];
}

function tell(sheet: Sheet): string[] {
  const out = [`${sheet.formula}, line ${sheet.line}, ${sheet.state}`];
  if (sheet.heldBy !== undefined) out.push(`held by line ${sheet.heldBy.line}: ${sheet.heldBy.message}`);
  if (sheet.makes.length > 0) out.push(`makes ${sheet.makes.join(' | ')}`);
  for (const { label, value, notes, line } of sheet.facts)
    out.push(
      `${label} ${value}${notes.length > 0 ? ` (${notes.join(', ')})` : ''}${line === undefined ? '' : ` @${line}`}`,
    );
  out.push(...sheet.glance.map(answer3));
  const { asked, bowl, ingredients: _, ...size } = sheet.size;
  out.push(
    `size by ${asked.by}: ${Object.entries(size)
      .map(([key, value]) => `${key} ${Number(value.toPrecision(8))}`)
      .join(', ')}`,
  );
  for (const one of sheet.notDone) out.push(`not done: ${one}`);
  if (sheet.batches.text !== undefined) out.push(sheet.batches.text);
  for (const block of sheet.blocks) {
    out.push(
      `[${block.kind}] ${[block.title, ...block.when, block.note].filter(Boolean).join(' · ')} @${block.line}`,
    );
    for (const row of block.rows) {
      const weigh = row.weigh === undefined ? `? ${row.missing}` : `${row.weigh.figure} ${row.weigh.unit}`;
      const all = row.all === undefined ? '' : ` (all ${row.all.figure} ${row.all.unit})`;
      const reads = row.scaleReads === undefined ? '' : ` → ${row.scaleReads.figure} ${row.scaleReads.unit}`;
      out.push(
        `  ${row.name} ${weigh}${all}${reads} ${row.percent ?? ''} ${row.note ?? ''} @${row.line}`
          .replace(/ +/g, ' ')
          .replace(/^ /, '  '),
      );
    }
    const { total, totalOfAll } = block;
    if (total !== undefined)
      out.push(
        `  = ${total.figure} ${total.unit}${totalOfAll === undefined ? '' : ` (all ${totalOfAll.figure} ${totalOfAll.unit})`}`,
      );
  }
  if (sheet.mixing !== undefined) {
    const { when = [], line, notes = [], rows } = sheet.mixing;
    out.push(`mixing, ${when.join(', ')} @${line}`, ...notes.map((one) => `  ${one}`));
    for (const { name, cells, line: at } of rows)
      out.push(
        `  ${name}: at ${cells.until!.minutes} min ${cells.celsius?.text ?? '?'} ${cells.stage?.text ?? '?'} @${at}`,
      );
  }
  for (const step of sheet.steps) out.push(`- ${step.text} @${step.line}`);
  for (const caution of sheet.cautions) out.push(`! ${caution}`);
  return out;
}
