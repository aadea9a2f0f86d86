import { setTimeout as after } from 'node:timers/promises';
import { Dice } from '../server/dice.ts';
import { formulaText, keystrokes } from './formulas.ts';
import { Session } from './session.ts';

/**
 * Measures what the bundled language server holds beside a bare one, in the same run, and prints a table: a thousand documents
 * opened one after another, and a hundred thousand and more random edits of one document.
 *
 *   node test/bench/memory.ts [edits]
 */
const documents = 1000;
const edits = Number(process.argv[2] ?? 200_000);
const servers = [
  ['ours', 'dist/doughwright.cjs', ['serve', '--stdio']],
  ['bare', 'dist/bench/bare-server.cjs', ['--stdio']],
] as const;

for (const [name, program, args] of servers) {
  const { first, last, key, megabytes } = await openMany(program, args);
  print(name, [
    [`${documents} documents of 50 lines open, resident memory`, megabytes, 'MB'],
    ['opening one of the first twenty to its findings, p50', first, 'ms'],
    ['opening one of the last twenty, p50', last, 'ms'],
    ['a key in one of them, p50', key, 'ms'],
    [`resident memory after ${edits} random edits of 50 lines`, await soak(program, args), 'MB'],
  ]);
}

async function openMany(program: string, args: readonly string[]) {
  const session = new Session(program, args);
  await session.initialize();
  const took: number[] = [];
  for (let number = 0; number < documents; number++) {
    const text = formulaText(50).replaceAll('formula ', `formula ${number} `);
    const began = performance.now();
    await session.open(text, `untitled:${number}`);
    took.push(performance.now() - began);
  }
  await after(1500);
  const megabytes = session.megabytes();
  const keys: number[] = [];
  for (const stroke of keystrokes(formulaText(50), 60))
    keys.push((await session.key(stroke, 'untitled:5')).findings);
  await session.stop();
  return { first: median(took.slice(1, 21)), last: median(took.slice(-20)), key: median(keys), megabytes };
}

/** Letters come and go at random places, a few at a time before an answer is awaited. */
async function soak(program: string, args: readonly string[]): Promise<number> {
  const dice = new Dice(7);
  const session = new Session(program, args);
  await session.initialize();
  const lines = formulaText(50).split('\n');
  await session.open(lines.join('\n'));
  const letters = [...'abcdefgh 0123456789%,:'];
  for (let done = 0; done < edits; ) {
    const strokes = Array.from({ length: 1 + dice.below(4) }, () => {
      const line = dice.below(lines.length - 1);
      const text = lines[line] ?? '';
      const start = dice.below(text.length + 1);
      const isLess = start < text.length && (text.length > 60 || dice.below(2) === 0);
      const [end, insert] = isLess ? [start + 1, ''] : [start, dice.one(letters)];
      lines[line] = text.slice(0, start) + insert + text.slice(end);
      return { line, start, end, insert };
    });
    done += strokes.length;
    await session.burst(strokes);
  }
  const megabytes = session.megabytes();
  await session.stop();
  return megabytes;
}

function median(values: readonly number[]): number {
  return values.toSorted((one, other) => one - other)[Math.floor(values.length / 2)] ?? Number.NaN;
}

function print(name: string, rows: readonly (readonly [what: string, value: number, unit: string])[]): void {
  console.log(`\n${name}`);
  for (const [what, value, unit] of rows)
    console.log(`  ${what.padEnd(58)}${value.toFixed(1).padStart(9)} ${unit}`);
}
