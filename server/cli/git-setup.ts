import { mkdir, readFile, realpath, rm, stat } from 'node:fs/promises';
import { basename, delimiter, dirname, join, relative, resolve } from 'node:path';
import { createInterface } from 'node:readline/promises';
import { type LanguageTag, type Message, message } from '../../core/index.ts';
import { git, repositoryOf } from '../host/git.ts';
import type { ExitCode } from './exit-code.ts';
import { gitScript, gitSettings, quoted, scriptPlace } from './git-script.ts';
import { say } from './speaker.ts';
import { complain, tell, visibleLine } from './terminal.ts';
import { notWritten, replaceFile } from './write-out.ts';

export interface GitSetupOptions {
  readonly yes?: boolean;
  readonly undo?: boolean;
  /** How the shell shall call this program. */
  readonly program: string;
  /** A file of the program that is another one once it is renewed. */
  readonly programFile?: string;
  /** The language in which git shall show formulas; else that of the project at each call. */
  readonly language?: LanguageTag;
}

/** What git shows above a piece of a diff: the section it is in, less the figures that stand behind its header. */
const sectionHeader =
  '^[[:blank:]]*((formula|flour|ingredient|mixer|bakery|plan|experiment|preferment|soaker|scald|part|filling|topping|bath|mix|process|trial)([[:blank:]][^#]*[^#[:blank:]])?:?)([[:blank:]]+#.*)?$';

const attributeLine = '*.dough diff=doughwright merge=doughwright';
/** As an older version wrote it. */
const formerAttributeLine = '*.dough diff=doughwright';

interface Step {
  /** What is about to be done, for the user to read. */
  readonly what: Message;
  /** Why it could not be done, where it could not. */
  readonly run: () => Promise<Trouble | undefined>;
}

/** What could not be done, and to which file where it is one. */
interface Trouble {
  readonly file?: string;
  readonly message: Message;
}

/**
 * Teaches the git of this one repository to show formulas as a baker reads them, or takes that back. Prints every change
 * it would make and asks first. The user's own git settings are never touched. 0 done, 1 not wanted, 2 when it cannot.
 */
export async function gitSetup(options: GitSetupOptions): Promise<ExitCode> {
  const repository = await repositoryOf('.');
  if (repository.root === undefined) return refuse(repository);
  const { root } = repository;
  const own = await git('.', ['rev-parse', '--git-common-dir']);
  if (!own.ok) return refuse(own);
  const folder = resolve('.', own.out.toString().trimEnd());
  const place: Place = {
    root,
    folder,
    shownFolder: repository.isBare ? '' : '.git/',
    attributes: repository.isBare ? join(folder, 'info', 'attributes') : join(root, '.gitattributes'),
  };
  const steps = options.undo ? await undoing(place) : await settingUp(place, options);
  if (steps.length === 0) {
    write(message(options.undo ? 'command-git.nothing-to-undo' : 'command-git.all-set'));
    return 0;
  }
  const inRepository = say(message('command-git.repository', { file: visibleLine(root) }));
  tell(`${inRepository}\n${steps.map(({ what }) => `  ${say(what)}\n`).join('')}`);
  if (!options.yes && !(await agreed())) {
    write(message('command-git.nothing-changed'));
    return 1;
  }
  for (const step of steps) {
    const trouble = await step.run();
    if (trouble !== undefined) return refuse(trouble);
  }
  const undo = { command: 'doughwright git-setup --undo' };
  write(options.undo ? message('command-git.undone') : message('command-git.done', undo));
  return 0;
}

/** Where the settings of a repository stand. */
interface Place {
  readonly root: string;
  /** The folder of git’s own files, which all worktrees share. */
  readonly folder: string;
  /** The same as it is shown, with its slash; of a bare repository it is all there is. */
  readonly shownFolder: string;
  readonly attributes: string;
}

