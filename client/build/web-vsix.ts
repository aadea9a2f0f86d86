import { cpSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createVSIX, listFiles, PackageManager } from '@vscode/vsce';
import { projectFolder, readManifest, sizeLine } from './manifest.ts';

/**
 * Packages the browser build alone, as `dist/doughwright-web.vsix`: the manifest has `browser` and no `main`, so that an
 * editor which could run both must take the browser's. The tests install it.
 */
const folder = mkdtempSync(join(tmpdir(), 'doughwright-web-'));
try {
  const manifest = readManifest();
  for (const file of await listFiles({ cwd: projectFolder, packageManager: PackageManager.None })) {
    cpSync(join(projectFolder, file), join(folder, file));
  }
  cpSync(join(projectFolder, '.vscodeignore'), join(folder, '.vscodeignore'));
  delete manifest.main;
  // Nothing is built in the copy: it is packaged as it lies there.
  delete manifest.scripts;
  writeFileSync(join(folder, 'package.json'), JSON.stringify(manifest));
  const packagePath = join(projectFolder, 'dist', 'doughwright-web.vsix');
  await createVSIX({ cwd: folder, packagePath });
  console.log(sizeLine('dist/doughwright-web.vsix', statSync(packagePath).size));
} finally {
  rmSync(folder, { recursive: true, force: true });
}
