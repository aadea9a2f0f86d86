import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { foldName, type TextsByUri, type UsualConditions } from '../../core/index.ts';
import { commitOf, folderOf, repositoryOf } from '../host/git.ts';
import { filesOfRevision } from '../host/git-files.ts';
import { wayTo } from '../host/paths.ts';
import { formulaRevisions, type Revisions, revisionsToNow, type Sought } from './formula-history.ts';
import { RevisionFiles } from './revision-files.ts';
import { type Commits, commitsUpTo } from './revisions.ts';
import { uncommittedChanges } from './uncommitted.ts';

interface Asked {
  readonly uri: string;
  readonly formula: string;
  readonly usual: UsualConditions;
  /** The texts of all files as they stand now, typed or on the disk, by their URIs; absent where git alone is asked about. */
  readonly texts?: TextsByUri;
}

/** What is known of the one commit that was asked about last; another commit, or other temperatures, begin anew. */
let kept:
  | {
      readonly key: string;
      readonly commits: Commits;
      readonly files: RevisionFiles;
      readonly formulas: Map<string, Revisions>;
    }
  | undefined;

/** The texts of all files of the present commit of the repository that a file is in; `undefined` where there are none to be had. */
export async function textsOfLastCommit(uri: string): Promise<TextsByUri | undefined> {
  const repository = await repositoryOf(await folderOf(dirname(fileURLToPath(uri))));
  const found = repository.root === undefined ? repository : await filesOfRevision(repository.root, 'HEAD');
  if ('message' in found) return undefined;
  return found.files.flatMap((file) => (file.text === undefined ? [] : [[file.uri, file.text] as const]));
}

/**
 * The revisions of a formula up to the present commit of its repository. Whoever asks again before another commit gets the
 * same at once, for the price of asking git which commit that is.
 */
export async function revisionsOf(
  { uri, formula, usual, texts }: Asked,
  pause: () => Promise<void>,
): Promise<Revisions> {
  const file = fileURLToPath(uri);
  const repository = await repositoryOf(await folderOf(dirname(file)));
  if (repository.root === undefined) return { message: repository.message };
  const { root } = repository;
  const commit = await commitOf(root, 'HEAD');
  if (typeof commit !== 'string') return { message: commit.message };
  const key = JSON.stringify([root, commit, usual]);
  if (kept?.key !== key) {
    const commits = await commitsUpTo(root, commit);
    if ('message' in commits) return commits;
    const files = new RevisionFiles(root, commits.commits, usual);
    kept = { key, commits, files, formulas: new Map() };
  }
  const own = kept;
  const path = wayTo(file, root);
  const { commits } = own.commits;
  const ofCommits = async (sought: Sought): Promise<Revisions> => {
    const name = JSON.stringify([sought.path, foldName(sought.name)]);
    const known = own.formulas.get(name);
    if (known !== undefined) return known;
    const revisions = await formulaRevisions(own.files, commits, sought, { pause });
    if (!('message' in revisions)) own.formulas.set(name, revisions);
    return revisions;
  };
  const sought = { name: formula, path };
  if (texts === undefined) return ofCommits(sought);
  const now = new Map<string, string>();
  for (const [one, text] of texts)
    if (one.startsWith('file:')) now.set(wayTo(fileURLToPath(one), root), text);
  const changes = await uncommittedChanges(root, own.files.textsOf(commit), now);
  return revisionsToNow(own.files, commits, changes, sought, ofCommits);
}
