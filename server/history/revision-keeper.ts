import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { foldName, type HistoryRevision, type Message, type UsualConditions } from '../../core/index.ts';
import { commitOf, folderOf, repositoryOf } from '../host/git.ts';
import { wayTo } from '../host/paths.ts';
import { formulaRevisions } from './formula-history.ts';
import { type Commits, commitsUpTo } from './revisions.ts';

interface Asked {
  readonly uri: string;
  readonly formula: string;
  readonly usual: UsualConditions;
}

type Answer = readonly HistoryRevision[] | { readonly message: Message };

/** What is known of the one commit that was asked about last; another commit, or other temperatures, begin anew. */
let kept:
  | {
      readonly key: string;
      readonly commits: Commits;
      readonly formulas: Map<string, readonly HistoryRevision[]>;
    }
  | undefined;

/**
 * The revisions of a formula up to the present commit of its repository. Whoever asks again before another commit gets the
 * same at once, for the price of asking git which commit that is.
 */
export async function revisionsOf(
  { uri, formula, usual }: Asked,
  pause: () => Promise<void>,
): Promise<Answer> {
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
    kept = { key, commits, formulas: new Map() };
  }
  const own = kept;
  const path = wayTo(file, root);
  const name = JSON.stringify([path, foldName(formula)]);
  const known = own.formulas.get(name);
  if (known !== undefined) return known;
  const revisions = await formulaRevisions(
    root,
    own.commits.commits,
    { name: formula, path },
    { pause, usual },
  );
  if (!('message' in revisions)) own.formulas.set(name, revisions);
  return revisions;
}
