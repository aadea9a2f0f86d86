import { mkdir, readFile, realpath, rm, stat } from 'node:fs/promises';
import { basename, delimiter, dirname, join, resolve } from 'node:path';
import { createInterface } from 'node:readline/promises';
import type { ExitCode } from './exit-code.ts';
import { git, repositoryOf } from './git.ts';
import { gitScript, gitSettings, quoted, scriptPlace } from './git-script.ts';
import { complainOf, tell, visibleLine } from './terminal.ts';
import { replaceFile, writeTrouble } from './write-out.ts';

export interface GitSetupOptions {
  readonly yes?: boolean;
  readonly undo?: boolean;
  /** How the shell shall call this program. */
  readonly program: string;
  /** A file of the program that is another one once it is renewed. */
  readonly programFile?: string;
}

/** What git shows above a piece of a diff: the section it is in, less the figures that stand behind its header. */
const sectionHeader =
  '^[[:blank:]]*((formula|flour|ingredient|mixer|bakery|plan|preferment|soaker|part|filling|topping|bath|mix|process|trial)([[:blank:]][^#]*[^#[:blank:]])?:?)([[:blank:]]+#.*)?$';

const attributeLine = '*.dough diff=doughwright merge=doughwright';
/** As an older version wrote it. */
const formerAttributeLine = '*.dough diff=doughwright';

interface Step {
  /** What is about to be done, for the user to read. */
  readonly words: string;
  readonly run: () => Promise<string | undefined>;
}

/**
 * Teaches the git of this one repository to show formulas as a baker reads them, or takes that back. Prints every change
 * it would make and asks first. The user's own git settings are never touched. 0 done, 1 not wanted, 2 when it cannot.
 */
export async function gitSetup(options: GitSetupOptions): Promise<ExitCode> {
  const repository = await repositoryOf('.');
  if (repository.root === undefined) return complain(repository.message);
  const { root } = repository;
  const own = await git('.', ['rev-parse', '--git-common-dir']);
  if (!own.ok) return complain(own.message);
  const folder = resolve('.', own.out.toString().trimEnd());
  const place: Place = {
    root,
    folder,
    attributes: repository.isBare ? join(folder, 'info', 'attributes') : join(root, '.gitattributes'),
  };
  const steps = options.undo ? await undoing(place) : await settingUp(place, options);
  if (steps.length === 0) {
    process.stdout.write(options.undo ? 'There is nothing to take back.\n' : 'All is set up already.\n');
    return 0;
  }
  tell(`In the repository ${visibleLine(root)}:\n${steps.map(({ words }) => `  ${words}\n`).join('')}`);
  if (!options.yes && !(await agreed())) {
    process.stdout.write('Nothing was changed.\n');
    return 1;
  }
  for (const step of steps) {
    const trouble = await step.run();
    if (trouble !== undefined) return complain(trouble);
  }
  process.stdout.write(
    options.undo ? 'Taken back.\n' : 'Done. `doughwright git-setup --undo` takes it back.\n',
  );
  return 0;
}

/** Where the settings of a repository stand. */
interface Place {
  readonly root: string;
  /** The folder of git’s own files, which all worktrees share. */
  readonly folder: string;
  readonly attributes: string;
}

async function settingUp(place: Place, options: GitSetupOptions): Promise<Step[]> {
  const { root, folder, attributes } = place;
  const steps: Step[] = [];
  const lines = await attributesOf(attributes);
  if (!lines.some((line) => line.trim() === attributeLine)) {
    steps.push({
      words: `${basename(attributes)}   add the line: ${attributeLine}`,
      run: () => writeAttributes(attributes, [...lines.filter((line) => !isOurs(line)), attributeLine]),
    });
  }
  const script = gitScript(options.program, options.programFile);
  const path = join(folder, scriptPlace);
  if ((await readFile(path, 'utf8').catch(() => undefined)) !== script) {
    steps.push({
      words: `.git/${scriptPlace}   write the script that calls ${options.program}`,
      run: () => writing(scriptPlace, () => writeScript(path, script)),
    });
  }
  for (const [key, value] of [...gitSettings, ['diff.doughwright.xfuncname', sectionHeader] as const]) {
    const held = await git(root, ['config', '--local', '--get', key]);
    if (held.ok && held.out.toString().replace(/\n$/, '') === value) continue;
    steps.push({
      words: `.git/config   ${held.ok ? 'change' : 'set'} ${key} = ${value}`,
      run: async () => {
        const done = await git(root, ['config', '--local', key, value]);
        return done.ok ? undefined : done.message;
      },
    });
  }
  return steps;
}

