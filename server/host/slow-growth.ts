import { setFlagsFromString } from 'node:v8';

/** As many files as make the heap grow past what a small command needs in all. */
const many = 300;
let isSlow = false;

/**
 * Has the heap looked through when it is a third larger than what it holds, where it would else grow by two hundred megabytes
 * before: for commands that work out thousands of files one after another. One file would take a third longer, so it is for many alone.
 */
export function growSlowlyFor(files: number): void {
  if (files < many || isSlow) return;
  isSlow = true;
  setFlagsFromString('--heap-growing-percent=30');
  // Machine code is kept at the end, for the flags that the next start has.
  process.prependOnceListener('exit', () => setFlagsFromString('--heap-growing-percent=0'));
}
