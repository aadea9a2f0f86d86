import { type Uri, workspace } from 'vscode';
import type { SheetOrigin } from '../../server/protocol.ts';
import { repositoryOf } from '../changes/git.ts';
import { dayOf } from '../clock.ts';
import { languageId } from '../names.ts';

/** Where a sheet comes from: its file, the commit at hand, whether formulas differ from it, and today's date. */
export async function originOf(uri: Uri, now: Date = new Date()): Promise<SheetOrigin> {
  const found = await repositoryOf(uri).catch(() => undefined);
  const commit = found && 'repository' in found ? found.repository.state.HEAD?.commit : undefined;
  return {
    file: workspace.asRelativePath(uri, false),
    ...(found && 'repository' in found && commit
      ? { commit: commit.slice(0, 8), changed: isUnsaved() || isUncommitted(found.repository.state) }
      : {}),
    date: dayOf(now),
  };
}

/** A sheet is worked out from what stands in the editors, saved or not. */
function isUnsaved(): boolean {
  return workspace.textDocuments.some(({ languageId: id, isDirty }) => id === languageId && isDirty);
}

type Changes = Extract<
  Awaited<ReturnType<typeof repositoryOf>>,
  { repository: unknown }
>['repository']['state'];

function isUncommitted({
  workingTreeChanges,
  indexChanges,
  mergeChanges,
  untrackedChanges = [],
}: Changes): boolean {
  const changes = [...workingTreeChanges, ...indexChanges, ...mergeChanges, ...untrackedChanges];
  return changes.some(({ uri }) => uri.path.endsWith('.dough'));
}
