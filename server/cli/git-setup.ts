import { readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { createInterface } from 'node:readline/promises';
import type { ExitCode } from './exit-code.ts';
import { git, repositoryOf } from './git.ts';
import { complainOf, tell, visibleLine } from './terminal.ts';
import { replaceFile, writeTrouble } from './write-out.ts';

export interface GitSetupOptions {
  readonly yes?: boolean;
  readonly undo?: boolean;
  /** How git shall call this program. */
  readonly program: string;
}

/** What git shows above a piece of a diff: the section it is in. */
const sectionHeader =
  '^[[:blank:]]*((formula|flour|ingredient|mixer|bakery|plan|preferment|soaker|part|filling|topping|bath|mix|process|trial)([[:blank:]].*)?:?)$';

const attributeLine = '*.dough diff=doughwright';

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
  if (!repository.ok || repository.root === undefined)
    return complain(repository.ok ? 'this is no repository.' : repository.message);
  const { root } = repository;
  const steps = options.undo ? await undoing(root) : await settingUp(root, options.program);
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

async function settingUp(root: string, program: string): Promise<Step[]> {
  const wanted: readonly (readonly [string, string])[] = [
    ['diff.doughwright.command', `${program} compare --git-driver`],
    ['diff.doughwright.textconv', `${program} textconv`],
    ['diff.doughwright.xfuncname', sectionHeader],
  ];
  const steps: Step[] = [];
  const lines = await attributesOf(root);
  if (!lines.some(isOurs)) {
    steps.push({
      words: `.gitattributes   add the line: ${attributeLine}`,
      run: () => writeAttributes(root, [...lines, attributeLine]),
    });
  }
  for (const [key, value] of wanted) {
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

async function undoing(root: string): Promise<Step[]> {
  const steps: Step[] = [];
  const lines = await attributesOf(root);
  if (lines.some(isOurs)) {
    steps.push({
      words: `.gitattributes   take out the line: ${attributeLine}`,
      run: () =>
        writeAttributes(
          root,
          lines.filter((line) => !isOurs(line)),
        ),
    });
  }
  const held = await git(root, ['config', '--local', '--get-regexp', '^diff\\.doughwright\\.']);
  if (held.ok) {
    steps.push({
      words: '.git/config   remove the section diff.doughwright',
      run: async () => {
        const done = await git(root, ['config', '--local', '--remove-section', 'diff.doughwright']);
        return done.ok ? undefined : done.message;
      },
    });
  }
  return steps;
}

const isOurs = (line: string): boolean => line.trim() === attributeLine;

async function attributesOf(root: string): Promise<string[]> {
  const text = await readFile(join(root, '.gitattributes'), 'utf8').catch(() => '');
  return text === '' ? [] : text.replace(/\r?\n$/, '').split(/\r?\n/);
}

async function writeAttributes(root: string, lines: readonly string[]): Promise<string | undefined> {
  const path = join(root, '.gitattributes');
  try {
    if (lines.length === 0) await rm(path, { force: true });
    else await replaceFile(path, `${lines.join('\n')}\n`);
    return undefined;
  } catch (error) {
    return `.gitattributes: this cannot be written: ${writeTrouble(error)}`;
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

/** How this program is called: by its name where that is on the path, else by the files it runs from. */
export async function ownProgram(): Promise<string> {
  const onPath = (process.env.PATH ?? '').split(process.platform === 'win32' ? ';' : ':');
  for (const folder of onPath) {
    const found = await readFile(join(folder, 'doughwright')).then(
      () => true,
      () => false,
    );
    // A package runner puts a folder on the path that is gone when git calls.
    if (found && !folder.includes('node_modules') && !folder.includes('_npx')) return 'doughwright';
  }
  const quoted = (path: string): string => `'${path.replaceAll("'", "'\\''")}'`;
  return `${quoted(process.execPath)} ${quoted(process.argv[1] ?? 'doughwright')}`;
}
