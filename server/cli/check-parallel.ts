import { availableParallelism } from 'node:os';
import { message } from '../../core/index.ts';
import { wordedIn } from '../sync/language.ts';
import { checkShare, handedOver, type Share } from './check-share.ts';
import { progress } from './progress.ts';
import type { ReportedFinding } from './report/report.ts';
import { say } from './speaker.ts';

/** Below so many files a second thread takes longer to start than it saves. */
const worthSharing = 300;
/** Each thread holds all texts and its own machine code. */
const mostThreads = 4;

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
  const { inThread } = await import('./check-thread.ts');
  const size = Math.ceil(all / threads);
  const shares = Array.from({ length: threads }, (_, index) => ({
    ...whole,
    asked: whole.asked.slice(index * size, (index + 1) * size),
  }));
  const found = (await Promise.all(shares.map((share) => inThread(share, () => handed(handedOver))))).flat();
  progress('');
  return found;
}
