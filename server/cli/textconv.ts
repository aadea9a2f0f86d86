import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  createService,
  type FilePortrait,
  isUnfinishedMerge,
  mass,
  percent,
  type Service,
} from '../../core/index.ts';
import { readDough, rootAbove } from '../disk.ts';
import { canonicalUri } from '../uris.ts';
import type { ExitCode } from './exit-code.ts';
import { cureOf, readSurroundings } from './input.ts';
import { type Keeping, keepHistory, keepShown } from './shown-texts.ts';
import { complainOf } from './terminal.ts';

/**
 * A file for git to compare line by line in `git log -p`, `git show` and `git blame`: its own lines, behind the header of
 * each formula its totals, so that a change of the hydration stands beside the line that made it and every line keeps its
 * number. What is no formula is written all the same, for git shows nothing more of a history once this fails.
 */
export async function textconv(path: string, keeping?: Keeping): Promise<ExitCode> {
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
  const shown = createShown();
  const text = await shown(file.text);
  process.stdout.write(text);
  if (keeping !== undefined) {
    await keepShown(keeping, text);
    await keepHistory(keeping, shown);
  }
  return 0;
}

/** Bytes that are no text, so that git tells that they changed. */
function inOneLine(bytes: Buffer): string {
  return `not plain text: ${bytes.length} bytes, SHA-256 ${createHash('sha256').update(bytes).digest('hex')}\n`;
}

/** Shows texts one after another; the files on disk are read once, when the first text has names of other files. */
function createShown(): (text: string) => Promise<string> {
  const alone = createService();
  let among: { readonly service: Service; readonly root: string } | undefined;
  return async (text) => {
    let formulas = formulasOf(alone, '.', text);
    if (formulas.some(({ totals }) => unknownNames(totals).length > 0)) {
      const root = await rootAbove(resolve('.'));
      among ??= { service: await readSurroundings(root), root };
      formulas = formulasOf(among.service, among.root, text);
    }
    const behind = new Map(formulas.map((formula) => [formula.line, figuresOf(formula)]));
    return text
      .split('\n')
      .map((line, index) => withFigures(line, behind.get(index) ?? ''))
      .join('\n');
  };
}

function withFigures(line: string, figures: string): string {
  if (figures === '') return line;
  const end = line.endsWith('\r') ? '\r' : '';
  return `${line.trimEnd()}  #= ${figures}${end}`;
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

function unknownNames({ findings }: FilePortrait['formulas'][number]['totals']): string[] {
  return findings
    .filter(({ code }) => code === 'unknown-ingredient')
    .flatMap(({ message }) => {
      const { name } = message.args as { readonly name?: string };
      return name ?? [];
    });
}

/** What stands behind the header of a formula. Of a merge that is not finished nothing is added up. */
function figuresOf({ source, totals }: FilePortrait['formulas'][number]): string {
  if (isUnfinishedMerge(source)) return 'a merge is not finished here: nothing is added up';
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
  const unknown = unknownNames(totals);
  if (unknown.length > 0) told.push(`not known, counted as nothing: ${unknown.join(', ')}`);
  return told.join(', ');
}
