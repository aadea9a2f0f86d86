import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { SheetView, SizeRequest } from '../../core/index.ts';
import { type Asked, answersOf, readQuestions } from '../features/archive.ts';
import { updating } from '../syntax/annotated.ts';

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

/** `sheet`, `sheet for 12 pieces`, `sheet for 5000 g dough`, `sheet for 8000 g flour`, `sheet of NAME`. */
function answer(words: string, { service, uri, line }: Asked): string {
  const formula = /^sheet of (.+)$/.exec(words)?.[1];
  const view = service.sheet(uri, line, sizeOf(words), formula);
  return view === undefined ? 'nothing' : tell(view).join('\n');
}

function sizeOf(words: string): SizeRequest {
  const [, count, by] = /^sheet for ([\d.]+) (pieces|g dough|g flour)$/.exec(words) ?? [];
  if (by === 'pieces') return { by, pieces: Number(count) };
  if (by === undefined) return { by: 'file' };
  return { by: by === 'g dough' ? 'dough' : 'flour', grams: Number(count) };
}

function tell(view: SheetView): string[] {
  const out = [`${view.formula}, line ${view.line}, ${view.state}`];
  if (view.heldBy !== undefined) out.push(`held by line ${view.heldBy.line}: ${view.heldBy.message}`);
  if (view.makes.length > 0) out.push(`makes ${view.makes.join(' | ')}`);
  for (const fact of view.facts)
    out.push(
      `${fact.label} ${fact.value}${fact.note ? ` (${fact.note})` : ''}${fact.line === undefined ? '' : ` @${fact.line}`}`,
    );
  const { asked, ...size } = view.size;
  out.push(
    `size by ${asked.by}: ${Object.entries(size)
      .map(([key, value]) => `${key} ${Number(value.toPrecision(8))}`)
      .join(', ')}`,
  );
  for (const block of view.blocks) {
    out.push(
      `[${block.kind}] ${[block.title, block.when, block.note].filter(Boolean).join(' · ')} @${block.line}`,
    );
    for (const row of block.rows) {
      const weigh = row.weigh === undefined ? `? ${row.missing}` : `${row.weigh.figure} ${row.weigh.unit}`;
      const reads = row.scaleReads === undefined ? '' : ` → ${row.scaleReads.figure} ${row.scaleReads.unit}`;
      out.push(
        `  ${row.name} ${weigh}${reads} ${row.percent ?? ''} ${row.note ?? ''} @${row.line}`
          .replace(/ +/g, ' ')
          .replace(/^ /, '  '),
      );
    }
    if (block.total !== undefined) out.push(`  = ${block.total.figure} ${block.total.unit}`);
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
