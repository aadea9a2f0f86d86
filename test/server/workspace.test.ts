import { describe, expect, it } from 'vitest';
import { OpenDocuments } from '../../server/sync/documents.ts';
import { WorkspaceFiles } from '../../server/sync/files.ts';
import { Schedule } from '../../server/sync/schedule.ts';
import { readSettings } from '../../server/sync/settings.ts';
import { Workspace } from '../../server/sync/workspace.ts';
import { FilesInMemory } from './in-process.ts';

const nothing = () => undefined;

/** The files of a workspace on a disk that answers when it is told what, in the order it was asked. */
function onSlowDisk(workspace: Workspace) {
  const disk = new FilesInMemory();
  const answers: ((text: string | undefined) => void)[] = [];
  disk.read = () => new Promise((resolve) => answers.push(resolve));
  const files = new WorkspaceFiles({
    ...{ host: { files: disk }, workspace, schedule: new Schedule() },
    log: { error: nothing, warn: nothing, info: nothing },
    ...{ changed: nothing, rootsChanged: nothing, progress: nothing },
  });
  return { files, answers };
}

describe('what the server knows', () => {
  it('is another with other settings, and as it was for who asked before', async () => {
    const workspace = new Workspace(new OpenDocuments());
    const before = (await workspace.service()).snapshot;
    workspace.settings = readSettings({ decimalSign: 'comma' }, nothing);
    const { snapshot } = workspace.now();
    expect(snapshot.revision).toBeGreaterThan(before.revision);
    expect([before, snapshot].map(({ settings }) => settings.display.decimalSign)).toEqual([
      'point',
      'comma',
    ]);
  });

  it('is the newest text of a file, though the disk answers in another order than it was asked', async () => {
    const uri = 'file:///quay/a.dough';
    const workspace = new Workspace(new OpenDocuments());
    workspace.folders = ['file:///quay'];
    const { files, answers } = onSlowDisk(workspace);
    files.watched([{ uri, type: 2 }]);
    files.watched([{ uri, type: 2 }]);
    await expect.poll(() => answers.length).toBe(2);
    answers[1]!('# new\n');
    // The newer text is taken in before the older one comes.
    await expect.poll(() => workspace.lines(uri)?.[0]).toBe('# new');
    answers[0]!('# old\n');
    await files.settled(1000);
    expect((await workspace.service()).lines(uri)[0]).toBe('# new');
  });

  it('forgets what was still being read when its folder went', async () => {
    const uri = 'file:///quay/mill/fine/flours.dough';
    const workspace = new Workspace(new OpenDocuments());
    workspace.folders = ['file:///quay'];
    const { files, answers } = onSlowDisk(workspace);
    files.watched([{ uri, type: 1 }]);
    await expect.poll(() => answers.length).toBe(1);
    files.watched([{ uri: 'file:///quay/mill', type: 3 }]);
    await expect.poll(() => answers.length).toBe(2);
    answers[0]!('# there when it was asked for\n');
    answers[1]!(undefined);
    await files.settled(1000);
    expect((await workspace.service()).has(uri)).toBe(false);
  });
});
