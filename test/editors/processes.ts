import { type ChildProcess, spawn } from 'node:child_process';
import { createServer } from 'node:net';

export interface RunningProgram {
  readonly child: ChildProcess;
  /** Everything the program has written to both its outputs so far. */
  output(): string;
  /** Ends the program and all it started; resolves when it is gone. */
  stop(): Promise<void>;
}

const running = new Set<ChildProcess>();
let watching = false;

/** Starts a program in a process group of its own, so that ending it ends all it started, even when we crash. */
export function startProgram(
  command: string,
  args: string[],
  env: NodeJS.ProcessEnv = process.env,
): RunningProgram {
  const child = spawn(command, args, { detached: true, stdio: ['ignore', 'pipe', 'pipe'], env });
  let text = '';
  child.stdout?.on('data', (data) => {
    text += data;
  });
  child.stderr?.on('data', (data) => {
    text += data;
  });
  child.on('error', (error) => {
    text += `\n${error.message}\n`;
  });
  watchForExit(child);
  return { child, output: () => text, stop: () => stopGroup(child) };
}

/** Runs a program to its end. Rejects when it ends with another code than 0 or takes longer than the time given. */
export async function runProgram(
  command: string,
  args: string[],
  timeoutMilliseconds: number,
  env: NodeJS.ProcessEnv = process.env,
): Promise<string> {
  const program = startProgram(command, args, env);
  const ended = new Promise<number | string>((resolve) => {
    program.child.once('close', (code, signal) => resolve(code ?? signal ?? 'no exit code'));
    program.child.once('error', (error) => resolve(error.message));
  });
  let timer: NodeJS.Timeout | undefined;
  const tooLong = new Promise<'time-out'>((resolve) => {
    timer = setTimeout(() => resolve('time-out'), timeoutMilliseconds);
  });
  const code = await Promise.race([ended, tooLong]);
  clearTimeout(timer);
  await program.stop();
  if (code === 0) return program.output();
  const why = code === 'time-out' ? `took longer than ${timeoutMilliseconds / 1000} s` : `ended with ${code}`;
  throw new Error(`${command} ${args.join(' ')} ${why}:\n${program.output()}`);
}

/** Asks until the answer is there. The error of a time-out says what was awaited and, where told, what was there instead. */
export async function waitUntil<T>(
  awaited: string,
  ask: () => Promise<T | undefined> | T | undefined,
  timeoutMilliseconds = 30_000,
  instead?: () => Promise<string> | string,
): Promise<T> {
  const deadline = Date.now() + timeoutMilliseconds;
  for (;;) {
    const answer = await ask();
    if (answer !== undefined) return answer;
    if (Date.now() > deadline) break;
    await after(100);
  }
  const found = instead ? `; there was: ${await instead()}` : '';
  throw new Error(`Waited ${timeoutMilliseconds / 1000} s for ${awaited}, and it did not come${found}`);
}

/** Resolves after the time given. */
export function after(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}

/** A loopback port nobody listens on. */
export function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      const port = typeof address === 'object' && address ? address.port : 0;
      server.close(() => resolve(port));
    });
  });
}

function watchForExit(child: ChildProcess): void {
  if (!watching) {
    watching = true;
    process.on('exit', killAll);
    // A program in a group of its own does not hear the terminal's interrupt: it is passed on.
    for (const signal of ['SIGINT', 'SIGTERM'] as const) {
      process.on(signal, () => process.exit(signal === 'SIGINT' ? 130 : 143));
    }
  }
  running.add(child);
}

function killAll(): void {
  for (const child of running) signalGroup(child, 'SIGKILL');
}

async function stopGroup(child: ChildProcess): Promise<void> {
  signalGroup(child, 'SIGTERM');
  const gone = () =>
    child.exitCode !== null || child.signalCode !== null || child.pid === undefined ? true : undefined;
  await waitUntil('a program to end', gone, 5_000).catch(() => undefined);
  // Whatever the program started and left behind is in its group still.
  signalGroup(child, 'SIGKILL');
  running.delete(child);
}

function signalGroup(child: ChildProcess, signal: NodeJS.Signals): void {
  if (child.pid === undefined) return;
  try {
    process.kill(-child.pid, signal);
  } catch {
    // The whole group has ended already.
  }
}
