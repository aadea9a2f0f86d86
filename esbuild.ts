import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, relative } from 'node:path';
import { type BuildOptions, build, context, type Plugin } from 'esbuild';
import { isInExtension } from './server/build/extension-files.ts';
import { writeExtensionNotices } from './server/build/notices.ts';
import { galleryPage, galleryPages, publish } from './server/build/publish.ts';

/**
 * Bundles everything that runs into dist/.
 *
 *   node esbuild.ts           minified, without source maps: what is shipped, with the notices of what is bundled
 *   node esbuild.ts --dev     readable, with source maps
 *   node esbuild.ts --watch   as --dev, and again after every change
 *   node esbuild.ts --tests   the extension-host suite too
 */
const flags = new Set(process.argv.slice(2));
const watching = flags.has('--watch');
const readable = watching || flags.has('--dev');

const shared: BuildOptions = {
  bundle: true,
  minify: !readable,
  sourcemap: readable,
  legalComments: 'none',
  logLevel: 'warning',
  charset: 'ascii',
  external: ['vscode'],
};

// An editor of 2024 runs extensions on Node 20, whatever Node built them.
const forNode: BuildOptions = {
  ...shared,
  ...{ platform: 'node', format: 'cjs', target: 'node20' },
  // Another file is required, as the program is, which is quicker than the loader of modules.
  supported: { 'dynamic-import': false },
  plugins: [rooms(), whenUsed()],
  // Its file for Node asks for its own parts while it runs, which a bundle has not.
  alias: { 'jsonc-parser': 'jsonc-parser/lib/esm/main.js' },
};
const forBrowser: BuildOptions = { ...shared, platform: 'browser', target: 'es2022' };

// What several programs hold, or most runs of one need nothing of, is a file of its own beside them, read where it is imported first:
// by the source file that is its door. A worker in a browser, which has no file beside it, holds all of them.
const doors: Readonly<Record<string, string>> = {
  'core/index.ts': 'core',
  'core/words/de/german.ts': 'german',
  'core/words/fr/french.ts': 'french',
  'server/host/node.ts': 'language-server',
  'server/cli/main.ts': 'doughwright-main',
};

const bundles: BuildOptions[] = [
  { ...forNode, entryPoints: ['client/desktop.ts'], outfile: 'dist/extension.cjs' },
  // In a package of ES modules the editor's web host takes only a .cjs file for what it is. Hosts of 2024 and 2025 add
  // .js to that name, later ones do not: the same bundle stands under both names.
  { ...forBrowser, format: 'cjs', entryPoints: ['client/browser.ts'], outfile: 'dist/browser-extension.cjs' },
  {
    ...forBrowser,
    format: 'cjs',
    entryPoints: ['client/browser.ts'],
    outfile: 'dist/browser-extension.cjs.js',
  },
  { ...forNode, entryPoints: ['server/start.ts'], outfile: 'dist/server.cjs' },
  ...Object.entries(doors).map(([door, name]) => ({
    ...forNode,
    entryPoints: [door],
    outfile: `dist/${name}.cjs`,
  })),
  { ...forBrowser, format: 'iife', entryPoints: ['server/host/worker.ts'], outfile: 'dist/server-worker.js' },
  {
    ...forNode,
    entryPoints: ['server/cli/launch.ts'],
    outfile: 'dist/doughwright.cjs',
    banner: { js: '#!/usr/bin/env node' },
  },
  { ...forBrowser, format: 'iife', entryPoints: ['client/preview/page.ts'], outfile: 'dist/preview.js' },
  { ...forBrowser, format: 'iife', entryPoints: ['client/changes/page.ts'], outfile: 'dist/changes.js' },
  { ...forBrowser, format: 'iife', entryPoints: ['client/history/page.ts'], outfile: 'dist/history.js' },
  { ...forBrowser, format: 'iife', entryPoints: ['client/tables/page.ts'], outfile: 'dist/tables.js' },
  {
    ...forBrowser,
    format: 'iife',
    entryPoints: ['client/experiment/page.ts'],
    outfile: 'dist/experiment.js',
  },
  { ...forBrowser, entryPoints: ['client/preview/page.css'], outfile: 'dist/preview.css' },
];
if (flags.has('--tests')) {
  bundles.push({ ...forNode, entryPoints: ['test/editors/suite/index.ts'], outfile: 'dist/test/suite.cjs' });
}

