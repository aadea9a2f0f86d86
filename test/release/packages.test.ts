import { execFileSync, spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { Ajv } from 'ajv';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { allowedLicences, noticesName } from '../../server/build/notices.ts';
import { notYet, publish } from '../../server/build/publish.ts';
import { projectFolder } from '../editors/places.ts';
import type { Bill } from './bill.ts';
import { copyProject, sumOf, sumsName } from './build.ts';
import { filesOfZip } from './zip.ts';

const folder = realpathSync(mkdtempSync(join(tmpdir(), 'doughwright-packages-')));
const [ours, theirs] = [join(folder, 'ours'), join(folder, 'somewhere', 'théirs')];
const [one, other] = [join(folder, 'one'), join(folder, 'other')];
const version = '9.9.9';
const vsix = `doughwright-${version}.vsix`;
const tgz = `doughwright-${version}.tgz`;
let said = '';

/**
 * A release by the script itself, in a repository of its own that holds the project as it is now; and what a stranger builds
 * of its tag, elsewhere, in another time zone, letting nobody read what he writes.
 */
beforeAll(() => {
  copyProject(projectFolder, ours);
  git(ours, 'init', '--quiet', '--initial-branch=main');
  writeFileSync(join(ours, '.git', 'info', 'exclude'), 'node_modules\n');
  for (const [key, value] of [
    ['user.name', 'Quay Lane'],
    ['user.email', 'quay@lane.example'],
    ['commit.gpgSign', 'false'],
    ['tag.gpgSign', 'false'],
  ] as const)
    git(ours, 'config', key, value);
  git(ours, 'add', '--all');
  git(ours, 'commit', '--quiet', '--message', 'Begin');
  said = release(ours, {}, version, '--day', '2026-03-14', '--tag', '--into', one);

  git(folder, '-c', 'advice.detachedHead=false', 'clone', '--quiet', '--branch', `v${version}`, ours, theirs);
  writeFileSync(join(theirs, '.git', 'info', 'exclude'), 'node_modules\n');
  symlinkSync(realpathSync(join(projectFolder, 'node_modules')), join(theirs, 'node_modules'), 'junction');
  const mask = process.umask(0o077);
  release(theirs, { TZ: 'Pacific/Chatham' }, '--into', other);
  process.umask(mask);
}, 900_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }), 120_000);

function release(project: string, env: Readonly<Record<string, string>>, ...words: string[]): string {
  return execFileSync('npm', ['run', '--silent', 'release', '--', ...words], {
    cwd: project,
    env: { ...process.env, ...env },
    encoding: 'utf8',
  });
}

function git(project: string, ...words: string[]): string {
  return execFileSync('git', words, { cwd: project, encoding: 'utf8' }).trim();
}

describe('a release with --tag', { timeout: 120_000 }, () => {
  it('commits the version and the list of changes, and nothing else, and tags that', () => {
    expect(said).toContain(`Tagged v${version}.`);
    expect(git(ours, 'cat-file', '-t', `v${version}`)).toBe('tag');
    expect(git(ours, 'rev-parse', `v${version}^{commit}`)).toBe(git(ours, 'rev-parse', 'HEAD'));
    expect(git(ours, 'status', '--porcelain')).toBe('');
    expect(git(ours, 'diff', '--numstat', 'HEAD~1').split('\n')).toEqual([
      '2\t0\tCHANGELOG.md',
      '2\t2\tpackage-lock.json',
      '1\t1\tpackage.json',
      '1\t1\tsyntaxes/tree-sitter/tree-sitter.json',
    ]);
    expect(git(ours, 'log', '-1', '--format=%s')).toBe(`Release ${version}`);
  });

  it('says what a stranger would miss', () => {
    for (const sentence of notYet(publish)) expect(said).toContain(sentence);
  });

  it.each([
    ['a version that is there', [version], /The tag v9\.9\.9 is there already/],
    ['an older one', ['0.0.9'], /0\.0\.9 does not come behind 9\.9\.9/],
    ['what is no version', ['next'], /three numbers/],
    ['a day that there is not', ['10.0.0', '--day', '2026-02-31'], /A day is written/],
    ['changes that say nothing', ['10.0.0'], /says nothing under Unreleased/],
    ['a tag without a version', ['--tag'], /Name the version/],
  ])('is refused for %s', (_, words, why) => {
    expect(refused(...words)).toMatch(why);
    expect(git(ours, 'status', '--porcelain')).toBe('');
  });

  it('is refused where something is not committed', () => {
    const stray = join(ours, 'stray.dough');
    writeFileSync(stray, '');
    onTestFinished(() => rmSync(stray));
    expect(refused('10.0.0')).toMatch(/Commit or remove these first[\s\S]*stray\.dough/);
  });

  function refused(...words: string[]): string {
    const { status, stderr } = spawnSync('npm', ['run', '--silent', 'release', '--', ...words], {
      cwd: ours,
      encoding: 'utf8',
    });
    expect(status).toBe(1);
    return stderr;
  }
});

