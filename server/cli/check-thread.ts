import { setImmediate as nextTurn } from 'node:timers/promises';
import { parentPort, Worker, workerData } from 'node:worker_threads';
import { threadWord } from '../host/thread.ts';
import { wordedIn } from '../sync/language.ts';
import { checkShare, handedOver, type Share } from './check-share.ts';
import type { ReportedFinding } from './report/report.ts';

/** As many times the usual room a thread may have in the end. */
const mostRoom = 64;

/**
 * A share checked in a thread of its own. A thread that needs more room than it is given, as for thousands of trials on one
 * mixer, begins again with more.
 */
export async function inThread(share: Share, handed: () => void, room = 1): Promise<ReportedFinding[]> {
  try {
    return await oneThread(share, handed, room);
  } catch (error) {
    const isFull = (error as NodeJS.ErrnoException).code === 'ERR_WORKER_OUT_OF_MEMORY';
    if (!isFull || room >= mostRoom) throw error;
    return inThread(share, () => {}, room * 8);
  }
}

function oneThread(share: Share, handed: () => void, room: number): Promise<ReportedFinding[]> {
  const megabytes = share.texts.reduce((sum, [, text]) => sum + text.length, 0) / 2 ** 20;
  return new Promise((resolve, reject) => {
    // By the file that was started, each has the machine code that is kept.
    const worker = new Worker(process.argv[1] ?? __filename, {
      argv: [threadWord],
      workerData: share,
      // Left alone, a thread lets rubbish pile up to a gigabyte before it tidies.
      resourceLimits: {
        maxYoungGenerationSizeMb: 2,
        maxOldGenerationSizeMb: room * (46 + 2 * megabytes),
      },
    });
    const found: ReportedFinding[] = [];
    worker.on('message', (some: ReportedFinding[]) => {
      for (const one of some) found.push(one);
      handed();
    });
    worker.once('error', reject);
    worker.once('exit', (code) => {
      if (code === 0) resolve(found);
      else reject(new Error(`a thread of the check ended with ${code}`));
    });
  });
}

/** What a thread does that was started with `threadWord`: its share, and nothing else. */
export async function workAsThread(): Promise<void> {
  const share = workerData as Share;
  for (const found of checkShare(share, await wordedIn(share.language), handedOver)) {
    parentPort?.postMessage(found);
    // What a weak reference points to is held until the turn ends.
    await nextTurn();
  }
}
