import { existsSync, mkdirSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { codeServerEntry, codeServerFolder, codeServerVersion, projectFolder } from './places.ts';
import { runProgram } from './processes.ts';

/**
 * Installs code-server, which is VS Code for a browser, into the user's cache when it is not there.
 * It takes about two minutes and 620 MB the first time. One module is built from source: a compiler,
 * make, python3, pkg-config and the headers of Kerberos (Debian: libkrb5-dev) must be there.
 *
 * @returns the script that Node runs to start it
 */
export async function installCodeServer(say: (line: string) => void = () => {}): Promise<string> {
  if (existsSync(finishedMark()) && existsSync(codeServerEntry())) return codeServerEntry();
  const folder = codeServerFolder();
  mkdirSync(folder, { recursive: true });
  writeFileSync(
    join(folder, 'package.json'),
    JSON.stringify({ private: true, dependencies: { 'code-server': codeServerVersion } }),
  );
  say(`Installing code-server ${codeServerVersion} into ${folder}: about two minutes, once.`);
  // The npm that runs this may itself run on an older Node, and what it says of itself in the environment is taken for
  // the Node that installs.
  const { npm_config_user_agent: _outer, ...inherited } = process.env;
  const env = { ...inherited, npm_config_nodedir: nodeHeadersFolder() };
  try {
    await runProgram(
      'npm',
      ['install', '--prefix', folder, '--no-audit', '--no-fund', '--loglevel=error'],
      900_000,
      env,
    );
  } catch (error) {
    // A half-finished folder would be taken for a whole one by npm the next time.
    rmSync(join(folder, 'node_modules'), { recursive: true, force: true });
    throw new Error(
      `code-server could not be installed. It needs a compiler, make, python3, pkg-config and libkrb5-dev. ${error}`,
    );
  }
  writeFileSync(finishedMark(), `${codeServerVersion}\n`);
  return codeServerEntry();
}

/** The folder that holds include/node of the Node that runs this: native modules must be built for that very one. */
export function nodeHeadersFolder(): string {
  const platform = `node-${process.platform}-${process.arch}`;
  const candidates = [
    join(projectFolder, 'node_modules', 'node', 'node_modules', platform),
    join(projectFolder, 'node_modules', platform),
    dirname(dirname(realpathSync(process.execPath))),
  ];
  const found = candidates.find((folder) => existsSync(join(folder, 'include', 'node', 'node.h')));
  if (found) return found;
  throw new Error(
    `No include/node/node.h in any of: ${candidates.join(', ')}. An npm install of something else takes it away; npm rebuild node brings it back.`,
  );
}

function finishedMark(): string {
  return join(codeServerFolder(), 'installed');
}

if (process.argv[1] && realpathSync(process.argv[1]) === fileURLToPath(import.meta.url)) {
  console.log(await installCodeServer(console.log));
}
