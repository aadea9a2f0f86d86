import { statSync } from 'node:fs';
import { join } from 'node:path';
import { createVSIX } from '@vscode/vsce';
import { projectFolder, readManifest, sizeLine } from './manifest.ts';

/** Packages what dist/ holds as the extension a baker installs: `doughwright-<version>.vsix` in the project's folder. */
const largestBytes = 3_000_000;
const name = `doughwright-${readManifest().version}.vsix`;
const packagePath = join(projectFolder, name);

await createVSIX({ cwd: projectFolder, packagePath });
const bytes = statSync(packagePath).size;
console.log(sizeLine(name, bytes));
if (bytes > largestBytes)
  throw new Error(`${name} is larger than ${largestBytes} bytes: look at what .vscodeignore lets in.`);
