import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { bundledPackage, bundledPackages, noticesOf, packageFolders } from '../../server/build/notices.ts';

const permission = 'Permission is hereby granted, free of charge, to any person';

/** The folder of an installed package that holds these files. */
function installed(manifest: object, files: Readonly<Record<string, string>> = {}): string {
  const folder = mkdtempSync(join(tmpdir(), 'doughwright-notices-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'package.json'), JSON.stringify(manifest));
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return folder;
}

describe('a bundled package', () => {
  const scale = { name: 'scale', version: '1.2.3', license: 'MIT' };

  it('is named with the whole text of its licence, and of its notices behind it', () => {
    const folder = installed(scale, {
      'NOTICE.txt': 'It holds a table by others.\r\n',
      'License.md': `\nCopyright (c) the scale’s makers\r\n\r\n${permission}\n`,
      'index.js': 'nothing to see',
    });
    expect(noticesOf(bundledPackages([folder, folder]))).toBe(
      `Doughwright holds code of the packages named here, each under its own licence. Doughwright itself is under the
licence in the file LICENSE.

========================================================================
scale 1.2.3
Licence: MIT
========================================================================

Copyright (c) the scale’s makers

${permission}

It holds a table by others.
`,
    );
  });

  it.each([
    [
      'a licence that is not allowed',
      { ...scale, license: 'GPL-3.0-only' },
      { LICENSE: permission },
      /GPL-3\.0-only/,
    ],
    ['no licence', { name: 'scale', version: '1.2.3' }, { LICENSE: permission }, /names no licence/],
    [
      'the old form of a licence',
      { ...scale, license: { type: 'MIT' } },
      { LICENSE: permission },
      /names no licence/,
    ],
    ['no text', scale, { 'README.md': permission }, /no file with the text/],
    ['a file that holds no licence', scale, { LICENSE: 'see the web' }, /no file with the text/],
  ])('cannot be shipped with %s', (_, manifest, files, said) => {
    expect(() => bundledPackage(installed(manifest, files))).toThrow(said);
    expect(() => bundledPackage(installed(manifest, files))).toThrow(/^scale 1\.2\.3 is bundled/);
  });

  it('is one of which at least a byte is in the bundle, by its innermost folder', () => {
    const input = (bytesInOutput: number) => ({ bytesInOutput });
    const outputs = {
      'dist/a.cjs': {
        ...{ bytes: 9, imports: [], exports: [] },
        inputs: {
          'core/index.ts': input(5),
          'node_modules/scale/index.js': input(2),
          'node_modules/scale/weigh.js': input(2),
          'node_modules/unused/index.js': input(0),
          '../elsewhere/node_modules/@bench/oven/node_modules/@bench/door/lib/a.js': input(1),
        },
      },
    };
    expect(packageFolders({ inputs: {}, outputs })).toEqual({
      'dist/a.cjs': ['../elsewhere/node_modules/@bench/oven/node_modules/@bench/door', 'node_modules/scale'],
    });
  });

  it('is one too that lies within a file which its makers had bundled, as the source map beside it says', () => {
    const project = mkdtempSync(join(tmpdir(), 'doughwright-notices-'));
    onTestFinished(() => rmSync(project, { recursive: true, force: true }));
    const write = (path: string, text: string): void => {
      mkdirSync(dirname(join(project, path)), { recursive: true });
      writeFileSync(join(project, path), text);
    };
    write('node_modules/scale/index.js', '');
    const map = {
      sources: [
        'src/a.js',
        '../node_modules/@bench/door/lib/a.js',
        'node_modules/pan/a.js',
        'node_modules/pan/b.js',
      ],
    };
    write('node_modules/scale/index.js.map', JSON.stringify(map));
    write('node_modules/@bench/door/package.json', '{}');
    const inputs = { 'node_modules/scale/index.js': { bytesInOutput: 2 } };
    const run = { inputs: {}, outputs: { 'dist/a.cjs': { bytes: 9, imports: [], exports: [], inputs } } };
    expect(() => packageFolders(run, project)).toThrow(
      'pan is bundled within node_modules/scale/index.js, and is not installed.',
    );
    write('node_modules/scale/node_modules/pan/package.json', '{}');
    expect(packageFolders(run, project)).toEqual({
      'dist/a.cjs': ['node_modules/@bench/door', 'node_modules/scale', 'node_modules/scale/node_modules/pan'],
    });
  });
});
