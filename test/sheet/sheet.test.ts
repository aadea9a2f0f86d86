import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { SheetOptions, SheetView, SizeRequest } from '../../core/index.ts';
import { type Asked, answersOf, readQuestions } from '../features/archive.ts';
import { updating } from '../updating.ts';

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
  return parts[part as keyof typeof parts](view).join('\n');
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

function tellTimes({ timeline, blocks, steps }: SheetView): string[] {
  return [
    ...timeline.moments.map(
      ({ kind, text, startSeconds, seconds, clock, line }) =>
        `${clock?.words ?? `${startSeconds / 60} min`} [${kind}] ${text}${seconds === undefined ? '' : ` (${seconds / 60} min)`} @${line}`,
    ),
    ...(timeline.readyClock === undefined ? [] : [`ready ${timeline.readyClock.words}`]),
    ...timeline.notes,
    ...blocks.map(({ title, clock }) => `${title}: ${clock?.words ?? 'no clock'}`),
    ...steps.map(({ text, clock }) => `- ${text}: ${clock?.words ?? 'no clock'}`),
  ];
}

function tellProduct({ yields, cost, label }: SheetView): string[] {
  return [
    ...yields.map(
      ({ label: name, value, note, source }) =>
        `${name} ${value}${note === undefined ? '' : ` (${note})`} [${source}]`,
    ),
    ...(cost === undefined
      ? ['no cost']
      : [cost.text, ...cost.rows.map(({ name, value }) => `  ${name} ${value}`)]),
    ...(label === undefined
      ? ['no label']
      : [
          label.ingredients.map(({ text, allergen }) => (allergen ? text.toUpperCase() : text)).join(''),
          ...label.allergens,
          `| ${label.nutrition.heads.join(' | ')}`,
          ...label.nutrition.rows.map(({ name, cells }) => `${name} | ${cells.join(' | ')}`),
          ...label.notes,
        ]),
  ];
}

function tellConditions({ conditions, mixers, size, notDone, tried, findings, water }: SheetView): string[] {
  return [
    tried ? 'tried' : 'as in the file',
    ...conditions.map(
      ({ label, value, source, inFile }) =>
        `${label} ${value} [${source}]${inFile === undefined ? '' : ` file: ${inFile}`}`,
    ),
    `mixers: ${mixers.join(', ')}`,
    `bowl: ${JSON.stringify(size.bowl ?? null)}`,
    `on hand: ${size.ingredients.map(({ name, grams }) => `${name} ${grams.toFixed(0)}`).join(', ')}`,
    ...(water === undefined ? [] : [water.text]),
    ...notDone.map((one) => `not done: ${one}`),
    ...findings.map(({ level, code, line }) => `${level} ${code} @${line}`),
  ];
}

function tell(view: SheetView): string[] {
  const out = [`${view.formula}, line ${view.line}, ${view.state}`];
  if (view.heldBy !== undefined) out.push(`held by line ${view.heldBy.line}: ${view.heldBy.message}`);
  if (view.makes.length > 0) out.push(`makes ${view.makes.join(' | ')}`);
  for (const fact of view.facts)
    out.push(
      `${fact.label} ${fact.value}${fact.note ? ` (${fact.note})` : ''}${fact.line === undefined ? '' : ` @${fact.line}`}`,
    );
  const { asked, bowl, ingredients: _, ...size } = view.size;
  out.push(
    `size by ${asked.by}: ${Object.entries(size)
      .map(([key, value]) => `${key} ${Number(value.toPrecision(8))}`)
      .join(', ')}`,
  );
  for (const one of view.notDone) out.push(`not done: ${one}`);
  if (view.batches.text !== undefined) out.push(view.batches.text);
  for (const block of view.blocks) {
    out.push(
      `[${block.kind}] ${[block.title, block.when, block.note].filter(Boolean).join(' · ')} @${block.line}`,
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
    if (block.total !== undefined)
      out.push(
        `  = ${block.total.figure} ${block.total.unit}${block.totalOfAll === undefined ? '' : ` (all ${block.totalOfAll.figure} ${block.totalOfAll.unit})`}`,
      );
  }
  if (view.water !== undefined)
    out.push(`water ${view.water.text}`, ...view.water.detail.map((one) => `  ${one}`));
  if (view.mixing !== undefined) {
    out.push(
      `mixing in ${view.mixing.mixer}, ${view.mixing.total} @${view.mixing.line}`,
      ...view.mixing.outlook.map((one) => `  ${one}`),
    );
    for (const { label, endMinute, celsius, stage, line } of view.mixing.phases)
      out.push(`  ${label}: at ${endMinute} min ${celsius ?? '?'} ${stage ?? '?'} @${line}`);
  }
  for (const step of view.steps) out.push(`- ${step.text} @${step.line}`);
  for (const caution of view.cautions) out.push(`! ${caution}`);
  return out;
}
