import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join } from 'node:path';
import { publint } from 'publint';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { projectFolder, projectVersion } from '../editors/places.ts';
import { lowestNode, nodeOfMajor } from '../lowest-node.ts';

const lowest = nodeOfMajor(lowestNode());
const bin = (name: string): string => join(projectFolder, 'node_modules', '.bin', name);
let folder = '';
let tarball = '';

/** An empty folder in which somebody installs the package, with no registry at hand: it needs no other package. */
beforeAll(() => {
  execFileSync('npm', ['run', '--silent', 'pack:npm'], { cwd: projectFolder, stdio: 'ignore' });
  tarball = join(projectFolder, 'dist', `doughwright-${projectVersion()}.tgz`);
  folder = realpathSync(mkdtempSync(join(tmpdir(), 'quay lane ø-')));
  writeFileSync(join(folder, 'package.json'), '{ "name": "quay-lane", "private": true, "type": "module" }\n');
  execFileSync('npm', ['install', '--offline', '--no-audit', '--no-fund', tarball], {
    cwd: folder,
    stdio: 'ignore',
  });
}, 240_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function run(program: string, ...words: string[]): { code: number | null; stdout: string; stderr: string } {
  const { status, stdout, stderr } = spawnSync(program, words, { cwd: folder, encoding: 'utf8' });
  return { code: status, stdout, stderr };
}

describe('the npm package in an empty folder', () => {
  it('runs as npx doughwright', () => {
    writeFileSync(join(folder, 'a.dough'), 'formula A:\n  strong white 100%\n  water 65%\n  salt 2\n');
    expect(run('npx', '--offline', 'doughwright', '--version').stdout).toBe(`${projectVersion()}\n`);
    const { code, stdout, stderr } = run('npx', '--offline', 'doughwright', 'check', '--level', 'error');
    expect([code, stdout.split('\n')[0]]).toEqual([1, expect.stringMatching(/^a\.dough:4:8: error: /)]);
    // npm itself may have something to say there.
    expect(stderr).not.toContain('doughwright');
  });

  it.runIf(lowest !== undefined)(
    'runs on the lowest Node that is promised, as a program and as a library',
    () => {
      const env = { ...process.env, PATH: `${dirname(lowest!)}${delimiter}${process.env.PATH}` };
      const onIt = (program: string, ...words: string[]) =>
        spawnSync(program, words, { cwd: folder, encoding: 'utf8', env });
      expect(onIt('node', '--version').stdout).toMatch(new RegExp(`^v${lowestNode()}\\.`));
      writeFileSync(join(folder, 'b.dough'), 'formula B:\n  strong white 100%\n  water 65%\n  salt 2\n');
      const checked = onIt('npx', '--offline', 'doughwright', 'check', '--level', 'error', 'b.dough');
      expect([checked.status, checked.stdout.split('\n')[0]]).toEqual([
        1,
        expect.stringMatching(/^b\.dough:4:8: error: /),
      ]);
      const words = `const { createService } = await import('doughwright/core');
      const service = createService();
      service.setText('file:///b.dough', 'formula B:\\n  strong white 100%\\n  water 65%\\n');
      console.log(service.totals('file:///b.dough')[0].hydration);
      const { loadLanguage } = await import('doughwright/core');
      console.log((await loadLanguage('de')).tag);`;
      expect(onIt('node', '--input-type=module', '--eval', words).stdout).toBe('0.65\nde\n');
    },
    240_000,
  );

  it('shares many files among threads there too', () => {
    mkdirSync(join(folder, 'many'), { recursive: true });
    for (let index = 0; index < 320; index++)
      writeFileSync(
        join(folder, 'many', `${index}.dough`),
        `formula Loaf ${index}:\n  strong white 100%\n  salt 2\n`,
      );
    const { stdout } = run(
      'npx',
      '--offline',
      'doughwright',
      'check',
      '--format',
      'json',
      '--level',
      'error',
      'many',
    );
    expect((JSON.parse(stdout) as unknown[]).length).toBe(320);
  });

  it('is a library with types, for a small project that computes a hydration', () => {
    writeFileSync(
      join(folder, 'use.ts'),
      `import { apiVersion, createService, type FormulaTotals } from 'doughwright/core';
const service = createService();
service.setText('file:///a.dough', 'formula A:\\n  strong white 100%\\n  water 65%\\n  salt 2%\\n');
const [totals]: readonly FormulaTotals[] = service.totals('file:///a.dough');
const hydration: number | undefined = totals?.hydration;
console.log(apiVersion, hydration);
`,
    );
    const strict = [
      '--strict',
      '--target',
      'es2022',
      '--module',
      'nodenext',
      '--types',
      '',
      '--lib',
      'es2023,dom',
    ];
    const checked = run(bin('tsc'), '--noEmit', ...strict, 'use.ts');
    expect([checked.code, checked.stdout]).toEqual([0, '']);
    expect(run(process.execPath, 'use.ts').stdout).toBe('1 0.65\n');
  });

  it('holds no file that nobody asked for, and needs no other package', () => {
    const held = execFileSync('tar', ['-tzf', tarball], { encoding: 'utf8' }).trim().split('\n');
    const odd = held.filter(
      (name) =>
        !/^package\/(package\.json|README\.md|LICENSE|CHANGELOG\.md|THIRD-PARTY-NOTICES\.txt|\.pre-commit-hooks\.yaml|dist\/(doughwright(-main)?|language-server|core|german|french)\.cjs|core\/(index|(german|french|chunk)-[A-Z0-9]+)\.js|core\/types\/.*\.d\.ts)$/.test(
          name,
        ),
    );
    expect(odd).toEqual([]);
    const manifest = JSON.parse(readFileSync(join(projectFolder, 'dist/npm/package.json'), 'utf8')) as object;
    expect(manifest).not.toHaveProperty('dependencies');
  });

  it('is clean for publint', async () => {
    const { messages } = await publint({ pkgDir: join(projectFolder, 'dist', 'npm'), strict: true });
    expect(messages.filter(({ type }) => type !== 'suggestion')).toEqual([]);
  });

  it('has types that resolve as its code does, in Node and in bundlers', () => {
    const { code, stdout } = run(
      bin('attw'),
      tarball,
      '--profile',
      'esm-only',
      '--format',
      'json',
      '--exclude-entrypoints',
      './package.json',
    );
    // It is of ES modules alone: readers that know none of them are left out, and its exit code knows that.
    const { problems } = JSON.parse(stdout) as { problems: Record<string, { resolutionKind: string }[]> };
    const left = Object.values(problems).flat();
    expect([code, left.filter((one) => !['node10', 'node16-cjs'].includes(one.resolutionKind))]).toEqual([
      0,
      [],
    ]);
  });
});
