import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Message, message } from '../../core/index.ts';
import { folderOf, repositoryOf } from '../host/git.ts';
import { filesOfRevision } from '../host/git-files.ts';
import { leadsOut, wayTo } from '../host/paths.ts';
import { canonicalUri } from '../host/uris.ts';
import type { Trouble } from './report/report.ts';
import { shownPath } from './shown-path.ts';
import { say } from './speaker.ts';
import { complain } from './terminal.ts';
import type { AskedFile, Texts } from './texts.ts';

/**
 * The files asked for as a revision of git has them, and around them all others of that revision. A path that the revision
 * has nothing at is told, and the rest is done.
 */
export async function readTextsAt(paths: readonly string[], revision: string): Promise<Texts> {
  const troubles: Trouble[] = [];
  const trouble = (path: string, what: Message): void => {
    troubles.push({ path, message: say(what) });
    complain(path, say(what));
  };
  const nothing = (): Texts => ({
    ...{ texts: [], roots: [], asked: [], troubles, failed: true },
    shown: (uri) => uri,
  });
  const given = paths[0] ?? '.';
  const repository = await repositoryOf(await folderOf(resolve(given)));
  if (repository.root === undefined) {
    trouble(given, repository.message);
    return nothing();
  }
  const { root } = repository;
  const found = await filesOfRevision(root, revision);
  if ('message' in found) {
    trouble('--at', found.message);
    return nothing();
  }
  const shown = new Map(found.files.map(({ uri, path }) => [uri, shownPath(join(root, path))]));
  const asked = new Map<string, AskedFile>();
  for (const one of paths) {
    const way = wayTo(resolve(one), root);
    const below = leadsOut(way)
      ? []
      : found.files.filter(({ path }) => way === '' || path === way || path.startsWith(`${way}/`));
    if (below.length === 0)
      trouble(
        shownPath(resolve(one)),
        leadsOut(way)
          ? message('command-git.outside', { file: one })
          : message('command-git.not-at', { revision }),
      );
    for (const { uri, text, path, otherLettersInLine: number } of below) {
      const place = shown.get(uri) ?? path;
      if (text === undefined) {
        trouble(place, message('command-git.no-text', { file: path, revision }));
        continue;
      }
      asked.set(uri, { uri, shown: place });
      if (number !== undefined) trouble(place, message('command-files.other-letters', { number }));
    }
  }
  return {
    texts: found.files.flatMap(({ uri, text }) => (text === undefined ? [] : [[uri, text] as const])),
    roots: [canonicalUri(pathToFileURL(root).href)],
    asked: [...asked.values()],
    shown: (uri) => shown.get(uri) ?? uri,
    troubles,
    failed: troubles.length > 0,
  };
}
