import { existsSync } from 'node:fs';
import { cpus } from 'node:os';
import { setTimeout as after } from 'node:timers/promises';
import { build } from 'esbuild';
import { formulaText, keystrokes } from './formulas.ts';
import { Session } from './session.ts';

/**
 * Measures the bundled language server beside a bare one of a dozen lines, in the same run and taking turns, and
 * prints a table. Only the ratios count: a machine has slow and fast days.
 *
 *   node test/bench/run.ts [lines,lines,...]
 */
const ours = 'dist/doughwright.cjs';
const bare = 'dist/bench/bare-server.cjs';
const sizes = (process.argv[2] ?? '50,500,5000').split(',').map(Number);
const starts = 7;
const strokes = 200;
/** Between two strokes, as a fast typist leaves it, shortened. */
const pauseMilliseconds = 5;

/** Milliseconds or megabytes by what was measured. */
type Figures = Record<string, number>;

if (!existsSync(ours)) throw new Error(`${ours} is not there; run npm run build first.`);
await build({
  entryPoints: ['test/bench/bare-server.ts'],
  outfile: bare,
  bundle: true,
  minify: true,
  platform: 'node',
  format: 'cjs',
  target: 'node20',
  logLevel: 'warning',
});
console.log(
  `Node ${process.version}, ${cpus().length} × ${cpus()[0]?.model.trim()}; milliseconds and megabytes.`,
);
for (const size of sizes) {
  const text = formulaText(size);
  const begun: Record<'ours' | 'bare', Figures[]> = { ours: [], bare: [] };
  for (let turn = 0; turn < starts; turn++) {
    begun.bare.push(await start(bare, ['--stdio'], text));
    begun.ours.push(await start(ours, ['serve', '--stdio'], text));
  }
  const typedBare = await type(bare, ['--stdio'], text);
  const typedOurs = await type(ours, ['serve', '--stdio'], text);
  print(size, { ...medians(begun.ours), ...typedOurs }, { ...medians(begun.bare), ...typedBare });
}

async function start(program: string, args: readonly string[], text: string): Promise<Figures> {
  const session = new Session(program, args);
  const figures = {
    'start to initialized': await session.initialize(),
    'start to first findings': await session.open(text),
    'work until first findings': session.worked(),
  };
  await session.stop();
  return figures;
}

async function type(program: string, args: readonly string[], text: string): Promise<Figures> {
  const session = new Session(program, args);
  await session.initialize();
  await session.open(text);
  await after(300);
  const findings: number[] = [];
  const hovers: number[] = [];
  const before = session.worked();
  for (const stroke of keystrokes(text, strokes)) {
    const key = await session.key(stroke);
    findings.push(key.findings);
    hovers.push(key.hover);
    await after(pauseMilliseconds);
  }
  const worked = (session.worked() - before) / strokes;
  await after(300);
  const megabytes = session.megabytes();
  const burst = await session.burst(keystrokes(text, strokes));
  await session.stop();
  return {
    ...spread('change to findings', findings),
    ...spread('change to hover', hovers),
    'work of a change and a hover': worked,
    [`burst of ${strokes} to findings`]: burst.milliseconds,
    'publications of the burst': burst.publications,
    'resident memory': megabytes,
  };
}

function spread(name: string, values: readonly number[]): Figures {
  return {
    [`${name}, p50`]: quantile(values, 0.5),
    [`${name}, p95`]: quantile(values, 0.95),
    [`${name}, max`]: Math.max(...values),
  };
}

function quantile(values: readonly number[], share: number): number {
  return values.toSorted((one, other) => one - other)[
    Math.min(values.length - 1, Math.ceil(share * values.length) - 1)
  ]!;
}

function medians(runs: readonly Figures[]): Figures {
  return Object.fromEntries(
    Object.keys(runs[0]!).map((name) => [
      name,
      quantile(
        runs.map((run) => run[name]!),
        0.5,
      ),
    ]),
  );
}

/** What we want to reach; the ratios are to the bare server in the same run. */
function aim(name: string, size: number): string {
  if (name === 'start to initialized') return 'ratio ≤ 1.5';
  if (name === 'resident memory') return '< 85';
  if (name.startsWith('burst')) return size <= 50 ? '≤ 5' : size <= 500 ? '≤ 10' : '≤ 100';
  if (name.endsWith('p50') && size <= 500) return 'ratio ≤ 2';
  if (name.endsWith('p95')) return size <= 500 ? '< 5' : '≤ 20';
  return '';
}

function print(size: number, mine: Figures, others: Figures): void {
  const rows = Object.keys(mine).map((name) => [
    name,
    mine[name]!.toFixed(2),
    others[name]!.toFixed(2),
    (mine[name]! / others[name]!).toFixed(2),
    aim(name, size),
  ]);
  rows.unshift([`${size} lines`, 'ours', 'bare', 'ratio', 'aim']);
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)));
  console.log('');
  for (const row of rows) {
    console.log(
      row
        .map((cell, column) =>
          column === 0 ? cell.padEnd(widths[column]!) : cell.padStart(widths[column]! + 2),
        )
        .join(''),
    );
  }
}