async function settingUp(place: Place, options: GitSetupOptions): Promise<Step[]> {
  const { root, folder, shownFolder, attributes } = place;
  const steps: Step[] = [];
  const lines = await attributesOf(attributes);
  if (!lines.some((line) => line.trim() === attributeLine)) {
    steps.push({
      what: message('command-git.add-line', { file: relative(root, attributes), written: attributeLine }),
      run: () => writeAttributes(attributes, [...lines.filter((line) => !isOurs(line)), attributeLine]),
    });
  }
  const script = gitScript(options);
  const path = join(folder, scriptPlace);
  if ((await readFile(path, 'utf8').catch(() => undefined)) !== script) {
    steps.push({
      what: message('command-git.write-script', {
        file: `${shownFolder}${scriptPlace}`,
        command: options.program,
      }),
      run: () => writing(scriptPlace, () => writeScript(path, script)),
    });
  }
  for (const [key, value] of [...gitSettings, ['diff.doughwright.xfuncname', sectionHeader] as const]) {
    const held = await git(root, ['config', '--local', '--get', key]);
    if (held.ok && held.out.toString().replace(/\n$/, '') === value) continue;
    steps.push({
      what: message(held.ok ? 'command-git.change' : 'command-git.set', {
        ...{ file: `${shownFolder}config`, setting: key, written: value },
      }),
      run: async () => {
        const done = await git(root, ['config', '--local', key, value]);
        return done.ok ? undefined : done;
      },
    });
  }
  return steps;
}

async function undoing({ root, folder, shownFolder, attributes }: Place): Promise<Step[]> {
  const steps: Step[] = [];
  const lines = await attributesOf(attributes);
  const ours = lines.find(isOurs);
  if (ours !== undefined) {
    steps.push({
      what: message('command-git.take-line-out', { file: relative(root, attributes), written: ours.trim() }),
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
      what: message('command-git.remove-script', { file: `${shownFolder}${own}` }),
      run: () => writing(own, () => rm(join(folder, own), { recursive: true })),
    });
  }
  for (const section of ['diff.doughwright', 'merge.doughwright']) {
    const held = await git(root, ['config', '--local', '--get-regexp', `^${section.replace('.', '\\.')}\\.`]);
    if (!held.ok) continue;
    steps.push({
      what: message('command-git.remove-section', { file: `${shownFolder}config`, setting: section }),
      run: async () => {
        const done = await git(root, ['config', '--local', '--remove-section', section]);
        return done.ok ? undefined : done;
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

async function writeAttributes(path: string, lines: readonly string[]): Promise<Trouble | undefined> {
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

async function writing(file: string, work: () => Promise<void>): Promise<Trouble | undefined> {
  try {
    await work();
    return undefined;
  } catch (error) {
    return { file, message: notWritten(error) };
  }
}

async function agreed(): Promise<boolean> {
  if (!process.stdin.isTTY) {
    write(message('command-git.without-asking', { option: '--yes' }));
    return false;
  }
  const questions = createInterface({ input: process.stdin, output: process.stdout });
  questions.once('SIGINT', () => {
    process.stdout.write(`\n${say(message('command-git.nothing-changed'))}\n`);
    process.exit(130);
  });
  try {
    const answer = await questions.question(`${say(message('command-git.shall-i'))} `);
    return isYes(answer.trim().toLowerCase());
  } catch {
    // The end of the input is no answer.
    process.stdout.write('\n');
    return false;
  } finally {
    questions.close();
  }
}

/** Yes in the language of the question, or as everybody knows it, whole or by its first letter. */
function isYes(answer: string): boolean {
  const words = ['yes', say(message('command-git.yes'))];
  return words.some((word) => answer === word || answer === word.charAt(0));
}

function write(what: Message): void {
  process.stdout.write(`${say(what)}\n`);
}

function refuse({ file, message: why }: Trouble): ExitCode {
  complain(...(file === undefined ? [] : [file]), say(why));
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
