import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  realpathSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { packageListName } from '../../server/build/notices.ts';
import { type Bill, billOf } from './bill.ts';

/** The name of the file with the checksums, as `sha256sum --check` reads it. */
export const sumsName = 'SHA256SUMS';

export interface Release {
  readonly version: string;
  /** The day of the release, YYYY-MM-DD: its midnight, in UTC, is the time of every file in the packages. */
  readonly day: string;
  /** Files by their path from the project's folder that are to have another text. */
  readonly edits: ReadonlyMap<string, string>;
}

/**
 * Builds both packages with a bill of materials each and the checksums of all of them into a folder; gives the names of the
 * files there. They are built in a copy of what git keeps or would keep, so that the folder of the project stays as it is
 * and nothing that lies about in it gets in. Nothing of the copy's place, the clock, the time zone, the language or the mask
 * of the user enters: the same files give the same bytes.
 */
export function buildRelease(project: string, into: string, { version, day, edits }: Release): string[] {
  const copy = realpathSync(mkdtempSync(join(tmpdir(), 'doughwright-release-')));
  const mask = process.umask(0o022);
  try {
    copyProject(project, copy);
    for (const [name, text] of edits) writeFileSync(join(copy, name), text);
    const time = new Date(`${day}T00:00:00Z`);
    const env = { ...process.env, SOURCE_DATE_EPOCH: `${time.getTime() / 1000}`, TZ: 'UTC', LC_ALL: 'C' };
    const npm = (...words: string[]): string =>
      execFileSync('npm', words, {
        cwd: copy,
        env,
        encoding: 'utf8',
        shell: process.platform === 'win32',
        maxBuffer: 1e9,
        stdio: ['ignore', 'pipe', 'inherit'],
      });
    npm('run', '--silent', 'package');
    npm('run', '--silent', 'pack:npm');
    const whole = JSON.parse(npm('sbom', '--sbom-format', 'cyclonedx', '--package-lock-only')) as Bill;
    const packages = [
      ['extension', join(copy, `doughwright-${version}.vsix`)],
      ['npm', join(copy, 'dist', `doughwright-${version}.tgz`)],
    ] as const;
    rmSync(into, { recursive: true, force: true });
    mkdirSync(into, { recursive: true });
    const names: string[] = [];
    for (const [of, path] of packages) {
      const bundled = JSON.parse(readFileSync(join(copy, packageListName(of)), 'utf8')) as [];
      const bill = `${basename(path)}.cdx.json`;
      copyFileSync(path, join(into, basename(path)));
      writeFileSync(join(into, bill), `${JSON.stringify(billOf(whole, bundled, time), null, 2)}\n`);
      names.push(basename(path), bill);
    }
    writeFileSync(
      join(into, sumsName),
      names.map((name) => `${sumOf(join(into, name))}  ${name}\n`).join(''),
    );
    return [...names, sumsName];
  } finally {
    process.umask(mask);
    rmSync(copy, { recursive: true, force: true });
  }
}

/** The SHA-256 of a file, in hexadecimal digits. */
export function sumOf(path: string): string {
  return createHash('sha256').update(readFileSync(path)).digest('hex');
}

/** Every file that git keeps or would keep, with the modes that git knows, and what is installed by a link. */
export function copyProject(project: string, copy: string): void {
  const listed = execFileSync('git', ['ls-files', '-z', '--cached', '--others', '--exclude-standard'], {
    cwd: project,
    encoding: 'utf8',
    maxBuffer: 1e9,
  });
  for (const name of new Set(listed.split('\0'))) {
    const from = join(project, name);
    // What was removed and not yet committed is listed too.
    if (name === '' || !existsSync(from)) continue;
    const to = join(copy, name);
    mkdirSync(dirname(to), { recursive: true });
    copyFileSync(from, to);
    chmodSync(to, statSync(from).mode & 0o111 ? 0o755 : 0o644);
  }
  symlinkSync(realpathSync(join(project, 'node_modules')), join(copy, 'node_modules'), 'junction');
}
