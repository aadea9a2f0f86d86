import { lstat, stat } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { type Display, message, rules, type Settings } from '../../core/index.ts';
import { readBytes, rootAbove } from '../host/disk.ts';
import { readProject } from '../project/project-file.ts';
import { noProject, type ProjectSettings, projectFileName } from '../project/project-settings.ts';
import { cureOf, shownPath } from './shown-path.ts';
import { say } from './speaker.ts';
import { complain } from './terminal.ts';

let project: ProjectSettings = noProject;

/** What the project of this run has decided of levels and usual temperatures, for the core. */
export function projectSettings(): Pick<Settings, 'rules' | 'usual'> {
  return { rules: project.rules, usual: project.usual };
}

/** How the project of this run has figures shown. */
export function projectDisplay(): Partial<Display> {
  const { mass, temperature, decimalSign } = project;
  return {
    ...(mass === undefined ? {} : { mass }),
    ...(temperature === undefined ? {} : { temperature }),
    ...(decimalSign === undefined || decimalSign === 'language' ? {} : { decimalSign }),
  };
}

/** A project file as it was found; what is wrong with it is not worded yet, for it may say in which language. */
export interface FoundProject {
  readonly language: ProjectSettings['language'];
  /** Says what is wrong with it; whether something is. */
  readonly tell: () => boolean;
}

/** Where project files are looked for. */
export interface ProjectFiles {
  /** Whether there is something at a path, and no folder. */
  has(path: string): Promise<boolean>;
  read(path: string): ReturnType<typeof readBytes>;
}

const onDisk: ProjectFiles = {
  // What is there and no ordinary file is told where it is read, and is not passed by.
  has: async (path) => (await lstat(path).catch(() => undefined))?.isDirectory() === false,
  read: readBytes,
};

/**
 * Reads the project file that holds for a run: of the folder that the first path names or lies in, else of the nearest one above it up to
 * the root of the repository. Paths of another project are told, for one run knows one project. What is no path, as a
 * revision or the name of a flour, stands for the current folder.
 */
export async function takeProject(
  words: readonly string[],
  files: ProjectFiles = onDisk,
): Promise<FoundProject> {
  const places = await Promise.all(words.map((word) => projectOf(word, files)));
  const named = places.filter((place) => place !== undefined);
  const [first] = named;
  const file = first === undefined ? await fileAbove(resolve('.'), files) : first.file;
  const other = named.find((place) => place.file !== file);
  const shownFile = file === undefined ? '.' : shownPath(file);
  const found = file === undefined ? undefined : await files.read(file);
  const read = found?.bytes && readBy(found.bytes);
  project = read?.settings ?? noProject;
  return {
    language: project.language,
    tell: () => {
      if (found?.why !== undefined) complain(shownFile, say(cureOf(found.why)));
      for (const { line, message: what } of read?.findings ?? [])
        complain(`${shownFile}:${line + 1}`, say(what));
      if (other !== undefined) {
        const files = [shownFile, other.file === undefined ? '.' : shownPath(other.file)];
        complain(say(message('project.several', { files })));
      }
      return found?.why !== undefined || (read?.findings.length ?? 0) > 0 || other !== undefined;
    },
  };
}

/** What the project file that holds for a folder has decided, and that file; undefined where there is none. */
export async function settingsAbove(
  folder: string,
  files: ProjectFiles,
): Promise<{ readonly file: string; readonly settings: ProjectSettings } | undefined> {
  const file = await fileAbove(folder, files);
  const { bytes } = file === undefined ? {} : await files.read(file);
  return file === undefined || bytes === undefined ? undefined : { file, settings: readBy(bytes).settings };
}

const readBy = (bytes: Buffer) => readProject(bytes.toString('utf8'), new Set(rules.map(({ code }) => code)));

/** The project file of a word that names a file or folder; undefined where it names neither. */
async function projectOf(
  word: string,
  files: ProjectFiles,
): Promise<{ readonly file: string | undefined } | undefined> {
  const place = resolve(word);
  const about = await stat(place).catch(() => undefined);
  if (about === undefined) return undefined;
  return { file: await fileAbove(about.isDirectory() ? place : dirname(place), files) };
}

/** The nearest project file in a folder or above it, no further than the root of the repository. */
async function fileAbove(folder: string, files: ProjectFiles): Promise<string | undefined> {
  const root = await rootAbove(folder);
  for (let at = folder; ; at = dirname(at)) {
    const file = join(at, projectFileName);
    if (await files.has(file)) return file;
    if (at === root || at === dirname(at)) return undefined;
  }
}
