/** One test of the suite: throws (or rejects) when it fails. */
type Body = () => Promise<void> | void;

const checks: { readonly name: string; readonly body: Body }[] = [];

/** Adds a test to the suite; tests run in the order in which they were added, one at a time. */
export function check(name: string, body: Body): void {
  checks.push({ name, body });
}

/**
 * Runs all tests and tells each result on the console as a line of the Test Anything Protocol. Rejects when one
 * failed or none was there, which makes the editor end with a code other than 0.
 */
export async function runAll(secondsPerTest = 30): Promise<void> {
  let failures = 0;
  for (const [index, { name, body }] of checks.entries()) {
    const problem = await problemOf(body, secondsPerTest);
    if (problem === undefined) {
      console.log(`ok ${index + 1} - ${name}`);
      continue;
    }
    failures += 1;
    console.log(`not ok ${index + 1} - ${name}\n${problem.replaceAll(/^/gm, '  # ')}`);
  }
  console.log(`1..${checks.length}`);
  if (checks.length === 0) throw new Error('The suite holds no test.');
  if (failures > 0) throw new Error(`${failures} of ${checks.length} tests failed.`);
}

/** Asks until the answer is there; the error of a time-out says what was awaited and what was there instead. */
export async function eventually<T>(
  awaited: string,
  ask: () => Promise<T | undefined> | T | undefined,
  instead: () => unknown = () => undefined,
  seconds = 15,
): Promise<T> {
  const deadline = Date.now() + seconds * 1000;
  for (;;) {
    const answer = await ask();
    if (answer !== undefined) return answer;
    if (Date.now() > deadline) break;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error(`waited ${seconds} s for ${awaited}; there was: ${JSON.stringify(await instead())}`);
}

async function problemOf(body: Body, seconds: number): Promise<string | undefined> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const tooLong = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(`not done after ${seconds} s`)), seconds * 1000);
  });
  try {
    await Promise.race([body(), tooLong]);
    return undefined;
  } catch (error) {
    return error instanceof Error ? (error.stack ?? error.message) : String(error);
  } finally {
    clearTimeout(timer);
  }
}
