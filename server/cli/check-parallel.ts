import { availableParallelism } from 'node:os';
import { setImmediate as nextTurn } from 'node:timers/promises';
import { parentPort, Worker, workerData } from 'node:worker_threads';
import { message } from '../../core/index.ts';
import { wordedIn } from '../sync/language.ts';
import { checkShare, type Share } from './check-share.ts';
import { progress } from './progress.ts';
import type { ReportedFinding } from './report/report.ts';
import { say } from './speaker.ts';

/** Below so many files a second thread takes longer to start than it saves. */
const worthSharing = 300;
/** Each thread holds all texts and its own machine code. */
const mostThreads = 4;

/** As many times the usual room a thread may have in the end. */
const mostRoom = 64;

/** Files whose findings a thread hands over at once, so that it need not hold them. */
const handedOver = 100;

/**
 * The findings of many files, shared among as many threads as there are cores. The order is that of the files, however the
 * threads come to their ends. Memory does not grow with the number of files but for their texts and what is found. A
 * terminal is told how far it is.
 */
export async function checkInParallel(whole: Share): Promise<ReportedFinding[]> {
  const all = whole.asked.length;
  let checked = 0;
  const handed = (some: number): void => {
    checked = Math.min(all, checked + some);
    progress(say(message('command-check.checked', { count: checked, otherCount: all })));
  };
  const threads = Math.min(availableParallelism(), mostThreads);
  if (all < worthSharing || threads === 1) {
    const worded = await wordedIn(whole.language);
    const found = [...checkShare(whole, worded, handedOver)].flatMap((some) => {
      if (all > handedOver) handed(handedOver);
      return some;
    });
    progress('');
    return found;
  }
  const size = Math.ceil(all / threads);
  const shares = Array.from({ length: threads }, (_, index) => ({
    ...whole,
    asked: whole.asked.slice(index * size, (index + 1) * size),
  }));
  const found = (await Promise.all(shares.map((share) => inThread(share, () => handed(handedOver))))).flat();
  progress('');
  return found;
}

/**
 * A share checked in a thread of its own. A thread that needs more room than it is given, as for thousands of trials on one
 * mixer, begins again with more.
 */
async function inThread(share: Share, handed: () => void, room = 1): Promise<ReportedFinding[]> {
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

/** What a thread does: its share, and nothing else. */
export async function workAsThread(): Promise<void> {
  const share = workerData as Share;
  for (const found of checkShare(share, await wordedIn(share.language), handedOver)) {
    parentPort?.postMessage(found);
    // What a weak reference points to is held until the turn ends.
    await nextTurn();
  }
}
