import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Metafile } from 'esbuild';
import { isInExtension } from './extension-files.ts';

/** A package of somebody else, some of whose code is in a bundle. */
export interface BundledPackage {
  readonly name: string;
  readonly version: string;
  /** An SPDX licence identifier. */
  readonly licence: string;
  /** The files of its licence and its own notices, whole. */
  readonly texts: readonly string[];
}

/**
 * The licences, by their SPDX identifiers, whose code may be shipped under ours: each asks for no more than that its text and the
 * names of its authors go along.
 */
export const allowedLicences: ReadonlySet<string> = new Set([
  '0BSD',
  'Apache-2.0',
  'BlueOak-1.0.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'ISC',
  'MIT',
]);

/** The name under which both packages hold what `noticesOf` says. */
export const noticesName = 'THIRD-PARTY-NOTICES.txt';

/** The file in dist/ that says of every bundle there of which packages it holds something. */
const bundledName = 'dist/bundled.json';
type Bundled = Readonly<Record<string, readonly string[]>>;

/**
 * The folders of the packages, from the folder of the build, of which each output of a bundler's run holds at least a byte:
 * what was read and shaken off again is not shipped. A file that is a bundle itself brings the packages that it was made of.
 */
export function packageFolders({ outputs }: Metafile, project = '.'): Bundled {
  return Object.fromEntries(
    Object.entries(outputs).map(([output, { inputs }]) => {
      const folders = Object.entries(inputs).flatMap(([input, { bytesInOutput }]) => {
        const [folder] = /^.*node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(input) ?? [];
        return folder === undefined || bytesInOutput === 0
          ? []
          : [folder, ...foldersWithin(project, input, folder)];
      });
      return [output, [...new Set(folders)].sort()];
    }),
  );
}

/**
 * The folders of the packages that are within a file that its makers had bundled, as the source map beside it says. Throws where
 * one of them is not installed, for then there is no text of its licence.
 */
function foldersWithin(project: string, input: string, folder: string): string[] {
  const map = join(project, `${input}.map`);
  if (!existsSync(map)) return [];
  const { sources = [] } = JSON.parse(readFileSync(map, 'utf8')) as { sources?: readonly string[] };
  const names = sources.flatMap(
    (source) => /^.*node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(source)?.[1] ?? [],
  );
  return [...new Set(names)].map((name) => {
    const outer = folder.slice(0, folder.lastIndexOf('node_modules/'));
    const places = [`${folder}/node_modules/${name}`, `${outer}node_modules/${name}`, `node_modules/${name}`];
    const place = places.find((one) => existsSync(join(project, one, 'package.json')));
    if (place === undefined) throw new Error(`${name} is bundled within ${input}, and is not installed.`);
    return place;
  });
}

/**
 * What the folder of an installed package says of itself. Throws where it names no licence, one that is not allowed, or has
 * no text of it: such a package cannot be shipped.
 */
export function bundledPackage(folder: string): BundledPackage {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as {
    name: string;
    version: string;
    license?: unknown;
  };
  if (typeof license !== 'string') throw new Error(`${name} ${version} is bundled and names no licence.`);
  if (!allowedLicences.has(license))
    throw new Error(`${name} ${version} is bundled, and its licence ${license} is not among those allowed.`);
  const texts = readdirSync(folder)
    .filter((file) => /^(licen[cs]e|copying|notice|third-?party-?notices?)/i.test(file))
    .sort(
      (one, other) => Number(/notice/i.test(one)) - Number(/notice/i.test(other)) || (one < other ? -1 : 1),
    )
    .map((file) => readFileSync(join(folder, file), 'utf8').replace(/\r\n?/g, '\n').trim());
  if (!texts.some((text) => /permi[st]|redistribution|terms and conditions/i.test(text)))
    throw new Error(`${name} ${version} is bundled, and has no file with the text of its licence.`);
  return { name, version, licence: license, texts };
}

/** Keeps what the bundles in dist/ hold, and writes the notices of those that the extension's package takes in. */
export function writeExtensionNotices(project: string, runs: readonly Metafile[]): void {
  const bundled = Object.assign({}, ...runs.map((one) => packageFolders(one, project))) as Bundled;
  writeFileSync(join(project, bundledName), `${JSON.stringify(bundled, null, 1)}\n`);
  const outputs = Object.keys(bundled).filter(isInExtension(project));
  writeNotices(project, 'extension', foldersOf(project, outputs, bundled), join(project, 'dist'));
}

/**
 * Writes the notices of a package of ours, made of what lies in these folders, into a folder, and beside the bundles a list of
 * what they name (`packageListName`).
 */
export function writeNotices(project: string, of: Package, folders: readonly string[], into: string): void {
  const packages = bundledPackages(folders);
  writeFileSync(join(into, noticesName), noticesOf(packages));
  const list = packages.map(({ name, version, licence }) => ({ name, version, licence }));
  writeFileSync(join(project, packageListName(of)), `${JSON.stringify(list, null, 1)}\n`);
}

/** The package that a baker installs in VS Code, or that of the command line and the library. */
export type Package = 'extension' | 'npm';

/** Where the build leaves the list of what is bundled into a package, from the project's folder: names, versions, licences. */
export function packageListName(of: Package): string {
  return `dist/${of}-packages.json`;
}

/** The folders of the packages that these bundles of the last build hold something of. */
export function foldersOfBuild(project: string, outputs: readonly string[]): string[] {
  return foldersOf(project, outputs, JSON.parse(readFileSync(join(project, bundledName), 'utf8')) as Bundled);
}

function foldersOf(project: string, outputs: readonly string[], bundled: Bundled): string[] {
  return outputs.flatMap((output) => (bundled[output] ?? []).map((folder) => join(project, folder)));
}

/** The packages in these folders in the order of their names, one row for each name and version. */
export function bundledPackages(folders: Iterable<string>): BundledPackage[] {
  const all = new Map<string, BundledPackage>();
  for (const folder of new Set(folders)) {
    const one = bundledPackage(folder);
    all.set(`${one.name}@${one.version}`, one);
  }
  return [...all].sort(([one], [other]) => (one < other ? -1 : 1)).map(([, one]) => one);
}

/** What goes along with a package of ours: every bundled package with its version, its licence and the text of it. */
export function noticesOf(packages: readonly BundledPackage[]): string {
  const rule = '='.repeat(72);
  const parts = packages.map(({ name, version, licence, texts }) =>
    [rule, `${name} ${version}`, `Licence: ${licence}`, rule, '', texts.join('\n\n')].join('\n'),
  );
  const head =
    'Doughwright holds code of the packages named here, each under its own licence. Doughwright itself is under the\n' +
    'licence in the file LICENSE.';
  return `${[head, ...parts].join('\n\n')}\n`;
}