writeDemo();
if (watching) {
  for (const bundle of bundles) await (await context(bundle)).watch();
  console.log('Bundled into dist/; watching for changes.');
} else if (readable) {
  await Promise.all(bundles.map((bundle) => build(bundle)));
} else {
  const made = await Promise.all(bundles.map((bundle) => build({ ...bundle, write: false, metafile: true })));
  const kept = new Set(Object.values(doors).map((name) => `${name}.cjs`));
  for (const { path, text } of made.flatMap((one) => one.outputFiles)) {
    mkdirSync(dirname(path), { recursive: true });
    const program = path.endsWith('.css') ? text : ascii(text);
    writeFileSync(path, kept.has(basename(path)) ? marked(program) : program);
  }
  writeExtensionNotices(
    import.meta.dirname,
    made.map(({ metafile }) => metafile),
  );
  for (const { from, to } of Object.values(galleryPages))
    writeFileSync(to, galleryPage(readFileSync(from, 'utf8'), publish, isInExtension(import.meta.dirname)));
}

/** The demo bakery as one file, which an editor in a browser can read too: the paths of its files, with the text of each. */
function writeDemo(): void {
  const folder = join(import.meta.dirname, 'examples');
  const paths = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => path.endsWith('.dough'))
    .sort();
  const demo = Object.fromEntries(paths.map((path) => [path, readFileSync(join(folder, path), 'utf8')]));
  mkdirSync('dist', { recursive: true });
  writeFileSync('dist/demo.json', JSON.stringify(demo));
}

function rooms(): Plugin {
  return {
    name: 'rooms',
    setup: ({ onResolve }) =>
      onResolve({ filter: /^\.\.?\/.*\.ts$/ }, ({ path, kind, resolveDir }) => {
        if (kind === 'entry-point') return undefined;
        const name = doors[relative(import.meta.dirname, join(resolveDir, path)).replaceAll('\\', '/')];
        return name === undefined ? undefined : { path: `./${name}.cjs`, external: true };
      }),
  };
}

// What libraries ask of Node at their start, for channels and programs that few runs need, is loaded when it is called first: a tenth
// of all that happens until the first findings. These are all that is called.
function whenUsed(): Plugin {
  const called: Readonly<Record<string, readonly string[]>> = {
    crypto: ['createHash', 'randomBytes', 'randomUUID'],
    child_process: ['fork', 'spawn', 'spawnSync'],
  };
  return {
    name: 'when-used',
    setup: ({ onResolve, onLoad }) => {
      onResolve({ filter: /^(node:)?(crypto|child_process)$/ }, ({ path, namespace }) =>
        namespace === 'when-used'
          ? { path, external: true }
          : { path: path.replace('node:', ''), namespace: 'when-used' },
      );
      onLoad({ filter: /./, namespace: 'when-used' }, ({ path }) => ({
        contents: (called[path] ?? [])
          .map((name) => `export const ${name} = (...args) => require('node:${path}').${name}(...args);`)
          .join('\n'),
      }));
    },
  };
}

// One letter beyond Latin in a program doubles the memory that all of it takes. The bundler writes such letters of
// strings as escapes, but leaves those of regular expressions, which mean the same when escaped.
function ascii(program: string): string {
  return program.replace(
    /[^\0-\x7f]/g,
    (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}

// What says which program this is, for the machine code that is kept of it (`server/host/kept-code.ts`).
function marked(program: string): string {
  return `// ${createHash('sha256').update(program).digest('hex').slice(0, 32)}\n${program}`;
}
