import { availableParallelism } from 'node:os';
import { parentPort, Worker, workerData } from 'node:worker_threads';
import { checkShare, type Share } from './check-share.ts';
import type { ToldFinding } from './report/report.ts';

/** Below so many files a second thread takes longer to start than it saves. */
const worthSharing = 300;
/** Each thread holds all texts and its own machine code. */
const mostThreads = 4;

/** Files whose findings a thread hands over at once, so that it need not hold them. */
const handedOver = 250;

/**
 * The findings of many files, shared among as many threads as there are cores. The order is that of the files, however the
 * threads come to their ends. Memory does not grow with the number of files but for their texts and what is found.
 */
export async function checkInParallel(whole: Share): Promise<ToldFinding[]> {
  const threads = Math.min(availableParallelism(), mostThreads);
  if (whole.asked.length < worthSharing || threads === 1) return [...checkShare(whole)].flat();
  const size = Math.ceil(whole.asked.length / threads);
  const shares = Array.from({ length: threads }, (_, index) => ({
    ...whole,
    asked: whole.asked.slice(index * size, (index + 1) * size),
  }));
  return (await Promise.all(shares.map(inThread))).flat();
}

function inThread(share: Share): Promise<ToldFinding[]> {
  const megabytes = share.texts.reduce((sum, [, text]) => sum + text.length, 0) / 2 ** 20;
  return new Promise((resolve, reject) => {
    const worker = new Worker(__filename, {
      workerData: share,
      // Left alone, a thread lets rubbish pile up to a gigabyte before it tidies.
      resourceLimits: { maxYoungGenerationSizeMb: 8, maxOldGenerationSizeMb: 64 + 3 * megabytes },
    });
    const found: ToldFinding[] = [];
    worker.on('message', (some: ToldFinding[]) => found.push(...some));
    worker.once('error', reject);
    worker.once('exit', (code) => {
      if (code === 0) resolve(found);
      else reject(new Error(`a thread of the check ended with ${code}`));
    });
  });
}

/** What a thread does: its share, and nothing else. */
export function workAsThread(): void {
  for (const found of checkShare(workerData as Share, handedOver)) parentPort?.postMessage(found);
}
