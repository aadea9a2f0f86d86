import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { foldersOfBuild, noticesName, packageFolders, writeNotices } from './notices.ts';
import { addressFields, publish } from './publish.ts';

/**
 * Makes the npm package in dist/npm from what dist/ holds: the command line, and the core as a library with its types. The
 * project's own package.json is the manifest of the VS Code extension, so the package gets one of its own, made from it.
 */
const project = fileURLToPath(new URL('../..', import.meta.url));
const folder = join(project, 'dist', 'npm');
const manifest = JSON.parse(readFileSync(join(project, 'package.json'), 'utf8')) as {
  readonly engines: { readonly node: string };
  readonly [field: string]: unknown;
};

rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });
for (const name of ['README.md', 'LICENSE', 'CHANGELOG.md', '.pre-commit-hooks.yaml'])
  cpSync(join(project, name), join(folder, name));
const programs = ['doughwright', 'doughwright-main', 'language-server', 'core', 'german', 'french'].map(
  (name) => `dist/${name}.cjs`,
);
for (const name of programs) cpSync(join(project, name), join(folder, name));

const { metafile } = await build({
  absWorkingDir: project,
  metafile: true,
  entryPoints: [join(project, 'core', 'index.ts')],
  outdir: join(folder, 'core'),
  bundle: true,
  // Another language is a file of its own, loaded when it is asked for.
  splitting: true,
  minify: true,
  format: 'esm',
  platform: 'neutral',
  mainFields: ['module', 'main'],
  target: 'es2022',
  charset: 'utf8',
  legalComments: 'none',
  logLevel: 'warning',
});
const ofCore = Object.values(packageFolders(metafile, project)).flat();
const bundled = [...foldersOfBuild(project, programs), ...ofCore.map((one) => join(project, one))];
writeNotices(project, 'npm', bundled, folder);
writeTypes();
writeFileSync(join(folder, 'package.json'), `${JSON.stringify(ownManifest(), null, 2)}\n`);
console.log(`dist/npm: ${Math.ceil(statSync(join(folder, 'core', 'index.js')).size / 1000)} kB of core`);

function ownManifest(): Record<string, unknown> {
  const { name, version, description, keywords, license, engines } = manifest;
  return {
    name,
    version,
    description,
    keywords,
    license,
    ...addressFields(publish),
    type: 'module',
    engines: { node: engines.node },
    bin: { doughwright: './dist/doughwright.cjs' },
    exports: {
      './core': { types: './core/types/index.d.ts', default: './core/index.js' },
      './package.json': './package.json',
    },
    sideEffects: false,
    files: ['dist', 'core', '.pre-commit-hooks.yaml', 'CHANGELOG.md', noticesName],
  };
}

/** The declarations of everything the core's door leads to, and no more; none of them needs another package. */
function writeTypes(): void {
  const all = join(project, 'dist', 'types');
  rmSync(all, { recursive: true, force: true });
  const flags = ['--noEmit', 'false', '--declaration', '--emitDeclarationOnly', '--outDir', all];
  execFileSync('tsc', ['-p', 'core', ...flags], { cwd: project, stdio: 'inherit' });
  const queue = ['index.d.ts'];
  const done = new Set(queue);
  for (let file = queue.shift(); file !== undefined; file = queue.shift()) {
    const source = readFileSync(join(all, file), 'utf8');
    // Declarations name each other by the file that will be there.
    const text = source.replace(/(from |import\()(['"])(\.[^'"]*)\.ts\2/g, (_, before, quote, path) => {
      const next = relative(all, join(all, dirname(file), `${path}.d.ts`));
      if (!done.has(next)) queue.push(next);
      done.add(next);
      return `${before}${quote}${path}.js${quote}`;
    });
    const outside = /(?:from |import\()['"](?!\.)([^'"]+)['"]/.exec(text);
    if (outside !== null) throw new Error(`${file} of the public types needs the package ${outside[1]}`);
    const to = join(folder, 'core', 'types', file);
    mkdirSync(dirname(to), { recursive: true });
    writeFileSync(to, text);
  }
}