async function undoing({ root, folder, attributes }: Place): Promise<Step[]> {
  const steps: Step[] = [];
  const lines = await attributesOf(attributes);
  const ours = lines.find(isOurs);
  if (ours !== undefined) {
    steps.push({
      words: `${basename(attributes)}   take out the line: ${ours.trim()}`,
      run: () =>
        writeAttributes(
          attributes,
          lines.filter((line) => !isOurs(line)),
        ),
    });
  }
  const own = dirname(scriptPlace);
  if ((await stat(join(folder, own)).catch(() => undefined)) !== undefined) {
    steps.push({
      words: `.git/${own}   remove the script, and what it keeps`,
      run: () => writing(own, () => rm(join(folder, own), { recursive: true })),
    });
  }
  for (const section of ['diff.doughwright', 'merge.doughwright']) {
    const held = await git(root, ['config', '--local', '--get-regexp', `^${section.replace('.', '\\.')}\\.`]);
    if (!held.ok) continue;
    steps.push({
      words: `.git/config   remove the section ${section}`,
      run: async () => {
        const done = await git(root, ['config', '--local', '--remove-section', section]);
        return done.ok ? undefined : done.message;
      },
    });
  }
  return steps;
}

const isOurs = (line: string): boolean => [attributeLine, formerAttributeLine].includes(line.trim());

async function attributesOf(path: string): Promise<string[]> {
  const text = await readFile(path, 'utf8').catch(() => '');
  return text === '' ? [] : text.replace(/\r?\n$/, '').split(/\r?\n/);
}

async function writeAttributes(path: string, lines: readonly string[]): Promise<string | undefined> {
  return writing(basename(path), async () => {
    if (lines.length === 0) return rm(path, { force: true });
    await mkdir(dirname(path), { recursive: true });
    return replaceFile(path, `${lines.join('\n')}\n`);
  });
}

async function writeScript(path: string, script: string): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  await replaceFile(path, script);
}

async function writing(name: string, write: () => Promise<void>): Promise<string | undefined> {
  try {
    await write();
    return undefined;
  } catch (error) {
    return `${name}: this cannot be written: ${writeTrouble(error)}`;
  }
}

async function agreed(): Promise<boolean> {
  if (!process.stdin.isTTY) {
    process.stdout.write('To do this without being asked, add --yes.\n');
    return false;
  }
  const questions = createInterface({ input: process.stdin, output: process.stdout });
  questions.once('SIGINT', () => {
    process.stdout.write('\nNothing was changed.\n');
    process.exit(130);
  });
  try {
    return /^y(es)?$/i.test((await questions.question('Shall I? (yes/no) ')).trim());
  } catch {
    // The end of the input is no answer.
    process.stdout.write('\n');
    return false;
  } finally {
    questions.close();
  }
}

function complain(message: string): ExitCode {
  complainOf(`doughwright: ${message}\n`);
  return 2;
}

/**
 * How the shell calls this program, and the file that is another one once the program is renewed. Git runs with a path of
 * its own, in an editor above all, so that Node and the program stand with their whole names.
 */
export async function ownProgram(): Promise<{ readonly program: string; readonly programFile: string }> {
  const called = process.argv[1] ?? 'doughwright';
  const place = (await lastingPlace(called)) ?? called;
  return {
    program: `${quoted(process.execPath)} ${quoted(place)}`,
    programFile: await realpath(place).catch(() => place),
  };
}

/** A package runner calls a copy that is gone when git calls; one that is installed for good stands on the path. */
async function lastingPlace(called: string): Promise<string | undefined> {
  if (!/[\\/](?:_npx|node_modules)[\\/]/.test(called)) return undefined;
  for (const folder of (process.env.PATH ?? '').split(delimiter)) {
    if (/node_modules|_npx/.test(folder)) continue;
    // On Windows what stands on the path is a script for the shell, and no program of Node.
    const found = await realpath(join(folder, 'doughwright')).catch(() => undefined);
    if (found !== undefined && process.platform !== 'win32') return found;
  }
  return undefined;
}
