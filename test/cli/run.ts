import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { commandLineProgram, nodeProgram } from '../editors/places.ts';

export interface Outcome {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the command line to its end in a folder, with standard output a pipe as in a script. */
export function doughwright(folder: string, ...args: readonly string[]): Promise<Outcome> {
  const program = commandLineProgram();
  if (!existsSync(program)) throw new Error(`${program} is not there; run npm run build first`);
  return new Promise((resolve, reject) => {
    const child = spawn(nodeProgram, [program, ...args], {
      cwd: folder,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let [stdout, stderr] = ['', ''];
    child.stdout.on('data', (data) => {
      stdout += data;
    });
    child.stderr.on('data', (data) => {
      stderr += data;
    });
    child.once('error', reject);
    child.once('close', (code) => {
      if (/[\uE000\uE001]/.test(stdout + stderr))
        reject(new Error(`A figure is not written out: ${stdout}${stderr}`));
      else resolve({ code, stdout, stderr });
    });
  });
}
