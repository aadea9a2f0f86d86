import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  createService,
  type FileSummary,
  isUnfinishedMerge,
  type Message,
  message,
  type Service,
} from '../../core/index.ts';
import { readDough, rootAbove } from '../host/disk.ts';
import { canonicalUri } from '../host/uris.ts';
import type { ExitCode } from './exit-code.ts';
import { readSurroundings } from './input.ts';
import { projectSettings } from './project.ts';
import { cureOf } from './shown-path.ts';
import { type Keeping, keepChanged, keepHistory, keepShown } from './shown-texts.ts';
import { say, wording } from './speaker.ts';
import { complain } from './terminal.ts';

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
      complain(path, say(cureOf(file.why)));
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
    await keepChanged(keeping, shown);
    await keepHistory(keeping, shown);
  }
  return 0;
}

/** Bytes that are no text, so that git tells that they changed. */
function inOneLine(bytes: Buffer): string {
  const code = createHash('sha256').update(bytes).digest('hex');
  return `${say(message('command-git.not-text', { count: bytes.length, code }))}\n`;
}

/** Shows texts one after another; the files on disk are read once, when the first text has names of other files. */
function createShown(): (text: string) => Promise<string> {
  const alone = createService();
  alone.setSettings({ ...projectSettings(), ...wording() });
  let among: { readonly service: Service; readonly root: string } | undefined;
  return async (text) => {
    let formulas = formulasOf(alone, '.', text);
    if (formulas.some(({ unknownNames }) => unknownNames.length > 0)) {
      const root = await rootAbove(resolve('.'));
      among ??= { service: await readSurroundings(root), root };
      formulas = formulasOf(among.service, among.root, text);
    }
    const behind = new Map(formulas.map((one) => [one.summary.line, figuresOf(one)]));
    // A file on disk may have Windows' line ends where git keeps it without them: to blame, every line would be a new one.
    return text
      .split(/\r?\n/)
      .map((line, index) => withFigures(line, behind.get(index) ?? ''))
      .join('\n');
  };
}

function withFigures(line: string, figures: string): string {
  return figures === '' ? line : `${line.trimEnd()}  #= ${figures}`;
}

interface ShownFormula {
  readonly summary: FileSummary['formulas'][number];
  /** Names in it that nobody defines. */
  readonly unknownNames: readonly string[];
}

/**
 * The text stands in a folder of its own, as git does not say where it is from: there its definitions go before those of
 * the files on disk, itself in another state among them.
 */
function formulasOf(service: Service, root: string, text: string): ShownFormula[] {
  const uri = canonicalUri(pathToFileURL(resolve(root, '.textconv', 'file.dough')).href);
  service.setText(uri, text);
  const formulas = service.summary(uri)?.formulas ?? [];
  const lines = service.lines(uri);
  const unknown = service
    .findings(uri)
    .filter(({ code }) => code === 'unknown-ingredient')
    .map(({ place }) => ({ line: place.line, name: lines[place.line]!.slice(place.start, place.end) }));
  return formulas.map((summary) => {
    const end = summary.line + summary.source.split('\n').length;
    const own = unknown.filter(({ line }) => line >= summary.line && line < end);
    return { summary, unknownNames: own.map(({ name }) => name) };
  });
}

/** What stands behind the header of a formula. Of a merge that is not finished nothing is added up. */
function figuresOf({ summary: { source, totals }, unknownNames }: ShownFormula): string {
  if (isUnfinishedMerge(source)) return say(message('command-git.unfinished'));
  const { hydration, saltFraction, prefermentedFlour, flourGrams, doughGrams } = totals;
  const told: Message[] = [];
  if (hydration !== undefined) told.push(message('command-git.hydration', { fraction: hydration }));
  if (saltFraction !== undefined) told.push(message('command-git.salt', { fraction: saltFraction }));
  if (prefermentedFlour)
    told.push(message('command-git.prefermented-flour', { fraction: prefermentedFlour }));
  if (flourGrams !== undefined) told.push(message('command-git.flour', { grams: flourGrams }));
  if (doughGrams !== undefined) told.push(message('command-git.dough', { grams: doughGrams }));
  if (unknownNames.length > 0) told.push(message('command-git.not-known', { names: unknownNames }));
  return told.map(say).join(', ');
}
