import { execFileSync } from 'node:child_process';
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { notYet, publish } from '../../server/build/publish.ts';
import { projectFolder } from '../editors/places.ts';
import { treeSitterDescription } from '../tidy/tree-sitter.ts';
import { buildRelease, type Release } from './build.ts';
import { changesOf, isLater, releaseDay, releasedChanges, versionNumbers, withVersion } from './edits.ts';

/**
 * Makes a release.
 *
 *   npm run release -- 0.2.0           builds it into dist/release and says what would change; changes nothing
 *   npm run release -- 0.2.0 --write   and writes the version and the list of changes into the project
 *   npm run release -- 0.2.0 --tag     and commits them, and tags the commit v0.2.0
 *   npm run release                    builds the release that is checked out anew, to compare with its checksums
 *
 *   --day YYYY-MM-DD   another day than today
 *   --into FOLDER      another folder than dist/release
 */
const options = {
  write: { type: 'boolean' },
  tag: { type: 'boolean' },
  day: { type: 'string' },
  into: { type: 'string' },
} as const;

try {
  main();
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}

function main(): void {
  const { values, positionals } = parseArgs({ options, allowPositionals: true });
  const into = resolve(values.into ?? join(projectFolder, 'dist', 'release'));
  const [version] = positionals;
  if (positionals.length > 1) throw new Error('A release has one version.');
  if (version === undefined) {
    if (values.tag || values.write) throw new Error('Name the version: npm run release -- 0.2.0 --tag');
    build(into, released());
    return;
  }
  const release = next(version, values.day ?? new Date().toISOString().slice(0, 10));
  console.log(`${version}, ${release.day}\n\n${changesOf(release.edits.get('CHANGELOG.md')!, version)}\n`);
  build(into, release);
  for (const sentence of notYet(publish)) console.log(`Not yet for strangers: ${sentence}`);
  if (!values.write && !values.tag) {
    console.log(
      `Nothing was changed. To write it: ${[...release.edits.keys()].join(', ')}: --write or --tag`,
    );
    return;
  }
  for (const [name, text] of release.edits) writeFileSync(join(projectFolder, name), text);
  if (!values.tag) return;
  git('commit', '--quiet', '--message', `Release ${version}`, '--', ...release.edits.keys());
  git('tag', '--annotate', `v${version}`, '--message', `Doughwright ${version}`);
  console.log(`Tagged v${version}. To take it back: git tag --delete v${version} && git reset --hard HEAD~1`);
}

/** The release of a version to come, after everything has been looked at that speaks against it. */
function next(version: string, day: string): Release {
  versionNumbers(version);
  const midnight = new Date(`${day}T00:00:00Z`);
  if (Number.isNaN(midnight.getTime()) || midnight.toISOString().slice(0, 10) !== day)
    throw new Error(`A day is written as 2026-11-30; this is ${day}`);
  const dirty = git('status', '--porcelain');
  if (dirty !== '') throw new Error(`Commit or remove these first, a release is made of commits:\n${dirty}`);
  if (git('tag', '--list', `v${version}`) !== '') throw new Error(`The tag v${version} is there already.`);
  const manifest = read('package.json');
  const { version: current } = JSON.parse(manifest) as { version: string };
  if (!isLater(version, current)) throw new Error(`${version} does not come behind ${current}.`);
  const newManifest = withVersion('package.json', manifest, version);
  const edits = new Map([
    ['package.json', newManifest],
    ['package-lock.json', withVersion('package-lock.json', read('package-lock.json'), version)],
    [
      'syntaxes/tree-sitter/tree-sitter.json',
      treeSitterDescription(read('syntaxes/tree-sitter/tree-sitter.json'), newManifest),
    ],
    ['CHANGELOG.md', releasedChanges(read('CHANGELOG.md'), version, day)],
  ]);
  return { version, day, edits };
}

/** The release whose version and day the project's files say. */
function released(): Release {
  const { version } = JSON.parse(read('package.json')) as { version: string };
  const day = releaseDay(read('CHANGELOG.md'), version);
  if (day === undefined)
    throw new Error(`CHANGELOG.md has no line ## ${version} with its day: it was not released.`);
  return { version, day, edits: new Map() };
}

function build(into: string, release: Release): void {
  for (const name of buildRelease(projectFolder, into, release))
    console.log(`${join(into, name)}: ${statSync(join(into, name)).size} bytes`);
}

function read(name: string): string {
  return readFileSync(join(projectFolder, name), 'utf8');
}

function git(...words: string[]): string {
  return execFileSync('git', words, { cwd: projectFolder, encoding: 'utf8' }).trim();
}
