import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  createService,
  type FilePortrait,
  type FormulaTotals,
  mass,
  percent,
  type Service,
} from '../../core/index.ts';
import { readDough, rootAbove } from '../disk.ts';
import { canonicalUri } from '../uris.ts';
import type { ExitCode } from './exit-code.ts';
import { cureOf, readSurroundings } from './input.ts';
import { complainOf } from './terminal.ts';

/**
 * A file for git to compare line by line in `git log -p` and `git show`: its own lines, and after the header of each formula
 * its totals as comments, so that a change of the hydration stands beside the line that made it. What is no formula is
 * written all the same, for git shows nothing more of a history once this fails.
 */
export async function textconv(path: string): Promise<ExitCode> {
  const file = await readDough(path);
  if (file.text === undefined) {
    const bytes = await readFile(path).catch(() => undefined);
    if (bytes === undefined) {
      complainOf(`doughwright: ${path}: ${cureOf(file.why)}\n`);
      return 2;
    }
    process.stdout.write(file.why === 'binary' ? inOneLine(bytes) : bytes);
    return 0;
  }
  const after = new Map((await totalsOf(file.text)).map(({ line, totals }) => [line, summary(totals)]));
  const lines = file.text.split('\n');
  process.stdout.write(
    lines.flatMap((line, index) => [line, ...(after.get(index) ?? []).map((one) => `#= ${one}`)]).join('\n'),
  );
  return 0;
}

/** Bytes that are no text, so that git tells that they changed. */
function inOneLine(bytes: Buffer): string {
  return `not plain text: ${bytes.length} bytes, SHA-256 ${createHash('sha256').update(bytes).digest('hex')}\n`;
}

/** The formulas of a text with their totals. Only where it has names of other files are those on disk read. */
async function totalsOf(text: string): Promise<FilePortrait['formulas']> {
  const alone = formulasOf(createService(), '.', text);
  if (alone.every(({ totals }) => unknownNames(totals).length === 0)) return alone;
  const root = await rootAbove(resolve('.'));
  return formulasOf(await readSurroundings(root), root, text);
}

/**
 * The text stands in a folder of its own, as git does not say where it is from: there its definitions go before those of
 * the files on disk, itself in another state among them.
 */
function formulasOf(service: Service, root: string, text: string): FilePortrait['formulas'] {
  const uri = canonicalUri(pathToFileURL(resolve(root, '.textconv', 'file.dough')).href);
  service.setText(uri, text);
  return service.portrait(uri)?.formulas ?? [];
}

function unknownNames({ findings }: FormulaTotals): string[] {
  return findings
    .filter(({ code }) => code === 'unknown-ingredient')
    .flatMap(({ message }) => /“(.+?)”/.exec(message)?.[1] ?? []);
}

function summary(totals: FormulaTotals): string[] {
  const { hydration, saltFraction, prefermentedFlour, flourGrams, doughGrams } = totals;
  const rows: [string, number | undefined, (value: number) => string][] = [
    ['hydration', hydration, percent],
    ['salt', saltFraction, percent],
    ['prefermented flour', prefermentedFlour || undefined, percent],
    ['flour', flourGrams, mass],
    ['dough', doughGrams, mass],
  ];
  const told = rows.flatMap(([name, value, words]) =>
    value === undefined ? [] : [`${name} ${words(value)}`],
  );
  return [...told, ...unknownNames(totals).map((name) => `not known, counted as nothing: ${name}`)];
}
