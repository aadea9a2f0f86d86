import { readFileSync, rmSync } from 'node:fs';
import { setTimeout as after } from 'node:timers/promises';
import { CancellationTokenSource } from 'vscode-languageserver-protocol/node';
import { Client, pulling } from '../server/client.ts';
import { definitionCount, formulaCount, writeWorkspace } from './workspace-files.ts';

/**
 * Measures the bundled language server in a folder of very many formulas: the first findings, typing while it reads
 * the folder, what it then holds, and a change of a flour that half of the formulas take. Prints a table.
 *
 *   node test/bench/workspace.ts
 */
const openFormulas = 20;
const workspace = writeWorkspace();
try {
  print(await measure());
} finally {
  rmSync(workspace.path, { recursive: true, force: true });
}

interface Row {
  readonly name: string;
  readonly milliseconds?: number;
  readonly megabytes?: number;
  readonly aim: string;
}

async function measure(): Promise<Row[]> {
  const rows: Row[] = [];
  const began = performance.now();
  const client = await Client.start({ folders: [workspace.uri], capabilities: pulling });
  const own = workspace.formula(4321);
  await client.open(own.uri, own.text);
  await client.pull(own.uri);
  rows.push({ name: 'start to first findings of the open file', milliseconds: since(began), aim: '< 500' });

  // A question about all of the workspace is answered when all of it is known.
  let isKnown = false;
  const known = client.connection
    .sendRequest('workspace/symbol', { query: 'Quay Loaf 9999' })
    .then((found) => {
      isKnown = true;
      if ((found as unknown[]).length === 0) throw new Error('The last formula was not found.');
      return since(began);
    });
  const meanwhile: number[] = [];
  let flourKnown: number | undefined;
  while (!isKnown) {
    meanwhile.push(await stroke(client, own.uri, meanwhile.length));
    const told = await client.pull(own.uri);
    if (told.kind === 'full' && !told.items.some(({ code }) => code === 'unknown-ingredient'))
      flourKnown ??= since(began);
    await after(30);
  }
  rows.push({ name: 'start to all files known', milliseconds: await known, aim: '< 10,000' });
  rows.push({ name: 'start to its flour known', milliseconds: flourKnown ?? Number.NaN, aim: '' });
  rows.push({ name: 'a key meanwhile, p95', milliseconds: quantile(meanwhile, 0.95), aim: '< 10' });
  rows.push({ name: 'a key meanwhile, most', milliseconds: Math.max(...meanwhile), aim: '' });

  rows.push({ name: 'resident memory', megabytes: residentMegabytes(client), aim: '< 400' });
  const everything = performance.now();
  await client.connection.sendRequest('workspace/diagnostic', { previousResultIds: [] });
  rows.push({ name: 'findings of all files', milliseconds: since(everything), aim: '' });
  const later: number[] = [];
  for (let count = 0; count < 100; count++) {
    later.push(await stroke(client, own.uri, count));
    await after(10);
  }
  rows.push({ name: 'a key afterwards, p95', milliseconds: quantile(later, 0.95), aim: '< 10' });
  rows.push({
    name: 'resident memory with the findings of all',
    megabytes: residentMegabytes(client),
    aim: '< 400',
  });

  // Even numbers take the flour that changes.
  const users = Array.from({ length: openFormulas }, (_, index) => workspace.formula(2 * index));
  for (const { uri, text } of users) await client.open(uri, text);
  for (const { uri } of users) await client.pull(uri);
  await client.open(workspace.flour.uri, workspace.flour.text);
  await client.pull(workspace.flour.uri);
  await after(1_000);
  const rechecks: number[] = [];
  for (let percent = 8; percent < 16; percent++) {
    const text = workspace.flour.text.replace('protein 11%', `protein ${percent}.5%`);
    const changed = performance.now();
    client.change(workspace.flour.uri, text);
    await Promise.all(users.map(({ uri }) => client.pull(uri)));
    rechecks.push(since(changed));
    await after(300);
  }
  rows.push({
    name: `a flour of ${formulaCount / 2} formulas changes: ${openFormulas} open ones told`,
    milliseconds: quantile(rechecks, 0.5),
    aim: '< 50',
  });

  const cancels: number[] = [];
  for (let count = 0; count < 10; count++) {
    const source = new CancellationTokenSource();
    const asked = client.connection
      .sendRequest('workspace/diagnostic', { previousResultIds: [] }, source.token)
      .then(
        () => undefined,
        () => performance.now(),
      );
    await after(30);
    const cancelled = performance.now();
    source.cancel();
    const ended = await asked;
    if (ended !== undefined) cancels.push(ended - cancelled);
  }
  rows.push({ name: 'a question taken back', milliseconds: Math.max(...cancels), aim: '< 20' });
  await client.stop();
  client.connection.dispose();
  return rows;
}

/** A digit typed into the line of salt, or taken out of it, and the findings after it. */
async function stroke(client: Client, uri: string, count: number): Promise<number> {
  const at = { line: 7, character: '  salt               2'.length };
  const isTyped = count % 2 === 0;
  const began = performance.now();
  client.change(uri, isTyped ? '.1' : '', {
    start: at,
    end: isTyped ? at : { line: 7, character: at.character + 2 },
  });
  await client.pull(uri);
  return since(began);
}

function since(began: number): number {
  return performance.now() - began;
}

function quantile(values: readonly number[], share: number): number {
  return values.toSorted((one, other) => one - other)[Math.ceil(share * values.length) - 1] ?? Number.NaN;
}

function residentMegabytes(client: Client): number {
  const status = readFileSync(`/proc/${client.process.pid}/status`, 'utf8');
  return Number(/^VmRSS:\s+(\d+)/m.exec(status)?.[1] ?? Number.NaN) / 1024;
}

function print(rows: readonly Row[]): void {
  console.log(`\n${formulaCount} formula files, ${definitionCount} definitions; milliseconds and megabytes.`);
  const widest = Math.max(...rows.map(({ name }) => name.length));
  for (const { name, milliseconds, megabytes, aim } of rows)
    console.log(
      `${name.padEnd(widest)}${(milliseconds ?? megabytes ?? Number.NaN).toFixed(1).padStart(10)}   ${aim}`,
    );
}
