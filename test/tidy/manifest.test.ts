import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join, posix } from 'node:path';
import { listFiles, PackageManager } from '@vscode/vsce';
import { describe, expect, it } from 'vitest';
import {
  commandIds,
  experimentViewType,
  hasFolderContext,
  hasFormulaContext,
  languageId,
  listViewId,
  overlayViewType,
  planViewType,
  sheetViewType,
} from '../../client/names.ts';
import { rules } from '../../core/index.ts';
import manifest from '../../package.json' with { type: 'json' };
import german from '../../package.nls.de.json' with { type: 'json' };
import french from '../../package.nls.fr.json' with { type: 'json' };
import english from '../../package.nls.json' with { type: 'json' };
import { projectFolder } from '../editors/places.ts';

const { contributes } = manifest;
const steps = contributes.walkthroughs.flatMap((walkthrough) => walkthrough.steps);

function clientFiles(): string[] {
  const folder = join(projectFolder, 'client');
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => join(folder, name));
}

describe('the manifest and the code name the same things', () => {
  it('commands: each is contributed, and each contributed one is registered', () => {
    const contributed = contributes.commands.map(({ command }) => command);
    expect(contributed.sort()).toEqual(Object.values(commandIds).sort());
    const source = clientFiles()
      .map((file) => readFileSync(file, 'utf8'))
      .join('\n');
    const registered = [...source.matchAll(/(?:registerCommand\(|\[)\s*commandIds\.(\w+),/g)].map(
      (match) => match[1],
    );
    expect(registered.sort()).toEqual(Object.keys(commandIds).sort());
  });

  it('menus and keys name contributed commands only', () => {
    const named = [...Object.values(contributes.menus).flat(), ...contributes.keybindings].map(
      ({ command }) => command,
    );
    for (const command of named) expect(Object.values<string>(commandIds)).toContain(command);
  });

  it('what the menu of a text holds of ours stands together, and not among the editor’s own', () => {
    const groups = contributes.menus['editor/context'].map(({ group }) => group.replace(/@\d+$/, ''));
    expect([...new Set(groups)]).toHaveLength(1);
    expect(groups).not.toContain('navigation');
  });

  it('first steps, which are ticked by commands of ours and by keys that reach them', () => {
    const known = [
      ...Object.values(commandIds).map((command) => `onCommand:${command}`),
      ...[hasFolderContext, hasFormulaContext].map((key) => `onContext:${key}`),
    ];
    for (const event of steps.flatMap((step) => step.completionEvents)) expect(known).toContain(event);
  });

  it('views, and what leads to a command or a walkthrough in words', () => {
    expect(
      Object.values(contributes.views)
        .flat()
        .map(({ id }) => id),
    ).toEqual([listViewId]);
    const words = [
      ...contributes.viewsWelcome.map(({ contents }) => contents),
      ...steps.map((step) => step.description),
    ].flatMap((key) =>
      [english, german, french].map((words: Readonly<Record<string, string>>) => words[bare(key)]!),
    );
    const led = words.flatMap((text) =>
      [...text.matchAll(/\(command:(doughwright\.\w+)\)/g)].map((match) => match[1]),
    );
    expect(led.length).toBeGreaterThan(3);
    for (const command of led) expect(Object.values<string>(commandIds)).toContain(command);
  });

  it('commands are titled in one category and carry an icon of the editor', () => {
    for (const command of contributes.commands) {
      expect(command).toMatchObject({
        category: 'Doughwright',
        icon: expect.stringMatching(/^\$\([a-z-]+\)$/),
      });
    }
  });

  it('language, grammar, and the panel that comes back after a reload', () => {
    expect(contributes.languages.map(({ id }) => id)).toEqual([languageId]);
    expect(contributes.grammars.map(({ language }) => language)).toEqual([languageId]);
    expect(manifest.activationEvents).toEqual(
      [sheetViewType, planViewType, overlayViewType, experimentViewType].map(
        (type) => `onWebviewPanel:${type}`,
      ),
    );
    expect(contributes.configurationDefaults).toHaveProperty(`[${languageId}]`);
  });

  it('settings stand under the language id and have a default and a description', () => {
    for (const { properties } of contributes.configuration) {
      for (const [name, setting] of Object.entries(properties)) {
        expect(name).toMatch(/^doughwright\./);
        expect(setting).toHaveProperty('default');
        expect('description' in setting || 'markdownDescription' in setting, name).toBe(true);
      }
    }
  });
});

describe('the words of the manifest', () => {
  const used = keysIn(manifest);

  it.each([
    ['English', english],
    ['German', german],
  ])('has every key in %s, and no other', (_, words: Readonly<Record<string, string>>) => {
    expect(Object.keys(words).sort()).toEqual([...used].sort());
    for (const [key, text] of Object.entries(words)) expect(text.trim(), key).not.toBe('');
  });

  it('has in French every key but the titles of the rules, which are not translated yet', () => {
    const wanted = [...used].filter((key) => !key.startsWith('rule.'));
    expect(Object.keys(french).sort()).toEqual(wanted.sort());
    for (const [key, text] of Object.entries(french)) expect(text.trim(), key).not.toBe('');
  });

  it('leads to the same commands and names the same code in all of them', () => {
    const marks = (text: string) =>
      (text.match(/\(command:[^)]*\)|`[^`]*`/g) ?? []).filter((mark) => !mark.includes(': ')).sort();
    for (const words of [german, french] as Readonly<Record<string, string>>[])
      for (const [key, text] of Object.entries(words))
        expect(marks(text), key).toEqual(marks((english as Readonly<Record<string, string>>)[key]!));
  });

  it('leaves no title, name or description in one language alone', () => {
    for (const { title } of contributes.commands) expect(title).toMatch(/^%.+%$/);
    for (const step of steps)
      for (const text of [step.title, step.description]) expect(text).toMatch(/^%.+%$/);
    const settings = contributes.configuration.flatMap(({ properties }) => Object.values<object>(properties));
    for (const setting of settings as { description?: string; markdownDescription?: string }[])
      expect(setting.markdownDescription ?? setting.description).toMatch(/^%.+%$/);
  });
});

describe('the words of the client', () => {
  const bundle = JSON.parse(
    readFileSync(join(projectFolder, manifest.l10n, 'bundle.l10n.de.json'), 'utf8'),
  ) as Readonly<Record<string, string>>;
  const source = clientFiles()
    .map((file) => readFileSync(file, 'utf8'))
    .join('\n');
  const said = new Set([...source.matchAll(/l10n\.t\(\s*'((?:[^'\\]|\\.)*)'/g)].map(([, text]) => text!));

  it('are in German, each of them and no other', () => {
    expect(Object.keys(bundle).sort()).toEqual([...said].sort());
    // Every call holds its text itself, or this would not see it.
    expect([...source.matchAll(/l10n\.t\(/g)]).toHaveLength([...source.matchAll(/l10n\.t\(\s*'/g)].length);
  });

  it('have the same places for what is filled in', () => {
    const places = (text: string) => (text.match(/\{\d\}/g) ?? []).sort();
    for (const [text, translated] of Object.entries(bundle)) expect(places(translated)).toEqual(places(text));
  });
});

describe('the pages of the first steps', () => {
  it('are there in German, with the very same formulas', () => {
    const codeIn = (text: string) =>
      (text.match(/^ {2}(?!\s)\S.*$|`[^`\n]+:?`/gm) ?? []).filter((line) => /^ {2}|: ?`$/.test(line));
    for (const { media } of steps) {
      const [own, german] = [media.markdown, germanOf(media.markdown)].map((path) =>
        readFileSync(join(projectFolder, path), 'utf8'),
      ) as [string, string];
      expect(german).not.toBe(own);
      expect(codeIn(german), media.markdown).toEqual(codeIn(own));
      if (own.includes('Stop the mixer')) expect(german).toContain('Den Kneter\nanhalten');
    }
  });
});

/** The page beside another that the editor takes where it speaks German. */
function germanOf(page: string): string {
  return page.replace(/\.md$/, '.nls.de.md');
}

/** The keys that a manifest has in place of words. */
function keysIn(value: unknown): Set<string> {
  return new Set([...JSON.stringify(value).matchAll(/"%([^"%]+)%"/g)].map(([, key]) => key!));
}

function bare(key: string): string {
  return key.slice(1, -1);
}

describe('what the manifest points at', () => {
  it('is there: icons, grammar and language configuration', () => {
    const [language] = contributes.languages;
    const files = [manifest.icon, language!.icon.light, language!.icon.dark, language!.configuration];
    files.push(...contributes.grammars.map(({ path }) => path), ...steps.map(({ media }) => media.markdown));
    files.push(...contributes.viewsContainers.activitybar.map(({ icon }) => icon));
    for (const file of files) expect(existsSync(join(projectFolder, file)), file).toBe(true);
  });

  it('is bundled: every entry point has its line in the build', () => {
    const build = readFileSync(join(projectFolder, 'esbuild.ts'), 'utf8');
    const bundled = [...build.matchAll(/outfile: '([^']+)'/g)].map((match) => `./${match[1]}`);
    expect(bundled).toEqual(expect.arrayContaining([manifest.main, manifest.bin.doughwright]));
    // In a package of ES modules a web host takes only .cjs for CommonJS, and older ones add .js to the name.
    expect(manifest.browser).toMatch(/\.cjs$/);
    expect(bundled).toEqual(expect.arrayContaining([manifest.browser, `${manifest.browser}.js`]));
  });

  it('needs an editor no newer than the client library does, and no older', () => {
    const require = createRequire(import.meta.url);
    const library = join(require.resolve('vscode-languageclient/node'), '..', '..', '..', 'package.json');
    const { engines } = JSON.parse(readFileSync(library, 'utf8')) as { engines: { vscode: string } };
    expect(manifest.engines.vscode).toBe(engines.vscode);
    const types = JSON.parse(
      readFileSync(join(projectFolder, 'node_modules/@types/vscode/package.json'), 'utf8'),
    ) as {
      version: string;
    };
    expect(types.version.split('.').slice(0, 2)).toEqual(
      engines.vscode.replace('^', '').split('.').slice(0, 2),
    );
  });
});

describe('the package', () => {
  it('holds what runs in the editor and nothing else', async () => {
    const allowed = [
      // The packer takes README.md into every list; what it packages in its place is dist/market.md.
      ...['package.json', 'README.md', 'LICENSE'],
      ...[
        'editor-light.png',
        'editor-findings.png',
        'experiment-light.png',
        'panel-charts.png',
        'panel-working.png',
      ].map((name) => `docs/images/${name}`),
      ...[
        'package.nls.json',
        'package.nls.de.json',
        'package.nls.fr.json',
        'client/l10n/bundle.l10n.de.json',
      ],
      ...[
        'market.md',
        'changes.md',
        'THIRD-PARTY-NOTICES.txt',
        'extension.cjs',
        'browser-extension.cjs',
        'browser-extension.cjs.js',
        'server.cjs',
        'language-server.cjs',
        'doughwright-main.cjs',
        'core.cjs',
        'german.cjs',
        'french.cjs',
        'server-worker.js',
        'preview.js',
        'changes.js',
        'history.js',
        'tables.js',
        'experiment.js',
        'preview.css',
        'demo.json',
      ].map((name) => `dist/${name}`),
      ...['doughwright.tmLanguage.json', 'language-configuration.json'].map((name) => `syntaxes/${name}`),
      ...['icon.png', 'file-light.svg', 'file-dark.svg', 'list.svg'].map((name) => `client/media/${name}`),
      ...steps.flatMap(({ media }) => [media.markdown, germanOf(media.markdown)]),
      // The guide, opened by a command.
      ...['docs/guide', 'docs/de/guide'].flatMap((folder) =>
        readdirSync(join(projectFolder, folder)).map((name) => `${folder}/${name}`),
      ),
      // Findings link to these.
      ...['docs/rules', 'docs/de/rules'].flatMap((folder) =>
        [...rules.map(({ code }) => code), 'README'].map((name) => `${folder}/${name}.md`),
      ),
    ];
    const files = await listFiles({ cwd: projectFolder, packageManager: PackageManager.None });
    expect(files.filter((file) => !allowed.includes(file))).toEqual([]);
    expect(files).toEqual(
      expect.arrayContaining([
        ...['package.json', 'LICENSE', 'client/media/icon.png', 'dist/german.cjs', 'dist/french.cjs'],
        ...[
          'package.nls.json',
          'package.nls.de.json',
          'package.nls.fr.json',
          'client/l10n/bundle.l10n.de.json',
        ],
        ...['dist/market.md', 'dist/changes.md', 'dist/THIRD-PARTY-NOTICES.txt'],
        ...['docs/rules/too-warm.md', 'docs/de/rules/too-warm.md'],
      ]),
    );
  });

  it('holds whatever its pages lead to', async () => {
    const files = new Set(await listFiles({ cwd: projectFolder, packageManager: PackageManager.None }));
    const pages = [...files].filter((file) => file.startsWith('docs/') && file.endsWith('.md'));
    expect(pages.length).toBeGreaterThan(100);
    const missing = pages.flatMap((page) => {
      const text = readFileSync(join(projectFolder, page), 'utf8');
      return [...text.matchAll(/\]\(([^)#\s]+)[^)]*\)/g)]
        .map(([, to = '']) => to)
        .filter((to) => !/^[a-z]+:/.test(to))
        .filter((to) => !files.has(posix.normalize(posix.join(posix.dirname(page), to))))
        .map((to) => `${page} leads to ${to}`);
    });
    expect(missing).toEqual([]);
  });

  it('has no dependency to install: all that runs is bundled', () => {
    expect(manifest).not.toHaveProperty('dependencies');
  });
});

describe('the client', () => {
  const folder = join(projectFolder, 'client');
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.endsWith('.ts'),
  );

  it('takes types from the protocol and nothing else of server and core', () => {
    for (const file of files) {
      const source = readFileSync(join(folder, file), 'utf8');
      const imports = [
        ...source.matchAll(/^import (type )?[^;]*? from '((?:\.\.\/)+(?:server|core)\/[^']+)';/gms),
      ];
      for (const [, typeOnly, path] of imports)
        expect([file, typeOnly, path?.replace(/^(\.\.\/)+/, '')]).toEqual([
          file,
          'type ',
          'server/protocol.ts',
        ]);
    }
  });

  it('never sets markup from a text', () => {
    for (const file of files) {
      const source = readFileSync(join(folder, file), 'utf8');
      expect(
        source.match(/innerHTML|outerHTML|insertAdjacentHTML|document\.write|\beval\(/g),
        file,
      ).toBeNull();
    }
  });
});
