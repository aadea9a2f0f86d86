import { join, resolve } from 'node:path';
import {
  figureTable,
  foldName,
  formulaNames,
  type HistoryFigure,
  type HistoryRevision,
  historyAsCsv,
  historyAsData,
  historyAsHtml,
  historyAsText,
  historyOf,
  historyPage,
  ingredientFigure,
  type Message,
  message,
} from '../../core/index.ts';
import { formulaRevisions, revisionsToNow, type Sought } from '../history/formula-history.ts';
import { RevisionFiles } from '../history/revision-files.ts';
import { commitsUpTo } from '../history/revisions.ts';
import { textsNow, uncommittedChanges } from '../history/uncommitted.ts';
import { commitOf, folderOf, repositoryOf } from '../host/git.ts';
import { leadsOut, wayTo } from '../host/paths.ts';
import type { ExitCode } from './exit-code.ts';
import type { HistoryOutput } from './json-outputs.ts';
import { meantOf } from './meant.ts';
import { progress } from './progress.ts';
import { projectSettings } from './project.ts';
import { shownPath } from './shown-path.ts';
import { say, speaker } from './speaker.ts';
import { complain, visibleData } from './terminal.ts';
import { type FileFormat, formatOf, isData, writeOut } from './write-out.ts';

export interface HistoryOptions {
  readonly at?: string;
  readonly figure?: readonly string[];
  readonly format?: FileFormat | 'text';
  readonly out?: string;
}

/** Writes what became of the figures of a formula over the revisions of its repository: 0, or 2 where it could not be told. */
export async function history(
  name: string,
  path: string | undefined,
  options: HistoryOptions,
): Promise<ExitCode> {
  const refuse = (why: Message): ExitCode => {
    complain(say(why));
    return 2;
  };
  const at = resolve(path ?? '.');
  const repository = await repositoryOf(await folderOf(at));
  if (repository.root === undefined) return refuse(repository.message);
  const { root, isBare } = repository;
  const way = path === undefined ? undefined : wayTo(at, root);
  if (path !== undefined && way !== undefined && leadsOut(way))
    return refuse(message('command-git.outside', { file: path }));
  const revision = options.at ?? 'HEAD';
  const commit = await commitOf(root, revision);
  if (typeof commit !== 'string') return refuse(commit.message);
  const found = await commitsUpTo(root, commit);
  if ('message' in found) return refuse(found.message);
  const files = new RevisionFiles(root, found.commits, projectSettings().usual);
  // A bare repository has no files on the disk to point to, and none that could be other than in the last commit.
  const shown = isBare ? (one: string) => one : (one: string) => shownPath(join(root, one));
  const ofCommits = (sought: Sought) =>
    formulaRevisions(files, found.commits, sought, {
      shown,
      progress: (count, all) => progress(say(message('history.read-so-far', { count, otherCount: all }))),
    });
  const changes =
    options.at === undefined && !isBare
      ? await uncommittedChanges(root, files.textsOf(commit), await textsNow(root))
      : [];
  const sought = { name, ...(way === undefined ? {} : { path: way }) };
  const revisions = await revisionsToNow(files, found.commits, changes, sought, ofCommits, shown);
  progress('');
  if ('message' in revisions) return refuse(revisions.message);
  const wanted = wantedFigures(options.figure, revisions);
  if (wanted !== undefined && 'message' in wanted) return refuse(wanted.message);
  const told = historyOf(revisions, wanted);
  if (told === undefined) return refuse(noFormula(name, revision, files.textsOf(commit)));
  if (found.beginsAt !== undefined) complain(say(message('history.begins', { commit: found.beginsAt })));
  const format = formatOf(options) ?? 'text';
  if (format === 'json' || format === 'csv') {
    const data: HistoryOutput = historyAsData(told);
    const text = format === 'json' ? `${JSON.stringify(data, null, 2)}\n` : historyAsCsv(told);
    return (await writeOut(text, options.out, { isData: true })) ? 0 : 2;
  }
  const words = speaker();
  const page = historyPage(format === 'html' ? told : visibleData(told), words, wanted);
  const text = format === 'html' ? historyAsHtml(page, words.language) : historyAsText(page);
  return (await writeOut(text, options.out, { isData: isData(format) })) ? 0 : 2;
}

/** That a revision has no formula of a name, and which one of its formulas may be meant. */
function noFormula(name: string, revision: string, texts: ReadonlyMap<string, string>): Message {
  const otherName = meantOf(name, [...texts.values()].flatMap(formulaNames));
  return otherName === undefined
    ? message('history.no-such-formula', { name, revision })
    : message('history.no-such-formula-meant', { name, otherName, revision });
}

/** The figures asked for by their keys or as ingredients of the formula; `undefined` where none is named. */
function wantedFigures(
  asked: readonly string[] | undefined,
  revisions: readonly HistoryRevision[],
): HistoryFigure[] | { readonly message: Message } | undefined {
  if (asked === undefined) return undefined;
  const ingredients = new Set(
    revisions.flatMap(({ moment }) => moment?.figures.ingredients.map((one) => foldName(one.name)) ?? []),
  );
  const figures: HistoryFigure[] = [];
  for (const name of asked) {
    const known = figureTable.find(({ key }) => key === name);
    if (known === undefined && !ingredients.has(foldName(name))) {
      const names = figureTable.map(({ key }) => key);
      return { message: message('history.no-such-figure', { name, names }) };
    }
    figures.push(known ?? ingredientFigure(name));
  }
  return figures;
}
