import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** The environment variable that names the folder where a run of all tests installs each package once. */
export const installedOnce = 'DOUGHWRIGHT_INSTALLED_ONCE';

/** Before the first file of tests, and what is done behind the last. */
export default function setup(): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'doughwright-installed-'));
  process.env[installedOnce] = folder;
  return () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
}
