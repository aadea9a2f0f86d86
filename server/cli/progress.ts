let isShown = false;

/** A line on a terminal that tells how far long work has come, and is gone when it is done; elsewhere nothing. */
export function progress(words: string): void {
  if (!process.stderr.isTTY || (words === '' && !isShown)) return;
  process.stderr.write(words === '' ? '\r\u001b[K' : `\r${words}\u001b[K`);
  isShown = words !== '';
}