describe('a release and what a stranger builds of its tag', () => {
  it('are the same bytes, in whatever folder, time zone and mask', () => {
    const sums = readFileSync(join(one, sumsName), 'utf8');
    expect(readFileSync(join(other, sumsName), 'utf8')).toBe(sums);
    expect(readdirSync(one).sort()).toEqual(
      [sumsName, tgz, `${tgz}.cdx.json`, vsix, `${vsix}.cdx.json`].sort(),
    );
  });

  it('have the checksums that the list says, for every file', () => {
    const lines = readFileSync(join(other, sumsName), 'utf8').trim().split('\n');
    expect(lines).toHaveLength(4);
    for (const line of lines) {
      const [sum, name] = line.split('  ');
      expect(sumOf(join(other, name!)), name).toBe(sum);
    }
  });
});

/**
 * The folders of the packages that a bundle of these entry points holds something of, by the remarks that the bundler
 * sets before each file it takes in when it does not minify; and by where its source map says the lines come from, which goes
 * through the maps of files that are bundles themselves.
 */
async function foldersIn(...entryPoints: readonly string[]): Promise<string[]> {
  const bundles = await Promise.all(
    entryPoints.map((entryPoint) =>
      build({
        absWorkingDir: projectFolder,
        entryPoints: [entryPoint],
        bundle: true,
        write: false,
        ...{ sourcemap: 'external', outdir: 'nowhere' },
        // The core is a file of its own beside the programs for Node.
        external: ['vscode', ...(/worker/.test(entryPoint) ? [] : ['*/core/index.ts'])],
        format: 'cjs',
        logLevel: 'error',
        platform: /browser|worker|page/.test(entryPoint) ? 'browser' : 'node',
        ...(entryPoint === 'core/index.ts' && { platform: 'neutral', mainFields: ['module', 'main'] }),
      }),
    ),
  );
  const outputs = bundles.flatMap(({ outputFiles }) => outputFiles);
  const remarks = outputs.flatMap(({ text }) =>
    [...text.matchAll(/^\s*\/\/ (\S*node_modules\/(?:@[^/\s]+\/)?[^/\s]+)\//gm)].map(([, name]) =>
      resolve(projectFolder, name!),
    ),
  );
  const sources = outputs
    .filter(({ path }) => path.endsWith('.map'))
    .flatMap(({ text }) => (JSON.parse(text) as { sources: string[] }).sources);
  // A file within a bundle is named as if its package were installed below it; here it stands beside.
  const within = sources.flatMap((source) => {
    const [, outer, inner] = /(node_modules\/.*)\/node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(source) ?? [];
    if (outer === undefined || existsSync(join(projectFolder, outer, 'node_modules', inner!))) return [];
    return [join(projectFolder, 'node_modules', inner!)];
  });
  return [...new Set([...remarks, ...within])];
}

/** What a test knows of an installed package, read anew. */
function installed(from: string): { title: string; licence: string; text: string } {
  const { name, version, license } = JSON.parse(readFileSync(join(from, 'package.json'), 'utf8')) as Record<
    string,
    string
  >;
  const file = readdirSync(from).find((one) => /^licen[cs]e/i.test(one));
  const text = readFileSync(join(from, file!), 'utf8').replace(/\r/g, '').trim();
  return { title: `${name} ${version}`, licence: license!, text };
}

function titlesIn(notices: string): string[] {
  return [...notices.matchAll(/^={72}\n(.+)\nLicence: .+\n={72}$/gm)].map(([, title]) => title!);
}

/** What the programs beside the entry points hold, which are read when they are asked for. */
const doors = ['core/index.ts', 'server/host/node.ts', 'server/cli/main.ts'];

/** Where the bundles begin, as the build says. */
const entries = [
  ...readFileSync(join(projectFolder, 'esbuild.ts'), 'utf8').matchAll(/entryPoints: \['([^']+\.ts)'\]/g),
].flatMap(([, name]) => (name!.startsWith('test/') ? [] : [name!]));

describe.each([
  [
    'the extension',
    [...entries.filter((name) => !name.startsWith('server/cli/')), ...doors],
    () => filesOfZip(join(one, vsix)).get(`extension/dist/${noticesName}`)!.toString('utf8'),
    vsix,
  ],
  [
    'the npm package',
    [...entries.filter((name) => name.startsWith('server/cli/')), ...doors],
    () => execFileSync('tar', ['-xzOf', join(one, tgz), `package/${noticesName}`], { encoding: 'utf8' }),
    tgz,
  ],
])('%s', (_, entryPoints, read, name) => {
  it('names every package that is bundled into it, and no other, each with the text of its licence', async () => {
    const notices = read();
    const bundled = (await foldersIn(...entryPoints)).map(installed);
    expect(bundled.length).toBeGreaterThan(10);
    expect(titlesIn(notices).sort()).toEqual(bundled.map(({ title }) => title).sort());
    for (const { title, licence, text } of bundled) {
      expect(notices, title).toContain(`\n${title}\nLicence: ${licence}\n`);
      expect(text.length, title).toBeGreaterThan(400);
      expect(notices, title).toContain(text);
      expect(allowedLicences, title).toContain(licence);
    }
  }, 120_000);

  it('has a bill of materials that says the same, by the published schema', () => {
    const bill = JSON.parse(readFileSync(join(one, `${name}.cdx.json`), 'utf8')) as Bill;
    // CycloneDX 1.5, as its library ships the schema.
    const schemas = join(projectFolder, 'node_modules/@cyclonedx/cyclonedx-library/res/schema');
    const ajv = new Ajv({ strict: false, validateFormats: false });
    for (const name of ['bom-1.5', 'spdx', 'jsf-0.82'].map((one) => `${one}.SNAPSHOT.schema.json`)) {
      const { $id: _, ...schema } = JSON.parse(readFileSync(join(schemas, name), 'utf8')) as { $id: string };
      ajv.addSchema(schema, name);
    }
    const check = ajv.getSchema('bom-1.5.SNAPSHOT.schema.json')!;
    expect([check(bill), check.errors]).toEqual([true, null]);
    expect(check({ ...bill, components: [{ name: 'without a type' }] })).toBe(false);
    expect(bill.components.map((one) => `${one.name} ${one.version}`)).toEqual(titlesIn(read()));
    expect(bill.metadata).toMatchObject({
      timestamp: '2026-03-14T00:00:00.000Z',
      component: { name: 'doughwright', version },
    });
    expect(JSON.stringify(bill)).not.toContain('development');
    const [own] = bill.dependencies;
    expect(own!.dependsOn).toHaveLength(bill.components.length);
  }, 120_000);
});

describe('the pages of the extension’s package', () => {
  it.each(['readme.md', 'changelog.md'])('%s leads to files in the package and nowhere else', (name) => {
    const files = filesOfZip(join(one, vsix));
    const page = files.get(`extension/${name}`)!.toString('utf8');
    const references = [...page.matchAll(/^\[(\d+)\]: (\S+)$/gm)];
    expect(references.length).toBeGreaterThan(0);
    for (const [, number, target] of references) {
      expect(page).toContain(`][${number}]`);
      expect([...files.keys()]).toContain(`extension/${target!.replace(/#.*/, '')}`);
    }
    expect(page).not.toMatch(/\]\(/);
  });

  it('the gallery sees its own page and not that of the project, with pictures', () => {
    const files = filesOfZip(join(one, vsix));
    const page = files.get('extension/readme.md')!.toString('utf8');
    expect(page).not.toContain('npm ci');
    expect(page.match(/\[Picture: [^\]]{20,}\]\[\d+\]/g)?.length).toBeGreaterThan(1);
    expect([...files.keys()]).not.toContain('extension/README.md');
  });
});
