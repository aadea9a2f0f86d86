import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import manifest from '../../package.json' with { type: 'json' };
import lock from '../../package-lock.json' with { type: 'json' };
import { addressFields, galleryPage, notYet, packerFields, publish } from '../../server/build/publish.ts';
import { lowestNode, nodeOfMajor, versionOf } from '../lowest-node.ts';
import { filesIn, project } from './imports.ts';

const read = (name: string): string => readFileSync(join(project, name), 'utf8');
const pages = ['README.md', 'DEVELOPERS.md', 'CHANGELOG.md', ...filesIn('docs', '.md')];

describe('the lowest Node', () => {
  it('is one and the same wherever a version is named as the lowest', () => {
    const named = pages.flatMap((page) =>
      [...read(page).matchAll(/\bNode(?:\.js)? (\d+) or (?:later|newer)/g)].map(([, major]) => [
        page,
        Number(major),
      ]),
    );
    expect(named.length).toBeGreaterThan(4);
    expect(named.filter(([, major]) => major !== lowestNode())).toEqual([]);
    expect(lock.packages[''].engines).toEqual(manifest.engines);
  });

  it('is what the programs are built for', () => {
    const targets = ['esbuild.ts', 'test/bench/run.ts'].flatMap((name) =>
      [...read(name).matchAll(/\btarget: 'node(\d+)'/g)].map(([, major]) => Number(major)),
    );
    expect(targets).toEqual([lowestNode(), lowestNode()]);
  });

  it('is found on a path by what it says of itself, past the folders of npm', () => {
    const here = join(process.execPath, '..');
    const major = Number(/^v(\d+)/.exec(process.version)![1]);
    const path = ['/no/such/folder', '', here].join(process.platform === 'win32' ? ';' : ':');
    const found = nodeOfMajor(major, path);
    // The Node that runs this may itself lie among npm's.
    if (/[\\/]node_modules[\\/]/.test(here)) expect(found).toBeUndefined();
    else expect(versionOf(found!)).toBe(process.version);
    expect(nodeOfMajor(major + 1, path)).toBeUndefined();
    expect(versionOf('/no/such/node')).toBe('');
  });
});

/** What fetches the package by a name; a file of a release or a link to a checkout does not. */
const byName =
  /\bnpx (?:-\S+ )*doughwright\b|\bnpm (?:i|install|exec|add|link|create|init) (?:-\S+ )*doughwright(?![\w.-])|\b(?:yarn|pnpm|bun)(?: dlx| add| install|x)? (?:-\S+ )*doughwright(?![\w.-])|--install-extension doughwright\.doughwright/;

describe('what is not ours yet', () => {
  it('is asked for by name on no page: whoever claims the name would run in the reader’s pipeline', () => {
    for (const bad of [
      'npx doughwright check',
      'npx --yes doughwright check',
      'npm install --global doughwright',
      'npm i doughwright',
      'pnpm dlx doughwright',
      'code --install-extension doughwright.doughwright',
    ])
      expect(bad).toMatch(byName);
    for (const good of [
      'npm install --global ./doughwright-VERSION.tgz',
      'npm install --global ./tools/doughwright.tgz',
      'npm uninstall --global doughwright',
      'code --install-extension doughwright-VERSION.vsix',
    ])
      expect(good).not.toMatch(byName);
    const others = [
      ...filesIn('client', '.md'),
      ...filesIn('examples', '.md'),
      '.pre-commit-hooks.yaml',
      'package.nls.json',
      'package.nls.de.json',
    ];
    const found = [...pages, ...others].flatMap((page) =>
      read(page)
        .split('\n')
        .flatMap((line, index) => (byName.test(line) ? [`${page}:${index + 1} ${line.trim()}`] : [])),
    );
    expect(publish.claimed.npm && publish.claimed.gallery ? [] : found).toEqual([]);
  });

  it('is an address or nothing, in both packages alike', () => {
    const { repository, bugs, homepage, files } = publish;
    for (const address of [repository, bugs, homepage, files?.pages, files?.pictures])
      if (address !== undefined) expect(new URL(address).protocol).toBe('https:');
    const said = Object.fromEntries(
      Object.entries(manifest).filter(([key]) => ['repository', 'bugs', 'homepage', 'vsce'].includes(key)),
    );
    expect(said).toEqual({ ...addressFields(publish), vsce: packerFields(publish) });
  });
});

describe('a project with an address', () => {
  const filled = {
    repository: 'https://forge.example/quay/doughwright.git',
    bugs: 'https://forge.example/quay/doughwright/issues',
    homepage: 'https://doughwright.example',
    files: { pages: 'https://forge.example/quay/pages', pictures: 'https://forge.example/quay/raw' },
    claimed: { npm: true, gallery: true, openGallery: true },
  };
  const empty = {
    ...{ repository: undefined, bugs: undefined, homepage: undefined, files: undefined },
    claimed: { npm: false, gallery: false, openGallery: false },
  };
  const page =
    'See ![the panel](docs/images/a.png), [the rules](docs/rules/README.md#salt), [the guide](docs/guide/ci.md) and ' +
    '[the schema](https://schema.example/a).\n';

  it('says it in both packages, and has nothing left to do', () => {
    expect(addressFields(filled)).toEqual({
      repository: { type: 'git', url: 'https://forge.example/quay/doughwright.git' },
      bugs: { url: 'https://forge.example/quay/doughwright/issues' },
      homepage: 'https://doughwright.example',
    });
    expect(packerFields(filled)).toMatchObject({ baseImagesUrl: 'https://forge.example/quay/raw' });
    expect(packerFields(filled)).not.toHaveProperty('allowMissingRepository');
    expect(notYet(filled)).toEqual([]);
    expect(galleryPage(page, filled, () => false)).toBe(page);
  });

  it('and one without says nothing, leads into the package, and knows what it lacks', () => {
    expect(addressFields(empty)).toEqual({});
    expect(packerFields(empty)).toMatchObject({ allowMissingRepository: true });
    expect(notYet(empty)).toHaveLength(6);
    const held = (path: string): boolean => !path.startsWith('docs/guide/');
    expect(galleryPage(page, empty, held)).toBe(
      `See [Picture: the panel][1], [the rules][2], the guide and [the schema](https://schema.example/a).

[1]: docs/images/a.png
[2]: docs/rules/README.md#salt
`,
    );
  });
});
